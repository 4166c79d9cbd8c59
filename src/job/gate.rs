//! The six hold points: places where work must not go on without an answer.
//!
//! They are judged when a key is pressed, never when entries are folded.

use crate::job::entry::Reply;
use crate::job::progress::{is_tight, status};
use crate::job::sheet::Sheet;
use crate::trade::answer::Answer;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{
    Form, Group, HoldPoint, Item, REOPENED, SHOVE_CRACKED, SHOVE_WAITED, SetName, Step, StepKey,
    StepSpec, When,
};

/// A hold point that is not answered, and the step that would answer it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Held {
    /// Which.
    pub point: HoldPoint,
    /// Where the answer is given; none when the loose list itself must be emptied.
    pub answer_at: Option<StepKey>,
}

/// The first hold point that stands before `spec`, if any.
pub fn held(sheet: &Sheet, steps: &[StepSpec], spec: &StepSpec) -> Option<Held> {
    spec.holds
        .iter()
        .find_map(|point| open(sheet, steps, spec.key, *point))
}

fn open(sheet: &Sheet, steps: &[StepSpec], before: StepKey, point: HoldPoint) -> Option<Held> {
    let held = |answer_at| Some(Held { point, answer_at });
    match (point, before.corner) {
        (HoldPoint::Stand, Some(corner)) => {
            let shove = shove_before(before, corner);
            if yes(sheet, shove) {
                None
            } else {
                held(Some(shove))
            }
        }
        (HoldPoint::Before, Some(corner)) => {
            let round = steps
                .iter()
                .find(|s| is_before(s, corner) && !status(sheet, s).is_settled());
            round.and_then(|round| held(Some(round.key)))
        }
        (HoldPoint::Yes, Some(corner)) => {
            let agree = StepKey::at(Step::Agree, corner);
            let agreed = sheet.consent(agree).is_some_and(|consent| consent.yes);
            if agreed { None } else { held(Some(agree)) }
        }
        (HoldPoint::Nut, Some(corner)) => {
            let nut = Item {
                corner,
                group: Group::AxleNut,
                number: 1,
            };
            let turn = StepKey::at(Step::TurnAxleNut, corner);
            if is_tight(sheet, nut) {
                None
            } else {
                held(Some(turn))
            }
        }
        (HoldPoint::Pedal, _) => soft_pedal(sheet, steps).and_then(|pedal| held(Some(pedal))),
        (HoldPoint::Loose, _) => {
            if sheet.loose().is_empty() {
                None
            } else {
                held(None)
            }
        }
        (_, None) => None,
    }
}

/// The shove that a wheel waits for: the last one after the car was set down for its nuts.
const fn shove_before(before: StepKey, corner: Corner) -> StepKey {
    let nth = match (before.step, before.nth) {
        (Step::WheelOffAgain, REOPENED) => REOPENED,
        (Step::WheelOffAgain, _) => 2,
        (Step::WheelOff, _) => SHOVE_CRACKED,
        _ => SHOVE_WAITED,
    };
    StepKey::at(Step::Shove, corner).nth(nth)
}

fn yes(sheet: &Sheet, step: StepKey) -> bool {
    sheet.reply(step) == Some(&Reply::Said(Answer::Yes))
}

fn is_before(spec: &StepSpec, corner: Corner) -> bool {
    let first = SetName {
        when: When::Before,
        nth: 1,
    };
    spec.key.corner == Some(corner) && matches!(spec.form, Form::Round(set, _) if set == first)
}

/// The first question about the pedal that is not answered with yes.
fn soft_pedal(sheet: &Sheet, steps: &[StepSpec]) -> Option<StepKey> {
    let asked = steps
        .iter()
        .filter(|spec| matches!(spec.key.step, Step::Pedal | Step::ProvePedal));
    asked.map(|spec| spec.key).find(|step| !yes(sheet, *step))
}
