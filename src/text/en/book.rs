//! The words of the card book, and of what belongs to its cards.

use crate::job::news::BookNews;
use crate::text::book::BookWord;

pub(in crate::text) fn book(word: BookWord) -> &'static str {
    match word {
        BookWord::Title => "Card book",
        BookWord::Say => {
            "Cards that were looked up before, by vehicle. Before one is used again, read its page: one tap says that you did."
        }
        BookWord::Empty => {
            "No card is kept yet. Cards of real jobs are kept here by themselves. A new phone starts with the file of another one."
        }
        BookWord::Export => "Save the book as a file",
        BookWord::TakeIn => "Open a file",
        BookWord::Today => "Looked up today",
        BookWord::Differ => {
            "Two phones kept different figures. Read the page; the one you tap counts."
        }
        BookWord::OtherCard => "Show the other card",
        BookWord::Clicks => {
            "One click is counted for each torque that a fastener is brought to, in every pass. Seating, an angle and a turn back count none."
        }
        BookWord::SwingsKept => "Counted before the phone went out. Not sure? Count from 0.",
        BookWord::SwingsAnew => "Count from 0",
        BookWord::OpensAgain => {
            "The wheel end is closed: to measure again, wheel and caliper come off first, and every nut goes to its card again."
        }
    }
}

/// A span of days in the unit that a person thinks of it in.
pub(in crate::text) fn days_ago(days: i64) -> String {
    let told = |n: i64, one: &str| format!("{n} {one}{} ago", if n == 1 { "" } else { "s" });
    match days {
        ..=0 => "today".to_owned(),
        1..=59 => told(days, "day"),
        60..=729 => told(days * 12 / 365, "month"),
        _ => told(days / 365, "year"),
    }
}

pub(in crate::text) fn book_came(news: BookNews) -> String {
    let many = |n: usize, one: &str, many: &str| format!("{n} {}", if n == 1 { one } else { many });
    let mut told = format!(
        "Card book: {} of {}, {} new",
        many(news.cards, "card", "cards"),
        many(news.families, "family", "families"),
        news.new
    );
    if news.newer > 0 {
        told.push_str(&format!(", {} newer than yours", news.newer));
    }
    if news.other > 0 {
        told.push_str(&format!(
            ", {} with another figure than yours: look it up",
            news.other
        ));
    }
    told
}

pub(in crate::text) fn book_file_stem(date: &str) -> String {
    format!("hubslate-card-book-{date}")
}

pub(in crate::text) fn other_phone_says(value: &str, source: &str) -> String {
    format!("Another phone kept {value} ({source}). Read the page before you choose.")
}

pub(in crate::text) fn other_count(printed: u8, known: u8) -> String {
    format!(
        "The page speaks of {printed} of them, this vehicle is noted with {known}. Is it the page of this vehicle? Read it again, or correct the vehicle."
    )
}
