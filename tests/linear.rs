//! Ten times the input takes about ten times as long, whoever made the file: nothing that comes in
//! from outside holds a phone up for the square of its length.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "linear/money.rs"]
mod money;

#[path = "support/each.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod each;
#[path = "support/every.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod every;
#[path = "support/parts.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod parts;

use std::hint::black_box;
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant};

use hubslate::exchange::bundle::{self, BundleError, Wanted};
use hubslate::exchange::confirmation::{Lines, held_in, is_named, not_held};
use hubslate::exchange::day::{Vehicles, logs_of_day, may_let_go};
use hubslate::exchange::gaps::{Run, gaps, runs};
use hubslate::exchange::import::MAX_JOINS;
use hubslate::exchange::summary::Summary;
use hubslate::exchange::verify::{Finding, MAX_AGAIN, Remark, verify};
use hubslate::exchange::wire::encode;
use hubslate::exchange::{ImportError, LogKind, Rescue, SavedText, export, read, sha256_hex};
use hubslate::job::entry::{Entry, EntryId, Event, Held, LogId, PersonField};
use hubslate::job::reason::RULES_VERSION;
use hubslate::job::{JobState, fold, is_tangled};
use hubslate::report::{Reader, Report};
use hubslate::text::Lang;
use hubslate::trade::vehicle::read_booking;
use hubslate::trade::wheel_end::{Step, StepKey};
use hubslate::units::{DecimalMark, Format, System};

use each::LOG;

/// One test at a time, so that none is held up by another.
static ALONE: Mutex<()> = Mutex::new(());

fn alone() -> MutexGuard<'static, ()> {
    ALONE.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Holds `work` on an input of `n` against that on ten times as much: linear gives a ratio of about
/// 10, more for the caches, and the square 100. Of three runs the least counts; where other work
/// kept the machine busy there are up to nine more.
#[track_caller]
fn grows<T, R>(n: usize, input: impl Fn(usize) -> T, work: impl Fn(T) -> R) {
    let alone = alone();
    let time = |n| {
        let input = input(n);
        let begin = Instant::now();
        let done = work(black_box(input));
        let taken = begin.elapsed();
        drop(black_box(done));
        taken
    };
    let (mut one, mut ten) = (Duration::MAX, Duration::MAX);
    for round in 0..12 {
        one = one.min(time(n));
        ten = ten.min(time(10 * n));
        if round >= 2 && ten < 25 * one {
            break;
        }
    }
    drop(alone);
    println!("{n}: {one:?}, {}: {ten:?}", 10 * n);
    assert!(one > Duration::from_micros(500), "{one:?} is noise");
    assert!(ten < 25 * one, "{one:?} became {ten:?}");
}

fn id(n: usize) -> String {
    format!("019c6c21-0e76-762b-b33a-{n:012x}")
}

/// An entry that had seen those at these places.
fn made(n: usize, after: &[usize], what: Event) -> Entry {
    let after: Vec<String> = after.iter().copied().map(id).collect();
    let after: Vec<&str> = after.iter().map(String::as_str).collect();
    let mut made = every::entry(LOG, &id(n), &after, what);
    made.n = u64::try_from(n).unwrap();
    made
}

fn note(n: usize) -> Event {
    Event::Note(None, format!("note {n}"))
}

fn named(n: usize) -> Event {
    Event::Person(PersonField::Name, format!("name {n}"))
}

fn fold_all(entries: Vec<Entry>) -> JobState {
    fold(entries)
}

/// Two entries that saw each other, and a long line behind them.
#[test]
fn a_circle_with_a_long_tail() {
    let tail = |n| {
        let after = |at: usize| if at == 0 { vec![1] } else { vec![at - 1] };
        (0..n).map(|at| made(at, &after(at), note(at))).collect()
    };
    grows(2_000, tail, fold_all);
}

#[test]
fn a_line_of_one_phone() {
    let line = |n| {
        let after = |at: usize| at.checked_sub(1).into_iter().collect::<Vec<_>>();
        (0..n).map(|at| made(at, &after(at), named(at))).collect()
    };
    grows(2_000, line, fold_all);
}

