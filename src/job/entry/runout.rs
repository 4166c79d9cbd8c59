//! What was read round a face, and the limit that was looked up for it.

use crate::trade::answer::Answer;
use crate::trade::fastening::SpecSource;
use crate::trade::play::Dial;
use crate::trade::runout::{LeftOut, Surface};
use crate::trade::vehicle::Corner;
use crate::units::{Decimal, TypedAngle, TypedLength};

/// How a run round a face is set up; every reading carries it, so that it stands by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Setup {
    /// What turns under the tip.
    pub surface: Surface,
    /// At how many places it is read, at equal steps from stud 1 where none has its own angle.
    pub places: u8,
    /// The stud, from 1, that hole 1 of the rotor sits on.
    pub stud: u8,
    /// Whether both faces were cleaned to bare metal before.
    pub cleaned: Answer,
}

/// One place of a run.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct RunoutReading {
    /// Where.
    pub corner: Corner,
    /// Of which run at this corner, from 1.
    pub run: u8,
    /// How the run is set up.
    pub setup: Setup,
    /// Which place, from 1; one more than there are is the first read again.
    pub place: u8,
    /// Its angle from stud 1 as typed, where it is not the equal step.
    pub angle: Option<TypedAngle>,
    /// How far the tip stands from the axle's middle, as typed, if anybody told.
    pub radius: Option<TypedLength>,
    /// Where the needle stood, in the dial's divisions, as typed; none where it was skipped.
    pub divisions: Option<Decimal>,
    /// Whole turns of the needle from the first place to here, where they were asked for.
    pub turns: Option<i32>,
    /// The dial it was read on.
    pub dial: Dial,
    /// Why it does not count, if it does not.
    pub left_out: Option<LeftOut>,
}

/// The most run-out that the vehicle's manufacturer allows on one surface.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct RunoutSpec {
    /// Of what.
    pub surface: Surface,
    /// The value as printed.
    pub most: TypedLength,
    /// Where it was read.
    pub source: SpecSource,
}
