//! The files of many phones joined natively, in MB a second; no browser is needed.
//!
//! `HUBSLATE_JOBS` sets another number than 10,000.
#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

use std::path::Path;
use std::time::Instant;

use hubslate::exchange::gather::Gathered;
use hubslate::exchange::wire::{decode, encode};
use hubslate::exchange::{LogKind, export, read};
use hubslate::job::entry::{Entry, EntryId, Event, LogId};

const ENTRIES: usize = 300;

/// How many jobs are brought in.
fn jobs() -> usize {
    let set = std::env::var("HUBSLATE_JOBS").ok();
    set.and_then(|set| set.parse().ok()).unwrap_or(10_000)
}

/// Reads every file and joins them all; the files are made a hundred at a time, out of the clock.
fn main() {
    let entries = template();
    let (mut all, mut bytes, mut took) =
        (Gathered::beside(&std::env::temp_dir().join("join")), 0, 0.0);
    let jobs = jobs();
    for first in (0..jobs).step_by(100) {
        let files: Vec<String> = (first..jobs.min(first + 100))
            .map(|number| file(&entries, number))
            .collect();
        let begin = Instant::now();
        for text in &files {
            bytes += text.len();
            all.take(&read(text).unwrap()).unwrap();
        }
        took += begin.elapsed().as_secs_f64();
    }
    let begin = Instant::now();
    let (mut logs, mut joined) = (all.logs().unwrap(), 0);
    while let Some(log) = logs.next_log().unwrap() {
        assert_eq!(log.union().records.len(), ENTRIES);
        joined += 1;
    }
    took += begin.elapsed().as_secs_f64();
    assert_eq!(joined, jobs);
    let size = bytes as f64 / 1e6;
    println!(
        "native: {jobs} files of {ENTRIES} entries, {size:.0} MB, read with their digests and joined in {took:.1} s: {:.1} MB/s",
        size / took
    );
}

/// The entries of the replaced hub with as many notes as make up three hundred.
fn template() -> Vec<Entry> {
    let sample = Path::new(env!("CARGO_MANIFEST_DIR")).join("public/sample/replaced-hub.json");
    let text = std::fs::read_to_string(sample).unwrap();
    let log = read(&text).unwrap().logs.remove(0);
    let texts = log.records.iter().map(|record| record.text.as_str());
    let mut entries: Vec<Entry> = texts.map(|text| decode(text).unwrap()).collect();
    while entries.len() < ENTRIES {
        let (place, last) = (entries.len(), entries.last().unwrap().clone());
        entries.push(Entry {
            id: EntryId(format!("ffffffff-0000-7000-8000-{place:012x}")),
            n: last.n + 1,
            after: vec![last.id],
            what: Event::Note(
                None,
                format!("What a technician says of this corner, note {place}."),
            ),
            ..entries[0].clone()
        });
    }
    entries
}

/// The same job under another identity, as an export gives it.
fn file(entries: &[Entry], number: usize) -> String {
    let renew = |id: &str| match id.starts_with('f') {
        true => format!("f{number:07x}{}", &id[8..]),
        false => format!("{number:08x}{}", &id[8..]),
    };
    let log = LogId(renew(&entries[0].log.0));
    let texts = entries.iter().map(|entry| {
        let after = entry.after.iter().map(|id| EntryId(renew(&id.0)));
        encode(&Entry {
            id: EntryId(renew(&entry.id.0)),
            log: log.clone(),
            after: after.collect(),
            ..entry.clone()
        })
        .unwrap()
    });
    export(&[(LogKind::Job, log.clone(), texts.collect())]).unwrap()
}
