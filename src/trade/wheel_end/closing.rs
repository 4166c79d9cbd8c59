//! Putting a wheel end together again: after a replacement, or as it was found.
//!
//! The order follows where the axle nut gets its last torque, as its card says.

use crate::trade::fastening::CardItem;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::item::{ItemKind, ItemState};
use crate::trade::wheel_end::plan::{CornerPlan, NutPosition, Plan, Start};
use crate::trade::wheel_end::procedure::{FLEX, SPIN, rounds};
use crate::trade::wheel_end::reading::dial_setup;
use crate::trade::wheel_end::spec::at_corner;
use crate::trade::wheel_end::step::{Check, Form, HoldPoint, Phase, SetName, Step, StepSpec, When};

/// Which time the steps are asked that open a closed wheel end to measure the new part once more.
pub const REOPENED: u8 = 4;

/// The steps from the box to the hub standing in its seat.
pub(super) fn fit(corner: Corner) -> Vec<StepSpec> {
    let step = |step, form| at_corner(Phase::Fit, step, corner, form);
    vec![
        step(
            Step::Compare,
            Form::Checks(vec![
                Check::Pilot,
                Check::Depth,
                Check::BoltCircle,
                Check::Splines,
                Check::Plug,
            ]),
        )
        .with_next(),
        step(Step::ComparePhoto, Form::Photo),
        step(Step::Seat, Form::Do).with_next(),
        step(Step::Offer, Form::Do)
            .moves(ItemKind::Plate, ItemState::Done)
            .moves(ItemKind::Hub, ItemState::Done)
            .moves(ItemKind::HubBolts, ItemState::ByHand)
            .with_next(),
        step(Step::RouteSensor, Form::Do).moves(ItemKind::SensorWire, ItemState::Done),
    ]
}

/// The steps from the hub in its seat to the wheel at its card, the reading after among them.
pub(super) fn refit(plan: &Plan, corner: Corner) -> Vec<StepSpec> {
    let mut steps = card(plan, corner, Step::CardHubBolts, CardItem::HubBolts);
    steps.push(turn(Step::TurnHubBolts, corner, ItemKind::HubBolts));
    steps.extend(match plan.nut {
        NutPosition::AirBrakeHeld => brake_held(plan, corner),
        NutPosition::AirBar => bar(plan, corner),
        NutPosition::OnGround => on_ground(plan, corner),
    });
    steps
}

/// The steps that put back what was opened for the reading, nothing replaced.
pub(super) fn put_back(plan: &Plan, corner: Corner) -> Vec<StepSpec> {
    if plan.teardown_refused {
        // Nothing was opened: only the lifted wheel comes down again.
        return vec![at_corner(Phase::Tighten, Step::Lower, corner, Form::Do)];
    }
    let mut steps = vec![caliper_down(corner)];
    steps.extend(card(
        plan,
        corner,
        Step::CardCaliperPins,
        CardItem::CaliperPins,
    ));
    steps.push(turn(Step::TurnCaliperPins, corner, ItemKind::CaliperPins));
    steps.push(pedal(corner));
    steps.extend(wheel(plan, corner));
    steps
}

fn brake_held(plan: &Plan, corner: Corner) -> Vec<StepSpec> {
    let mut steps = brake_on(plan, corner);
    steps.push(nut_on(corner));
    steps.push(turn(Step::TurnAxleNut, corner, ItemKind::AxleNut));
    steps.push(caliper_up(corner));
    steps.extend(after(plan, corner));
    steps.push(caliper_down(corner));
    steps.push(turn(Step::TurnCaliperPins, corner, ItemKind::CaliperPins));
    steps.push(stake(corner).with_next());
    steps.push(pedal_again(corner));
    steps.extend(wheel(plan, corner));
    steps
}

fn bar(plan: &Plan, corner: Corner) -> Vec<StepSpec> {
    let mut steps = vec![
        nut_on(corner),
        turn(Step::TurnAxleNut, corner, ItemKind::AxleNut),
        at_corner(Phase::Tighten, Step::RotorOn, corner, Form::Do)
            .moves(ItemKind::Rotor, ItemState::Done),
    ];
    steps.extend(after(plan, corner));
    steps.push(stake(corner));
    steps.extend(bracket_on(plan, corner));
    steps.push(caliper_down(corner));
    steps.extend(card(
        plan,
        corner,
        Step::CardCaliperPins,
        CardItem::CaliperPins,
    ));
    steps.push(turn(Step::TurnCaliperPins, corner, ItemKind::CaliperPins));
    steps.push(pedal(corner));
    steps.extend(wheel(plan, corner));
    steps
}

