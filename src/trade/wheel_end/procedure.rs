//! The steps of a bolted, driven hub, in the order in which they are done.
//!
//! Only this module orders steps. Source of the order: `common practice, no source`, with the
//! manufacturers' differences (where the nut is tightened) taken from the spec card.

use crate::trade::fastening::CardItem;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::closing::{fit, put_back, refit};
use crate::trade::wheel_end::item::{ItemKind, ItemState};
use crate::trade::wheel_end::plan::{CornerPlan, Course, Plan, Start};
use crate::trade::wheel_end::reading::dial_setup;
use crate::trade::wheel_end::road::{clear, listen, prove_on_the_road};
use crate::trade::wheel_end::spec::{at_corner, once};
use crate::trade::wheel_end::step::{
    Check, Choice, Form, HoldPoint, Measured, Phase, SetName, Step, StepSpec, When,
};
use crate::trade::wheel_end::strip::strip;
use crate::trade::wheel_end::waiting::{lifted_again, wait};

/// Which shove stands between the cracked lug nuts and the wheel coming off.
pub const SHOVE_CRACKED: u8 = 3;

/// How many rounds one set of readings has.
pub const ROUNDS: u8 = 3;

/// Every step of this job as it stands, in order.
pub fn procedure(plan: &Plan) -> Vec<StepSpec> {
    let mut steps = Vec::new();
    if plan.start == Start::AtHome {
        steps.extend(pack());
    }
    steps.push(once(
        Phase::Site,
        Step::SiteLook,
        Form::Checks(vec![Check::Slope, Check::Surface, Check::Traffic]),
    ));
    if plan.site_refused {
        steps.push(once(Phase::HandOver, Step::Report, Form::Report).with_next());
        steps.push(once(Phase::HandOver, Step::End, Form::End));
        return steps;
    }
    steps.extend(meet(plan));
    steps.extend(listen(plan));
    for corner in &plan.corners {
        steps.extend(corner_steps(plan, corner));
    }
    steps.extend(prove_on_the_road(plan));
    steps.extend(hand_over(plan));
    steps
}

fn pack() -> Vec<StepSpec> {
    let mut steps = vec![
        once(Phase::Pack, Step::Booking, Form::Booking),
        once(Phase::Pack, Step::Vehicle, Form::Vehicle),
        once(Phase::Pack, Step::Corners, Form::Corners),
    ];
    steps.extend(
        CARDS
            .iter()
            .map(|(step, item)| once(Phase::Pack, *step, Form::Card(*item))),
    );
    steps.push(once(Phase::Pack, Step::Price, Form::Price));
    steps.push(once(Phase::Pack, Step::Kit, Form::Kit));
    steps.push(once(Phase::Pack, Step::Ready, Form::Ready));
    steps
}

/// The spec cards that a bolted, driven hub needs, in the order in which they are looked up.
pub const CARDS: [(Step, CardItem); 6] = [
    (Step::CardAxleNut, CardItem::AxleNut),
    (Step::CardHubBolts, CardItem::HubBolts),
    (Step::CardBracketBolts, CardItem::BracketBolts),
    (Step::CardCaliperPins, CardItem::CaliperPins),
    (Step::CardLugNuts, CardItem::LugNuts),
    (Step::CardPlayLimit, CardItem::PlayLimit),
];

fn meet(plan: &Plan) -> Vec<StepSpec> {
    let mut steps = Vec::new();
    if plan.start == Start::AtCar {
        steps.push(once(Phase::Meet, Step::Corners, Form::Corners));
        steps.push(once(Phase::Meet, Step::Vehicle, Form::Vehicle));
    } else {
        steps.push(once(Phase::Meet, Step::RightCar, Form::Ask));
    }
    steps.push(once(
        Phase::Meet,
        Step::Odometer,
        Form::Number(Measured::Odometer),
    ));
    steps.push(once(
        Phase::Meet,
        Step::WarningLights,
        Form::Choice(WARNING_LIGHTS),
    ));
    steps.push(once(
        Phase::Meet,
        Step::MeetLook,
        Form::Checks(vec![
            Check::LockKey,
            Check::BoxStuds,
            Check::BoxPlug,
            Check::BoxBolts,
        ]),
    ));
    if plan.start == Start::AtCar {
        steps.push(once(Phase::Meet, Step::Price, Form::Price));
    }
    steps.push(once(Phase::Meet, Step::TeardownYes, Form::Consent));
    steps
}

