//! What is to be known of the invoice numbers of many files.

use hubslate::text::{self, Lang};
use hubslate::trade::money::{NumberIssue, number_issues};

/// Of each document its number and its job: numbers on more than one document, and those on none between two that are known.
pub fn notes(lang: Lang, all: &[(String, String)]) -> Vec<String> {
    let all = all
        .iter()
        .map(|(number, job)| (number.as_str(), job.as_str()));
    let issues = number_issues(all).into_iter();
    let said = issues.map(|issue| match issue {
        NumberIssue::Twice { number, jobs } => text::number_twice(lang, &number, &jobs.join(", ")),
        NumberIssue::Gap { first, last } if first == last => text::number_missing(lang, &first),
        NumberIssue::Gap { first, last } => text::number_gap(lang, &first, &last),
    });
    said.collect()
}
