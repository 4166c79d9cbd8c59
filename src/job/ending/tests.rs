//! Which ending fits which entries.
use super::*;
use crate::job::entry::{Consent, Decided, Event, How, Inputs, Moved, Scope};
use crate::job::plan;
use crate::job::recorded::sheet;
use crate::trade::wheel_end::{Check, Choice};

const CORNER: Corner = Corner::FrontLeft;

fn ending(whats: &[Event]) -> Ending {
    let sheet = sheet(whats);
    proposed(&sheet, &plan(&sheet))
}

fn decided(decision: Decision) -> Event {
    Event::Decided(Decided {
        corner: CORNER,
        nth: 1,
        decision,
        again: false,
        reasons: Vec::new(),
        rules: 1,
        inputs: Inputs::none(),
    })
}

fn said(step: StepKey, answer: Answer) -> Event {
    Event::Answered(step, Reply::Said(answer))
}

fn consent(step: StepKey, scope: Scope, yes: bool) -> Event {
    Event::Consent(Consent {
        step,
        scope,
        yes,
        how: How::Spoken,
        amount: None,
    })
}

fn agree(yes: bool) -> Event {
    consent(StepKey::at(Step::Agree, CORNER), Scope::Repair, yes)
}

fn moved(group: ItemKind, to: ItemState) -> Event {
    Event::Moved(Moved {
        step: StepKey::at(Step::WheelOff, CORNER),
        items: vec![one(CORNER, group)],
        to,
        wrench: None,
    })
}

fn corners() -> Event {
    Event::Corners(vec![CORNER])
}

/// The last look under the car, each row answered alike.
fn clear(answer: Answer) -> Event {
    let rows = [Check::ToolsCounted, Check::ChocksOut].map(|check| (check, answer));
    Event::Answered(StepKey::once(Step::Clear), Reply::Checked(rows.to_vec()))
}

fn warning_lights(pick: Choice) -> Event {
    Event::Answered(StepKey::once(Step::ProveWarningLights), Reply::Picked(pick))
}

#[test]
fn anything_loose_leaves_it_unfinished_whatever_else_is_reported() {
    let refused = said(StepKey::once(Step::SiteLook), Answer::No);
    assert_eq!(ending(std::slice::from_ref(&refused)), Ending::NotSafeHere);
    let loose = [refused, moved(ItemKind::LugNuts, ItemState::Loosened)];
    assert_eq!(ending(&loose), Ending::LeftUnfinished);
}

#[test]
fn an_undecided_corner_leaves_it_unfinished() {
    assert_eq!(ending(&[]), Ending::LeftUnfinished);
    assert_eq!(ending(&[corners()]), Ending::LeftUnfinished);
    let asking = [corners(), decided(Decision::Replace)];
    assert_eq!(ending(&asking), Ending::LeftUnfinished);
}

#[test]
fn a_no_to_the_inspection_ends_it_before_it_begins() {
    let no = consent(StepKey::once(Step::TeardownYes), Scope::Teardown, false);
    assert_eq!(ending(&[corners(), no]), Ending::Declined);
}

#[test]
fn kept_and_watched_corners_end_with_nothing_wrong() {
    for decision in [Decision::Keep, Decision::Watch] {
        let with = |last: &[Event]| ending(&[&[corners(), decided(decision)], last].concat());
        assert_eq!(with(&[clear(Answer::Yes)]), Ending::NothingWrong);
        for unseen in [Answer::No, Answer::NotDone] {
            assert_eq!(with(&[clear(unseen)]), Ending::LeftUnfinished);
        }
        assert_eq!(with(&[]), Ending::LeftUnfinished);
    }
}

#[test]
fn a_pedal_that_is_not_firm_leaves_it_unfinished() {
    let brake = [
        corners(),
        decided(Decision::Keep),
        moved(ItemKind::Caliper, ItemState::Done),
        clear(Answer::Yes),
    ];
    assert_eq!(ending(&brake), Ending::LeftUnfinished);
    let pedal = StepKey::at(Step::Pedal, CORNER);
    let with = |answer| [brake.as_slice(), &[said(pedal, answer)]].concat();
    assert_eq!(ending(&with(Answer::No)), Ending::LeftUnfinished);
    assert_eq!(ending(&with(Answer::Yes)), Ending::NothingWrong);
}

#[test]
fn a_no_to_the_repair_is_declined() {
    let no = [
        corners(),
        decided(Decision::Stop),
        agree(false),
        clear(Answer::Yes),
    ];
    assert_eq!(ending(&no), Ending::Declined);
}

#[test]
fn a_repair_is_finished_only_when_its_result_was_looked_at_and_passed() {
    let spin = |pick| Event::Answered(StepKey::at(Step::ProveSpin, CORNER), Reply::Picked(pick));
    let result = Event::Answered(StepKey::once(Step::ProveResult), Reply::Done);
    let mut whats = vec![
        corners(),
        decided(Decision::Replace),
        agree(true),
        moved(ItemKind::Hub, ItemState::Done),
        spin(Choice::SmoothQuiet),
        clear(Answer::Yes),
        warning_lights(Choice::NoWarningLights),
    ];
    assert_eq!(ending(&whats), Ending::LeftUnfinished);
    whats.push(result);
    assert_eq!(ending(&whats), Ending::Finished);
    for on in [
        Choice::AbsWarningLight,
        Choice::BrakeWarningLight,
        Choice::OtherWarningLight,
    ] {
        let lit = [whats.as_slice(), &[warning_lights(on)]].concat();
        assert_eq!(ending(&lit), Ending::LeftUnfinished, "{on:?}");
    }
    whats.push(spin(Choice::Rough));
    assert!(is_blocked(&sheet(&whats), CORNER));
    assert_eq!(ending(&whats), Ending::LeftUnfinished);
}