pub(super) const WARNING_LIGHTS: &[Choice] = &[
    Choice::NoWarningLights,
    Choice::AbsWarningLight,
    Choice::BrakeWarningLight,
    Choice::OtherWarningLight,
];
pub(super) const SPIN: &[Choice] = &[
    Choice::SmoothQuiet,
    Choice::Rough,
    Choice::Noisy,
    Choice::RoughNoisy,
    Choice::GrindsHot,
];
pub(super) const FLEX: &[Choice] = &[
    Choice::FlexNone,
    Choice::FlexHalf,
    Choice::FlexOne,
    Choice::FlexMore,
    Choice::BaseElsewhere,
];

fn corner_steps(plan: &Plan, at: &CornerPlan) -> Vec<StepSpec> {
    let corner = at.corner;
    let mut steps = lift(corner);
    steps.extend(rock(at));
    if !plan.teardown_refused {
        steps.extend(gauge(corner));
    }
    if plan.start == Start::AtCar {
        steps.push(at_corner(
            Phase::Decide,
            Step::CardPlayLimit,
            corner,
            Form::Card(CardItem::PlayLimit),
        ));
    }
    steps.push(at_corner(
        Phase::Decide,
        Step::Decide,
        corner,
        Form::Decide(1),
    ));
    if at.second_set {
        let second = SetName {
            when: When::Before,
            nth: 2,
        };
        steps.push(dial_setup(corner, second, Phase::Gauge));
        steps.push(at_corner(
            Phase::Gauge,
            Step::RigAgain,
            corner,
            Form::Choice(FLEX),
        ));
        steps.extend(rounds(corner, second, Phase::Gauge));
        let mut again = at_corner(Phase::Decide, Step::Decide, corner, Form::Decide(2));
        again.key = again.key.nth(2);
        steps.push(again);
    }
    match at.course {
        Course::Open => {}
        Course::PutBack => steps.extend(put_back(plan, corner)),
        Course::Asking => steps.extend(agree(at)),
        Course::Declined => {
            steps.extend(agree(at));
            steps.extend(lifted_again(at, put_back(plan, corner)));
        }
        Course::Replace => {
            steps.extend(agree(at));
            let mut work = Vec::new();
            if plan.teardown_refused {
                work.extend(gauge(corner));
            }
            work.extend(strip(plan, corner));
            steps.extend(lifted_again(at, work));
            steps.extend(fit(corner));
            steps.extend(refit(plan, corner));
        }
    }
    steps
}

fn agree(at: &CornerPlan) -> Vec<StepSpec> {
    let mut steps = vec![at_corner(
        Phase::Agree,
        Step::Agree,
        at.corner,
        Form::Consent,
    )];
    steps.extend(wait(at));
    steps
}

fn lift(corner: Corner) -> Vec<StepSpec> {
    vec![
        at_corner(Phase::Lift, Step::LiftHold, corner, Form::Do),
        at_corner(
            Phase::Lift,
            Step::LiftStand,
            corner,
            Form::Checks(vec![
                Check::JackPoint,
                Check::StandUnder,
                Check::WheelUnderRocker,
            ]),
        )
        .with_next(),
        at_corner(Phase::Lift, Step::StandPhoto, corner, Form::Photo),
        at_corner(Phase::Lift, Step::Shove, corner, Form::Ask),
    ]
}

fn rock(at: &CornerPlan) -> Vec<StepSpec> {
    let corner = at.corner;
    let mut steps = vec![
        at_corner(Phase::Rock, Step::RockNuts, corner, Form::Ask),
        at_corner(Phase::Rock, Step::RockTwelveSix, corner, Form::Swing),
        at_corner(Phase::Rock, Step::RockNineThree, corner, Form::Swing),
        at_corner(Phase::Rock, Step::RockAxial, corner, Form::Swing),
    ];
    if at.play_felt {
        steps.push(at_corner(
            Phase::Rock,
            Step::BrakeHeld,
            corner,
            Form::Choice(&[Choice::PlayGone, Choice::PlayStays]),
        ));
    }
    steps.push(at_corner(
        Phase::Rock,
        Step::SpinHand,
        corner,
        Form::Choice(SPIN),
    ));
    steps.push(at_corner(
        Phase::Rock,
        Step::OtherSide,
        corner,
        Form::Choice(&[
            Choice::SameAsOther,
            Choice::OtherTighter,
            Choice::OtherLooser,
        ]),
    ));
    steps
}

