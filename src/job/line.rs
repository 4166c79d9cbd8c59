//! What each entry had seen, without a list of all of it for each: the entries of a phone stand in
//! a line, each after the one before it, and of a line everything up to a place was seen or nothing.
//!
//! A phone that writes alone adds nothing to what it had seen of others, and its entries share it.
//! Only where lines meet or part is that put together again.

use crate::map::OrderedMap;
use crate::sorted::Sorted;
use std::cmp::Reverse;
use std::rc::Rc;

/// How far other lines were seen: by line, the last place in it.
type Reach = Vec<(usize, usize)>;

/// Where an entry stands, and what it had seen.
#[derive(Clone)]
struct Standing {
    line: usize,
    reach: Rc<Reach>,
}

/// What every entry of an order had seen.
#[derive(Default)]
pub(super) struct Seen(Vec<Standing>);

impl Seen {
    /// Of entries with their device and the places of their parents, all before them; nothing where
    /// it would take more than `most` steps.
    pub(super) fn of<'a>(
        entries: impl Iterator<Item = (&'a str, Vec<usize>)>,
        most: usize,
    ) -> Option<Self> {
        let mut seen = Self::default();
        let mut last_of: OrderedMap<&str, usize> = OrderedMap::new();
        let (mut lines, mut steps) = (0, 0_usize);
        for (here, (device, parents)) in entries.enumerate() {
            let last = last_of.insert(device, here);
            let before = last.and_then(|last| seen.0.get(last));
            let standing = match before {
                Some(before) if parents == last.as_slice() => before.clone(),
                _ => {
                    steps = steps.saturating_add(seen.steps(&parents));
                    if steps > most {
                        return None;
                    }
                    let reach = seen.joined(&parents);
                    let goes_on =
                        before.filter(|it| last.is_some_and(|at| reach.contains(&(it.line, at))));
                    let line = goes_on.map_or(lines, |before| before.line);
                    lines = lines.max(line + 1);
                    let reach = Rc::new(reach);
                    Standing { line, reach }
                }
            };
            seen.0.push(standing);
        }
        Some(seen)
    }

    /// How many lines are looked at for an entry with these parents.
    fn steps(&self, parents: &[usize]) -> usize {
        let all = parents.iter().filter_map(|parent| self.0.get(*parent));
        all.map(|standing| standing.reach.len() + 1).sum()
    }

    /// How far the lines were seen by an entry with these parents.
    fn joined(&self, parents: &[usize]) -> Reach {
        let standings = || {
            parents
                .iter()
                .filter_map(|it| Some((*it, self.0.get(*it)?)))
        };
        let mut lines = standings();
        if let (Some((parent, standing)), None) = (lines.next(), lines.next()) {
            let mut all = Reach::clone(&standing.reach);
            let own = (standing.line, parent);
            match all.binary_search_by_key(&standing.line, |(line, _)| *line) {
                Ok(at) => all.splice(at..=at, [own]),
                Err(at) => all.splice(at..at, [own]),
            };
            return all;
        }
        let mut all = Reach::new();
        for (parent, standing) in standings() {
            all.extend(standing.reach.iter());
            all.push((standing.line, parent));
        }
        all.order_by_key(|(line, last)| (*line, Reverse(*last)));
        all.dedup_by_key(|(line, _)| *line);
        all
    }

    /// Whether the entry at `here` had seen the one at `place`.
    pub(super) fn has(&self, here: usize, place: usize) -> bool {
        let (Some(mine), Some(theirs)) = (self.0.get(here), self.0.get(place)) else {
            return false;
        };
        if mine.line == theirs.line {
            return place < here;
        }
        let at = mine
            .reach
            .binary_search_by_key(&theirs.line, |(line, _)| *line);
        let last = at.ok().and_then(|at| mine.reach.get(at));
        last.is_some_and(|(_, last)| place <= *last)
    }
}

/// The statements of one fact that no later one had seen: of each line the last at most.
#[derive(Default)]
pub(super) struct Latest(OrderedMap<usize, usize>);

impl Latest {
    /// Adds a later statement; those that it had seen stand no more.
    pub(super) fn state(&mut self, seen: &Seen, here: usize) {
        let Some(mine) = seen.0.get(here) else { return };
        let before = self.0.insert(mine.line, here);
        let before = before.and_then(|place| seen.0.get(place));
        // The last one of this line has put aside all that this one could.
        if before.is_some_and(|before| Rc::ptr_eq(&before.reach, &mine.reach)) {
            return;
        }
        if mine.reach.len() > self.0.len() {
            self.0.retain(|_, place| !seen.has(here, *place));
            return;
        }
        for (line, last) in mine.reach.iter().filter(|(line, _)| *line != mine.line) {
            if self.0.get(line).is_some_and(|place| place <= last) {
                self.0.remove(line);
            }
        }
    }

    /// The places that stand, in order.
    pub(super) fn places(self) -> Vec<usize> {
        let mut places: Vec<usize> = self.0.into_values().collect();
        places.order();
        places
    }
}
