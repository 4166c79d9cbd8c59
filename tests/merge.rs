//! What becomes of one job on many phones: the laws of joining, over jobs by chance.
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
use std::sync::atomic::{AtomicUsize, Ordering};

use hubslate::exchange::erase::{Besides, erased, erased_with, let_go, pseudonym};
use hubslate::exchange::export::FileWriter;
use hubslate::exchange::gather::{Gap, Gathered, Together, Union};
use hubslate::exchange::pieces::{InOneGo, in_one_go};
use hubslate::exchange::wire::decode;
use hubslate::exchange::{
    ImportError, IncomingLog, LogKind, SavedText, Sliced, export, merge, read,
};
use hubslate::job::entry::{Entry, EntryId, Event, LogId, PersonField, Reply};
use hubslate::job::{Key, Problem, evidence, fold};
use hubslate::trade::answer::Answer;
use hubslate::trade::play::Decision;
use hubslate::trade::wheel_end::{Check, Step, StepKey};
use proptest::prelude::*;
use random_jobs::{Chance, HERE, RandomJob};

/// Some of the records of a job, some of what may name a person erased, some let go of.
fn some(records: &[SavedText], chance: &mut Chance) -> Vec<SavedText> {
    let forms = [
        Vec::new(),
        erased_with(records, Besides::ALL).unwrap(),
        let_go(records).unwrap(),
    ];
    let here = records.iter().filter(|_| chance.often(60));
    let here: Vec<SavedText> = here.cloned().collect();
    here.into_iter()
        .map(|record| {
            let mut form = chance.of(&forms).into_iter();
            form.find(|gone| gone.id == record.id).unwrap_or(record)
        })
        .collect()
}

/// What a phone has after it took something in.
fn joined(here: &[SavedText], came: &[SavedText]) -> Vec<SavedText> {
    let change = merge(here, came);
    assert_eq!(change.edited, []);
    let gone: BTreeSet<&String> = change.replace.iter().map(|r| &r.id).collect();
    let stay = here.iter().filter(|record| !gone.contains(&record.id));
    let set: BTreeSet<SavedText> = stay
        .chain(&change.add)
        .chain(&change.replace)
        .cloned()
        .collect();
    set.into_iter().collect()
}

fn file(records: &[SavedText]) -> String {
    let log = LogId(records[0].log.clone());
    let texts = records.iter().map(|r| r.text.clone()).collect();
    export(&[(LogKind::Job, log, texts)]).unwrap()
}

/// No file yet; after so many bytes entries are put down on the disk.
fn gathering(room: usize) -> Gathered {
    static NEXT: AtomicUsize = AtomicUsize::new(0);
    let name = format!("merge-{}.runs", NEXT.fetch_add(1, Ordering::Relaxed));
    Gathered::with_room(Path::new(env!("CARGO_TARGET_TMPDIR")).join(name), room)
}

/// So little room that nearly every log is a run of its own on the disk.
const NO_ROOM: usize = 1_000;
/// Room for all.
const ROOM: usize = usize::MAX;

fn unions(gathered: &mut Gathered) -> Vec<Union> {
    let mut logs = gathered.logs().unwrap();
    std::iter::from_fn(|| logs.next_log().unwrap().map(Together::union)).collect()
}

/// The one file of many, in the order in which they are given.
fn one_file_in(files: &[&str], room: usize) -> String {
    let mut gathered = gathering(room);
    for text in files {
        gathered.take(&read(text).unwrap()).unwrap();
    }
    let mut out = FileWriter::begin(Vec::new()).unwrap();
    let mut logs = Vec::new();
    for union in unions(&mut gathered) {
        assert_eq!(union.edited, []);
        let texts = union.records.into_iter().map(|r| r.text).collect();
        let log = (union.kind, union.id, texts);
        out.add(&log, None).unwrap();
        logs.push(log);
    }
    let whole = String::from_utf8(out.end().unwrap()).unwrap();
    // Log by log it is the file that is made in one go.
    assert_eq!(whole, export(&logs).unwrap());
    whole
}