/// Opening the wheel end for the reading, and the first set.
fn gauge(corner: Corner) -> Vec<StepSpec> {
    let first = SetName {
        when: When::Before,
        nth: 1,
    };
    let mut steps = open_for_gauge(corner, first);
    steps.extend(rounds(corner, first, Phase::Gauge));
    steps
}

fn open_for_gauge(corner: Corner, set: SetName) -> Vec<StepSpec> {
    let step = |step, form| at_corner(Phase::Gauge, step, corner, form);
    vec![
        step(Step::LoosenLugNuts, Form::Do)
            .moves(ItemKind::LugNuts, ItemState::Loosened)
            .with_next(),
        shove_cracked(corner),
        step(Step::WheelOff, Form::Do)
            .held_by(HoldPoint::Stand)
            .moves(ItemKind::LugNuts, ItemState::Off)
            .moves(ItemKind::Wheel, ItemState::Off),
        step(Step::CaliperUp, Form::Do)
            .moves_one(ItemKind::CaliperPins, 2, ItemState::Off)
            .moves_one(ItemKind::CaliperPins, 1, ItemState::Loosened)
            .moves(ItemKind::Caliper, ItemState::Off)
            .moves(ItemKind::Pads, ItemState::Off)
            .with_next(),
        step(
            Step::NutFound,
            Form::Choice(&[Choice::NutTight, Choice::NutRetorqued, Choice::NutSlack]),
        ),
        step(Step::GaugeClean, Form::Do).with_next(),
        dial_setup(corner, set, Phase::Gauge),
        step(Step::RigPush, Form::Choice(FLEX)),
    ]
}

/// The shove after the car was set down for its lug nuts. Its number is 3: in files, 2 has
/// always been the shove before the wheel comes off for the reading after.
fn shove_cracked(corner: Corner) -> StepSpec {
    let mut spec = at_corner(Phase::Gauge, Step::Shove, corner, Form::Ask);
    spec.key = spec.key.nth(SHOVE_CRACKED);
    spec
}

/// The rounds of one set of readings.
pub(super) fn rounds(corner: Corner, set: SetName, phase: Phase) -> Vec<StepSpec> {
    (1..=ROUNDS)
        .map(|round| {
            let mut spec = at_corner(phase, Step::Round, corner, Form::Round(set, round));
            spec.key = spec.key.nth(round_number(set, round));
            spec
        })
        .collect()
}

/// The running number of a round over all sets of a corner, so that each round has a key.
pub const fn round_number(set: SetName, round: u8) -> u8 {
    let block = match set.when {
        When::Before => set.nth.saturating_sub(1),
        When::After => set.nth.saturating_add(1),
    };
    block.saturating_mul(10).saturating_add(round)
}

fn hand_over(plan: &Plan) -> Vec<StepSpec> {
    let settled = |at: &CornerPlan| !matches!(at.course, Course::Open | Course::Asking);
    if plan.corners.is_empty() || !plan.corners.iter().all(settled) {
        return Vec::new();
    }
    let mut steps = Vec::new();
    if !plan.corners.iter().any(|at| at.course == Course::Replace) {
        steps.push(clear(plan));
    }
    steps.push(once(
        Phase::HandOver,
        Step::Tools,
        Form::Checks(vec![Check::KeyBack, Check::OldPart]),
    ));
    let due = plan.retorque_is_due();
    if due {
        steps.push(once(Phase::HandOver, Step::Retorque, Form::Retorque).with_next());
    }
    steps.extend([
        once(Phase::HandOver, Step::Sign, Form::Sign),
        once(Phase::HandOver, Step::Report, Form::Report).with_next(),
        once(Phase::HandOver, Step::End, Form::End)
            .held_by(HoldPoint::Pedal)
            .held_by(HoldPoint::Loose),
    ]);
    if plan.ended && due {
        steps.push(once(
            Phase::LookBack,
            Step::RetorqueDone,
            Form::Choice(&[
                Choice::NoneLoose,
                Choice::SomeLoose,
                Choice::RetorqueDeclined,
            ]),
        ));
    }
    if plan.ended {
        steps.push(once(
            Phase::LookBack,
            Step::Comeback,
            Form::Choice(&[Choice::NoComeback, Choice::SameCorner, Choice::OtherCorner]),
        ));
    }
    steps
}
