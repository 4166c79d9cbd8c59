use super::*;
use crate::job::entry::{
    Consent, Ended, EntryId, How, LogId, Money, Moved, Price, Scope, Timestamp,
};
use crate::job::fold;
use crate::trade::damage::{Finding, Inspected};
use crate::trade::money::Estimate;
use crate::trade::wheel_end::items;
use crate::units::Decimal;

const CORNER: Corner = Corner::FrontLeft;

/// Entries one after another, each noted so many milliseconds after the first day of 2026-03.
fn recorded(whats: Vec<(i64, Event)>) -> JobState {
    let id = |n: usize| EntryId(format!("{n:04}"));
    fold(whats.into_iter().enumerate().map(|(n, (ms, what))| Entry {
        id: id(n),
        log: LogId("log".to_owned()),
        at: Timestamp {
            // 2026-03-04 10:00 UTC, by `date -u -d @1772618400`.
            utc_ms: 1_772_618_400_000 + ms,
            offset_min: 0,
            recorded: None,
        },
        by: String::new(),
        device: "van".to_owned(),
        n: n as u64,
        after: n.checked_sub(1).map(id).into_iter().collect(),
        what,
    }))
}

fn ended(ending: Ending) -> Event {
    let charge = None;
    Event::Ended(Ended { ending, charge })
}

fn site() -> Event {
    Event::Answered(StepKey::once(Step::SiteLook), Reply::Checked(Vec::new()))
}

const HOUR: i64 = 3_600_000;

#[test]
fn minutes_run_from_the_site_to_the_end_of_one_day() {
    let of = |end, ending| real_minutes(&recorded(vec![(0, site()), (end, ended(ending))]));
    assert_eq!(of(2 * HOUR, Ending::Finished), Some(120));
    assert_eq!(of(2 * HOUR, Ending::Declined), None);
    assert_eq!(of(24 * HOUR, Ending::Finished), None);
    assert_eq!(of(-HOUR, Ending::Finished), None);
    assert_eq!(
        real_minutes(&recorded(vec![(0, ended(Ending::Finished))])),
        None
    );
}

#[test]
fn a_car_that_waits_for_an_answer_takes_no_minutes() {
    let at = |step| StepKey::at(step, Corner::FrontLeft);
    let wait = |key| Event::Answered(key, Reply::Done);
    let yes = |step| {
        Event::Consent(Consent {
            step,
            scope: Scope::Repair,
            yes: true,
            how: How::Spoken,
            amount: None,
        })
    };
    let minutes = |mut whats: Vec<(i64, Event)>| {
        whats.insert(0, (0, site()));
        whats.push((4 * HOUR, ended(Ending::Finished)));
        real_minutes(&recorded(whats))
    };
    let agree = at(Step::Agree);
    // Told twice it waits once; a second wait, for further work, counts as well.
    let first = vec![
        (HOUR, wait(at(Step::Wait))),
        (HOUR + HOUR / 2, wait(at(Step::Wait))),
        (2 * HOUR, yes(agree)),
    ];
    assert_eq!(minutes(first.clone()), Some(180));
    let second = [
        (3 * HOUR, wait(at(Step::Wait).nth(2))),
        (3 * HOUR + HOUR / 2, yes(agree)),
    ];
    assert_eq!(minutes([first, second.to_vec()].concat()), Some(150));
    // An answer without waiting, and a wait without an answer, take nothing off.
    assert_eq!(minutes(vec![(HOUR, yes(agree))]), Some(240));
    assert_eq!(minutes(vec![(HOUR, wait(at(Step::Wait)))]), Some(240));
}

#[test]
fn labour_lines_are_read_as_hours() {
    let line = |kind, quantity: &str| Line {
        kind,
        text: String::new(),
        quantity: Decimal::parse(quantity).unwrap(),
        each: 9_000,
        taxed: false,
        rate: None,
        corner: None,
    };
    let sold = |lines: Vec<Line>| {
        let money = Money {
            minor: 1,
            currency: "USD".to_owned(),
        };
        let price = Price {
            repair: money.clone(),
            refit: Some(money),
            estimate: Some(Estimate { lines, tax: None }),
        };
        sold_minutes(&recorded(vec![(0, Event::Price(price))]))
    };
    let part = || line(LineKind::Part, "1");
    assert_eq!(
        sold(vec![
            line(LineKind::Labour, "1.5"),
            part(),
            line(LineKind::Labour, "0,25")
        ]),
        Some(105)
    );
    assert_eq!(sold(vec![part()]), None);
    assert_eq!(sold(vec![line(LineKind::Labour, "500")]), None);
}

fn click(nut: u8) -> Event {
    let step = StepKey::at(Step::TurnLugNuts, CORNER);
    let nuts = items(CORNER, ItemKind::LugNuts, 5);
    Event::Moved(Moved {
        step,
        items: vec![nuts[usize::from(nut) - 1]],
        to: ItemState::Done,
        wrench: None,
    })
}

