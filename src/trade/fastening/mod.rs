//! What is loose, what does its spec spec say, which wrench, in which order, is it plausible?

pub mod adapter;
pub mod calibration;
pub mod clamp;
pub mod mishap;
pub mod order;
pub mod plausible;
pub mod retorque;
pub mod spec;
pub mod strength;
pub mod thread;
pub mod wrench;

pub use adapter::{Lever, LeverError, TypedLever, applied_torque, wrench_setting};
pub use mishap::MishapKind;
pub use order::{OrderError, cross_order, star_order};
pub use plausible::{Doubt, doubts, other_count};
pub use retorque::{RetorqueDue, RetorqueRule, retorque_due};
pub use spec::{
    Condition, Pattern, Position, Printed, Settled, Spec, SpecBody, SpecItem, SpecSource, Stage,
    TorqueBody,
};
pub use strength::PropertyClass;
pub use thread::{Thread, ThreadError};
pub use wrench::{Fit, Upkeep, UsableShare, Wrench, WrenchError, fit};