#[test]
fn the_odometer_is_reported_as_it_is_and_as_it_will_stand() {
    let read = Typed::parse("81204", DistanceUnit::Mile).unwrap();
    let read = Reply::Number(Quantity::Distance(read));
    let odometer = Event::Answered(StepKey::once(Step::Odometer), read);
    let sheet = sheet(&[odometer]);
    let due = retorque(&sheet, "2026-03-30", DistanceUnit::Mile).unwrap();
    let (now, then) = retorque_odometer(&sheet, &due).unwrap();
    assert_eq!(now.number.as_typed(), "81204");
    // 50 mi after it.
    assert_eq!((then.number.as_typed(), then.unit), ("81254", now.unit));
}

#[test]
fn the_retorque_is_due_in_the_unit_of_the_odometer() {
    let read = |unit| {
        let read = Typed::parse("81250", unit).unwrap();
        let reply = Reply::Number(Quantity::Distance(read));
        sheet(&[Event::Answered(StepKey::once(Step::Odometer), reply)])
    };
    let due = |sheet: &JobState| retorque(sheet, "2026-03-30", DistanceUnit::Kilometre).unwrap();
    let recorded = |due: &Due| {
        let distance = due.distance.clone().unwrap();
        (distance.number.as_typed().to_owned(), distance.unit)
    };
    let miles = due(&read(DistanceUnit::Mile));
    assert_eq!(recorded(&miles), ("50".to_owned(), DistanceUnit::Mile));
    assert_eq!(miles.date, "2026-04-04");
    let unread = due(&sheet(&[]));
    assert_eq!(
        recorded(&unread),
        ("80".to_owned(), DistanceUnit::Kilometre)
    );
    assert_eq!(retorque(&sheet(&[]), "soon", DistanceUnit::Mile), None);
    let shop = ShopRetorque {
        after: Typed::parse("100", DistanceUnit::Kilometre).unwrap(),
        days: 7,
    };
    let by_shop = |sheet: &JobState| {
        retorque_by(sheet, "2026-03-30", DistanceUnit::Kilometre, Some(&shop)).unwrap()
    };
    let unread = by_shop(&sheet(&[]));
    assert_eq!(
        recorded(&unread),
        ("100".to_owned(), DistanceUnit::Kilometre)
    );
    // March has 31 days.
    assert_eq!(unread.date, "2026-04-06");
    // 100 km are 62.137 mi (a mile is 1.609344 km exactly).
    let miles = by_shop(&read(DistanceUnit::Mile));
    assert_eq!(recorded(&miles), ("62".to_owned(), DistanceUnit::Mile));
}

#[test]
fn a_bearing_is_checked_again_only_while_it_is_watched() {
    let due = recheck("2026-02-20").unwrap();
    // February 2026 has 28 days.
    assert_eq!(
        (due.kind, due.date.as_str()),
        (DueKind::Recheck, "2026-03-22")
    );
    assert_eq!(recheck("soon"), None);
    let mut whats = vec![
        Event::Corners(vec![CORNER]),
        decided(Decision::Watch),
        Event::Due(due.clone()),
    ];
    assert_eq!(watched(&sheet(&whats)), Some(&due));
    whats.push(decided(Decision::Replace));
    assert_eq!(watched(&sheet(&whats)), None);
}

#[test]
fn an_odometer_that_reads_less_than_last_time_went_back() {
    use crate::units::DistanceUnit::{Kilometre, Mile};
    let read = |text, unit| {
        let read = Typed::parse(text, unit).unwrap();
        let now = Reply::Number(Quantity::Distance(read));
        let now = sheet([Event::Answered(StepKey::once(Step::Odometer), now)]);
        odometer(&now).unwrap()
    };
    let before = read("80000", Mile);
    assert!(went_back(&read("79999", Mile), &before));
    assert!(!went_back(&read("80000", Mile), &before));
    assert!(!went_back(&read("80001", Mile), &before));
    // 80 000 mi are 128 747 km.
    assert!(went_back(&read("128000", Kilometre), &before));
    assert!(!went_back(&read("129000", Kilometre), &before));
    assert_eq!(odometer(&sheet([])), None);
}

#[test]
fn rollers_that_were_set_are_measured_again_with_the_lug_nuts() {
    use crate::job::entry::{Moved, VehicleField};
    use crate::trade::wheel_end::{Item, ItemKind, ItemState};
    let fact = |code: &str| Event::Vehicle(VehicleField::Kind, code.to_owned());
    let off = Event::Moved(Moved {
        step: StepKey::at(Step::SpindleNutOff, CORNER),
        items: vec![Item {
            corner: CORNER,
            group: ItemKind::SpindleNut,
            number: 1,
        }],
        to: ItemState::Off,
        wrench: None,
    });
    let at = |whats: &[Event]| {
        let sheet = sheet(whats);
        let nuts = retorque(&sheet, "2026-03-30", DistanceUnit::Mile).unwrap();
        end_play_again(&sheet, &nuts)
    };
    let corners = Event::Corners(vec![CORNER]);
    assert_eq!(at(&[corners.clone(), fact("tapered")]), None);
    assert_eq!(
        at(&[corners.clone(), fact("spindle_hub"), off.clone()]),
        None
    );
    let mut whats = vec![corners, fact("tapered"), off];
    let due = at(&whats).unwrap();
    assert_eq!(due.kind, DueKind::Recheck);
    assert!(due.distance.is_some());
    whats.push(Event::Due(due.clone()));
    assert_eq!(watched(&sheet(&whats)), Some(&due));
}
