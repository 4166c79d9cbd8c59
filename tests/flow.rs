//! Files between the shop and its vans: a day out, a day back, the confirmation, and what may leave a van.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/random_jobs.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod random_jobs;

use hubslate::exchange::confirmation::{Lines, held_in, is_named, not_held};
use hubslate::exchange::day::{
    Vehicles, is_only_news, logs_of_day, may_let_go, news_for_vans, news_of, senders,
};
use hubslate::exchange::erase::{erased, let_go};
use hubslate::exchange::gaps::{gaps, runs};
use hubslate::exchange::summary::Summary;
use hubslate::exchange::wire::{decode, encode};
use hubslate::exchange::{IncomingLog, LogKind, SavedText, export, merge, read};
use hubslate::job::entry::{
    Confirmation, DayTime, Entry, EntryId, Event, LogId, PersonField, Reply, Slot,
};
use hubslate::job::{fold, next, plan};
use hubslate::trade::wheel_end::{Step, StepKey, procedure};
use proptest::prelude::*;
use random_jobs::{Chance, RandomJob};

const DAY_MS: i64 = 86_400_000;

fn entries(records: &[SavedText]) -> Vec<Entry> {
    records.iter().map(|r| decode(&r.text).unwrap()).collect()
}

fn log_of(records: &[SavedText]) -> LogId {
    LogId(records[0].log.clone())
}

fn lines_in(log: &LogId, records: &[SavedText]) -> Lines {
    held_in(log, records).into_iter().collect()
}

/// A job that two devices wrote, numbered as their devices count.
fn two_devices(seed: u64) -> Vec<SavedText> {
    let base = RandomJob::begin(seed, "shop");
    let mut van = base.on("van-1", seed + 1);
    van.go_on();
    let mut counts = std::collections::BTreeMap::new();
    for entry in &mut van.entries {
        let n = counts.entry(entry.device.clone()).or_insert(100_u64);
        entry.n = *n;
        *n += 1;
    }
    van.records()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    /// Whatever part of a job came in, what is still to bring is exactly the rest; a part with a
    /// hole vouches for nothing of its device.
    #[test]
    fn a_confirmation_leaves_exactly_what_the_shop_lacks(seed in 0_u64..10_000, cut in 0_usize..200) {
        let here = two_devices(seed);
        let log = log_of(&here);
        let (there, rest) = here.split_at(cut.min(here.len()));
        let open = not_held(&log.0, &here, &lines_in(&log, there));
        prop_assert_eq!(&open, &rest.iter().collect::<Vec<_>>());
        let runs = runs(&entries(&here));
        prop_assert_eq!(is_named(&log.0, &runs, &lines_in(&log, there)), rest.is_empty());
        // An erased person changes nothing of what the shop has.
        let gone = erased(&here).unwrap();
        let erased: Vec<SavedText> = here.iter().map(|r| gone.iter().find(|g| g.id == r.id).unwrap_or(r).clone()).collect();
        prop_assert_eq!(held_in(&log, &erased), held_in(&log, &here));
        prop_assert_eq!(not_held(&log.0, &erased, &lines_in(&log, &here)), Vec::<&SavedText>::new());
    }

    #[test]
    fn a_confirmation_for_other_contents_or_with_a_hole_holds_nothing_of_that_device(seed in 0_u64..10_000) {
        let mut chance = Chance(seed);
        let here = two_devices(seed);
        let log = log_of(&here);
        let van = |r: &&SavedText| decode(&r.text).unwrap().device == "van-1";
        let mine = here.iter().filter(van).count();
        prop_assume!(mine > 2);
        let hit = here.iter().filter(van).nth(usize::from(chance.often(50))).unwrap();
        let holed: Vec<SavedText> = here.iter().filter(|r| *r != hit).cloned().collect();
        let open = not_held(&log.0, &here, &lines_in(&log, &holed));
        prop_assert_eq!(open.len(), mine);
        let mut other = here.clone();
        let place = other.iter().position(|r| r == hit).unwrap();
        other[place].text = other[place].text.replacen("\"offset_min\":", "\"offset_min\":1", 1);
        prop_assert_ne!(&other[place].text, &hit.text);
        let open = not_held(&log.0, &here, &lines_in(&log, &other));
        prop_assert_eq!(open.len(), mine);
        // A confirmation for another job says nothing of this one.
        let lines = lines_in(&LogId("another".to_owned()), &here);
        prop_assert_eq!(not_held(&log.0, &here, &lines).len(), here.len());
    }
}

