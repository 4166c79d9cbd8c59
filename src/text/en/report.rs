//! The words of the report: plain for the customer on page one, exact on the pages after it.

use super::words;
use crate::trade::play::Decision;
use crate::trade::vehicle::Corner;

pub(in crate::text) fn replaced_customer(corner: Corner) -> String {
    format!("We replaced the {} wheel bearing.", words::corner(corner))
}

pub(in crate::text) fn put_back_customer(corner: Corner) -> String {
    format!(
        "We inspected the {} wheel bearing and put everything back.",
        words::corner(corner)
    )
}

pub(in crate::text) fn recheck_customer(corner: Corner, date: &str) -> String {
    format!(
        "Have the {} wheel bearing checked again no later than {date}.",
        words::corner(corner)
    )
}

pub(in crate::text) fn consent_line(scope: &str, how: &str, name: &str, time: &str) -> String {
    let parts = [how, name, time];
    let said: Vec<&str> = parts.into_iter().filter(|it| !it.is_empty()).collect();
    format!("{scope}: {}", said.join(", "))
}

pub(in crate::text) fn source_line(document: &str, page: &str, date: &str, who: &str) -> String {
    if page.is_empty() {
        return format!("{document}, looked up {date} by {who}");
    }
    format!("{document}, page {page}, looked up {date} by {who}")
}

pub(in crate::text) fn was_found_customer(decision: Decision) -> &'static str {
    match decision {
        Decision::Keep => "Before the work, no fault was found in this wheel bearing.",
        Decision::Watch => "Before the work, this wheel bearing had to be watched.",
        Decision::Replace => "Before the work, this wheel bearing failed our check.",
        Decision::Stop => "Before the work, this car was not safe to drive.",
    }
}

pub(in crate::text) fn steps_not_done_customer(n: usize) -> String {
    match n {
        1 => "1 step of the work was not done. It is named on the technician's pages.".to_owned(),
        _ => format!(
            "{n} steps of the work were not done. They are named on the technician's pages."
        ),
    }
}

pub(in crate::text) fn foot(job: &str, digest: &str) -> String {
    if digest.is_empty() {
        return format!("Job {job}");
    }
    format!("Job {job} · digest {digest}")
}
