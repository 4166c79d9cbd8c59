//! Line drawings as pure geometry; screens and paper use the same ones.

#[cfg(test)]
mod check;
pub mod corner;
pub mod dial;
mod fill;
pub mod icon;
pub mod mark;
pub mod pen;
pub mod piece;
pub mod place;
pub mod shape;
pub mod star;
pub mod strip;
mod svg;

pub use shape::Drawing;
