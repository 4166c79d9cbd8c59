//! English for the rotor's thickness.

use super::desk::decimal_slip;
use crate::job::thickness::ThicknessSlip;
use crate::trade::play::uncertainty::Guarded;
use crate::trade::runout::{Bound, RotorNext, ThicknessFault};
use crate::trade::vehicle::Axle;

pub(in crate::text) fn bound(bound: Bound) -> &'static str {
    match bound {
        Bound::Least => "Least thickness",
        Bound::Variation => "Most variation",
    }
}

pub(in crate::text) fn type_bound(bound: Bound) -> &'static str {
    match bound {
        Bound::Least => "Type the least thickness",
        Bound::Variation => "Type the most variation",
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
        RotorNext::LookUp => "Look up the maker's least thickness and most variation.",
        RotorNext::GoOn => "Thick enough and even: go on with the work.",
        RotorNext::MeasureAgain => {
            "Too near a limit to prove it. Clean both sides, check the zero, measure again at more places; a finer micrometer proves more."
        }
        RotorNext::Machine => {
            "It varies too much. Read the run-out of hub and rotor first; then the rotor is machined where enough is left above its least thickness, or a new one fitted."
        }
        RotorNext::NewRotor => {
            "Too thin to go back on the road: a new rotor. Measure the one on the other side as well."
        }
    }
}

pub(in crate::text) fn thickness_fault(fault: ThicknessFault) -> String {
    match fault {
        ThicknessFault::TooFew { given } => {
            format!("{given} places were measured. 4 at least tell the thinnest, 5 a variation.")
        }
        ThicknessFault::TooMany { given } => {
            format!("{given} readings are more than go round a rotor.")
        }
        ThicknessFault::NoThickness { index } => {
            format!("Reading {} is no thickness.", index + 1)
        }
        ThicknessFault::Division { .. } => "No micrometer has such a step.".to_owned(),
    }
}

pub(in crate::text) fn thickness_slip(slip: ThicknessSlip) -> String {
    match slip {
        ThicknessSlip::Number(slip) => decimal_slip(slip),
        ThicknessSlip::NotAboveZero => "A thickness is above zero.".to_owned(),
    }
}

pub(in crate::text) fn against_least(result: Guarded, limit: &str) -> String {
    let (side, proof) = match result {
        Guarded::ProvenIn => ("above", "proven"),
        Guarded::InNotProven => ("above", "not proven"),
        Guarded::OutNotProven => ("below", "not proven"),
        Guarded::ProvenOut => ("below", "proven"),
    };
    format!("{side} its least thickness of {limit}, {proof}.")
}
