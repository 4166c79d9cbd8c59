//! Passes over fasteners, tap by tap.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

use super::*;
use crate::job::entry::{At, Carried, Entry, EntryId, LogId};
use crate::job::{Status, fold, status};
use crate::trade::fastening::{CardSource, Position, TorqueBody};
use crate::trade::play::Dial;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Phase, Step};
use crate::units::{AngleUnit, Torque, TorqueUnit};

const CORNER: Corner = Corner::FrontLeft;

fn sheet(whats: &[What]) -> Sheet {
    fold(whats.iter().enumerate().map(|(n, what)| {
        Entry {
            id: EntryId(format!("{n:04}")),
            log: LogId("log".to_owned()),
            at: At {
                utc_ms: 0,
                offset_min: 0,
                told: None,
            },
            by: String::new(),
            device: "d".to_owned(),
            n: n as u64,
            after: n
                .checked_sub(1)
                .map(|before| EntryId(format!("{before:04}")))
                .into_iter()
                .collect(),
            what: what.clone(),
        }
    }))
}

fn spec(step: Step, group: Group) -> StepSpec {
    StepSpec {
        key: StepKey::at(step, CORNER),
        phase: Phase::Tighten,
        form: Form::Turn(group),
        holds: Vec::new(),
        changes: Vec::new(),
    }
}

fn torque(text: &str) -> Stage {
    Stage::Torque(Typed::parse(text, TorqueUnit::NewtonMetre).unwrap())
}

fn angle(text: &str) -> Stage {
    Stage::Angle(Typed::parse(text, AngleUnit::Degree).unwrap())
}

fn card(item: CardItem, stages: Vec<Stage>) -> What {
    What::Card(SpecCard {
        item,
        body: CardBody::Torque(TorqueBody {
            stages,
            position: (item == CardItem::AxleNut).then_some(Position::AirBrakeHeld),
            conditions: Vec::new(),
            source: CardSource {
                document: "Invented manual".to_owned(),
                page: "12".to_owned(),
                looked_up: "2026-03-02".parse().unwrap(),
                who: "A. Wrench".to_owned(),
            },
        }),
    })
}

fn kit() -> What {
    What::Carried(Carried {
        wrenches: vec![Wrench {
            name: "B".to_owned(),
            low: Torque::new(30.0, TorqueUnit::PoundFoot).unwrap(),
            high: Torque::new(150.0, TorqueUnit::PoundFoot).unwrap(),
            unit: TorqueUnit::PoundFoot,
        }],
        dial: Dial::THOU,
        dial_due: None,
    })
}

/// Taps until the step is done, and how many taps that took.
fn walk(spec: &StepSpec, group: Group, mut whats: Vec<What>) -> (usize, Vec<What>) {
    for taps in 0..100 {
        let now = sheet(&whats);
        let turning = Turning::of(&now, spec, group).unwrap();
        match turning.tap() {
            Some(what) => {
                assert_ne!(status(&now, spec), Status::Done);
                whats.push(what);
            }
            None => {
                assert_eq!(status(&now, spec), Status::Done);
                return (taps, whats);
            }
        }
    }
    panic!("the pass never ends");
}

#[test]
fn one_tap_a_wheel_nut_in_the_order_of_the_star() {
    let spec = spec(Step::TurnWheelNuts, Group::WheelNuts);
    let whats = vec![kit(), card(CardItem::WheelNuts, vec![torque("103")])];
    let start = Turning::of(&sheet(&whats), &spec, Group::WheelNuts).unwrap();
    assert_eq!(start.places, [0, 2, 4, 1, 3]);
    assert!(!start.is_begun() && !start.is_last());
    // 103 N·m are 75.969 lbf·ft; a newton metre is 0.74, so one decimal keeps what was typed.
    assert_eq!(start.set_to().unwrap().number.as_typed(), "76.0");
    let (taps, whats) = walk(&spec, Group::WheelNuts, whats);
    assert_eq!(taps, 5);
    let last = whats.last().unwrap();
    assert!(
        matches!(last, What::Moved(m) if m.items[0].number == 5 && m.to == Hold::Done
        && m.wrench.as_ref().unwrap().0 == "B")
    );
}

