//! Many files into one: the union of their entries, and what a shop must know about them.

use std::collections::{BTreeMap, BTreeSet};

use crate::exchange::envelope::{KeptText, LogKind};
use crate::exchange::erase::{Left, erased, left};
pub use crate::exchange::gap::Gap;
use crate::exchange::gap::gaps;
use crate::exchange::import::Incoming;
use crate::exchange::merge::merge;
use crate::exchange::wire::{WireError, decode};
use crate::job::entry::{EntryId, LogId};

/// The logs of many files, of whatever names and in whatever order they came.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Gathered {
    logs: BTreeMap<(LogKind, LogId), BTreeSet<KeptText>>,
    /// Entries that cannot be read; they are kept byte for byte all the same.
    pub unreadable: BTreeMap<EntryId, WireError>,
}

/// The union of one log.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Union {
    /// What it is.
    pub kind: LogKind,
    /// Its identity.
    pub id: LogId,
    /// Its entries, one an id.
    pub records: Vec<KeptText>,
    /// Entries of which the files hold different contents; one of them is kept, by its bytes.
    pub edited: Vec<EntryId>,
}

impl Gathered {
    /// Takes in what a file holds.
    pub fn take(&mut self, incoming: &Incoming) {
        for log in &incoming.logs {
            let here = self.logs.entry((log.kind, log.id.clone())).or_default();
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
            let records: Vec<KeptText> = records.iter().cloned().collect();
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

    /// Erases the owner of a job; gives how many entries that were, and what stays.
    ///
    /// # Errors
    /// [`WireError`] as in [`erased`].
    pub fn erase(&mut self, job: &LogId) -> Result<(usize, Left), WireError> {
        let Some(here) = self.logs.get_mut(&(LogKind::Job, job.clone())) else {
            return Ok(Default::default());
        };
        let records: Vec<KeptText> = here.iter().cloned().collect();
        let gone = erased(&records)?;
        let count = gone.len();
        here.extend(gone);
        Ok((count, left(&records)))
    }

    /// The jobs whose id begins so.
    pub fn jobs(&self, begins: &str) -> Vec<LogId> {
        let jobs = self.logs.keys().filter(|(kind, id)| {
            *kind == LogKind::Job && !begins.is_empty() && id.0.starts_with(begins)
        });
        jobs.map(|(_, id)| id.clone()).collect()
    }

    /// The running numbers that are missing between the first and the last of each device.
    ///
    /// A device counts through all its logs, so that a gap may also lie in a job that was not
    /// handed in.
    pub fn gaps(&self) -> Vec<Gap> {
        let entries = self.logs.values().flatten();
        let numbers: Vec<(String, u64)> = entries
            .filter_map(|record| decode(&record.text).ok())
            .map(|entry| (entry.device, entry.n))
            .collect();
        gaps(
            numbers
                .iter()
                .map(|(device, n)| (device.as_str(), (*n, *n))),
        )
    }
}
