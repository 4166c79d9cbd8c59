//! The order of entries: what each device had seen, never what its clock said.

use std::borrow::Borrow;
use std::cmp::Reverse;
use std::collections::BinaryHeap;

use crate::job::entry::{Entry, EntryId};
use crate::job::line::Seen;
use crate::map::OrderedMap;
use crate::sorted::Sorted;

/// Entries in an order in which each comes after all that it saw; ties by id.
pub(super) struct Ordered {
    /// The entries.
    pub(super) entries: Vec<Entry>,
    /// What each one had seen, directly or through others.
    pub(super) seen: Seen,
    /// Ids that entries name and that are not here.
    pub(super) missing: Vec<EntryId>,
    /// Entries that have seen themselves, directly or through others; no program writes them.
    pub(super) circles: Vec<EntryId>,
}

/// Puts entries in order. Ids must differ; an entry of a circle comes last, by id.
pub(super) fn order(by_id: OrderedMap<EntryId, Entry>) -> Ordered {
    let entries: Vec<Entry> = by_id.into_values().collect();
    let links = Links::of(&entries);
    let (ranks, waiting) = links.topological();
    let circles = links.circles(&waiting);
    let seen = links.seen(&entries, &ranks, usize::MAX).unwrap_or_default();
    let name = |rank: usize| entries.get(rank).map(|entry| entry.id.clone());
    let circles = circles.into_iter().filter_map(name).collect();
    let missing = links.missing;
    let mut entries: Vec<Option<Entry>> = entries.into_iter().map(Some).collect();
    let take = |rank: usize| entries.get_mut(rank).and_then(Option::take);
    Ordered {
        entries: ranks.into_iter().filter_map(take).collect(),
        seen,
        missing,
        circles,
    }
}

/// Whether to know what each entry had seen takes more than `most` steps: the entries branch and
/// join far more often than phones that meet now and then can cause.
pub fn is_tangled<'a>(entries: impl IntoIterator<Item = &'a Entry>, most: usize) -> bool {
    let mut by_id: Vec<&Entry> = entries.into_iter().collect();
    // No entry joins more lines than there are entries.
    let links: usize = by_id.iter().map(|entry| entry.after.len()).sum();
    if links.saturating_mul(by_id.len()) <= most {
        return false;
    }
    by_id.order_by(|a, b| a.id.cmp(&b.id));
    by_id.dedup_by(|a, b| a.id == b.id);
    let links = Links::of(&by_id);
    let (ranks, _) = links.topological();
    links.seen(&by_id, &ranks, most).is_none()
}

/// What follows what; entries stand for their rank by id.
struct Links {
    parents: Vec<Vec<usize>>,
    children: Vec<Vec<usize>>,
    missing: Vec<EntryId>,
}

impl Links {
    /// The links of entries that are sorted by id.
    fn of<E: Borrow<Entry>>(entries: &[E]) -> Self {
        let ranks: OrderedMap<&EntryId, usize> = OrderedMap::from_iter(
            (0..)
                .zip(entries)
                .map(|(rank, entry)| (&entry.borrow().id, rank)),
        );
        let mut parents = vec![Vec::new(); entries.len()];
        let mut children = vec![Vec::new(); entries.len()];
        let mut missing = Vec::new();
        for ((child, entry), mine) in (0..).zip(entries).zip(&mut parents) {
            for id in &entry.borrow().after {
                let Some(parent) = ranks.get(id).copied() else {
                    missing.push(id.clone());
                    continue;
                };
                mine.push(parent);
                if let Some(theirs) = children.get_mut(parent) {
                    theirs.push(child);
                }
            }
        }
        missing.order();
        missing.dedup();
        Self {
            parents,
            children,
            missing,
        }
    }

    /// The ranks in order, and for how many parents each one waits in vain.
    fn topological(&self) -> (Vec<usize>, Vec<usize>) {
        let mut waiting: Vec<usize> = self.parents.iter().map(Vec::len).collect();
        let free = |(rank, count): (usize, &usize)| (*count == 0).then_some(Reverse(rank));
        let mut heap: BinaryHeap<_> = (0..).zip(&waiting).filter_map(free).collect();
        let mut ranks = Vec::with_capacity(waiting.len());
        while let Some(Reverse(rank)) = heap.pop() {
            ranks.push(rank);
            for child in self.children.get(rank).into_iter().flatten() {
                if let Some(count) = waiting.get_mut(*child) {
                    *count -= 1;
                    if *count == 0 {
                        heap.push(Reverse(*child));
                    }
                }
            }
        }
        let stuck = (0..).zip(&waiting).filter(|(_, count)| **count > 0);
        ranks.extend(stuck.map(|(rank, _)| rank));
        (ranks, waiting)
    }

    /// Of the entries that never came free, those in a circle; the others only come after one.
    fn circles(&self, waiting: &[usize]) -> Vec<usize> {
        let is_stuck = |rank: &usize| waiting.get(*rank).is_some_and(|count| *count > 0);
        let stuck = || (0..waiting.len()).filter(is_stuck);
        // How many stuck entries each one leads to; 0 for one that leads into no circle.
        let mut leads: Vec<usize> = vec![0; waiting.len()];
        for parent in stuck().filter_map(|rank| self.parents.get(rank)).flatten() {
            if let Some(count) = leads.get_mut(*parent) {
                *count += 1;
            }
        }
        let is_end = |rank: &usize| leads.get(*rank) == Some(&0);
        let mut ends: Vec<usize> = stuck().filter(is_end).collect();
        while let Some(end) = ends.pop() {
            let parents = self.parents.get(end).into_iter().flatten();
            for parent in parents.filter(|parent| is_stuck(parent)) {
                if let Some(count) = leads.get_mut(*parent) {
                    *count -= 1;
                    if *count == 0 {
                        ends.push(*parent);
                    }
                }
            }
        }
        let leads_on = |rank: &usize| leads.get(*rank).is_some_and(|count| *count > 0);
        stuck().filter(leads_on).collect()
    }

    /// What each of the entries had seen, in the order of `ranks`; an entry that one of a circle
    /// claims to have seen and that comes later is left out.
    fn seen<E: Borrow<Entry>>(&self, entries: &[E], ranks: &[usize], most: usize) -> Option<Seen> {
        let mut places = vec![0; ranks.len()];
        for (place, rank) in (0..).zip(ranks) {
            if let Some(of) = places.get_mut(*rank) {
                *of = place;
            }
        }
        let standing = |(here, rank): (usize, &usize)| {
            let entry = entries.get(*rank)?.borrow();
            let all = self.parents.get(*rank)?.iter();
            let parents = all.filter_map(|parent| places.get(*parent).copied());
            let before = parents.filter(|place| *place < here).collect();
            Some((entry.device.as_str(), before))
        };
        Seen::of((0..).zip(ranks).filter_map(standing), most)
    }
}
