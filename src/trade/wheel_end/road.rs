//! The road: the questions of the test before the work, and the same signs after it.

use crate::trade::wheel_end::plan::{Course, Plan, Sign};
use crate::trade::wheel_end::procedure::WARNING_LIGHTS;
use crate::trade::wheel_end::spec::once;
use crate::trade::wheel_end::step::{
    Check, Choice, Form, HoldPoint, Measured, Phase, Step, StepSpec,
};

/// What is looked at before the car is driven.
pub const LOOKS: [Check; 4] = [
    Check::NutsAsFound,
    Check::WheelUpright,
    Check::PedalFirm,
    Check::Tires,
];

pub(super) fn listen(plan: &Plan) -> Vec<StepSpec> {
    let mut steps = vec![once(
        Phase::Listen,
        Step::BeforeDriving,
        Form::Checks(LOOKS.to_vec()),
    )];
    if plan.nuts_loose {
        steps.push(once(Phase::Listen, Step::NutsToCard, Form::Ask));
    }
    steps.push(once(Phase::Listen, Step::Drive, Form::Do).held_by(HoldPoint::Loose));
    if plan.driven {
        let asked = Sign::ALL
            .iter()
            .filter(|sign| sign.is_first() || plan.more_questions);
        steps.extend(asked.map(|sign| question(*sign).with_next()));
        if let Some(last) = steps.last_mut() {
            last.joins = false;
        }
    }
    steps.push(once(
        Phase::Listen,
        Step::HeatHere,
        Form::Number(Measured::HubHeat),
    ));
    steps.push(once(
        Phase::Listen,
        Step::HeatOther,
        Form::Number(Measured::HubHeat),
    ));
    steps
}

fn question(sign: Sign) -> StepSpec {
    let form = match sign {
        Sign::Swerve => Form::Choice(&[Choice::LouderRight, Choice::LouderLeft, Choice::NoChange]),
        _ => Form::Ask,
    };
    once(Phase::Listen, sign_step(sign), form)
}

/// The sign that a question asks for.
pub fn sign_of(step: Step) -> Option<Sign> {
    Sign::ALL
        .iter()
        .copied()
        .find(|sign| sign_step(*sign) == step)
}

/// The question that asks for a sign.
pub const fn sign_step(sign: Sign) -> Step {
    match sign {
        Sign::Speed => Step::SignSpeed,
        Sign::Swerve => Step::SignSwerve,
        Sign::Coast => Step::SignCoast,
        Sign::Surface => Step::SignSurface,
        Sign::Brake => Step::SignBrake,
        Sign::FullLock => Step::SignFullLock,
        Sign::Shake => Step::SignShake,
        Sign::Pulse => Step::SignPulse,
    }
}

/// The check that a sign is gone after the work.
pub const fn sign_gone(sign: Sign) -> Check {
    match sign {
        Sign::Speed => Check::SpeedGone,
        Sign::Swerve => Check::SwerveGone,
        Sign::Coast => Check::CoastGone,
        Sign::Surface => Check::SurfaceGone,
        Sign::Brake => Check::BrakeGone,
        Sign::FullLock => Check::FullLockGone,
        Sign::Shake => Check::ShakeGone,
        Sign::Pulse => Check::PulseGone,
    }
}

/// The proof before and on the road, in the order in which it is safe: the chocks stay until the
/// pedal is firm, tools and chocks are out before the car moves, and only then it is driven.
pub(super) fn prove_on_the_road(plan: &Plan) -> Vec<StepSpec> {
    if !plan.corners.iter().any(|at| at.course == Course::Replace) {
        return Vec::new();
    }
    let mut steps = vec![
        once(Phase::Prove, Step::ProvePedal, Form::Ask),
        clear(plan),
        once(
            Phase::Prove,
            Step::ProveWarningLights,
            Form::Choice(WARNING_LIGHTS),
        )
        .held_by(HoldPoint::Pedal)
        .held_by(HoldPoint::Loose),
    ];
    let mut road: Vec<Check> = plan.signs.iter().map(|sign| sign_gone(*sign)).collect();
    road.push(Check::RoadClean);
    steps.push(
        once(Phase::Prove, Step::ProveRoad, Form::Checks(road))
            .held_by(HoldPoint::Pedal)
            .held_by(HoldPoint::Loose),
    );
    steps.push(once(Phase::Prove, Step::ProveResult, Form::Result));
    steps
}

/// The last look before the car moves: nothing is under it, and what was wrong on arrival is right.
pub(super) fn clear(plan: &Plan) -> StepSpec {
    let mut checks = vec![Check::ToolsCounted, Check::ChocksOut];
    checks.extend(&plan.wrong_looks);
    once(Phase::Prove, Step::Clear, Form::Checks(checks))
        .held_by(HoldPoint::Pedal)
        .held_by(HoldPoint::Loose)
}