/// Three phones: each entry saw the one before it of its own phone and of the next.
#[test]
fn three_phones_that_meet_all_the_time() {
    let meeting = |n| {
        let one = |at: usize| {
            let after: Vec<usize> = [3, 2].iter().filter_map(|b| at.checked_sub(*b)).collect();
            let mut made = made(at, &after, named(at));
            made.device = format!("van-{}", at % 3);
            made
        };
        (0..n).map(one).collect()
    };
    grows(3_000, meeting, fold_all);
}

/// As many phones as entries, all of which name the customer and know of nobody.
#[test]
fn phones_that_never_met() {
    let apart = |n| (0..n).map(|at| made(at, &[], named(at))).collect();
    grows(2_000, apart, fold_all);
}

/// A third are phones apart, a third a line that saw them all, a third phones that it never saw:
/// each entry of the line states what the last third states.
#[test]
fn a_line_beside_phones_that_never_met() {
    let beside = |n| {
        let third = n / 3;
        let mut all: Vec<Entry> = (0..2 * third).map(|at| made(at, &[], named(at))).collect();
        let seen: Vec<usize> = (0..third).collect();
        all.push(made(2 * third, &seen, named(0)));
        all.extend((2 * third + 1..n).map(|at| made(at, &[at - 1], named(at))));
        all
    };
    grows(3_000, beside, fold_all);
}

/// One id with a text of its own each time.
#[test]
fn one_entry_in_very_many_forms() {
    let forms = |n| (0..n).map(|at| made(0, &[], note(at))).collect();
    grows(3_000, forms, fold_all);
}

/// Phones that never met, one entry that saw them all, and entries beside one another that saw it:
/// all but the first of them join every line again.
fn comb(phones: usize, teeth: usize) -> Vec<Entry> {
    let mut all: Vec<Entry> = (0..phones).map(|at| made(at, &[], note(at))).collect();
    let seen: Vec<usize> = (0..phones).collect();
    all.push(made(phones, &seen, note(phones)));
    let teeth = phones + 1..=phones + teeth;
    all.extend(teeth.map(|at| made(at, &[phones], note(at))));
    all
}

/// Half of the entries are in both places.
#[test]
fn a_long_rescue_file() {
    let file = |n| {
        let record = |at: usize| {
            let after: Vec<usize> = at.checked_sub(1).into_iter().collect();
            (id(at), encode(&made(at, &after, note(at))).unwrap())
        };
        let records: Vec<(String, String)> = (0..n).map(record).collect();
        let entry = |(id, text)| serde_json::json!({ "log": LOG, "id": id, "text": text });
        let second = |tap: &[(String, String)]| {
            let key = format!("hubslate:entry:{LOG}:{}", tap[0].0);
            (key, serde_json::to_string(tap).unwrap().into())
        };
        let local: serde_json::Map<_, _> = records[n / 2..].chunks(3).map(second).collect();
        let entries: Vec<_> = records.into_iter().map(entry).collect();
        let saved = serde_json::json!({
            "format": "hubslate-rescue", "version": 1, "entries": entries, "local": local,
        });
        (saved.to_string(), n)
    };
    grows(1_000, file, |(text, n): (String, usize)| {
        let came = read(&text).unwrap();
        assert_eq!(came.logs[0].records.len(), n);
        assert_eq!(came.rescue, Some(Rescue::default()));
        came
    });
    // As many texts that cannot be read.
    let broken = |n| {
        let entry = |at| serde_json::json!({ "log": LOG, "id": id(at), "text": "{" });
        let entries: Vec<_> = (0..n).map(entry).collect();
        let saved = serde_json::json!({
            "format": "hubslate-rescue", "version": 1, "entries": entries,
        });
        (saved.to_string(), n)
    };
    grows(10_000, broken, |(text, n): (String, usize)| {
        let came = verify(&text).unwrap();
        assert_eq!(came[0].findings.len(), n);
        came
    });
}

