//! What is to be known of the invoice numbers of many files.

use hubslate::exchange::LogKind;
use hubslate::exchange::gather::Union;
use hubslate::exchange::invoices::numbers;
use hubslate::text::{self, Lang};
use hubslate::trade::money::{NumberIssue, number_issues};

/// Invoice numbers on more than one document, and those on none between two that are known.
pub fn notes(lang: Lang, unions: &[Union]) -> Vec<String> {
    let jobs = unions.iter().filter(|union| union.kind == LogKind::Job);
    let all: Vec<(String, &str)> = jobs
        .flat_map(|union| {
            let of = numbers(&union.records).into_iter();
            of.map(|number| (number, union.id.0.as_str()))
        })
        .collect();
    let all = all.iter().map(|(number, job)| (number.as_str(), *job));
    let issues = number_issues(all).into_iter();
    let said = issues.map(|issue| match issue {
        NumberIssue::Twice { number, jobs } => text::number_twice(lang, &number, &jobs.join(", ")),
        NumberIssue::Gap { first, last } if first == last => text::number_missing(lang, &first),
        NumberIssue::Gap { first, last } => text::number_gap(lang, &first, &last),
    });
    said.collect()
}
