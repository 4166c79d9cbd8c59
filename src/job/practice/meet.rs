//! What a practice car shows at a step, where hands, ears or the dial would meet it.

use super::car;
use crate::job::entry::{Event, Reply};
use crate::job::sheet::JobState;
use crate::trade::answer::Answer;
use crate::trade::play::{Divisions, Felt};
use crate::trade::practice::{Car, Hub, NoiseCause, Rig};
use crate::trade::wheel_end::{
    Choice, Form, PlannedStep, SetName, Sign, Step, StepKey, When, sign_step,
};
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
    let rig = |set| rig(sheet, set);
    let met = match (planned.key.step, &planned.form) {
        (Step::RockNuts, _) if tight => Met::Nuts(0),
        (Step::BeforeDriving | Step::RockNuts, _) => Met::Nuts(car.truth.loose_nuts),
        (Step::RockTwelveSix | Step::RockNineThree | Step::RockAxial, _) => {
            Met::Felt(car.rocked(tight))
        }
        (Step::BrakeHeld, _) => Met::Found(car.brake_held(tight)),
        (Step::SpinHand, _) => Met::Found(car.spun(Hub::Old)),
        (Step::ProveSpin, _) => Met::Found(car.spun(Hub::New)),
        (Step::OtherSide, _) => Met::Found(car.other_side(tight)),
        (Step::NutFound, _) => Met::Found(Choice::NutTight),
        (Step::SignSwerve, _) => Met::Found(car.swerve()),
        (Step::HeatHere, _) => Met::Heat(car.heat(true)),
        (Step::HeatOther, _) => Met::Heat(car.heat(false)),
        (Step::ProveRoad, _) => Met::SignsAfter {
            stayed: car.truth.noise == NoiseCause::Tires,
        },
        (Step::RigPush | Step::RigAgain, _) => Met::Base(rig(set_of_base(planned.key))),
        (_, Form::Round(set, round)) => Met::Needle(rig(*set), *round),
        (step, _) => Met::Sign(car.sign(sign_of(step)?)),
    };
    Some((car, met))
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
            if matches!(key.step, Step::RigPush | Step::RigAgain)
    )
}

/// Loose nuts are tightened as soon as they are found with the wrench.
pub(super) fn nuts_tight(sheet: &JobState, key: StepKey) -> bool {
    let found = |what: &Event| {
        matches!(
            what,
            Event::Answered(tried, Reply::Said(Answer::No))
                if tried.step == Step::RockNuts && tried.corner == key.corner
        )
    };
    sheet.counting().any(|entry| found(&entry.what))
}

fn sign_of(step: Step) -> Option<Sign> {
    let all = Sign::ALL.iter().copied();
    all.into_iter().find(|sign| sign_step(*sign) == step)
}
