//! What the customer was asked and answered: the inspection, the repair of each wheel end, and every
//! further work, each with the price as it stood when it was asked.

use crate::job::entry::{Consent, Entry, EntryId, Event, Money, Price, Scope};
use crate::job::key::Key;
use crate::job::mishap::Mishap;
use crate::job::sheet::JobState;
use crate::map::OrderedMap;
use crate::trade::vehicle::Corner;
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
}

/// The answers that stand, in the order in which they were given.
pub fn answered(sheet: &JobState) -> Vec<Answered<'_>> {
    let mut walk = Walk::new(sheet);
    for entry in sheet.counting() {
        walk.step(entry);
    }
    walk.standing.into_values().collect()
}

/// By entry, what goes with each answer about further work.
pub fn extras(sheet: &JobState) -> OrderedMap<&EntryId, Extra<'_>> {
    let mut all = OrderedMap::new();
    let mut walk = Walk::new(sheet);
    for entry in sheet.counting() {
        walk.step(entry);
        if let Event::Consent(consent) = &entry.what
            && consent.scope == Scope::Extra
        {
            let reason = walk.reasons.get(&consent.step).map(|(_, mishap)| *mishap);
            let total = walk.total();
            all.insert(&entry.id, Extra { reason, total });
        }
    }
    all
}

/// What is agreed to now: the repairs and the further work; `None` before any amount was.
pub fn agreed(sheet: &JobState) -> Option<Money> {
    let mut walk = Walk::new(sheet);
    for entry in sheet.counting() {
        walk.step(entry);
    }
    walk.total()
}

/// A repair at this price with the further work that was agreed to already; `None` where none was in
/// its currency.
pub fn repair_with_further(sheet: &JobState, repair: &Money) -> Option<(Money, Money)> {
    let answers = answered(sheet);
    let yes = answers.iter().filter(|it| it.consent.yes);
    let further = yes.filter(|it| it.consent.scope == Scope::Extra);
    let amounts = further.filter_map(|it| it.consent.amount.as_ref());
    let same = amounts.filter(|it| it.currency == repair.currency);
    let minor = same.fold(0_i64, |sum, it| sum.saturating_add(it.minor));
    let of = |minor| Money {
        minor,
        currency: repair.currency.clone(),
    };
    (minor != 0).then(|| (of(minor), of(minor.saturating_add(repair.minor))))
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

/// What there is one answer about: the inspection, the repair of a wheel end, or further work after
/// one mishap.
type Slot<'a> = (Scope, Option<Corner>, Option<StepKey>, Option<&'a EntryId>);

struct Walk<'a> {
    price: Option<&'a Price>,
    reasons: OrderedMap<StepKey, (&'a EntryId, &'a Mishap)>,
    /// The answers that no later one had seen, and whether it is the one that holds.
    last: OrderedMap<&'a EntryId, bool>,
    /// By the place at which they were given.
    standing: OrderedMap<usize, Answered<'a>>,
    places: OrderedMap<Slot<'a>, usize>,
    next: usize,
    /// What was said yes to, by currency, and the currency of each answer that counts.
    sums: OrderedMap<&'a str, i128>,
    currencies: OrderedMap<usize, &'a str>,
}

impl<'a> Walk<'a> {
    fn new(sheet: &'a JobState) -> Self {
        let answers = sheet.keys().filter(|key| is_answer(key));
        let stated = answers.flat_map(|key| {
            let held = sheet.holds(key).map(|entry| &entry.id);
            sheet
                .stated(key)
                .map(move |it| (&it.id, held == Some(&it.id)))
        });
        Self {
            price: None,
            reasons: OrderedMap::new(),
            last: OrderedMap::from_iter(stated),
            standing: OrderedMap::new(),
            places: OrderedMap::new(),
            next: 0,
            sums: OrderedMap::new(),
            currencies: OrderedMap::new(),
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

    /// A later answer takes the place of the one before it about the same.
    fn answer(&mut self, entry: &'a Entry, consent: &'a Consent) {
        let extra = consent.scope == Scope::Extra;
        match self.last.get(&entry.id) {
            // Of two phones that did not see one another the more careful answer stands.
            Some(false) => return,
            None if !extra => return,
            Some(true) | None => {}
        }
        let reason = self.reasons.get(&consent.step).filter(|_| extra).copied();
        let seen = reason.map(|(id, _)| id);
        let corner = consent.step.corner;
        let slot = match consent.scope {
            Scope::Teardown => (consent.scope, None, None, None),
            Scope::Repair => (consent.scope, corner, None, None),
            Scope::Extra => (consent.scope, corner, Some(consent.step), seen),
        };
        let place = self.next;
        self.next += 1;
        if let Some(before) = self.places.insert(slot, place) {
            self.take_out(before);
        }
        if let Some(amount) = counted(consent) {
            *self.sums.or_default(amount.currency.as_str()) += i128::from(amount.minor);
            self.currencies.insert(place, &amount.currency);
        }
        let answered = Answered {
            entry,
            consent,
            price: self.price,
            mishap: reason.map(|(_, mishap)| mishap),
        };
        self.standing.insert(place, answered);
    }

    fn take_out(&mut self, place: usize) {
        self.currencies.remove(&place);
        let gone = self.standing.remove(&place);
        if let Some(amount) = gone.and_then(|it| counted(it.consent)) {
            *self.sums.or_default(amount.currency.as_str()) -= i128::from(amount.minor);
        }
    }

    /// The sum of every yes to a repair or to further work, in the currency of the first.
    fn total(&self) -> Option<Money> {
        let (_, currency) = self.currencies.iter().next()?;
        let sum = self.sums.get(currency).copied().unwrap_or(0);
        let minor = i64::try_from(sum).unwrap_or(i64::MAX);
        Some(Money {
            minor,
            currency: (*currency).to_owned(),
        })
    }
}

const fn is_answer(key: &Key) -> bool {
    matches!(key, Key::Consent(_) | Key::Extra(_))
}

/// What a yes to work adds.
fn counted(consent: &Consent) -> Option<&Money> {
    let counts = consent.yes && consent.scope != Scope::Teardown;
    consent.amount.as_ref().filter(|_| counts)
}
