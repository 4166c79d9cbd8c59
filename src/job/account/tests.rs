//! The account of made jobs: what was wrong once, and what must hold of every job.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]
mod documents;
mod laws;

use super::*;
use crate::job::entry::{Consent, Ended, How, Paid, PaidHow, Price};
use crate::job::fold;
use crate::job::mishap::Mishap;
use crate::job::recorded::sheet;
use crate::trade::fastening::MishapKind;
use crate::trade::money::{Line, LineKind, TaxRounding, TaxRule};
use crate::trade::wheel_end::{Item, ItemKind, Step, StepKey};
use crate::units::Decimal;

const LEFT: Corner = Corner::FrontLeft;
const RIGHT: Corner = Corner::FrontRight;

fn money(minor: i64) -> Money {
    let currency = "USD".to_owned();
    Money { minor, currency }
}

fn price(repair: i64) -> Event {
    Event::Price(Price {
        repair: money(repair),
        refit: Some(money(9_000)),
        estimate: None,
    })
}

fn consent(step: StepKey, scope: Scope, yes: bool, minor: i64) -> Event {
    Event::Consent(Consent {
        step,
        scope,
        yes,
        how: How::Written,
        amount: Some(money(minor)),
    })
}

fn repair(corner: Corner, yes: bool, minor: i64) -> Event {
    consent(StepKey::at(Step::Agree, corner), Scope::Repair, yes, minor)
}

fn inspection(yes: bool, minor: i64) -> Event {
    consent(
        StepKey::once(Step::TeardownYes),
        Scope::Teardown,
        yes,
        minor,
    )
}

fn further(yes: bool, minor: i64) -> Event {
    let step = StepKey::at(Step::TurnLugNuts, LEFT);
    consent(step, Scope::Extra, yes, minor)
}

fn sheared(number: u8) -> Event {
    Event::Mishap(Mishap {
        step: StepKey::at(Step::TurnLugNuts, LEFT),
        item: Item {
            corner: LEFT,
            group: ItemKind::LugNuts,
            number,
        },
        kind: MishapKind::ALL[0],
        part: "wheel stud".to_owned(),
        minutes: 30,
    })
}

fn ended(ending: Ending) -> Event {
    let charge = None;
    Event::Ended(Ended { ending, charge })
}

fn paid(minor: i64) -> Event {
    let (how, amount) = (PaidHow::Cash, money(minor));
    Event::Paid(Paid { how, amount })
}

fn refunded(minor: i64) -> Event {
    let (how, amount) = (PaidHow::Cash, money(minor));
    Event::Refunded(Paid { how, amount })
}

fn discount(minor: i64) -> Event {
    Event::Discount(Discount {
        amount: money(minor),
        reason: "goodwill".to_owned(),
    })
}

fn corners() -> Event {
    Event::Corners(vec![LEFT, RIGHT])
}

fn due(whats: &[Event]) -> i64 {
    account(&sheet(whats)).to_pay()
}

#[test]
fn agreed_further_work_is_on_the_bill() {
    let job = [
        corners(),
        price(48_600),
        repair(LEFT, true, 48_600),
        sheared(1),
        further(true, 12_000),
        ended(Ending::Finished),
    ];
    assert_eq!(due(&job), 60_600);
    let sheet = sheet(job);
    let account = account(&sheet);
    assert_eq!(account.agreed(), 60_600);
    assert_eq!(account.charges[1].text, "wheel stud");
}

#[test]
fn two_studs_at_one_step_are_two_approvals_and_a_later_no_takes_back_its_own() {
    let begin = || vec![corners(), price(48_600), repair(LEFT, true, 48_600)];
    let of = |rest: Vec<Event>| {
        let mut job = begin();
        job.extend(rest);
        job.push(ended(Ending::Finished));
        due(&job) - 48_600
    };
    let two = vec![
        sheared(1),
        further(true, 4_500),
        sheared(2),
        further(true, 5_000),
    ];
    assert_eq!(of(two), 9_500);
    assert_eq!(
        of(vec![
            sheared(1),
            further(false, 4_500),
            further(true, 4_500)
        ]),
        4_500
    );
    assert_eq!(
        of(vec![
            sheared(1),
            further(true, 4_500),
            further(false, 4_500)
        ]),
        0
    );
    let second_declined = vec![
        sheared(1),
        further(true, 4_500),
        sheared(2),
        further(false, 5_000),
    ];
    assert_eq!(of(second_declined), 4_500);
}

