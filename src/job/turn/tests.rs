//! Passes over fasteners, tap by tap.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

use super::*;
use crate::job::entry::Carried;
use crate::job::kit::MoreKit;
use crate::job::told::sheet;
use crate::job::{Status, status};
use crate::trade::fastening::{CardSource, Position, Printed, TorqueBody, Upkeep};
use crate::trade::play::Dial;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Phase, Step};
use crate::units::{AngleUnit, LengthUnit, Torque, TorqueUnit};

pub(crate) const CORNER: Corner = Corner::FrontLeft;

pub(crate) fn spec(step: Step, group: Group) -> StepSpec {
    StepSpec {
        key: StepKey::at(step, CORNER),
        phase: Phase::Tighten,
        form: Form::Turn(group),
        holds: Vec::new(),
        changes: Vec::new(),
        joins: false,
    }
}

pub(crate) fn torque(text: &str) -> Stage {
    Stage::Torque(Typed::parse(text, TorqueUnit::NewtonMetre).unwrap())
}

pub(crate) fn angle(text: &str) -> Stage {
    Stage::Angle(Typed::parse(text, AngleUnit::Degree).unwrap())
}

pub(crate) fn card(item: CardItem, stages: Vec<Stage>) -> What {
    What::Card(SpecCard {
        item,
        body: CardBody::Torque(TorqueBody {
            stages,
            position: (item == CardItem::AxleNut).then_some(Position::AirBrakeHeld),
            conditions: Vec::new(),
            printed: Printed::default(),
            source: CardSource {
                document: "Invented manual".to_owned(),
                page: "12".to_owned(),
                looked_up: "2026-03-02".parse().unwrap(),
                who: "A. Wrench".to_owned(),
                kept_because: None,
            },
        }),
    })
}

pub(crate) fn kit() -> What {
    What::Carried(Carried {
        wrenches: vec![Wrench {
            name: "B".to_owned(),
            low: Torque::new(30.0, TorqueUnit::PoundFoot).unwrap(),
            high: Torque::new(150.0, TorqueUnit::PoundFoot).unwrap(),
            unit: TorqueUnit::PoundFoot,
            upkeep: Upkeep::default(),
        }],
        dial: Dial::THOU,
        more: MoreKit::default(),
        dial_due: None,
    })
}

