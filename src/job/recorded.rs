//! A sheet for a test: entries told one after another on one phone.

use crate::job::entry::{Entry, EntryId, Event, LogId, Timestamp};
use crate::job::{JobState, fold};

/// The sheet of what was told, each entry after the one before it.
pub(crate) fn sheet(whats: impl AsRef<[Event]>) -> JobState {
    let id = |n: usize| EntryId(format!("{n:04}"));
    fold(whats.as_ref().iter().enumerate().map(|(n, what)| Entry {
        id: id(n),
        log: LogId("log".to_owned()),
        at: Timestamp {
            utc_ms: 0,
            offset_min: 0,
            recorded: None,
        },
        by: String::new(),
        device: "d".to_owned(),
        n: n as u64,
        after: n.checked_sub(1).map(id).into_iter().collect(),
        what: what.clone(),
    }))
}