fn on_ground(plan: &Plan, corner: Corner) -> Vec<StepSpec> {
    let mut steps = brake_on(plan, corner);
    steps.push(nut_on(corner));
    steps.push(
        at_corner(Phase::Tighten, Step::NutFirst, corner, Form::Do)
            .moves(ItemKind::AxleNut, ItemState::Snug),
    );
    steps.extend(wheel_to_card(plan, corner, 1));
    steps.push(turn(Step::TurnAxleNut, corner, ItemKind::AxleNut));
    steps.extend(off_again(corner));
    steps.push(caliper_up(corner));
    steps.extend(after(plan, corner));
    steps.push(caliper_down(corner));
    steps.push(turn(Step::TurnCaliperPins, corner, ItemKind::CaliperPins));
    steps.push(stake(corner).with_next());
    steps.push(pedal_again(corner));
    steps.extend(wheel_to_card(plan, corner, 2));
    steps
}

/// Up from the ground once more for the reading after: it stood on its wheel, so it is shoved
/// again before the wheel comes off.
fn off_again(corner: Corner) -> Vec<StepSpec> {
    let mut steps = wheel_off(Phase::Tighten, corner);
    for spec in &mut steps {
        // The wheel comes off again for the first time.
        let first = spec.key.step == Step::WheelOffAgain;
        spec.key = spec.key.nth(if first { 1 } else { 2 });
    }
    steps
}

/// A wheel end that is closed again is opened to measure the new part once more.
fn reopen(plan: &Plan, corner: Corner) -> Vec<StepSpec> {
    let of = |at: &&CornerPlan| at.corner == corner && at.reopened;
    if plan.corners.iter().find(of).is_none() {
        return Vec::new();
    }
    let mut steps = wheel_off(Phase::Prove, corner);
    steps.push(caliper_up(corner));
    for spec in &mut steps {
        spec.key = spec.key.nth(REOPENED);
    }
    steps
}

fn wheel_off(phase: Phase, corner: Corner) -> Vec<StepSpec> {
    let step = |step, form| at_corner(phase, step, corner, form);
    vec![
        step(Step::LoosenLugNuts, Form::Do)
            .moves(ItemKind::LugNuts, ItemState::Loosened)
            .with_next(),
        step(Step::Shove, Form::Ask),
        step(Step::WheelOffAgain, Form::Do)
            .held_by(HoldPoint::Stand)
            .moves(ItemKind::LugNuts, ItemState::Off)
            .moves(ItemKind::Wheel, ItemState::Off),
    ]
}

/// Rotor, bracket, caliper and a pumped pedal, before the nut is tightened against the brake.
fn brake_on(plan: &Plan, corner: Corner) -> Vec<StepSpec> {
    let mut steps = vec![
        at_corner(Phase::Tighten, Step::RotorOn, corner, Form::Do)
            .moves(ItemKind::Rotor, ItemState::Done)
            .with_next(),
    ];
    steps.extend(bracket_on(plan, corner));
    steps.push(
        at_corner(Phase::Tighten, Step::CaliperOn, corner, Form::Do)
            .moves(ItemKind::Pads, ItemState::Done)
            .moves(ItemKind::Caliper, ItemState::Done)
            .moves(ItemKind::CaliperPins, ItemState::Snug)
            .with_next(),
    );
    steps.extend(card(
        plan,
        corner,
        Step::CardCaliperPins,
        CardItem::CaliperPins,
    ));
    steps.push(pedal(corner));
    steps
}

fn bracket_on(plan: &Plan, corner: Corner) -> Vec<StepSpec> {
    let mut steps = vec![
        at_corner(Phase::Tighten, Step::BracketOn, corner, Form::Do)
            .moves(ItemKind::Bracket, ItemState::Done)
            .moves(ItemKind::BracketBolts, ItemState::ByHand),
    ];
    steps.extend(card(
        plan,
        corner,
        Step::CardBracketBolts,
        CardItem::BracketBolts,
    ));
    steps.push(turn(Step::TurnBracketBolts, corner, ItemKind::BracketBolts));
    steps
}

