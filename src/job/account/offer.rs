//! What the customer is asked for before the repair of a wheel end.

use super::{lines, part_of};
use crate::job::agreed::answered;
use crate::job::entry::{Money, Scope};
use crate::job::sheet::JobState;
use crate::trade::money::{Estimate, totals};
use crate::trade::play::Decision;
use crate::trade::vehicle::Corner;

/// What is asked for the repair of one wheel end.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Offer {
    /// No price was given.
    None,
    /// This much.
    Amount(Money),
    /// The price is for several wheel ends: what this one costs is typed first.
    NotDivided,
}

/// What the customer is asked for at a wheel end: its own lines, with those for none by name unless
/// they were agreed to with another one; else the whole price, where nothing else is repaired.
pub fn offer(sheet: &JobState, corner: Corner) -> Offer {
    let Some(price) = sheet.price() else {
        return Offer::None;
    };
    let own = |estimate: &&Estimate| estimate.lines.iter().any(|it| it.corner == Some(corner));
    if let Some(estimate) = price.estimate.as_ref().filter(own) {
        let answers = answered(sheet);
        let others = answers.iter().filter(|it| {
            it.consent.yes
                && it.consent.scope == Scope::Repair
                && it.consent.step.corner != Some(corner)
        });
        let shared = !others
            .filter_map(lines)
            .any(|estimate| estimate.lines.iter().any(|line| line.corner.is_none()));
        let part = part_of(estimate, Some(corner), true, shared);
        if let Ok(sums) = totals(&part) {
            let currency = price.repair.currency.clone();
            let minor = sums.gross;
            return Offer::Amount(Money { minor, currency });
        }
    }
    let mut others = sheet.corners().iter().filter(|at| **at != corner);
    let may_be_repaired = |at: &Corner| {
        let decided = sheet.decided(*at).map(|it| it.decision);
        !matches!(decided, Some(Decision::Keep | Decision::Watch))
    };
    match others.any(may_be_repaired) {
        true => Offer::NotDivided,
        false => Offer::Amount(price.repair.clone()),
    }
}
