//! The account of a forged job, and readings of one cycle from very many phones.

use hubslate::job::account::account;
use hubslate::job::agreed::extras;
use hubslate::job::conflict::{conflicts, is_contested};
use hubslate::job::entry::{Discount, Ended, Ending, Money, Paid, PaidHow, Reading, Scope, Side};
use hubslate::trade::money::{Billed, BilledFor, Invoice};
use hubslate::trade::play::Dial;
use hubslate::trade::vehicle::Corner;
use hubslate::trade::wheel_end::{SetName, When};
use hubslate::units::Decimal;

use super::*;

fn dollars(minor: usize) -> Money {
    Money {
        minor: i64::try_from(minor).unwrap(),
        currency: "USD".to_owned(),
    }
}

/// Of each kind in turn: a mishap, its answer, a discount, a payment, an invoice.
fn bills(n: usize) -> JobState {
    let each: Vec<Event> = each::entries().into_iter().map(|it| it.what).collect();
    let find = |is: &dyn Fn(&Event) -> bool| each.iter().find(|it| is(it)).unwrap().clone();
    let mishap = find(&|it| matches!(it, Event::Mishap(_)));
    let Event::Mishap(broke) = &mishap else {
        panic!("{mishap:?}");
    };
    let yes = find(&|it| matches!(it, Event::Consent(_)));
    let Event::Consent(yes) = yes else {
        panic!("{yes:?}");
    };
    let part = |at: usize| Billed {
        of: id(at / 2),
        what: BilledFor::Further,
        corner: None,
        text: String::new(),
        lines: Vec::new(),
        taxes: Vec::new(),
    };
    let what = |at: usize| match at % 5 {
        0 => mishap.clone(),
        1 => Event::Consent(hubslate::job::entry::Consent {
            step: broke.step,
            scope: Scope::Extra,
            amount: Some(dollars(at)),
            ..yes.clone()
        }),
        2 => Event::Discount(Discount {
            amount: dollars(1),
            reason: String::new(),
        }),
        3 => Event::Paid(Paid {
            how: PaidHow::Cash,
            amount: dollars(at),
        }),
        _ => Event::Invoice(Box::new(Invoice {
            number: format!("N{at:04}"),
            credits: None,
            currency: "USD".to_owned(),
            parts: vec![part(at)],
        })),
    };
    let end = Event::Ended(Ended {
        ending: Ending::Finished,
        charge: None,
    });
    let entries = (0..n).map(|at| {
        let after: Vec<usize> = at.checked_sub(1).into_iter().collect();
        let what = if at + 1 == n { end.clone() } else { what(at) };
        made(at, &after, what)
    });
    fold(entries)
}

#[test]
fn the_account_of_very_many_answers_discounts_and_invoices() {
    grows(1_500, bills, |sheet: JobState| {
        let account = account(&sheet);
        let next = account.next_document(None).unwrap();
        (next, account.to_pay(), extras(&sheet).len())
    });
}

/// Phones that never met read one cycle, and one of them decided.
fn phones(n: usize) -> JobState {
    let set = SetName {
        when: When::Before,
        nth: 1,
    };
    let each = each::entries().into_iter().map(|it| it.what);
    let decided = each
        .filter(|it| matches!(it, Event::Decided(_)))
        .map(|what| match what {
            Event::Decided(decided) => Event::Decided(hubslate::job::entry::Decided {
                corner: Corner::FrontLeft,
                nth: 1,
                ..decided
            }),
            what => what,
        })
        .next();
    let reading = |at: usize| {
        Event::Reading(Reading {
            corner: Corner::FrontLeft,
            set,
            round: 1,
            side: if at.is_multiple_of(2) {
                Side::Push
            } else {
                Side::Pull
            },
            divisions: Decimal::parse(&(at % 20).to_string()).unwrap(),
            turns: None,
            dial: Dial::THOU,
        })
    };
    let entries = (0..n).map(|at| {
        let what = if at == 0 {
            decided.clone().unwrap()
        } else {
            reading(at)
        };
        let mut made = made(at, &[], what);
        made.device = format!("phone {at}");
        made
    });
    fold(entries)
}

#[test]
fn one_cycle_read_by_very_many_phones() {
    grows(1_500, phones, |sheet: JobState| {
        let contested = is_contested(&sheet, Corner::FrontLeft, 1);
        assert!(contested);
        let pull = sheet.reading(
            Corner::FrontLeft,
            SetName {
                when: When::Before,
                nth: 1,
            },
            1,
            Side::Pull,
        );
        (conflicts(&sheet).len(), pull.is_some())
    });
}
