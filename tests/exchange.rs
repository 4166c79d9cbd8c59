//! What leaves a phone comes back as it was, or is refused with a reason.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/each.rs"]
mod each;
#[path = "support/every.rs"]
mod every;
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
use hubslate::exchange::envelope::{KeptText, MADE_BY};
use hubslate::exchange::erase::{Besides, Left, erased_with, left, let_go};
use hubslate::exchange::wire::{WireError, decode, encode};
use hubslate::exchange::{
    EntryFault, ImportError, LogKind, Merge, digest, entry_digest, export, merge, read,
};
use hubslate::job::also::named;
use hubslate::job::angled::AngleBy;
use hubslate::job::caption::caption;
use hubslate::job::entry::{Caption, Charge, EntryId, LogId, Quantity, Reply, Side, What};
use hubslate::job::{Sheet, flow, fold};
use hubslate::trade::damage::{CameBackFor, Damage};
use hubslate::trade::fastening::CardItem;
use hubslate::trade::play::{Decision, Dial, Place};
use hubslate::trade::runout::{Bound, LeftOut, Surface};
use hubslate::trade::vehicle::{Axle, Corner};
use hubslate::trade::wheel_end::{Kind, SetName, Step, StepKey, When};
use hubslate::units::{DistanceUnit, Typed};
use proptest::prelude::*;
use random_jobs::kept;

const ID: &str = "019c6c21-0e76-762b-b33a-5df32f2a8d01";

