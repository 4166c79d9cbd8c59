//! The order of entries: what each device had seen, never what its clock said.

use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet, BinaryHeap};

use crate::job::entry::{Entry, EntryId};

/// Entries in an order in which each comes after all that it saw; ties by id.
pub(super) struct Ordered {
    /// The entries.
    pub(super) entries: Vec<Entry>,
    /// The places of the entries that each one had seen, directly or through others.
    pub(super) seen: Vec<Places>,
    /// Ids that entries name and that are not here.
    pub(super) missing: Vec<EntryId>,
    /// Entries that have seen themselves, directly or through others; no program writes them.
    pub(super) circles: Vec<EntryId>,
}

/// A set of places, one bit each.
#[derive(Clone, Default)]
pub(super) struct Places(Vec<u64>);

impl Places {
    fn insert(&mut self, place: usize) {
        let word = place / 64;
        if self.0.len() <= word {
            self.0.resize(word + 1, 0);
        }
        if let Some(bits) = self.0.get_mut(word) {
            *bits |= 1 << (place % 64);
        }
    }

    fn add(&mut self, other: &Self) {
        if self.0.len() < other.0.len() {
            self.0.resize(other.0.len(), 0);
        }
        for (mine, theirs) in self.0.iter_mut().zip(&other.0) {
            *mine |= theirs;
        }
    }

    /// Whether the place is in the set.
    pub(super) fn has(&self, place: usize) -> bool {
        self.0
            .get(place / 64)
            .is_some_and(|bits| bits & (1 << (place % 64)) != 0)
    }
}

/// Puts entries in order. Ids must differ; an entry of a circle comes last, by id.
pub(super) fn order(by_id: BTreeMap<EntryId, Entry>) -> Ordered {
    let (waiting, children, missing) = links(&by_id);
    let (ids, stuck) = topological(&by_id, waiting, &children);
    let circles = circles(stuck, &children);
    let place: BTreeMap<&EntryId, usize> = ids.iter().enumerate().map(|(i, id)| (id, i)).collect();
    let mut seen: Vec<Places> = Vec::with_capacity(ids.len());
    for (here, id) in ids.iter().enumerate() {
        let mut places = Places::default();
        let parents = by_id.get(id).map_or(&[][..], |entry| &entry.after);
        for parent in parents.iter().filter_map(|parent| place.get(parent)) {
            if *parent < here {
                places.insert(*parent);
                if let Some(theirs) = seen.get(*parent) {
                    places.add(theirs);
                }
            }
        }
        seen.push(places);
    }
    let mut by_id = by_id;
    let entries = ids.iter().filter_map(|id| by_id.remove(id)).collect();
    Ordered {
        entries,
        seen,
        missing,
        circles,
    }
}

type Links = (
    BTreeMap<EntryId, usize>,
    BTreeMap<EntryId, Vec<EntryId>>,
    Vec<EntryId>,
);

fn links(by_id: &BTreeMap<EntryId, Entry>) -> Links {
    let mut waiting = BTreeMap::new();
    let mut children: BTreeMap<EntryId, Vec<EntryId>> = BTreeMap::new();
    let mut missing = Vec::new();
    for (id, entry) in by_id {
        let mut count = 0;
        for parent in &entry.after {
            if by_id.contains_key(parent) {
                count += 1;
                children.entry(parent.clone()).or_default().push(id.clone());
            } else {
                missing.push(parent.clone());
            }
        }
        waiting.insert(id.clone(), count);
    }
    missing.sort();
    missing.dedup();
    (waiting, children, missing)
}

fn topological(
    by_id: &BTreeMap<EntryId, Entry>,
    mut waiting: BTreeMap<EntryId, usize>,
    children: &BTreeMap<EntryId, Vec<EntryId>>,
) -> (Vec<EntryId>, BTreeSet<EntryId>) {
    let ready = waiting.iter().filter(|(_, count)| **count == 0);
    let mut heap: BinaryHeap<Reverse<EntryId>> = ready.map(|(id, _)| Reverse(id.clone())).collect();
    let mut ids = Vec::with_capacity(by_id.len());
    while let Some(Reverse(id)) = heap.pop() {
        for child in children.get(&id).into_iter().flatten() {
            if let Some(count) = waiting.get_mut(child) {
                *count = count.saturating_sub(1);
                if *count == 0 {
                    heap.push(Reverse(child.clone()));
                }
            }
        }
        waiting.remove(&id);
        ids.push(id);
    }
    let stuck: BTreeSet<EntryId> = waiting.into_keys().collect();
    ids.extend(stuck.iter().cloned());
    (ids, stuck)
}

/// Of the entries that never came free, those in a circle; the others only come after one.
fn circles(
    mut stuck: BTreeSet<EntryId>,
    children: &BTreeMap<EntryId, Vec<EntryId>>,
) -> Vec<EntryId> {
    loop {
        let leads_on = |id: &EntryId| {
            let mut next = children.get(id).into_iter().flatten();
            next.any(|child| stuck.contains(child))
        };
        let (inside, ends): (BTreeSet<EntryId>, BTreeSet<EntryId>) =
            stuck.iter().cloned().partition(leads_on);
        if ends.is_empty() {
            return inside.into_iter().collect();
        }
        stuck = inside;
    }
}