/// What takes the square of the length of a file is refused before it is folded.
#[test]
fn a_tangled_file_is_refused_at_the_limit() {
    let _alone = alone();
    let phones = 3_200;
    let teeth = 1 + (MAX_JOINS - phones) / (phones + 1);
    let all = comb(phones, teeth + 1);
    let (last, allowed) = all.split_last().unwrap();
    assert!(!is_tangled(allowed, MAX_JOINS), "{}", last.id.0);
    let texts = all.iter().map(|entry| encode(entry).unwrap()).collect();
    let log = LogId(LOG.to_owned());
    let text = export(&[(LogKind::Job, log.clone(), texts)]).unwrap();
    let tangled = ImportError::Tangled { log };
    assert_eq!(read(&text).unwrap_err(), tangled);
    assert_eq!(verify(&text).unwrap_err(), tangled);
}

/// Figures, labels, fillers and names for which each rule looks about.
#[test]
fn a_long_booking_message() {
    let words = [
        "Alder Lane 12, ",
        "is number 12 ",
        "my phone number ",
        "from Ida, ",
        "12 Elm 12 Oak Road. ",
        "plate is is ",
        "AB 12\n",
        "i am at ",
    ];
    for said in words {
        grows(200, |n| said.repeat(n), |text| read_booking(&text));
    }
}

/// A log of one device, and confirmations for each of its entries that have the right count only.
#[test]
fn confirmations_for_other_contents() {
    let log = LogId(LOG.to_owned());
    let input = |n| {
        let text = |at| encode(&made(at, &[], note(at))).unwrap();
        let saved = |at| SavedText {
            log: LOG.to_owned(),
            id: id(at),
            text: text(at),
        };
        let line = |at| Held {
            log: log.clone(),
            device: "van-2".to_owned(),
            through: u64::try_from(at).unwrap(),
            count: u64::try_from(at + 1).unwrap(),
            digest: String::new(),
        };
        let saved: Vec<SavedText> = (0..n).map(saved).collect();
        (saved, (0..n).map(line).collect::<Vec<Held>>())
    };
    let all_open = |(saved, lines): (Vec<SavedText>, Vec<Held>)| {
        let lines: Lines = lines.into_iter().collect();
        assert_eq!(not_held(LOG, &saved, &lines).len(), saved.len());
        (saved, lines)
    };
    grows(200, input, all_open);
}

/// As many devices as entries, and as many jobs as lines.
#[test]
fn confirmations_of_many_devices_and_jobs() {
    let device = |at: usize| format!("van-{at}");
    let entries = |n| {
        let by = |at| {
            let mut entry = made(at, &[], note(at));
            entry.device = device(at);
            entry
        };
        (0..n).map(by).collect::<Vec<Entry>>()
    };
    let input = |n| {
        let saved = |entry: &Entry| SavedText {
            log: LOG.to_owned(),
            id: entry.id.0.clone(),
            text: encode(entry).unwrap(),
        };
        let entries = entries(n);
        (entries.iter().map(saved).collect::<Vec<_>>(), entries)
    };
    let all_held = |(saved, entries): (Vec<SavedText>, Vec<Entry>)| {
        let log = LogId(LOG.to_owned());
        let lines: Lines = held_in(&log, &saved).into_iter().collect();
        assert!(not_held(LOG, &saved, &lines).is_empty());
        assert!(is_named(LOG, &runs(&entries), &lines));
        assert_eq!(gaps(&runs(&entries)), []);
        (saved, lines)
    };
    grows(200, input, all_held);
    let jobs = |n| {
        let line = |at| Held {
            log: LogId(id(at)),
            device: device(at),
            through: 1,
            count: 1,
            digest: String::new(),
        };
        (0..n).map(line).collect::<Vec<Held>>()
    };
    let each_named = |held: Vec<Held>| {
        let lines: Lines = held.iter().cloned().collect();
        for line in &held {
            let run = Run {
                device: line.device.clone(),
                from: 1,
                to: 1,
                count: 1,
                by: String::new(),
            };
            assert!(is_named(&line.log.0, &[run], &lines));
        }
        lines
    };
    grows(5_000, jobs, each_named);
}

