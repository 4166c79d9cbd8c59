//! What page one says of the price, and the pages after it.
use super::super::tests::{context, never_says, report, says};
use super::super::{Reader, Report, sample};
use super::*;
use crate::job::entry::{Charge, Consent, Event, How, PaidHow, Price, Reply, Scope};
use crate::text::Lang;
use crate::trade::answer::Answer;
use crate::trade::money::{Invoice, LineKind, TaxRounding, TaxRule};
use crate::trade::play::{Decision, Felt};
use crate::trade::wheel_end::{Check, Choice, ItemKind, ItemState, Step, StepKey};
use crate::units::{Decimal, DecimalMark, Format, System};

const COMMA: Format = Format {
    system: System::Metric,
    decimal: DecimalMark::Comma,
};

fn decimal(text: &str) -> Decimal {
    Decimal::parse(text).unwrap()
}

fn euro(minor: i64) -> Money {
    let currency = "EUR".to_owned();
    Money { minor, currency }
}

fn line(kind: LineKind, text: &str, quantity: &str, each: i64) -> Line {
    Line {
        kind,
        text: text.to_owned(),
        quantity: decimal(quantity),
        each,
        taxed: true,
        rate: None,
        corner: None,
    }
}

/// 170 and 1.5 times 90 are 305; 19 % of it are 57.95.
fn price() -> Price {
    let tax = TaxRule {
        percent: decimal("19"),
        rounding: TaxRounding::Total,
    };
    Price {
        repair: euro(36_295),
        refit: Some(euro(9_000)),
        estimate: Some(Estimate {
            lines: vec![
                line(LineKind::Part, "Hub", "1", 17_000),
                line(LineKind::Labour, "", "1.5", 9_000),
            ],
            tax: Some(tax),
        }),
    }
}

#[test]
fn a_price_in_lines_is_reported_line_by_line_with_what_came_in() {
    let mut job = sample::finished(None);
    let step = StepKey::at(Step::Agree, sample::AT);
    job.tap(vec![
        Event::Price(price()),
        Event::Consent(Consent {
            step,
            scope: Scope::Repair,
            yes: true,
            how: How::Written,
            amount: Some(euro(36_295)),
        }),
    ]);
    let invoice = account(&job.sheet()).next_document(None).unwrap();
    let invoice = Invoice {
        number: "N0042".to_owned(),
        ..invoice.unwrap()
    };
    job.tap(vec![
        Event::Invoice(Box::new(invoice)),
        Event::Paid(Paid {
            how: PaidHow::Cash,
            amount: euro(36_295),
        }),
    ]);
    let reader = Reader {
        job: "0195-log-77aa31bc".to_owned(),
        digest: "9f".repeat(32),
        made_by: String::new(),
        contact: String::new(),
        warranty: String::new(),
        codes: None,
    };
    let report = Report::of(&job.sheet(), Lang::English, COMMA, &reader);
    let texts = |blocks: &[Block]| -> Vec<String> {
        let texts = blocks.iter().flat_map(Block::texts);
        texts.map(str::to_owned).collect()
    };
    let (page, after) = (texts(&report.page_one), texts(&report.technician));
    for text in [
        "Part: Hub",
        "Labor",
        "1,5",
        "135,00\u{a0}EUR",
        "305,00\u{a0}EUR",
        "57,95\u{a0}EUR",
    ] {
        assert!(after.iter().any(|it| it == text), "{text}: {after:?}");
    }
    let invoice = texts(&report.invoices[0]);
    for text in [
        "Invoice N0042",
        "Repair, front left, Hub",
        "19\u{a0}%",
        "305,00\u{a0}EUR",
        "Tax, 19\u{a0}% of 305,00\u{a0}EUR",
        "57,95\u{a0}EUR",
        "362,95\u{a0}EUR",
        "0,00\u{a0}EUR",
    ] {
        assert!(invoice.iter().any(|it| it == text), "{text}: {invoice:?}");
    }
    for text in ["362,95\u{a0}EUR", "N0042"] {
        assert!(page.iter().any(|it| it == text), "{text}: {page:?}");
    }
    assert!(
        page.iter()
            .any(|text| text.starts_with("362,95\u{a0}EUR, Cash, "))
    );
}

