//! Reading the removed part: what is seen, the failure mode in the terms of ISO 15243:2017, the
//! likely cause; and why a job came back.
//!
//! A sealed hub cannot be opened without damage: a closed part shows nothing of its races, and what
//! it points to is suspected.

mod finding;
mod mode;
mod reading;

pub use finding::{Finding, LikelyCause, Spot};
pub use mode::FailureMode;
pub use reading::{Inspected, PartReading};

use crate::words;

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
