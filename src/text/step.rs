//! What the screen of one step says.

/// The texts of one step, in one language.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StepText {
    /// The short title: "Rock: 12 and 6".
    pub name: &'static str,
    /// What to do, with what, until when.
    pub say: &'static str,
    /// The caution that belongs on this very step.
    pub caution: Option<&'static str>,
    /// The label of the primary key.
    pub primary: &'static str,
    /// The label of the negative answer, where the step can be answered with no.
    pub no: &'static str,
    /// Why it matters, for the one who asks.
    pub why: &'static str,
    /// What to do now, where an answer to it holds something.
    pub now: &'static str,
}

impl StepText {
    /// The texts of a step that has no caution; `no` is the language's plain word for no.
    pub(super) const fn new(
        name: &'static str,
        say: &'static str,
        primary: &'static str,
        no: &'static str,
        why: &'static str,
    ) -> Self {
        Self {
            name,
            say,
            caution: None,
            primary,
            no,
            why,
            now: "",
        }
    }

    /// The same with a caution.
    pub(super) const fn caution(self, caution: &'static str) -> Self {
        Self {
            caution: Some(caution),
            ..self
        }
    }

    /// The same with another negative answer.
    pub(super) const fn no(self, no: &'static str) -> Self {
        Self { no, ..self }
    }

    /// The same with what to do now, where an answer to it holds something.
    pub(super) const fn now(self, now: &'static str) -> Self {
        Self { now, ..self }
    }

    /// The same with another sentence.
    pub(super) const fn say(self, say: &'static str) -> Self {
        Self { say, ..self }
    }
}
