//! The words of the card book, and of what belongs to its cards.

use crate::job::spec_diff::BookNews;

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
        "Spec library: {} of {}, {} new",
        many(news.cards, "spec", "specs"),
        many(news.families, "family", "families"),
        news.new
    );
    if news.newer > 0 {
        told.push_str(&format!(", {} newer than yours", news.newer));
    }
    if news.other > 0 {
        told.push_str(&format!(
            ", {} with another value than yours: look it up",
            news.other
        ));
    }
    told
}
