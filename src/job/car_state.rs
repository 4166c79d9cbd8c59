//! How a car stands in the middle of the work, corner by corner: what is off, what is loose, and what
//! was not answered as it should be.

use crate::job::answers::given;
use crate::job::entry::Reply;
use crate::job::gate::{last_down, last_shoved};
use crate::job::interruption::TAKE_OVER;
use crate::job::key::Key;
use crate::job::loose::{Row, rows};
use crate::job::sheet::JobState;
use crate::trade::answer::Answer;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{
    Car, Consequence, Form, Given, Plan, PlannedStep, Step, StepKey, consequences, sign_of,
};
use crate::words;

words! {
    /// How a corner stands, as the record has it.
    pub enum Standing {
        /// On its wheel.
        OnWheel = "on_wheel",
        /// On its jack stand, shoved and firm.
        OnStand = "on_stand",
        /// Raised, and not shoved firm since.
        NotProved = "not_proved",
    }
}

words! {
    /// What is safe while the car is left as it stands.
    pub enum Leaving {
        /// A corner is raised.
        Raised = "raised",
        /// On its wheels, with something off or loose.
        Loose = "loose",
        /// On its wheels, nothing off or loose.
        Closed = "closed",
    }
}

/// What there is to know of one corner.
#[derive(Clone, Debug, PartialEq)]
pub struct CornerState<'a> {
    /// Which.
    pub corner: Corner,
    /// How it stands.
    pub standing: Standing,
    /// What is off or loose there.
    pub loose: Vec<Row<'a>>,
    /// Its answers that were not as they should be.
    pub wrong: Vec<(StepKey, Given)>,
}

/// How a car stands.
#[derive(Clone, Debug, PartialEq)]
pub struct CarState<'a> {
    /// Each corner of the job, in the order of work.
    pub corners: Vec<CornerState<'a>>,
    /// The answers about the car as a whole that were not as they should be.
    pub wrong: Vec<(StepKey, Given)>,
}

/// How the car of a job stands.
pub fn car_state<'a>(sheet: &'a JobState, plan: &Plan, steps: &[PlannedStep]) -> CarState<'a> {
    let loose = rows(sheet, steps);
    let of = |planned: &PlannedStep| {
        let wrong = not_right(sheet, plan, planned).into_iter();
        wrong.map(|it| (planned.key, it)).collect::<Vec<_>>()
    };
    let wrong: Vec<(StepKey, Given)> = steps.iter().flat_map(of).collect();
    let at = |corner: Option<Corner>| -> Vec<(StepKey, Given)> {
        let here = wrong.iter().filter(|(key, _)| key.corner == corner);
        here.copied().collect()
    };
    let corner_state = |corner: &Corner| {
        let here = |row: &&Row| row.item.corner == *corner && row.hold.is_loose();
        CornerState {
            corner: *corner,
            standing: standing(sheet, steps, *corner),
            loose: loose.iter().filter(here).cloned().collect(),
            wrong: at(Some(*corner)),
        }
    };
    CarState {
        corners: sheet.corners().iter().map(corner_state).collect(),
        wrong: at(None),
    }
}

impl CarState<'_> {
    /// What is safe while it is left so.
    pub fn leaving(&self) -> Leaving {
        let mut corners = self.corners.iter();
        if corners.any(|at| at.standing != Standing::OnWheel) {
            Leaving::Raised
        } else if self.corners.iter().any(|at| !at.loose.is_empty()) {
            Leaving::Loose
        } else {
            Leaving::Closed
        }
    }
}

/// How a corner stands: a jack stand that was set counts only once it was shoved.
pub fn standing(sheet: &JobState, steps: &[PlannedStep], corner: Corner) -> Standing {
    let down = last_down(sheet, steps, corner);
    // Where it was let down until the tire grips it was raised again after that.
    let raises = |step: Step| step == Step::LiftStand || step.row().car == Some(Car::Grips);
    let here = |planned: &&PlannedStep| planned.key.corner == Some(corner);
    let raised = steps.iter().filter(here).filter(|it| raises(it.key.step));
    let raised = raised
        .filter_map(|it| sheet.place(&Key::Step(it.key)))
        .max();
    let shoved = last_shoved(sheet, steps, corner);
    let moved = sheet.reply(TAKE_OVER) == Some(&Reply::Said(Answer::No));
    if raised.max(shoved) <= down {
        Standing::OnWheel
    } else if raised < shoved && !moved {
        Standing::OnStand
    } else {
        Standing::NotProved
    }
}

/// The answers at a step that were not as they should be: a no that has a consequence, what stops the
/// car, and what holds other work because nobody looked.
pub fn not_right(sheet: &JobState, plan: &Plan, planned: &PlannedStep) -> Vec<Given> {
    if planned.form == Form::Consent {
        let refused = sheet.consent(planned.key).is_some_and(|it| !it.yes);
        return refused
            .then_some(Given::Said(Answer::No))
            .into_iter()
            .collect();
    }
    let Some(reply) = sheet.reply(planned.key) else {
        return Vec::new();
    };
    let wrong = |answer: &Given| {
        let follows = consequences(planned.key, *answer, plan);
        let no = matches!(answer, Given::Said(Answer::No) | Given::Row(_, Answer::No));
        let held = follows
            .iter()
            .any(|it| matches!(it, Consequence::Holds(_) | Consequence::Stops(_)));
        held || no && sign_of(planned.key.step).is_none()
    };
    given(planned, reply).into_iter().filter(wrong).collect()
}

#[cfg(test)]
#[path = "car_state/tests.rs"]
mod tests;
