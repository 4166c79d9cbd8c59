//! What each van has on board, counted down by what was fitted since somebody counted.
//!
//! What was fitted later is told by the phone's running number, never by a clock.

use crate::exchange::summary::Summary;
use crate::job::JobState;
use crate::job::entry::{Entry, Event, Stock};
use crate::letters::plain;
use crate::map::OrderedMap;

/// One part of one van.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OnBoard {
    /// The van, by its phone.
    pub van: String,
    /// The part.
    pub number: String,
    /// How many are left; nothing where it was never counted.
    pub left: Option<i64>,
    /// Below how many it is ordered.
    pub least: u16,
    /// How many were fitted today.
    pub today: usize,
    /// How many old parts are owed to the seller.
    pub cores: usize,
}

impl OnBoard {
    /// Whether it is to be ordered.
    pub fn is_to_order(&self) -> bool {
        self.left.is_some_and(|left| left < i64::from(self.least))
    }
}

/// The stock of every van, by van and part; `kit` is the log of the vans' kits.
pub fn on_board(kit: &JobState, jobs: &[Summary], today: &str) -> Vec<OnBoard> {
    let mut rows: OrderedMap<(String, String), OnBoard> = OrderedMap::new();
    for (entry, stock) in counted(kit) {
        let key = (entry.device.clone(), plain(&stock.number));
        let used = fitted(jobs, &key).filter(|job| job.tally.last.1 > entry.n);
        let used = used.count();
        rows.insert(
            key,
            OnBoard {
                van: entry.device.clone(),
                number: stock.number.clone(),
                left: Some(i64::from(stock.have).saturating_sub(whole(used))),
                least: stock.least,
                today: 0,
                cores: usize::from(stock.cores).saturating_add(used),
            },
        );
    }
    for job in jobs.iter().filter(|job| is_today(job, today)) {
        for part in &job.parts {
            let van = job.tally.last.0.clone();
            let key = (van.clone(), plain(&part.number));
            let row = rows.or_make(key, || OnBoard {
                van,
                number: part.number.clone(),
                left: None,
                least: 0,
                today: 0,
                cores: 0,
            });
            row.today += 1;
        }
    }
    rows.into_values().collect()
}

/// One part that at least one van is to get, over all vans.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ToOrder {
    /// The part.
    pub number: String,
    /// So many bring each van that has too few up to its least.
    pub order: i64,
    /// How many are left in all vans that counted them.
    pub left: i64,
    /// What each of these vans has, by its phone.
    pub vans: Vec<(String, i64)>,
}

/// The parts to be ordered, by number.
pub fn to_order(stock: &[OnBoard]) -> Vec<ToOrder> {
    let mut parts: OrderedMap<String, ToOrder> = OrderedMap::new();
    for row in stock {
        let Some(left) = row.left else { continue };
        let part = parts.or_make(plain(&row.number), || ToOrder {
            number: row.number.clone(),
            order: 0,
            left: 0,
            vans: Vec::new(),
        });
        let short = i64::from(row.least).saturating_sub(left).max(0);
        part.order = part.order.saturating_add(short);
        part.left = part.left.saturating_add(left);
        part.vans.push((row.van.clone(), left));
    }
    let parts = parts.into_values().filter(|part| part.order > 0);
    parts.collect()
}

fn whole(used: usize) -> i64 {
    i64::try_from(used).unwrap_or(i64::MAX)
}

fn is_today(job: &Summary, today: &str) -> bool {
    !job.practice && !today.is_empty() && job.tally.finished == today
}

/// The last count of each part of each phone.
fn counted(kit: &JobState) -> Vec<(&Entry, &Stock)> {
    // Of several of one part the last in order stays.
    let counts = kit.counting().filter_map(|entry| match &entry.what {
        Event::Stock(stock) => {
            let of = (entry.device.as_str(), plain(&stock.number));
            Some((of, (entry, stock)))
        }
        _ => None,
    });
    OrderedMap::from_iter(counts).into_values().collect()
}

/// Once for each time that a part was fitted by a van.
fn fitted<'a>(
    jobs: &'a [Summary],
    (van, number): &'a (String, String),
) -> impl Iterator<Item = &'a Summary> {
    jobs.iter()
        .filter(move |job| !job.practice && job.tally.last.0 == *van)
        .flat_map(move |job| {
            let same = job
                .parts
                .iter()
                .filter(|part| plain(&part.number) == *number);
            same.map(move |_| job)
        })
}

#[cfg(test)]
#[path = "stock/tests.rs"]
mod tests;
