//! What is loose, what does its spec card say, which wrench, in which order, is it plausible?

pub mod adapter;
pub mod card;
pub mod order;
pub mod plausible;
pub mod retorque;
pub mod wrench;

pub use adapter::{Lever, LeverError, applied_torque, wrench_setting};
pub use card::{CardBody, CardItem, CardSource, Condition, Position, SpecCard, Stage, TorqueBody};
pub use order::{OrderError, cross_order, star_order};
pub use plausible::{Doubt, doubts};
pub use retorque::{RetorqueDue, RetorqueRule, retorque_due};
pub use wrench::{Fit, Misfit, UsableShare, Wrench, fit};