fn one_file(files: &[&str]) -> String {
    one_file_in(files, NO_ROOM)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]
    #[test]
    fn joining_is_commutative_associative_and_idempotent(seed in 0_u64..10_000) {
        let mut chance = Chance(seed);
        let records = RandomJob::of(seed).records();
        let [a, b, c] = [0; 3].map(|_| some(&records, &mut chance));
        let ab = joined(&a, &b);
        prop_assert_eq!(&ab, &joined(&b, &a));
        prop_assert_eq!(&ab, &joined(&ab, &b));
        prop_assert_eq!(&ab, &joined(&ab, &a));
        prop_assert_eq!(joined(&ab, &c), joined(&a, &joined(&b, &c)));
    }

    /// Names never come in; order and repetition give the same file, and the same sheet.
    #[test]
    fn files_of_any_name_in_any_order_any_number_of_times_give_the_same_file(seed in 0_u64..10_000) {
        let mut chance = Chance(seed);
        let (one, two) = (RandomJob::of(seed).records(), RandomJob::of(seed + 10_000).records());
        let parts = [some(&one, &mut chance), some(&one, &mut chance), some(&two, &mut chance)];
        let files: Vec<String> = parts.iter().filter(|part| !part.is_empty()).map(|part| file(part)).collect();
        let files: Vec<&str> = files.iter().map(String::as_str).collect();
        prop_assume!(files.len() == 3);
        let whole = one_file(&files);
        prop_assert_eq!(&one_file_in(&files, ROOM), &whole);
        for order in [[2, 1, 0], [1, 0, 2], [0, 2, 1]] {
            let turned = order.map(|place| files[place]);
            prop_assert_eq!(&one_file(&turned), &whole);
            prop_assert_eq!(&one_file(&[&whole, turned[0], turned[0]]), &whole);
        }
        let sheet = |text: &str| {
            let logs = read(text).unwrap().logs;
            logs.into_iter().map(|log| fold(log.records.iter().map(|r| decode(&r.text).unwrap()))).collect::<Vec<_>>()
        };
        prop_assert_eq!(sheet(&whole), sheet(&one_file(&[&whole])));
    }

    /// Each phone goes on with what both had; joined, nothing of either is lost.
    #[test]
    fn two_phones_on_one_job_are_both_saved(seed in 0_u64..10_000) {
        let base = RandomJob::begin(seed, "van-1");
        let [mut one, mut two] = ["van-1", "van-2"].map(|device| base.on(device, seed + 1));
        one.go_on();
        two.go_on();
        let (ours, theirs) = (one.records(), two.records());
        let whole = joined(&ours, &theirs);
        for record in ours.iter().chain(&theirs) {
            prop_assert!(whole.contains(record));
        }
        let entries: Vec<Entry> = whole.iter().map(|r| decode(&r.text).unwrap()).collect();
        let sheet = fold(entries);
        prop_assert_eq!(sheet.entries().len(), one.entries.len() + two.entries.len() - base.entries.len());
        let broken = |problem: &&Problem| !matches!(problem, Problem::Disagree(_));
        prop_assert_eq!(sheet.problems().iter().find(broken), None);
    }
}

#[test]
fn two_phones_that_disagree_are_both_shown_and_the_graver_one_holds() {
    let base = RandomJob::begin(7, "van-1");
    let step = StepKey::once(Step::BeforeDriving);
    let looked =
        |answer| Event::Answered(step, Reply::Checked(vec![(Check::WheelUpright, answer)]));
    let [mut one, mut two] = ["van-1", "van-2"].map(|device| base.on(device, 8));
    one.tap(vec![looked(Answer::Yes)]);
    two.tap(vec![looked(Answer::No)]);
    for files in [[one.file(), two.file()], [two.file(), one.file()]] {
        let [first, second] = &files;
        let whole = read(&one_file(&[first, second])).unwrap().logs.remove(0);
        let sheet = fold(whole.records.iter().map(|r| decode(&r.text).unwrap()));
        assert_eq!(sheet.stated(&Key::Step(step)).count(), 2);
        assert_eq!(sheet.problems(), [Problem::Disagree(Key::Step(step))]);
        assert_eq!(evidence::verdict(&sheet, HERE).decision, Decision::Stop);
    }
}

