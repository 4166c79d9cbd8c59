//! What the spec library says beside the specs themselves.

use super::table::{phrases, sentences};

sentences! {
    /// A key label or a sentence of the spec library.
    pub enum BookWord, book {
        Title => "Spec library",
        Say =>
            "Specs looked up earlier, by vehicle. Reread the page before reusing one; one tap confirms that you did.",
        Empty =>
            "No spec is saved yet. Specs of real jobs are saved here automatically. A new phone starts with another one's file.",
        Export => "Save it as a file",
        TakeIn => "Open a file",
        Today => "Looked up today",
        Differ => "Two phones have different values. Read the page; the one you tap counts.",
        OtherSpec => "Show the other spec",
        Clicks =>
            "One click is counted for each torque that a fastener is brought to, in every pass. Seating, an angle and a turn back count none.",
        SwingsSaved => "Counted before the phone shut off. Not sure? Count from 0.",
        SwingsAnew => "Count from 0",
        OpensAgain =>
            "The wheel end is closed: to measure again, wheel and caliper come off first, and every nut goes to spec again.",
    }
}

phrases! {
    book_file_stem(date: &str) => "hubslate-spec-library-{date}",
    other_phone_says(value: &str, source: &str) =>
        "Another phone has {value} ({source}). Read the page before you choose.",
    other_count(printed: u8, known: u8) =>
        "The page lists {printed} of them, this vehicle is recorded with {known}. Is it the page of this vehicle? Read it again, or correct the vehicle.",
}
