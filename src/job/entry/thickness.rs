//! What a micrometer said round a rotor, and the limits that were looked up for it.

use crate::trade::fastening::SpecSource;
use crate::trade::runout::{Bound, Micrometer};
use crate::trade::vehicle::{Axle, Corner};
use crate::units::TypedLength;

/// How a rotor is measured; every reading carries it, so that it stands by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Gauging {
    /// The micrometer.
    pub micrometer: Micrometer,
    /// At how many places, the first at stud 1; those of the rotor's run-out where it was read.
    pub places: u8,
}

/// One place of a rotor.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct ThicknessReading {
    /// Where.
    pub corner: Corner,
    /// Of which measurement at this corner, from 1.
    pub run: u8,
    /// How it is measured.
    pub gauging: Gauging,
    /// Which place, from 1.
    pub place: u8,
    /// How thick it is there, as typed; none where it was skipped.
    pub thickness: Option<TypedLength>,
}

/// One limit that the manufacturer gives for the rotors of an axle.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct ThicknessSpec {
    /// Front and rear rotors differ.
    pub axle: Axle,
    /// What it is of.
    pub bound: Bound,
    /// The value as printed.
    pub value: TypedLength,
    /// Where it was read.
    pub source: SpecSource,
}
