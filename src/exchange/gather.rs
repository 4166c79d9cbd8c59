//! Many files into one: the union of their entries, and what a shop must know about them.

use std::collections::{BTreeMap, BTreeSet};

use crate::exchange::envelope::{KeptText, LogKind};
use crate::exchange::import::Incoming;
use crate::exchange::merge::merge;
use crate::exchange::wire::{WireError, decode};
use crate::job::entry::{EntryId, LogId};

/// The logs of many files.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Gathered {
    logs: BTreeMap<(LogKind, LogId), Vec<KeptText>>,
    /// Entries of which the files hold different contents; the one that came first is kept.
    pub edited: BTreeSet<EntryId>,
    /// Entries that cannot be read; they are kept byte for byte all the same.
    pub unreadable: BTreeMap<EntryId, WireError>,
}

/// Running numbers of a device that are in no file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Gap {
    /// The device.
    pub device: String,
    /// The first number that is missing.
    pub from: u64,
    /// The last one.
    pub to: u64,
}

impl Gathered {
    /// Takes in what a file holds.
    pub fn take(&mut self, incoming: &Incoming) {
        for log in &incoming.logs {
            let mut came = log.records.clone();
            for (record, why) in &log.unreadable {
                let id = EntryId(record.id.clone());
                self.unreadable.insert(id, why.clone());
                came.push(record.clone());
            }
            let here = self.logs.entry((log.kind, log.id.clone())).or_default();
            self.edited.extend(union(here, &came));
        }
    }

    /// The logs, as an export wants them.
    pub fn logs(&self) -> Vec<(LogKind, LogId, Vec<String>)> {
        let texts = |records: &[KeptText]| records.iter().map(|r| r.text.clone()).collect();
        self.logs
            .iter()
            .map(|((kind, id), records)| (*kind, id.clone(), texts(records)))
            .collect()
    }

    /// The entries of one log.
    pub fn records(&self, id: &LogId) -> Vec<KeptText> {
        let of = self.logs.iter().filter(|((_, log), _)| log == id);
        of.flat_map(|(_, records)| records.clone()).collect()
    }

    /// The jobs whose id begins so.
    pub fn jobs(&self, begins: &str) -> Vec<LogId> {
        let jobs = self.logs.keys().filter(|(kind, id)| {
            *kind == LogKind::Job && !begins.is_empty() && id.0.starts_with(begins)
        });
        jobs.map(|(_, id)| id.clone()).collect()
    }

    /// Puts erased entries in the place of their originals.
    pub fn replace(&mut self, erased: &[KeptText]) {
        for here in self.logs.values_mut() {
            union(here, erased_of(here, erased).as_slice());
        }
    }

    /// The running numbers that are missing between the first and the last of each device.
    ///
    /// A device counts through all its logs, so that a gap may also lie in a job that was not
    /// handed in.
    pub fn gaps(&self) -> Vec<Gap> {
        let mut numbers: BTreeMap<String, BTreeSet<u64>> = BTreeMap::new();
        for record in self.logs.values().flatten() {
            if let Ok(entry) = decode(&record.text) {
                numbers.entry(entry.device).or_default().insert(entry.n);
            }
        }
        let gaps = numbers.iter().flat_map(|(device, numbers)| {
            let pairs = numbers.iter().zip(numbers.iter().skip(1));
            pairs.filter_map(move |(before, after)| {
                let (from, to) = (before.checked_add(1)?, after.checked_sub(1)?);
                let device = device.clone();
                (from <= to).then_some(Gap { device, from, to })
            })
        });
        gaps.collect()
    }
}

fn erased_of(here: &[KeptText], erased: &[KeptText]) -> Vec<KeptText> {
    let is_here = |gone: &&KeptText| here.iter().any(|r| r.id == gone.id && r.log == gone.log);
    erased.iter().filter(is_here).cloned().collect()
}

/// Adds what came to what is here, by id; gives those that are not the same entry.
fn union(here: &mut Vec<KeptText>, came: &[KeptText]) -> Vec<EntryId> {
    let change = merge(here, came);
    for erased in change.replace {
        if let Some(original) = here.iter_mut().find(|record| record.id == erased.id) {
            *original = erased;
        }
    }
    here.extend(change.add);
    here.sort();
    change.edited
}
