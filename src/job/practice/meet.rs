//! What a practice car shows at a step, where hands, ears or the dial would meet it.

use super::car;
use crate::job::entry::{Event, Reply};
use crate::job::sheet::JobState;
use crate::trade::answer::Answer;
use crate::trade::play::{Divisions, Felt};
use crate::trade::practice::{Car, Hub, NoiseCause, Rig};
use crate::trade::wheel_end::{Choice, Form, Meets, PlannedStep, SetName, Step, StepKey, When};
use crate::units::Temperature;

/// What is met at one step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Met {
    /// So many lug nuts that turn.
    Nuts(u8),
    /// Movement felt at the tire.
    Felt(Felt),
    /// What was found, as the word that the step asks for.
    Found(Choice),
    /// A sign of the road test.
    Sign(Answer),
    /// Which signs are still there after the work.
    SignsAfter {
        /// Whether the noise stayed, since it did not come from the bearing.
        stayed: bool,
    },
    /// A hub's temperature.
    Heat(Temperature),
    /// The needle while the hub is pushed and pulled, in this round.
    Needle(Rig, u8),
    /// The needle while the knuckle is pushed.
    Base(Rig),
}

/// What the practice car of a job shows at a step; `None` where it has nothing to show.
pub fn met(sheet: &JobState, planned: &PlannedStep) -> Option<(Car, Met)> {
    let car = car(sheet)?;
    let tight = nuts_tight(sheet, planned.key);
    let set = match &planned.form {
        Form::Round(set, _) => *set,
        _ => set_of_base(planned.key),
    };
    let met = match planned.key.step.row().meets? {
        Meets::NutsTried if tight => Met::Nuts(0),
        Meets::NutsAsFound | Meets::NutsTried => Met::Nuts(car.truth.loose_nuts),
        Meets::Play => Met::Felt(car.rocked(tight)),
        Meets::BrakeHeld => Met::Found(car.brake_held(tight)),
        Meets::OldSpin => Met::Found(car.spun(Hub::Old)),
        Meets::NewSpin => Met::Found(car.spun(Hub::New)),
        Meets::OtherSide => Met::Found(car.other_side(tight)),
        Meets::Nut => Met::Found(Choice::NutTight),
        Meets::Swerve => Met::Found(car.swerve()),
        Meets::Sign(sign) => Met::Sign(car.sign(sign)),
        Meets::RoadAfter => Met::SignsAfter {
            stayed: car.truth.noise == NoiseCause::Tires,
        },
        Meets::Heat { here } => Met::Heat(car.heat(here)),
        Meets::Base => Met::Base(rig(sheet, set)),
        Meets::Needle => Met::Needle(rig(sheet, set), round(&planned.form)),
    };
    Some((car, met))
}

const fn round(form: &Form) -> u8 {
    match form {
        Form::Round(_, round) => *round,
        _ => 1,
    }
}

/// Which set the base is pushed for.
fn set_of_base(key: StepKey) -> SetName {
    let (when, nth) = match (key.step, key.nth) {
        (Step::RigAgain, _) => (When::Before, 2),
        (_, 1) => (When::Before, 1),
        _ => (When::After, 1),
    };
    SetName { when, nth }
}

fn rig(sheet: &JobState, set: SetName) -> Rig {
    Rig {
        dial: sheet.dial(),
        rests_at: Divisions::ZERO,
        hub: match set.when {
            When::Before => Hub::Old,
            When::After => Hub::New,
        },
        place: set.nth.saturating_add(times_set_again(sheet)),
    }
}

/// How often a base gave so much that it was set on another place.
fn times_set_again(sheet: &JobState) -> u8 {
    let gave = sheet.counting().filter(|entry| gave(&entry.what));
    u8::try_from(gave.count()).unwrap_or(u8::MAX)
}

/// Whether an entry says that the base gave too much, or did not stand on the knuckle.
pub(super) fn gave(what: &Event) -> bool {
    matches!(
        what,
        Event::Answered(key, Reply::Picked(Choice::FlexMore | Choice::BaseElsewhere))
            if key.step.row().meets == Some(Meets::Base)
    )
}

/// Loose nuts are tightened as soon as they are found with the wrench.
pub(super) fn nuts_tight(sheet: &JobState, key: StepKey) -> bool {
    let found = |what: &Event| {
        matches!(
            what,
            Event::Answered(tried, Reply::Said(Answer::No))
                if tried.step.row().meets == Some(Meets::NutsTried) && tried.corner == key.corner
        )
    };
    sheet.counting().any(|entry| found(&entry.what))
}