#[test]
fn what_was_declined_is_not_owed_but_the_agreed_inspection_is() {
    let of = |inspected| {
        due(&[
            corners(),
            price(48_600),
            inspected,
            repair(LEFT, false, 48_600),
            ended(Ending::Declined),
        ])
    };
    assert_eq!(of(inspection(true, 8_500)), 8_500);
    assert_eq!(of(inspection(false, 8_500)), 0);
    let never_asked = [
        price(48_600),
        repair(LEFT, false, 48_600),
        ended(Ending::Declined),
    ];
    assert_eq!(due(&never_asked), 0);
    assert_eq!(account(&sheet(never_asked)).declined(), 48_600);
}

#[test]
fn of_two_corners_only_the_approved_one_is_billed() {
    let job = [
        corners(),
        price(90_000),
        inspection(true, 8_500),
        repair(LEFT, true, 48_600),
        repair(RIGHT, false, 41_400),
        ended(Ending::Declined),
    ];
    let sheet = sheet(job);
    let account = account(&sheet);
    let sums = (account.to_pay(), account.declined(), account.agreed());
    assert_eq!(sums, (48_600, 41_400, 48_600));
}

#[test]
fn nothing_is_due_before_the_end_or_unfinished_and_what_came_in_is_in_advance() {
    let job = vec![price(48_600), repair(LEFT, true, 48_600), paid(10_000)];
    let stages = [
        (None, Stage::Open),
        (Some(Ending::LeftUnfinished), Stage::NotDue),
        (Some(Ending::NotSafeHere), Stage::NotDue),
    ];
    for (ending, stage) in stages {
        let mut job = job.clone();
        job.extend(ending.map(ended));
        let sheet = sheet(job);
        let account = account(&sheet);
        let sums = (account.to_pay(), account.overpaid(), account.received());
        assert_eq!((account.stage, sums), (stage, (0, 0, 10_000)));
        assert!(!account.is_settled());
    }
}

#[test]
fn a_price_raised_after_the_yes_does_not_raise_the_bill() {
    let job = [
        price(48_600),
        repair(LEFT, true, 48_600),
        price(60_000),
        ended(Ending::Finished),
    ];
    assert_eq!(due(&job), 48_600);
    let asked_again = [
        price(48_600),
        repair(LEFT, true, 48_600),
        price(60_000),
        repair(LEFT, true, 60_000),
        ended(Ending::Finished),
    ];
    assert_eq!(due(&asked_again), 60_000);
}

#[test]
fn a_yes_without_an_amount_is_no_debt_and_is_said() {
    let Event::Consent(yes) = repair(LEFT, true, 0) else {
        panic!("no consent");
    };
    let yes = Event::Consent(Consent {
        amount: None,
        ..yes
    });
    let sheet = sheet([price(48_600), yes, ended(Ending::Finished)]);
    let account = account(&sheet);
    assert_eq!(account.to_pay(), 0);
    assert!(account.is_unpriced() && !account.is_settled());
}

#[test]
fn overpaying_is_said_and_given_back() {
    let job = [
        price(48_600),
        repair(LEFT, true, 48_600),
        ended(Ending::Finished),
        paid(50_000),
    ];
    let of = |more: Vec<Event>| {
        let job: Vec<Event> = job.iter().cloned().chain(more).collect();
        let sheet = sheet(job);
        let account = account(&sheet);
        (
            account.overpaid(),
            account.still_to_pay(),
            account.is_settled(),
        )
    };
    assert_eq!(of(vec![]), (1_400, 0, true));
    assert_eq!(of(vec![refunded(1_400)]), (0, 0, true));
    assert_eq!(of(vec![refunded(2_400)]), (0, 1_000, false));
    assert_eq!(of(vec![refunded(1_400), discount(600)]), (600, 0, true));
}