proptest! {
    #[test]
    fn everything_that_can_happen_is_read_as_it_was_written(what in every::what()) {
        let entry = entry(LOG, ID, &[LOG], what);
        let text = encode(&entry).unwrap();
        prop_assert_eq!(decode(&text), Ok(entry.clone()), "{}", text);
    }

    #[test]
    fn digits_are_kept_as_typed(typed in every::typed_text()) {
        let number = Typed::parse(&typed, DistanceUnit::Mile).unwrap();
        let reply = Reply::Number(Quantity::Distance(number));
        let what = What::Answered(StepKey::once(Step::Odometer), reply);
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
fn an_unknown_kind_is_kept_byte_for_byte() {
    let body = r#"{ "axle_stand" : {"load":1.50, "of": [1,  2]} }"#;
    let text = raw(1, ID, body);
    let entry = decode(&text).unwrap();
    assert_eq!(entry.what, What::Unknown(body.to_owned()));
    assert!(encode(&entry).unwrap().contains(body));
    let file = file(vec![text.clone()]);
    assert!(file.contains(&text));
    assert_eq!(records(&file), [kept(&text)]);
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
        assert_eq!(newer.what, What::Unknown(body.to_owned()));
    }
    assert_eq!(decode("{\"v\":1"), Err(WireError::NotJson));
    assert_eq!(decode("{\"v\":1}"), Err(WireError::NotAnEntry));
}

fn file(texts: Vec<String>) -> String {
    export(&[(LogKind::Job, LogId(LOG.to_owned()), texts)]).unwrap()
}

fn records(file: &str) -> Vec<KeptText> {
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
    let of = |log: &str| raw(1, ID, r#"{"said":{"text":""}}"#).replace(LOG, log);
    let logs = [
        (LogKind::Job, LOG),
        (LogKind::CardBook, "cards:marlin_estate"),
        (LogKind::VanKit, "van"),
        (LogKind::Shop, "shop:rules"),
        (LogKind::Receipt, "yard:receipts"),
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
fn an_entry_that_cannot_be_kept_is_named() {
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
    assert_eq!(bad(twice), at(2, EntryFault::Twice));
    let id = raw(1, "x:../y", "{}");
    assert_eq!(bad(id), at(2, EntryFault::BadId));
    let elsewhere = raw(1, &other, "{}").replace(LOG, &other);
    assert_eq!(bad(elsewhere), at(2, EntryFault::OtherLog));
    let no_time = format!(r#"{{"v":1,"id":"{other}","log":"{LOG}","what":{{}}}}"#);
    assert_eq!(bad(no_time), at(2, EntryFault::NotAnEntry));
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
    entry.what = What::Erased(entry_digest(text));
    encode(&entry).unwrap()
}

#[test]
fn erasing_a_person_keeps_the_digest_and_beats_the_original() {
    let texts = each::texts();
    let gone: Vec<String> = texts
        .iter()
        .map(|text| match decode(text).unwrap().what {
            What::Person(..) => erased(text),
            _ => text.clone(),
        })
        .collect();
    assert_ne!(gone, texts);
    assert_eq!(digest(&gone), digest(&texts));
    let here: Vec<KeptText> = texts.iter().map(|text| kept(text)).collect();
    let there = records(&file(gone.clone()));
    let change = merge(&here, &there);
    assert_eq!(change.replace.len(), 1);
    assert_eq!(change.same, texts.len() - 1);
    assert_eq!((change.add, change.edited), (vec![], vec![]));
    let back = merge(&there, &here);
    assert_eq!(back.same, texts.len());
    assert_eq!(back.replace, []);
}

#[test]
fn another_text_under_a_known_id_is_named_and_the_one_here_stays() {
    let (ours, theirs) = (
        kept(&raw(1, ID, r#"{"said":{"text":"a"}}"#)),
        kept(&raw(1, ID, r#"{"said":{"text":"b"}}"#)),
    );
    let edited = vec![EntryId(ID.to_owned())];
    let want = Merge {
        edited,
        ..Merge::default()
    };
    let here = [ours.clone()];
    let there = [theirs.clone()];
    assert_eq!(merge(&here, &there), want);
    let stranger = kept(&erased(&theirs.text));
    assert_eq!(merge(&here, &[stranger]), want);
    let both = merge(&here, &[theirs, ours]);
    assert_eq!((both.same, both.edited.len(), both.add.len()), (1, 1, 0));
}

/// Some of the entries, some of them erased.
fn some() -> impl Strategy<Value = Vec<KeptText>> {
    let texts = each::texts();
    let count = texts.len();
    (
        prop::collection::vec(any::<(bool, bool)>(), count),
        any::<bool>(),
    )
        .prop_map(move |(picks, turned)| {
            let chosen = texts.iter().zip(picks).filter(|(_, (here, _))| *here);
            let mut some: Vec<KeptText> = chosen
                .map(|(text, (_, gone))| {
                    let personal = matches!(decode(text).unwrap().what, What::Person(..));
                    kept(&if gone && personal {
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
fn merged(here: &[KeptText], came: &[KeptText]) -> BTreeSet<KeptText> {
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
        let list = |set: BTreeSet<KeptText>| set.into_iter().collect::<Vec<_>>();
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

#[test]
fn the_file_of_version_1_is_still_read_and_written() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/fixtures/job-1.json");
    let fixture = std::fs::read_to_string(path).unwrap();
    let log = read(&fixture).unwrap().logs.remove(0);
    assert_eq!((log.unreadable.len(), log.records.len()), (0, 43));
    let sheet = fold(
        log.records
            .iter()
            .map(|record| decode(&record.text).unwrap()),
    );
    assert_eq!(sheet.problems(), []);
    assert!(!sheet.read_only());
    let front_left = Corner::FrontLeft;
    let first = SetName {
        when: When::Before,
        nth: 1,
    };
    let reading = sheet.reading(front_left, first, 1, Side::Pull).unwrap();
    assert_eq!(reading.divisions.as_typed(), "6.30");
    assert_eq!(reading.dial, Dial::THOU);
    assert_eq!(sheet.decided(front_left).unwrap().decision, Decision::Stop);
    assert_eq!(sheet.ended().unwrap().charge, Some(Charge::Towed));
    let nut = sheet.card(CardItem::AxleNut).unwrap();
    assert_eq!((nut.fault(), nut.stages().len()), (None, 5));
    let turn = StepKey::at(Step::TurnWheelNuts, front_left);
    assert!(sheet.lever(turn).is_some());
    assert!(hubslate::job::mishap::open_mishaps(&sheet).is_empty());
    let hose = sheet.loose().pop().unwrap().0;
    let names: Vec<&str> = named(&sheet, hose)
        .iter()
        .map(|it| it.name.as_str())
        .collect();
    assert_eq!(names, ["brake hose bracket"]);
    let struck = sheet
        .entries()
        .iter()
        .filter(|entry| sheet.is_struck(&entry.id));
    assert!(struck.map(|entry| &entry.what).eq([&What::Note(
        Some(StepKey::at(Step::Agree, front_left)),
        "line one\nline two".to_owned()
    )]));
    let texts = log.records.into_iter().map(|record| record.text).collect();
    assert_eq!(as_first_written(log.kind, log.id, texts), fixture);
}

#[test]
fn a_file_with_pictures_and_a_voice_note_is_still_read_and_written() {
    let sheet = fixture("job-1-kept");
    // `printf 'a picture' | sha256sum` and the same of 'a voice'.
    let named: Vec<&str> = sheet
        .counting()
        .filter_map(|entry| Some(entry.what.named()?.sha256))
        .collect();
    assert_eq!(named, [PICTURE, VOICE]);
    let said = caption(&sheet, PICTURE);
    assert_eq!(
        *said,
        Caption::Words("Stand on the tarred strip".to_owned())
    );
}

const PICTURE: &str = "92b2fa58028958317e408bd84ecfa70f5ee35b121991dbc232c49d166353708b";
const VOICE: &str = "e2c67f1527d5838f1b4666d75877b1bddc4d368101ad5e236128412f8be83354";

/// An export as the first files of this version were: they had no canonical digest.
fn as_first_written(kind: LogKind, log: LogId, texts: Vec<String>) -> String {
    let again = export(&[(kind, log, texts)]).unwrap();
    let lines = again.lines().filter(|line| !line.contains("\"canonical\""));
    let again: String = lines.map(|line| format!("{line}\n")).collect();
    again.replacen(MADE_BY, "hubslate 0.1.0", 1)
}

/// The sheet of a shipped file, which is read whole and written again as it was.
fn fixture(name: &str) -> Sheet {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("tests/fixtures/{name}.json"));
    let fixture = std::fs::read_to_string(path).unwrap();
    let log = read(&fixture).unwrap().logs.remove(0);
    let texts: Vec<String> = log.records.into_iter().map(|record| record.text).collect();
    let sheet = fold(texts.iter().map(|text| decode(text).unwrap()));
    assert_eq!((sheet.problems(), sheet.read_only()), (&[][..], false));
    assert_eq!(as_first_written(log.kind, log.id, texts), fixture);
    sheet
}

#[test]
fn a_file_with_runs_round_a_face_is_still_read_and_written() {
    let sheet = fixture("job-1-runout");
    let places: Vec<_> = sheet.runout(Corner::FrontLeft).collect();
    let needles = places.iter().map(|place| place.divisions.as_ref());
    let needles: Vec<_> = needles
        .map(|needle| needle.map(|it| it.as_typed()))
        .collect();
    assert_eq!(needles, [Some("\u{2212}2.50"), None]);
    assert_eq!((places[0].setup.stud, places[0].setup.places), (3, 8));
    assert_eq!(places[0].left_out, Some(LeftOut::StudHole));
    let limit = sheet.runout_limit(Surface::Rotor).unwrap();
    assert_eq!(limit.most.number.as_typed(), "0.05");
}

#[test]
fn a_file_with_what_the_yard_counts_is_still_read_and_written() {
    let sheet = fixture("job-1-yard");
    assert_eq!(sheet.damage(Corner::FrontLeft), Some(Damage::Moisture));
    assert_eq!(sheet.came_back_for(), Some(CameBackFor::Fitting));
}

#[test]
fn a_file_with_angles_and_their_gauge_is_still_read_and_written() {
    let sheet = fixture("job-1-angled");
    let more = &sheet.carried().unwrap().more;
    assert_eq!(more.angle_gauge, Some(true));
    assert_eq!(more.angle_due, NaiveDate::from_ymd_opt(2027, 2, 1));
    let told = sheet.counting().filter_map(|entry| match entry.what {
        What::Angled(step, by) => Some((step.step, by)),
        _ => None,
    });
    let expected = [
        (Step::TurnAxleNut, AngleBy::Gauge),
        (Step::TurnHubBolts, AngleBy::Swings),
    ];
    assert_eq!(told.collect::<Vec<_>>(), expected);
}

#[test]
fn a_file_with_a_rotor_under_the_micrometer_is_still_read_and_written() {
    let sheet = fixture("job-1-thickness");
    let places = sheet.thickness(Corner::FrontLeft);
    let measured = places.map(|place| {
        let thickness = place.thickness.as_ref();
        thickness.map(|typed| typed.number.as_typed().to_owned())
    });
    let measured: Vec<_> = measured.collect();
    assert_eq!(measured, [Some("22.010".to_owned()), None]);
    let least = sheet.thickness_limit(Axle::Front, Bound::Least).unwrap();
    assert_eq!(least.value.number.as_typed(), "20.4");
    assert!(sheet.thickness_limit(Axle::Rear, Bound::Least).is_none());
    let seen = sheet.tip_radius(Place::RotorFace).unwrap();
    assert_eq!(seen.number.as_typed(), "127");
    let face = sheet.runout(Corner::FrontLeft).next().unwrap();
    let radius = face.radius.as_ref().unwrap();
    assert_eq!(radius.number.as_typed(), "70.5");
}

#[test]
fn only_what_names_a_person_can_be_erased_a_forged_one_empties_no_finding() {
    let here: Vec<KeptText> = each::texts().iter().map(|text| kept(text)).collect();
    let mut forged = 0;
    for record in &here {
        let what = decode(&record.text).unwrap().what;
        if matches!(what, What::Person(..)) || what.is_gone() || Besides::of(&what).is_some() {
            continue;
        }
        let emptied = [kept(&erased(&record.text))];
        let change = merge(&here, &emptied);
        assert_eq!(change.replace, [], "{}", record.text);
        assert_eq!(change.edited, [EntryId(record.id.clone())]);
        // Where both come at once the body stays.
        let both = [emptied[0].clone(), record.clone()];
        assert_eq!(merge(&[], &both).add, both[1..]);
        forged += 1;
    }
    assert!(10 < forged, "only {forged} kinds were tried");
}

#[test]
fn what_a_van_let_go_of_empties_nothing_and_comes_back_with_any_original() {
    let whole: Vec<KeptText> = each::texts().iter().map(|text| kept(text)).collect();
    let gone = let_go(&whole).unwrap();
    let kinds: Vec<What> = gone
        .iter()
        .map(|g| decode(&original(&whole, g)).unwrap().what)
        .collect();
    let is = |is: fn(&What) -> bool| kinds.iter().filter(|what| is(what)).count();
    assert_eq!(is(|what| matches!(what, What::Person(..))), 1);
    assert_eq!(is(|what| matches!(what, What::Said(_))), 1);
    assert_eq!(is(|what| matches!(what, What::Note(..))), 1);
    assert_eq!(is(|what| matches!(what, What::Signed(_))), 1);
    assert_eq!(is(|what| matches!(what, What::Captioned(_))), 1);
    assert_eq!(gone.len(), 5);
    let van: Vec<KeptText> = whole
        .iter()
        .map(|r| gone.iter().find(|g| g.id == r.id).unwrap_or(r).clone())
        .collect();
    // The yard opens the van's file: nothing is emptied, nothing is called edited.
    let van = records(&file(van.into_iter().map(|r| r.text).collect()));
    let change = merge(&whole, &van);
    let same = Merge {
        same: whole.len(),
        ..Merge::default()
    };
    assert_eq!(change, same);
    // The van opens the yard's file: all of it is back.
    let back: Vec<KeptText> = gone.iter().map(|g| kept(&original(&whole, g))).collect();
    assert_eq!(merge(&van, &whole).replace, back);
    // What the yard erased meanwhile stays erased on both, and beats what was let go of.
    let erased = erased_with(&whole, Besides::ALL).unwrap();
    assert_eq!(merge(&van, &erased).replace.len(), erased.len());
    let yard = merge(&[], &[erased.clone(), whole.clone()].concat()).add;
    assert_eq!(merge(&yard, &van).replace, []);
    let texts = |records: &[KeptText]| digest(records.iter().map(|r| r.text.clone()));
    assert_eq!(texts(&van), texts(&whole));
    assert_eq!(texts(&yard), texts(&whole));
    // All three at once: the erased form, whatever the order.
    for at in 0..3 {
        let mut all = [
            gone[0].clone(),
            back[0].clone(),
            kept(&original(&erased, &gone[0])),
        ];
        all.rotate_left(at);
        assert_eq!(merge(&[], &all).add, [kept(&original(&erased, &gone[0]))]);
    }
}

/// The text of the same entry among others.
fn original(all: &[KeptText], of: &KeptText) -> String {
    all.iter().find(|r| r.id == of.id).unwrap().text.clone()
}

#[test]
fn a_forged_letting_go_of_a_finding_empties_nothing() {
    let here: Vec<KeptText> = each::texts().iter().map(|text| kept(text)).collect();
    for record in &here {
        let mut entry = decode(&record.text).unwrap();
        if entry.what.is_gone() {
            continue;
        }
        entry.what = What::LetGo(entry_digest(&record.text));
        let forged = [kept(&encode(&entry).unwrap())];
        assert_eq!(merge(&here, &forged).replace, []);
        let whole = std::slice::from_ref(record);
        assert_eq!(merge(&forged, whole).replace, whole);
        let both = [forged[0].clone(), record.clone()];
        assert_eq!(merge(&[], &both).add, both[1..]);
    }
}

#[test]
fn the_complaint_notes_signatures_and_pictures_go_where_they_are_named_and_no_finding_does() {
    let whole: Vec<KeptText> = each::texts().iter().map(|text| kept(text)).collect();
    let count = |besides: &[Besides]| erased_with(&whole, besides).unwrap().len();
    assert_eq!(count(&[]), 1);
    for besides in Besides::ALL {
        // A note and a caption that was typed; a picture and a spoken note.
        let two = matches!(besides, Besides::Notes | Besides::Photos);
        assert_eq!(count(&[*besides]), if two { 3 } else { 2 }, "{besides:?}");
    }
    let gone = erased_with(&whole, Besides::ALL).unwrap();
    let change = merge(&whole, &gone);
    assert_eq!((change.replace.len(), change.edited), (7, vec![]));
    // The old file brings nothing back.
    assert_eq!(merge(&gone, &whole).replace, []);
    let after: Vec<KeptText> = whole
        .iter()
        .map(|r| gone.iter().find(|g| g.id == r.id).unwrap_or(r).clone())
        .collect();
    let (before, after) = (left(&whole), left(&after));
    assert_eq!(
        (
            before.complaint.len(),
            before.notes.len(),
            before.photos.len()
        ),
        (1, 2, 2)
    );
    assert_eq!(after, Left::default());
}

#[test]
fn a_file_with_slot_settings_and_receipt_is_still_read_and_written() {
    let sheet = fixture("job-1-flow");
    let slot = flow::slot(&sheet).unwrap();
    let time = slot.time.map(|time| time.to_string());
    let van = slot.van.as_str();
    assert_eq!(
        (slot.day.to_string().as_str(), time.as_deref(), van),
        ("2026-02-17", Some("09:30"), "N")
    );
    let shop = flow::shop(&sheet).unwrap();
    assert_eq!(
        (shop.labour, shop.share, shop.keep_days),
        (Some(9_500), Some((25, 90)), Some(30))
    );
    assert_eq!(
        shop.retorque.as_ref().unwrap().after.number.as_typed(),
        "60"
    );
    assert_eq!(
        shop.template(Kind::BoltedDriven).unwrap()[0]
            .quantity
            .as_typed(),
        "1.5"
    );
    let held = flow::held(&sheet, "another");
    assert_eq!((held[0].through, held[0].count), (61, 22));
    assert_eq!(flow::held(&sheet, "van-2"), []);
}
