//! From entries to the sheet. Total and order-free: it never refuses an entry, and the same set
//! in any order, any number of times, gives the same sheet.

use std::hash::{DefaultHasher, Hash, Hasher};

use crate::job::entry::{Entry, EntryId, Event};
use crate::job::key::{Key, keys};
use crate::job::line::Latest;
use crate::job::order::{Ordered, order};
use crate::job::problem::Problem;
use crate::job::sheet::JobState;
use crate::map::{OrderedMap, OrderedSet};
use crate::sorted::Sorted;
use crate::trade::wheel_end::{ItemState, StepKey};

/// Folds entries of one log into its sheet.
pub fn fold(entries: impl IntoIterator<Item = Entry>) -> JobState {
    let mut problems = OrderedSet::new();
    let by_id = unique(entries, &mut problems);
    let ordered = order(by_id);
    problems.extend(ordered.missing.iter().cloned().map(Problem::Missing));
    problems.extend(ordered.circles.iter().cloned().map(Problem::Circle));
    let effective = effective(&ordered);
    let mut registers = registers(&ordered, &effective);
    begin_again(&ordered, &mut registers);
    for (key, places) in &registers {
        if disagree(&ordered, key, places) {
            problems.insert(Problem::Disagree(key.clone()));
        }
    }
    for entry in &ordered.entries {
        if let Event::Unknown(_) = entry.what {
            problems.insert(Problem::Unknown(entry.id.clone()));
        }
    }
    let heads = heads(&ordered);
    JobState::new(
        ordered.entries,
        effective,
        registers,
        heads,
        problems.into_iter().collect(),
    )
}

/// One entry an id. An erased body beats its original, and that a body that was let go of; of two
/// others with one id the choice does not depend on the order in which they came, and it is said.
fn unique(
    entries: impl IntoIterator<Item = Entry>,
    problems: &mut OrderedSet<Problem>,
) -> OrderedMap<EntryId, Entry> {
    let mut versions: OrderedMap<EntryId, Vec<Entry>> = OrderedMap::new();
    for entry in entries {
        versions.or_default(entry.id.clone()).push(entry);
    }
    let mut by_id = OrderedMap::new();
    for (id, mut versions) in versions {
        if versions.len() > 1 {
            versions = in_order(versions);
            versions.dedup();
        }
        let count = |of| versions.iter().filter(|e| rank(e) == of).count();
        if (0..=2).any(|of| count(of) > 1) {
            problems.insert(Problem::Edited(id.clone()));
        }
        if let Some(saved) = versions.into_iter().next() {
            by_id.insert(id, saved);
        }
    }
    by_id
}

/// Of several bodies of one entry the lowest stands.
const fn rank(entry: &Entry) -> u8 {
    match entry.what {
        Event::Erased(_) => 0,
        Event::LetGo(_) => 2,
        _ => 1,
    }
}

/// Versions of one entry by rank, and of one rank by a digest of all that they say.
fn in_order(mut versions: Vec<Entry>) -> Vec<Entry> {
    versions.order_by_key(|it| (rank(it), digest(it)));
    versions
}

/// Two different versions have the same one once in 2^64.
fn digest(entry: &Entry) -> u64 {
    let mut digest = DefaultHasher::new();
    entry.hash(&mut digest);
    digest.finish()
}

/// An entry counts if no strike that counts hits it; a strike may hit only what it had seen, and
/// never a number that was given: a credit note takes that back.
fn effective(ordered: &Ordered) -> Vec<bool> {
    let place: OrderedMap<&EntryId, usize> =
        OrderedMap::from_iter(ordered.entries.iter().enumerate().map(|(i, e)| (&e.id, i)));
    let mut counts = vec![true; ordered.entries.len()];
    for (here, entry) in ordered.entries.iter().enumerate().rev() {
        let Event::Strike(hits) = &entry.what else {
            continue;
        };
        if !counts.get(here).copied().unwrap_or(false) {
            continue;
        }
        for hit in hits.iter().filter_map(|id| place.get(id)) {
            let hit_entry = ordered.entries.get(*hit).map(|entry| &entry.what);
            let numbered = matches!(hit_entry, Some(Event::Invoice(_)));
            let may = ordered.seen.has(here, *hit) && !numbered;
            if let (true, Some(flag)) = (may, counts.get_mut(*hit)) {
                *flag = false;
            }
        }
    }
    counts
}

/// For each fact, the statements that no later one had seen, in order.
fn registers(ordered: &Ordered, effective: &[bool]) -> OrderedMap<Key, Vec<usize>> {
    let mut registers: OrderedMap<Key, Latest> = OrderedMap::new();
    for (here, entry) in ordered.entries.iter().enumerate() {
        if !effective.get(here).copied().unwrap_or(false) {
            continue;
        }
        for key in keys(&entry.what) {
            let latest = registers.or_default(key);
            latest.state(&ordered.seen, here);
        }
    }
    let places = |(key, latest): (Key, Latest)| (key, latest.places());
    registers.into_iter().map(places).collect()
}

/// What was turned counts only if it had seen every pass that stands: a tap noted beside the
/// beginning of a pass belongs to the pass before, whatever the clocks say.
fn begin_again(ordered: &Ordered, registers: &mut OrderedMap<Key, Vec<usize>>) {
    let passes: OrderedMap<StepKey, Vec<usize>> =
        OrderedMap::from_iter(registers.iter().filter_map(|(key, places)| match key {
            Key::Pass(step) => Some((*step, places.clone())),
            _ => None,
        }));
    for (key, places) in registers.iter_mut() {
        let Key::Turned(step, _) = key else { continue };
        let begun = passes.get(step).map_or(&[][..], Vec::as_slice);
        places.retain(|place| begun.iter().all(|pass| ordered.seen.has(*place, *pass)));
    }
    registers.retain(|_, places| !places.is_empty());
}

fn disagree(ordered: &Ordered, key: &Key, places: &[usize]) -> bool {
    let what = |place: &usize| ordered.entries.get(*place).map(|entry| &entry.what);
    let mut all = places.iter().filter_map(what);
    // Nearly every fact was stated once.
    let Some(first) = all.next() else {
        return false;
    };
    all.any(|other| !is_same(key, first, other))
}

/// Whether two entries state the same about one fact.
fn is_same(key: &Key, a: &Event, b: &Event) -> bool {
    let hold = |what: &Event| match (key, what) {
        (Key::Item(_) | Key::Turned(..), Event::Moved(moved)) => Some(moved.to),
        (Key::Item(_), Event::Also(_)) => Some(ItemState::Off),
        _ => None,
    };
    match (key, hold(a), hold(b)) {
        (Key::Pass(_), ..) => true,
        (_, None, None) => a == b,
        (_, a, b) => a == b,
    }
}

fn heads(ordered: &Ordered) -> Vec<EntryId> {
    let named: OrderedSet<&EntryId> =
        OrderedSet::from_iter(ordered.entries.iter().flat_map(|e| &e.after));
    ordered
        .entries
        .iter()
        .map(|e| &e.id)
        .filter(|id| !named.contains(id))
        .cloned()
        .collect()
}