/// Agreed and taken apart, and not ended.
fn agreed_not_done() -> sample::Job {
    let mut job = sample::packed(None, sample::play_spec("0.05"));
    let worn = ["12", "12", "13"];
    sample::measured(&mut job, Felt::JustFelt, Choice::RoughNoisy, worn);
    job.decided(Decision::Replace);
    job.consent(true);
    job.moved(Step::StripHub, ItemKind::Hub, ItemState::Off);
    job
}

fn compared(job: &mut sample::Job, answer: Answer) {
    let rows = vec![(Check::Pilot, Answer::Yes), (Check::Splines, answer)];
    let compare = StepKey::at(Step::Compare, sample::AT);
    job.answer(compare, Reply::Checked(rows));
}

fn page(job: &sample::Job) -> String {
    context(&report(job).page_one)
}

const WRONG: &str = "The new part does not match this car and was not installed.";

#[test]
fn nothing_is_to_pay_of_a_repair_that_is_not_finished() {
    let mut job = agreed_not_done();
    let estimate = "Full repair, due only when it is finished";
    says(&page(&job), &[estimate, "480.50\u{a0}EUR"]);
    never_says(&page(&job), &["to pay"]);
    // What came in before the end leaves no debt.
    let how = PaidHow::Cash;
    let amount = euro(10_000);
    job.tap(vec![Event::Paid(Paid { how, amount })]);
    never_says(&page(&job), &["to pay"]);
    job.ended(Ending::LeftUnfinished, Some(Charge::Towed));
    says(&page(&job), &["No payment for it is due yet."]);
    never_says(&page(&job), &["to pay", estimate]);
    // The finished repair is to pay.
    let finished = page(&sample::finished(None));
    says(&finished, &["Total to pay", "480.50\u{a0}EUR"]);
    never_says(&finished, &[estimate]);
}

#[test]
fn a_part_that_does_not_match_is_not_to_be_paid() {
    let mut job = agreed_not_done();
    for answer in [Answer::Yes, Answer::NotDone] {
        compared(&mut job, answer);
        never_says(&page(&job), &[WRONG]);
        assert_eq!(account(&job.sheet()).agreed(), 48_050);
    }
    compared(&mut job, Answer::No);
    says(&page(&job), &[WRONG, "You do not pay for it."]);
    never_says(&page(&job), &["Total to pay", "Still to pay"]);
    assert_eq!(account(&job.sheet()).to_pay(), 0);
    job.ended(Ending::LeftUnfinished, Some(Charge::WeComeBack));
    says(&page(&job), &[WRONG, "No payment for it is due yet."]);
    assert_eq!(account(&job.sheet()).to_pay(), 0);
}

#[test]
fn a_part_that_is_wrong_in_its_box_is_not_to_be_paid() {
    let mut job = agreed_not_done();
    let look = StepKey::once(Step::MeetLook);
    let rows = |studs, key| {
        let rows = vec![(Check::LockKey, key), (Check::BoxStuds, studs)];
        Reply::Checked(rows)
    };
    // A lost wheel-lock key says nothing of the part.
    job.answer(look, rows(Answer::Yes, Answer::No));
    never_says(&page(&job), &[WRONG]);
    job.answer(look, rows(Answer::No, Answer::Yes));
    says(&page(&job), &[WRONG]);
    // The right one came and is in.
    job.moved(Step::Offer, ItemKind::Hub, ItemState::Done);
    never_says(&page(&job), &[WRONG]);
}

#[test]
fn a_repair_that_was_declined_is_not_offered_again_before_the_end() {
    let mut job = agreed_not_done();
    job.consent(false);
    let page = page(&job);
    says(&page, &["Repair you declined, not charged"]);
    never_says(&page, &["if you approve it", "to pay"]);
}
