//! How true does it turn, and on which stud should the rotor sit?
//!
//! Read in this order: [`series`] is what was read round a face, [`harmonics`] the waves in it,
//! [`shape`] what they look like, [`moves`] how far they go, [`reach`] how far the face truly runs
//! out and how sure that is, [`index`] the rotor on every stud, [`limit`] how it stands to its
//! manufacturer's limit, [`advice`] what comes next. [`thickness`] is the rotor under a micrometer.
//!
//! Angles go in the numbering direction of the studs, from the first place on.

pub mod advice;
pub mod arrow;
pub mod harmonics;
mod heights;
pub mod index;
pub mod limit;
pub mod moves;
pub mod reach;
mod rice;
pub mod rules;
pub mod series;
pub mod shape;
mod solve;
#[cfg(test)]
mod tests;
pub mod thickness;

pub use advice::{Known, Next, next};
pub use arrow::Arrow;
pub use harmonics::{Fit, Order, Undetermined, best_fit, fit};
pub use index::{IndexError, MeasuredAs, Position, Studs, positions, separate};
pub use limit::{OtherSurface, RunoutLimit, Surface, compare, reach};
pub use moves::Moves;
pub use reach::{NoUncertainty, Reach};
pub use series::{LeftOut, Series, SeriesError, Spot};
pub use shape::{Form, Shape, shape};
pub use thickness::{Bound, Micrometer, RotorNext, Said, Thickness, ThicknessError, next_of_rotor};
