//! The test that is worth doing next.

use super::clue::{Cause, Clue, Test};
use super::rank::{Findings, Ranked, rank};
use super::table::Table;
use crate::sorted::Sorted;
use crate::trade::answer::Answer;

/// What one test is worth.
#[derive(Clone, Debug, PartialEq)]
pub struct Worth {
    /// The test.
    pub test: Test,
    /// What it is expected to tell, in bits.
    pub bits: f64,
    /// How long it takes, in minutes.
    pub minutes: f64,
    /// What each of its answers would put first.
    pub leads_to: Vec<LeadsTo>,
}

/// What would follow from one answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeadsTo {
    /// The clue that it would show.
    pub clue: Clue,
    /// Yes, or No to a test that shows one thing alone.
    pub answer: Answer,
    /// How likely this answer is.
    pub chance: f64,
    /// What would stand first then.
    pub first: Ranked,
}

/// Every test that was not done, the one that tells most a minute first.
///
/// The gain is the entropy of the ranking less what is expected to be left of it:
/// `H − Σ p(answer) · H(answer)`, with `p` from the table. An answer that says nothing of the kind
/// ("not clear") changes nothing.
///
/// # Source
/// Expected information of an experiment, Lindley 1956; checked against numpy in
/// `tests/reference/18_ranking.json`.
pub fn next_tests(table: &Table, findings: &Findings) -> Vec<Worth> {
    let now = rank(table, findings);
    let open = Test::ALL.iter().filter(|test| !findings.is_done(**test));
    let open = open.filter(|test| can_follow(findings, **test));
    let mut all: Vec<Worth> = open
        .map(|test| worth(table, findings, &now, *test))
        .collect();
    all.order_by(|a, b| b.per_minute().total_cmp(&a.per_minute()));
    all
}

/// A rotor is held against its hub only where the hub was found hot.
fn can_follow(findings: &Findings, test: Test) -> bool {
    test != Test::RotorHeat || findings.answer(Clue::HotHub) == Answer::Yes
}

fn worth(table: &Table, findings: &Findings, now: &[Ranked], test: Test) -> Worth {
    let before = entropy(now);
    let mut bits = 0.0;
    let mut leads_to = Vec::new();
    for (clue, answer) in answers(test) {
        let after = rank(table, &findings.clone().with(clue, answer));
        let chance = chance_of(table, now, clue, answer);
        bits += chance * (before - entropy(&after));
        leads_to.extend(after.first().map(|first| LeadsTo {
            clue,
            answer,
            chance,
            first: *first,
        }));
    }
    Worth {
        test,
        bits: bits.max(0.0),
        minutes: f64::from(table.whole_minutes(test)),
        leads_to,
    }
}

/// The answers that a test can give.
fn answers(test: Test) -> impl Iterator<Item = (Clue, Answer)> {
    let no = test
        .is_plain()
        .then(|| test.clues().map(|clue| (clue, Answer::No)));
    let yes = test.clues().map(|clue| (clue, Answer::Yes));
    yes.chain(no.into_iter().flatten())
}

/// How likely an answer is, whatever the cause.
fn chance_of(table: &Table, now: &[Ranked], clue: Clue, answer: Answer) -> f64 {
    let shows = |cause: Cause| table.anyway(clue) * f64::from(table.steps(clue, cause)).exp2();
    let yes: f64 = now.iter().map(|one| one.chance * shows(one.cause)).sum();
    if answer == Answer::No { 1.0 - yes } else { yes }
}

/// Shannon's entropy in bits.
fn entropy(ranking: &[Ranked]) -> f64 {
    let each = ranking.iter().filter(|one| one.chance > 0.0);
    -each.map(|one| one.chance * one.chance.log2()).sum::<f64>()
}

impl Worth {
    /// What it tells a minute, in bits.
    pub fn per_minute(&self) -> f64 {
        self.bits / self.minutes
    }
}
