//! Keeping a tap and reading it back, with a store that fails where it is told to.

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

use std::collections::BTreeSet;
use std::pin::pin;
use std::task::{Context, Poll, Waker};

use faulty::{Faulty, block_on};
use hubslate::exchange::digest;
use hubslate::exchange::wire::WireError;
use hubslate::job::entry::{Entry, EntryId, Event, HandedOver, Photo as Photograph};
use hubslate::job::fold;
use hubslate::job::photo::{photos, retaken};
use hubslate::platform::record::{Photo, Record, StoreError};
use hubslate::slate::{
    SaveError, Saved, compose, is_one_tap, keep, keep_bytes, log_id, read, records, sealed, undo,
};
use hubslate::trade::wheel_end::{ItemKind, ItemState, Start, Step, StepKey};
use record::{Job, Phone, item, log, moved, note, opened};

const FULL: StoreError = StoreError::Full;
const DENIED: StoreError = StoreError::Denied;

fn tap() -> Vec<Entry> {
    Phone::new("slate one", 7_000).tap(&[], vec![opened(Start::AtCar), note("x")])
}

#[test]
fn a_tap_in_the_journal_is_safe() {
    let store = Faulty::default();
    assert_eq!(block_on(keep(&store, &tap())), Ok(Saved::Safe));
    assert_eq!(store.in_journal(), records(&tap()).unwrap());
    assert_eq!(store.in_second(), records(&tap()).unwrap());
}

#[test]
fn a_tap_that_only_the_second_copy_took_is_not_yet_safe() {
    let store = Faulty::default();
    store.journal_fails(Some(FULL));
    assert_eq!(block_on(keep(&store, &tap())), Ok(Saved::NotYetSafe(FULL)));
    assert_eq!(store.in_second().len(), 2);
}

#[test]
fn a_tap_that_only_the_journal_took_is_safe() {
    let store = Faulty::default();
    store.second_fails(Some(FULL));
    assert_eq!(block_on(keep(&store, &tap())), Ok(Saved::Safe));
}

#[test]
fn a_tap_that_neither_took_is_not_saved() {
    let store = Faulty::default();
    store.journal_fails(Some(DENIED));
    store.second_fails(Some(FULL));
    store.backup_fails(Some(FULL));
    let outcome = block_on(keep(&store, &tap()));
    assert_eq!(outcome, Err(SaveError::Storage(DENIED)));
}

#[test]
fn a_tap_that_only_the_backup_journal_took_is_not_yet_safe() {
    let store = Faulty::default();
    store.journal_fails(Some(DENIED));
    store.second_fails(Some(FULL));
    let entries = tap();
    let outcome = block_on(keep(&store, &entries));
    assert_eq!(outcome, Ok(Saved::NotYetSafe(DENIED)));
    // It comes back from there, and into the journal as soon as that works.
    store.journal_fails(None);
    let read = block_on(read(&store, &entries[0].log.0)).unwrap();
    assert_eq!(read.entries, entries);
    assert_eq!(read.to_heal, records(&entries).unwrap());
}

#[test]
fn the_second_copy_is_written_in_the_same_tick_and_before_the_journal() {
    let store = Faulty::default();
    let entries = tap();
    let mut keeping = pin!(keep(&store, &entries));
    let mut context = Context::from_waker(Waker::noop());
    assert!(keeping.as_mut().poll(&mut context).is_pending());
    assert_eq!(store.calls(), ["second", "journal begins"]);
    assert_eq!(store.in_second().len(), 2);
    assert_eq!(store.in_journal(), []);
    // It reads as kept only after the backup journal has answered too.
    assert!(keeping.as_mut().poll(&mut context).is_pending());
    assert_eq!(store.calls().last(), Some(&"journal is durable"));
    assert_eq!(
        keeping.as_mut().poll(&mut context),
        Poll::Ready(Ok(Saved::Safe))
    );
}

#[test]
fn what_cannot_be_written_down_reaches_neither_place() {
    let store = Faulty::default();
    let mut entries = tap();
    entries[1].what = Event::Unknown("{ cut off".to_owned());
    let id = entries[1].id.0.clone();
    let outcome = block_on(keep(&store, &entries));
    assert_eq!(outcome, Err(SaveError::Wire(WireError::Malformed(id))));
    assert_eq!(store.calls(), Vec::<&str>::new());
}

