//! What the price of a job comes to, and what hinders asking for it.

use crate::job::JobState;
use crate::job::agreed::agreed;
use crate::job::entry::{Money, Price, Reply};
use crate::trade::answer::Answer;
use crate::trade::money::{Estimate, EstimateError, totals};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Check, Item, ItemKind, ItemState, Step, StepKey};

/// The price of an estimate in a currency; what the inspection costs stays as it was.
///
/// # Errors
/// The [`EstimateError`] for which the lines have no sum.
pub fn priced(
    estimate: Estimate,
    currency: &str,
    refit: Option<Money>,
) -> Result<Price, EstimateError> {
    let repair = Money {
        minor: totals(&estimate)?.gross,
        currency: currency.to_owned(),
    };
    Ok(Price {
        repair,
        refit,
        estimate: Some(estimate),
    })
}

/// Whether a new part does not match the car, as it was seen in its box or beside the old one, and
/// none was installed since.
pub fn wrong_part(sheet: &JobState) -> bool {
    let refused = |step| match sheet.reply(step) {
        Some(Reply::Checked(rows)) => rows.iter().any(|(check, answer)| {
            // The wheel-lock key is asked in the same list.
            *answer == Answer::No && *check != Check::LockKey
        }),
        _ => false,
    };
    let installed = |corner: &Corner| {
        let hub = Item {
            corner: *corner,
            group: ItemKind::Hub,
            number: 1,
        };
        sheet.item(hub) == Some(ItemState::Done)
    };
    let corners = sheet.corners();
    let boxed = refused(StepKey::once(Step::MeetLook)) && !corners.iter().any(installed);
    let compared = |at: &Corner| refused(StepKey::at(Step::Compare, *at)) && !installed(at);
    boxed || corners.iter().any(compared)
}

/// What the customer said yes to, if the price is higher now: then a further yes is needed.
pub fn above_what_was_agreed(sheet: &JobState) -> Option<Money> {
    let price = &sheet.price()?.repair;
    agreed(sheet).filter(|agreed| agreed.minor < price.minor)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::entry::{Consent, Event, How, Scope};

    use crate::job::recorded::sheet;
    use crate::trade::money::{Line, LineKind};
    use crate::trade::vehicle::Corner;
    use crate::units::Decimal;

    fn dollars(minor: i64) -> Money {
        let currency = "USD".to_owned();
        Money { minor, currency }
    }

    fn price(repair: i64) -> Event {
        Event::Price(Price {
            repair: dollars(repair),
            refit: Some(dollars(9_000)),
            estimate: None,
        })
    }

    fn yes(amount: i64) -> Event {
        Event::Consent(Consent {
            step: StepKey::at(Step::Agree, Corner::FrontLeft),
            scope: Scope::Repair,
            yes: true,
            how: How::Spoken,
            amount: Some(dollars(amount)),
        })
    }

    #[test]
    fn lines_make_the_price_and_leave_the_refit() {
        let line = Line {
            kind: LineKind::Labour,
            text: String::new(),
            quantity: Decimal::parse("2").unwrap(),
            each: 9_000,
            taxed: false,
            rate: None,
            corner: None,
        };
        let estimate = Estimate {
            lines: vec![line],
            tax: None,
        };
        let made = priced(estimate.clone(), "USD", Some(dollars(4_000))).unwrap();
        let known = (dollars(18_000), Some(dollars(4_000)));
        assert_eq!((made.repair, made.refit), known);
        // Lines say nothing of the inspection: nobody gave its price, and none is made up.
        assert_eq!(priced(estimate, "USD", None).unwrap().refit, None);
        let none = Estimate {
            lines: Vec::new(),
            tax: None,
        };
        assert_eq!(priced(none, "USD", None), Err(EstimateError::Empty));
    }

    #[test]
    fn an_agreed_extra_is_part_of_what_was_agreed() {
        let corners = || Event::Corners(vec![Corner::FrontLeft]);
        let extra = |yes, amount| {
            Event::Consent(Consent {
                step: StepKey::at(Step::TurnLugNuts, Corner::FrontLeft),
                scope: Scope::Extra,
                yes,
                how: How::Electronic,
                amount: Some(dollars(amount)),
            })
        };
        let of = |yes, after| {
            let all = vec![
                corners(),
                price(48_000),
                self::yes(48_000),
                extra(yes, 4_500),
            ];
            let all = sheet(all.into_iter().chain([price(after)]).collect::<Vec<_>>());
            above_what_was_agreed(&all)
        };
        assert_eq!(of(true, 52_500), None);
        assert_eq!(of(true, 52_501), Some(dollars(52_500)));
        assert_eq!(of(false, 52_500), Some(dollars(48_000)));
    }

    #[test]
    fn a_price_above_the_yes_is_reported() {
        let corners = || Event::Corners(vec![Corner::FrontLeft]);
        let of = |before, after| {
            let all = sheet(vec![corners(), price(before), yes(before), price(after)]);
            above_what_was_agreed(&all)
        };
        assert_eq!(of(48_000, 52_000), Some(dollars(48_000)));
        assert_eq!(of(48_000, 48_000), None);
        assert_eq!(of(48_000, 40_000), None);
    }
}