/// Every job of a shop is asked whether its vehicle is on the road again.
#[test]
fn the_days_of_many_jobs() {
    let jobs = |n| {
        let job = |at| {
            let entry = made(
                at,
                &[],
                Event::Person(PersonField::Plate, format!("P {at}")),
            );
            let mut job = Summary::of(&LogId(id(at)), &fold([entry]), &[], None);
            if at % 2 == 0 {
                job.ending = "finished".to_owned();
            }
            job
        };
        (0..n).map(job).collect::<Vec<Summary>>()
    };
    grows(1_200, jobs, |jobs: Vec<Summary>| {
        let chosen: Vec<String> = jobs.iter().map(|job| job.log.clone()).collect();
        let open = Vehicles::open(&jobs);
        let gone = jobs
            .iter()
            .filter(|job| may_let_go(job, &open, 1, i64::MAX));
        assert_eq!(gone.count(), jobs.len() / 2);
        assert_eq!(logs_of_day(&jobs, &chosen, &[]).len(), jobs.len());
        jobs
    });
}

/// One entry of each kind, and then very many of one of them.
fn many_of(kind: &Event, n: usize) -> JobState {
    let each = each::entries().into_iter().map(|entry| entry.what);
    let counts = |what: &Event| !matches!(what, Event::Strike(_) | Event::Ended(_));
    let whats = each.filter(counts).chain(std::iter::repeat(kind.clone()));
    let after = |at: usize| at.checked_sub(1).into_iter().collect::<Vec<_>>();
    let entries = (0..n).zip(whats);
    fold(entries.map(|(at, what)| made(at, &after(at), what)))
}

/// The report of a job with very many entries of one kind, for each kind that it tells.
#[test]
fn a_long_report() {
    let format = Format {
        system: System::Metric,
        decimal: DecimalMark::Dot,
    };
    let report = |sheet: JobState| Report::of(&sheet, Lang::English, format, &Reader::default());
    let is_recorded = |what: &Event| {
        matches!(
            what,
            Event::Note(..)
                | Event::Moved(_)
                | Event::Also(_)
                | Event::Mishap(_)
                | Event::Mended(_)
                | Event::Consent(_)
                | Event::Photo(_)
                | Event::Erased(_)
        )
    };
    let each = each::entries().into_iter().map(|entry| entry.what);
    for kind in each.filter(is_recorded) {
        grows(300, |n| many_of(&kind, n), report);
    }
}

/// A note and its strike in turn: all of it is told as taken back.
#[test]
fn a_report_of_what_was_taken_back() {
    let format = Format {
        system: System::Us,
        decimal: DecimalMark::Dot,
    };
    let struck = |n| {
        let what = |at: usize| match at % 2 {
            0 => note(at),
            _ => Event::Strike(vec![EntryId(id(at - 1))]),
        };
        let after = |at: usize| at.checked_sub(1).into_iter().collect::<Vec<_>>();
        fold((0..n).map(|at| made(at, &after(at), what(at))))
    };
    let report = |sheet: JobState| Report::of(&sheet, Lang::English, format, &Reader::default());
    grows(2_000, struck, report);
}

