//! What the owner has said yes to in all: the repair, and every extra since.

use crate::job::bill::same_currency;
use crate::job::entry::{Consent, Entry, Money, Scope, What};
use crate::job::mishap::Mishap;
use crate::job::sheet::Sheet;

/// What was agreed to up to an entry, that one included; `None` before any amount was.
pub fn agreed_until(sheet: &Sheet, last: &Entry) -> Option<Money> {
    let mut until = Vec::new();
    for entry in sheet.counting() {
        until.push(entry);
        if entry.id == last.id {
            break;
        }
    }
    total(sheet, &until)
}

/// What is agreed to now.
pub fn agreed(sheet: &Sheet) -> Option<Money> {
    total(sheet, &sheet.counting().collect::<Vec<_>>())
}

/// What would be agreed to with so much more; `None` where that is not known or in another
/// currency.
pub fn agreed_with(sheet: &Sheet, more: &Money) -> Option<Money> {
    let now = agreed(sheet).filter(|now| now.currency == more.currency)?;
    Some(Money {
        minor: now.minor.saturating_add(more.minor),
        currency: now.currency,
    })
}

/// Why extra work was asked for: what went wrong at its step before the answer.
pub fn reason<'a>(sheet: &'a Sheet, answer: &Entry, consent: &Consent) -> Option<&'a Mishap> {
    let before = sheet.counting().take_while(|entry| entry.id != answer.id);
    let at_step = before.filter_map(|entry| match &entry.what {
        What::Mishap(mishap) if mishap.step == consent.step => Some(mishap),
        _ => None,
    });
    at_step.last()
}

fn total(sheet: &Sheet, entries: &[&Entry]) -> Option<Money> {
    let currency = &sheet.price()?.repair.currency;
    let yes = |scope| {
        let consents = entries.iter().filter_map(move |entry| match &entry.what {
            What::Consent(consent) if consent.scope == scope && stands(sheet, consent) => {
                Some(consent)
            }
            _ => None,
        });
        same_currency(consents.filter_map(|it| it.amount.as_ref()), currency)
    };
    let repair = yes(Scope::Repair).into_iter().max()?;
    let extras = yes(Scope::Extra).into_iter();
    Some(Money {
        minor: extras.fold(repair, i64::saturating_add),
        currency: currency.clone(),
    })
}

/// A yes that no later answer took back.
fn stands(sheet: &Sheet, consent: &Consent) -> bool {
    let holds = match consent.scope {
        Scope::Extra => return consent.yes,
        _ => sheet.consent(consent.step),
    };
    consent.yes && holds.is_some_and(|holds| holds.yes)
}