#[test]
fn reading_joins_both_places_and_says_what_to_heal() {
    let store = Faulty::default();
    let entries = Phone::new("slate one", 7_000).tap(&[], vec![note("a"), note("b"), note("c")]);
    let saved = records(&entries).unwrap();
    store.put_journal(&saved[..2]);
    store.put_second(&saved[1..]);
    let read = block_on(read(&store, &log().0)).unwrap();
    assert_eq!(fold(read.entries.clone()), fold(entries));
    assert_eq!(read.entries.len(), 3, "the one in both places comes once");
    assert_eq!(read.to_heal, saved[2..]);
    assert_eq!(read.unreadable, []);
    for record in &saved {
        assert_eq!(
            read.texts.get(&record.id),
            Some(&record.text),
            "byte for byte"
        );
    }
}

#[test]
fn what_is_healed_once_needs_no_healing_again() {
    let store = Faulty::default();
    store.journal_fails(Some(FULL));
    block_on(keep(&store, &tap())).unwrap();
    store.journal_fails(None);
    let first = block_on(read(&store, &log().0)).unwrap();
    assert_eq!(first.to_heal, records(&tap()).unwrap());
    store.put_journal(&first.to_heal);
    let second = block_on(read(&store, &log().0)).unwrap();
    assert_eq!(second.to_heal, []);
    assert_eq!(second.entries, tap());
}

#[test]
fn another_log_is_not_read() {
    let store = Faulty::default();
    block_on(keep(&store, &tap())).unwrap();
    let read = block_on(read(&store, "another job")).unwrap();
    assert_eq!(read.entries, []);
}

fn broken(id: &str, text: &str) -> Record {
    Record {
        log: log().0,
        id: id.to_owned(),
        text: text.to_owned(),
    }
}

