//! The words of the shop's lists and counts.

use super::count;
use crate::job::tally::Measure;
use crate::trade::damage::CameBackFor;

pub(in crate::text) fn came_back_for(cause: CameBackFor) -> &'static str {
    match cause {
        CameBackFor::Part => "The new part failed",
        CameBackFor::Fitting => "Installed wrong",
        CameBackFor::Decision => "It was something else",
        CameBackFor::NotKnown => "Not known",
    }
}

pub(in crate::text) fn measure(measure: Measure) -> (&'static str, &'static str) {
    match measure {
        Measure::Mended => (
            "Replaced, repair proved",
            "Of the hubs decided REPLACE: no play over the limit, smooth, quiet, and no road sign left.",
        ),
        Measure::CameBack => (
            "Comebacks",
            "Of the finished jobs that were asked: the same corner again.",
        ),
        Measure::NotedLater => (
            "Noted later",
            "Entries recorded with another time than the clock's.",
        ),
        Measure::QuickNuts => (
            "Lugs in a hurry",
            "Wheels with five lugs or more that all clicked in less than four seconds (our bound, no source).",
        ),
        Measure::Reasons => (
            "Hold points passed with a reason",
            "Shove, before-readings, axle nut or pedal marked not done, with a reason.",
        ),
    }
}

pub(in crate::text) fn van_name(name: &str) -> String {
    if name.is_empty() {
        "All vans".to_owned()
    } else {
        format!("Van {name}")
    }
}

pub(in crate::text) fn van_label(letters: &str, number: usize) -> String {
    if letters.is_empty() {
        format!("Van {number}, no letters")
    } else {
        format!("Van {letters}")
    }
}

pub(in crate::text) fn jobs(n: usize) -> String {
    count(n, "job", "jobs")
}

pub(in crate::text) fn job_list_file(day: &str) -> String {
    format!("hubslate-jobs-{day}.csv")
}

pub(in crate::text) fn books_file(day: &str) -> String {
    format!("hubslate-books-{day}.csv")
}

pub(in crate::text) fn work_on(kind: &str, corners: usize) -> String {
    if corners == 1 {
        kind.to_owned()
    } else {
        format!("{kind}, {corners}×")
    }
}
