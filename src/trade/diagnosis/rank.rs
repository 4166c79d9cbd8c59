//! The ranking: what could make the complaint, given what was found.

use super::clue::{Cause, Clue, Complaint, Test};
use super::table::Table;
use crate::sorted::Sorted;
use crate::trade::answer::Answer;

/// What was found, by clue; what was not tried says nothing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Findings {
    /// What the customer complains of.
    pub complaint: Complaint,
    answers: [Answer; Clue::COUNT],
}

/// One cause and how likely it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ranked {
    /// The cause.
    pub cause: Cause,
    /// Its chance, 0 to 1; all causes are 1 together.
    pub chance: f64,
}

/// No chance above this is shown: nothing here is certain (common practice, no source).
pub const MOST_CERTAIN: f64 = 0.95;

/// Two causes closer than this, in steps of two in the odds, are not separated.
pub const SEPARATED_STEPS: f64 = 1.0;

impl Findings {
    /// A complaint before anything was tried.
    pub const fn of(complaint: Complaint) -> Self {
        Self {
            complaint,
            answers: [Answer::NotDone; Clue::COUNT],
        }
    }

    /// The same with an answer to one clue; another answer to it goes.
    #[must_use]
    pub fn with(mut self, clue: Clue, answer: Answer) -> Self {
        if let Some(slot) = self.answers.get_mut(clue as usize) {
            *slot = answer;
        }
        self
    }

    /// What was found of a clue.
    pub fn answer(&self, clue: Clue) -> Answer {
        let found = self.answers.get(clue as usize);
        found.copied().unwrap_or(Answer::NotDone)
    }

    /// Whether anything of a test is known.
    pub fn is_done(&self, test: Test) -> bool {
        test.clues()
            .any(|clue| self.answer(clue) != Answer::NotDone)
    }
}

/// What a clue, as it was found, changes in a cause: steps of two in the odds, against a cause that
/// has nothing to do with it.
///
/// A Yes weighs what the table says. A No to a test that shows one thing alone weighs
/// `log2((1 − p) / (1 − p0))`, where `p` is how often the clue shows with this cause and `p0` how
/// often it shows anyway. "Not done" weighs nothing, nor does a No to one of several outcomes.
pub fn weight(table: &Table, findings: &Findings, clue: Clue, cause: Cause) -> f64 {
    let steps = f64::from(table.steps(clue, cause));
    match findings.answer(clue) {
        Answer::Yes => steps,
        Answer::No if clue.test().is_plain() => absent(table.anyway(clue), steps),
        _ => 0.0,
    }
}

/// What the absence of a clue weighs that shows in the share `anyway` of other cars.
pub(super) fn absent(anyway: f64, steps: f64) -> f64 {
    let shows = (anyway * steps.exp2()).min(SHOWS_AT_MOST);
    ((1.0 - shows) / (1.0 - anyway)).log2()
}

/// No cause shows a clue more often than this.
const SHOWS_AT_MOST: f64 = 0.99;

/// Of two clues that say much the same the larger counts, not the sum; equals that contradict each
/// other cancel.
pub(super) fn larger(one: f64, other: f64) -> f64 {
    match one.abs().total_cmp(&other.abs()) {
        std::cmp::Ordering::Greater => one,
        std::cmp::Ordering::Less => other,
        std::cmp::Ordering::Equal => f64::midpoint(one, other),
    }
}

/// The sum over all clues of what each changes in a cause, twins by the larger.
pub(super) fn total(weigh: impl Fn(Clue) -> f64) -> f64 {
    let each = Clue::ALL.iter().map(|clue| match clue.twin() {
        Some(twin) if twin < *clue => 0.0,
        Some(twin) => larger(weigh(*clue), weigh(twin)),
        None => weigh(*clue),
    });
    each.sum()
}

/// Every cause with its chance, the likeliest first; equals in the order of the table.
///
/// `odds = start · 2^Σ`, each divided by the sum of all.
///
/// # Source
/// Bayes' rule with independent clues; the weights are common practice, no source. Checked against
/// numpy in `tests/reference/18_ranking.json`.
pub fn rank(table: &Table, findings: &Findings) -> Vec<Ranked> {
    ranked(|cause| {
        let steps = total(|clue| weight(table, findings, clue, cause));
        table.start(findings.complaint, cause) * steps.exp2()
    })
}

/// Causes by their odds.
pub(super) fn ranked(odds: impl Fn(Cause) -> f64) -> Vec<Ranked> {
    let each = Cause::ALL.iter().map(|cause| Ranked {
        cause: *cause,
        chance: odds(*cause),
    });
    let mut all: Vec<Ranked> = each.collect();
    let sum: f64 = all.iter().map(|one| one.chance).sum();
    for one in &mut all {
        one.chance /= sum;
    }
    all.order_by(|a, b| b.chance.total_cmp(&a.chance));
    all
}

/// How far the first cause is before the second, in steps of two in the odds.
pub fn lead(ranking: &[Ranked]) -> f64 {
    match ranking {
        [first, second, ..] => (first.chance / second.chance).log2(),
        _ => 0.0,
    }
}

impl Ranked {
    /// The chance that may be shown.
    pub const fn shown(self) -> f64 {
        self.chance.min(MOST_CERTAIN)
    }
}
