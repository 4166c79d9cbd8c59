//! The file that the crash panel saves is read back: every entry as it was, and what cannot be read
//! set aside by its name.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

use std::path::Path;
use std::process::Command;

use hubslate::exchange::rescue::{Rescue, RescueError};
use hubslate::exchange::verify::{Finding, verify};
use hubslate::exchange::{
    EntryError, ImportError, Incoming, LogKind, SavedText, digest, merge, read,
};
use hubslate::text::Lang;
use serde_json::{Value, json};

const SAMPLES: [&str; 3] = ["replaced-hub", "declined-stop", "nothing-wrong"];

/// The records of a sample, as a phone keeps them, and the digest that the sample states.
fn sample(name: &str) -> (Vec<SavedText>, String) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("public/sample");
    let text = std::fs::read_to_string(path.join(format!("{name}.json"))).unwrap();
    let stated: Value = serde_json::from_str(&text).unwrap();
    let log = read(&text).unwrap().logs.remove(0);
    let digest = stated["logs"][0]["digest"].as_str().unwrap().to_owned();
    (log.records, digest)
}

/// A record as it lies in the journal.
fn record(saved: &SavedText) -> Value {
    json!({ "log": saved.log, "id": saved.id, "text": saved.text })
}

fn records(all: &[SavedText]) -> Value {
    all.iter().map(record).collect()
}

/// What localStorage has of a tap: its key names the first entry, its value is text.
fn tap(saved: &[SavedText]) -> (String, Value) {
    let pairs: Vec<_> = saved.iter().map(|one| (&one.id, &one.text)).collect();
    let key = format!("hubslate:entry:{}:{}", saved[0].log, saved[0].id);
    (key, serde_json::to_string(&pairs).unwrap().into())
}

/// The same of one entry alone, as it was written before taps were kept whole.
fn alone(saved: &SavedText) -> (String, Value) {
    let key = format!("hubslate:entry:{}:{}", saved.log, saved.id);
    (key, serde_json::to_string(&saved.text).unwrap().into())
}

fn local(values: impl IntoIterator<Item = (String, Value)>) -> Value {
    Value::Object(values.into_iter().collect())
}

/// A file of the crash panel.
fn saved(entries: &Value, local: &Value) -> Value {
    json!({
        "format": "hubslate-rescue",
        "version": 1,
        "saved_at": "2026-02-15T10:00:00.000Z",
        "entries": entries,
        "aside": [],
        "local": local,
        "backup": [],
        "problems": [],
    })
}

fn text(saved: &Value) -> String {
    serde_json::to_string_pretty(saved).unwrap()
}

#[track_caller]
fn came(saved: &Value) -> (Incoming, Rescue) {
    let mut incoming = read(&text(saved)).unwrap();
    let rescue = incoming.rescue.take().unwrap();
    (incoming, rescue)
}

/// What is set aside, each with the place where it stands.
#[track_caller]
fn aside(saved: &Value) -> Vec<(String, RescueError)> {
    let aside = came(saved).1.aside.into_iter();
    aside.map(|one| (one.key, one.error)).collect()
}

/// The digest of the one log that came.
#[track_caller]
fn digest_of(incoming: &Incoming) -> String {
    assert_eq!(incoming.logs.len(), 1);
    let log = &incoming.logs[0];
    assert_eq!((log.kind, &log.unreadable), (LogKind::Job, &Vec::new()));
    assert_eq!(log.records.len(), log.entries.len());
    digest(log.records.iter().map(|record| &record.text))
}

#[test]
fn a_job_comes_back_with_its_digest_from_either_place() {
    for name in SAMPLES {
        let (all, stated) = sample(name);
        let half = all.len() / 2;
        let whole = [
            saved(&records(&all), &json!({})),
            saved(&json!([]), &local(all.chunks(3).map(tap))),
            saved(&Value::Null, &local(all.iter().map(alone))),
            // Both places have a part in common.
            saved(
                &records(&all[..half + 2]),
                &local(all[half - 2..].chunks(2).map(tap)),
            ),
            saved(&records(&all), &Value::Null),
        ];
        for file in whole {
            let (incoming, rescue) = came(&file);
            assert_eq!(digest_of(&incoming), stated, "{name}");
            assert_eq!(rescue, Rescue::default(), "{name}");
        }
        // The check can fail: one entry less is another job.
        let (incoming, _) = came(&saved(&records(&all[1..]), &json!({})));
        assert_ne!(digest_of(&incoming), stated, "{name}");
    }
}

