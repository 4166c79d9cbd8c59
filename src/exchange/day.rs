//! The file of one van's day: its jobs in order, and what the van must know beside them.

use crate::exchange::summary::Summary;
use crate::job::book;
use crate::job::flow::SHOP_LOG;

/// The logs of a day file: the chosen jobs in the order of their slots, earlier visits of the same
/// vehicles, the card book, the settings of the shop.
///
/// `known` are the names of all logs beside jobs; practice and what is not here is left out.
pub fn logs_of_day(jobs: &[Summary], chosen: &[String], known: &[String]) -> Vec<String> {
    let real = || jobs.iter().filter(|job| !job.practice);
    let is_chosen = |job: &Summary| chosen.contains(&job.log);
    let mut today: Vec<&Summary> = real().filter(|job| is_chosen(job)).collect();
    today.sort_by(|a, b| (a.slot_order(), &a.log).cmp(&(b.slot_order(), &b.log)));
    let earlier = real().filter(|job| {
        let again = || today.iter().any(|now| is_same_vehicle(now, job));
        !is_chosen(job) && !job.ending.is_empty() && again()
    });
    let beside = known
        .iter()
        .filter(|log| log.starts_with(book::PREFIX) || *log == SHOP_LOG);
    let jobs = today.iter().copied().chain(earlier);
    jobs.map(|job| job.log.clone())
        .chain(beside.cloned())
        .collect()
}

/// Whether two jobs are about one vehicle: by its plate, or by its VIN.
fn is_same_vehicle(one: &Summary, other: &Summary) -> bool {
    let same = |a: &str, b: &str| {
        let (a, b) = (plain(a), plain(b));
        !a.is_empty() && a == b
    };
    same(&one.plate, &other.plate) || same(&one.vin, &other.vin)
}

/// Letters and digits alone, in lower case.
pub(super) fn plain(text: &str) -> String {
    let letters = text.chars().filter(|c| c.is_alphanumeric());
    letters.flat_map(char::to_lowercase).collect()
}

/// Whether an ended job is old enough to let its person go: nothing is due in it, no open job is
/// about the same vehicle, and it was last written so many days before `now_ms`.
pub fn may_let_go(job: &Summary, jobs: &[Summary], days: u16, now_ms: i64) -> bool {
    const DAY_MS: i64 = 86_400_000;
    let old = now_ms.saturating_sub(job.touched) > i64::from(days) * DAY_MS;
    let open = |other: &Summary| other.ending.is_empty() && is_same_vehicle(other, job);
    let is_over = !job.ending.is_empty() && job.dues().is_empty();
    old && is_over && !job.practice && !job.let_go && !jobs.iter().any(open)
}
