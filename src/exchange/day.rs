//! The file of one van's day: its jobs in order, and what the van must know beside them.

use crate::exchange::envelope::{LogKind, SavedText};
use crate::exchange::import::IncomingLog;
use crate::exchange::summary::Summary;
use crate::exchange::wire::decode;
use crate::job::entry::{Entry, Event};
use crate::job::flow::SHOP_LOG;
use crate::job::{book, fold};
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

/// So many days back a job was touched of which a van still learns what the shop recorded.
const FOLLOW_UP_DAYS: i64 = 120;
const DAY_MS: i64 = 86_400_000;

/// The jobs of which vans learn something with every file of the shop: those whose customer was
/// erased, those that another phone did and `device`, the shop, followed up, and those that were
/// taken from `van`.
pub fn news_for_vans(jobs: &[Summary], device: &str, van: &str, now_ms: i64) -> Vec<String> {
    let since = now_ms.saturating_sub(FOLLOW_UP_DAYS * DAY_MS);
    let followed_up = |job: &Summary| {
        let done_by = job.tally.van.as_str();
        let by_another = !done_by.is_empty() && done_by != device;
        by_another && since <= job.touched && job.runs.iter().any(|run| run.device == device)
    };
    let is_news =
        |job: &&Summary| !job.practice && (job.erased || followed_up(job) || is_taken(job, van));
    jobs.iter()
        .filter(is_news)
        .map(|job| job.log.clone())
        .collect()
}

/// Whether an open job was planned for this van before and is for another one now.
fn is_taken(job: &Summary, van: &str) -> bool {
    let before = job.moved_from.iter().any(|it| it == van);
    before && job.van != van && job.ending.is_empty()
}

/// Of a job what a van learns of it: erased bodies, and what `device` recorded since another phone
/// was at work on it, or planned it anew.
pub fn news_of<'a>(texts: &'a [SavedText], device: &str) -> Vec<&'a SavedText> {
    let sheet = fold(texts.iter().filter_map(|kept| decode(&kept.text).ok()));
    let mut others = false;
    let mut news: OrderedSet<&str> = OrderedSet::new();
    for entry in sheet.entries() {
        others |= entry.device != device;
        let planned = matches!(entry.what, Event::Slot(_));
        let own = entry.device == device && (others || planned);
        if own || matches!(entry.what, Event::Erased(_)) {
            news.insert(entry.id.0.as_str());
        }
    }
    let is_news = |kept: &&SavedText| news.contains(kept.id.as_str());
    texts.iter().filter(is_news).collect()
}

/// Whether a job of a file is only news of one that is elsewhere: erased bodies and what the phone
/// that sent the file recorded, without its beginning. On a phone that does not have the job it is
/// nothing.
pub fn is_only_news(log: &IncomingLog, senders: &OrderedSet<String>) -> bool {
    let begins = |entry: &Entry| matches!(entry.what, Event::Opened(_));
    let is_news = |entry: &Entry| {
        senders.contains(entry.device.as_str()) || matches!(entry.what, Event::Erased(_))
    };
    let all = || log.entries.iter();
    !senders.is_empty() && all().all(is_news) && !all().any(begins) && log.unreadable.is_empty()
}

/// The phones that sent a file as the shop: those whose settings or confirmations it brings.
pub fn senders(logs: &[IncomingLog]) -> OrderedSet<String> {
    let from_shop = |log: &&IncomingLog| matches!(log.kind, LogKind::Shop | LogKind::Confirmation);
    let entries = logs.iter().filter(from_shop).flat_map(|log| &log.entries);
    entries.map(|entry| entry.device.clone()).collect()
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
    let old = now_ms.saturating_sub(job.touched) > i64::from(days) * DAY_MS;
    let is_over = !job.ending.is_empty() && job.dues().is_empty();
    old && is_over && !job.practice && !job.let_go && !open.has(job)
}
