//! What leaves a phone comes back as it was, or is refused with a reason.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/each.rs"]
mod each;
#[path = "exchange/erase.rs"]
mod erase;
#[path = "support/every.rs"]
mod every;
#[path = "exchange/fixtures.rs"]
mod fixtures;
#[path = "exchange/kinds.rs"]
mod kinds;
#[path = "support/parts.rs"]
mod parts;
#[path = "support/random_jobs.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod random_jobs;
#[path = "support/schema.rs"]
mod schema;

use std::collections::BTreeSet;
use std::path::Path;

use chrono::NaiveDate;
use each::LOG;
use every::entry;
use hubslate::exchange::envelope::{MADE_BY, SavedText};
use hubslate::exchange::erase::{Besides, Left, erased_with, left, let_go};
use hubslate::exchange::wire::{WireError, decode, encode};
use hubslate::exchange::{
    EntryError, ImportError, LogKind, Merge, digest, entry_digest, export, merge, read,
};
use hubslate::job::angled::AngleBy;
use hubslate::job::caption::caption;
use hubslate::job::entry::{
    Caption, Charge, DueKind, EntryId, Event, LogId, Quantity, Reply, Side, VehicleField,
};
use hubslate::job::manual_item::named;
use hubslate::job::runout::Basis;
use hubslate::job::{JobState, flow, fold};
use hubslate::trade::answer::Answer;
use hubslate::trade::damage::{CameBackFor, Finding, Inspected, PartReading};
use hubslate::trade::fastening::SpecItem;
use hubslate::trade::play::uncertainty::Guarded;
use hubslate::trade::play::{After, Against, Decision, Dial, Place, Rig};
use hubslate::trade::runout::{Bound, LeftOut, Next, Surface, Undetermined};
use hubslate::trade::vehicle::{Axle, Corner};
use hubslate::trade::wheel_end::{Kind, SetName, Step, StepKey, When};
use hubslate::units::{DistanceUnit, Typed};
use proptest::prelude::*;
use random_jobs::saved;

const ID: &str = "019c6c21-0e76-762b-b33a-5df32f2a8d01";

proptest! {
    #[test]
    fn everything_that_can_happen_is_read_as_it_was_written(what in every::what()) {
        let entry = entry(LOG, ID, &[LOG], what);
        let text = encode(&entry).unwrap();
        prop_assert_eq!(decode(&text), Ok(entry.clone()), "{}", text);
    }

    #[test]
    fn digits_are_saved_as_typed(typed in every::typed_text()) {
        let number = Typed::parse(&typed, DistanceUnit::Mile).unwrap();
        let reply = Reply::Number(Quantity::Distance(number));
        let what = Event::Answered(StepKey::once(Step::Odometer), reply);
        let text = encode(&entry(LOG, ID, &[], what)).unwrap();
        prop_assert!(text.contains(&format!("\"number\":\"{typed}\"")), "{}", text);
    }
}

/// The text of an entry around a raw body.
fn raw(v: u32, id: &str, body: &str) -> String {
    format!(
        "{{\"v\":{v},\"id\":\"{id}\",\"log\":\"{LOG}\",\"at\":{{\"utc_ms\":1771335000000,\
         \"offset_min\":-300}},\"by\":\"\",\"device\":\"van-2\",\"n\":1,\"after\":[],\"what\":{body}}}"
    )
}

#[test]
fn an_unknown_kind_is_saved_byte_for_byte() {
    let body = r#"{ "axle_stand" : {"load":1.50, "of": [1,  2]} }"#;
    let text = raw(1, ID, body);
    let entry = decode(&text).unwrap();
    assert_eq!(entry.what, Event::Unknown(body.to_owned()));
    assert!(encode(&entry).unwrap().contains(body));
    let file = file(vec![text.clone()]);
    assert!(file.contains(&text));
    assert_eq!(records(&file), [saved(&text)]);
    assert!(fold([entry]).read_only());
}

