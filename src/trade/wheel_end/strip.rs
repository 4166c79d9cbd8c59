//! Taking a bolted, driven hub out.
//!
//! Source of the order: `common practice, no source`.

use crate::trade::fastening::CardItem;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::item::{ItemKind, ItemState};
use crate::trade::wheel_end::plan::{NutPosition, Plan, Start};
use crate::trade::wheel_end::spec::at_corner;
use crate::trade::wheel_end::step::{Form, HoldPoint, Phase, Step, StepSpec};

/// Which shove stands between the axle nut broken loose on the ground and the wheel coming off.
const SHOVE_AXLE_NUT: u8 = 7;

/// The steps from the staked nut to the hub out of its knuckle.
pub(super) fn strip(plan: &Plan, corner: Corner) -> Vec<StepSpec> {
    let step = |step, form| at_corner(Phase::Strip, step, corner, form);
    let mut steps = Vec::new();
    if plan.start == Start::AtCar {
        steps.push(step(Step::CardAxleNut, Form::Card(CardItem::AxleNut)));
    }
    steps.extend(nut_off(plan, corner));
    steps.push(
        step(Step::StripBrake, Form::Do)
            .held_by(HoldPoint::Yes)
            .moves(ItemKind::CaliperPins, ItemState::Off)
            .moves(ItemKind::BracketBolts, ItemState::Off)
            .moves(ItemKind::Bracket, ItemState::Off)
            .moves(ItemKind::Rotor, ItemState::Off)
            .with_next(),
    );
    steps.push(step(Step::SensorPhoto, Form::Photo));
    steps.push(
        step(Step::StripSensor, Form::Do)
            .held_by(HoldPoint::Yes)
            .moves(ItemKind::SensorWire, ItemState::Off)
            .with_next(),
    );
    steps.push(
        step(Step::StripHub, Form::Do)
            .held_by(HoldPoint::Yes)
            .moves(ItemKind::HubBolts, ItemState::Off)
            .moves(ItemKind::Hub, ItemState::Off)
            .moves(ItemKind::Plate, ItemState::Off),
    );
    steps
}

/// The axle nut off. Where its wheel held the shaft, the car stood on it: it is shoved again on its
/// stand before the wheel and the nut come off.
fn nut_off(plan: &Plan, corner: Corner) -> Vec<StepSpec> {
    let step = |step| at_corner(Phase::Strip, step, corner, Form::Do);
    let first = |spec: StepSpec| {
        spec.held_by(HoldPoint::Before)
            .held_by(HoldPoint::Yes)
            .moves(ItemKind::Stake, ItemState::Off)
    };
    let off = |spec: StepSpec| spec.moves(ItemKind::AxleNut, ItemState::Off).with_next();
    if plan.nut == NutPosition::AirBar {
        return vec![off(first(step(Step::StripNut)))];
    }
    let mut shove = at_corner(Phase::Strip, Step::Shove, corner, Form::Ask);
    shove.key = shove.key.nth(SHOVE_AXLE_NUT);
    vec![
        first(step(Step::LoosenAxleNut))
            .moves(ItemKind::AxleNut, ItemState::Loosened)
            .with_next(),
        shove,
        off(step(Step::StripNut)
            .held_by(HoldPoint::Yes)
            .held_by(HoldPoint::Stand)),
    ]
}
