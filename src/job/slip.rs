//! What a job leaves on paper for the next phone: the few facts that the visit after needs.
//!
//! Nobody is named in them. A phone that takes a job from paper keeps them as one entry. Specs,
//! the vehicle, what is due, what is loose and how it ended then count until this job states
//! them itself; readings and decisions never do, since nobody measured them here.

use crate::job::entry::{Consent, Decided, Ending, Event, Inputs, Moved, Scope, VehicleField};
use crate::job::key::{Key, keys};
use crate::job::runout::{Run, runs};
use crate::job::sheet::JobState;
use crate::sorted::Sorted;
use crate::trade::play::{Decision, Way};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Item, SetName, StepKey};

pub use crate::job::entry::Slip;

/// What of a job goes on paper, in a fixed order: vehicle, corners, specs, what is loose,
/// readings, the last run round each surface, decisions, yes or no to the repair, parts,
/// what is due, the ending.
///
/// Struck and superseded entries are not among it, nor what names a person.
pub fn facts(sheet: &JobState) -> Vec<Event> {
    let mut facts: Vec<Event> = sheet
        .keys()
        .filter(|key| is_recorded(sheet, key))
        .filter_map(|key| recorded(&sheet.holds(key)?.what))
        .collect();
    facts.extend(loose(sheet));
    facts.order_by_key(rank);
    facts
}

impl Slip {
    /// The fact that counts for a key until the job states it; never a reading or a decision.
    pub(super) fn stands_in(&self, key: &Key) -> Option<&Event> {
        let counts = matches!(
            key,
            Key::Vehicle(_)
                | Key::Corners
                | Key::Spec(_)
                | Key::Due(_)
                | Key::Item(_)
                | Key::Mishap(_)
                | Key::Ended
        );
        let mut facts = self.facts.iter().filter(|_| counts);
        facts.find(|what| keys(what).contains(key))
    }

    /// Every item that it says something of.
    pub(super) fn items(&self) -> impl Iterator<Item = Item> {
        self.facts
            .iter()
            .flat_map(keys)
            .filter_map(|key| match key {
                Key::Item(item) | Key::Mishap(item) => Some(item),
                _ => None,
            })
    }

    /// The decision on a corner.
    pub fn decided(&self, corner: Corner) -> Option<&Decided> {
        self.facts.iter().find_map(|what| match what {
            Event::Decided(decided) if decided.corner == corner => Some(decided),
            _ => None,
        })
    }

    /// How the dial was set up for a set, if that was recorded.
    pub fn dial_setup(&self, corner: Corner, set: SetName) -> Option<&Way> {
        self.facts.iter().find_map(|what| match what {
            Event::DialSetup(setup) if (setup.corner, setup.set) == (corner, set) => {
                Some(&setup.way)
            }
            _ => None,
        })
    }

    /// The customer's answer to the repair of a corner.
    pub fn agreed(&self, corner: Corner) -> Option<&Consent> {
        self.facts.iter().find_map(|what| match what {
            Event::Consent(consent) if consent.step.corner == Some(corner) => Some(consent),
            _ => None,
        })
    }

    /// Whether it was a STOP that nobody repaired before the paper was printed.
    pub fn leaves_stop(&self, corner: Corner) -> bool {
        let stop = |decided: &Decided| decided.decision == Decision::Stop;
        let finished = self.ending() == Some(Ending::Finished);
        self.decided(corner).is_some_and(stop) && !finished
    }

    /// How the job had ended when the paper was printed.
    pub fn ending(&self) -> Option<Ending> {
        self.facts.iter().find_map(|what| match what {
            Event::Ended(ended) => Some(ended.ending),
            _ => None,
        })
    }
}

