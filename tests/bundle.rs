//! A job with its photos and voice notes in one zip: whole, changed, missing, cut and mutated.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/random_jobs.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod random_jobs;
#[path = "support/zipped.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod zipped;

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use hubslate::exchange::bundle::{BundleError, held, is_zip, name, open, wanted_in, write};
use proptest::prelude::*;
use serde_json::Value;
use zipped::{PICTURES, VOICE, Zipped};

#[test]
fn a_job_and_its_bytes_come_out_as_they_went_in() {
    let Zipped { text, saved, .. } = zipped::job();
    let zip = write("job.json", &text, &saved).unwrap();
    assert!(is_zip(&zip) && !is_zip(text.as_bytes()));
    let opened = open(&zip).unwrap();
    assert_eq!(opened.text, text);
    let held = held(&wanted_in(&text), &opened.pieces);
    assert_eq!((held.changed.len(), held.missing.len()), (0, 0));
    let mut there: Vec<&[u8]> = held.there.iter().map(|(_, bytes)| *bytes).collect();
    there.sort_unstable();
    let mut all = vec![PICTURES[0], PICTURES[1], VOICE];
    all.sort_unstable();
    assert_eq!(there, all);
    let names: Vec<&str> = opened
        .pieces
        .iter()
        .map(|(name, _)| name.as_str())
        .collect();
    assert_eq!(
        names
            .iter()
            .filter(|name| name.starts_with("pictures/") && name.ends_with(".jpg"))
            .count(),
        2
    );
    assert_eq!(
        names
            .iter()
            .filter(|name| name.starts_with("voice/") && name.ends_with(".webm"))
            .count(),
        1
    );
}

#[test]
fn a_changed_photo_is_named_and_left_out_and_a_missing_one_is_reported_apart() {
    let Zipped {
        text, mut saved, ..
    } = zipped::job();
    let changed = name(&saved[0].0);
    saved[0].1[0] ^= 1;
    let (gone, _) = saved.pop().unwrap();
    let zip = write("job.json", &text, &saved).unwrap();
    let opened = open(&zip).unwrap();
    let held = held(&wanted_in(&text), &opened.pieces);
    assert_eq!(held.there.len(), 1);
    assert_eq!(held.changed, [changed]);
    assert_eq!(held.missing, [gone]);
}

#[test]
fn names_in_a_zip_are_not_believed() {
    let Zipped { text, .. } = zipped::job();
    let wanted = wanted_in(&text);
    let one = name(&wanted[0]);
    // Another file's bytes under a wanted name, and wanted bytes under another name.
    let pieces = [
        (one.clone(), &b"not it"[..]),
        ("x/../y.bin".to_owned(), VOICE),
    ];
    let held = held(&wanted, &pieces);
    assert_eq!((held.there.len(), held.there[0].1), (1, VOICE));
    let is_voice = wanted[0].mime.starts_with("audio/");
    assert_eq!(held.changed.len(), 1, "{is_voice}");
}

#[test]
fn what_is_no_zip_of_a_job_is_refused() {
    let Zipped { text, saved, .. } = zipped::job();
    let zip = write("job.json", &text, &saved).unwrap();
    for cut in 0..zip.len() {
        // Of a cut zip the directory at its end is missing.
        assert_eq!(open(&zip[..cut]), Err(BundleError::NotZip), "{cut}");
    }
    let without = write("readme.txt", &text, &saved).unwrap();
    assert_eq!(open(&without), Err(BundleError::NoJob));
}

proptest! {
    /// Whatever a way does to the bytes: no panic, and no picture passes that is not what the
    /// record names.
    #[test]
    fn no_bite_at_a_zip_lets_a_wrong_photo_in(bites in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..8)) {
        let Zipped { text, saved, .. } = zipped::job();
        let mut zip = write("job.json", &text, &saved).unwrap();
        for (place, byte) in bites {
            let place = place.index(zip.len());
            zip[place] = byte;
        }
        if let Ok(opened) = open(&zip) {
            for (one, bytes) in held(&wanted_in(&text), &opened.pieces).there {
                prop_assert!(saved.iter().any(|(other, whole)| *other == one && whole == bytes));
            }
        }
    }
}

