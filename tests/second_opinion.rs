//! What this program computes of a job, computed again by another one from the exported file:
//! `second_opinion.py`, over the samples and 250 practice jobs by chance.
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

const JOBS: u64 = 250;

/// Jobs by chance at which what seldom happens does: a new part proven within, a rotor to be
/// indexed, two sets that are over together.
const RARE: [u64; 3] = [281, 855, 1306];

/// The samples, and a file for every seed.
fn files(folder: &Path) -> Vec<PathBuf> {
    let samples = Path::new(env!("CARGO_MANIFEST_DIR")).join("public/sample");
    let names = ["replaced-hub", "declined-stop", "nothing-wrong"];
    let mut files: Vec<PathBuf> = names
        .iter()
        .map(|name| samples.join(format!("{name}.json")))
        .collect();
    for seed in (0..JOBS).chain(RARE) {
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
    let recorded = python::run("second_opinion.py", &[&said]);
    let expected = format!("{} files, ", files.len());
    let last = recorded.lines().last().unwrap();
    assert!(
        last.starts_with(&expected) && last.ends_with(", 0 differ"),
        "{recorded}"
    );
    // Numbers changed by a millionth of themselves are noticed.
    let text = String::from_utf8(verify.stdout).unwrap();
    let wrong = ["mean", "tir", "thinnest"]
        .iter()
        .fold(text, |text, name| a_millionth_more(&text, name));
    std::fs::write(&said, wrong).unwrap();
    let recorded = python::answer("second_opinion.py", &[&said]);
    assert!(recorded.contains(" values, 3 differ"), "{recorded}");
}

/// The text with the first number of this name a little larger.
fn a_millionth_more(text: &str, name: &str) -> String {
    let name = format!("\"{name}\":");
    let at = text.find(&name).unwrap() + name.len();
    let end = at + text[at..].find([',', '}']).unwrap();
    let number: f64 = text[at..end].parse().unwrap();
    format!("{}{}{}", &text[..at], number * (1.0 + 1e-6), &text[end..])
}

fn plain(name: &str, word: &Value) -> String {
    format!("{name} {word}").replace('"', "")
}

/// The words that were said of a run round a face.
fn of_a_face(face: &Value) -> Vec<String> {
    let measured = &face["measured"];
    let shape = &measured["shape"];
    let warp = if shape["warp"].is_null() {
        "warp not told"
    } else {
        "warp told"
    };
    let words = [
        ("surface", &face["surface"]),
        ("face fault", &face["fault"]),
        ("open", &measured["undetermined"]),
        ("form", &shape["form"]),
        ("face", &measured["against"]["conformity"]),
        ("basis", &measured["basis"]),
        ("next", &measured["next"]),
    ];
    let words = words.map(|(name, word)| plain(name, word));
    words.into_iter().chain([warp.to_owned()]).collect()
}

/// The jobs would prove little if chance left out a rule.
fn every_case_occurs(said: &str) {
    let mut seen: BTreeSet<String> = BTreeSet::new();
    for line in said.lines() {
        let value: Value = serde_json::from_str(line).unwrap();
        let computed = &value["logs"][0]["computed"];
        for set in computed["sets"].as_array().unwrap() {
            for name in [
                "conformity",
                "trend",
                "no_comparison",
                "limit_source",
                "apart",
            ] {
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
            let inputs = &decision["inputs"];
            seen.insert(plain("road", &inputs["road"]));
            seen.insert(plain("heat", &inputs["heat"]));
            seen.insert(plain("together", &inputs["together"]["result"]));
        }
        for face in computed["faces"].as_array().unwrap() {
            seen.extend(of_a_face(face));
        }
        for rotor in computed["rotors"].as_array().unwrap() {
            let measured = &rotor["measured"];
            let words = [
                ("rotor fault", &rotor["fault"]),
                ("least", &measured["least"]["conformity"]),
                ("variation", &measured["variation"]["conformity"]),
                ("rotor next", &measured["next"]),
            ];
            seen.extend(words.map(|(name, word)| plain(name, word)));
        }
        for record in computed["found"].as_array().unwrap() {
            let measured = &record["found"]["measured"];
            let words = [
                ("recorded face", &measured["against"]["conformity"]),
                ("recorded open", &measured["undetermined"]),
                ("recorded basis", &measured["basis"]),
                ("recorded least", &measured["least"]["conformity"]),
            ];
            seen.extend(words.map(|(name, word)| plain(name, word)));
        }
        for proof in computed["proofs"].as_array().unwrap() {
            let proved = &proof["proved"];
            let words = [
                ("recorded", &proved["outcome"]),
                ("recorded set", &proved["set"]["result"]),
            ];
            seen.extend(words.map(|(name, word)| plain(name, word)));
        }
        for proved in computed["proved"].as_array().unwrap() {
            seen.insert(format!("{} {}", proved["result"], proved["proven"]).replace('"', ""));
        }
    }
    let wanted = [
        "surface hub_face",
        "surface pilot",
        "surface rotor",
        "face fault null",
        "face fault too_few",
        "open null",
        "open rank",
        "open bunched",
        "open no_spare",
        "form true",
        "form wobble",
        "form warp",
        "form bump",
        "form hollow",
        "form uneven",
        "warp told",
        "warp not told",
        "face proven_in",
        "face in_not_proven",
        "face out_not_proven",
        "face proven_out",
        "face null",
        "basis null",
        "basis two_positions",
        "basis hub_and_rotor",
        "next look_up",
        "next read_more",
        "next go_on",
        "next clean",
        "next read_turned",
        "next index",
        "next plate",
        "next new_part",
        "rotor fault null",
        "rotor fault too_few",
        "least proven_in",
        "least in_not_proven",
        "least out_not_proven",
        "least proven_out",
        "least null",
        "variation proven_in",
        "variation in_not_proven",
        "variation out_not_proven",
        "variation proven_out",
        "rotor next look_up",
        "rotor next go_on",
        "rotor next measure_again",
        "rotor next machine",
        "rotor next new_rotor",
        "conformity proven_in",
        "conformity in_not_proven",
        "conformity out_not_proven",
        "conformity proven_out",
        "conformity no_movement_seen",
        "conformity movement_seen",
        "conformity no_comparison",
        "no_comparison method",
        "no_comparison place",
        "apart method",
        "apart place",
        "apart rig",
        "apart force",
        "together in_not_proven",
        "together out_not_proven",
        "together proven_out",
        "together movement_seen",
        "road quiet",
        "road elsewhere",
        "road not_done",
        "road not_located",
        "road here",
        "heat alike",
        "heat not_done",
        "heat hotter",
        "road_points_here",
        "road_points_elsewhere",
        "road_not_located",
        "hotter",
        "no_comparison.rig",
        "not_looked_at.dial",
        "no_comparison force",
        "no_comparison nut_slack",
        "no_comparison flex_not_tested",
        "no_comparison method_not_recorded",
        "trend steady",
        "trend rising",
        "trend falling",
        "trend scattered",
        "limit_source manufacturer",
        "limit_source house",
        "fault round",
        "fault mixed_dials",
        "face fault mixed_dials",
        "face fault ask_turns",
        "part tip_angle",
        "part temperature",
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
        "no_manufacturer_limit",
        "smooth_and_quiet",
        "pass true",
        "pass false",
        "blocked false",
        "not_judged false",
        "recorded face proven_in",
        "recorded face proven_out",
        "recorded open rank",
        "recorded open bunched",
        "recorded open no_spare",
        "recorded basis two_positions",
        "recorded basis hub_and_rotor",
        "recorded least proven_in",
        "recorded least proven_out",
        "recorded pass",
        "recorded blocked",
        "recorded not_judged",
        "recorded set null",
        "recorded set proven_in",
        "recorded set proven_out",
        "recorded set movement_seen",
        "recorded set no_comparison",
    ];
    let missing: Vec<&str> = wanted.into_iter().filter(|w| !seen.contains(*w)).collect();
    assert!(missing.is_empty(), "no job has {missing:?}");
}

#[test]
fn both_call_an_end_of_day_file_a_part_of_a_job() {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("second-opinion-part");
    std::fs::create_dir_all(&folder).unwrap();
    let sample = Path::new(env!("CARGO_MANIFEST_DIR")).join("public/sample/replaced-hub.json");
    let text = std::fs::read_to_string(sample).unwrap();
    let mut log = hubslate::exchange::read(&text).unwrap().logs.remove(0);
    let texts = log.records.drain(100..).map(|record| record.text);
    let part = hubslate::exchange::export(&[(log.kind, log.id, texts.collect())]).unwrap();
    let path = folder.join("closing.json");
    std::fs::write(&path, part).unwrap();
    let verify = Command::new(env!("CARGO_BIN_EXE_hubslate"))
        .args(["verify", "--json"])
        .arg(&path)
        .output()
        .unwrap();
    let said = folder.join("said.jsonl");
    std::fs::write(&said, &verify.stdout).unwrap();
    let answer = python::run("second_opinion.py", &[&said]);
    assert!(
        answer.contains("1 files, 1 values, 0 differ, 1 part of a job"),
        "{answer}"
    );
}
