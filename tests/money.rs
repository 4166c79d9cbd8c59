//! The account and the invoices of made jobs, and what other programs say of the same sums: Python's
//! decimal in `money.py`, Python's csv for the table of the books.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/python.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod python;

use std::path::PathBuf;

use hubslate::exchange::invoices::{HEADS, invoices};
use hubslate::exchange::wire::encode;
use hubslate::exchange::{SavedText, read};
use hubslate::job::account::{Stage, account};
use hubslate::job::bill::priced;
use hubslate::job::entry::{
    Consent, Discount, Ended, Ending, Entry, EntryId, Event, How, LogId, Money, Paid, PaidHow,
    PersonField, Scope, Timestamp,
};
use hubslate::job::fold;
use hubslate::job::mishap::Mishap;
use hubslate::trade::fastening::MishapKind;
use hubslate::trade::money::{Estimate, Invoice, Line, LineKind, TaxRounding, TaxRule, totals};
use hubslate::trade::vehicle::Corner;
use hubslate::trade::wheel_end::{Item, ItemKind, Step, StepKey};
use hubslate::units::Decimal;
use serde_json::{Value, json};

/// Numbers by chance, the same in each run (xorshift64, Marsaglia 2003).
struct Chance(u64);

impl Chance {
    fn below(&mut self, end: u64) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0 % end
    }

    fn yes(&mut self) -> bool {
        self.below(2) == 0
    }

    fn of<T: Copy>(&mut self, all: &[T]) -> T {
        all[self.below(all.len() as u64) as usize]
    }

    fn minor(&mut self, most: u64) -> i64 {
        self.below(most) as i64
    }
}

fn decimal(text: &str) -> Decimal {
    Decimal::parse(text).unwrap()
}

fn money(minor: i64) -> Money {
    let currency = "USD".to_owned();
    Money { minor, currency }
}

fn consent(step: StepKey, scope: Scope, yes: bool, minor: i64) -> Event {
    Event::Consent(Consent {
        step,
        scope,
        yes,
        how: How::Spoken,
        amount: Some(money(minor)),
    })
}

/// The entries of one phone, each after the one before it.
fn entries(log: &str, whats: Vec<Event>) -> Vec<Entry> {
    let id = |n: usize| EntryId(format!("0195{n:04}-0000-7000-8000-000000000000"));
    let entry = |(n, what)| Entry {
        id: id(n),
        log: LogId(log.to_owned()),
        at: Timestamp {
            utc_ms: 1_771_335_000_000 + n as i64,
            offset_min: 0,
            recorded: None,
        },
        by: "R. Okafor".to_owned(),
        device: "van-2".to_owned(),
        n: n as u64 + 1,
        after: n.checked_sub(1).map(id).into_iter().collect(),
        what,
    };
    whats.into_iter().enumerate().map(entry).collect()
}

fn line(chance: &mut Chance) -> Line {
    let (whole, part) = (1 + chance.below(20), chance.below(1000));
    let quantity = match chance.below(3) {
        0 => format!("{whole}"),
        1 => format!("{whole}.{:01}", part % 10),
        _ => format!("{whole},{part:03}"),
    };
    Line {
        kind: LineKind::Part,
        text: String::new(),
        quantity: decimal(&quantity),
        each: chance.minor(50_000),
        taxed: chance.below(4) != 0,
        rate: chance
            .yes()
            .then(|| decimal(chance.of(&["5.5", "7", "0", "19.00"]))),
        corner: None,
    }
}

fn further(at: u8, yes: bool, minor: i64) -> [Event; 2] {
    let step = StepKey::at(Step::TurnLugNuts, Corner::FrontLeft);
    let item = Item {
        corner: Corner::FrontLeft,
        group: ItemKind::LugNuts,
        number: at,
    };
    let mishap = Mishap {
        step,
        item,
        kind: MishapKind::ALL[0],
        part: "stud".to_owned(),
        minutes: 20,
    };
    [
        Event::Mishap(mishap),
        consent(step, Scope::Extra, yes, minor),
    ]
}

