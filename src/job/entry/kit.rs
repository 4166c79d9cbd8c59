//! What is on board of the van.

use chrono::NaiveDate;

use crate::trade::fastening::Wrench;
use crate::trade::play::Dial;
use crate::units::{TypedLength, TypedMass};

/// The instruments on board.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct Carried {
    /// The torque wrenches.
    pub wrenches: Vec<Wrench>,
    /// The dial gauge.
    pub dial: Dial,
    /// What else is on board.
    pub more: MoreKit,
    /// The day by which it is to be checked again, if that is known.
    pub dial_due: Option<NaiveDate>,
}

/// What else is on board; what is not there is not known.
#[derive(Clone, Debug, Default, PartialEq, Hash)]
pub struct MoreKit {
    /// Dials beside the one in use.
    pub dials: Vec<Dial>,
    /// The stands.
    pub stands: Vec<Stand>,
    /// Whether there is an angle gauge.
    pub angle_gauge: Option<bool>,
    /// Which share of a wrench's range the shop lets be used, in hundredths.
    pub share: Option<(u8, u8)>,
    /// The largest error, either way, that the certificate of the dial in use gives.
    pub dial_error: Option<TypedLength>,
    /// The day by which the angle gauge is to be checked again, if that is known.
    pub angle_due: Option<NaiveDate>,
}

/// A stand.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Stand {
    /// What it is called in the van.
    pub name: String,
    /// What one of them may carry, as marked.
    pub rating: TypedMass,
}
