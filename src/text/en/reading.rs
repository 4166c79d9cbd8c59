//! English for one set of readings: how the dial stands, and the cycles on it.
//!
//! How to measure at a place is common practice, no source.

use super::tell;
use crate::text::step::StepText;
use crate::trade::play::way::Difference;
use crate::trade::play::{Method, Place, Rig, SeriesError};

pub(in crate::text) fn method_how(method: Method) -> &'static str {
    match method {
        Method::Axial => "Axial: push straight in, pull straight out",
        Method::Rock => "Rock: push in at the top, pull out at the top",
    }
}

pub(in crate::text) fn place_how(place: Place) -> &'static str {
    match place {
        Place::Pilot => "Tip on the end face of the hub pilot, in line with the axle",
        Place::FlangeRim => "Tip on the flange face near its rim, square to it",
        Place::RotorFace => "Tip on the rotor face, 13 mm (1/2 in) inside its edge",
        Place::RotorEdge => "Tip on the rotor's outer edge, at the top",
        Place::WheelStud => "Tip on the wheel, next to its top lug",
    }
}

pub(in crate::text) fn setup_how(rig: Rig) -> &'static str {
    match rig {
        Rig::CaliperUp => "Pads out, caliper tied up, rotor clamped flat",
        Rig::RotorOff => "Caliper and rotor off",
        Rig::WheelOn => "Wheel on, every lug snug",
    }
}

pub(in crate::text) fn method_key(method: Method) -> &'static str {
    match method {
        Method::Axial => "Axial",
        Method::Rock => "Rock",
    }
}

pub(in crate::text) fn place_key(place: Place) -> &'static str {
    match place {
        Place::Pilot => "Hub pilot",
        Place::FlangeRim => "Flange rim",
        Place::RotorFace => "Rotor face",
        Place::RotorEdge => "Rotor edge",
        Place::WheelStud => "Wheel lug",
    }
}

pub(in crate::text) fn setup_key(rig: Rig) -> &'static str {
    match rig {
        Rig::CaliperUp => "Caliper up",
        Rig::RotorOff => "Rotor off",
        Rig::WheelOn => "Wheel on",
    }
}

pub(in crate::text) fn not_compared(difference: Difference) -> &'static str {
    match difference {
        Difference::Method => "Spec is for another method: not compared",
        Difference::Place => "Spec is for another place: not compared",
        Difference::Rig => "Spec is for another setup: not compared",
        Difference::Force => "Spec is for another force: not compared",
    }
}

pub(in crate::text) fn set_fault(fault: SeriesError) -> String {
    match fault {
        SeriesError::NoRound => "No cycle was read.".to_owned(),
        SeriesError::MixedDials => {
            "Not evaluated: the cycles were read on different dials. One set, one dial.".to_owned()
        }
        SeriesError::Round { index, fault } => {
            let why = super::measure::round_error(fault);
            format!("Not evaluated: cycle {}. {why}.", index + 1)
        }
    }
}

pub(in crate::text) fn same_reading(push: Option<&str>, pull: &str) -> String {
    match push {
        Some(push) => format!("Same: {push}, then {pull}"),
        None => format!("Same: {pull}"),
    }
}

pub(in crate::text) fn round_rocked() -> StepText {
    tell(
        "Push, pull, read",
        "Push in at the top, hold: bezel to zero. Pull out at the top, hold: read.",
        "Save the reading",
        "Three cycles show how far to trust the reading.",
    )
}
