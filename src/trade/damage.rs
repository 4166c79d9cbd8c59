//! What is seen on the part that came off, in the terms of the standard on damage to bearings.

use crate::words;

words! {
    /// What the technician saw on the old part: suspected, since a sealed hub shows little.
    ///
    /// # Source
    /// The failure modes of ISO 15243 (second-hand: the headings, not its text), each under the
    /// name that a workshop uses.
    pub enum Damage {
        /// Rolling contact fatigue: flakes and spalls.
        Fatigue = "fatigue",
        /// Wear, abrasive or adhesive.
        Wear = "wear",
        /// Corrosion by moisture.
        Moisture = "moisture",
        /// Friction corrosion by vibration at rest.
        FalseBrinelling = "false_brinelling",
        /// Plastic deformation by overload.
        Overload = "overload",
        /// Erosion by electric current: craters or fluting.
        Electrical = "electrical",
        /// Blue or straw, burnt grease.
        Heat = "heat",
        /// Looked at, nothing to be seen.
        NoneSeen = "none_seen",
        /// Nobody looked.
        NotLooked = "not_looked",
    }
}

impl Damage {
    /// Whether it says how the part failed.
    pub const fn is_a_cause(self) -> bool {
        !matches!(self, Self::NoneSeen | Self::NotLooked)
    }
}

words! {
    /// Why a job came back with the same corner (our own four, no source).
    pub enum CameBackFor {
        /// The new part failed.
        Part = "part",
        /// It was fitted wrongly.
        Fitting = "fitting",
        /// The bearing was not what was wrong.
        Decision = "decision",
        /// Nobody knows.
        NotKnown = "not_known",
    }
}