#[test]
fn reading_it_twice_changes_nothing() {
    let (all, _) = sample("replaced-hub");
    let file = saved(&records(&all), &local(all.chunks(4).map(tap)));
    let first = merge(&[], &came(&file).0.logs[0].records);
    assert_eq!(first.add.len(), all.len());
    let second = merge(&first.add, &came(&file).0.logs[0].records);
    assert_eq!((second.same, second.add.len()), (all.len(), 0));
    assert_eq!((second.replace, second.edited), (vec![], vec![]));
}

#[test]
fn each_log_gets_the_kind_of_its_name() {
    let (all, _) = sample("nothing-wrong");
    let one = &all[0];
    // What is not understood may stand in any log.
    let mut entry: Value = serde_json::from_str(&one.text).unwrap();
    entry["what"] = serde_json::json!({ "hologram": {} });
    let of = |log: &str| {
        let mut entry = entry.clone();
        entry["log"] = log.into();
        SavedText {
            log: log.to_owned(),
            id: one.id.clone(),
            text: entry.to_string(),
        }
    };
    let names = [
        "book:2016-compact",
        "confirmations:shop",
        "kit:van",
        "shop:rules",
    ];
    let others: Vec<SavedText> = names.iter().map(|name| of(name)).collect();
    let bad: Vec<SavedText> = ["job-1", "", "kit:a van"]
        .iter()
        .map(|name| of(name))
        .collect();
    let file = saved(
        &records(&[others.clone(), bad].concat()),
        &local([alone(&of("kit:van")), tap(&[of("job-2")])]),
    );
    let (incoming, rescue) = came(&file);
    let kinds: Vec<_> = incoming
        .logs
        .iter()
        .map(|log| (log.id.0.as_str(), log.kind))
        .collect();
    let kinds_of = [
        LogKind::SpecLibrary,
        LogKind::Confirmation,
        LogKind::VanKit,
        LogKind::Shop,
    ];
    assert_eq!(kinds, names.into_iter().zip(kinds_of).collect::<Vec<_>>());
    let mut aside: Vec<_> = rescue.aside.iter().map(|one| one.log.as_deref()).collect();
    aside.sort_unstable();
    assert_eq!(
        aside,
        [Some(""), Some("job-1"), Some("job-2"), Some("kit:a van")]
    );
    assert!(
        rescue
            .aside
            .iter()
            .all(|one| one.error == RescueError::BadLogId)
    );
}

/// One break a case, each in a file that is whole besides; what stands at it is set aside, byte for
/// byte, and everything else comes in.
#[test]
fn a_broken_entry_is_named_and_the_rest_comes_in() {
    let (all, _) = sample("declined-stop");
    let (last, rest) = all.split_last().unwrap();
    let place = format!("entries {}", all.len());
    let bad = |fault| RescueError::BadEntry(fault);
    let log = last.log.as_str();
    let other_id = last.id.replace(&last.id[..4], "0000");
    let cases = [
        (
            json!({ "log": log, "id": last.id }),
            RescueError::NotARecord,
        ),
        (json!(7), RescueError::NotARecord),
        (json!(null), RescueError::NotARecord),
        (
            json!({ "log": log, "id": last.id, "text": last.text[1..] }),
            bad(EntryError::NotAnEntry),
        ),
        (
            json!({ "log": log, "id": "x", "text": last.text.replace(&last.id, "x") }),
            bad(EntryError::BadId),
        ),
        (
            json!({ "log": log, "id": last.id, "text": last.text.replace(log, "kit:van") }),
            bad(EntryError::OtherLog),
        ),
        (
            json!({ "log": log, "id": other_id, "text": last.text }),
            RescueError::OtherId,
        ),
        (
            json!({ "log": log, "id": rest[0].id, "text": last.text.replace(&last.id, &rest[0].id) }),
            bad(EntryError::Twice),
        ),
    ];
    for (entry, error) in cases {
        let mut entries = records(rest);
        entries.as_array_mut().unwrap().push(entry.clone());
        let file = saved(&entries, &json!({}));
        let (incoming, rescue) = came(&file);
        assert_eq!(incoming.logs[0].records.len(), rest.len(), "{entry}");
        let [aside] = rescue.aside.as_slice() else {
            panic!("{entry}: {:?}", rescue.aside)
        };
        // Of two forms of one id the one that is taken is chosen by its bytes.
        if error != bad(EntryError::Twice) {
            assert_eq!(aside.key, place, "{entry}");
        }
        assert_eq!(aside.error, error, "{entry}");
        // The file is laid out over lines, and so is what is set aside of it as a whole.
        let is_it = serde_json::from_str::<Value>(&aside.text).is_ok_and(|it| it == entry)
            || [&entry["text"], &rest[0].text.clone().into()].contains(&&json!(aside.text));
        assert!(is_it, "{entry}: {}", aside.text);
        let checked = verify(&text(&file)).unwrap();
        let named = checked.iter().flat_map(|log| &log.findings);
        let named: Vec<String> = named.map(|finding| finding.say(Lang::English)).collect();
        assert!(
            named.iter().any(|said| said.starts_with(&aside.key)),
            "{named:?}"
        );
    }
}