#[test]
fn torque_goes_over_all_before_the_angle_begins() {
    let spec = spec(Step::TurnHubBolts, Group::HubBolts);
    let stages = vec![torque("60"), angle("90")];
    let (taps, whats) = walk(
        &spec,
        Group::HubBolts,
        vec![kit(), card(CardItem::HubBolts, stages)],
    );
    assert_eq!(taps, 8);
    let to: Vec<(u8, Hold)> = whats
        .iter()
        .filter_map(|what| match what {
            What::Moved(moved) => Some((moved.items[0].number, moved.to)),
            _ => None,
        })
        .collect();
    assert_eq!(to[3], (4, Hold::Snug));
    assert_eq!(to[4], (1, Hold::Done));
    let angled = Turning::of(&sheet(&whats[..6]), &spec, Group::HubBolts).unwrap();
    assert_eq!(angled.asked(), Some(&angle("90")));
    assert_eq!(angled.torque().unwrap().number.as_typed(), "60");
    assert!(angled.is_begun());
}

#[test]
fn a_pass_starts_again_at_the_first() {
    let spec = spec(Step::TurnWheelNuts, Group::WheelNuts);
    let mut whats = vec![kit(), card(CardItem::WheelNuts, vec![torque("103")])];
    for _ in 0..3 {
        let tap = Turning::of(&sheet(&whats), &spec, Group::WheelNuts)
            .unwrap()
            .tap();
        whats.push(tap.unwrap());
    }
    let partly = Turning::of(&sheet(&whats), &spec, Group::WheelNuts).unwrap();
    assert_eq!((partly.done, partly.is_begun()), (3, true));
    whats.push(What::Pass(spec.key));
    let again = Turning::of(&sheet(&whats), &spec, Group::WheelNuts).unwrap();
    assert_eq!((again.done, again.is_begun()), (0, false));
    let (taps, _) = walk(&spec, Group::WheelNuts, whats);
    assert_eq!(taps, 5);
}

#[test]
fn nothing_is_closed_without_a_figure() {
    let spec = spec(Step::TurnAxleNut, Group::AxleNut);
    let none = Turning::of(&sheet(&[]), &spec, Group::AxleNut).unwrap();
    assert_eq!(none.tap(), None);
    let not_found = What::Card(SpecCard {
        item: CardItem::AxleNut,
        body: CardBody::NotFound {
            reason: "no signal".to_owned(),
        },
    });
    let none = Turning::of(&sheet(&[not_found]), &spec, Group::AxleNut).unwrap();
    assert_eq!((none.tap(), none.asked()), (None, None));
}

#[test]
fn without_a_wrench_that_fits_the_tap_names_none() {
    let spec = spec(Step::TurnAxleNut, Group::AxleNut);
    let whats = [kit(), card(CardItem::AxleNut, vec![torque("300")])];
    let turning = Turning::of(&sheet(&whats), &spec, Group::AxleNut).unwrap();
    assert_eq!(turning.wrench(), None);
    assert!(turning.is_last());
    assert!(matches!(turning.tap(), Some(What::Moved(m)) if m.wrench.is_none()));
}

#[test]
fn the_card_of_the_same_corner_is_asked_first() {
    let at = |corner: Option<Corner>| StepSpec {
        key: StepKey {
            step: Step::CardWheelNuts,
            corner,
            nth: 1,
        },
        form: Form::Card(CardItem::WheelNuts),
        ..spec(Step::CardWheelNuts, Group::WheelNuts)
    };
    let steps = [at(None), at(Some(Corner::RearLeft)), at(Some(CORNER))];
    let turn = spec(Step::TurnWheelNuts, Group::WheelNuts);
    assert_eq!(
        card_step(&steps, &turn, Group::WheelNuts),
        Some(steps[2].key)
    );
    assert_eq!(
        card_step(&steps[..1], &turn, Group::WheelNuts),
        Some(steps[0].key)
    );
    assert_eq!(card_step(&steps, &turn, Group::HubBolts), None);
}
