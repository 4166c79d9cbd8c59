//! Line drawings as pure geometry; screens and paper use the same ones.

mod fill;
pub mod pen;
pub mod place;
pub mod shape;
mod svg;

pub use shape::Drawing;