#[test]
fn an_unknown_word_is_malformed_today_and_unknown_from_a_newer_version() {
    for body in [
        r#"{"corners":{"corners":["middle"]}}"#,
        r#"{"answered":{"step":"somersault","reply":{"done":{}}}}"#,
        r#"{"ended":{"ending":"in_tears"}}"#,
        r#"{"due":{"kind":"retorque","date":"2026-02-22","distance":{"number":"50","unit":"furlong"}}}"#,
        r#"{"said":{}}"#,
    ] {
        let kind = body.split('"').nth(1).unwrap().to_owned();
        let today = decode(&raw(1, ID, body));
        assert_eq!(today, Err(WireError::Malformed(kind)), "{body}");
        let newer = decode(&raw(2, ID, body)).unwrap();
        assert_eq!(newer.what, Event::Unknown(body.to_owned()));
    }
    assert_eq!(decode("{\"v\":1"), Err(WireError::NotJson));
    assert_eq!(decode("{\"v\":1}"), Err(WireError::NotAnEntry));
}

fn file(texts: Vec<String>) -> String {
    export(&[(LogKind::Job, LogId(LOG.to_owned()), texts)]).unwrap()
}

fn records(file: &str) -> Vec<SavedText> {
    let mut logs = read(file).unwrap().logs;
    assert_eq!(logs.len(), 1);
    logs.remove(0).records
}

#[test]
fn a_file_carries_every_text_and_gives_the_same_sheet() {
    let texts = each::texts();
    let file = file(texts.clone());
    let records = records(&file);
    let came: BTreeSet<&String> = records.iter().map(|record| &record.text).collect();
    assert_eq!(came, texts.iter().collect());
    let there = fold(records.iter().map(|record| decode(&record.text).unwrap()));
    assert_eq!(there, fold(each::entries()));
    assert_eq!(read(&file).unwrap().made_by, MADE_BY);
}

#[test]
fn the_same_set_gives_the_same_file_in_any_order() {
    let texts = each::texts();
    let once = file(texts.clone());
    let mut turned: Vec<String> = texts.iter().rev().cloned().collect();
    turned.extend(texts);
    assert_eq!(file(turned), once);
}

