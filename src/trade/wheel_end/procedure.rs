//! The steps of a job in the order in which they are done: what every job asks for, and between it
//! the order of its wheel ends.
//!
//! Only this module and the kinds of wheel end order steps. `common practice, no source`.

use crate::trade::wheel_end::kind::WheelEnd;
use crate::trade::wheel_end::plan::{CornerPlan, Course, Plan, Start};
use crate::trade::wheel_end::planned::If::{
    AtCar, AtHome, Driven, Ended, MoreQuestions, NoMoreQuestions, NotReplaced, NutsLoose,
    Realigned, Replaced, RetorqueDue,
};
use crate::trade::wheel_end::planned::{Place, asked, place};
use crate::trade::wheel_end::runs::{LOOK, READ_AGAIN};
use crate::trade::wheel_end::step::{Form, HoldPoint, Phase, PlannedStep, StepKey};
use crate::trade::wheel_end::steps::Step;

/// Which shove stands between the broken lug nuts and the wheel coming off. In files, 2 has always
/// been the shove before the wheel comes off for the reading after.
pub const SHOVE_CRACKED: u8 = 3;
/// Which time the steps are asked that open a closed wheel end to measure the new part once more.
pub const REOPENED: u8 = 4;
/// Which shove stands between a car that waited and the work that goes on.
pub const SHOVE_WAITED: u8 = 5;
/// The shove of a car that waited for a yes to further work.
pub const SHOVE_FURTHER: u8 = 6;

/// Which time the steps are asked that replace a stud which broke with the wheel on the ground.
pub const STUD_BROKE: u8 = 9;

/// Every step of this job as it stands, in order.
pub fn procedure(plan: &Plan) -> Vec<PlannedStep> {
    let kind = plan.kind.wheel_end();
    let mut steps = Vec::new();
    if plan.start == Start::AtHome {
        for order in [PACK, kind.specs, PACKED] {
            steps.extend(asked(order, plan, None));
        }
    }
    steps.extend(asked(SITE, plan, None));
    if plan.site_refused {
        steps.extend(asked(REFUSED, plan, None));
        return steps;
    }
    steps.extend(asked(ARRIVE, plan, None));
    for (place, at) in plan.corners.iter().enumerate() {
        let mut here = at_corner(kind, plan, at);
        if plan.is_still_held(place) {
            here.retain(|planned| planned.key != StepKey::at(Step::LiftHold, at.corner));
        }
        steps.extend(here);
    }
    steps.extend(asked(PROVE, plan, None));
    let settled = |at: &CornerPlan| !matches!(at.course, Course::Open | Course::Asking);
    if !plan.corners.is_empty() && plan.corners.iter().all(settled) {
        steps.extend(asked(HAND_OVER, plan, None));
    }
    steps
}

/// At home, before the specs.
const PACK: &[Place] = &[
    place(Step::Booking),
    place(Step::Vehicle),
    place(Step::Corners),
];

/// At home, after the specs.
const PACKED: &[Place] = &[place(Step::Price), place(Step::Kit), place(Step::Ready)];

const SITE: &[Place] = &[place(Step::SiteLook)];

const REFUSED: &[Place] = &[place(Step::Report), place(Step::End).needs(&[])];

/// Check-in and the road test before the work.
const ARRIVE: &[Place] = &[
    place(Step::Corners).only(&[AtCar]).under(Phase::Meet),
    place(Step::Vehicle).only(&[AtCar]).under(Phase::Meet),
    place(Step::RightCar).only(&[AtHome]),
    place(Step::Odometer),
    place(Step::WarningLights),
    place(Step::MeetLook),
    place(Step::Price).only(&[AtCar]).under(Phase::Meet),
    place(Step::TeardownYes),
    place(Step::BeforeDriving),
    place(Step::NutsToSpec).only(&[NutsLoose]),
    place(Step::Drive),
    place(Step::SignSpeed).only(&[Driven]),
    place(Step::SignSwerve).only(&[Driven]),
    place(Step::SignCoast).only(&[Driven]),
    place(Step::SignSurface).only(&[Driven]),
    place(Step::SignBrake).only(&[Driven, MoreQuestions]),
    place(Step::SignBrake)
        .only(&[Driven, NoMoreQuestions])
        .alone(),
    place(Step::SignFullLock).only(&[Driven, MoreQuestions]),
    place(Step::SignShake).only(&[Driven, MoreQuestions]),
    place(Step::SignPulse)
        .only(&[Driven, MoreQuestions])
        .alone(),
    place(Step::HeatHere),
    place(Step::HeatOther),
];

/// Where nothing was opened only the lifted wheel comes down again.
const NOT_OPENED: &[Place] = &[place(Step::Lower).needs(&[])];

