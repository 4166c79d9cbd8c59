//! Passes over fasteners, tap by tap.
use super::*;
use crate::job::entry::Carried;
use crate::job::kit::MoreKit;
use crate::job::recorded::sheet;
use crate::job::{Status, status};
use crate::trade::fastening::{Position, Printed, SpecSource, TorqueBody, Upkeep};
use crate::trade::play::Dial;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Phase, Step};
use crate::units::{AngleUnit, LengthUnit, Torque, TorqueUnit};

pub(crate) const CORNER: Corner = Corner::FrontLeft;

pub(crate) fn planned(step: Step, group: ItemKind) -> PlannedStep {
    PlannedStep {
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

pub(crate) fn spec(item: SpecItem, stages: Vec<Stage>) -> Event {
    Event::Spec(Spec {
        item,
        body: SpecBody::Torque(TorqueBody {
            stages,
            position: (item == SpecItem::AxleNut).then_some(Position::AirBrakeHeld),
            conditions: Vec::new(),
            printed: Printed::default(),
            source: SpecSource {
                document: "Invented manual".to_owned(),
                page: "12".to_owned(),
                looked_up: "2026-03-02".parse().unwrap(),
                who: "A. Wrench".to_owned(),
                override_reason: None,
            },
        }),
    })
}

pub(crate) fn kit() -> Event {
    Event::Carried(Carried {
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
pub(crate) fn walk(
    planned: &PlannedStep,
    group: ItemKind,
    mut whats: Vec<Event>,
) -> (usize, Vec<Event>) {
    for taps in 0..100 {
        let now = sheet(&whats);
        let turning = Turning::of(&now, planned, group).unwrap();
        match turning.tap() {
            Some(what) => {
                assert_ne!(status(&now, planned), Status::Done);
                whats.push(what);
            }
            None => {
                assert_eq!(status(&now, planned), Status::Done);
                return (taps, whats);
            }
        }
    }
    panic!("the pass never ends");
}

#[test]
fn one_tap_a_lug_nut_in_the_order_of_the_star() {
    let planned = planned(Step::TurnLugNuts, ItemKind::LugNuts);
    let whats = vec![kit(), spec(SpecItem::LugNuts, vec![torque("103")])];
    let start = Turning::of(&sheet(&whats), &planned, ItemKind::LugNuts).unwrap();
    assert_eq!(start.places, [0, 2, 4, 1, 3]);
    assert!(!start.is_begun() && !start.is_last());
    // 103 N·m are 75.969 lb-ft; a newton metre is 0.74, so one decimal keeps what was typed.
    assert_eq!(start.set_to().unwrap().number.as_typed(), "76.0");
    let (taps, whats) = walk(&planned, ItemKind::LugNuts, whats);
    assert_eq!(taps, 5);
    let last = whats.last().unwrap();
    assert!(
        matches!(last, Event::Moved(m) if m.items[0].number == 5 && m.to == ItemState::Done
        && m.wrench.as_ref().unwrap().0 == "B")
    );
}

#[test]
fn torque_goes_over_all_before_the_angle_begins() {
    let planned = planned(Step::TurnHubBolts, ItemKind::HubBolts);
    let stages = vec![torque("60"), angle("90")];
    let (taps, whats) = walk(
        &planned,
        ItemKind::HubBolts,
        vec![kit(), spec(SpecItem::HubBolts, stages)],
    );
    assert_eq!(taps, 8);
    let to: Vec<(u8, ItemState)> = whats
        .iter()
        .filter_map(|what| match what {
            Event::Moved(moved) => Some((moved.items[0].number, moved.to)),
            _ => None,
        })
        .collect();
    assert_eq!(to[3], (4, ItemState::Snug));
    assert_eq!(to[4], (1, ItemState::Done));
    let angled = Turning::of(&sheet(&whats[..6]), &planned, ItemKind::HubBolts).unwrap();
    assert_eq!(angled.asked(), Some(&angle("90")));
    assert_eq!(angled.torque().unwrap().number.as_typed(), "60");
    assert!(angled.is_begun());
}

#[test]
fn a_pass_starts_again_at_the_first() {
    let planned = planned(Step::TurnLugNuts, ItemKind::LugNuts);
    let mut whats = vec![kit(), spec(SpecItem::LugNuts, vec![torque("103")])];
    for _ in 0..3 {
        let tap = Turning::of(&sheet(&whats), &planned, ItemKind::LugNuts)
            .unwrap()
            .tap();
        whats.push(tap.unwrap());
    }
    let partly = Turning::of(&sheet(&whats), &planned, ItemKind::LugNuts).unwrap();
    assert_eq!((partly.done, partly.is_begun()), (3, true));
    whats.push(Event::Pass(planned.key));
    let again = Turning::of(&sheet(&whats), &planned, ItemKind::LugNuts).unwrap();
    assert_eq!((again.done, again.is_begun()), (0, false));
    let (taps, _) = walk(&planned, ItemKind::LugNuts, whats);
    assert_eq!(taps, 5);
}

#[test]
fn nothing_is_closed_without_a_figure() {
    let planned = planned(Step::TurnAxleNut, ItemKind::AxleNut);
    let none = Turning::of(&sheet(&[]), &planned, ItemKind::AxleNut).unwrap();
    assert_eq!(none.tap(), None);
    let not_found = Event::Spec(Spec {
        item: SpecItem::AxleNut,
        body: SpecBody::NotFound {
            reason: "no signal".to_owned(),
        },
    });
    let none = Turning::of(&sheet(&[not_found]), &planned, ItemKind::AxleNut).unwrap();
    assert_eq!((none.tap(), none.asked()), (None, None));
}

#[test]
fn without_a_wrench_that_fits_the_tap_names_none() {
    let planned = planned(Step::TurnAxleNut, ItemKind::AxleNut);
    let whats = [kit(), spec(SpecItem::AxleNut, vec![torque("300")])];
    let turning = Turning::of(&sheet(&whats), &planned, ItemKind::AxleNut).unwrap();
    assert_eq!(turning.wrench(), None);
    assert!(turning.is_last());
    assert!(matches!(turning.tap(), Some(Event::Moved(m)) if m.wrench.is_none()));
}

#[test]
fn the_spec_of_the_same_corner_is_asked_first() {
    let at = |corner: Option<Corner>| PlannedStep {
        key: StepKey {
            step: Step::SpecLugNuts,
            corner,
            nth: 1,
        },
        form: Form::Spec(SpecItem::LugNuts),
        ..planned(Step::SpecLugNuts, ItemKind::LugNuts)
    };
    let steps = [at(None), at(Some(Corner::RearLeft)), at(Some(CORNER))];
    let turn = planned(Step::TurnLugNuts, ItemKind::LugNuts);
    assert_eq!(
        spec_step(&steps, &turn, ItemKind::LugNuts),
        Some(steps[2].key)
    );
    assert_eq!(
        spec_step(&steps[..1], &turn, ItemKind::LugNuts),
        Some(steps[0].key)
    );
    assert_eq!(spec_step(&steps, &turn, ItemKind::HubBolts), None);
}

fn wheel_spec(stages: Vec<Stage>, pattern: Pattern) -> Event {
    let mut what = spec(SpecItem::LugNuts, stages);
    if let Event::Spec(Spec {
        body: SpecBody::Torque(body),
        ..
    }) = &mut what
    {
        body.printed.pattern = Some(pattern);
    }
    what
}

#[test]
fn the_page_goes_before_the_star() {
    let planned = planned(Step::TurnLugNuts, ItemKind::LugNuts);
    let places = |pattern| {
        let sheet = sheet(&[wheel_spec(vec![torque("120")], pattern)]);
        Turning::of(&sheet, &planned, ItemKind::LugNuts)
            .unwrap()
            .places
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
    let planned = planned(Step::TurnAxleNut, ItemKind::AxleNut);
    let start = vec![kit(), spec(SpecItem::AxleNut, stages)];
    let (taps, whats) = walk(&planned, ItemKind::AxleNut, start);
    assert_eq!(taps, 5);
    let recorded: Vec<(ItemState, bool)> = whats
        .iter()
        .filter_map(|what| match what {
            Event::Moved(moved) => Some((moved.to, moved.wrench.is_some())),
            _ => None,
        })
        .collect();
    let expected = [
        (ItemState::Snug, false),
        (ItemState::Snug, true),
        (ItemState::Loosened, false),
        (ItemState::Snug, true),
        // An angle is turned on beyond the click.
        (ItemState::Done, false),
    ];
    assert_eq!(recorded, expected);
}

#[test]
fn a_fastener_that_came_off_is_turned_from_its_first_stage() {
    let planned = planned(Step::TurnLugNuts, ItemKind::LugNuts);
    let start = vec![spec(SpecItem::LugNuts, vec![torque("60"), torque("120")])];
    let (_, mut whats) = walk(&planned, ItemKind::LugNuts, start);
    let third = crate::trade::wheel_end::items(CORNER, ItemKind::LugNuts, 5)[2];
    let moved = |to| {
        Event::Moved(Moved {
            step: planned.key,
            items: vec![third],
            to,
            wrench: None,
        })
    };
    whats.push(moved(ItemState::Off));
    whats.push(moved(ItemState::ByHand));
    let now = sheet(&whats);
    assert_ne!(status(&now, &planned), Status::Done);
    let turning = Turning::of(&now, &planned, ItemKind::LugNuts).unwrap();
    assert_eq!((turning.stage, turning.next()), (0, Some(third)));
    let (taps, _) = walk(&planned, ItemKind::LugNuts, whats);
    assert_eq!(taps, 2);
}

#[test]
fn with_an_adapter_the_wrench_is_set_lower_and_what_was_set_is_saved() {
    // US Army TM 5-3810-305-23: 300 lb-ft with an 18 in wrench and a 6 in adapter: set 225.
    let planned = planned(Step::TurnAxleNut, ItemKind::AxleNut);
    let inches = |text| Typed::parse(text, LengthUnit::Inch).unwrap();
    let at = |degrees: &str| {
        Event::Lever(
            planned.key,
            Some(TypedLever {
                wrench: inches("18"),
                adapter: inches("6"),
                angle: Typed::parse(degrees, AngleUnit::Degree).unwrap(),
            }),
        )
    };
    let stage = Stage::Torque(Typed::parse("300", TorqueUnit::PoundFoot).unwrap());
    let long = Event::Carried(Carried {
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
    let start = [long, spec(SpecItem::AxleNut, vec![stage])];
    let set = |lever: Option<Event>| {
        let whats: Vec<Event> = start.iter().cloned().chain(lever).collect();
        let turning = Turning::of(&sheet(&whats), &planned, ItemKind::AxleNut).unwrap();
        let written = match turning.tap().unwrap() {
            Event::Moved(moved) => moved.wrench.map(|(_, set)| set),
            other => panic!("{other:?}"),
        };
        assert_eq!(written, turning.set_to());
        (written.map(|set| set.number.value()), turning.lever_slip())
    };
    assert_eq!(set(None), (Some(300.0), None));
    assert_eq!(set(Some(at("0"))), (Some(225.0), None));
    assert_eq!(set(Some(at("90"))), (Some(300.0), None));
    assert_eq!(
        set(Some(Event::Lever(planned.key, None))),
        (Some(300.0), None)
    );
    let folded = Event::Lever(
        planned.key,
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
    let planned = planned(Step::TurnAxleNut, ItemKind::AxleNut);
    let start = [spec(SpecItem::AxleNut, vec![torque("80"), angle("40")])];
    let turning = Turning::of(&sheet(&start), &planned, ItemKind::AxleNut).unwrap();
    assert_eq!(turning.swung(1), None);
    let tapped = [start[0].clone(), turning.tap().unwrap()];
    let turning = Turning::of(&sheet(&tapped), &planned, ItemKind::AxleNut).unwrap();
    let degrees = |swings| turning.swung(swings).unwrap().0.in_unit(AngleUnit::Degree);
    assert_eq!(
        [degrees(0), degrees(1), degrees(2), degrees(3)],
        [0.0, 15.0, 30.0, 40.0]
    );
    assert_eq!(degrees(255), 40.0);
}
