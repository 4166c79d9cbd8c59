//! The words of a measurement: how it was taken, what it is worth, what was not done.

use super::desk::decimal_slip;
use crate::job::tip_and_drift::{DriftError, TipError};
use crate::trade::fastening::{Condition, Pattern, PropertyClass};
use crate::trade::play::budget::Source;
use crate::trade::play::way::Difference;
use crate::trade::play::{
    Conformity, DialKind, Ground, LimitSource, Method, Place, ReadingFlag, Rig, RoundError, Test,
};

pub(in crate::text) fn method(method: Method) -> &'static str {
    match method {
        Method::Axial => "Pushed and pulled along the axle",
        Method::Rock => "Rocked",
    }
}

pub(in crate::text) fn place(place: Place) -> &'static str {
    match place {
        Place::Pilot => "Hub pilot, near the center",
        Place::FlangeRim => "Hub flange, at its rim",
        Place::RotorFace => "Rotor face, near its edge",
        Place::RotorEdge => "Rotor edge",
        Place::WheelStud => "Wheel, next to its top lug",
    }
}

pub(in crate::text) fn rig(rig: Rig) -> &'static str {
    match rig {
        Rig::CaliperUp => "Pads out, caliper tied up, rotor flat",
        Rig::RotorOff => "Caliper and rotor off",
        Rig::WheelOn => "Wheel on",
    }
}

pub(in crate::text) fn condition(condition: Condition) -> &'static str {
    match condition {
        Condition::Dry => "Clean and dry",
        Condition::Oiled => "Oiled",
        Condition::Threadlocker => "Threadlocker",
        Condition::NewFastener => "New each time",
        Condition::PrevailingIncluded => "Prevailing torque included",
        Condition::PrevailingExtra => "Prevailing torque added",
        Condition::Stake => "Stake or pin afterwards",
    }
}

pub(in crate::text) const fn prevailing_torque_unknown() -> &'static str {
    "Prevailing torque: the page does not say"
}

pub(in crate::text) const fn until_it_sits() -> &'static str {
    "Until seated"
}

pub(in crate::text) const fn back_until_loose() -> &'static str {
    "back until it is loose"
}

pub(in crate::text) const fn property_class(class: PropertyClass) -> &'static str {
    match class {
        PropertyClass::Iso88 => "Class 8.8",
        PropertyClass::Iso109 => "Class 10.9",
        PropertyClass::Iso129 => "Class 12.9",
        PropertyClass::Grade1 => "Grade 1",
        PropertyClass::Grade2 => "Grade 2",
        PropertyClass::Grade5 => "Grade 5",
        PropertyClass::Grade8 => "Grade 8",
    }
}

pub(in crate::text) const fn pattern(pattern: Pattern) -> &'static str {
    match pattern {
        Pattern::Star => "In a star",
        Pattern::Cross => "Crosswise",
        Pattern::Round => "Around the circle",
        Pattern::AsNumbered => "By the page's numbers",
    }
}

pub(in crate::text) fn fasteners(count: &str, thread: &str, class: &str) -> String {
    let parts = [count, thread, class];
    let given: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    given.join(", ")
}

pub(in crate::text) fn dial_kind(kind: DialKind) -> &'static str {
    match kind {
        DialKind::Plunger => "Plunger",
        DialKind::Lever => "Lever",
    }
}

pub(in crate::text) fn mark(mark: ReadingFlag) -> &'static str {
    match mark {
        ReadingFlag::NutSlack => "the axle nut was slack",
        ReadingFlag::WheelFitted => "the wheel was on",
        ReadingFlag::BaseNotOnKnuckle => "the base was not on the knuckle",
        ReadingFlag::MethodNotRecorded => "the method was not recorded at the dial",
        ReadingFlag::FlexNotTested => "the knuckle was not pushed to test the base, or it moved",
        ReadingFlag::NutHadBeenLoosened => "the axle nut had been loosened and was torqued to spec",
        ReadingFlag::HotHub => "the hub was hot",
        ReadingFlag::GaugeOverdue => "the dial is past its due date",
    }
}

pub(in crate::text) fn difference(difference: Difference) -> &'static str {
    match difference {
        Difference::Method => "the limit is for another direction",
        Difference::Place => "the limit is for another place",
        Difference::Rig => "the limit is for another setup",
        Difference::Force => "the limit is for another force",
    }
}

pub(in crate::text) fn budget_source(source: Source) -> &'static str {
    match source {
        Source::Repeatability => "The cycles among themselves",
        Source::BetweenSets => "The two sets against each other",
        Source::Resolution => "Two readings, each to a division",
        Source::Indicator => "The dial's own error",
        Source::BaseFlex => "The base giving way",
        Source::Temperature => "Warming of the indicator",
        Source::TipAngle => "The tilt of the tip",
    }
}

