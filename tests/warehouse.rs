//! What a chain of shops asks of all its jobs, by `warehouse.sql`: the answers of DuckDB against those
//! worked out by hand, and those of Spark against DuckDB's.
//!
//! Spark is asked where `HUBSLATE_SPARK` names a Python that has `pyspark`; `DEVELOPERS.md` says how.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/python.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod python;

use std::path::{Path, PathBuf};
use std::process::Command;

use hubslate::exchange::{LogKind, export_of};
use hubslate::job::entry::LogId;
use serde_json::{Value, json};

const EAST: &str = "019c6c21-0e76-762b-b33a-0000000000ea";
const WEST: &str = "019c6c21-0e76-762b-b33a-0000000000fe";
/// Noon on 17 February 2026, UTC.
const NOON: i64 = 1_771_329_600_000;
const DAY: i64 = 86_400_000;

fn id(job: u32, entry: u32) -> String {
    format!("019c6c21-0e76-762b-{job:04x}-{entry:012x}")
}

/// The job of a number: its device, the running number it begins with, the day it begins on.
struct Job {
    number: u32,
    device: &'static str,
    n: u64,
    utc_ms: i64,
    texts: Vec<String>,
    last: Vec<u32>,
}

impl Job {
    fn begin(number: u32, device: &'static str, n: u64, day: i64) -> Self {
        let utc_ms = NOON + day * DAY;
        Self {
            number,
            device,
            n,
            utc_ms,
            texts: Vec::new(),
            last: Vec::new(),
        }
    }

    /// An entry under this id that saw all before it.
    fn says(mut self, entry: u32, what: Value) -> Self {
        self.beside(entry, &self.last.clone(), what);
        self.last = vec![entry];
        self
    }

    /// One that saw these.
    fn beside(&mut self, entry: u32, after: &[u32], what: Value) {
        let after: Vec<String> = after.iter().map(|it| id(self.number, *it)).collect();
        let text = json!({
            "v": 1, "id": id(self.number, entry), "log": id(self.number, 0),
            "at": { "utc_ms": self.utc_ms, "offset_min": -300 }, "by": "A. Wrench",
            "device": self.device, "n": self.n, "after": after, "what": what,
        });
        self.texts.push(text.to_string());
        self.n += 1;
        self.utc_ms += 1_000;
    }

    /// A running number that is in no file.
    fn skips(mut self) -> Self {
        self.n += 1;
        self
    }
}

fn opened() -> Value {
    json!({ "opened": { "start": "at_car" } })
}

fn vin(vin: &str) -> Value {
    json!({ "vehicle": { "field": "vin", "text": vin } })
}

fn part(number: &str, lot: &str) -> Value {
    json!({ "part": { "corner": "front_left", "number": number, "lot": lot } })
}

fn ended(how: &str) -> Value {
    json!({ "ended": { "ending": how } })
}

fn line(net: i64, percent: &str) -> Value {
    json!({ "kind": "other", "text": "", "quantity": "1", "each": net, "net": net, "percent": percent })
}

fn invoice(number: &str, credits: Option<&str>, sign: i64) -> Value {
    let mut invoice = json!({ "number": number, "currency": "USD", "parts": [
        { "of": "a", "what": "repair", "text": "", "lines": [line(sign * 20_000, "5.5")],
          "taxes": [{ "percent": "5.5", "net": sign * 20_000, "tax": sign * 1_100 }] },
        { "of": "b", "what": "further", "text": "", "lines": [line(sign * 1_000, "10"), line(sign * 30, "10")],
          "taxes": [{ "percent": "10", "net": sign * 1_030, "tax": sign * 103 }] },
    ] });
    if let Some(credits) = credits {
        invoice["credits"] = json!(credits);
    }
    json!({ "invoice": invoice })
}

/// Put in by one van, invoiced twice and credited once.
fn replaced() -> Job {
    Job::begin(1, "east-1", 1, 0)
        .says(1, opened())
        .says(2, vin("VIN-1"))
        .says(3, part("P-1", "L-1"))
        .skips()
        .says(4, invoice("E0001", None, 1))
        .says(5, json!({ "paid": { "how": "card", "amount": { "minor": 22_233, "currency": "USD" } } }))
        .says(6, invoice("E0002", Some("E0001"), -1))
        .says(7, json!({ "refunded": { "how": "cash", "amount": { "minor": 10_000, "currency": "USD" } } }))
        .says(8, invoice("E0003", None, 1))
        .says(9, json!({ "due": { "kind": "retorque", "date": "2026-02-22" } }))
        .says(10, ended("finished"))
}

