//! What is said of values that two phones recorded differently.

use super::table::{phrases, sentences};

sentences! {
    /// A title, a sentence or a key about values that differ.
    pub enum ConflictWord, conflict {
        Title => "Recorded differently",
        Say => "Two phones recorded this differently. The more careful value counts until you choose.",
        CountsNow => "counts now",
        Settle => "Choose the right value",
        InFiles => "Jobs with values that two phones recorded differently:",
    }
}

phrases! {
    recorded_by(line: &str, who: &str, device: &str, when: &str) => "{line} ({who}, phone {device}, {when})",
    take_value(line: &str) => "Take: {line}",
    values_differ(n: usize) => "Recorded differently on two phones: {n}",
    differs_on_page(lines: &str) =>
        "Two phones recorded this differently, and no one has chosen yet. The more careful value counts here: {lines}.",
}
