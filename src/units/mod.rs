//! Quantities with their units: typed text in, exact factors inside, never a bare number out.
/// Stub.
#[derive(Clone, Debug, PartialEq)]
pub struct Typed {
    /// Text.
    pub text: String,
    /// Unit.
    pub unit: &'static str,
}
