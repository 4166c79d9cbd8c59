//! Words of one set of readings: how the dial stands, and the cycles on it.

/// A word or a fixed sentence of a set of readings.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ReadingWord {
    /// What the limit in force requires, as a heading; the manufacturer's.
    Required,
    /// The same where the default limit is in force.
    RequiredByDefault,
    /// The dial stands as shown.
    AsShown,
    /// It stands another way.
    Otherwise,
    /// Which way, as a heading.
    AsDone,
    /// Save what was picked.
    SaveSetup,
    /// Back to what is required.
    BackToRequired,
    /// The hub is moved by hand.
    ByHand,
    /// The legend of the forces.
    Force,
    /// The rounds of this set were read on another dial.
    OtherDial,
    /// Read the set again on the dial at hand.
    ReadSetAgain,
    /// The places of this run were read on another dial.
    OtherDialRun,
    /// The turns from the first place are asked.
    AskTurnsRun,
}
