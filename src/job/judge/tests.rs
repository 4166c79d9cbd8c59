//! How long the figures of a set that a decision recorded stand.
use super::*;
use crate::job::dial_setup::recorded as set_up;
use crate::job::entry::{Entry, EntryId, Event};
use crate::job::evidence::decided;
use crate::job::fold;
use crate::job::recorded::sheet;
use crate::trade::fastening::{Spec, SpecBody};
use crate::trade::play::Way;
use crate::trade::wheel_end::NotDoneReason;
use crate::units::{AngleUnit, Decimal, Typed};

const HERE: Corner = Corner::FrontLeft;
const SECOND: SetName = SetName {
    when: When::Before,
    nth: 2,
};

fn pulled(round: u8, divisions: &str) -> Event {
    Event::Reading(Reading {
        corner: HERE,
        set: SECOND,
        round,
        side: Side::Pull,
        divisions: Decimal::parse(divisions).unwrap(),
        turns: None,
        dial: Dial::HUNDREDTH_MM,
    })
}

fn picked(pick: Choice) -> Event {
    Event::Answered(flex_step(HERE, SECOND), Reply::Picked(pick))
}

/// A second set, and the decision on it whose limit other rules may have taken.
fn recorded_once() -> Vec<Event> {
    let mut whats = vec![
        Event::Corners(vec![HERE]),
        set_up(HERE, SECOND, Way::DEFAULT),
        picked(Choice::FlexNone),
        pulled(1, "2"),
        pulled(2, "2"),
        pulled(3, "2"),
    ];
    let mut decided = decided(&sheet(&whats), HERE, 1);
    let mut figures = decided.inputs.sets.remove(0);
    figures.1.limit.value = by_other_rules();
    decided.inputs.sets.push(figures);
    whats.push(Event::Decided(decided));
    whats
}

fn by_other_rules() -> Length {
    Length::thou(7.0)
}

/// Whether the set is told with the figures that were recorded of it.
fn stands(sheet: &JobState) -> bool {
    let set = crate::job::sets::reported(sheet, HERE, SECOND)
        .unwrap()
        .unwrap();
    set.limit.value == by_other_rules()
}

#[test]
fn what_a_decision_recorded_of_a_set_stands_until_something_it_rests_on_is_reported_or_taken_back()
{
    let whats = recorded_once();
    assert!(stands(&sheet(&whats)));
    let later = |what: Event| sheet([whats.clone(), vec![what]].concat());
    let strike = |place: usize| Event::Strike(vec![EntryId(format!("{place:04}"))]);
    let spec = Spec {
        item: SpecItem::PlayLimit,
        body: SpecBody::NotFound {
            reason: "none".to_owned(),
        },
    };
    let degree = Typed::parse("0", AngleUnit::Degree).unwrap();
    for new in [
        pulled(2, "2"),
        strike(4),
        strike(2),
        set_up(HERE, SECOND, Way::DEFAULT),
        picked(Choice::FlexNone),
        Event::TipAngle(HERE, SECOND, degree),
        Event::Crept(HERE, SECOND, Decimal::parse("1").unwrap()),
        Event::Spec(spec),
        Event::Answered(
            StepKey::at(Step::WheelOff, HERE),
            Reply::NotDone(NotDoneReason::Other),
        ),
    ] {
        assert!(!stands(&later(new.clone())), "{new:?}");
    }
    assert!(stands(&later(Event::Note(None, "cleaned".to_owned()))));
    // Read again, and that taken back: nobody knows any more what the record had seen.
    let again = [whats.clone(), vec![pulled(2, "9"), strike(7)]].concat();
    assert!(!stands(&sheet(again)));
}

#[test]
fn a_cycle_that_another_phone_read_beside_the_decision_makes_the_set_live() {
    let whats = recorded_once();
    let mut entries = sheet(&whats).entries().to_vec();
    let record = entries.last().unwrap().clone();
    // By its id it comes before the decision, which had not seen it.
    let beside = Entry {
        id: EntryId(format!("{:04}+", whats.len() - 2)),
        what: pulled(3, "20"),
        ..record.clone()
    };
    assert!(beside.id < record.id);
    entries.push(beside);
    let merged = fold(entries);
    assert_eq!(merged.entries().last(), Some(&record));
    assert!(!stands(&merged));
}
