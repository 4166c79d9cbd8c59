//! What this program computes of a job, computed again by another one from the exported file:
//! `second_opinion.py`, over the samples and 200 practice jobs by chance.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/python.rs"]
mod python;
#[path = "support/random_jobs.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod random_jobs;

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::process::Command;

use random_jobs::RandomJob;
use serde_json::Value;

const JOBS: u64 = 200;

/// The samples, and a file for every seed.
fn files(folder: &Path) -> Vec<PathBuf> {
    let samples = Path::new(env!("CARGO_MANIFEST_DIR")).join("public/sample");
    let names = ["replaced-hub", "declined-stop", "nothing-wrong"];
    let mut files: Vec<PathBuf> = names
        .iter()
        .map(|name| samples.join(format!("{name}.json")))
        .collect();
    for seed in 0..JOBS {
        let path = folder.join(format!("{seed}.json"));
        std::fs::write(&path, RandomJob::of(seed).file()).unwrap();
        files.push(path);
    }
    files
}

#[test]
fn another_program_computes_the_same_from_the_file_alone() {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("second-opinion");
    std::fs::create_dir_all(&folder).unwrap();
    let files = files(&folder);
    let verify = Command::new(env!("CARGO_BIN_EXE_hubslate"))
        .args(["verify", "--json"])
        .args(&files)
        .output()
        .unwrap();
    assert!(verify.status.success(), "a job by chance does not hold");
    every_case_occurs(&String::from_utf8(verify.stdout.clone()).unwrap());
    let said = folder.join("said.jsonl");
    std::fs::write(&said, &verify.stdout).unwrap();
    let told = python::run("second_opinion.py", &[&said]);
    let expected = format!("{} files, ", files.len());
    let last = told.lines().last().unwrap();
    assert!(
        last.starts_with(&expected) && last.ends_with(", 0 differ"),
        "{told}"
    );
    // One number changed by a millionth of itself is noticed.
    let text = String::from_utf8(verify.stdout).unwrap();
    let at = text.find("\"mean\":").unwrap() + "\"mean\":".len();
    let end = at + text[at..].find(',').unwrap();
    let mean: f64 = text[at..end].parse().unwrap();
    let wrong = format!("{}{}{}", &text[..at], mean * (1.0 + 1e-6), &text[end..]);
    std::fs::write(&said, wrong).unwrap();
    let told = python::answer("second_opinion.py", &[&said]);
    assert!(told.contains(" values, 1 differ"), "{told}");
}

/// The jobs would prove little if chance left out a rule.
fn every_case_occurs(said: &str) {
    let mut seen: BTreeSet<String> = BTreeSet::new();
    for line in said.lines() {
        let value: Value = serde_json::from_str(line).unwrap();
        let computed = &value["logs"][0]["computed"];
        for set in computed["sets"].as_array().unwrap() {
            for name in ["conformity", "trend", "no_comparison", "limit_source"] {
                seen.insert(format!("{name} {}", set["measured"][name]).replace('"', ""));
            }
            seen.insert(format!("fault {}", set["fault"]).replace('"', ""));
            let plays = set["measured"]["plays"].as_array();
            let parts = set["measured"]["components"].as_object();
            let parts = parts.into_iter().flatten().map(|(name, _)| name);
            seen.extend(parts.map(|name| format!("part {name}")));
            seen.insert(format!("{} plays", plays.map_or(0, Vec::len)));
        }
        for decision in computed["decisions"].as_array().unwrap() {
            let reasons = decision["reasons"].as_array().unwrap().iter();
            seen.extend(reasons.map(|reason| reason.as_str().unwrap().to_owned()));
        }
        for proved in computed["proved"].as_array().unwrap() {
            seen.insert(format!("{} {}", proved["result"], proved["proven"]).replace('"', ""));
        }
    }
    let wanted = [
        "conformity proven_in",
        "conformity in_not_proven",
        "conformity out_not_proven",
        "conformity proven_out",
        "conformity no_movement_seen",
        "conformity movement_seen",
        "conformity no_comparison",
        "no_comparison method",
        "no_comparison place",
        "no_comparison rig",
        "no_comparison force",
        "no_comparison nut_slack",
        "no_comparison flex_not_tested",
        "trend steady",
        "trend rising",
        "trend falling",
        "trend scattered",
        "limit_source maker",
        "limit_source house",
        "fault round",
        "part tip_angle",
        "1 plays",
        "2 plays",
        "3 plays",
        "must_not_drive.visible_tilt",
        "must_not_drive.loose_axle_nut",
        "must_not_drive.loose_wheel_fasteners",
        "must_not_drive.grinding_with_heat",
        "loose_in_bearing.knocks",
        "loose_elsewhere.just_felt",
        "loose_not_located.seen",
        "sets_disagree",
        "over_proven",
        "over_not_proven",
        "under_proven",
        "under_not_proven",
        "no_maker_limit",
        "smooth_and_quiet",
        "pass true",
        "pass false",
        "blocked false",
        "not_judged false",
    ];
    let missing: Vec<&str> = wanted.into_iter().filter(|w| !seen.contains(*w)).collect();
    assert!(missing.is_empty(), "no job has {missing:?}");
}
