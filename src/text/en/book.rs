//! The words of the spec library, and of what belongs to its specs.

use super::count;
use crate::job::spec_diff::BookNews;

/// A span of days in the unit that a person thinks of it in.
pub(in crate::text) fn days_ago(days: i64) -> String {
    match days {
        ..=0 => "today".to_owned(),
        1 => "1 day ago".to_owned(),
        2..=59 => format!("{days} days ago"),
        // Two months at the least.
        60..=729 => format!("{} months ago", days.saturating_mul(12) / 365),
        _ => format!("{} years ago", days / 365),
    }
}

pub(in crate::text) fn book_came(news: BookNews) -> String {
    let mut templates = format!(
        "Spec library: {} of {}, {} new",
        count(news.specs, "spec", "specs"),
        count(news.families, "family", "families"),
        news.new
    );
    if news.newer > 0 {
        templates.push_str(&format!(", {} newer than yours", news.newer));
    }
    if news.other > 0 {
        templates.push_str(&format!(
            ", {} with another value than yours: look it up",
            news.other
        ));
    }
    templates
}