#[test]
fn a_second_closed_day_holds_only_what_came_after_the_confirmation() {
    let mut job = RandomJob::begin(5, "van-1");
    let number = |job: &mut RandomJob| {
        for (n, entry) in (1..).zip(&mut job.entries) {
            entry.n = n;
        }
    };
    number(&mut job);
    let first = job.records();
    let log = log_of(&first);
    let confirmation = held_in(&log, &first);
    assert_eq!(confirmation.len(), 1);
    job.tap(vec![Event::Note(None, "the customer called".to_owned())]);
    number(&mut job);
    let now = job.records();
    let open = not_held(&log.0, &now, &confirmation.iter().cloned().collect());
    assert_eq!(open.len(), now.len() - first.len());
    let texts = open.iter().map(|r| r.text.clone()).collect();
    let file = export(&[(LogKind::Job, log.clone(), texts)]).unwrap();
    let came = read(&file).unwrap().logs.remove(0).records;
    let union = [first, came].concat();
    assert_eq!(held_in(&log, &union), held_in(&log, &now));
    assert_eq!(gaps(&runs(&entries(&union))), []);
    assert!(!is_named(
        &log.0,
        &runs(&entries(&now)),
        &confirmation.into_iter().collect()
    ));
    assert!(is_named(
        &log.0,
        &runs(&entries(&now)),
        &lines_in(&log, &union)
    ));
}

fn summary(log: &str, whats: Vec<Event>) -> Summary {
    let mut job = RandomJob::begin(1, "shop");
    job.entries.clear();
    job.tap(whats);
    let sheet = fold(job.entries.iter().cloned());
    Summary::of(&LogId(log.to_owned()), &sheet, &[], None)
}

fn slot(day: &str, time: Option<&str>) -> Event {
    Event::Slot(Slot {
        day: day.parse().unwrap(),
        time: time.and_then(DayTime::parse),
        van: "N".to_owned(),
    })
}

fn plate(text: &str) -> Event {
    Event::Person(PersonField::Plate, text.to_owned())
}

#[test]
fn a_day_file_has_the_jobs_in_order_then_earlier_visits_books_and_the_shop() {
    let mut earlier = summary("earlier", vec![plate("prc-001")]);
    earlier.ending = "finished".to_owned();
    let mut practice = earlier.clone();
    (practice.log, practice.practice) = ("practice".to_owned(), true);
    let mut other = summary("other", vec![plate("XX 1")]);
    other.ending = "finished".to_owned();
    let jobs = [
        summary(
            "late",
            vec![plate("PRC 001"), slot("2026-03-04", Some("14:00"))],
        ),
        summary("any", vec![plate("PRC 002"), slot("2026-03-04", None)]),
        summary("early", vec![plate(""), slot("2026-03-04", Some("09:30"))]),
        summary("left", vec![plate("PRC 003")]),
        earlier,
        practice,
        other,
    ];
    let names = |list: &[&str]| {
        list.iter()
            .map(|it| (*it).to_owned())
            .collect::<Vec<String>>()
    };
    let known = names(&[
        "book:marten",
        "kit:van",
        "shop:rules",
        "confirmations:shop",
        "any",
    ]);
    let logs = logs_of_day(&jobs, &names(&["any", "late", "early", "practice"]), &known);
    assert_eq!(
        logs,
        [
            "early",
            "late",
            "any",
            "earlier",
            "book:marten",
            "shop:rules"
        ]
    );
    assert_eq!(
        (jobs[0].day.as_str(), jobs[0].time.as_str()),
        ("2026-03-04", "14:00")
    );
}