fn is_recorded(sheet: &JobState, key: &Key) -> bool {
    match key {
        Key::Vehicle(field) => *field != VehicleField::Vin,
        Key::Decided(corner, nth) => {
            let stands = sheet.decided(*corner);
            stands.is_some_and(|decided| decided.nth == *nth)
        }
        Key::Corners
        | Key::Spec(_)
        | Key::Reading(..)
        | Key::Consent(_)
        | Key::Part(_)
        | Key::Due(_)
        | Key::Ended => true,
        Key::DialSetup(corner, set) => was_read(sheet, *corner, *set),
        Key::Runout(corner, run, _) => is_last_run(sheet, *corner, *run),
        // A decision is told so that a STOP stays one on the next phone. No proof is, nor
        // what a run said: their readings and how the job ended are told, and the symbol of a plain
        // replaced hub is full.
        Key::Proved(_) | Key::FaceFound(..) | Key::RotorFound(..) => false,
        _ => false,
    }
}

/// Whether a reading of a set is told, whose line says how the dial was set up.
fn was_read(sheet: &JobState, corner: Corner, set: SetName) -> bool {
    let is_one = |key: &Key| matches!(key, Key::Reading(at, of, ..) if (*at, *of) == (corner, set));
    sheet.keys().any(is_one)
}

/// Whether no later run was read round the same surface: paper has room for the last alone.
fn is_last_run(sheet: &JobState, corner: Corner, nth: u8) -> bool {
    let runs = runs(sheet, corner);
    let Some(run) = runs.iter().find(|run| run.nth == nth) else {
        return false;
    };
    let later = |other: &Run| nth < other.nth && other.setup.surface == run.setup.surface;
    !runs.iter().any(later)
}

/// A fact as paper tells it.
fn recorded(what: &Event) -> Option<Event> {
    match what {
        Event::Consent(consent) => (consent.scope == Scope::Repair).then(|| {
            Event::Consent(Consent {
                amount: None,
                ..consent.clone()
            })
        }),
        Event::Decided(decided) => Some(Event::Decided(Decided {
            reasons: decided.reasons.iter().take(REASONS).cloned().collect(),
            inputs: Inputs::none(),
            ..decided.clone()
        })),
        other => Some(other.clone()),
    }
}

/// So many reasons of a decision go on paper, the gravest first; what it rested on stands in the
/// file alone. A plain replaced hub fills one symbol to its last bytes.
const REASONS: usize = 4;

/// What is loose, those of one step and state together, and what else was named or broke.
fn loose(sheet: &JobState) -> Vec<Event> {
    let mut moved: Vec<((StepKey, Corner), Moved)> = Vec::new();
    let mut other = Vec::new();
    for (item, _) in sheet.loose() {
        for key in [Key::Item(item), Key::Mishap(item)] {
            match sheet.fact(&key) {
                Some(Event::Moved(from)) => gather(&mut moved, item, from),
                Some(what @ (Event::Also(_) | Event::Mishap(_))) => other.push(what.clone()),
                _ => {}
            }
        }
    }
    let moved = moved.into_iter().map(|(_, moved)| Event::Moved(moved));
    moved.chain(other).collect()
}

fn gather(all: &mut Vec<((StepKey, Corner), Moved)>, item: Item, from: &Moved) {
    let place = (from.step, item.corner);
    let same = all
        .iter_mut()
        .find(|(at, moved)| *at == place && moved.to == from.to);
    match same {
        Some((_, moved)) => moved.items.push(item),
        None => {
            let moved = Moved {
                step: from.step,
                items: vec![item],
                to: from.to,
                wrench: None,
            };
            all.push((place, moved));
        }
    }
}

/// The place of a fact on paper.
const fn rank(what: &Event) -> u8 {
    match what {
        Event::Vehicle(..) => 0,
        Event::Corners(_) => 1,
        Event::Spec(_) => 2,
        Event::Moved(_) | Event::Also(_) | Event::Mishap(_) => 3,
        Event::DialSetup(_) | Event::Reading(_) | Event::Runout(_) => 4,
        Event::Decided(_) => 5,
        Event::Consent(_) => 6,
        Event::Part(_) => 7,
        Event::Due(_) => 8,
        _ => 9,
    }
}
