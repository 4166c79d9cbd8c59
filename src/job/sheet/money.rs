//! What stands under a number, and what came in.

use super::JobState;
use crate::job::entry::{Entry, Event, Paid};
use crate::trade::money::Invoice;

impl JobState {
    /// The invoices and credit notes, in the order in which they were numbered.
    pub fn invoices(&self) -> impl Iterator<Item = (&Entry, &Invoice)> {
        self.counting().filter_map(|entry| match &entry.what {
            Event::Invoice(invoice) => Some((entry, &**invoice)),
            _ => None,
        })
    }

    /// What came in and went back, in the order in which it did; what went back below zero.
    pub fn payments(&self) -> impl Iterator<Item = (&Entry, Paid)> {
        self.counting().filter_map(|entry| match &entry.what {
            Event::Paid(paid) => Some((entry, paid.clone())),
            Event::Refunded(paid) => {
                let mut back = paid.clone();
                back.amount.minor = back.amount.minor.saturating_neg();
                Some((entry, back))
            }
            _ => None,
        })
    }
}
