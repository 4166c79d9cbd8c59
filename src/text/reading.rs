//! Words of one set of readings: how the dial stands, and the cycles on it.

use super::table::{phrases, sentences};

sentences! {
    /// A word or a fixed sentence of a set of readings.
    pub enum ReadingWord, reading {
        Required => "Manufacturer's spec",
        RequiredByDefault => "Default limit, no manufacturer spec",
        AsShown => "Set up as shown",
        Otherwise => "Set up another way",
        AsDone => "How is the dial set up?",
        SaveSetup => "Save this setup",
        BackToRequired => "Back to the spec",
        ByHand => "By hand",
        Force => "Force",
        OtherDial =>
            "The other cycles of this set were read on another dial. One set, one dial: go back to that dial, or read the set again.",
        ReadSetAgain => "Read the set again",
        OtherDialRun =>
            "This run was begun on another dial. One run, one dial: go back to that dial, or start another run.",
        AskTurnsRun => "Short turn: choose how far it went.",
    }
}

phrases! {
    pushed_at(push: &str) => "Pushed in: {push}",
}
