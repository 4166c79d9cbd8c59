//! Wrenches and dials of all vans whose check is due or will be.

use chrono::NaiveDate;

use crate::exchange::summary::Summary;
use crate::job::JobState;
use crate::job::entry::{Carried, Event};
use crate::job::kit::wrench_due;
use crate::map::OrderedMap;
use crate::sorted::Sorted;
use crate::trade::fastening::Wrench;
use crate::trade::fastening::calibration::{CheckDue, check_by};

/// One instrument of one van.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ToCheck {
    /// The van, by its phone.
    pub van: String,
    /// The wrench by its name; the dial has none.
    pub wrench: Option<String>,
    /// Why it is due now; nothing where it is not.
    pub due: Option<CheckDue>,
    /// The day by which it is due, where that is known.
    pub by: Option<NaiveDate>,
    /// How often a wrench clicked since its check.
    pub clicks: u32,
}

/// Every wrench and dial, by van, those first that are due; `kit` is the log of the vans' kits.
pub fn to_check(kit: &JobState, jobs: &[Summary], today: NaiveDate) -> Vec<ToCheck> {
    let mut all = Vec::new();
    for (van, carried) in vans(kit) {
        for wrench in &carried.wrenches {
            let counted = clicks(jobs, van, wrench);
            all.push(ToCheck {
                van: van.to_owned(),
                wrench: Some(wrench.name.clone()),
                due: wrench_due(wrench, counted, today),
                by: wrench.upkeep.checked.map(check_by),
                clicks: wrench.upkeep.clicks.saturating_add(counted),
            });
        }
        let due = match carried.dial_due {
            None => Some(CheckDue::Unknown),
            Some(day) => (day <= today).then_some(CheckDue::Day(day)),
        };
        all.push(ToCheck {
            van: van.to_owned(),
            wrench: None,
            due,
            by: carried.dial_due,
            clicks: 0,
        });
    }
    all.order_by_key(|it| (it.due.is_none(), it.by));
    all
}

/// The kit of each phone, as it told it last.
fn vans(kit: &JobState) -> OrderedMap<&str, &Carried> {
    // Of several of one van the last in order stays.
    let kits = kit.counting().filter_map(|entry| match &entry.what {
        Event::Carried(carried) => Some((entry.device.as_str(), carried)),
        _ => None,
    });
    OrderedMap::from_iter(kits)
}

/// The clicks of a wrench that its own phone recorded since the day of its last check.
fn clicks(jobs: &[Summary], van: &str, wrench: &Wrench) -> u32 {
    let since = wrench.upkeep.checked.map(|day| day.to_string());
    let since = since.unwrap_or_default();
    let real = jobs.iter().filter(|job| !job.practice);
    let later = real.filter(|job| since <= job.tally.finished);
    let clicked = later.flat_map(|job| &job.tally.clicks);
    clicked
        .filter(|(phone, name, _)| phone == van && *name == wrench.name)
        .fold(0, |sum, (_, _, clicks)| sum.saturating_add(*clicks))
}

#[cfg(test)]
#[path = "checks/tests.rs"]
mod tests;
