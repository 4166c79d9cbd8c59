//! Many jobs on a computer: what `lines` and `merge` take in memory does not follow what they read.
//! A hundred thousand, and the time, are `cargo bench --bench many`.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/many.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod many;
#[path = "support/python.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod python;

use std::path::Path;

/// Held whole, a file takes about seven times its size. Job by job it is 16 MB of entries that wait, one
/// slice, one job and the program.
const MOST: u64 = 64 << 20;

#[test]
fn memory_stays_the_same_however_long_the_file_is() {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("steady");
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    // More than waits at once, so that runs are put down on the disk.
    let file = folder.join("all.json");
    let size = many::write(&file, 170).unwrap();
    assert!(18_000_000 < size, "{size}");
    for (word, out) in [("lines", "all.jsonl"), ("merge", "whole.json")] {
        let command = Path::new(env!("CARGO_BIN_EXE_hubslate"));
        let out = folder.join(out);
        let arguments = [command, Path::new(word), &file, Path::new("-o"), &out];
        let said = python::run("peak.py", &arguments);
        let (peak, ending) = said.trim().split_once(' ').unwrap();
        assert_eq!(ending, "0", "{word}");
        let peak: u64 = peak.parse().unwrap();
        println!("{word}: {size} bytes read, {peak} bytes of memory at most");
        assert!(peak < MOST, "{word}: {peak}");
    }
    // One job after the other, in one order: joined, the file is the file that it was.
    let (before, after) = (
        std::fs::read(&file).unwrap(),
        std::fs::read(folder.join("whole.json")).unwrap(),
    );
    assert!(before == after);
    assert!(!folder.join("whole.json.runs").exists());
    std::fs::remove_dir_all(&folder).unwrap();
}