/// Each decision rests on all before it: up to a limit they are made again, and that there are more
/// is a finding of its own.
#[test]
fn decisions_without_end_are_checked_up_to_a_limit() {
    let _alone = alone();
    let decided = each::entries()
        .into_iter()
        .find_map(|entry| match entry.what {
            Event::Decided(decided) => Some(decided),
            _ => None,
        });
    // Those of other rules are counted, not made again, which is quick.
    let mut decided = decided.unwrap();
    decided.rules = RULES_VERSION + 1;
    // Notes first, so that few decisions reach the limit.
    let file = |notes: usize, decisions: usize| {
        let what = |at: usize| match at {
            at if at < notes => note(at),
            _ => Event::Decided(decided.clone()),
        };
        let after = |at: usize| at.checked_sub(1).into_iter().collect::<Vec<_>>();
        let entries = (0..notes + decisions).map(|at| made(at, &after(at), what(at)));
        let texts = entries.map(|entry| encode(&entry).unwrap()).collect();
        export(&[(LogKind::Job, LogId(LOG.to_owned()), texts)]).unwrap()
    };
    let looked_at = |text: &str| {
        let checked = verify(text).unwrap().remove(0);
        let other = |it: &&Remark| matches!(it, Remark::OtherRules { .. });
        let over = checked
            .findings
            .iter()
            .filter(|it| **it == Finding::TooMuch);
        (checked.remarks.iter().filter(other).count(), over.count())
    };
    // The nth decision had seen all notes and the n - 1 decisions before it.
    let (notes, most) = (1_000, 414);
    assert!(most * notes + most * (most - 1) / 2 <= MAX_AGAIN);
    assert!((most + 1) * notes + most * (most + 1) / 2 > MAX_AGAIN);
    assert_eq!(looked_at(&file(notes, most + 20)), (most, 1));
    assert_eq!(looked_at(&file(notes, most)), (most, 0));
}

/// Each picture under its own name, among as many that are wanted.
#[test]
fn a_zip_of_many_photos() {
    let zip = |n| {
        let piece = |at: usize| {
            let bytes = at.to_string().into_bytes();
            let wanted = Wanted {
                sha256: sha256_hex(&bytes),
                mime: "image/jpeg".to_owned(),
                step: StepKey::once(Step::FoundPhoto),
            };
            (wanted, bytes)
        };
        let saved: Vec<_> = (0..n).map(piece).collect();
        let zip = bundle::write("job.json", "{}", &saved).unwrap();
        let wanted: Vec<Wanted> = saved.into_iter().map(|(wanted, _)| wanted).collect();
        (zip, wanted)
    };
    grows(200, zip, |(zip, wanted): (Vec<u8>, Vec<Wanted>)| {
        let opened = bundle::open(&zip).unwrap();
        let held = bundle::held(&wanted, &opened.pieces);
        assert_eq!(held.there.len(), wanted.len());
        // The same bytes under names that promise others.
        let next = opened.pieces.iter().cycle().skip(1);
        let mixed: Vec<(String, &[u8])> = opened
            .pieces
            .iter()
            .zip(next)
            .map(|((name, _), _)| (name.clone(), &b"not it"[..]))
            .collect();
        let held = bundle::held(&wanted, &mixed);
        assert_eq!(held.changed.len(), wanted.len());
    });
}

/// A thousand names that all lead to one large piece would be read a thousand times.
#[test]
fn names_that_lead_to_one_piece_are_refused() {
    let _alone = alone();
    let wanted = |at: usize| Wanted {
        sha256: sha256_hex(at.to_string().as_bytes()),
        mime: "image/jpeg".to_owned(),
        step: StepKey::once(Step::FoundPhoto),
    };
    let bytes = |at: usize| vec![7; if at == 0 { 100_000 } else { 0 }];
    let saved: Vec<(Wanted, Vec<u8>)> = (0..1_000).map(|at| (wanted(at), bytes(at))).collect();
    let mut zip = bundle::write("job.json", "{}", &saved).unwrap();
    assert_eq!(bundle::open(&zip).unwrap().pieces.len(), 1_000);
    // Each record of the directory (APPNOTE.TXT, 4.3.12) has its sizes at 20 and its piece at 42.
    let records: Vec<usize> = (0..zip.len() - 4)
        .filter(|at| zip[*at..].starts_with(b"PK\x01\x02"))
        .collect();
    assert_eq!(records.len(), 1_001);
    for one in &records[2..] {
        let large = records[1];
        zip.copy_within(large + 20..large + 28, one + 20);
        zip.copy_within(large + 42..large + 46, one + 42);
    }
    assert_eq!(bundle::open(&zip), Err(BundleError::Overlap));
}
