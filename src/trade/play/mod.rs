//! How far does this bearing move, how sure is that, and is it within its own limit?
//!
//! Read in this order: [`dial`] and [`series`] turn readings into play, [`budget`] says how sure
//! it is, [`limit`] and [`conformity`] compare it, [`measured`] joins sets, [`road`] says what was
//! heard, [`evidence`] and [`decide`] give the verdict; [`rules`] lists every figure they rest on.

pub mod after;
pub mod budget;
pub mod conformity;
pub mod decide;
pub mod dial;
pub mod evidence;
pub mod geometry;
mod hashed;
pub mod limit;
pub mod measured;
pub mod recheck;
pub mod risk;
pub mod road;
pub mod rules;
pub mod series;
pub mod uncertainty;
pub mod way;

pub use after::{After, Against, pass_after};
pub use budget::{Budget, Component, IndicatorError, RigFacts, Source, can_prove};
pub use conformity::{Comparison, Conformity, WhyNot, compare};
pub use decide::{Ground, Reason, Verdict, decide};
pub use dial::{Dial, DialKind, Divisions, Round, RoundError};
pub use evidence::{BrakeHeld, Decision, Evidence, Felt, StopSign, Test};
pub use limit::{Limit, LimitSource};
pub use measured::{Figures, Measured, in_force, join, spec_apart};
pub use recheck::recheck_by;
pub use road::{Heat, Road, RoadSigns, Swerve, heat, road};
pub use series::{ReadingFlag, ReadingSet, SeriesError, Settling};
pub use way::{Method, Place, Rig, Way};