#[test]
fn a_broken_record_is_named_and_the_rest_is_saved() {
    let job = RandomJob::of(3);
    let mut texts = job.texts();
    let broken = texts[5].clone();
    let id = decode(&broken).unwrap().id;
    texts[5] = broken.split("\"what\"").next().unwrap().to_owned()
        + r#""what":{"ended":{"ending":"in_tears"}}}"#;
    let records: Vec<SavedText> = texts
        .iter()
        .enumerate()
        .map(|(at, text)| {
            let id = job.entries[at].id.0.clone();
            SavedText {
                log: job.entries[at].log.0.clone(),
                id,
                text: text.clone(),
            }
        })
        .collect();
    let mut gathered = gathering(NO_ROOM);
    gathered.take(&read(&file(&records)).unwrap()).unwrap();
    assert_eq!(gathered.unreadable.keys().collect::<Vec<_>>(), [&id]);
    let union = unions(&mut gathered).remove(0);
    let came: BTreeSet<&String> = union.records.iter().map(|r| &r.text).collect();
    assert_eq!(came, texts.iter().collect());
}

#[test]
fn contents_that_differ_under_one_id_are_named_whichever_came_first() {
    let job = RandomJob::of(5);
    let records = job.records();
    let mut other = records.clone();
    let place = other
        .iter()
        .position(|r| r.text.contains("Nobody At All"))
        .unwrap();
    other[place].text = other[place].text.replace("At All", "Else");
    let files = [file(&records), file(&other)];
    let gather = |order: [usize; 2]| {
        let mut gathered = gathering(NO_ROOM);
        for at in order {
            gathered.take(&read(&files[at]).unwrap()).unwrap();
        }
        unions(&mut gathered).remove(0)
    };
    let union = gather([0, 1]);
    assert_eq!(union.edited, [EntryId(records[place].id.clone())]);
    assert_eq!(union, gather([1, 0]));
}

#[test]
fn running_numbers_that_are_in_no_file_are_named() {
    let mut job = RandomJob::begin(11, "van 3");
    for _ in 0..60 {
        job.tap(vec![Event::Answered(
            StepKey::once(Step::Drive),
            Reply::Done,
        )]);
    }
    for (place, entry) in (400..).zip(&mut job.entries) {
        entry.n = place;
    }
    let records = job.records();
    let number = |record: &SavedText| decode(&record.text).unwrap().n;
    let gaps = |missing: &dyn Fn(u64) -> bool| {
        let here = records.iter().filter(|r| !missing(number(r))).cloned();
        let here: Vec<SavedText> = here.collect();
        let mut gathered = gathering(ROOM);
        gathered.take(&read(&file(&here)).unwrap()).unwrap();
        gathered.gaps()
    };
    let gap = |from, to| Gap {
        device: "van 3".to_owned(),
        from,
        to,
    };
    assert_eq!(gaps(&|_| false), []);
    assert_eq!(gaps(&|n| (412..=430).contains(&n)), [gap(412, 430)]);
    assert_eq!(
        gaps(&|n| n == 405 || n == 407),
        [gap(405, 405), gap(407, 407)]
    );
    // What is missing at either end cannot be known.
    assert_eq!(gaps(&|n| !(410..=450).contains(&n)), []);
}

#[test]
fn a_newer_file_is_refused_with_its_version() {
    let text = RandomJob::of(1).file();
    let newer = text.replacen("\"version\": 1", "\"version\": 3", 1);
    let error = read(&newer).unwrap_err();
    assert_eq!(error, ImportError::Newer { version: 3 });
    let said = hubslate::text::say(hubslate::text::Lang::English, error.say());
    assert!(
        said.contains("Update first") && said.contains("Nothing was changed"),
        "{said}"
    );
}