#[test]
fn a_log_of_each_kind_goes_into_one_file() {
    let of = |log: &str| raw(1, ID, r#"{"strike":{"hits":[]}}"#).replace(LOG, log);
    let logs = [
        (LogKind::Job, LOG),
        (LogKind::SpecLibrary, "book:marlin_estate"),
        (LogKind::VanKit, "kit:van"),
        (LogKind::Shop, "shop:rules"),
        (LogKind::Confirmation, "confirmations:shop"),
    ];
    let logs = logs.map(|(kind, id)| (kind, LogId(id.to_owned()), vec![of(id)]));
    let read = read(&export(&logs).unwrap()).unwrap();
    let came: Vec<_> = read
        .logs
        .into_iter()
        .map(|log| (log.kind, log.id))
        .collect();
    assert_eq!(came, logs.map(|(kind, id, _)| (kind, id)));
}

#[test]
fn what_is_not_ours_is_refused() {
    let ours = file(each::texts());
    for foreign in [
        "hello",
        "[]",
        "{}",
        "\u{fffd}PNG\r\n",
        r#"{"format":"other","version":1}"#,
        r#"{"format":"hubslate","version":0,"logs":[]}"#,
    ] {
        assert_eq!(read(foreign), Err(ImportError::NotOurs), "{foreign}");
    }
    let newer = ours.replacen("\"version\": 1", "\"version\": 2", 1);
    assert_eq!(read(&newer), Err(ImportError::Newer { version: 2 }));
    let other = r#"{"version":7,"format":"hubslate","jobs":{}}"#;
    assert_eq!(read(other), Err(ImportError::Newer { version: 7 }));
    assert!(read(&format!("\u{feff}{ours}")).is_ok());
    assert!(read(&ours.replace('\n', "\r\n")).is_ok());
}

#[test]
fn a_file_cut_anywhere_is_cut_off() {
    let ours = file(each::texts());
    let whole = ours.trim_end().len();
    for (at, _) in ours.char_indices().take_while(|(at, _)| *at < whole) {
        assert_eq!(read(&ours[..at]), Err(ImportError::CutOff), "cut at {at}");
    }
}

#[test]
fn an_edited_file_is_refused() {
    let ours = file(each::texts());
    let log = LogId(LOG.to_owned());
    let edited = Err(ImportError::Edited { log });
    let digit = ours.replacen("6.30", "3.30", 1);
    assert_ne!(digit, ours);
    assert_eq!(read(&digit), edited);
    let lines: Vec<&str> = ours.lines().collect();
    let said = lines
        .iter()
        .position(|line| line.contains("\"said\":{"))
        .unwrap();
    let without: Vec<&str> = [&lines[..said], &lines[said + 1..]].concat();
    assert_eq!(read(&without.join("\n")), edited);
    let damaged = ours.replacen("\"kind\": \"job\"", "\"kind\": job", 1);
    assert!(matches!(read(&damaged), Err(ImportError::Damaged { .. })));
    let longer = format!("{ours}x");
    assert!(matches!(read(&longer), Err(ImportError::Damaged { .. })));
    let kind = ours.replacen("\"kind\": \"job\"", "\"kind\": \"diary\"", 1);
    let bad = ImportError::BadLog { id: LOG.to_owned() };
    assert_eq!(read(&kind), Err(bad));
}

#[test]
fn an_entry_that_cannot_be_saved_is_named() {
    let good = raw(1, ID, r#"{"said":{"text":"a"}}"#);
    let bad = |text: String| {
        let made = file(vec![good.clone(), text]);
        read(&made).map(|_| ())
    };
    let at = |place, fault| {
        Err(ImportError::BadEntry {
            log: LogId(LOG.to_owned()),
            place,
            fault,
        })
    };
    let other = ID.replace("d01", "d02");
    assert_eq!(bad(raw(1, &other, r#"{"said":{"text":"b"}}"#)), Ok(()));
    let twice = raw(1, ID, r#"{"said":{"text":"b"}}"#);
    assert_eq!(bad(twice), at(2, EntryError::Twice));
    let id = raw(1, "x:../y", "{}");
    assert_eq!(bad(id), at(2, EntryError::BadId));
    let elsewhere = raw(1, &other, "{}").replace(LOG, &other);
    assert_eq!(bad(elsewhere), at(2, EntryError::OtherLog));
    let no_time = format!(r#"{{"v":1,"id":"{other}","log":"{LOG}","what":{{}}}}"#);
    assert_eq!(bad(no_time), at(2, EntryError::NotAnEntry));
}

#[test]
fn a_body_that_does_not_fit_its_kind_is_set_aside_and_the_rest_is_read() {
    let odd = raw(1, ID, r#"{"ended":{"ending":"in_tears"}}"#);
    let mut texts = each::texts();
    texts.push(odd.clone());
    let log = read(&file(texts.clone())).unwrap().logs.remove(0);
    assert_eq!(log.records.len(), texts.len() - 1);
    let (record, why) = &log.unreadable[0];
    assert_eq!(
        (record.text.as_str(), record.id.as_str()),
        (odd.as_str(), ID)
    );
    assert_eq!(*why, WireError::Malformed("ended".to_owned()));
}

/// The entry with its body erased.
fn erased(text: &str) -> String {
    let mut entry = decode(text).unwrap();
    entry.what = Event::Erased(entry_digest(text));
    encode(&entry).unwrap()
}

#[test]
fn another_text_under_a_known_id_is_named_and_the_one_here_stays() {
    let (ours, theirs) = (
        saved(&raw(1, ID, r#"{"said":{"text":"a"}}"#)),
        saved(&raw(1, ID, r#"{"said":{"text":"b"}}"#)),
    );
    let edited = vec![EntryId(ID.to_owned())];
    let want = Merge {
        edited,
        ..Merge::default()
    };
    let here = [ours.clone()];
    let there = [theirs.clone()];
    assert_eq!(merge(&here, &there), want);
    let stranger = saved(&erased(&theirs.text));
    assert_eq!(merge(&here, &[stranger]), want);
    let both = merge(&here, &[theirs, ours]);
    assert_eq!((both.same, both.edited.len(), both.add.len()), (1, 1, 0));
}

/// Some of the entries, some of them erased.
fn some() -> impl Strategy<Value = Vec<SavedText>> {
    let texts = each::texts();
    let count = texts.len();
    (
        prop::collection::vec(any::<(bool, bool)>(), count),
        any::<bool>(),
    )
        .prop_map(move |(picks, turned)| {
            let chosen = texts.iter().zip(picks).filter(|(_, (here, _))| *here);
            let mut some: Vec<SavedText> = chosen
                .map(|(text, (_, gone))| {
                    let personal = matches!(decode(text).unwrap().what, Event::Person(..));
                    saved(&if gone && personal {
                        erased(text)
                    } else {
                        text.clone()
                    })
                })
                .collect();
            if turned {
                some.reverse();
            }
            some
        })
}

/// What is here after a merge.
fn merged(here: &[SavedText], came: &[SavedText]) -> BTreeSet<SavedText> {
    let change = merge(here, came);
    assert_eq!(change.edited, []);
    let gone: BTreeSet<&String> = change.replace.iter().map(|record| &record.id).collect();
    let stay = here.iter().filter(|record| !gone.contains(&record.id));
    stay.chain(&change.add)
        .chain(&change.replace)
        .cloned()
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    #[test]
    fn merging_is_a_union_in_any_order_and_any_number_of_times(a in some(), b in some(), c in some()) {
        let list = |set: BTreeSet<SavedText>| set.into_iter().collect::<Vec<_>>();
        let ab = list(merged(&a, &b));
        prop_assert_eq!(&ab, &list(merged(&b, &a)));
        prop_assert_eq!(&ab, &list(merged(&ab, &b)));
        prop_assert_eq!(&ab, &list(merged(&ab, &a)));
        let abc = list(merged(&ab, &c));
        prop_assert_eq!(&abc, &list(merged(&a, &list(merged(&c, &b)))));
        let change = merge(&a, &b);
        prop_assert_eq!(change.add.len() + change.replace.len() + change.same, b.len());
    }
}

/// A wheel end that this version does not know is not worked on as another one: its entry is kept as
/// it came, the job says so and is only read.
#[test]
fn a_wheel_end_of_an_unknown_kind_is_refused_and_never_guessed() {
    use hubslate::job::entry::VehicleField;
    use hubslate::job::{Problem, kind};
    let fact = |field: VehicleField, text: &str| {
        let recorded = Event::Vehicle(field, text.to_owned());
        decode(&encode(&entry(LOG, ID, &[], recorded)).unwrap()).unwrap()
    };
    for field in [
        VehicleField::Kind,
        VehicleField::Brake,
        VehicleField::Sensor,
        VehicleField::Encoder,
        VehicleField::NutLock,
        VehicleField::Pressing,
    ] {
        let read = fact(field, "of_tomorrow");
        assert!(matches!(read.what, Event::Unknown(_)), "{field:?}");
        let again = decode(&encode(&read).unwrap()).unwrap();
        assert_eq!(again, read);
        let sheet = fold([read]);
        let unknown = |problem: &Problem| matches!(problem, Problem::Unknown(_));
        assert!(sheet.problems().iter().any(unknown), "{field:?}");
        assert_eq!(sheet.vehicle(field), None);
    }
    let known = fold([fact(VehicleField::Kind, "tapered")]);
    assert_eq!(kind(&known), Kind::Tapered);
}
