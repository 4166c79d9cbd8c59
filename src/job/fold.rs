//! From entries to the sheet. Total and order-free: it never refuses an entry, and the same set
//! in any order, any number of times, gives the same sheet.

use std::collections::{BTreeMap, BTreeSet};

use crate::job::entry::{Entry, EntryId, Event};
use crate::job::key::{Key, keys};
use crate::job::line::Latest;
use crate::job::order::{Ordered, order};
use crate::job::problem::Problem;
use crate::job::sheet::JobState;
use crate::sorted::{Sorted, map_of, set_of};
use crate::trade::wheel_end::{ItemState, StepKey};

/// Folds entries of one log into its sheet.
pub fn fold(entries: impl IntoIterator<Item = Entry>) -> JobState {
    let mut problems = BTreeSet::new();
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
    problems: &mut BTreeSet<Problem>,
) -> BTreeMap<EntryId, Entry> {
    let mut versions: BTreeMap<EntryId, Vec<Entry>> = BTreeMap::new();
    for entry in entries {
        versions.entry(entry.id.clone()).or_default().push(entry);
    }
    let mut by_id = BTreeMap::new();
    for (id, mut versions) in versions {
        if versions.len() > 1 {
            versions = in_order(versions);
            versions.dedup();
        }
        let count = |of| versions.iter().filter(|e| rank(e) == of).count();
        if (0..=2).any(|of| count(of) > 1) {
            problems.insert(Problem::Edited(id.clone()));
        }
        if let Some(kept) = versions.into_iter().next() {
            by_id.insert(id, kept);
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

/// Versions of one entry by rank, and of one rank by all that they say.
fn in_order(versions: Vec<Entry>) -> Vec<Entry> {
    let keyed = versions
        .into_iter()
        .map(|it| ((rank(&it), format!("{it:?}")), it));
    let mut keyed: Vec<_> = keyed.collect();
    keyed.order_by(|(a, _), (b, _)| a.cmp(b));
    keyed.into_iter().map(|(_, it)| it).collect()
}

/// An entry counts if no strike that counts hits it; a strike may hit only what it had seen.
fn effective(ordered: &Ordered) -> Vec<bool> {
    let place: BTreeMap<&EntryId, usize> =
        map_of(ordered.entries.iter().enumerate().map(|(i, e)| (&e.id, i)));
    let mut counts = vec![true; ordered.entries.len()];
    for (here, entry) in ordered.entries.iter().enumerate().rev() {
        let Event::Strike(hits) = &entry.what else {
            continue;
        };
        if !counts.get(here).copied().unwrap_or(false) {
            continue;
        }
        for hit in hits.iter().filter_map(|id| place.get(id)) {
            let seen = ordered.seen.has(here, *hit);
            if let (true, Some(flag)) = (seen, counts.get_mut(*hit)) {
                *flag = false;
            }
        }
    }
    counts
}

/// For each fact, the statements that no later one had seen, in order.
fn registers(ordered: &Ordered, effective: &[bool]) -> BTreeMap<Key, Vec<usize>> {
    let mut registers: BTreeMap<Key, Latest> = BTreeMap::new();
    for (here, entry) in ordered.entries.iter().enumerate() {
        if !effective.get(here).copied().unwrap_or(false) {
            continue;
        }
        for key in keys(&entry.what) {
            let latest = registers.entry(key).or_default();
            latest.state(&ordered.seen, here);
        }
    }
    let places = |(key, latest): (Key, Latest)| (key, latest.places());
    registers.into_iter().map(places).collect()
}

/// What was turned counts only if it had seen every pass that stands: a tap noted beside the
/// beginning of a pass belongs to the pass before, whatever the clocks say.
fn begin_again(ordered: &Ordered, registers: &mut BTreeMap<Key, Vec<usize>>) {
    let passes: BTreeMap<StepKey, Vec<usize>> =
        map_of(registers.iter().filter_map(|(key, places)| match key {
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
    let value = |place: &usize| {
        ordered
            .entries
            .get(*place)
            .map(|entry| stated(key, &entry.what))
    };
    // Nearly every fact was stated once.
    let [first, others @ ..] = places else {
        return false;
    };
    if others.is_empty() {
        return false;
    }
    let first = value(first);
    others.iter().any(|place| value(place) != first)
}

/// What an entry states about one fact, as far as two statements can differ.
fn stated(key: &Key, what: &Event) -> String {
    match (key, what) {
        (Key::Item(_) | Key::Turned(..), Event::Moved(moved)) => moved.to.code().to_owned(),
        (Key::Item(_), Event::Also(_)) => ItemState::Off.code().to_owned(),
        (Key::Pass(_), _) => String::new(),
        _ => format!("{what:?}"),
    }
}

fn heads(ordered: &Ordered) -> Vec<EntryId> {
    let named: BTreeSet<&EntryId> = set_of(ordered.entries.iter().flat_map(|e| &e.after));
    ordered
        .entries
        .iter()
        .map(|e| &e.id)
        .filter(|id| !named.contains(id))
        .cloned()
        .collect()
}
