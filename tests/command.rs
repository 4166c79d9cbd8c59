//! The command on a computer: what it says of whole, edited, cut and foreign files, and the
//! endings by which a script can tell.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

use std::path::{Path, PathBuf};
use std::process::Command;

use hubslate::exchange::verify::{Finding, Remark, verify};
use hubslate::exchange::{ImportError, export, read};
use hubslate::trade::play::Decision;
use serde_json::Value;

const SAMPLES: [&str; 3] = ["replaced-hub", "declined-stop", "nothing-wrong"];

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn sample_path(name: &str) -> PathBuf {
    root().join("public/sample").join(format!("{name}.json"))
}

fn sample(name: &str) -> String {
    std::fs::read_to_string(sample_path(name)).unwrap()
}

/// What is found in the one log of a file.
#[track_caller]
fn found(text: &str) -> (Vec<Finding>, Vec<Remark>) {
    let mut logs = verify(text).unwrap();
    assert_eq!(logs.len(), 1);
    let log = logs.remove(0);
    (log.findings, log.remarks)
}

fn codes(text: &str) -> Vec<&'static str> {
    found(text).0.iter().map(Finding::code).collect()
}

/// The text with one piece changed, which must be there.
#[track_caller]
fn edited(text: &str, from: &str, to: &str) -> String {
    let changed = text.replacen(from, to, 1);
    assert_ne!(changed, text, "{from}");
    changed
}

#[test]
fn the_samples_hold() {
    for name in SAMPLES {
        let text = sample(name);
        assert_eq!(found(&text), (vec![], vec![]), "{name}");
        let log = verify(&text).unwrap().remove(0);
        assert!(0 < log.sets && 0 < log.decisions, "{name}");
    }
}

/// The fixture has one entry of each kind and no story behind it: its digests hold, and its report
/// is honestly not that of its entries. Its decision was made by older rules, which nothing judges
/// again.
#[test]
fn the_fixture_differs_where_it_was_put_together() {
    let path = root().join("tests/fixtures/job-1.json");
    let text = std::fs::read_to_string(path).unwrap();
    assert_eq!(codes(&text), ["handed_over"]);
}

#[test]
fn one_digit_of_a_reading_is_found_in_the_digest_and_in_what_follows_from_it() {
    let text = sample("nothing-wrong");
    // The first pull, 2 divisions of 0.01 mm, becomes 24: over its limit of 0.10 mm.
    let bad = edited(
        &text,
        r#""side":"pull","divisions":"2""#,
        r#""side":"pull","divisions":"24""#,
    );
    assert!(matches!(read(&bad), Err(ImportError::Edited { .. })));
    let (findings, _) = found(&bad);
    let codes: Vec<&str> = findings.iter().map(Finding::code).collect();
    assert_eq!(codes, ["digest", "canonical", "decision", "handed_over"]);
    let Finding::Decision {
        recorded, computed, ..
    } = &findings[2]
    else {
        panic!("{findings:?}");
    };
    assert_eq!(recorded.decision, Decision::Keep);
    assert_ne!(computed.reasons, recorded.reasons);
}