#[test]
fn only_old_jobs_with_nothing_due_and_no_open_visit_may_let_their_person_go() {
    let mut ended = summary("ended", vec![plate("PRC 001")]);
    (ended.ending, ended.touched) = ("finished".to_owned(), 0);
    let may = |job: &Summary, others: &[Summary], days_later: i64| {
        may_let_go(job, &Vehicles::open(others), 30, days_later * DAY_MS + 1)
    };
    assert!(may(&ended, &[ended.clone()], 30));
    assert!(!may(&ended, &[], 29));
    let with = |change: fn(&mut Summary)| {
        let mut job = ended.clone();
        change(&mut job);
        job
    };
    let open = with(|job| job.ending.clear());
    assert!(!may(&open, &[], 90));
    let due = with(|job| {
        (job.due, job.next) = ("2026-03-04".to_owned(), "retorque_done".to_owned());
    });
    assert!(!may(&due, &[], 90));
    let next_visit = summary("next", vec![plate("prc 001")]);
    assert!(!may(&ended, &[next_visit], 90));
    assert!(may(&ended, &[summary("next", vec![plate("XX 1")])], 90));
    let gone = with(|job| job.let_go = true);
    assert!(!may(&gone, &[], 90));
    assert!(!may(&with(|job| job.practice = true), &[], 90));
}

#[test]
fn a_job_that_was_let_go_of_keeps_its_findings_and_a_name_of_its_own() {
    let here = two_devices(9);
    let gone = let_go(&here).unwrap();
    let after: Vec<SavedText> = here
        .iter()
        .map(|r| gone.iter().find(|g| g.id == r.id).unwrap_or(r).clone())
        .collect();
    let (was, is) = (fold(entries(&here)), fold(entries(&after)));
    assert_eq!(is.problems(), was.problems());
    assert_eq!(is.corners(), was.corners());
    assert_eq!(is.person(PersonField::Name), None);
    let log = log_of(&here);
    let line = Summary::of(&log, &is, &[], None);
    assert!(line.let_go && !line.erased);
    assert!(line.title().starts_with("customer-"));
    assert_eq!(line.runs, Summary::of(&log, &was, &[], None).runs);
    // The confirmation that let it go still fits what stays.
    assert_eq!(
        not_held(&log.0, &after, &lines_in(&log, &here)),
        Vec::<&SavedText>::new()
    );
}

/// A finished job as a van has it: the sample, with its re-torque still to be looked back on.
fn finished_job() -> Vec<SavedText> {
    let path = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/public/sample/replaced-hub.json"
    );
    let text = std::fs::read_to_string(path).unwrap();
    read(&text).unwrap().logs.remove(0).records
}

/// The job with what another phone recorded after it, each entry after the one before.
fn followed_up(records: &[SavedText], device: &str, whats: Vec<Event>) -> Vec<SavedText> {
    let mut all = records.to_vec();
    let mut head = fold(entries(records)).heads().to_vec();
    for (n, what) in (1_u64..).zip(whats) {
        let last = decode(&records[records.len() - 1].text).unwrap();
        let id = format!("01900000-0000-7000-8000-{n:012}");
        let entry = Entry {
            id: EntryId(id.clone()),
            device: device.to_owned(),
            n,
            after: std::mem::take(&mut head),
            what,
            ..last
        };
        head = vec![entry.id.clone()];
        all.push(SavedText {
            log: entry.log.0.clone(),
            id,
            text: encode(&entry).unwrap(),
        });
    }
    all
}

fn line_of(records: &[SavedText]) -> Summary {
    let sheet = fold(entries(records));
    let steps = procedure(&plan(&sheet));
    Summary::of(&log_of(records), &sheet, &steps, next(&sheet, &steps))
}

/// What a file of the shop with these texts of one job is to a phone.
fn sent(log: &LogId, texts: &[&SavedText], confirmed: &[SavedText]) -> Vec<IncomingLog> {
    let confirmation = Event::Confirmation(Confirmation {
        held: held_in(log, confirmed),
    });
    let mut entry = decode(&confirmed[0].text).unwrap();
    entry.log = LogId("confirmations:shop".to_owned());
    (entry.device, entry.what) = ("shop".to_owned(), confirmation);
    let texts = texts.iter().map(|kept| kept.text.clone()).collect();
    let logs = [
        (
            LogKind::Confirmation,
            entry.log.clone(),
            vec![encode(&entry).unwrap()],
        ),
        (LogKind::Job, log.clone(), texts),
    ];
    read(&export(&logs).unwrap()).unwrap().logs
}