#[test]
fn a_body_that_does_not_fit_its_kind_is_saved_apart() {
    let (all, _) = sample("nothing-wrong");
    let (last, rest) = all.split_last().unwrap();
    let what = &last.text[last.text.find("\"what\":").unwrap()..];
    let torn = last.text.replace(what, "\"what\":{\"note\":7}}");
    let torn = SavedText {
        text: torn,
        ..last.clone()
    };
    let (incoming, rescue) = came(&saved(&records(&[rest, &[torn]].concat()), &json!({})));
    assert_eq!(rescue, Rescue::default());
    let log = &incoming.logs[0];
    assert_eq!((log.records.len(), log.unreadable.len()), (rest.len(), 1));
}

#[test]
fn a_torn_second_copy_is_named_and_its_tap_is_not_taken_in_part() {
    let (all, _) = sample("nothing-wrong");
    let (key, value) = tap(&all[..3]);
    let torn = value.as_str().unwrap();
    for torn in [
        &torn[..torn.len() - 1],
        "",
        "{}",
        "7",
        "[[\"a\"]]",
        "[[1,2]]",
    ] {
        let file = saved(&records(&all[3..]), &local([(key.clone(), torn.into())]));
        assert_eq!(
            aside(&file),
            [(key.clone(), RescueError::NotARecord)],
            "{torn}"
        );
        assert_eq!(came(&file).0.logs[0].records.len(), all.len() - 3);
        assert_eq!(came(&file).1.aside[0].text, torn);
    }
    let whole = saved(&records(&all[3..]), &local([(key, value)]));
    assert_eq!(came(&whole).0.logs[0].records.len(), all.len());
}

#[test]
fn where_the_two_places_differ_the_journal_stands_and_the_other_is_named() {
    let (all, stated) = sample("nothing-wrong");
    let place = all
        .iter()
        .position(|one| one.text.contains("\"divisions\":\"2\""))
        .unwrap();
    let other = SavedText {
        text: all[place]
            .text
            .replace("\"divisions\":\"2\"", "\"divisions\":\"1\""),
        ..all[place].clone()
    };
    let (key, value) = tap(&[other]);
    let file = saved(&records(&all), &local([(key.clone(), value)]));
    assert_eq!(digest_of(&came(&file).0), stated);
    let twice = RescueError::BadEntry(EntryError::Twice);
    assert_eq!(aside(&file), [(key, twice)]);
}

#[test]
fn what_the_phone_had_set_aside_and_could_not_save_is_named_again() {
    let (all, stated) = sample("nothing-wrong");
    let key = "hubslate:unreadable:setting:theme";
    let mut file = saved(
        &records(&all),
        &local([
            (key.to_owned(), "{".into()),
            // The phone's own: neither is part of a job.
            ("hubslate:setting:device".to_owned(), "\"van-2\"".into()),
            ("hubslate:draft:x".to_owned(), "\"half\"".into()),
        ]),
    );
    file["aside"] = json!([{ "why": "NotJson", "text": "{\"v\"" }, 7]);
    file["problems"] = json!(["backup-1: NotReadableError"]);
    let (incoming, rescue) = came(&file);
    assert_eq!(digest_of(&incoming), stated);
    assert_eq!(rescue.problems, ["backup-1: NotReadableError"]);
    assert_eq!(
        aside(&file),
        [
            (
                "aside 1".to_owned(),
                RescueError::SetAsideBefore("NotJson".to_owned())
            ),
            ("aside 2".to_owned(), RescueError::NotARecord),
            (
                key.to_owned(),
                RescueError::SetAsideBefore("setting:theme".to_owned())
            ),
        ]
    );
    let codes: Vec<_> = verify(&text(&file)).unwrap();
    let codes = codes
        .iter()
        .flat_map(|log| log.findings.iter().map(Finding::code));
    assert_eq!(
        codes.collect::<Vec<_>>(),
        ["not_rescued", "set_aside", "set_aside", "set_aside"]
    );
}

#[test]
fn whatever_stands_under_backup_is_no_fault() {
    let (all, stated) = sample("nothing-wrong");
    let mut file = saved(&records(&all), &json!({}));
    for backup in [json!(["a", "b"]), json!([null]), json!(7), Value::Null] {
        file["backup"] = backup;
        assert_eq!(digest_of(&came(&file).0), stated);
    }
    // The first rescue files had neither this nor what was set aside.
    let fields = file.as_object_mut().unwrap();
    fields.remove("backup");
    fields.remove("aside");
    assert_eq!(digest_of(&came(&file).0), stated);
}