#[test]
fn an_erased_customer_leaves_a_pseudonym_and_every_finding() {
    let job = RandomJob::of(21);
    let records = job.records();
    let gone = erased(&records).unwrap();
    assert_eq!(gone.len(), 1);
    let after = joined(&records, &gone);
    let sheet = |records: &[SavedText]| fold(records.iter().map(|r| decode(&r.text).unwrap()));
    let (was, is) = (sheet(&records), sheet(&after));
    assert_eq!(was.person(PersonField::Name), Some("Nobody At All"));
    assert_eq!(is.person(PersonField::Name), None);
    assert_eq!(is.decided(HERE), was.decided(HERE));
    assert_eq!(is.problems(), was.problems());
    // The old file changes nothing any more.
    assert_eq!(joined(&after, &records), after);
    let log = job.entries[0].log.clone();
    let name = pseudonym(&log);
    assert!(
        name.starts_with("customer-")
            && log.0.replace('-', "").ends_with(&name["customer-".len()..])
    );
    assert_ne!(name, pseudonym(&RandomJob::of(22).entries[0].log));
}

/// The same logs and the same refusals, whether a file is read whole or in slices of any length.
#[test]
fn a_file_in_slices_is_the_file_read_whole() {
    let (one, two) = (RandomJob::of(1).records(), RandomJob::of(2).records());
    let whole = one_file(&[&file(&one), &file(&two)]);
    let sliced = |text: &str, slice: usize| -> Result<Vec<IncomingLog>, ImportError> {
        let (first, rest) = text.as_bytes().split_at(120.min(text.len()));
        let mut sliced = Sliced::begin(first).unwrap();
        let mut logs = Vec::new();
        for slice in rest.chunks(slice) {
            sliced.push(slice);
            while let Some(log) = in_one_go(sliced.next(&InOneGo))? {
                logs.push(log);
            }
        }
        sliced.end()?;
        assert!(!sliced.has_one_twice());
        // Once the digests are known to hold, the entries alone are read the same.
        let mut again = sliced.again(text.as_bytes()).unwrap();
        for log in &logs {
            assert_eq!(in_one_go(again.next(&InOneGo)).unwrap().as_ref(), Some(log));
        }
        Ok(logs)
    };
    let laid_out = whole
        .replace("\n", "\n\n")
        .replace(r#","what""#, r#" , "what""#);
    for text in [&whole, &laid_out] {
        let logs = read(text).unwrap().logs;
        assert_eq!(logs.len(), 2);
        for slice in [1_000, 4_096, text.len()] {
            assert_eq!(sliced(text, slice), Ok(logs.clone()));
        }
    }
    let edited = whole.replacen("Nobody At All", "Nobody Else", 1);
    assert_eq!(sliced(&edited, 4_096), Err(read(&edited).unwrap_err()));
    let cut = &whole[..whole.len() - 30];
    assert_eq!(sliced(cut, 4_096), Err(read(cut).unwrap_err()));
    let foreign = whole.replacen("hubslate", "somebody", 1);
    assert!(Sliced::begin(foreign.as_bytes()).is_none());
}

/// Whatever came of it before it was seen to be bad.
#[test]
fn nothing_of_a_refused_file_counts() {
    let mut gathered = gathering(NO_ROOM);
    gathered
        .take_log(&read(&RandomJob::of(1).file()).unwrap().logs[0])
        .unwrap();
    gathered.refuse();
    gathered
        .take(&read(&RandomJob::of(2).file()).unwrap())
        .unwrap();
    let all = unions(&mut gathered);
    assert_eq!(all.len(), 1);
    assert_eq!(all[0].records, RandomJob::of(2).records());
    assert_eq!(gathered.gaps(), []);
}
