//! What a log of each kind may hold, and that a file says one thing under one entry.
//!
//! A job may hold anything, since what is not a job's says nothing about one; a log beside jobs
//! holds its own and no work on a car.

use crate::exchange::envelope::LogKind;
use crate::exchange::import::IncomingLog;
use crate::job::entry::{Event, LogId};
use crate::map::OrderedMap;

/// Whether a log of this kind may hold this.
pub(super) const fn belongs(kind: LogKind, what: &Event) -> bool {
    use LogKind::{Confirmation, Job, Shop, SpecLibrary, VanKit};
    match what {
        // These say nothing of their own, or nothing that is understood here.
        Event::Strike(_) | Event::Erased(_) | Event::LetGo(_) | Event::Unknown(_) => true,
        Event::Vehicle(..) | Event::Spec(_) => matches!(kind, Job | SpecLibrary),
        Event::Carried(_) | Event::Stock(_) => matches!(kind, Job | VanKit),
        Event::Shop(_) => matches!(kind, Job | Shop),
        Event::Confirmation(_) => matches!(kind, Job | Confirmation),
        _ => matches!(kind, Job),
    }
}

/// The first log that is there more than once and has an entry with two texts.
pub(super) fn conflict(logs: &[IncomingLog]) -> Option<LogId> {
    let mut times: OrderedMap<&LogId, usize> = OrderedMap::new();
    for log in logs {
        *times.or_default(&log.id) += 1;
    }
    let mut texts: OrderedMap<(&str, &str), &str> = OrderedMap::new();
    let twice = logs.iter().filter(|log| times.get(&log.id) > Some(&1));
    let mut records = twice.flat_map(|log| log.records.iter().map(move |it| (log, it)));
    let (log, _) = records.find(|(_, it)| {
        let known = texts.or_make((&it.log, &it.id), || &it.text);
        *known != it.text
    })?;
    Some(log.id.clone())
}
