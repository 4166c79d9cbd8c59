//! Files that something has bitten: none makes the reader panic, and none that it takes holds
//! anything else than the whole file did.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/random_jobs.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod random_jobs;

use std::collections::BTreeSet;
use std::path::Path;

use hubslate::exchange::verify::verify;
use hubslate::exchange::{EntryError, ImportError, LogKind, SavedText, export, read};
use hubslate::job::entry::LogId;
use random_jobs::Chance;

const MUTATIONS: usize = 100_000;
/// Every so many of them are also looked at by `verify`, which goes on where `read` stops.
const VERIFIED: usize = 20;

/// The first entries of the fixture, among them an erased one: 100 000 whole files would take
/// minutes.
fn short() -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/fixtures/job-1.json");
    let mut logs = read(&std::fs::read_to_string(path).unwrap()).unwrap().logs;
    let log = logs.remove(0);
    let texts = log.records.into_iter().take(3).map(|record| record.text);
    let book = (LogKind::VanKit, LogId("kit:van".to_owned()), Vec::new());
    export(&[(log.kind, log.id, texts.collect()), book]).unwrap()
}

/// One bite: a byte changed, a piece lost, doubled, or moved, or a word put in.
fn bitten(text: &[u8], chance: &mut Chance) -> Vec<u8> {
    let mut bytes = text.to_vec();
    let place =
        |chance: &mut Chance, end: usize| usize::try_from(chance.below(end as u64)).unwrap();
    let from = place(chance, bytes.len());
    let to = (from + 1 + place(chance, 40)).min(bytes.len());
    match chance.below(6) {
        0 => bytes[from] = u8::try_from(chance.below(256)).unwrap(),
        1 => bytes[from] ^= 1 << chance.below(7),
        2 => drop(bytes.drain(from..to)),
        3 => {
            let piece = bytes[from..to].to_vec();
            bytes.splice(from..from, piece);
        }
        4 => {
            let piece: Vec<u8> = bytes.drain(from..to).collect();
            let there = place(chance, bytes.len());
            bytes.splice(there..there, piece);
        }
        _ => {
            let words: [&[u8]; 10] = [
                b"null",
                b"{}",
                b"[]",
                b"-1",
                b"1e999",
                b"\"\"",
                b"\\u0000",
                b"{\"a\":",
                b"999999999999999999999",
                b"\xff",
            ];
            let word = chance.of(&words);
            bytes.splice(from..to, word.iter().copied());
        }
    }
    bytes
}

fn records(text: &str) -> BTreeSet<SavedText> {
    let logs = read(text).unwrap().logs;
    logs.into_iter().flat_map(|log| log.records).collect()
}

/// What came of many bites.
#[derive(Default)]
struct Tally {
    taken: usize,
    refusals: BTreeSet<&'static str>,
}

fn bite(whole: &str, seed: u64, bites: usize) -> Tally {
    let good = records(whole);
    let mut chance = Chance(seed);
    let mut tally = Tally::default();
    for bite in 0..bites {
        let mut bytes = bitten(whole.as_bytes(), &mut chance);
        if chance.often(30) {
            bytes = bitten(&bytes, &mut chance);
        }
        // A file that is no text is refused before it is read.
        let Ok(text) = String::from_utf8(bytes) else {
            continue;
        };
        match read(&text) {
            Ok(incoming) => {
                tally.taken += 1;
                for log in incoming.logs {
                    assert_eq!(log.unreadable, [], "{text}");
                    for record in &log.records {
                        assert!(
                            good.contains(record) || is_uncovered(record, &text),
                            "{text}"
                        );
                    }
                }
            }
            Err(error) => drop(tally.refusals.insert(name(&error))),
        }
        if bite % VERIFIED == 0 {
            let _ = verify(&text);
        }
    }
    tally
}

#[test]
fn no_bite_makes_the_reader_panic_or_take_something_else() {
    let file = short();
    let whole = file.as_str();
    let halves: Vec<Tally> = std::thread::scope(|scope| {
        let halves = [1, 2].map(|seed| scope.spawn(move || bite(whole, seed, MUTATIONS / 2)));
        halves
            .into_iter()
            .map(|half| half.join().unwrap())
            .collect()
    });
    // Bites between the values do no harm; most do, in every way that needs no digest to fit.
    let taken: usize = halves.iter().map(|half| half.taken).sum();
    assert!(1_000 < taken && taken < MUTATIONS / 2, "{taken} taken");
    let refusals: BTreeSet<&str> = halves.into_iter().flat_map(|half| half.refusals).collect();
    for wanted in [
        "bad log", "cut off", "damaged", "edited", "newer", "not ours",
    ] {
        assert!(refusals.contains(wanted), "{wanted}: {refusals:?}");
    }
}

/// What stands around an erased body is covered by the canonical digest alone, and a bite may take
/// that from the file, which then looks like one of the first.
fn is_uncovered(record: &SavedText, text: &str) -> bool {
    record.text.contains("{\"erased\":") && text.matches("\"canonical\"").count() < 2
}

const fn name(error: &ImportError) -> &'static str {
    match error {
        ImportError::NotOurs => "not ours",
        ImportError::Newer { .. } => "newer",
        ImportError::CutOff => "cut off",
        ImportError::Damaged { .. } => "damaged",
        ImportError::BadLog { .. } => "bad log",
        ImportError::Edited { .. } => "edited",
        ImportError::Tangled { .. } => "tangled",
        ImportError::Conflict { .. } => "conflict",
        ImportError::CalledOff => "called off",
        ImportError::BadEntry { fault, .. } => match fault {
            EntryError::NotAnEntry => "no entry",
            EntryError::BadId => "bad id",
            EntryError::OtherLog => "other log",
            EntryError::Twice => "twice",
            EntryError::OtherKind => "other kind",
        },
    }
}
