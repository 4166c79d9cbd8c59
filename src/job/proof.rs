//! The proof after the work: as it was recorded, else as today's rules judge it.
//!
//! Nothing is judged here: the rules stand in `trade::play`.

use crate::job::entry::{Event, Proved};
use crate::job::evidence::spun;
use crate::job::found;
use crate::job::judge::{self, measured, readings};
use crate::job::key::Key;
use crate::job::sheet::JobState;
use crate::trade::play::{After, Test, pass_after};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{REOPENED, SetName, Step, StepKey};

/// What today's rules say of the new part of a corner, with everything that it rests on, as it is
/// recorded.
pub fn proved(sheet: &JobState, corner: Corner) -> Proved {
    let set = measured(sheet, corner, SetName::AFTER).and_then(Result::ok);
    let (roughness, noise) = spun(sheet, spin(corner));
    let passed = pass_after(
        set.as_ref().map(|measured| &measured.conformity),
        roughness,
        noise,
    );
    let outcome = match (passed, set.as_ref().and_then(|set| set.apart)) {
        // The default limit stood in for a spec that was not met.
        (After::Pass { proven, .. }, Some(_)) => After::Pass {
            proven,
            not_done: vec![Test::Dial],
        },
        (passed, _) => passed,
    };
    let figures = set.map(|set| set.figures());
    Proved::today(corner, figures, (roughness, noise), outcome)
}

/// What the proof after the work says of a corner: the one that was recorded, if it stands.
pub fn after(sheet: &JobState, corner: Corner) -> After {
    match recorded(sheet, corner) {
        Some(proved) => proved.outcome.clone(),
        None => proved(sheet, corner).outcome,
    }
}

/// The proof of a corner as it was recorded, unless something that it rests on was told or taken
/// back since, or on another phone beside it.
pub fn recorded(sheet: &JobState, corner: Corner) -> Option<&Proved> {
    let entry = sheet.holds(&Key::Proved(corner))?;
    let facts = rests_on(corner);
    let stands = sheet.had_seen_all(entry, |key| facts.contains(key));
    sheet.proved(corner).filter(|_| stands)
}

/// Whether a fault that was told keeps the new part of a corner from being called finished.
pub fn is_blocked(sheet: &JobState, corner: Corner) -> bool {
    matches!(after(sheet, corner), After::Blocked { .. })
}

/// Where it is kept that a closed wheel end was opened again.
pub(super) const fn reopened(corner: Corner) -> StepKey {
    StepKey::at(Step::ProveResult, corner).nth(REOPENED)
}

/// Whether a closed wheel end was opened again to measure once more.
pub(super) fn is_reopened(sheet: &JobState, corner: Corner) -> bool {
    sheet.reply(reopened(corner)).is_some()
}

const fn spin(corner: Corner) -> StepKey {
    StepKey::at(Step::ProveSpin, corner)
}

/// Every fact that a proof rests on.
fn rests_on(corner: Corner) -> Vec<Key> {
    let mut facts = judge::rests_on(corner, SetName::AFTER);
    facts.extend([Key::Step(spin(corner)), Key::Carried]);
    facts
}

/// Whether anything was read or spun on the new part of a corner, or it was said why not.
fn was_looked_at(sheet: &JobState, corner: Corner) -> bool {
    readings(corner, SetName::AFTER)
        .chain([Key::Step(spin(corner))])
        .any(|key| sheet.holds(&key).is_some())
}

/// The proofs that are to be recorded: of every corner that has one, unless it stands recorded.
pub fn owed(sheet: &JobState) -> Vec<Proved> {
    let corners = sheet.corners().iter().copied();
    corners
        .filter(|corner| was_looked_at(sheet, *corner) && recorded(sheet, *corner).is_none())
        .map(|corner| proved(sheet, corner))
        .collect()
}

/// A tap with all that is to be recorded, proofs and what was found with dial and micrometer, if it
/// hands the job over or ends it: before that, so that the digest of what was handed over covers
/// it.
pub fn with_records(sheet: &JobState, mut whats: Vec<Event>) -> Vec<Event> {
    let closes = |what: &Event| matches!(what, Event::HandedOver(_) | Event::Ended(_));
    if let Some(place) = whats.iter().position(closes) {
        let mut owed: Vec<Event> = owed(sheet).into_iter().map(Event::Proved).collect();
        owed.extend(found::owed(sheet));
        owed.retain(|what| !whats.contains(what));
        whats.splice(place..place, owed);
    }
    whats
}

#[cfg(test)]
#[path = "proof/tests.rs"]
mod tests;