/// The same car ten days later, at another van, with the same corner.
fn came_back() -> Job {
    Job::begin(2, "east-2", 1, 10)
        .says(1, opened())
        .says(2, vin("VIN-1"))
        .says(3, json!({ "answered": { "step": "comeback", "reply": { "picked": { "pick": "same_corner" } } } }))
        .says(4, json!({ "came_back_for": { "cause": "fitting" } }))
        .says(5, ended("declined"))
}

/// Two phones named the part without having seen one another; a slip was struck; the clock of
/// the phone that ended the job was behind, and its ids with it.
fn disputed() -> Job {
    let mut job = Job::begin(3, "west-1", 1, 1)
        .says(10, opened())
        .says(11, vin("VIN-2"));
    job.beside(13, &[11], part("P-1", "L-2"));
    job.beside(12, &[11], part("P-9", "L-9"));
    job.last = vec![12, 13];
    let mut job = job
        .says(14, part("P-7", "L-7"))
        .says(15, json!({ "strike": { "hits": [id(3, 14)] } }))
        .says(16, ended("left_unfinished"));
    job.utc_ms -= DAY;
    let paid = json!({ "paid": { "how": "cash", "amount": { "minor": 100, "currency": "EUR" } } });
    job.says(5, ended("finished")).says(6, paid)
}

fn files(folder: &Path) -> Vec<PathBuf> {
    let practice = json!({ "opened": { "start": "at_car", "practice": "seed 1" } });
    let shops = [
        (Some(EAST), vec![replaced(), came_back()]),
        (Some(WEST), vec![disputed()]),
        (
            None,
            vec![
                Job::begin(4, "alone", 1, 0).says(1, opened()),
                Job::begin(5, "alone-practice", 1, 0)
                    .says(1, practice)
                    .says(2, ended("finished")),
            ],
        ),
    ];
    let file = |(at, (shop, jobs)): (usize, (Option<&str>, Vec<Job>))| {
        let log = |job: Job| (LogKind::Job, LogId(id(job.number, 0)), job.texts);
        let logs: Vec<_> = jobs.into_iter().map(log).collect();
        let path = folder.join(format!("shop-{at}.json"));
        std::fs::write(&path, export_of(shop, &logs).unwrap()).unwrap();
        path
    };
    shops.into_iter().enumerate().map(file).collect()
}

fn folder(name: &str) -> PathBuf {
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("warehouse-{name}"));
    let _ = std::fs::remove_dir_all(&path);
    std::fs::create_dir_all(&path).unwrap();
    path
}

/// What the command makes of the files of all shops.
fn lines(folder: &Path, arguments: &[&str]) {
    let made = Command::new(env!("CARGO_BIN_EXE_hubslate"))
        .arg("lines")
        .args(files(folder))
        .args(arguments)
        .current_dir(folder)
        .output()
        .unwrap();
    // The number that is missing is said, and is no fault of the files.
    assert!(made.status.success(), "{made:?}");
}

fn duckdb(folder: &Path) -> Value {
    let answers = python::run("warehouse/engines.py", &[Path::new("duckdb"), folder]);
    serde_json::from_str(&answers).unwrap()
}

/// The answers, worked out by hand.
fn by_hand() -> Value {
    let (one, two) = (id(1, 0), id(2, 0));
    json!([
        [
            [null, "open", "1"],
            [EAST, "declined", "1"],
            [EAST, "finished", "1"],
            [WEST, "finished", "1"]
        ],
        // 210.30 and 12.03, twice billed and once taken back; 222.33 less 100.00 came in.
        [
            [EAST, "USD", "21030", "1203", "22233", "12233", "10000"],
            [WEST, "EUR", "0", "0", "0", "100", "-100"]
        ],
        [["P-1", "L-1", "1", "1"], ["P-1", "L-2", "1", "0"]],
        [[two, one, "2026-02-17", "2026-02-27", "fitting"]],
        [
            [null, "alone", "1", "0", "0"],
            [EAST, "east-1", "1", "1", "1"],
            [EAST, "east-2", "1", "0", "0"],
            [WEST, "west-1", "1", "1", "0"]
        ],
        [],
        [[one, "2026-02-22"]],
        [["east-1", "4", "4"]],
    ])
}