#[test]
fn what_is_no_whole_rescue_file_is_refused_by_its_name() {
    let (all, _) = sample("nothing-wrong");
    // The panel writes the format first; serde_json sorts by name.
    let body = text(&saved(&records(&all[..2]), &json!({})));
    let body = body.replace("\"format\": \"hubslate-rescue\",", "");
    let whole = body.replacen('{', "{\"format\": \"hubslate-rescue\",", 1);
    assert_eq!(
        came(&serde_json::from_str(&whole).unwrap()).0.logs[0]
            .records
            .len(),
        2
    );
    assert!(read(&format!("\u{feff}{whole}")).is_ok());
    for end in (20..whole.len()).filter(|at| whole.is_char_boundary(*at)) {
        assert_eq!(
            read(&whole[..end]).unwrap_err(),
            ImportError::CutOff,
            "{end}"
        );
    }
    let damaged = whole.replacen("\"text\": \"", "\"text\": ", 1);
    assert!(matches!(
        read(&damaged).unwrap_err(),
        ImportError::Damaged { .. }
    ));
    let damaged = whole.replacen("\"local\": {}", "\"local\": 7", 1);
    assert!(matches!(
        read(&damaged).unwrap_err(),
        ImportError::Damaged { .. }
    ));
    let version = |n: u64| {
        let version = format!("\"version\": {n}");
        read(&whole.replacen("\"version\": 1", &version, 1)).unwrap_err()
    };
    assert_eq!(version(2), ImportError::Newer { version: 2 });
    assert_eq!(version(0), ImportError::NotOurs);
    let foreign = whole.replacen("hubslate-rescue", "hubslate-other", 1);
    assert_eq!(read(&foreign).unwrap_err(), ImportError::NotOurs);
}

#[test]
fn the_command_reads_a_rescue_file_like_any_other() {
    let (all, stated) = sample("replaced-hub");
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR"));
    let path = folder.join("hubslate-rescue.json");
    let out = folder.join("rescued.json");
    let run = |order: &str, file: &Value| {
        std::fs::write(&path, text(file)).unwrap();
        let mut command = Command::new(env!("CARGO_BIN_EXE_hubslate"));
        command.arg(order).arg(&path);
        if order == "merge" {
            command.arg("-o").arg(&out);
        }
        let ran = command.output().unwrap();
        let said = String::from_utf8(ran.stdout).unwrap();
        (ran.status.code().unwrap(), said)
    };
    let merged = || digest_of(&read(&std::fs::read_to_string(&out).unwrap()).unwrap());
    let whole = saved(&records(&all), &local(all.chunks(5).map(tap)));
    assert_eq!(run("verify", &whole).0, 0);
    assert_eq!(run("merge", &whole).0, 0);
    assert_eq!(merged(), stated);
    let mut broken = whole.clone();
    broken["entries"].as_array_mut().unwrap().push(json!(7));
    for order in ["verify", "merge"] {
        let (ending, said) = run(order, &broken);
        assert_eq!(ending, 1, "{order}");
        let named = format!("entries {} cannot be read", all.len() + 1);
        assert!(said.contains(&named), "{order}: {said}");
    }
    assert_eq!(merged(), stated);
}

/// The database is gone: the backup journal still has the open job.
#[test]
fn what_only_the_backup_journal_has_comes_back() {
    use hubslate::exchange::backup::{HEADER, tap};
    let (all, digest) = sample("replaced-hub");
    let lines: String = all.chunks(3).map(|some| tap(some, all.len())).collect();
    let mut file = saved(&json!([]), &json!({}));
    file["backup"] = json!([format!("{HEADER}000002\n{lines}"), ""]);
    let (incoming, rescue) = came(&file);
    assert_eq!(incoming.logs.len(), 1);
    assert_eq!(incoming.logs[0].records.len(), all.len());
    assert_eq!(
        hubslate::exchange::digest(incoming.logs[0].records.iter().map(|it| &it.text)),
        digest
    );
    assert_eq!(rescue.aside, []);
}

/// What belongs to a job says nothing in a spec library: it is set aside, and the rest is read.
#[test]
fn an_entry_that_does_not_belong_in_its_log_is_set_aside() {
    let (all, _) = sample("nothing-wrong");
    let mut odd = all[0].clone();
    odd.text = odd.text.replace(&odd.log, "book:2016-compact");
    odd.log = "book:2016-compact".to_owned();
    let file = saved(&records(&[all.clone(), vec![odd]].concat()), &json!({}));
    let (incoming, rescue) = came(&file);
    assert_eq!(incoming.logs.len(), 1);
    assert_eq!(rescue.aside.len(), 1);
}
