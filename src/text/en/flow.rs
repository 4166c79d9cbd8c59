//! What is said on the way between the shop and its vans.

use super::count;
use crate::job::entry::Slot;

/// When, and by which van, a job is done.
pub(in crate::text) fn slot(slot: &Slot) -> String {
    let time = slot.time.map(|time| time.to_string()).unwrap_or_default();
    slot_words(&slot.day.to_string(), &time, &slot.van)
}

/// The same from texts that may be empty.
pub(in crate::text) fn slot_words(day: &str, time: &str, van: &str) -> String {
    let van = if van.is_empty() {
        String::new()
    } else {
        format!("van {van}")
    };
    let words = [day, time, van.as_str()];
    let templates: Vec<&str> = words.into_iter().filter(|word| !word.is_empty()).collect();
    templates.join(" · ")
}

/// How much is new since the last confirmation.
pub(in crate::text) fn new_since(entries: usize, logs: usize) -> String {
    format!(
        "{} of {} since the last confirmation.",
        count(entries, "entry", "entries"),
        count(logs, "job or list", "jobs and lists"),
    )
}

/// Running numbers that are missing, with who held the phone.
pub(in crate::text) fn gap(device: &str, by: &str, from: u64, to: u64) -> String {
    let holder = if by.is_empty() {
        device.to_owned()
    } else {
        format!("{by} ({device})")
    };
    if from == to {
        format!("{holder}: entry {from} missing")
    } else {
        format!("{holder}: entries {from}\u{2013}{to} missing")
    }
}

/// Entries that were emptied by a file.
pub(in crate::text) fn emptied(n: usize) -> String {
    if n == 1 {
        "One entry was erased by this file.".to_owned()
    } else {
        format!("{n} entries were erased by this file.")
    }
}

/// The re-torque rule.
pub(in crate::text) fn retorque_rule(after: &str, days: u16) -> String {
    format!("{after}, within {}", self::days(days))
}

/// So many days.
pub(in crate::text) fn days(n: u16) -> String {
    count(n.into(), "day", "days")
}

/// So many lines.
pub(in crate::text) fn lines(n: usize) -> String {
    count(n, "line", "lines")
}

/// The name of a day file, without its ending.
pub(in crate::text) fn day_file_stem(day: &str, van: &str) -> String {
    named("hubslate-day", day, van)
}

/// The name of the file of a closed day, without its ending.
pub(in crate::text) fn closed_file_stem(day: &str, van: &str) -> String {
    named("hubslate-closed", day, van)
}

/// The name of a confirmation, without its ending.
pub(in crate::text) fn confirmation_file_stem(day: &str) -> String {
    named("hubslate-confirmation", day, "")
}

fn named(what: &str, day: &str, van: &str) -> String {
    if van.is_empty() {
        format!("{what}-{day}")
    } else {
        format!("{what}-{day}-{van}")
    }
}
