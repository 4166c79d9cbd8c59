//! The sets of readings of a corner as they are told: as recorded, else as judged now.

use crate::job::judge::{Measured, measured, rests_on};
use crate::job::key::Key;
use crate::job::proof;
use crate::job::sheet::JobState;
use crate::trade::play::{Figures, SeriesError};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{SetName, When};

/// The set that counts before the work: the second where the first was asked again, unless it
/// cannot be compared and the first can.
pub fn before(sheet: &JobState, corner: Corner) -> Option<Measured> {
    let mut sets = sets_before(sheet, corner);
    let compared = sets.iter().rposition(|(_, set)| set.is_compared());
    let place = compared.or_else(|| sets.len().checked_sub(1))?;
    Some(sets.swap_remove(place).1)
}

/// The sets before the work that give a play, by their number, as they are told.
pub fn sets_before(sheet: &JobState, corner: Corner) -> Vec<(u8, Measured)> {
    let set = |nth| {
        let when = When::Before;
        let set = reported(sheet, corner, SetName { when, nth })?.ok()?;
        Some((nth, set))
    };
    (1..=2).filter_map(set).collect()
}

/// A set as it was recorded: by the decision that stands, or by the proof after the work; as it is
/// judged now where none was, or where that stands no more. `None` before the first round.
///
/// # Errors
/// [`SeriesError`] if a round gives no play.
pub fn reported(
    sheet: &JobState,
    corner: Corner,
    name: SetName,
) -> Option<Result<Measured, SeriesError>> {
    let measured = measured(sheet, corner, name)?;
    Some(measured.map(|now| match recorded(sheet, corner, name) {
        Some(figures) => now.recorded_as(figures),
        None => now,
    }))
}

/// What was recorded of a set, unless something that it rests on was told or taken back since, or
/// on another phone beside it.
fn recorded(sheet: &JobState, corner: Corner, name: SetName) -> Option<&Figures> {
    if name == SetName::AFTER {
        return proof::recorded(sheet, corner)?.set.as_deref();
    }
    let decided = sheet.decided(corner)?;
    let figures = match name.when {
        When::Before => decided.inputs.set(name.nth)?,
        When::After => return None,
    };
    let entry = sheet.holds(&Key::Decided(corner, decided.nth))?;
    // The dial's own error stands in the record; wrenches are added to the kit long after it.
    let facts = rests_on(corner, name);
    let stands = sheet.had_seen_all(entry, |key| facts.contains(key));
    stands.then_some(figures)
}
