//! What a log of each kind may hold, and that a file says one thing under one entry.
//!
//! A job may hold anything, since what is not a job's says nothing about one; a log beside jobs
//! holds its own and no work on a car.

use std::collections::BTreeMap;

use crate::exchange::envelope::LogKind;
use crate::exchange::import::IncomingLog;
use crate::job::entry::{LogId, What};

/// Whether a log of this kind may hold this.
pub(super) const fn belongs(kind: LogKind, what: &What) -> bool {
    use LogKind::{CardBook, Job, Receipt, Shop, VanKit};
    match what {
        // These say nothing of their own, or nothing that is understood here.
        What::Strike(_) | What::Erased(_) | What::LetGo(_) | What::Unknown(_) => true,
        What::Vehicle(..) | What::Card(_) => matches!(kind, Job | CardBook),
        What::Carried(_) | What::Stock(_) => matches!(kind, Job | VanKit),
        What::Shop(_) => matches!(kind, Job | Shop),
        What::Receipt(_) => matches!(kind, Job | Receipt),
        _ => matches!(kind, Job),
    }
}

/// The first log that is there more than once and has an entry with two texts.
pub(super) fn conflict(logs: &[IncomingLog]) -> Option<LogId> {
    let mut times: BTreeMap<&LogId, usize> = BTreeMap::new();
    for log in logs {
        *times.entry(&log.id).or_default() += 1;
    }
    let mut texts: BTreeMap<(&str, &str), &str> = BTreeMap::new();
    let twice = logs.iter().filter(|log| times.get(&log.id) > Some(&1));
    let mut records = twice.flat_map(|log| log.records.iter().map(move |it| (log, it)));
    let (log, _) = records.find(|(_, it)| {
        let known = texts.entry((&it.log, &it.id)).or_insert(&it.text);
        *known != it.text
    })?;
    Some(log.id.clone())
}
