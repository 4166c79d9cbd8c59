//! What is said round a yes and a no; the sentences in `en/consent.rs`.

/// One sentence.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Asking<'a> {
    /// The key that leaves the car without an answer.
    WaitKey,
    /// The same where it stands beside a yes and a no.
    NoAnswerYet,
    /// Whether the owner agrees to further work.
    FurtherAsk,
    /// What comes of a no to it.
    FurtherNo,
    /// The car waits for an answer to it.
    FurtherWaits,
    /// What it costs more, and in all; the latter empty where it is not known.
    Further {
        /// What it costs more.
        more: &'a str,
        /// The new total.
        total: &'a str,
    },
    /// The field for who saw that the owner would not sign.
    Witness,
    /// The owner would not sign, and who saw it; empty if nobody is named.
    RefusedToSign(&'a str),
    /// How the answer to extra work was given.
    HowGiven,
    /// Why extra work is needed.
    Reason(&'a str),
    /// What it costs more.
    CostsMore(&'a str),
    /// What it comes to with everything agreed.
    NewTotal(&'a str),
}
