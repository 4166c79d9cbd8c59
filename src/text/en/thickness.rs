//! English for the rotor's thickness.

use super::desk::decimal_slip;
use crate::job::thickness::ThicknessSlip;
use crate::text::thickness::ThickWord;
use crate::trade::play::uncertainty::Guarded;
use crate::trade::runout::{Bound, RotorNext, ThicknessFault};
use crate::trade::vehicle::Axle;

pub(in crate::text) fn thick(word: ThickWord) -> &'static str {
    match word {
        ThickWord::Title => "Rotor thickness",
        ThickWord::Say => {
            "Rotor clean on both sides. Measure at the places of the run-out, all as far from the edge as the maker says; about 13 mm (1/2 in) is common practice."
        }
        ThickWord::Micrometer => "What is the micrometer's step?",
        ThickWord::Zero => "Check the micrometer's zero. Then measure at stud 1.",
        ThickWord::Measure => "Turn to this place, close by the ratchet, read.",
        ThickWord::Again => "Measure it again",
        ThickWord::Another => "Another measurement",
        ThickWord::Thinnest => "Thinnest",
        ThickWord::Thickest => "Thickest",
        ThickWord::Variation => "Variation",
        ThickWord::Thickness => "Thickness",
        ThickWord::OverThinnest => "Over the thinnest",
        ThickWord::NoLeast => "least thickness not looked up.",
        ThickWord::NoVariation => "limit not looked up.",
        ThickWord::UncertainThinnest => "Standard uncertainty, thinnest",
        ThickWord::UncertainVariation => "Standard uncertainty, variation",
        ThickWord::Range => "Thickest less thinnest, scatter and all",
        ThickWord::Common => {
            "The order of the next steps is common practice, no source. Without a certificate the micrometer's error is taken as 4 \u{b5}m (ISO 3611:1978, up to 50 mm; from memory)."
        }
        ThickWord::Keep => "Keep",
    }
}

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

pub(in crate::text) fn measurement_title(nth: u8) -> String {
    format!("Rotor thickness, measurement {nth}")
}

pub(in crate::text) fn thinnest_at(value: &str, place: u8, against: &str) -> String {
    format!("Thinnest {value}, at place {place}: {against}")
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

pub(in crate::text) fn varies_by(value: &str, against: &str) -> String {
    format!("It varies by {value}: {against}")
}

pub(in crate::text) fn thickness_alt(variation: &str) -> String {
    format!("How much thicker than at its thinnest place the rotor is; {variation} at most")
}