/// One job by chance, with what the program says of it.
fn made(chance: &mut Chance) -> Value {
    let percent = chance.of(&[None, Some("8.25"), Some("19"), Some("7,7")]);
    let rounding = chance.of(TaxRounding::ALL);
    let tax = percent.map(|percent| TaxRule {
        percent: decimal(percent),
        rounding,
    });
    let lines: Vec<Line> = (0..1 + chance.below(6)).map(|_| line(chance)).collect();
    let estimate = Estimate {
        lines: lines.clone(),
        tax: tax.clone(),
    };
    let sums = totals(&estimate).unwrap();
    let (repair, inspected) = (chance.yes(), chance.yes());
    let inspection = chance.minor(15_000);
    let extras: Vec<(bool, i64)> = (0..chance.below(3))
        .map(|_| (chance.yes(), chance.minor(20_000)))
        .collect();
    let discount = chance.minor(5_000);
    let many = |chance: &mut Chance, most| -> Vec<i64> {
        let n = chance.below(3);
        (0..n).map(|_| chance.minor(most)).collect()
    };
    let (paid, refunded) = (many(chance, 200_000), many(chance, 5_000));
    let ending = chance.of(Ending::ALL);
    let mut whats = vec![
        Event::Price(priced(estimate, "USD", None).unwrap()),
        consent(
            StepKey::once(Step::TeardownYes),
            Scope::Teardown,
            inspected,
            inspection,
        ),
        consent(
            StepKey::at(Step::Agree, Corner::FrontLeft),
            Scope::Repair,
            repair,
            sums.gross,
        ),
    ];
    for (at, (yes, minor)) in (1..).zip(&extras) {
        whats.extend(further(at, *yes, *minor));
    }
    let pay = |minor: &i64| Paid {
        how: PaidHow::Card,
        amount: money(*minor),
    };
    whats.extend(paid.iter().map(|minor| Event::Paid(pay(minor))));
    whats.extend(refunded.iter().map(|minor| Event::Refunded(pay(minor))));
    whats.push(Event::Discount(Discount {
        amount: money(discount),
        reason: String::new(),
    }));
    whats.push(Event::Ended(Ended {
        ending,
        charge: None,
    }));
    let typed = |line: &Line| {
        json!({
            "quantity": line.quantity.as_typed(), "each": line.each, "taxed": line.taxed,
            "rate": line.rate.as_ref().map(Decimal::as_typed),
        })
    };
    let put_in = json!({
        "percent": percent, "rounding": rounding.code(),
        "lines": lines.iter().map(typed).collect::<Vec<_>>(),
        "repair": repair, "inspection": {"yes": inspected, "minor": inspection},
        "further": extras.iter().map(|(yes, minor)| json!({"yes": yes, "minor": minor}))
            .collect::<Vec<_>>(),
        "discount": discount, "paid": paid, "refunded": refunded, "ending": ending.code(),
    });
    let sheet = fold(entries("log", whats));
    let account = account(&sheet);
    let due = account.stage == Stage::Due;
    let parts = account.undocumented(tax.as_ref()).unwrap();
    let invoice = Invoice {
        number: String::new(),
        credits: None,
        currency: "USD".to_owned(),
        parts,
    };
    let taxes = invoice.taxes().into_iter();
    let taxes = taxes.map(|it| {
        let rate = it.percent.value();
        (format!("{rate:?}"), json!([it.net, it.tax]))
    });
    let taxes: serde_json::Map<String, Value> = taxes.collect();
    let said = json!({
        "net": sums.net, "tax": sums.tax, "gross": sums.gross,
        "to_pay": account.to_pay(), "declined": account.declined(),
        "still": account.still_to_pay(), "overpaid": account.overpaid(),
        "invoice": due.then(|| json!({"taxes": taxes, "gross": invoice.gross()})),
    });
    json!({"in": put_in, "said": said})
}

fn folder(name: &str) -> PathBuf {
    let path = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(format!("money-{name}"));
    let _ = std::fs::remove_dir_all(&path);
    std::fs::create_dir_all(&path).unwrap();
    path
}

