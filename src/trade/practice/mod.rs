//! Invented cars with a hidden truth, to learn on and to test the decisions with.
//!
//! Read in this order: [`chance`] draws from a seed, [`population`] says how a garage of cars
//! varies, [`car`] is one of them, [`behave`] what hands, ears and the dial meet on it.
//! Nothing here is a value for any vehicle: every size is ours, for teaching, without a source.

pub mod behave;
pub mod car;
pub mod chance;
pub mod population;

pub use behave::{Hands, Hub, Rig};
pub use car::{Car, Code, Named, NoiseCause, SpecTrap, Truth};
pub use population::Population;
