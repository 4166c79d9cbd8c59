//! A hundred thousand jobs in one file (10.8 GB) through `lines` and `merge`: how much memory they take
//! at most, and how long. It needs three times the file on the disk.
//!
//! `HUBSLATE_JOBS` sets another number than 100,000.
#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

#[path = "../support/many.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod many;
#[path = "../support/python.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod python;

use std::path::Path;
use std::process::ExitCode;
use std::time::Instant;

/// What is promised, in bytes.
const MOST: u64 = 1_000_000_000;

fn main() -> ExitCode {
    let set = std::env::var("HUBSLATE_JOBS").ok();
    let jobs = set.and_then(|set| set.parse().ok()).unwrap_or(100_000);
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("steady-bench");
    std::fs::create_dir_all(&folder).unwrap();
    let file = folder.join("all.json");
    let size = many::write(&file, jobs).unwrap();
    let entries = jobs * many::ENTRIES;
    println!(
        "{jobs} jobs, {entries} entries, {:.0} MB in one file",
        size as f64 / 1e6
    );
    let mut well = true;
    for (word, out) in [("lines", "all.jsonl"), ("merge", "whole.json")] {
        let out = folder.join(out);
        let command = Path::new(env!("CARGO_BIN_EXE_hubslate"));
        let begin = Instant::now();
        let said = python::run(
            "peak.py",
            &[command, Path::new(word), &file, Path::new("-o"), &out],
        );
        let took = begin.elapsed().as_secs_f64();
        let (peak, ending) = said.trim().split_once(' ').unwrap();
        let peak: u64 = peak.parse().unwrap();
        let met = peak < MOST && ending == "0";
        well &= met;
        println!(
            "{word}: {took:.0} s, {:.1} MB/s, {:.0} MB of memory at most (goal {}: {})",
            size as f64 / 1e6 / took,
            peak as f64 / 1e6,
            MOST / 1_000_000,
            if met { "met" } else { "NOT MET" },
        );
        std::fs::remove_file(&out).unwrap();
    }
    std::fs::remove_dir_all(&folder).unwrap();
    if well {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    }
}