#[test]
fn one_decision_is_found_even_under_new_digests() {
    let text = sample("declined-stop");
    let bad = edited(&text, r#""decision":"stop""#, r#""decision":"keep""#);
    assert_eq!(
        codes(&bad),
        ["digest", "canonical", "decision", "handed_over"]
    );
    // Whoever makes the digests of the file again as well cannot make those of the entries.
    let log = verify(&bad).unwrap().remove(0);
    let stated = verify(&text).unwrap().remove(0);
    let forged = edited(&bad, &stated.digest, &log.digest);
    let canonical = |log: &hubslate::exchange::verify::Checked| log.canonical.clone().unwrap();
    let forged = edited(&forged, &canonical(&stated), &canonical(&log));
    assert!(read(&forged).is_ok());
    assert_eq!(codes(&forged), ["decision", "handed_over"]);
}

#[test]
fn an_entry_that_was_taken_out_is_missed() {
    let text = sample("replaced-hub");
    let lines: Vec<&str> = text.lines().collect();
    let said = lines
        .iter()
        .position(|l| l.contains(r#"{"said":"#))
        .unwrap();
    let without: Vec<&str> = [&lines[..said], &lines[said + 1..]].concat();
    let (findings, remarks) = found(&without.join("\n"));
    let codes: Vec<&str> = findings.iter().map(Finding::code).collect();
    assert_eq!(codes, ["digest", "canonical", "record"]);
    // Decision, proof and handing over rested on it, and are not judged by halves.
    let not_checked = |remark: &&Remark| matches!(remark, Remark::NotChecked(_));
    assert_eq!(remarks.iter().filter(not_checked).count(), 3);
}

/// As other programs write JSON: names in the order of letters, spaces, numbers as doubles.
fn laid_out_again(text: &str) -> String {
    fn doubles(value: &mut Value) {
        match value {
            Value::Number(number) => {
                let whole = number.as_f64().filter(|x| x.fract() == 0.0);
                if let Some(whole) = whole {
                    *value = serde_json::json!(whole as i64);
                }
            }
            Value::Array(items) => items.iter_mut().for_each(doubles),
            Value::Object(fields) => fields.values_mut().for_each(doubles),
            _ => {}
        }
    }
    let mut value: Value = serde_json::from_str(text).unwrap();
    doubles(&mut value);
    let plain = serde_json::to_string_pretty(&value).unwrap();
    // One of the escapes that a writer is free to use.
    plain.replace("Fernbrook", r"\u0046ernbrook")
}

#[test]
fn a_file_that_was_laid_out_anew_holds_and_gives_its_texts_back() {
    for name in SAMPLES {
        let text = sample(name);
        let other = laid_out_again(&text);
        assert_ne!(other, text);
        assert_eq!(found(&other), (vec![], vec![Remark::Reformatted]), "{name}");
        let (came, was) = (read(&other).unwrap(), read(&text).unwrap());
        assert!(came.logs[0].reformatted && !was.logs[0].reformatted);
        assert_eq!(came.logs[0].records, was.logs[0].records, "{name}");
        // An edit does not pass as a layout.
        let by = edited(&other, r#""by": ""#, r#""by": "x"#);
        assert!(matches!(read(&by), Err(ImportError::Edited { .. })));
        let more = edited(&other, r#""by": ""#, r#""mood": "", "by": ""#);
        assert!(matches!(read(&more), Err(ImportError::Edited { .. })));
    }
}

/// A folder of its own for one test.
fn folder(name: &str) -> PathBuf {
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("command-{name}"));
    let _ = std::fs::remove_dir_all(&path);
    std::fs::create_dir_all(&path).unwrap();
    path
}

struct Ran {
    ending: i32,
    lines: Vec<String>,
    errors: String,
}

fn run(folder: &Path, arguments: &[&str]) -> Ran {
    let output = Command::new(env!("CARGO_BIN_EXE_hubslate"))
        .args(arguments)
        .current_dir(folder)
        .output()
        .unwrap();
    let text = String::from_utf8(output.stdout).unwrap();
    Ran {
        ending: output.status.code().unwrap(),
        lines: text.lines().map(str::to_owned).collect(),
        errors: String::from_utf8(output.stderr).unwrap(),
    }
}

#[test]
fn one_bad_file_among_ten_stops_none_of_the_others() {
    let here = folder("ten");
    let bads = [
        edited(
            &sample("nothing-wrong"),
            r#""divisions":"2""#,
            r#""divisions":"3""#,
        ),
        sample("replaced-hub")[..20_000].to_owned(),
        "no JSON at all".to_owned(),
        "\u{0}\u{1}".to_owned(),
    ];
    for bad in bads {
        let names: Vec<String> = (0..10).map(|n| format!("{n}.json")).collect();
        for (n, name) in names.iter().enumerate() {
            std::fs::write(here.join(name), sample(SAMPLES[n % 3])).unwrap();
        }
        std::fs::write(here.join("6.json"), bad).unwrap();
        let mut words = vec!["verify"];
        words.extend(names.iter().map(String::as_str));
        let ran = run(&here, &words);
        assert_eq!((ran.ending, ran.lines.len()), (1, 10), "{:?}", ran.lines);
        for (n, line) in ran.lines.iter().enumerate() {
            let well = line.starts_with(&format!("{n}.json: holds"));
            assert_eq!(well, n != 6, "{line}");
        }
    }
}

#[test]
fn the_endings_are_0_1_and_2() {
    let here = folder("endings");
    let good = sample_path("nothing-wrong");
    let good = good.to_str().unwrap();
    assert_eq!(run(&here, &["verify", good]).ending, 0);
    assert_eq!(run(&here, &["verify", good, "absent.json"]).ending, 1);
    for wrong in [&["verify"][..], &["dance", good], &["merge", good]] {
        let ran = run(&here, wrong);
        assert_eq!((ran.ending, ran.lines.len()), (2, 0));
        assert!(ran.errors.contains("hubslate verify"), "{}", ran.errors);
    }
    let nowhere = run(&here, &["merge", good, "-o", "no/such/folder.json"]);
    assert_eq!(nowhere.ending, 2);
    let help = run(&here, &["--help"]);
    assert_eq!(help.ending, 0);
}

#[test]
fn json_is_one_object_a_file_with_every_number() {
    let here = folder("json");
    let path = sample_path("replaced-hub");
    std::fs::write(here.join("bad.json"), "x").unwrap();
    let ran = run(
        &here,
        &["verify", "--json", path.to_str().unwrap(), "bad.json"],
    );
    assert_eq!((ran.ending, ran.lines.len()), (1, 2));
    let values: Vec<Value> = ran
        .lines
        .iter()
        .map(|line| serde_json::from_str(line).unwrap())
        .collect();
    assert_eq!(values[0]["status"], "holds");
    assert_eq!(values[1]["status"], "refused");
    let set = &values[0]["logs"][0]["computed"]["sets"][0]["measured"];
    // 6.3, 6.4 and 6.3 divisions of 0.001 in.
    let mean = (6.3 + 6.4 + 6.3) / 3.0 * 0.0254;
    assert!((set["mean"].as_f64().unwrap() - mean).abs() < 1e-12);
    assert_eq!(set["conformity"], "proven_out");
}

/// A file with some entries of a sample alone, as an end-of-day file has them.
fn part_of(name: &str, from: usize) -> String {
    let mut log = read(&sample(name)).unwrap().logs.remove(0);
    let texts = log.records.drain(from..).map(|record| record.text);
    export(&[(log.kind, log.id, texts.collect())]).unwrap()
}

#[test]
fn an_end_of_day_file_is_called_part_of_a_job_until_it_is_merged_with_the_rest() {
    let here = folder("part");
    std::fs::write(here.join("closing.json"), part_of("replaced-hub", 100)).unwrap();
    let ran = run(&here, &["verify", "closing.json"]);
    assert_eq!(ran.ending, 0);
    assert!(
        ran.lines[0].starts_with("closing.json: PART OF A JOB: "),
        "{:?}",
        ran.lines
    );
    let ran = run(&here, &["verify", "--json", "closing.json"]);
    let value: Value = serde_json::from_str(&ran.lines[0]).unwrap();
    assert_eq!(value["status"], "part");
    // An edit in a part is one all the same.
    let closing = std::fs::read_to_string(here.join("closing.json")).unwrap();
    std::fs::write(
        here.join("edited.json"),
        closing.replacen(r#""by":""#, r#""by":"x"#, 1),
    )
    .unwrap();
    let edited = run(&here, &["verify", "edited.json"]);
    assert_eq!(edited.ending, 1, "{:?}", edited.lines);
    let whole = sample_path("replaced-hub").to_str().unwrap().to_owned();
    assert_eq!(
        run(&here, &["merge", "closing.json", &whole, "-o", "all.json"]).ending,
        0
    );
    let merged = run(&here, &["verify", "all.json"]);
    assert!(
        merged.lines[0].starts_with("all.json: holds"),
        "{:?}",
        merged.lines
    );
}

#[test]
fn files_become_one_that_holds_and_bad_ones_are_named() {
    let here = folder("merge");
    let paths = SAMPLES.map(|name| sample_path(name).to_str().unwrap().to_owned());
    std::fs::write(here.join("cut.json"), &sample("replaced-hub")[..9_000]).unwrap();
    let [a, b, c] = &paths;
    let ran = run(&here, &["merge", a, "cut.json", b, c, a, "-o", "all.json"]);
    assert_eq!(ran.ending, 1);
    assert!(
        ran.lines[0].starts_with("cut.json: REFUSED"),
        "{:?}",
        ran.lines
    );
    // The phone of all three counts on between the jobs: what was noted in between is not here.
    let gaps = ran.lines.iter().filter(|line| line.starts_with("van-2: "));
    assert_eq!(gaps.count(), 2, "{:?}", ran.lines);
    let all = std::fs::read_to_string(here.join("all.json")).unwrap();
    let texts = |text: &str| -> Vec<String> {
        let logs = read(text).unwrap().logs;
        let texts = logs.into_iter().flat_map(|log| log.records);
        texts.map(|record| record.text).collect()
    };
    let mut apart: Vec<String> = SAMPLES.iter().flat_map(|n| texts(&sample(n))).collect();
    let mut joined = texts(&all);
    apart.sort();
    joined.sort();
    assert_eq!(joined, apart);
    assert_eq!(run(&here, &["verify", "all.json"]).ending, 0);
    // Once more, in another order, with what is there already: the same file.
    std::fs::copy(here.join("all.json"), here.join("before.json")).unwrap();
    let again = run(&here, &["merge", c, "before.json", b, "-o", "again.json"]);
    assert_eq!(again.ending, 0);
    assert_eq!(
        std::fs::read_to_string(here.join("again.json")).unwrap(),
        all
    );
}

#[test]
fn an_erased_customer_is_gone_for_good_and_the_work_stays() {
    let here = folder("erase");
    let old = sample_path("replaced-hub");
    let old = old.to_str().unwrap();
    let job = verify(&sample("replaced-hub")).unwrap().remove(0).id.0;
    let none = run(&here, &["erase", "nobody", old, "-o", "gone.json"]);
    assert_eq!(none.ending, 2);
    let ran = run(&here, &["erase", &job[..13], old, "-o", "gone.json"]);
    assert_eq!(ran.ending, 0, "{}", ran.errors);
    assert!(
        ran.lines[1].starts_with("4 personal entries erased"),
        "{:?}",
        ran.lines
    );
    // Free words may name somebody: they stay, and are shown so that a person can look.
    let stays: Vec<&String> = ran
        .lines
        .iter()
        .filter(|l| l.starts_with("stays"))
        .collect();
    assert_eq!(stays.len(), 4, "{:?}", ran.lines);
    assert!(stays[2].contains("2 signatures") && stays[3].contains("3 photos"));
    assert!(stays[0].contains("A hum from the front left") && stays[1].contains("Seat cleaned"));
    let personal = ["Quill", "Alder Lane", "555-0142", "KLM 4821"];
    let there = |text: &str| personal.iter().filter(|fact| text.contains(**fact)).count();
    assert_eq!(there(&sample("replaced-hub")), 4);
    let gone = std::fs::read_to_string(here.join("gone.json")).unwrap();
    assert_eq!(there(&gone), 0);
    // Nothing that was found or decided went with them, and every digest still stands.
    assert_eq!(found(&gone), (vec![], vec![]));
    let numbers = |text: &str| verify(text).unwrap().remove(0).numbers;
    assert_eq!(numbers(&gone), numbers(&sample("replaced-hub")));
    // The old file, before or after, does not bring them back.
    for files in [[old, "gone.json"], ["gone.json", old]] {
        let [first, second] = files;
        let ran = run(&here, &["merge", first, second, "-o", "later.json"]);
        assert_eq!(ran.ending, 0);
        let later = std::fs::read_to_string(here.join("later.json")).unwrap();
        assert_eq!(later, gone);
    }
    // What may name them goes where that is asked for, and the old file does not bring it back.
    let also = "complaint,notes,signatures,photos";
    let ran = run(
        &here,
        &["erase", &job[..13], "--also", also, old, "-o", "all.json"],
    );
    assert_eq!(ran.ending, 0, "{}", ran.errors);
    // The four facts, one complaint, one note, two signatures, three pictures.
    assert!(
        ran.lines[1].starts_with("11 personal entries erased"),
        "{:?}",
        ran.lines
    );
    assert!(!ran.lines.iter().any(|line| line.starts_with("stays")));
    let all = std::fs::read_to_string(here.join("all.json")).unwrap();
    assert_eq!(found(&all), (vec![], vec![]));
    // All that was computed is as it was, but for the pictures, which were asked to go.
    let mut as_it_was = numbers(&sample("replaced-hub"));
    as_it_was["photos"] = serde_json::json!([]);
    assert_eq!(numbers(&all), as_it_was);
    let ran = run(&here, &["merge", old, "all.json", "-o", "later.json"]);
    assert_eq!(ran.ending, 0);
    let later = std::fs::read_to_string(here.join("later.json")).unwrap();
    assert_eq!(later, all);
}