#[test]
fn the_views_give_the_answers_worked_out_by_hand() {
    let here = folder("duckdb");
    lines(&here, &["-o", "entries.jsonl"]);
    assert_eq!(duckdb(&here), by_hand());
    // No entry is left out, whatever it says.
    let text = std::fs::read_to_string(here.join("entries.jsonl")).unwrap();
    assert_eq!(text.lines().count(), 10 + 5 + 9 + 1 + 2);
}

/// Typed columns in folders give the answers that lines give.
#[cfg(feature = "parquet")]
#[test]
fn parquet_gives_the_same_answers() {
    let here = folder("parquet");
    lines(&here, &["--parquet", "entries"]);
    assert!(!here.join("entries.jsonl").exists());
    assert!(
        here.join(format!("entries/shop={EAST}/month=2026-02/entries.parquet"))
            .is_file()
    );
    assert_eq!(duckdb(&here), by_hand());
    // What is there already is not written over.
    let again = Command::new(env!("CARGO_BIN_EXE_hubslate"))
        .arg("lines")
        .arg(here.join("shop-0.json"))
        .args(["--parquet", "entries"])
        .current_dir(&here)
        .output()
        .unwrap();
    assert_eq!(again.status.code(), Some(2));
    assert_eq!(duckdb(&here), by_hand());
}

/// Without them the command says how to come by them.
#[cfg(not(feature = "parquet"))]
#[test]
fn without_parquet_the_command_says_how_to_get_it() {
    let here = folder("no-parquet");
    let asked = Command::new(env!("CARGO_BIN_EXE_hubslate"))
        .args(["lines", "a.json", "--parquet", "entries"])
        .current_dir(&here)
        .output()
        .unwrap();
    assert_eq!(asked.status.code(), Some(2));
    let said = String::from_utf8_lossy(&asked.stderr);
    assert!(said.contains("--features parquet"), "{said}");
    assert!(!here.join("entries").exists());
}

/// The readings of the samples are known, and so is what was decided on them.
#[test]
fn the_samples_answer_too() {
    let here = folder("samples");
    let samples = Path::new(env!("CARGO_MANIFEST_DIR")).join("public/sample");
    let files = ["replaced-hub", "declined-stop", "nothing-wrong"];
    let made = Command::new(env!("CARGO_BIN_EXE_hubslate"))
        .arg("lines")
        .args(files.map(|name| samples.join(format!("{name}.json"))))
        .args(["-o", "entries.jsonl"])
        .current_dir(&here)
        .output()
        .unwrap();
    assert!(made.status.success(), "{made:?}");
    let answers = duckdb(&here);
    let endings = json!([
        [null, "declined", "1"],
        [null, "finished", "1"],
        [null, "nothing_wrong", "1"]
    ]);
    assert_eq!(answers[0], endings);
    // 6.3, 6.4 and 6.3 thousandths of an inch; a slip of 64 was taken back.
    let mean = (6.3 + 6.4 + 6.3) / 3.0 * 25.4;
    assert_eq!(answers[5][1], json!(["replace", "1", format!("{mean:.1}")]));
    // Five days after 17 and 24 February 2026; the car of the declined STOP must not be driven.
    let days: Vec<&Value> = answers[6]
        .as_array()
        .unwrap()
        .iter()
        .map(|row| &row[1])
        .collect();
    assert_eq!(days, ["2026-02-22", "2026-03-01"]);
}

#[test]
fn a_distributed_engine_gives_the_same_answers_to_the_same_text() {
    let Some(python) = std::env::var_os("HUBSLATE_SPARK") else {
        println!("not asked: HUBSLATE_SPARK names no Python with pyspark");
        return;
    };
    let here = folder("spark");
    lines(&here, &["-o", "entries.jsonl"]);
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/warehouse/engines.py");
    let asked = Command::new(python)
        .arg(script)
        .arg("spark")
        .arg(&here)
        .output()
        .unwrap();
    let said = String::from_utf8_lossy(&asked.stdout);
    assert!(
        asked.status.success(),
        "{said}{}",
        String::from_utf8_lossy(&asked.stderr)
    );
    let answers: Value = serde_json::from_str(said.lines().last().unwrap()).unwrap();
    assert_eq!(answers, by_hand());
    assert_eq!(answers, duckdb(&here));
}
