//! Answers of hands, eyes and ears. Stub, replaced by the numbers branch.
use crate::words;
words! {
    /// An answer to a question.
    pub enum Answer { Yes = "yes", No = "no", NotDone = "not_done" }
}
words! {
    /// Play as felt by hand.
    pub enum Felt { Nothing = "nothing", JustFelt = "just_felt", Seen = "seen", Knocks = "knocks" }
}
