//! The calendar and the table, as programs that are not ours read them: icalendar and Python's csv,
//! in `other_formats.py`.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/python.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod python;
#[path = "support/random_jobs.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod random_jobs;
#[path = "support/zipped.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod zipped;

use std::path::{Path, PathBuf};
use std::process::Command;

use hubslate::exchange::bundle::{self, BundleError};
use hubslate::job::entry::{Due, DueKind, Event, PersonField, Reply, VehicleField};
use hubslate::trade::wheel_end::{Choice, Step, StepKey};
use random_jobs::RandomJob;
use serde_json::{Value, json};
use zipped::Zipped;

fn folder(name: &str) -> PathBuf {
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("formats-{name}"));
    let _ = std::fs::remove_dir_all(&path);
    std::fs::create_dir_all(&path).unwrap();
    path
}

/// What other programs read in the three forms of these files.
fn read(folder: &Path, files: &[PathBuf]) -> Value {
    for (word, out) in [("calendar", "due.ics"), ("table", "jobs.csv")] {
        let made = Command::new(env!("CARGO_BIN_EXE_hubslate"))
            .arg(word)
            .args(files)
            .args(["-o", out])
            .current_dir(folder)
            .output()
            .unwrap();
        assert!(made.status.success(), "{word}: {made:?}");
    }
    serde_json::from_str(&python::run("other_formats.py", &[folder])).unwrap()
}

fn samples() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("public/sample");
    ["replaced-hub", "declined-stop", "nothing-wrong"]
        .iter()
        .map(|name| folder.join(format!("{name}.json")))
        .collect()
}

#[test]
fn the_samples_come_through() {
    let recorded = read(&folder("samples"), &samples());
    // 6.3, 6.4, 6.3 and 1.0, 1.0, 1.2 thousandths of an inch; a slip of 64 was taken back.
    let mean = |thou: [f64; 3]| format!("{:.4}", thou.iter().sum::<f64>() / 3.0 * 0.0254);
    let before = mean([6.3, 6.4, 6.3]);
    let after = mean([1.0, 1.0, 1.2]);
    // Five days after 17 and 24 February 2026; the car of the declined STOP must not be driven.
    let days = ["2026-02-22", "2026-03-01"];
    let events = recorded["events"].as_array().unwrap();
    let asked: Vec<&Value> = events.iter().map(|e| &e["day"]).collect();
    assert_eq!(asked, days);
    // 81204 mi at the car and 50 mi on: by hand.
    let summary = "Re-torque the lugs KLM 4821 (at 81254\u{a0}mi)";
    assert_eq!(events[0]["summary"], summary);
    let said = "Have the lug-nut torque checked after 50\u{a0}mi, when the odometer shows 81254\u{a0}mi, no later than Feb 22, 2026.";
    assert_eq!(events[0]["description"], said);
    // 11:37 at five hours behind UTC, as page one has it; nine in the morning of the day.
    assert_eq!(events[0]["stamp"], "2026-02-17T16:37:00+00:00");
    assert_eq!(events[0]["alarm_s"], 9.0 * 3600.0);
    let row = &recorded["table"][0];
    assert_eq!(
        (&row["before_mm"], &row["after_mm"]),
        (&json!(before), &json!(after))
    );
    assert_eq!(
        (&row["repair_amount"], &row["currency"]),
        (&json!("486"), &json!("USD"))
    );
    assert_eq!(row["customer"], "Dana Quill");
}

#[test]
fn a_zip_is_read_by_another_library_and_one_of_its_own_is_read_here() {
    let here = folder("zip");
    let Zipped { text, saved, .. } = zipped::job();
    let zip = bundle::write("job.json", &text, &saved).unwrap();
    std::fs::write(here.join("job.zip"), zip).unwrap();
    std::fs::write(here.join("job.json"), &text).unwrap();
    let due = samples();
    let recorded = read(&here, &[here.join("job.json"), due[0].clone()]);
    let pieces = recorded["zip"].as_array().unwrap();
    // The method 0 is "stored" (APPNOTE.TXT of the format, 4.4.5).
    assert!(pieces.iter().all(|piece| piece[1] == 0), "{pieces:?}");
    assert_eq!((pieces.len(), &pieces[0][0]), (4, &json!("job.json")));
    for (wanted, _) in &saved {
        let found = pieces.iter().find(|piece| piece[0] == bundle::name(wanted));
        assert_eq!(found.unwrap()[2], wanted.sha256);
    }
    let stored = std::fs::read(here.join("stored.zip")).unwrap();
    let opened = bundle::open(&stored).unwrap();
    let held = bundle::held(&bundle::wanted_in(&opened.text), &opened.pieces);
    assert_eq!((opened.text, held.there.len()), (text, 3));
    let deflated = std::fs::read(here.join("deflated.zip")).unwrap();
    assert_eq!(bundle::open(&deflated), Err(BundleError::Packed));
}

/// Commas, quotes, lines, a backslash, letters of two and four octets, and what a spreadsheet
/// would carry out.
const AWKWARD: &str = "=1+1, \"Größe\"; C:\\x\nzweite Zeile \u{1f527} und noch viel mehr Wörter, bis die Zeile lang genug ist";

#[test]
fn awkward_texts_come_through_as_they_were() {
    let here = folder("awkward");
    let mut job = RandomJob::begin(5, "van-9");
    job.tap(vec![
        Event::Person(PersonField::Plate, AWKWARD.to_owned()),
        Event::Vehicle(VehicleField::Family, "-2 a".to_owned()),
        Event::Due(Due {
            kind: DueKind::Retorque,
            date: "2026-03-09".to_owned(),
            distance: None,
        }),
        Event::Due(Due {
            kind: DueKind::Recheck,
            date: "2026-06-01".to_owned(),
            distance: None,
        }),
    ]);
    let path = here.join("job.json");
    std::fs::write(&path, job.file()).unwrap();
    let recorded = read(&here, std::slice::from_ref(&path));
    assert_eq!(recorded["table"][0]["plate"], format!("'{AWKWARD}"));
    assert_eq!(recorded["table"][0]["family"], "'-2 a");
    let events = recorded["events"].as_array().unwrap();
    assert_eq!(events.len(), 2);
    let title = format!("Re-torque the lugs {AWKWARD}");
    assert_eq!(events[0]["summary"], title);
    assert_eq!(events[1]["day"], "2026-06-01");
    let ics = std::fs::read_to_string(here.join("due.ics")).unwrap();
    assert!(ics.split("\r\n").all(|line| line.len() <= 75));
    // What was looked back on is due no more.
    let done = Reply::Picked(Choice::NoneLoose);
    job.tap(vec![Event::Answered(
        StepKey::once(Step::RetorqueDone),
        done,
    )]);
    std::fs::write(&path, job.file()).unwrap();
    let recorded = read(&here, &[path]);
    assert_eq!(recorded["events"].as_array().unwrap().len(), 1);
}
