//! English, in US spelling: short, in the technician's order; plain words for the customer.

pub(super) mod angle;
pub(super) mod backdate;
pub(super) mod book;
pub(super) mod checks;
pub(super) mod customer;
pub(super) mod decide;
pub(super) mod desk;
pub(super) mod diagnosis;
pub(super) mod flow;
pub(super) mod follows;
mod kinds;
pub(super) mod ledger;
pub(super) mod measure;
pub(super) mod mishap;
pub(super) mod practice;
pub(super) mod reading;
pub(super) mod removed;
pub(super) mod report;
pub(super) mod runout;
pub(super) mod saved;
pub(super) mod screen;
pub(super) mod steps;
pub(super) mod thickness;
pub(super) mod words;

use crate::text::step::StepText;

/// "1 job", "2 jobs".
pub(super) fn count(n: usize, one: &str, many: &str) -> String {
    let word = if n == 1 { one } else { many };
    format!("{n} {word}")
}

/// What is said to a No of which nothing else is said.
const PUT_RIGHT: &str = "Put this right, then answer again.";

/// A step whose negative answer is the plain word.
const fn tell(
    name: &'static str,
    say: &'static str,
    primary: &'static str,
    why: &'static str,
) -> StepText {
    StepText::new(name, say, primary, "No", why).now(PUT_RIGHT)
}