fn folder(name: &str) -> PathBuf {
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("bundle-{name}"));
    let _ = std::fs::remove_dir_all(&path);
    std::fs::create_dir_all(&path).unwrap();
    path
}

fn run(folder: &Path, arguments: &[&str]) -> (i32, String) {
    let command = Path::new(env!("CARGO_BIN_EXE_hubslate"));
    let Output { status, stdout, .. } = Command::new(command)
        .args(arguments)
        .current_dir(folder)
        .output()
        .unwrap();
    (status.code().unwrap(), String::from_utf8(stdout).unwrap())
}

#[test]
fn the_command_says_which_photos_are_there_changed_and_missing() {
    let here = folder("verify");
    let Zipped {
        text, mut saved, ..
    } = zipped::job();
    let put = |name: &str, saved: &[_]| {
        std::fs::write(here.join(name), write("job.json", &text, saved).unwrap()).unwrap();
    };
    put("whole.zip", &saved);
    let (ending, said) = run(&here, &["verify", "whole.zip"]);
    assert_eq!(ending, 0, "{said}");
    assert!(said.contains("3 photos and voice notes there"), "{said}");
    put("less.zip", &saved[..2]);
    let (ending, said) = run(&here, &["verify", "less.zip"]);
    assert_eq!(
        ending, 0,
        "what another phone has is no fault of this file: {said}"
    );
    let gone = &saved[2].0;
    assert!(
        said.contains(&format!("missing in this zip: {}", gone.sha256)),
        "{said}"
    );
    saved[0].1.push(0);
    put("bad.zip", &saved);
    let (ending, said) = run(&here, &["verify", "--json", "bad.zip", "whole.zip"]);
    assert_eq!(ending, 1);
    let lines: Vec<Value> = said
        .lines()
        .map(|line| serde_json::from_str(line).unwrap())
        .collect();
    assert_eq!(
        (&lines[0]["status"], &lines[1]["status"]),
        (&"differs".into(), &"holds".into())
    );
    assert_eq!(lines[0]["pictures"]["changed"][0], name(&saved[0].0));
    assert_eq!(lines[0]["pictures"]["there"].as_array().unwrap().len(), 2);
    std::fs::write(
        here.join("cut.zip"),
        &std::fs::read(here.join("whole.zip")).unwrap()[..900],
    )
    .unwrap();
    let (ending, said) = run(&here, &["verify", "cut.zip"]);
    assert_eq!(ending, 1);
    assert!(said.starts_with("cut.zip: REFUSED"), "{said}");
}

#[test]
fn two_zips_of_one_job_become_one_with_the_photos_of_both() {
    let here = folder("merge");
    let Zipped {
        text, mut saved, ..
    } = zipped::job();
    let put = |name: &str, saved: &[_]| {
        std::fs::write(here.join(name), write("job.json", &text, saved).unwrap()).unwrap();
    };
    put("a.zip", &saved[..1]);
    put("b.zip", &saved[1..]);
    let (ending, said) = run(&here, &["merge", "a.zip", "b.zip", "-o", "all.zip"]);
    assert_eq!(ending, 0, "{said}");
    let (ending, said) = run(&here, &["verify", "all.zip"]);
    assert!(
        ending == 0 && said.contains("3 photos and voice notes there"),
        "{said}"
    );
    let (ending, said) = run(&here, &["merge", "all.zip", "-o", "all.json"]);
    assert!(
        ending == 0 && said.contains("3 photos and voice notes not written"),
        "{said}"
    );
    // A wrong one is named and left out; the record and the rest are taken.
    saved[0].1.push(0);
    put("bad.zip", &saved);
    let (ending, said) = run(&here, &["merge", "bad.zip", "-o", "some.zip"]);
    assert!(ending == 1 && said.contains(&name(&saved[0].0)), "{said}");
    let (ending, said) = run(&here, &["verify", "some.zip"]);
    assert!(
        ending == 0 && said.contains("2 photos and voice notes there"),
        "{said}"
    );
}
