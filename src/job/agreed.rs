//! What the customer has said yes to in all: the repair, and every extra since.

use crate::job::entry::{Consent, EntryId, Event, Money, Scope};
use crate::job::mishap::Mishap;
use crate::job::sheet::JobState;
use crate::map::OrderedMap;
use crate::trade::wheel_end::StepKey;

/// What goes with an answer about extra work.
#[derive(Clone, Debug, PartialEq)]
pub struct Extra<'a> {
    /// What went wrong at its step before the answer.
    pub reason: Option<&'a Mishap>,
    /// What was agreed to up to it, itself included; `None` before any amount was.
    pub total: Option<Money>,
}

/// By entry, what goes with each answer about extra work.
pub fn extras(sheet: &JobState) -> OrderedMap<&EntryId, Extra<'_>> {
    let mut all = OrderedMap::new();
    let mut reasons: OrderedMap<StepKey, &Mishap> = OrderedMap::new();
    let mut agreed = Agreed::of(sheet);
    for entry in sheet.counting() {
        match &entry.what {
            Event::Mishap(mishap) => {
                reasons.insert(mishap.step, mishap);
            }
            Event::Consent(consent) => {
                agreed.add(consent);
                if consent.scope == Scope::Extra {
                    let reason = reasons.get(&consent.step).copied();
                    let total = agreed.total();
                    all.insert(&entry.id, Extra { reason, total });
                }
            }
            _ => {}
        }
    }
    all
}

/// What is agreed to now.
pub fn agreed(sheet: &JobState) -> Option<Money> {
    let mut agreed = Agreed::of(sheet);
    for entry in sheet.counting() {
        if let Event::Consent(consent) = &entry.what {
            agreed.add(consent);
        }
    }
    agreed.total()
}

/// What would be agreed to with so much more; `None` where that is not known or in another
/// currency.
pub fn agreed_with(sheet: &JobState, more: &Money) -> Option<Money> {
    let now = agreed(sheet).filter(|now| now.currency == more.currency)?;
    Some(Money {
        minor: now.minor.saturating_add(more.minor),
        currency: now.currency,
    })
}

/// The sum of what was said yes to, in the currency of the price.
struct Agreed<'a> {
    sheet: &'a JobState,
    /// The largest yes to the repair.
    repair: Option<i64>,
    extras: i64,
}

impl<'a> Agreed<'a> {
    const fn of(sheet: &'a JobState) -> Self {
        let (repair, extras) = (None, 0);
        Self {
            sheet,
            repair,
            extras,
        }
    }

    fn currency(&self) -> Option<&'a str> {
        Some(&self.sheet.price()?.repair.currency)
    }

    fn add(&mut self, consent: &Consent) {
        let same = |amount: &&Money| Some(amount.currency.as_str()) == self.currency();
        let Some(amount) = consent.amount.as_ref().filter(same) else {
            return;
        };
        match consent.scope {
            Scope::Repair if stands(self.sheet, consent) => {
                self.repair = self.repair.max(Some(amount.minor));
            }
            Scope::Extra if stands(self.sheet, consent) => {
                self.extras = self.extras.saturating_add(amount.minor);
            }
            _ => {}
        }
    }

    fn total(&self) -> Option<Money> {
        Some(Money {
            minor: self.repair?.saturating_add(self.extras),
            currency: self.currency()?.to_owned(),
        })
    }
}

/// A yes that no later answer took back.
fn stands(sheet: &JobState, consent: &Consent) -> bool {
    let holds = match consent.scope {
        Scope::Extra => return consent.yes,
        _ => sheet.consent(consent.step),
    };
    consent.yes && holds.is_some_and(|holds| holds.yes)
}
