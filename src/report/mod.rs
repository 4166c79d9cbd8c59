//! The report as a pure value.

mod money;
pub mod reason;
pub mod scale;
mod signature;

pub use money::money;
pub use signature::signature_svg;
