//! What is said round a yes and a no; the sentences in `en/consent.rs`.

/// One sentence.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Asking<'a> {
    /// The key that leaves the car without an answer.
    WaitKey,
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
