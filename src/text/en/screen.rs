//! Sentences of the screens that have values in them; the values come in formatted.

use super::decide::{corner_decision, decision};
use super::words;
use crate::job::eased::Eased;
use crate::trade::vehicle::Corner;

/// "1 job", "2 jobs".
fn count(n: usize, one: &str, many: &str) -> String {
    let word = if n == 1 { one } else { many };
    format!("{n} {word}")
}

/// A name with a lower-case first letter, to stand inside a sentence.
fn inside(name: &str) -> String {
    let mut inside = name.to_owned();
    if let Some(first) = inside.get_mut(..1) {
        first.make_ascii_lowercase();
    }
    inside
}

pub(in crate::text) fn round_of(n: u8, of: u8) -> String {
    format!("Round {n} of {of}")
}

pub(in crate::text) fn swing_of(n: u8, of: u8) -> String {
    format!("Swing {n} of {of}")
}

pub(in crate::text) fn step_of(n: usize, of: usize) -> String {
    format!("Step {n} of {of}")
}

pub(in crate::text) fn step_at(name: &str, corner: Corner) -> String {
    format!("{name}, {}", words::corner(corner))
}

pub(in crate::text) fn nut_clicked(item: &str) -> String {
    format!("{item} clicked")
}

pub(in crate::text) fn next_fastener(item: &str) -> String {
    format!("Next: {}", inside(item))
}

pub(in crate::text) fn no_to_rest(open: usize, of: usize) -> String {
    match open {
        0 => "Keep the answers".to_owned(),
        all if all == of => format!("No to all {of}"),
        1 => "No to the other one".to_owned(),
        some => format!("No to the other {some}"),
    }
}

pub(in crate::text) fn pass_progress(done: usize, of: usize) -> String {
    format!("{done} of {of} at their card")
}

pub(in crate::text) fn set_wrench(wrench: &str, value: &str) -> String {
    format!("Set {wrench} to {value}")
}

pub(in crate::text) fn card_and_wrench(card: &str, set: &str) -> String {
    format!("Card {card}, wrench {set}")
}

pub(in crate::text) fn keep_value(value: &str) -> String {
    format!("Keep {value}")
}

pub(in crate::text) fn same_value(value: &str) -> String {
    format!("Same: {value}")
}

pub(in crate::text) fn also_value(value: &str) -> String {
    format!("= {value}")
}

pub(in crate::text) fn play_from_two(push: &str, pull: &str, play: &str) -> String {
    format!("Pushed in {push}, pulled out {pull}: play {play}")
}

pub(in crate::text) fn median_of(rounds: usize, play: &str, uncertainty: &str) -> String {
    format!(
        "Median of {}: {play} ± {uncertainty}",
        count(rounds, "round", "rounds")
    )
}

pub(in crate::text) fn spread_of(spread: &str) -> String {
    format!("The rounds lie {spread} apart")
}

pub(in crate::text) fn can_prove(over_from: &str, within_to: &str) -> String {
    format!("This gauge can prove \"over\" from {over_from} and \"within\" up to {within_to}.")
}

pub(in crate::text) fn cannot_prove_within(over_from: &str) -> String {
    format!("This gauge can prove \"over\" from {over_from}. It cannot prove \"within\".")
}

pub(in crate::text) fn over_limit(play: &str, limit: &str, source: &str) -> String {
    format!("{play} is over the limit of {limit} ({source})")
}

pub(in crate::text) fn within_limit(play: &str, limit: &str, source: &str) -> String {
    format!("{play} is within the limit of {limit} ({source})")
}

pub(in crate::text) fn house_limit(limit: &str) -> String {
    format!("House limit {limit} (common practice, no source)")
}

pub(in crate::text) fn due_on(what: &str, date: &str) -> String {
    format!("{what}: due {date}")
}

pub(in crate::text) fn overdue_since(what: &str, date: &str) -> String {
    format!("{what}: overdue since {date}")
}

pub(in crate::text) fn odometer_then(then: &str) -> String {
    format!("at {then}")
}