#[test]
fn an_amount_in_another_currency_is_named_and_not_counted() {
    let euro = Money {
        minor: 48_600,
        currency: "EUR".to_owned(),
    };
    let how = PaidHow::Cash;
    let other = Event::Paid(Paid {
        how,
        amount: euro.clone(),
    });
    let job = [
        price(48_600),
        repair(LEFT, true, 48_600),
        ended(Ending::Finished),
        other,
    ];
    let sheet = sheet(job);
    let account = account(&sheet);
    assert_eq!(
        (account.still_to_pay(), account.foreign.as_slice()),
        (48_600, &[euro][..])
    );
    assert!(!account.is_settled());
}

#[test]
fn of_two_phones_that_said_yes_to_two_amounts_the_lower_is_owed() {
    let base = sheet([price(48_600)]);
    let mut entries = base.entries().to_vec();
    for (n, minor) in [(1, 48_600), (2, 52_000)] {
        let mut entry = entries[0].clone();
        entry.id = EntryId(format!("000{n}"));
        entry.device = format!("phone {n}");
        entry.after = vec![entries[0].id.clone()];
        entry.what = repair(LEFT, true, minor);
        entries.push(entry);
    }
    let mut end = entries[0].clone();
    end.id = EntryId("0003".to_owned());
    end.after = vec![EntryId("0001".to_owned()), EntryId("0002".to_owned())];
    end.what = ended(Ending::Finished);
    entries.push(end);
    assert_eq!(account(&fold(entries)).to_pay(), 48_600);
}

fn line(text: &str, each: i64, corner: Option<Corner>) -> Line {
    Line {
        kind: LineKind::Part,
        text: text.to_owned(),
        quantity: Decimal::parse("1").unwrap(),
        each,
        taxed: true,
        rate: None,
        corner,
    }
}

fn rule() -> TaxRule {
    TaxRule {
        percent: Decimal::parse("10").unwrap(),
        rounding: TaxRounding::Total,
    }
}

fn lines(lines: Vec<Line>) -> Event {
    let tax = Some(rule());
    let made = crate::job::bill::priced(Estimate { lines, tax }, "USD", None);
    Event::Price(made.unwrap())
}

#[test]
fn a_wheel_end_is_offered_its_own_lines_and_the_common_ones_once() {
    let all = lines(vec![
        line("hub left", 20_000, Some(LEFT)),
        line("hub right", 30_000, Some(RIGHT)),
        line("travel", 5_000, None),
    ]);
    let before = sheet([corners(), all.clone()]);
    let amount = |minor| Offer::Amount(money(minor));
    assert_eq!(offer(&before, LEFT), amount(27_500));
    assert_eq!(offer(&before, RIGHT), amount(38_500));
    let after = sheet([corners(), all.clone(), repair(LEFT, true, 27_500)]);
    assert_eq!(offer(&after, RIGHT), amount(33_000));
    let declined = sheet([corners(), all.clone(), repair(LEFT, false, 27_500)]);
    assert_eq!(offer(&declined, RIGHT), amount(38_500));
    // Both approved is the whole of it.
    let job = [
        corners(),
        all,
        repair(LEFT, true, 27_500),
        repair(RIGHT, true, 33_000),
        ended(Ending::Finished),
    ];
    assert_eq!(due(&job), 60_500);
}

#[test]
fn one_price_for_two_wheel_ends_is_divided_first() {
    let two = sheet([corners(), price(90_000)]);
    assert_eq!(offer(&two, LEFT), Offer::NotDivided);
    let one = sheet([Event::Corners(vec![LEFT]), price(90_000)]);
    assert_eq!(offer(&one, LEFT), Offer::Amount(money(90_000)));
    assert_eq!(offer(&sheet([corners()]), LEFT), Offer::None);
}