/// Taps until the step is done, and how many taps that took.
pub(crate) fn walk(spec: &StepSpec, group: Group, mut whats: Vec<What>) -> (usize, Vec<What>) {
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

fn wheel_card(stages: Vec<Stage>, pattern: Pattern) -> What {
    let mut what = card(CardItem::WheelNuts, stages);
    if let What::Card(SpecCard {
        body: CardBody::Torque(body),
        ..
    }) = &mut what
    {
        body.printed.pattern = Some(pattern);
    }
    what
}

#[test]
fn the_page_goes_before_the_star() {
    let spec = spec(Step::TurnWheelNuts, Group::WheelNuts);
    let places = |pattern| {
        let sheet = sheet(&[wheel_card(vec![torque("120")], pattern)]);
        Turning::of(&sheet, &spec, Group::WheelNuts).unwrap().places
    };
    assert_eq!(places(Pattern::Star), [0, 2, 4, 1, 3]);
    assert_eq!(places(Pattern::Round), [0, 1, 2, 3, 4]);
    assert_eq!(places(Pattern::AsNumbered), [0, 1, 2, 3, 4]);
}

#[test]
fn a_nut_is_seated_turned_back_and_tightened_again() {
    let stages = vec![
        Stage::Snug,
        torque("100"),
        Stage::Back(None),
        torque("60"),
        angle("30"),
    ];
    let spec = spec(Step::TurnAxleNut, Group::AxleNut);
    let start = vec![kit(), card(CardItem::AxleNut, stages)];
    let (taps, whats) = walk(&spec, Group::AxleNut, start);
    assert_eq!(taps, 5);
    let told: Vec<(Hold, bool)> = whats
        .iter()
        .filter_map(|what| match what {
            What::Moved(moved) => Some((moved.to, moved.wrench.is_some())),
            _ => None,
        })
        .collect();
    let expected = [
        (Hold::Snug, false),
        (Hold::Snug, true),
        (Hold::Loosened, false),
        (Hold::Snug, true),
        // An angle is turned on beyond the click.
        (Hold::Done, false),
    ];
    assert_eq!(told, expected);
}

#[test]
fn a_fastener_that_came_off_is_turned_from_its_first_stage() {
    let spec = spec(Step::TurnWheelNuts, Group::WheelNuts);
    let start = vec![card(CardItem::WheelNuts, vec![torque("60"), torque("120")])];
    let (_, mut whats) = walk(&spec, Group::WheelNuts, start);
    let third = crate::trade::wheel_end::items(CORNER, Group::WheelNuts, 5)[2];
    let moved = |to| {
        What::Moved(Moved {
            step: spec.key,
            items: vec![third],
            to,
            wrench: None,
        })
    };
    whats.push(moved(Hold::Off));
    whats.push(moved(Hold::ByHand));
    let now = sheet(&whats);
    assert_ne!(status(&now, &spec), Status::Done);
    let turning = Turning::of(&now, &spec, Group::WheelNuts).unwrap();
    assert_eq!((turning.stage, turning.next()), (0, Some(third)));
    let (taps, _) = walk(&spec, Group::WheelNuts, whats);
    assert_eq!(taps, 2);
}

#[test]
fn with_an_adapter_the_wrench_is_set_lower_and_what_was_set_is_kept() {
    // US Army TM 5-3810-305-23: 300 lbf·ft with an 18 in wrench and a 6 in adapter: set 225.
    let spec = spec(Step::TurnAxleNut, Group::AxleNut);
    let inches = |text| Typed::parse(text, LengthUnit::Inch).unwrap();
    let at = |degrees: &str| {
        What::Lever(
            spec.key,
            Some(TypedLever {
                wrench: inches("18"),
                adapter: inches("6"),
                angle: Typed::parse(degrees, AngleUnit::Degree).unwrap(),
            }),
        )
    };
    let stage = Stage::Torque(Typed::parse("300", TorqueUnit::PoundFoot).unwrap());
    let long = What::Carried(Carried {
        wrenches: vec![Wrench {
            name: "long".to_owned(),
            low: Torque::new(60.0, TorqueUnit::PoundFoot).unwrap(),
            high: Torque::new(600.0, TorqueUnit::PoundFoot).unwrap(),
            unit: TorqueUnit::PoundFoot,
            upkeep: Upkeep::default(),
        }],
        dial: Dial::THOU,
        more: MoreKit::default(),
        dial_due: None,
    });
    let start = [long, card(CardItem::AxleNut, vec![stage])];
    let set = |lever: Option<What>| {
        let whats: Vec<What> = start.iter().cloned().chain(lever).collect();
        let turning = Turning::of(&sheet(&whats), &spec, Group::AxleNut).unwrap();
        let written = match turning.tap().unwrap() {
            What::Moved(moved) => moved.wrench.map(|(_, set)| set),
            other => panic!("{other:?}"),
        };
        assert_eq!(written, turning.set_to());
        (written.map(|set| set.number.value()), turning.lever_slip())
    };
    assert_eq!(set(None), (Some(300.0), None));
    assert_eq!(set(Some(at("0"))), (Some(225.0), None));
    assert_eq!(set(Some(at("90"))), (Some(300.0), None));
    assert_eq!(set(Some(What::Lever(spec.key, None))), (Some(300.0), None));
    let folded = What::Lever(
        spec.key,
        Some(TypedLever {
            wrench: inches("6"),
            adapter: inches("6"),
            angle: Typed::parse("180", AngleUnit::Degree).unwrap(),
        }),
    );
    assert_eq!(set(Some(folded)), (None, Some(LeverError::NotLonger)));
}

#[test]
fn swings_are_counted_up_to_the_angle_and_no_further() {
    let spec = spec(Step::TurnAxleNut, Group::AxleNut);
    let start = [card(CardItem::AxleNut, vec![torque("80"), angle("40")])];
    let turning = Turning::of(&sheet(&start), &spec, Group::AxleNut).unwrap();
    assert_eq!(turning.swung(1), None);
    let tapped = [start[0].clone(), turning.tap().unwrap()];
    let turning = Turning::of(&sheet(&tapped), &spec, Group::AxleNut).unwrap();
    let degrees = |swings| turning.swung(swings).unwrap().0.in_unit(AngleUnit::Degree);
    assert_eq!(
        [degrees(0), degrees(1), degrees(2), degrees(3)],
        [0.0, 15.0, 30.0, 40.0]
    );
    assert_eq!(degrees(255), 40.0);
}
