//! What a file would change on this phone, before anything is written.

use super::eases::{Eases, eases};
use super::{Fresh, here};
use crate::exchange::bundle::{self, Wanted};
use crate::exchange::day::{is_only_news, senders};
use crate::exchange::pieces::{CalledOff, Waits};
use crate::exchange::rescue::SetAside;
use crate::exchange::wire::{WireError, decode};
use crate::exchange::{self, Incoming, IncomingLog, LogKind, Rescue, SavedText};
use crate::job::spec_diff::BookNews;
use crate::job::{flow, fold};
use crate::map::OrderedSet;
use crate::platform::record::{Aside, Record, StoreError};
use crate::slate;
use crate::text::Say;
use crate::ui::shelf::{BrowserStore, record};
use crate::ui::work::Work;

/// What a file changes on this phone.
#[derive(Default)]
pub(super) struct Plan {
    /// The new entries; they go in with one transaction.
    pub(super) add: Vec<Record>,
    pub(super) replace: Vec<SavedText>,
    pub(super) aside: Vec<Aside>,
    pub(super) wanted: Vec<Wanted>,
    pub(super) fresh: Vec<Fresh>,
    pub(super) jobs: OrderedSet<String>,
    pub(super) logs: Vec<String>,
    pub(super) shop: Option<String>,
    pub(super) book: BookNews,
    pub(super) entries: usize,
    pub(super) edited: usize,
    pub(super) rescue: Option<Rescue>,
    pub(super) eases: Vec<Eases>,
}

/// Holds a file against what is here; nothing is written.
pub(super) async fn plan(
    shelf: &BrowserStore,
    incoming: Incoming,
    work: Work,
) -> Result<Plan, Say> {
    let all = incoming.logs.len();
    let senders = senders(&incoming.logs);
    let mut plan = Plan {
        wanted: bundle::wanted(incoming.logs.iter().flat_map(|log| &log.entries)),
        logs: incoming.logs.iter().map(|log| log.id.0.clone()).collect(),
        shop: shop(&incoming),
        ..Plan::default()
    };
    for (place, log) in incoming.logs.into_iter().enumerate() {
        let gone = |CalledOff| Say::ImportCalledOff;
        work.between(place, all).await.map_err(gone)?;
        let refused = |problem| not_saved(&problem);
        if log.kind == LogKind::SpecLibrary {
            plan.book = plan.book.and(news(shelf, &log).await.map_err(refused)?);
        }
        let known = here(shelf, &log.id.0).await.map_err(refused)?;
        if log.kind == LogKind::Job && known.is_empty() && is_only_news(&log, &senders) {
            plan.logs.retain(|it| *it != log.id.0);
            continue;
        }
        let merged = exchange::merge(&known, &log.records);
        if !known.is_empty() && is_too_long(&known, &merged.add) {
            return Err(Say::ImportTooLong);
        }
        plan.entries += log.records.len();
        plan.edited += merged.edited.len();
        plan.aside
            .extend(log.unreadable.into_iter().map(unreadable));
        if log.kind == LogKind::Job {
            let device = shelf.device();
            plan.eases
                .extend(eases(&device, &log.id.0, &known, &merged.add));
        }
        plan.add.extend(merged.add.into_iter().map(record));
        plan.replace.extend(merged.replace);
        if log.kind == LogKind::Job {
            plan.jobs.insert(log.id.0.clone());
            if known.is_empty() && merged.edited.is_empty() {
                plan.fresh.push((log.id, log.entries));
            }
        }
    }
    let aside = incoming.rescue.iter().flat_map(|rescue| &rescue.aside);
    plan.aside.extend(aside.map(set_aside));
    plan.rescue = incoming.rescue;
    Ok(plan)
}

/// Why the storage's refusal refuses a file.
pub(super) const fn not_saved(problem: &StoreError) -> Say {
    match problem {
        StoreError::Full => Say::ImportNotSaved,
        StoreError::Differs { .. } => Say::ImportDiffers,
        _ => Say::ImportNotHere,
    }
}

/// What one book brings, beside the one that is here.
async fn news(shelf: &BrowserStore, log: &IncomingLog) -> Result<BookNews, StoreError> {
    let here = slate::read(shelf, &log.id.0).await?;
    Ok(BookNews::of(
        &fold(here.entries),
        &fold(log.entries.iter().cloned()),
    ))
}

/// Whether a log that is here would be too long with what comes.
fn is_too_long(known: &[SavedText], add: &[SavedText]) -> bool {
    let all = || known.iter().chain(add);
    let entries = all().filter_map(|saved| decode(&saved.text).ok());
    !add.is_empty() && slate::is_too_long(&entries.collect::<Vec<_>>())
}

/// The last of the shop's settings in a file.
fn shop(incoming: &Incoming) -> Option<String> {
    let logs = incoming.logs.iter();
    let shops = logs.filter(|log| log.kind == LogKind::Shop);
    let sheet = fold(shops.flat_map(|log| log.entries.iter().cloned()));
    flow::shop_noted(&sheet).map(|entry| entry.id.0.clone())
}

fn unreadable((saved, error): (SavedText, WireError)) -> Aside {
    Aside {
        why: format!("{error:?}"),
        text: saved.text,
    }
}

fn set_aside(aside: &SetAside) -> Aside {
    Aside {
        why: format!("{}: {:?}", aside.key, aside.error),
        text: aside.text.clone(),
    }
}
