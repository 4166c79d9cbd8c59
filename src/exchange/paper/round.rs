//! A run round a face as one line: what its places have in common, then each place.

use super::line::{number, typed};
use crate::job::entry::{RunoutReading, Setup};
use crate::trade::play::Dial;
use crate::trade::runout::LeftOut;
use crate::trade::vehicle::Corner;
use crate::units::{Decimal, TypedLength};

/// What the places of one line have in common.
pub(super) type Frame<'a> = (Corner, u8, Setup, Dial, Option<&'a TypedLength>);

/// What a place has in common with the others of its line.
pub(super) fn frame(reading: &RunoutReading) -> Frame<'_> {
    let radius = reading.radius.as_ref();
    (
        reading.corner,
        reading.run,
        reading.setup,
        reading.dial,
        radius,
    )
}

/// The fields of a line before its places; `dial` is the number of the dial's own line.
pub(super) fn head(first: &RunoutReading, dial: String) -> Vec<String> {
    let setup = &first.setup;
    vec![
        first.corner.code().to_owned(),
        first.run.to_string(),
        setup.surface.code().to_owned(),
        setup.places.to_string(),
        setup.stud.to_string(),
        setup.cleaned.code().to_owned(),
        dial,
        first.radius.as_ref().map(number).unwrap_or_default(),
    ]
}

/// One place: `3=1.5`, `3@135deg=1.5`, `3=1.5#1!stud_hole`, or `3=` where it was skipped.
pub(super) fn place(reading: &RunoutReading) -> String {
    let angle = reading.angle.as_ref();
    let angle = angle.map(|angle| format!("@{}", number(angle)));
    let needle = reading.divisions.as_ref().map(Decimal::as_typed);
    let turns = reading.turns.map(|turns| format!("#{turns}"));
    let out = reading.left_out.map(|why| format!("!{}", why.code()));
    format!(
        "{}{}={}{}{}",
        reading.place,
        angle.unwrap_or_default(),
        needle.unwrap_or_default(),
        turns.unwrap_or_default(),
        out.unwrap_or_default()
    )
}

/// The place of a field, with what the line has in common.
pub(super) fn read_place(common: &RunoutReading, field: &str) -> Option<RunoutReading> {
    let (at, rest) = field.split_once('=')?;
    let (place, angle) = match at.split_once('@') {
        Some((place, angle)) => (place, Some(typed(angle)?)),
        None => (at, None),
    };
    let (needle, left_out) = match rest.split_once('!') {
        Some((needle, why)) => (needle, Some(LeftOut::from_code(why)?)),
        None => (rest, None),
    };
    let (needle, turns) = match needle.split_once('#') {
        Some((needle, turns)) => (needle, Some(turns.parse().ok()?)),
        None => (needle, None),
    };
    let divisions = match needle {
        "" => None,
        needle => Some(Decimal::parse(needle).ok()?),
    };
    Some(RunoutReading {
        place: place.parse().ok()?,
        angle,
        divisions,
        turns,
        left_out,
        ..common.clone()
    })
}
