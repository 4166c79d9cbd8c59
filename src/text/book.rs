//! What the card book says beside the cards themselves.

use super::table::{phrases, sentences};

sentences! {
    /// A key label or a sentence of the card book.
    pub enum BookWord, book {
        Title => "Card book",
        Say =>
            "Cards that were looked up before, by vehicle. Before one is used again, read its page: one tap says that you did.",
        Empty =>
            "No card is kept yet. Cards of real jobs are kept here by themselves. A new phone starts with the file of another one.",
        Export => "Save the book as a file",
        TakeIn => "Open a file",
        Today => "Looked up today",
        Differ => "Two phones kept different figures. Read the page; the one you tap counts.",
        OtherCard => "Show the other card",
        Clicks =>
            "One click is counted for each torque that a fastener is brought to, in every pass. Seating, an angle and a turn back count none.",
        SwingsKept => "Counted before the phone went out. Not sure? Count from 0.",
        SwingsAnew => "Count from 0",
        OpensAgain =>
            "The wheel end is closed: to measure again, wheel and caliper come off first, and every nut goes to its card again.",
    }
}

phrases! {
    book_file_stem(date: &str) => "hubslate-card-book-{date}",
    other_phone_says(value: &str, source: &str) =>
        "Another phone kept {value} ({source}). Read the page before you choose.",
    other_count(printed: u8, known: u8) =>
        "The page speaks of {printed} of them, this vehicle is noted with {known}. Is it the page of this vehicle? Read it again, or correct the vehicle.",
}
