//! Many files into one: the union of their entries, and what a shop must know about them.

use crate::exchange::envelope::{LogKind, SavedText};
use crate::exchange::erase::{Besides, Left, erased_with, left};
pub use crate::exchange::gaps::Gap;
use crate::exchange::gaps::{gaps, runs};
use crate::exchange::import::Incoming;
use crate::exchange::merge::merge;
use crate::exchange::wire::{WireError, decode};
use crate::job::entry::{Entry, EntryId, LogId};
use crate::map::{OrderedMap, OrderedSet};

/// The logs of many files, of whatever names and in whatever order they came.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Gathered {
    logs: OrderedMap<(LogKind, LogId), OrderedSet<SavedText>>,
    /// Entries that cannot be read; they are kept byte for byte all the same.
    pub unreadable: OrderedMap<EntryId, WireError>,
}

/// The union of one log.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Union {
    /// What it is.
    pub kind: LogKind,
    /// Its identity.
    pub id: LogId,
    /// Its entries, one an id.
    pub records: Vec<SavedText>,
    /// Entries of which the files hold different contents; one of them is kept, by its bytes.
    pub edited: Vec<EntryId>,
}

impl Gathered {
    /// Takes in what a file holds.
    pub fn take(&mut self, incoming: &Incoming) {
        for log in &incoming.logs {
            let here = self.logs.or_default((log.kind, log.id.clone()));
            here.extend(log.records.iter().cloned());
            for (record, why) in &log.unreadable {
                let id = EntryId(record.id.clone());
                self.unreadable.insert(id, why.clone());
                here.insert(record.clone());
            }
        }
    }

    /// The union of each log.
    pub fn unions(&self) -> Vec<Union> {
        let unions = self.logs.iter().map(|((kind, id), records)| {
            let records: Vec<SavedText> = records.iter().cloned().collect();
            let union = merge(&[], &records);
            Union {
                kind: *kind,
                id: id.clone(),
                records: union.add,
                edited: union.edited,
            }
        });
        unions.collect()
    }

    /// Erases the customer of a job, and what is named besides; gives how many entries that were, and
    /// what stays.
    ///
    /// # Errors
    /// [`WireError`] as in [`erased_with`].
    pub fn erase(&mut self, job: &LogId, besides: &[Besides]) -> Result<(usize, Left), WireError> {
        let Some(here) = self.logs.get_mut(&(LogKind::Job, job.clone())) else {
            return Ok(Default::default());
        };
        let records: Vec<SavedText> = here.iter().cloned().collect();
        let gone = erased_with(&records, besides)?;
        let count = gone.len();
        here.extend(gone.iter().cloned());
        let is_gone = |record: &SavedText| gone.iter().any(|gone| gone.id == record.id);
        let stay: Vec<SavedText> = records.into_iter().filter(|r| !is_gone(r)).collect();
        Ok((count, left(&stay)))
    }

    /// The jobs whose id begins so.
    pub fn jobs(&self, begins: &str) -> Vec<LogId> {
        let jobs = self.logs.keys().filter(|(kind, id)| {
            *kind == LogKind::Job && !begins.is_empty() && id.0.starts_with(begins)
        });
        jobs.map(|(_, id)| id.clone()).collect()
    }

    /// The running numbers that are missing, as in [`gaps`].
    pub fn gaps(&self) -> Vec<Gap> {
        let entries = self.logs.values().flatten();
        let entries: Vec<Entry> = entries.filter_map(|r| decode(&r.text).ok()).collect();
        gaps(&runs(&entries))
    }
}
