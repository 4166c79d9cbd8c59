//! The car waits while the customer thinks: what is left behind is told, and before the work goes on
//! it is lifted and shoved again, whatever it stood on meanwhile.
//!
//! Source: `common practice, no source`.

use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::plan::{CornerPlan, Course};
use crate::trade::wheel_end::spec::at_corner;
use crate::trade::wheel_end::step::{Check, Form, HoldPoint, Phase, Step, StepSpec};

/// Which shove stands between a car that waited and the work that goes on.
pub const SHOVE_WAITED: u8 = 5;
/// The shove of a car that waited for a yes to further work.
pub const SHOVE_FURTHER: u8 = 6;

/// Leaving the car without an answer; it can be told while the customer has not answered, and stays
/// among the steps once it was.
pub(super) fn wait(at: &CornerPlan) -> Option<StepSpec> {
    let asked = at.waited || at.course == Course::Asking;
    asked.then(|| at_corner(Phase::Agree, Step::Wait, at.corner, Form::Do))
}

/// Hold, jack, stand and shove again before `steps`, the first of which waits for the shove.
pub(super) fn lifted_again(at: &CornerPlan, mut steps: Vec<StepSpec>) -> Vec<StepSpec> {
    if !at.waited {
        return steps;
    }
    let work = steps
        .iter_mut()
        .find(|spec| !matches!(spec.form, Form::Card(_)));
    if let Some(first) = work {
        first.holds.insert(0, HoldPoint::Stand);
        // What waits for an answer is told alone.
        first.joins = false;
    }
    let mut all = lift(at.corner);
    all.append(&mut steps);
    all
}

fn lift(corner: Corner) -> Vec<StepSpec> {
    let again = |step, form, nth| {
        let mut spec = at_corner(Phase::Agree, step, corner, form);
        spec.key = spec.key.nth(nth);
        spec
    };
    vec![
        again(Step::LiftHold, Form::Do, 2),
        again(
            Step::LiftStand,
            Form::Checks(vec![
                Check::JackPoint,
                Check::StandUnder,
                Check::WheelUnderRocker,
            ]),
            2,
        ),
        again(Step::Shove, Form::Ask, SHOVE_WAITED),
    ]
}