#[test]
fn what_cannot_be_read_is_set_aside_and_named_and_the_rest_is_read() {
    let store = Faulty::default();
    block_on(keep(&store, &tap())).unwrap();
    let cut = broken("cut", r#"{"v":1,"id":"cut","#);
    let foreign = broken("foreign", r#"{"hello":"there"}"#);
    store.put_journal(&[cut.clone(), foreign.clone()]);
    store.put_second(std::slice::from_ref(&cut));
    let read = block_on(read(&store, &log().0)).unwrap();
    assert_eq!(read.entries, tap());
    let mut named = read.unreadable.clone();
    named.sort_by(|a, b| a.0.cmp(&b.0));
    assert_eq!(
        named,
        [(cut, WireError::NotJson), (foreign, WireError::NotAnEntry)],
        "each once, though the second copy has one of them too"
    );
    assert_eq!(read.to_heal, []);
}

#[test]
fn what_the_journal_cannot_read_is_taken_from_the_second_copy_and_not_written_over() {
    let store = Faulty::default();
    block_on(keep(&store, &tap())).unwrap();
    let hurt = tap()[1].id.0.clone();
    let cut = broken(&hurt, "{");
    store.replace_in_journal(&cut);
    let read = block_on(read(&store, &log().0)).unwrap();
    assert_eq!(read.entries, tap());
    assert_eq!(read.unreadable, [(cut, WireError::NotJson)]);
    assert_eq!(read.to_heal, [], "the journal refuses another text for it");
}

#[test]
fn a_closed_journal_is_said_only_if_the_second_copy_has_nothing() {
    let store = Faulty::default();
    store.journal_fails(Some(DENIED));
    assert_eq!(block_on(read(&store, &log().0)), Err(DENIED));
    block_on(keep(&store, &tap())).unwrap();
    let read = block_on(read(&store, &log().0)).unwrap();
    assert_eq!(read.entries, tap());
    assert_eq!(read.to_heal, records(&tap()).unwrap());
}

#[test]
fn the_entries_of_a_tap_hang_on_the_heads_and_on_each_other() {
    let heads = [EntryId("one".to_owned()), EntryId("two".to_owned())];
    let phone = Phone::new("slate one", 7_000);
    let pen = phone.pen();
    let entries = compose(&log(), &heads, &pen, vec![note("a"), note("b"), note("c")]);
    assert_eq!(entries[0].after, heads);
    assert_eq!(entries[1].after, [entries[0].id.clone()]);
    assert_eq!(entries[2].after, [entries[1].id.clone()]);
    for (place, entry) in (0..).zip(&entries) {
        assert_eq!(entry.n, pen.n + place);
        assert_eq!((entry.at.utc_ms, entry.at.offset_min), (7_000, -300));
        assert_eq!((&entry.log, &entry.device), (&log(), &pen.device));
    }
}

#[test]
fn what_is_handed_over_is_all_before_it_with_what_the_tap_wrote_first() {
    let phone = Phone::new("slate one", 7_000);
    let over = Event::HandedOver(HandedOver::NOW);
    let whats = vec![note("proof"), over, note("end")];
    let new = compose(&log(), &[], &phone.pen(), whats);
    let recorded = sealed(&tap(), new.clone());
    let texts = |entries: &[Entry]| records(entries).unwrap().into_iter().map(|it| it.text);
    let seen = digest(texts(&tap()).chain(texts(&new[..1])));
    let expected = Event::HandedOver(HandedOver { digest: seen });
    assert_eq!(recorded[1].what, expected);
    assert_eq!([&recorded[0], &recorded[2]], [&new[0], &new[2]]);
    assert_eq!(recorded[1].id, new[1].id);
}

/// RFC 9562, section 5.7: 48 bits of Unix milliseconds, version 7, variant binary 10.
#[test]
fn ids_are_uuids_of_version_7_in_the_order_of_the_tap() {
    let mut phone = Phone::new("slate one", 0x0190_0000_0001);
    let mut ids = BTreeSet::new();
    for chance in [0, 0x55, 0xff] {
        let mut pen = phone.pen();
        pen.chance = [chance; 10];
        phone.clock += 1;
        let whats = (0..600).map(|_| note("x")).collect();
        let tap = compose(&log(), &[], &pen, whats);
        assert!(tap.is_sorted_by(|a, b| a.id < b.id), "chance {chance:#x}");
        for entry in tap {
            let id = entry.id.0.clone();
            let clock = id[..13].replace('-', "");
            assert_eq!(i64::from_str_radix(&clock, 16), Ok(pen.utc_ms));
            assert_eq!(&id[14..15], "7");
            assert!("89ab".contains(&id[19..20]), "{id}");
            assert!(ids.insert(id));
        }
        assert!(ids.insert(log_id(&pen).0), "a log is no entry");
    }
}

fn picture() -> Photo {
    Photo {
        mime: "image/jpeg".to_owned(),
        bytes: b"abc".to_vec(),
    }
}

#[test]
fn bytes_are_saved_under_their_digest_before_an_entry_can_name_them() {
    let store = Faulty::default();
    let sha256 = block_on(keep_bytes(&store, picture())).unwrap();
    // FIPS 180-2, appendix B.1.
    let published = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    assert_eq!(sha256, published);
    assert_eq!(store.bytes(published), Some(picture()));
    assert_eq!(store.calls(), ["bytes begin", "bytes are durable"]);
}

#[test]
fn where_there_is_no_room_for_bytes_there_is_no_entry_and_nothing_else_is_lost() {
    let store = Faulty::default();
    block_on(keep(&store, &tap())).unwrap();
    store.bytes_fail(Some(FULL));
    let saved = block_on(keep_bytes(&store, picture()));
    assert_eq!(saved, Err(FULL), "no digest, so no entry can be made");
    assert_eq!(store.in_journal(), records(&tap()).unwrap());
    assert_eq!(store.in_second(), records(&tap()).unwrap());
    // Taps, which are small, are kept on; and the picture once there is room.
    let phone = Phone::new("slate one", 9_000);
    assert_eq!(
        block_on(keep(&store, &phone.clone().tap(&[], vec![note("y")]))),
        Ok(Saved::Safe)
    );
    store.bytes_fail(None);
    assert!(block_on(keep_bytes(&store, picture())).is_ok());
}

#[test]
fn undo_of_a_second_photo_brings_the_first_back() {
    let shot = |sha256: &str| Photograph {
        step: StepKey::at(Step::StandPhoto, record::HERE),
        sha256: sha256.to_owned(),
        mime: "image/jpeg".to_owned(),
        width: 4,
        height: 3,
    };
    let there = |job: &Job| -> Vec<String> {
        let sheet = job.sheet();
        let all = photos(&sheet).map(|(_, photo)| photo.sha256.clone());
        all.collect()
    };
    let mut job = Job::opened();
    let first = job.tap(vec![Event::Photo(shot("a"))]);
    job.tap(retaken(&job.sheet(), &first[0], shot("b")));
    assert_eq!(there(&job), ["b"]);
    undone(&mut job);
    assert_eq!(there(&job), ["a"]);
    undone(&mut job);
    assert_eq!(there(&job), Vec::<String>::new());
}

fn pins(to: ItemState) -> Event {
    moved(Step::CaliperUp, vec![item(ItemKind::CaliperPins, 1)], to)
}

/// What an undo on this phone would strike.
fn struck(job: &Job) -> Option<Vec<EntryId>> {
    match undo(&job.sheet(), job.phone.device) {
        None => None,
        Some(Event::Strike(ids)) => Some(ids),
        Some(other) => panic!("{other:?} is no strike"),
    }
}

/// Undoes once; the clock does not move.
fn undone(job: &mut Job) {
    let strike = undo(&job.sheet(), job.phone.device).unwrap();
    job.tap(vec![strike]);
}

#[test]
fn undo_strikes_every_entry_of_the_last_tap_and_no_other() {
    let mut job = Job::opened();
    job.tap(vec![note("before"), pins(ItemState::Snug)]);
    let last = job.tap(vec![note("a"), pins(ItemState::Off), note("b")]);
    assert_eq!(struck(&job), Some(last));
}

#[test]
fn undo_twice_goes_one_tap_further_back() {
    let mut job = Job::opened();
    let first = job.tap(vec![note("a"), note("b")]);
    job.tap(vec![note("c")]);
    undone(&mut job);
    assert_eq!(struck(&job), Some(first));
    undone(&mut job);
    assert_eq!(struck(&job), None, "only the opening is left");
}

#[test]
fn undo_goes_back_tap_by_tap_under_a_clock_that_stands_still() {
    let mut job = Job::opened();
    let still = job.phone.clock - 1_000;
    let mut taps = Vec::new();
    for text in ["a", "b", "c"] {
        job.phone.clock = still;
        taps.push(job.tap(vec![note(text), note(text)]));
    }
    while let Some(expected) = taps.pop() {
        assert_eq!(struck(&job), Some(expected));
        job.phone.clock = still;
        undone(&mut job);
    }
    assert_eq!(struck(&job), None);
}

#[test]
fn undo_never_takes_the_opening_back() {
    assert_eq!(struck(&Job::opened()), None);
    let mut job = Job::opened();
    job.entries.clear();
    job.tap(vec![opened(Start::AtHome), note("the first tap says more")]);
    assert_eq!(struck(&job), None);
    assert_eq!(job.sheet().counting().count(), 2);
}

#[test]
fn undo_leaves_what_another_phone_did() {
    let mut job = Job::opened();
    let mine = job.tap(vec![note("mine")]);
    let mut other = job.on("slate two", job.phone.clock);
    let theirs = other.tap(vec![note("theirs")]);
    job.take(&other);
    assert_eq!(struck(&job), Some(mine));
    other.take(&job);
    assert_eq!(struck(&other), Some(theirs));
}

#[test]
fn what_was_done_after_an_undo_is_undone_first() {
    let mut job = Job::opened();
    let first = job.tap(vec![note("a")]);
    job.tap(vec![note("b")]);
    undone(&mut job);
    let third = job.tap(vec![note("c")]);
    assert_eq!(struck(&job), Some(third));
    undone(&mut job);
    assert_eq!(struck(&job), Some(first));
}

#[test]
fn the_entries_of_one_tap_are_known_by_their_ids() {
    let (one, two) = (
        tap(),
        Phone::new("slate two", 8_000).tap(&[], vec![note("y")]),
    );
    let ids = |entries: &[Entry]| -> Vec<String> {
        entries.iter().map(|entry| entry.id.0.clone()).collect()
    };
    let is_one = |ids: &[String]| is_one_tap(ids.iter().map(String::as_str));
    assert!(is_one(&[]));
    assert!(is_one(&ids(&one)));
    assert!(!is_one(&[ids(&one), ids(&two)].concat()));
}
