//! Of the readings of one cycle that two phones took, the ones that hold until a person settles it:
//! those with the larger play.

use super::JobState;
use crate::job::entry::{Entry, Event, Reading, Side};
use crate::job::key::Key;
use crate::map::OrderedMap;
use crate::trade::play::{Divisions, Round};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::SetName;

/// The entry of one side of the cycle with the largest play. A phone's pull belongs to its own push,
/// else to the latest; a cycle that gives no play comes last.
pub(super) fn reading(
    sheet: &JobState,
    (corner, set, round): (Corner, SetName, u8),
    side: Side,
) -> Option<&Entry> {
    let of = |side| -> Vec<&Entry> {
        let key = Key::Reading(corner, set, round, side);
        sheet.stated(&key).collect()
    };
    let (pushes, pulls) = (of(Side::Push), of(Side::Pull));
    // A file may be forged: no pull is tried with every push.
    let own: OrderedMap<&str, &Entry> =
        OrderedMap::from_iter(pushes.iter().map(|it| (it.device.as_str(), *it)));
    let mut best: Option<(Option<f64>, [Option<&Entry>; 2])> = None;
    for pull in &pulls {
        let push = own.get(pull.device.as_str()).or(pushes.last()).copied();
        let play = play(push, pull);
        if best.as_ref().is_none_or(|(known, _)| *known <= play) {
            best = Some((play, [push, Some(pull)]));
        }
    }
    let [push, pull] = best.map_or([None, None], |(_, sides)| sides);
    match side {
        Side::Push => push.or_else(|| pushes.last().copied()),
        Side::Pull => pull,
    }
}

/// The play of a push and a pull, in millimetres; nothing where they give none.
fn play(push: Option<&Entry>, pull: &Entry) -> Option<f64> {
    let (push, pull) = (push.and_then(read), read(pull)?);
    let at = |reading: &Reading| Divisions::typed(&reading.divisions);
    let round = Round {
        turns: pull.turns,
        ..Round::of_two(push.map_or(Divisions::ZERO, at), at(pull))
    };
    if push.is_some_and(|push| push.dial != pull.dial) {
        return None;
    }
    pull.dial.play(round).ok().map(|play| play.mm())
}

fn read(entry: &Entry) -> Option<&Reading> {
    match &entry.what {
        Event::Reading(reading) => Some(reading),
        _ => None,
    }
}