#[test]
fn five_nuts_in_less_than_four_seconds_are_quick() {
    let wheel = |gap: i64, nuts: u8| {
        let clicks = (1..=nuts).map(|nut| (i64::from(nut) * gap, click(nut)));
        quick_nuts(&recorded(clicks.collect()))
    };
    assert_eq!(wheel(999, 5), Part { of: 1, all: 1 });
    assert_eq!(wheel(1_000, 5), Part { of: 0, all: 1 });
    assert_eq!(wheel(10, 4), Part { of: 0, all: 0 });
    // A second pass, done properly, is the one that counts.
    let mut twice: Vec<(i64, Event)> = (1..=5).map(|nut| (i64::from(nut), click(nut))).collect();
    twice.extend((1..=5).map(|nut| (60_000 + i64::from(nut) * 5_000, click(nut))));
    assert_eq!(quick_nuts(&recorded(twice)), Part { of: 0, all: 1 });
}

#[test]
fn what_was_reported_for_another_time_is_noted_later() {
    let sheet = recorded(vec![(0, site()), (1, click(1))]);
    assert_eq!(noted_later(&sheet), Part { of: 0, all: 2 });
    let mut entries = sheet.entries().to_vec();
    entries[1].at.recorded = Some(entries[1].at.utc_ms - 10 * MINUTE_MS);
    assert_eq!(noted_later(&fold(entries)), Part { of: 1, all: 2 });
}

#[test]
fn a_part_that_was_not_put_in_proves_nothing() {
    let sheet = recorded(vec![(0, ended(Ending::Finished))]);
    assert_eq!(mended(&sheet, CORNER), None);
}

fn read(finding: Finding) -> PartReading {
    PartReading::new(Inspected::Closed).turned(finding)
}

#[test]
fn what_was_seen_and_why_it_came_back_are_reported_once_and_can_change() {
    let sheet = recorded(vec![
        (0, Event::RemovedPart(CORNER, read(Finding::SealCut))),
        (1, Event::RemovedPart(CORNER, read(Finding::HeatColors))),
        (2, Event::CameBackFor(CameBackFor::Fitting)),
    ]);
    let last = read(Finding::HeatColors);
    assert_eq!(sheet.removed_part(CORNER), Some(&last));
    assert_eq!(sheet.removed_part(Corner::RearLeft), None);
    assert_eq!(sheet.came_back_for(), Some(CameBackFor::Fitting));
}

/// The same entries, each on its own phone.
fn on_phones(whats: Vec<(&str, Event)>) -> JobState {
    let (phones, whats): (Vec<&str>, Vec<Event>) = whats.into_iter().unzip();
    let sheet = recorded(whats.into_iter().map(|what| (0, what)).collect());
    let mut entries = sheet.entries().to_vec();
    for (entry, phone) in entries.iter_mut().zip(phones) {
        phone.clone_into(&mut entry.device);
    }
    fold(entries)
}

fn answered(step: Step) -> Event {
    Event::Answered(StepKey::once(step), Reply::Done)
}

#[test]
fn a_job_belongs_to_the_van_that_did_it_and_not_to_the_phone_that_opened_or_ended_it() {
    use crate::job::entry::Opened;
    use crate::trade::wheel_end::Start;
    let opened = || {
        Event::Opened(Opened {
            start: Start::AtHome,
            practice: None,
        })
    };
    let prepared = vec![("shop", opened()), ("shop", answered(Step::Booking))];
    assert_eq!(van(&on_phones(prepared.clone())), "");
    let worked = vec![("n", site()), ("n", click(1)), ("n", click(2))];
    let looked_back = vec![
        ("shop", ended(Ending::Finished)),
        ("shop", answered(Step::RetorqueDone)),
        ("shop", answered(Step::Comeback)),
        ("shop", answered(Step::Booking)),
    ];
    let all = [prepared, worked, looked_back].concat();
    let sheet = on_phones(all);
    assert_eq!(van(&sheet), "n");
    // Its part left the van's stock with the van's last entry at the car, the fifth of all.
    assert_eq!(done_at(&sheet, finished(&sheet).unwrap()), ("n", 4));
    // Of two that did as much the first.
    let two = vec![("b", site()), ("a", click(1))];
    assert_eq!(van(&on_phones(two)), "b");
}

#[test]
fn clicks_are_those_of_the_phone_that_recorded_them() {
    let with = |nut: u8| match click(nut) {
        Event::Moved(moved) => Event::Moved(Moved {
            wrench: Some((
                "A".to_owned(),
                crate::units::Typed::parse("120", crate::units::TorqueUnit::NewtonMetre).unwrap(),
            )),
            ..moved
        }),
        other => other,
    };
    let sheet = on_phones(vec![("n", with(1)), ("s", with(2)), ("n", with(3))]);
    let all: Vec<_> = clicks(&sheet).into_iter().collect();
    assert_eq!(all, [(("n", "A"), 2), (("s", "A"), 1)]);
    // A choice between two recorded values says one of them again, and clicks nothing.
    let settled = on_phones(vec![("n", with(1)), ("n", with(2)), ("shop", with(1))]);
    let all: Vec<_> = clicks(&settled).into_iter().collect();
    assert_eq!(all, [(("n", "A"), 2)]);
    // In a new pass it is turned again.
    let pass = Event::Pass(StepKey::at(Step::TurnLugNuts, CORNER));
    let again = on_phones(vec![("n", with(1)), ("n", pass), ("n", with(1))]);
    let all: Vec<_> = clicks(&again).into_iter().collect();
    assert_eq!(all, [(("n", "A"), 2)]);
}