const DECIDE: &[Place] = &[
    place(Step::SpecPlayLimit)
        .only(&[AtCar])
        .under(Phase::Decide),
    place(Step::Decide),
];

const DECIDE_AGAIN: &[Place] = &[place(Step::Decide).nth(2)];

const AGREE: &[Place] = &[place(Step::Agree)];

/// Leaving the car without an answer; it can be told while the customer has not answered, and stays
/// among the steps once it was.
const WAIT: &[Place] = &[place(Step::Wait)];

/// A car that waited is lifted and shoved again, whatever it stood on meanwhile.
const LIFT_AGAIN: &[Place] = &[
    place(Step::LiftHold).nth(2).under(Phase::Agree),
    place(Step::LiftStand).nth(2).under(Phase::Agree).alone(),
    place(Step::Shove).nth(SHOVE_WAITED).under(Phase::Agree),
];

/// A stud or bolt that broke with the wheel on the ground is replaced from behind: the car is raised
/// and shoved, and the wheel comes off once more.
const STUD: &[Place] = &[
    place(Step::LoosenLugNuts)
        .nth(STUD_BROKE)
        .under(Phase::Tighten),
    place(Step::Shove).nth(STUD_BROKE).under(Phase::Tighten),
    place(Step::WheelOffAgain)
        .nth(STUD_BROKE)
        .under(Phase::Tighten),
    place(Step::StudIn),
    place(Step::WheelOn).nth(STUD_BROKE),
    place(Step::Lower).nth(STUD_BROKE),
];

/// The proof before and on the road, in the order in which it is safe: the chocks stay until the
/// pedal is firm, tools and chocks are out before the car moves, and only then it is driven.
const PROVE: &[Place] = &[
    place(Step::ProvePedal).only(&[Replaced]),
    place(Step::Clear).only(&[Replaced]),
    place(Step::ProveWarningLights).only(&[Replaced]),
    place(Step::ProveRoad).only(&[Replaced]),
    place(Step::ProveResult).only(&[Replaced]),
];

const HAND_OVER: &[Place] = &[
    place(Step::Clear).only(&[NotReplaced]),
    place(Step::Alignment).only(&[Replaced, Realigned]),
    place(Step::Tools),
    place(Step::Retorque).only(&[RetorqueDue]),
    place(Step::Sign),
    place(Step::Report),
    place(Step::End),
    place(Step::RetorqueDone).only(&[Ended, RetorqueDue]),
    place(Step::Comeback).only(&[Ended]),
];

fn at_corner(kind: &WheelEnd, plan: &Plan, at: &CornerPlan) -> Vec<PlannedStep> {
    let these = |order| asked(order, plan, Some(at));
    let mut steps = these(LOOK);
    let back = match plan.teardown_refused {
        true => NOT_OPENED,
        false => kind.put_back,
    };
    if !plan.teardown_refused {
        steps.extend(these(kind.measure));
    }
    steps.extend(these(DECIDE));
    if at.second_set {
        steps.extend(these(READ_AGAIN));
        steps.extend(these(DECIDE_AGAIN));
    }
    if !matches!(at.course, Course::Open | Course::PutBack) {
        steps.extend(these(AGREE));
        if at.waited || at.course == Course::Asking {
            steps.extend(these(WAIT));
        }
    }
    match at.course {
        Course::Open | Course::Asking => {}
        Course::PutBack => steps.extend(these(back)),
        Course::Declined => steps.extend(lifted_again(plan, at, these(back))),
        Course::Replace => {
            let mut work = Vec::new();
            if plan.teardown_refused {
                work.extend(these(kind.measure));
            }
            work.extend(these(kind.remove));
            steps.extend(lifted_again(plan, at, work));
            steps.extend(these(kind.install));
            if at.reopened {
                steps.extend(these(kind.reopen));
            }
            steps.extend(these(kind.close));
        }
    }
    let turned = |planned: &PlannedStep| Some(planned.key) == at.broken_stud;
    if let Some(turn) = steps.iter().position(turned) {
        steps.splice(turn..turn, these(STUD));
    }
    steps
}

/// Hold, jack, stand and shove again before `work`, the first of which waits for the shove.
fn lifted_again(plan: &Plan, at: &CornerPlan, mut work: Vec<PlannedStep>) -> Vec<PlannedStep> {
    if !at.waited {
        return work;
    }
    let mut planned_steps = work.iter_mut();
    if let Some(first) = planned_steps.find(|planned| !matches!(planned.form, Form::Spec(_))) {
        first.holds.insert(0, HoldPoint::Stand);
        // What waits for an answer is told alone.
        first.joins = false;
    }
    let mut steps = asked(LIFT_AGAIN, plan, Some(at));
    steps.append(&mut work);
    steps
}
