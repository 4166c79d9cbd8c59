//! Logs far longer than work on one car makes them: the phone stays usable, and long reading can be
//! called off.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/faulty.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod faulty;
#[path = "support/record.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod record;

use std::cell::{Cell, RefCell};

use faulty::{Faulty, block_on};
use hubslate::exchange::find::Finder;
use hubslate::exchange::import::MAX_JOINS;
use hubslate::exchange::pieces::{CalledOff, Waits};
use hubslate::exchange::summary::Summary;
use hubslate::exchange::{
    ExportError, ImportError, LogKind, export, export_in_pieces, read as read_file, read_in_pieces,
};
use hubslate::job::entry::{Entry, EntryId, LogId};
use hubslate::slate::{MOST_ENTRIES, read, read_all, records};
use record::{Phone, log, note};

const JOB: &str = "019c6c21-0e76-762b-b33a-000000000000";

/// An entry of its own phone, after these.
fn entry(n: usize, after: Vec<EntryId>) -> Entry {
    let mut phone = Phone::new("slate one", 7_000);
    phone.n = n as u64;
    let mut made = phone.tap(&[], vec![note("x")]).remove(0);
    made.id = EntryId(format!("019c6c21-0e76-762b-b33a-{n:012x}"));
    made.after = after;
    made
}

/// Entries each of which saw the one before it.
fn line(n: usize) -> Vec<Entry> {
    let mut all: Vec<Entry> = Vec::with_capacity(n);
    for at in 0..n {
        let last = all.last().map(|entry| entry.id.clone());
        all.push(entry(at, last.into_iter().collect()));
    }
    all
}

fn stored(entries: &[Entry]) -> Faulty {
    let store = Faulty::default();
    store.put_journal(&records(entries).unwrap());
    store
}

fn file(entries: &[Entry]) -> String {
    let mut entries = entries.to_vec();
    for entry in &mut entries {
        entry.log = LogId(JOB.to_owned());
    }
    let texts = records(&entries).unwrap().into_iter().map(|it| it.text);
    export(&[(LogKind::Job, LogId(JOB.to_owned()), texts.collect())]).unwrap()
}

#[test]
fn a_log_of_more_entries_than_the_limit_is_read_only_where_somebody_asks() {
    let all = line(MOST_ENTRIES + 1);
    let fits = block_on(read(&stored(&all[..MOST_ENTRIES]), &log().0)).unwrap();
    assert_eq!((fits.entries.len(), fits.too_long), (MOST_ENTRIES, None));

    let store = stored(&all);
    let unread = block_on(read(&store, &log().0)).unwrap();
    assert_eq!(unread.too_long, Some(MOST_ENTRIES + 1));
    assert!(unread.entries.is_empty());
    // Its file can be made all the same.
    assert_eq!(unread.texts.len(), MOST_ENTRIES + 1);

    let whole = block_on(read_all(&store, &log().0)).unwrap();
    assert_eq!((whole.entries.len(), whole.too_long), (all.len(), None));
    assert_eq!(whole.texts, unread.texts);
}

/// Phones that never met, one entry that saw them all, and entries beside one another that saw it:
/// few entries, and the square of their number in joins.
#[test]
fn a_tangled_log_is_read_only_where_somebody_asks() {
    let phones = 3_200;
    let mut all: Vec<Entry> = (0..phones)
        .map(|at| Entry {
            device: format!("phone {at}"),
            ..entry(at, Vec::new())
        })
        .collect();
    let seen = all.iter().map(|entry| entry.id.clone()).collect();
    all.push(entry(phones, seen));
    let joint = all[phones].id.clone();
    let teeth = 2 + MAX_JOINS / phones;
    all.extend((1..=teeth).map(|tooth| Entry {
        device: format!("tooth {tooth}"),
        ..entry(phones + tooth, vec![joint.clone()])
    }));
    assert!(all.len() < MOST_ENTRIES);
    let unread = block_on(read(&stored(&all), &log().0)).unwrap();
    assert_eq!(unread.too_long, Some(all.len()));
    assert!(unread.entries.is_empty());
    assert_eq!(unread.texts.len(), all.len());
}

/// Nothing of what was not read reads as safe.
#[test]
fn the_line_of_a_job_that_was_not_read_is_open_and_incomplete() {
    let line = Summary::unread(&log(), 100_000);
    assert!(line.incomplete && line.is_open());
    assert_eq!(line.too_long, 100_000);
    assert_eq!(Summary::from_text(&line.to_text()), Some(line.clone()));
    // Whoever looks for another car may look for this one.
    let finder = Finder::of(&[line]);
    assert_eq!(finder.find("PRC 001").collect::<Vec<_>>(), [0]);
}

/// Calls the work off at one of the moments at which it is asked.
#[derive(Default)]
struct Stops {
    at: usize,
    asked: Cell<usize>,
    recorded: RefCell<Vec<(usize, usize)>>,
}

impl Stops {
    fn at(at: usize) -> Self {
        Self {
            at,
            ..Self::default()
        }
    }
}

impl Waits for Stops {
    async fn between(&self, done: usize, all: usize) -> Result<(), CalledOff> {
        self.asked.set(self.asked.get() + 1);
        self.recorded.borrow_mut().push((done, all));
        match self.asked.get() == self.at {
            true => Err(CalledOff),
            false => Ok(()),
        }
    }
}

#[test]
fn a_long_file_can_be_called_off_at_each_of_its_pieces() {
    let text = file(&line(1_000));
    let never = Stops::at(usize::MAX);
    let whole = block_on(read_in_pieces(&text, &never));
    assert_eq!(whole, read_file(&text));
    let recorded = never.recorded.take();
    // It comes forward and ends where all is done.
    assert!(recorded.len() >= 10, "{recorded:?}");
    assert!(recorded.windows(2).all(|pair| pair[0].0 < pair[1].0));
    assert_eq!(recorded.last(), Some(&(2_000, 2_000)));
    for at in 1..=recorded.len() {
        let called_off = block_on(read_in_pieces(&text, &Stops::at(at)));
        assert_eq!(called_off, Err(ImportError::CalledOff), "at {at}");
    }
}

#[test]
fn a_file_that_is_made_can_be_called_off_at_each_of_its_pieces() {
    let logs: Vec<_> = (1..=5)
        .map(|n| {
            let texts = records(&line(150)).unwrap().into_iter().map(|it| it.text);
            (LogKind::Job, LogId(format!("job {n}")), texts.collect())
        })
        .collect();
    let never = Stops::at(usize::MAX);
    assert_eq!(
        block_on(export_in_pieces(None, &logs, &never)),
        export(&logs)
    );
    let recorded = never.recorded.take();
    assert_eq!(recorded.last(), Some(&(700, 750)));
    for at in 1..=recorded.len() {
        let made = block_on(export_in_pieces(None, &logs, &Stops::at(at)));
        assert_eq!(made, Err(ExportError::CalledOff), "at {at}");
    }
}
