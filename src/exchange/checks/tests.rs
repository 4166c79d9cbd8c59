use super::*;
use crate::job::entry::{Entry, EntryId, LogId, Timestamp};
use crate::job::fold;
use crate::job::kit::{first_kit, typed_wrench};
use crate::units::{System, TorqueUnit};

fn kit(device: &str, n: u64, carried: Carried) -> Entry {
    Entry {
        id: EntryId(format!("{device}{n}")),
        log: LogId("kit:van".to_owned()),
        at: Timestamp {
            utc_ms: 0,
            offset_min: 0,
            recorded: None,
        },
        by: String::new(),
        device: device.to_owned(),
        n,
        after: Vec::new(),
        what: Event::Carried(carried),
    }
}

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

/// One wrench checked on a day, and a dial.
fn carried(checked: &str, dial_due: Option<&str>) -> Carried {
    let mut kit = first_kit(System::Metric);
    let wrench = typed_wrench("Wrench A", "40", "200", TorqueUnit::NewtonMetre);
    kit.wrenches = vec![wrench.unwrap()];
    kit.wrenches[0].upkeep.checked = Some(day(checked));
    kit.wrenches[0].upkeep.clicks = 4_990;
    kit.dial_due = dial_due.map(day);
    kit
}

fn clicked(van: &str, finished: &str, times: u32) -> Summary {
    let mut job = Summary::of(&LogId(van.to_owned()), &fold([]), &[], None);
    job.tally.van = van.to_owned();
    job.tally.finished = finished.to_owned();
    job.tally.clicks = vec![(van.to_owned(), "Wrench A".to_owned(), times)];
    job
}

#[test]
fn each_van_has_its_own_instruments_as_it_reported_them_last() {
    let sheet = fold([
        kit("a", 1, carried("2020-01-01", None)),
        kit("a", 2, carried("2025-09-01", Some("2026-06-01"))),
        kit("b", 1, carried("2025-03-01", Some("2026-03-01"))),
    ]);
    let all = to_check(&sheet, &[], day("2026-03-04"));
    let recorded: Vec<_> = all
        .iter()
        .map(|it| (it.van.as_str(), it.wrench.is_some(), it.due, it.by))
        .collect();
    let first = day("2026-03-01");
    assert_eq!(
        recorded,
        [
            ("b", true, Some(CheckDue::Day(first)), Some(first)),
            ("b", false, Some(CheckDue::Day(first)), Some(first)),
            ("a", false, None, Some(day("2026-06-01"))),
            ("a", true, None, Some(day("2026-09-01"))),
        ]
    );
}

#[test]
fn clicks_of_its_own_van_since_the_check_make_a_wrench_due_and_practice_does_not() {
    let sheet = fold([kit("a", 2, carried("2025-09-01", Some("2026-06-01")))]);
    let wrench = |jobs: &[Summary]| {
        let all = to_check(&sheet, jobs, day("2026-03-04"));
        let wrench = all.into_iter().find(|it| it.wrench.is_some()).unwrap();
        (wrench.clicks, wrench.due)
    };
    let mut jobs = vec![
        clicked("a", "2025-08-31", 50),
        clicked("b", "2026-01-01", 50),
        clicked("a", "2026-01-01", 9),
    ];
    assert_eq!(wrench(&jobs), (4_999, None));
    jobs.push(clicked("a", "2026-01-02", 1));
    assert_eq!(wrench(&jobs), (5_000, Some(CheckDue::Clicks(5_000))));
    jobs[3].practice = true;
    assert_eq!(wrench(&jobs), (4_999, None));
}

#[test]
fn the_kit_that_was_reported_last_counts_whatever_its_number() {
    // After a kill a phone counts from an older number on.
    let before = kit("a", 7, carried("2020-01-01", None));
    let mut later = kit("a", 2, carried("2025-09-01", Some("2026-06-01")));
    later.after = vec![before.id.clone()];
    let sheet = fold([before, later]);
    let all = to_check(&sheet, &[], day("2026-03-04"));
    assert!(all.iter().all(|it| it.due.is_none()), "{all:?}");
}

#[test]
fn clicks_of_another_vans_wrench_of_the_same_name_are_its_own() {
    let sheet = fold([kit("a", 2, carried("2025-09-01", Some("2026-06-01")))]);
    // The job belongs to van b; van a helped with its own wrench.
    let mut job = clicked("b", "2026-01-01", 9);
    job.tally
        .clicks
        .push(("a".to_owned(), "Wrench A".to_owned(), 3));
    let all = to_check(&sheet, &[job], day("2026-03-04"));
    let wrench = all.into_iter().find(|it| it.wrench.is_some()).unwrap();
    assert_eq!(wrench.clicks, 4_993);
}