pub(in crate::text) fn mend_first(source: Source) -> &'static str {
    match source {
        Source::Repeatability => "Fix first: swing more, push and pull with the same force.",
        Source::BetweenSets => "Fix first: same place, same force, base stiffer, in both sets.",
        Source::Resolution => "Fix first: read a finer dial.",
        Source::Indicator => "Fix first: use a dial with a certificate.",
        Source::BaseFlex => "Fix first: set the base stiffer, its arm shorter.",
        Source::TipAngle => "Fix first: set the tip square.",
        Source::Temperature => "Fix first: let dial and arm reach air temperature.",
    }
}

pub(in crate::text) fn tip_slip(slip: TipError) -> String {
    match slip {
        TipError::Number(slip) => decimal_slip(slip),
        TipError::TooSteep => {
            "Beyond 60° a reading says little. Set the tip square and read again.".to_owned()
        }
    }
}

pub(in crate::text) fn creep_slip(slip: DriftError) -> String {
    match slip {
        DriftError::Number(slip) => decimal_slip(slip),
        DriftError::TooFar => {
            "No arm warms so far: the setup moved. Set it again and read again.".to_owned()
        }
    }
}

pub(in crate::text) fn conformity(conformity: Conformity) -> &'static str {
    match conformity {
        Conformity::ProvenIn(of) | Conformity::InNotProven(of) if !of.limit.is_manufacturers() => {
            "Under the default limit, which clears nothing"
        }
        Conformity::OutNotProven(of) if !of.limit.is_manufacturers() => {
            "Over the default limit, not proven"
        }
        Conformity::ProvenOut(of) if !of.limit.is_manufacturers() => {
            "Over the default limit, proven"
        }
        Conformity::ProvenIn(_) => "Within the limit, proven",
        Conformity::InNotProven(_) => "Within the limit, not proven",
        Conformity::OutNotProven(_) => "Over the limit, not proven",
        Conformity::ProvenOut(_) => "Over the limit, proven",
        Conformity::TightNotProven(_) => "Under the least play, not proven",
        Conformity::TightProven(_) => "Under the least play, proven",
        Conformity::NoMovementSeen { .. } => {
            "The limit is zero. No movement was seen; that proves nothing."
        }
        Conformity::MovementSeen { proven: true, .. } => {
            "The limit is zero. Movement was seen, proven."
        }
        Conformity::MovementSeen { proven: false, .. } => {
            "The limit is zero. Movement was seen, not proven."
        }
        Conformity::NoComparison(_) => "Not compared with the limit",
    }
}

/// What lies between two ends.
pub(in crate::text) fn window(least: &str, most: &str) -> String {
    format!("{least} to {most}")
}

pub(in crate::text) fn limit_source(source: LimitSource) -> &'static str {
    match source {
        LimitSource::Manufacturer => "the manufacturer's service information",
        LimitSource::House => "default limit: common practice, no source",
    }
}

pub(in crate::text) fn limit_name(value: &str, source: LimitSource) -> String {
    match source {
        LimitSource::Manufacturer => format!("limit {value} (OEM)"),
        LimitSource::House => format!("limit {value} (default)"),
    }
}

pub(in crate::text) fn least_name(value: &str) -> String {
    format!("least {value}")
}

pub(in crate::text) fn round_error(error: RoundError) -> &'static str {
    match error {
        RoundError::AskTurns { .. } => {
            "More than a quarter turn: the readings do not say which way the needle went"
        }
        RoundError::OffTheDial { .. } => "A reading that is not on this dial",
    }
}

pub(in crate::text) fn ground(ground: Ground) -> &'static str {
    match ground {
        Ground::Dial => "Dial",
        Ground::Hand => "Turned by hand",
        Ground::Ear => "Ear",
        Ground::Rock => "Rocked by hand",
        Ground::Road => "Road test",
        Ground::Heat => "Hub temperatures",
        Ground::Sign => "A sign for which it must not be driven",
    }
}

pub(in crate::text) fn test(test: Test) -> &'static str {
    match test {
        Test::Dial => "play by the dial, against its limit",
        Test::SecondSet => "a second set with the base set elsewhere",
        Test::Hand => "roughness by hand",
        Test::Ear => "noise by ear",
        Test::Rock => "rocking by hand",
        Test::BrakeHeld => "rocking again with the brake held",
        Test::OtherSide => "the same on the other side",
        Test::Road => "the road test",
        Test::Temperatures => "hub temperatures of both sides",
    }
}

pub(in crate::text) fn test_customer(test: Test) -> &'static str {
    match test {
        Test::Dial => {
            "How far the wheel hub moves was not measured against the manufacturer's limit."
        }
        Test::SecondSet => "The measurement was not repeated with a new setup.",
        Test::Hand => "It was not turned by hand to feel for roughness.",
        Test::Ear => "It was not listened to while turned by hand.",
        Test::Rock => "The wheel was not rocked by hand.",
        Test::BrakeHeld => "The wheel was not rocked again with the brake held.",
        Test::OtherSide => "The wheel on the other side was not inspected for comparison.",
        Test::Road => "The car was not driven on the road to listen.",
        Test::Temperatures => "The heat of the two wheels was not compared.",
    }
}
