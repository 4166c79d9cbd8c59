//! How long the figures of a set that a decision recorded stand.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

use super::*;
use crate::job::dial_setup::recorded as set_up;
use crate::job::entry::{Entry, EntryId, What};
use crate::job::evidence::decided;
use crate::job::fold;
use crate::job::told::sheet;
use crate::trade::fastening::{CardBody, SpecCard};
use crate::trade::play::Way;
use crate::trade::wheel_end::Because;
use crate::units::{AngleUnit, Decimal, Typed};

const HERE: Corner = Corner::FrontLeft;
const SECOND: SetName = SetName {
    when: When::Before,
    nth: 2,
};

fn pulled(round: u8, divisions: &str) -> What {
    What::Reading(Reading {
        corner: HERE,
        set: SECOND,
        round,
        side: Side::Pull,
        divisions: Decimal::parse(divisions).unwrap(),
        turns: None,
        dial: Dial::HUNDREDTH_MM,
    })
}

fn picked(pick: Pick) -> What {
    What::Answered(flex_step(HERE, SECOND), Reply::Picked(pick))
}

/// A second set, and the decision on it whose limit other rules may have taken.
fn told_once() -> Vec<What> {
    let mut whats = vec![
        What::Corners(vec![HERE]),
        set_up(HERE, SECOND, Way::DEFAULT),
        picked(Pick::FlexNone),
        pulled(1, "2"),
        pulled(2, "2"),
        pulled(3, "2"),
    ];
    let mut decided = decided(&sheet(&whats), HERE, 1);
    let mut figures = decided.inputs.sets.remove(0);
    figures.1.limit.value = by_other_rules();
    decided.inputs.sets.push(figures);
    whats.push(What::Decided(decided));
    whats
}

fn by_other_rules() -> Length {
    Length::thou(7.0)
}

/// Whether the set is told with the figures that were recorded of it.
fn stands(sheet: &Sheet) -> bool {
    let set = told(sheet, HERE, SECOND).unwrap().unwrap();
    set.limit.value == by_other_rules()
}

#[test]
fn what_a_decision_recorded_of_a_set_stands_until_something_it_rests_on_is_told_or_taken_back() {
    let whats = told_once();
    assert!(stands(&sheet(&whats)));
    let later = |what: What| sheet([whats.clone(), vec![what]].concat());
    let strike = |place: usize| What::Strike(vec![EntryId(format!("{place:04}"))]);
    let card = SpecCard {
        item: CardItem::PlayLimit,
        body: CardBody::NotFound {
            reason: "none".to_owned(),
        },
    };
    let degree = Typed::parse("0", AngleUnit::Degree).unwrap();
    for new in [
        pulled(2, "2"),
        strike(4),
        strike(2),
        set_up(HERE, SECOND, Way::DEFAULT),
        picked(Pick::FlexNone),
        What::TipAngle(HERE, SECOND, degree),
        What::Crept(HERE, SECOND, Decimal::parse("1").unwrap()),
        What::Card(card),
        What::Answered(
            StepKey::at(Step::WheelOff, HERE),
            Reply::NotDone(Because::Other),
        ),
    ] {
        assert!(!stands(&later(new.clone())), "{new:?}");
    }
    assert!(stands(&later(What::Note(None, "cleaned".to_owned()))));
    // Read again, and that taken back: nobody knows any more what the record had seen.
    let again = [whats.clone(), vec![pulled(2, "9"), strike(7)]].concat();
    assert!(!stands(&sheet(again)));
}

#[test]
fn a_cycle_that_another_phone_read_beside_the_decision_makes_the_set_live() {
    let whats = told_once();
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
