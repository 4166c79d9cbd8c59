//! The file of one van's day: its jobs in order, and what the van must know beside them.

use crate::exchange::summary::Summary;
use crate::job::book;
use crate::job::flow::SHOP_LOG;
use crate::letters::plain;
use crate::map::OrderedSet;
use crate::sorted::Sorted;

/// The logs of a day file: the chosen jobs in the order of their slots, earlier visits of the same
/// vehicles, the spec library, the settings of the shop.
///
/// `known` are the names of all logs beside jobs; practice and what is not here is left out.
pub fn logs_of_day(jobs: &[Summary], chosen: &[String], known: &[String]) -> Vec<String> {
    let chosen: OrderedSet<&str> = OrderedSet::from_iter(chosen.iter().map(String::as_str));
    let is_chosen = |job: &&Summary| chosen.contains(job.log.as_str());
    let real = || jobs.iter().filter(|job| !job.practice);
    let mut today: Vec<&Summary> = real().filter(is_chosen).collect();
    today.order_by(|a, b| (a.slot_order(), &a.log).cmp(&(b.slot_order(), &b.log)));
    let again = Vehicles::of(today.iter().copied());
    let earlier = real().filter(|job| !is_chosen(job) && !job.ending.is_empty() && again.has(job));
    let beside = known
        .iter()
        .filter(|log| log.starts_with(book::PREFIX) || *log == SHOP_LOG);
    let jobs = today.iter().copied().chain(earlier);
    jobs.map(|job| job.log.clone())
        .chain(beside.cloned())
        .collect()
}

/// The vehicles of some jobs, each by its plate and by its VIN.
pub struct Vehicles {
    plates: OrderedSet<String>,
    vins: OrderedSet<String>,
}

impl Vehicles {
    /// Those of these jobs.
    pub fn of<'a>(jobs: impl IntoIterator<Item = &'a Summary>) -> Self {
        let (mut plates, mut vins) = (OrderedSet::new(), OrderedSet::new());
        for job in jobs {
            plates.insert(plain(&job.plate));
            vins.insert(plain(&job.vin));
        }
        // What is not known is no vehicle.
        plates.remove("");
        vins.remove("");
        Self { plates, vins }
    }

    /// Those with an open job.
    pub fn open(jobs: &[Summary]) -> Self {
        Self::of(jobs.iter().filter(|job| job.ending.is_empty()))
    }

    fn has(&self, job: &Summary) -> bool {
        self.plates.contains(&plain(&job.plate)) || self.vins.contains(&plain(&job.vin))
    }
}

/// Whether an ended job is old enough to let its person go: nothing is due in it, no open job is
/// about the same vehicle, and it was last written so many days before `now_ms`.
pub fn may_let_go(job: &Summary, open: &Vehicles, days: u16, now_ms: i64) -> bool {
    const DAY_MS: i64 = 86_400_000;
    let old = now_ms.saturating_sub(job.touched) > i64::from(days) * DAY_MS;
    let is_over = !job.ending.is_empty() && job.dues().is_empty();
    old && is_over && !job.practice && !job.let_go && !open.has(job)
}
