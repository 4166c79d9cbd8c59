//! English for the rotor's thickness.

use super::desk::decimal_slip;
use crate::job::thickness::ThicknessInputError;
use crate::trade::play::uncertainty::Guarded;
use crate::trade::runout::{Bound, RotorNext, ThicknessError};
use crate::trade::vehicle::Axle;

pub(in crate::text) fn bound(bound: Bound) -> &'static str {
    match bound {
        Bound::Least => "Minimum (discard) thickness",
        Bound::Variation => "Maximum variation",
    }
}

pub(in crate::text) fn type_bound(bound: Bound) -> &'static str {
    match bound {
        Bound::Least => "Enter the discard thickness",
        Bound::Variation => "Enter the maximum variation",
    }
}

pub(in crate::text) fn rotors_of(axle: Axle) -> &'static str {
    match axle {
        Axle::Front => "front rotors",
        Axle::Rear => "rear rotors",
    }
}

pub(in crate::text) fn next_of_rotor(next: RotorNext) -> &'static str {
    match next {
        RotorNext::LookUp => "Look up minimum thickness and maximum variation.",
        RotorNext::GoOn => "Thick enough and even: continue the work.",
        RotorNext::MeasureAgain => {
            "Too near a limit to prove it. Clean both sides, check the zero, measure again at more places; a finer micrometer proves more."
        }
        RotorNext::Machine => {
            "It varies too much. Read the runout of hub and rotor first; then machine the rotor if enough is left above its minimum thickness, or install a new one."
        }
        RotorNext::NewRotor => {
            "Too thin to go back on the road: a new rotor. Measure the one on the other side as well."
        }
    }
}

pub(in crate::text) fn thickness_fault(fault: ThicknessError) -> String {
    match fault {
        ThicknessError::TooFew { given } => {
            format!("{given} places were measured. At least 4 show the thinnest, 5 a variation.")
        }
        ThicknessError::TooMany { given } => {
            format!("{given} readings are more than go around a rotor.")
        }
        ThicknessError::NoThickness { index } => {
            format!("Reading {} is no thickness.", index + 1)
        }
        ThicknessError::Division { .. } => "No micrometer has such a step.".to_owned(),
    }
}

pub(in crate::text) fn thickness_slip(slip: ThicknessInputError) -> String {
    match slip {
        ThicknessInputError::Number(slip) => decimal_slip(slip),
        ThicknessInputError::NotAboveZero => "A thickness is above zero.".to_owned(),
    }
}

pub(in crate::text) fn against_least(result: Guarded, limit: &str) -> String {
    let (side, proof) = match result {
        Guarded::ProvenIn => ("above", "proven"),
        Guarded::InNotProven => ("above", "not proven"),
        Guarded::OutNotProven => ("below", "not proven"),
        Guarded::ProvenOut => ("below", "proven"),
    };
    format!("{side} its minimum thickness of {limit}, {proof}.")
}
