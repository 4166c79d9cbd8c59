//! What is wrong with a record itself.

use crate::job::entry::EntryId;
use crate::job::key::Key;

/// What a person must know about the record itself.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Problem {
    /// An entry is named by another and is not here.
    Missing(EntryId),
    /// Two different entries carry one id.
    Edited(EntryId),
    /// An entry of a kind that this version does not know: the job can be read, not written.
    Unknown(EntryId),
    /// An entry that claims to have seen itself, directly or through others: the file is forged or
    /// broken, and the order of these entries is not known.
    Circle(EntryId),
    /// The phone had more entries of this log than it has now.
    Lost,
    /// Two statements of one fact, neither of which had seen the other.
    Disagree(Key),
}

impl Problem {
    /// Whether it means that entries are missing, or that their order is not known.
    pub(super) const fn leaves_gaps(&self) -> bool {
        matches!(self, Self::Missing(_) | Self::Circle(_) | Self::Lost)
    }
}
