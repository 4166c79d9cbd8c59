//! How far does this bearing move, how sure is that, and is it within its own limit?
use crate::words;
words! {
    /// Verdict.
    pub enum Decision { Keep = "keep", Watch = "watch", Replace = "replace", Stop = "stop" }
}
/// Stub.
#[derive(Clone, Debug, PartialEq)]
pub struct Dial {}
