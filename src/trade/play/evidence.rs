//! What a decision can rest on: dial, hand, ear and eye, and what nobody did.

use super::conformity::{Conformity, WhyNot};
use super::road::{Heat, Road};
use crate::trade::answer::Answer;
use crate::words;

words! {
    /// The verdict on a corner, in rising order.
    pub enum Decision {
        /// Nothing against it.
        Keep = "keep",
        /// Look again by a date or a distance.
        Watch = "watch",
        /// Replace the bearing.
        Replace = "replace",
        /// Do not drive.
        Stop = "stop",
    }
}

words! {
    /// Movement felt by hand at the tire, with the lug nuts tight.
    pub enum Felt {
        /// Nothing.
        Nothing = "nothing",
        /// Just felt.
        JustFelt = "just_felt",
        /// Seen.
        Seen = "seen",
        /// It knocks.
        Knocks = "knocks",
    }
}

words! {
    /// What the felt movement did with the brake held, which ties hub and knuckle together.
    pub enum BrakeHeld {
        /// Gone: it was in the bearing.
        Gone = "gone",
        /// Still there: a joint, or the wheel on its hub.
        Stays = "stays",
        /// Nobody tried.
        NotDone = "not_done",
    }
}

words! {
    /// Signs for which the vehicle must not be driven.
    pub enum StopSign {
        /// The wheel visibly leans or moves.
        VisibleTilt = "visible_tilt",
        /// The bearing knocks at the rim.
        Knocks = "knocks",
        /// Heat or smoke together with grinding.
        GrindingWithHeat = "grinding_with_heat",
        /// The axle nut is loose.
        LooseAxleNut = "loose_axle_nut",
        /// A flange, a knuckle or a stud is cracked.
        CrackedPart = "cracked_part",
        /// More than one wheel fastener is loose or missing.
        LooseWheelFasteners = "loose_wheel_fasteners",
        /// The hub has caused a brake fault.
        BrakeFault = "brake_fault",
        /// The wheel locks up.
        LockUp = "lock_up",
    }
}

words! {
    /// The looks and tests that a decision names when they were not done.
    pub enum Test {
        /// Play by the dial.
        Dial = "dial",
        /// A second set, the base taken off and set elsewhere.
        SecondSet = "second_set",
        /// Roughness by hand.
        Hand = "hand",
        /// Noise by ear.
        Ear = "ear",
        /// Rocking by hand.
        Rock = "rock",
        /// Rocking again with the brake held.
        BrakeHeld = "brake_held",
        /// The same on the other side.
        OtherSide = "other_side",
        /// The road test.
        Road = "road",
        /// Hub temperatures of both sides.
        Temperatures = "temperatures",
    }
}

impl Evidence {
    /// Nothing was looked at.
    pub const fn nothing() -> Self {
        Self {
            sets: Vec::new(),
            joined: None,
            spec_apart: None,
            roughness: Answer::NotDone,
            noise: Answer::NotDone,
            felt: None,
            brake_held: BrakeHeld::NotDone,
            road: Road::NotDone,
            heat: Heat::NotDone,
            stop_signs: Vec::new(),
            not_done: Vec::new(),
        }
    }
}

/// Everything that a verdict on one corner looks at.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct Evidence {
    /// One result a set, in order, each after the base was taken off and set elsewhere. Empty if
    /// the dial was not used.
    pub sets: Vec<Conformity>,
    /// What the sets say together, where two were compared with one limit.
    pub joined: Option<Conformity>,
    /// Why no set was compared with the manufacturer's limit, where there is one and the default
    /// limit stood in for it.
    pub spec_apart: Option<WhyNot>,
    /// Roughness felt when it is turned by hand.
    pub roughness: Answer,
    /// Noise that comes from this bearing.
    pub noise: Answer,
    /// Movement felt when rocked; `None` if nobody rocked it.
    pub felt: Option<Felt>,
    /// What it did with the brake held; asked only where something was felt.
    pub brake_held: BrakeHeld,
    /// What the road says of this corner.
    pub road: Road,
    /// What its heat says beside that of the other side.
    pub heat: Heat,
    /// Signs for which it must not be driven.
    pub stop_signs: Vec<StopSign>,
    /// Other tests that were due and not done.
    pub not_done: Vec<Test>,
}
