//! The answer to a question of the trade: yes, no, or not done. Untouched is not done.

use crate::words;

words! {
    /// An answer. `NotDone` is never counted as no.
    pub enum Answer {
        /// It is so.
        Yes = "yes",
        /// It was looked at and is not so.
        No = "no",
        /// Nobody looked.
        NotDone = "not_done",
    }
}