/// The proof at the open wheel end; one that fails is told at once, while all is still at hand.
fn after(plan: &Plan, corner: Corner) -> Vec<StepSpec> {
    let set = SetName {
        when: When::After,
        nth: 1,
    };
    let mut rig = at_corner(Phase::Prove, Step::RigPush, corner, Form::Choice(FLEX));
    rig.key = rig.key.nth(2);
    let mut steps = reopen(plan, corner);
    steps.push(dial_setup(corner, set, Phase::Prove));
    steps.push(rig);
    steps.extend(rounds(corner, set, Phase::Prove));
    steps.push(at_corner(
        Phase::Prove,
        Step::ProveSpin,
        corner,
        Form::Choice(SPIN),
    ));
    if plan
        .corners
        .iter()
        .any(|at| at.corner == corner && at.blocked)
    {
        steps.push(at_corner(
            Phase::Prove,
            Step::ProveResult,
            corner,
            Form::Result,
        ));
    }
    steps
}

fn caliper_up(corner: Corner) -> StepSpec {
    at_corner(Phase::Prove, Step::CaliperUpAgain, corner, Form::Do)
        .moves_one(ItemKind::CaliperPins, 2, ItemState::Off)
        .moves_one(ItemKind::CaliperPins, 1, ItemState::Loosened)
        .moves(ItemKind::Caliper, ItemState::Off)
        .moves(ItemKind::Pads, ItemState::Off)
}

fn caliper_down(corner: Corner) -> StepSpec {
    at_corner(Phase::Tighten, Step::CaliperDown, corner, Form::Do)
        .moves(ItemKind::Pads, ItemState::Done)
        .moves(ItemKind::Caliper, ItemState::Done)
        .moves(ItemKind::CaliperPins, ItemState::Snug)
        .with_next()
}

fn nut_on(corner: Corner) -> StepSpec {
    at_corner(Phase::Tighten, Step::NutOn, corner, Form::Do)
        .moves(ItemKind::AxleNut, ItemState::ByHand)
        .with_next()
}

fn stake(corner: Corner) -> StepSpec {
    at_corner(Phase::Tighten, Step::Stake, corner, Form::Do).moves(ItemKind::Stake, ItemState::Done)
}

fn pedal(corner: Corner) -> StepSpec {
    at_corner(Phase::Tighten, Step::Pedal, corner, Form::Ask)
}

fn pedal_again(corner: Corner) -> StepSpec {
    let mut spec = pedal(corner);
    spec.key = spec.key.nth(2);
    spec
}

fn wheel(plan: &Plan, corner: Corner) -> Vec<StepSpec> {
    wheel_to_card(plan, corner, 1)
}

/// Wheel on, snug in the air, lowered, at its card on the ground.
fn wheel_to_card(plan: &Plan, corner: Corner, nth: u8) -> Vec<StepSpec> {
    let mut lower = at_corner(Phase::Tighten, Step::Lower, corner, Form::Do);
    if !(plan.nut == NutPosition::OnGround && nth == 1) {
        lower = lower.held_by(HoldPoint::Nut);
    }
    let mut steps = vec![
        at_corner(Phase::Tighten, Step::WheelOn, corner, Form::Do)
            .moves(ItemKind::Wheel, ItemState::Done)
            .moves(ItemKind::LugNuts, ItemState::Snug)
            .with_next(),
        lower,
    ];
    if nth == 1 {
        steps.extend(card(plan, corner, Step::CardLugNuts, CardItem::LugNuts));
    }
    steps.push(turn(Step::TurnLugNuts, corner, ItemKind::LugNuts));
    for spec in &mut steps {
        spec.key = spec.key.nth(nth);
    }
    steps
}

fn turn(step: Step, corner: Corner, group: ItemKind) -> StepSpec {
    at_corner(Phase::Tighten, step, corner, Form::Turn(group))
}

/// The card of a group, asked here when the job was started at the car.
fn card(plan: &Plan, corner: Corner, step: Step, item: CardItem) -> Vec<StepSpec> {
    if plan.start == Start::AtHome {
        return Vec::new();
    }
    vec![at_corner(Phase::Tighten, step, corner, Form::Card(item))]
}
