//! A record that is not all here never reads as safer than it is.
//!
//! What cannot be seen from the entries alone: that the last ones are missing, which none names.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

use std::path::Path;

use hubslate::exchange::read;
use hubslate::exchange::summary::Summary;
use hubslate::exchange::wire::decode;
use hubslate::job::account::account;
use hubslate::job::ending::proposed;
use hubslate::job::entry::{Ending, Entry, EntryId, Event, Money, Paid, PaidHow};
use hubslate::job::{JobState, fold, next, plan};
use hubslate::report::{Reader, Report};
use hubslate::text::Lang;
use hubslate::trade::wheel_end::procedure;
use hubslate::units::{DecimalMark, Format, System};

/// The finished job of the replaced hub.
fn finished() -> Vec<Entry> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("public/sample/replaced-hub.json");
    let text = std::fs::read_to_string(path).unwrap();
    let log = read(&text).unwrap().logs.remove(0);
    let texts = log.records.into_iter();
    texts.map(|saved| decode(&saved.text).unwrap()).collect()
}

fn page_one(sheet: &JobState) -> String {
    let reader = Reader {
        job: "job".to_owned(),
        digest: "d".repeat(64),
        made_by: String::new(),
        contact: String::new(),
        warranty: String::new(),
        codes: None,
    };
    let metric = Format {
        system: System::Metric,
        decimal: DecimalMark::Dot,
    };
    let report = Report::of(sheet, Lang::English, metric, &reader);
    let texts: Vec<&str> = report
        .page_one
        .iter()
        .flat_map(|block| block.texts())
        .collect();
    texts.join("\n")
}

fn summary(sheet: &JobState, entries: &[Entry]) -> Summary {
    let steps = procedure(&plan(sheet));
    Summary::of(&entries[0].log, sheet, &steps, next(sheet, &steps))
}

#[test]
fn whatever_entry_is_missing_the_rest_is_not_called_finished_or_safe() {
    let all = finished();
    let whole = fold(all.clone());
    assert!(!whole.is_incomplete());
    assert!(page_one(&whole).contains("REPLACED, safe to drive"));
    let heads = whole.heads();
    let mut tried = 0;
    for gone in all.iter().filter(|entry| !heads.contains(&entry.id)) {
        let rest: Vec<Entry> = all.iter().filter(|it| it.id != gone.id).cloned().collect();
        let sheet = fold(rest.clone());
        assert!(sheet.is_incomplete(), "{:?}", gone.what);
        let page = page_one(&sheet);
        assert!(!page.contains("safe to drive") || page.contains("not safe to drive"));
        assert!(
            page.contains("RECORD INCOMPLETE") || page.contains("DO NOT DRIVE"),
            "{:?}",
            gone.what
        );
        let line = summary(&sheet, &rest);
        assert!(line.incomplete && line.is_open(), "{:?}", gone.what);
        // Open again, it could only be left unfinished; what only the end had seen is the last then.
        let open = rest
            .iter()
            .filter(|entry| !matches!(entry.what, Event::Ended(_)));
        let open = fold(open.cloned().collect::<Vec<_>>());
        if open.is_incomplete() {
            assert_eq!(proposed(&open, &plan(&open)), Ending::LeftUnfinished);
            tried += 1;
        }
    }
    assert!(tried > 100, "only {tried} entries");
}

/// The finished job with its invoice, and all of it paid.
fn paid() -> Vec<Entry> {
    let mut all = finished();
    let mut then = |what: Event| {
        let last = all.last().unwrap().clone();
        let id = EntryId(format!("01a0{:04}-0000-7000-8000-000000000000", all.len()));
        all.push(Entry {
            id,
            after: vec![last.id],
            n: last.n + 1,
            what,
            ..last
        });
        fold(all.clone())
    };
    let sheet = then(Event::Note(None, "paid at the car".to_owned()));
    let invoice = account(&sheet).next_document(None).unwrap().unwrap();
    then(Event::Invoice(Box::new(invoice)));
    let (how, currency) = (PaidHow::Cash, "USD".to_owned());
    let amount = Money {
        minor: 48_600,
        currency,
    };
    then(Event::Paid(Paid { how, amount }));
    all
}

#[test]
fn whatever_entry_is_missing_the_rest_is_not_called_paid() {
    let all = paid();
    let whole = fold(all.clone());
    assert!(account(&whole).is_settled());
    assert!(page_one(&whole).contains("Still to pay\n0.00\u{a0}USD"));
    let heads = whole.heads();
    for gone in all.iter().filter(|entry| !heads.contains(&entry.id)) {
        let rest = all.iter().filter(|it| it.id != gone.id).cloned();
        let sheet = fold(rest);
        let account = account(&sheet);
        assert!(!account.is_settled(), "{:?}", gone.what);
        assert!(account.to_pay() <= account.agreed(), "{:?}", gone.what);
        assert_eq!(account.next_document(None), Ok(None), "{:?}", gone.what);
        let page = page_one(&sheet);
        assert!(!page.contains("Still to pay\n0.00"), "{:?}", gone.what);
        assert!(
            page.contains("these amounts are not final"),
            "{:?}",
            gone.what
        );
    }
}
