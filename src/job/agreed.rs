//! What the customer was asked and answered: the inspection, the repair of each wheel end, and every
//! further work, each with the price as it stood when it was asked.

use std::collections::BTreeMap;

use crate::job::entry::{Consent, Entry, EntryId, Event, Money, Price, Scope};
use crate::job::key::Key;
use crate::job::mishap::Mishap;
use crate::job::sheet::JobState;
use crate::trade::wheel_end::StepKey;

/// What goes with an answer about further work.
#[derive(Clone, Debug, PartialEq)]
pub struct Extra<'a> {
    /// What went wrong at its step before the answer.
    pub reason: Option<&'a Mishap>,
    /// What was agreed to up to it, itself included; `None` before any amount was.
    pub total: Option<Money>,
}

/// An answer that stands.
#[derive(Clone, Debug)]
pub struct Answered<'a> {
    /// The entry of the answer.
    pub entry: &'a Entry,
    /// The answer.
    pub consent: &'a Consent,
    /// The price when it was asked.
    pub price: Option<&'a Price>,
    /// What went wrong, where it is about further work.
    pub mishap: Option<&'a Mishap>,
    /// The entry of what went wrong.
    seen: Option<&'a EntryId>,
}

/// The answers that stand, in the order in which they were given.
pub fn answered(sheet: &JobState) -> Vec<Answered<'_>> {
    let mut walk = Walk::new(sheet);
    for entry in sheet.counting() {
        walk.step(entry);
    }
    walk.standing
}

/// By entry, what goes with each answer about further work.
pub fn extras(sheet: &JobState) -> BTreeMap<&EntryId, Extra<'_>> {
    let mut all = BTreeMap::new();
    let mut walk = Walk::new(sheet);
    for entry in sheet.counting() {
        walk.step(entry);
        if let Event::Consent(consent) = &entry.what
            && consent.scope == Scope::Extra
        {
            let reason = walk.reasons.get(&consent.step).map(|(_, mishap)| *mishap);
            let total = total(&walk.standing);
            all.insert(&entry.id, Extra { reason, total });
        }
    }
    all
}

/// What is agreed to now: the repairs and the further work; `None` before any amount was.
pub fn agreed(sheet: &JobState) -> Option<Money> {
    total(&answered(sheet))
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

/// The sum of every yes to a repair or to further work, in the currency of the first.
fn total(answers: &[Answered]) -> Option<Money> {
    let counts = |it: &&Answered| it.consent.yes && it.consent.scope != Scope::Teardown;
    let amounts = answers.iter().filter(counts);
    let mut amounts = amounts.filter_map(|it| it.consent.amount.as_ref());
    let first = amounts.next()?.clone();
    let same = amounts.filter(|money| money.currency == first.currency);
    let minor = same.fold(first.minor, |sum, money| sum.saturating_add(money.minor));
    Some(Money { minor, ..first })
}

struct Walk<'a> {
    sheet: &'a JobState,
    price: Option<&'a Price>,
    reasons: BTreeMap<StepKey, (&'a EntryId, &'a Mishap)>,
    standing: Vec<Answered<'a>>,
}

impl<'a> Walk<'a> {
    const fn new(sheet: &'a JobState) -> Self {
        Self {
            sheet,
            price: None,
            reasons: BTreeMap::new(),
            standing: Vec::new(),
        }
    }

    fn step(&mut self, entry: &'a Entry) {
        match &entry.what {
            Event::Price(price) => self.price = Some(price),
            Event::Mishap(mishap) => {
                self.reasons.insert(mishap.step, (&entry.id, mishap));
            }
            Event::Consent(consent) => self.answer(entry, consent),
            _ => {}
        }
    }

    /// A later answer takes the place of the one before it: there is one about the inspection, one
    /// about the repair of each wheel end, and of further work one about each mishap.
    fn answer(&mut self, entry: &'a Entry, consent: &'a Consent) {
        let extra = consent.scope == Scope::Extra;
        let key = match extra {
            true => Key::Extra(consent.step),
            false => Key::Consent(consent.step),
        };
        let is_held = self.sheet.holds(&key).is_some_and(|it| it.id == entry.id);
        let is_stated = self.sheet.stated(&key).any(|it| it.id == entry.id);
        // Of two phones that did not see one another the more careful answer stands.
        if is_stated && !is_held || !is_stated && !extra {
            return;
        }
        let reason = self.reasons.get(&consent.step).filter(|_| extra).copied();
        let seen = reason.map(|(id, _)| id);
        let same = |it: &Answered| {
            let one = match consent.scope {
                Scope::Teardown => true,
                Scope::Repair => it.consent.step.corner == consent.step.corner,
                Scope::Extra => it.consent.step == consent.step && it.seen == seen,
            };
            it.consent.scope == consent.scope && one
        };
        self.standing.retain(|it| !same(it));
        self.standing.push(Answered {
            entry,
            consent,
            price: self.price,
            mishap: reason.map(|(_, mishap)| mishap),
            seen,
        });
    }
}
