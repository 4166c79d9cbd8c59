//! Sentences of the screens that have values in them; the values come in formatted.

use super::decide::{corner_decision, decision};
use super::{count, words};
use crate::job::eased::Eased;
use crate::trade::vehicle::Corner;

pub(in crate::text) fn step_at(name: &str, corner: Corner) -> String {
    format!("{name}, {}", words::corner(corner))
}

pub(in crate::text) fn no_to_rest(open: usize, of: usize) -> String {
    match open {
        0 => "Save the answers".to_owned(),
        all if all == of => format!("No to all {of}"),
        1 => "No to the other one".to_owned(),
        some => format!("No to the other {some}"),
    }
}

pub(in crate::text) fn loose_count(n: usize, incomplete: bool) -> String {
    match (n, incomplete) {
        (0, true) => "Unknown what is loose".to_owned(),
        (_, true) => format!("At least {n} loose"),
        (0, false) => "Nothing loose".to_owned(),
        (_, false) => format!("{n} loose"),
    }
}

pub(in crate::text) fn loose_number(n: usize, incomplete: bool) -> String {
    match (n, incomplete) {
        (0, true) => "?".to_owned(),
        (_, true) => format!("{n}+"),
        (_, false) => n.to_string(),
    }
}

pub(in crate::text) fn not_done_because(what: &str, because: &str) -> String {
    format!("{what}: not done. Reason: {because}")
}

pub(in crate::text) fn kit_missing(n: usize) -> String {
    match n {
        0 => "Nothing is missing".to_owned(),
        _ => format!("{n} missing"),
    }
}

pub(in crate::text) fn specs_open(n: usize) -> String {
    match n {
        0 => "All specs are filled in".to_owned(),
        _ => count(n, "spec still open", "specs still open"),
    }
}

pub(in crate::text) fn imported(entries: usize, new: usize) -> String {
    format!(
        "{} read, {new} of them new",
        count(entries, "entry", "entries")
    )
}

pub(in crate::text) fn eased(job: &str, eased: &Eased) -> Vec<String> {
    let loose = eased
        .loose
        .map(|(now, then)| format!("{job}: {now} loose here, {then} with this file."));
    let decided = eased.decisions.iter().map(|(corner, now, then)| {
        let now = corner_decision(*corner, *now);
        let then = then.map_or("no decision", decision);
        format!("{job}: {now} here, {then} with this file.")
    });
    loose.into_iter().chain(decided).collect()
}

pub(in crate::text) fn set_aside(n: usize) -> String {
    format!(
        "{} could not be read: set aside, nothing deleted",
        count(n, "record", "records")
    )
}

pub(in crate::text) fn star_alt(done: usize, of: usize) -> String {
    format!(
        "Wheel with {}, {done} done",
        count(of, "fastener", "fasteners")
    )
}

pub(in crate::text) fn job_file_stem(date: &str, plate: &str) -> String {
    stem("hubslate-job", date, plate)
}

pub(in crate::text) fn practice_file_stem(date: &str, plate: &str) -> String {
    stem("hubslate-practice", date, plate)
}

pub(in crate::text) fn report_file_stem(date: &str, plate: &str) -> String {
    stem("hubslate-report", date, plate)
}

/// A file name out of letters, digits and hyphens only.
fn stem(head: &str, date: &str, plate: &str) -> String {
    let mut name = head.to_owned();
    for part in [date, plate] {
        let clean: String = part
            .chars()
            .filter(|c| c.is_ascii_alphanumeric() || *c == '-')
            .collect();
        if !clean.is_empty() {
            name.push('-');
            name.push_str(&clean);
        }
    }
    name
}