#[test]
fn what_the_shop_followed_up_comes_with_the_confirmation_and_the_customer_may_leave_the_van() {
    let van = finished_job();
    let log = log_of(&van);
    assert!(!line_of(&van).dues().is_empty());
    let done = Event::Answered(StepKey::once(Step::RetorqueDone), Reply::Done);
    let shop = followed_up(&van, "shop", vec![done]);
    let line = line_of(&shop);
    let now = line.touched + 31 * DAY_MS;
    let told = |device: &str, now| news_for_vans(std::slice::from_ref(&line), device, "", now);
    assert_eq!(told("shop", now), [log.0.as_str()]);
    // Not for ever, and not of what the phone did itself.
    assert_eq!(told("shop", line.touched + 200 * DAY_MS), [""; 0]);
    assert_eq!(told("another", now), [""; 0]);

    let news = news_of(&shop, "shop");
    assert_eq!(news.len(), 1);
    let logs = sent(&log, &news, &shop);
    let lines: Lines = held_in(&log, &shop).into_iter().collect();
    // Without the follow-up the van keeps the customer: something is due.
    let open = Vehicles::open(&[]);
    assert!(!may_let_go(&line_of(&van), &open, 30, now));
    let merged = merge(&van, &logs[1].records);
    let van = [van, merged.add].concat();
    assert!(line_of(&van).dues().is_empty());
    assert!(may_let_go(&line_of(&van), &open, 30, now));
    assert_eq!(not_held(&log.0, &van, &lines), Vec::<&SavedText>::new());
}

#[test]
fn an_erase_in_the_shop_reaches_the_phones_that_have_the_job_and_begins_none_elsewhere() {
    let van = finished_job();
    let log = log_of(&van);
    let gone = erased(&van).unwrap();
    let body = |kept: &SavedText| {
        let emptied = gone.iter().find(|it| it.id == kept.id);
        emptied.unwrap_or(kept).clone()
    };
    let shop: Vec<SavedText> = van.iter().map(body).collect();
    let line = line_of(&shop);
    // However long ago: an erase goes out with every file.
    let later = line.touched + 4_000 * DAY_MS;
    let told = news_for_vans(std::slice::from_ref(&line), "shop", "", later);
    assert_eq!(told, [log.0.as_str()]);
    let news = news_of(&shop, "shop");
    assert_eq!(news.len(), gone.len());
    let logs = sent(&log, &news, &shop);
    let merged = merge(&van, &logs[1].records);
    assert_eq!((merged.add.len(), merged.replace.len()), (0, gone.len()));
    let senders = senders(&logs);
    assert!(is_only_news(&logs[1], &senders));
    // A whole job is one, and so is a part that a van sends.
    let all: Vec<&SavedText> = van.iter().collect();
    assert!(!is_only_news(&sent(&log, &all, &van)[1], &senders));
    let part = &all[20..30];
    assert!(!is_only_news(&sent(&log, part, &van)[1], &senders));
    assert!(!is_only_news(&logs[1], &[].into_iter().collect()));
}

#[test]
fn a_job_that_was_taken_from_a_van_is_told_to_that_van() {
    let slot = |van: &str| {
        Event::Slot(Slot {
            day: "2026-03-04".parse().unwrap(),
            time: None,
            van: van.to_owned(),
        })
    };
    let opened = RandomJob::begin(1, "shop").records();
    let moved = followed_up(&opened[..1], "shop", vec![slot("N"), slot("S")]);
    let mut line = line_of(&moved);
    assert_eq!(
        (line.van.as_str(), line.moved_from.as_slice()),
        ("S", &["N".to_owned()][..])
    );
    line.practice = false;
    let told = |line: &Summary, van| news_for_vans(std::slice::from_ref(line), "shop", van, 0);
    assert_eq!(told(&line, "N").len(), 1);
    assert_eq!(told(&line, "S").len(), 0);
    assert_eq!(told(&line, "").len(), 0);
    line.ending = "declined".to_owned();
    assert_eq!(told(&line, "N").len(), 0);
}
