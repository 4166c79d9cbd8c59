//! How true does it turn, and on which stud should the rotor sit?
//!
//! Read in this order: [`series`] is what was read round a face, [`harmonics`] the waves in it,
//! [`shape`] what they look like, [`index`] the rotor on every stud, [`limit`] how it stands to
//! its maker's limit, [`advice`] what comes next. [`thickness`] is the rotor under a micrometer.
//!
//! Angles go in the numbering direction of the studs, from the first place on.

pub mod advice;
pub mod arrow;
pub mod harmonics;
pub mod index;
pub mod limit;
pub mod series;
pub mod shape;
mod solve;
#[cfg(test)]
mod tests;
pub mod thickness;

pub use advice::{Known, Next, next};
pub use arrow::Arrow;
pub use harmonics::{Fit, Order, Undetermined, best_fit, fit};
pub use index::{IndexFault, Position, Studs, Told, positions, separate};
pub use limit::{OtherSurface, RunoutLimit, Surface, budget, compare};
pub use series::{LeftOut, Series, SeriesFault, Spot};
pub use shape::{Form, Shape, shape};
pub use thickness::{Bound, Micrometer, RotorNext, Thickness, ThicknessFault, next_of_rotor};
