//! What was read from paper.

use crate::job::entry::Event;

/// The facts that were read from paper.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct Slip {
    /// The job they are of.
    pub job: String,
    /// The digest of the record that the paper was printed from, in hex.
    pub digest: String,
    /// The facts, in the order in which they go on paper.
    pub facts: Vec<Event>,
}