#[test]
fn a_thousand_made_jobs_come_to_what_pythons_decimal_says() {
    let mut chance = Chance(0x5eed_dec1);
    let jobs = (0..1_000).map(|_| made(&mut chance).to_string());
    let path = folder("decimal").join("jobs.jsonl");
    std::fs::write(&path, jobs.collect::<Vec<_>>().join("\n")).unwrap();
    assert_eq!(python::run("money.py", &[&path]).trim(), "1000");
}

/// What the books are told of a job with an invoice, a credit note and a declined further work.
fn books() -> Vec<Vec<String>> {
    let rule = TaxRule {
        percent: decimal("10"),
        rounding: TaxRounding::Total,
    };
    let agree = StepKey::at(Step::Agree, Corner::FrontLeft);
    let mut whats = vec![
        Event::Person(PersonField::Name, "=Ada, \"Nobody\"".to_owned()),
        consent(agree, Scope::Repair, true, 11_000),
    ];
    whats.extend(further(1, false, 4_500));
    whats.push(Event::Ended(Ended {
        ending: Ending::Finished,
        charge: None,
    }));
    let number = |whats: &mut Vec<Event>, number: &str| {
        let sheet = fold(entries("log", whats.clone()));
        let next = account(&sheet).next_document(Some(&rule)).unwrap().unwrap();
        let number = number.to_owned();
        whats.push(Event::Invoice(Box::new(Invoice { number, ..next })));
    };
    number(&mut whats, "N0001");
    whats.push(Event::Discount(Discount {
        amount: money(1_100),
        reason: "waited".to_owned(),
    }));
    number(&mut whats, "N0002");
    whats.push(Event::Paid(Paid {
        how: PaidHow::Cash,
        amount: money(10_000),
    }));
    let records: Vec<SavedText> = entries("log", whats)
        .iter()
        .map(|entry| SavedText {
            log: entry.log.0.clone(),
            id: entry.id.0.clone(),
            text: encode(entry).unwrap(),
        })
        .collect();
    let log = LogId("log".to_owned());
    let table = invoices([(&log, records.as_slice())]);
    let text = table.strip_prefix('\u{feff}').expect("a byte order mark");
    let mut rows = csv::ReaderBuilder::new()
        .has_headers(false)
        .from_reader(text.as_bytes());
    rows.records()
        .map(|row| row.unwrap().iter().map(str::to_owned).collect())
        .collect()
}

#[test]
fn the_books_are_reported_invoice_credit_note_and_declined_work_apart() {
    let rows = books();
    assert_eq!(rows[0], HEADS);
    let cell = |row: usize, head: &str| {
        let place = HEADS.iter().position(|it| *it == head).unwrap();
        rows[row][place].as_str()
    };
    let of =
        |row| ["kind", "number", "corrects", "rate", "net", "tax", "gross"].map(|it| cell(row, it));
    assert_eq!(
        of(1),
        ["invoice", "N0001", "", "10", "100.00", "10.00", "110.00"]
    );
    assert_eq!(
        of(2),
        [
            "credit_note",
            "N0002",
            "N0001",
            "10",
            "-10.00",
            "-1.00",
            "-11.00"
        ]
    );
    let sums = ["kind", "paid", "balance", "overpaid", "declined"].map(|it| cell(3, it));
    assert_eq!(sums, ["account", "100.00", "0.00", "1.00", "45.00"]);
    assert_eq!(cell(1, "customer"), "'=Ada, \"Nobody\"");
    assert_eq!(rows.len(), 4);
}

#[test]
fn the_sample_of_a_replaced_hub_owes_what_was_agreed() {
    let root = PathBuf::from(env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(root.join("public/sample/replaced-hub.json")).unwrap();
    let log = read(&text).unwrap().logs.remove(0);
    let texts = log.records.iter();
    let sheet = fold(texts.map(|saved| hubslate::exchange::wire::decode(&saved.text).unwrap()));
    let account = account(&sheet);
    // 210.00 and 2.5 times 92.00 at 8.25 %, and 9.70 that is not taxed: 486.00.
    assert_eq!((account.to_pay(), account.agreed()), (48_600, 48_600));
    assert_eq!(
        account
            .charges
            .iter()
            .filter(|it| it.lines.is_some())
            .count(),
        1
    );
}