pub(in crate::text) fn odometer_now(now: &str) -> String {
    format!("the odometer stands at {now} now")
}

pub(in crate::text) fn retorque_due(date: &str, distance: &str) -> String {
    format!("By {date} or after {distance}, whichever comes first")
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

pub(in crate::text) fn loose_row(item: &str, state: &str) -> String {
    format!("{item}: {state}")
}

pub(in crate::text) fn last_done(time: &str) -> String {
    format!("Last done {time}")
}

pub(in crate::text) fn next_is(step: &str) -> String {
    format!("Next: {step}")
}

pub(in crate::text) fn you_are_at(phase: &str, step: &str) -> String {
    format!("{phase}: {step}")
}

pub(in crate::text) fn noted_later(done: &str, noted: &str) -> String {
    format!("Done {done}, noted later at {noted}")
}

pub(in crate::text) fn not_done_because(what: &str, because: &str) -> String {
    format!("{what}: not done, {}", inside(because))
}

pub(in crate::text) fn undone_what(what: &str) -> String {
    format!("Taken back: {what}")
}

pub(in crate::text) fn vin_ends(last: &str) -> String {
    format!("The VIN ends in {last}")
}

pub(in crate::text) fn odometer_lower(last: &str) -> String {
    format!("Lower than last time ({last}). Read it again.")
}

pub(in crate::text) fn card_from(document: &str, page: &str, date: &str) -> String {
    format!("{document}, page {page}, looked up {date}")
}

pub(in crate::text) fn not_looked_up_since(date: &str) -> String {
    format!("Not looked up since {date}")
}

pub(in crate::text) fn no_wrench_for(item: &str, value: &str) -> String {
    format!("{item}, {value}: no wrench on board fits")
}

pub(in crate::text) fn wrench_at_edge(wrench: &str, value: &str) -> String {
    format!("{value} lies at the edge of {wrench}")
}

pub(in crate::text) fn kit_missing(n: usize) -> String {
    match n {
        0 => "Nothing is missing".to_owned(),
        _ => format!("{n} missing"),
    }
}

pub(in crate::text) fn cards_open(n: usize) -> String {
    match n {
        0 => "All cards are filled in".to_owned(),
        _ => count(n, "card still open", "cards still open"),
    }
}

pub(in crate::text) fn price_repair(amount: &str) -> String {
    format!("Whole repair: {amount}")
}

pub(in crate::text) fn price_refit(amount: &str) -> String {
    format!("Inspection and reassembly: {amount}")
}

pub(in crate::text) fn agree_to(amount: &str) -> String {
    format!("Yes, for {amount}")
}

pub(in crate::text) fn storage_used(used: &str, of: &str) -> String {
    format!("{used} of {of} used")
}

pub(in crate::text) fn jobs_count(n: usize) -> String {
    count(n, "job", "jobs")
}

pub(in crate::text) fn nothing_found_for(typed: &str) -> String {
    format!("No job found for {typed}")
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
        "{} could not be read: set aside, nothing thrown away",
        count(n, "record", "records")
    )
}

pub(in crate::text) fn unknown_entries(n: usize) -> String {
    format!(
        "{} from a newer version: this job can only be read here",
        count(n, "entry", "entries")
    )
}

pub(in crate::text) fn entries_missing(n: usize) -> String {
    format!(
        "{} not here yet. Import the file of the other phone.",
        count(n, "entry is", "entries are")
    )
}

pub(in crate::text) fn told_twice(what: &str, one: &str, other: &str) -> String {
    format!("{what}: one phone says {one}, another says {other}. Choose one.")
}

pub(in crate::text) fn file_is_newer(version: &str) -> String {
    format!("The file is of version {version}. Update first. Nothing was changed.")
}

pub(in crate::text) fn photo_caption(step: &str, time: &str) -> String {
    format!("{step}, {time}")
}

pub(in crate::text) fn dial_alt(value: &str) -> String {
    format!("Dial at {value}")
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
