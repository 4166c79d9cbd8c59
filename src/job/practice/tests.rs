use super::*;
use crate::job::dial_setup::{recorded, required};
use crate::job::entry::Quantity;
use crate::job::evidence::decided;
use crate::job::kit::practice_kit;
use crate::job::recorded::sheet;
use crate::job::round::{Typing, saved};
use crate::job::{Status, next, plan, status};
use crate::trade::answer::Answer;
use crate::trade::fastening::doubts;
use crate::trade::fastening::spec::tests::source;
use crate::trade::play::Dial;
use crate::trade::practice::{Hands, Named};
use crate::trade::vehicle::{CheckDigit, Vin};
use crate::trade::wheel_end::{
    Check, Choice, Form, Phase, PlannedStep, SetName, When, procedure, round_number,
};
use crate::units::{System, TemperatureUnit};

const TOLD: Recorded<'static> = Recorded {
    family: "Practice: Marten 1.4",
    said: "It hums.",
};
const AT: Corner = Corner::FrontLeft;

fn whats(named: Named) -> Vec<Event> {
    let day = source().looked_up;
    let kit = practice_kit(Dial::HUNDREDTH_MM, System::Metric, day);
    let kit = (kit, "USD");
    packed(Code::Named(named), TOLD, &source(), kit)
}

#[test]
fn every_practice_job_begins_at_its_site() {
    for named in Named::ALL {
        let sheet = sheet(whats(*named));
        let steps = procedure(&plan(&sheet));
        let first = next(&sheet, &steps).unwrap();
        assert_eq!(first.phase, Phase::Site);
        assert_eq!(sheet.problems(), []);
        assert!(is_practice(&sheet));
        assert_eq!(car(&sheet), Some(Car::named(*named)));
    }
}

#[test]
fn its_number_passes_and_its_specs_are_sound() {
    assert_eq!(Vin::parse(VIN).unwrap().check(), CheckDigit::Passes);
    let mut items = Vec::new();
    for spec in specs(&source(), None) {
        assert_eq!(spec.fault(), None, "{spec:?}");
        assert_eq!(doubts(&spec), Vec::new(), "{spec:?}");
        items.push(spec.item);
    }
    let needed = crate::job::ready::specs(&sheet(whats(Named::Marten)));
    assert_eq!(
        items,
        needed.into_iter().map(|(_, item)| item).collect::<Vec<_>>()
    );
}

#[test]
fn no_spec_of_it_reaches_the_book() {
    let sheet = sheet(whats(Named::Marten));
    assert_eq!(crate::job::book::log_of_job(&sheet), None);
}

#[test]
fn a_real_job_and_an_unknown_car_show_nothing() {
    let opened = |practice: Option<&str>| {
        sheet(&[
            Event::Opened(Opened {
                start: Start::AtHome,
                practice: practice.map(str::to_owned),
            }),
            Event::Corners(vec![AT]),
        ])
    };
    for (practice, marked) in [(None, false), (Some("grey estate"), true)] {
        let sheet = opened(practice);
        assert_eq!(is_practice(&sheet), marked);
        assert_eq!(car(&sheet), None);
        assert_eq!(truth(&sheet), []);
        let steps = procedure(&plan(&sheet));
        assert!(steps.iter().all(|planned| met(&sheet, planned).is_none()));
    }
}

/// The answer of somebody who believes what the car shows.
fn honest(planned: &PlannedStep, met: Met) -> Option<Reply> {
    Some(match met {
        Met::Nuts(loose) => {
            let tight = if loose == 0 { Answer::Yes } else { Answer::No };
            match planned.form {
                Form::Ask => Reply::Said(tight),
                _ => Reply::Checked(vec![(Check::NutsAsFound, tight)]),
            }
        }
        Met::Felt(felt) => Reply::Felt(felt),
        Met::Found(pick) => Reply::Picked(pick),
        Met::Sign(answer) => Reply::Said(answer),
        Met::SignsAfter { .. } => return None,
        Met::Heat(heat) => {
            let text = format!("{:.0}", heat.in_unit(TemperatureUnit::Celsius));
            let typed = Typed::parse(&text, TemperatureUnit::Celsius).unwrap();
            Reply::Number(Quantity::Temperature(typed))
        }
        Met::Base(rig) => Reply::Picked(planned_car(rig)),
        Met::Needle(..) => return None,
    })
}

fn planned_car(rig: crate::trade::practice::Rig) -> Choice {
    BASE.with(|car| car.get().unwrap().base_gives(&rig))
}

thread_local! {
    static BASE: std::cell::Cell<Option<Car>> = const { std::cell::Cell::new(None) };
}

fn read(whats: &mut Vec<Event>, set: SetName, swings: u8) {
    let (way, _) = required(&sheet(&*whats));
    whats.push(recorded(AT, set, way));
    for round in 1..=3 {
        let sheet = sheet(&*whats);
        let planned = PlannedStep {
            key: StepKey::at(Step::Round, AT).nth(round_number(set, round)),
            phase: Phase::Gauge,
            form: Form::Round(set, round),
            holds: Vec::new(),
            changes: Vec::new(),
            joins: false,
        };
        let Some((car, Met::Needle(rig, nth))) = met(&sheet, &planned) else {
            panic!("no needle");
        };
        let at = |hands| car.needle(&rig, hands, nth, swings).count().to_string();
        let (push, pull) = (at(Hands::Push), at(Hands::Pull));
        let typing = Typing {
            push: Some(&push),
            pull: &pull,
            turns: None,
        };
        whats.extend(saved(&sheet, (AT, set, round), typing).unwrap());
    }
}

/// Walks what matters for the truth, by the procedure's own steps before and after the work.
fn inspected(named: Named, answer: impl Fn(&PlannedStep, Met) -> Option<Reply>) -> Vec<Event> {
    BASE.set(Some(Car::named(named)));
    let mut whats = whats(named);
    whats.push(Event::Answered(StepKey::once(Step::Drive), Reply::Done));
    let set = |when, nth| SetName { when, nth };
    // An answer can ask more questions, so the steps are looked up again after each.
    for _ in 0..100 {
        let sheet = sheet(&whats);
        let steps = procedure(&plan(&sheet));
        let answered = steps
            .iter()
            .filter(|planned| status(&sheet, planned) == Status::Open)
            .find_map(|planned| {
                let (_, met) = met(&sheet, planned)?;
                Some(Event::Answered(planned.key, answer(planned, met)?))
            });
        let Some(answered) = answered else { break };
        whats.push(answered);
    }
    read(&mut whats, set(When::Before, 1), 6);
    let first = decided(&sheet(&whats), AT, 1);
    let again = first.again;
    whats.push(Event::Decided(first));
    if again {
        read(&mut whats, set(When::Before, 2), 6);
        let second = decided(&sheet(&whats), AT, 2);
        whats.push(Event::Decided(second));
    }
    for (step, form) in [
        (StepKey::at(Step::RigPush, AT).nth(2), Form::Do),
        (StepKey::at(Step::ProveSpin, AT), Form::Do),
    ] {
        let planned = PlannedStep {
            key: step,
            phase: Phase::Prove,
            form,
            holds: Vec::new(),
            changes: Vec::new(),
            joins: false,
        };
        let (_, met) = met(&sheet(&whats), &planned).unwrap();
        whats.extend(answer(&planned, met).map(|reply| Event::Answered(planned.key, reply)));
    }
    read(&mut whats, set(When::After, 1), 6);
    whats
}

fn outcomes(whats: &[Event]) -> Vec<(&'static str, Outcome)> {
    let name = |hidden: &Hidden| match hidden {
        Hidden::Hub { bad: true } => "bad hub",
        Hidden::Hub { bad: false } => "sound hub",
        Hidden::Play { .. } => "play",
        Hidden::Rough => "rough",
        Hidden::Tires => "tires",
        Hidden::LooseNuts(_) => "nuts",
        Hidden::Base => "base",
        Hidden::Spec(_) => "card",
        Hidden::NewHub => "new hub",
    };
    let found = truth(&sheet(whats));
    found
        .iter()
        .map(|(hidden, outcome)| (name(hidden), *outcome))
        .collect()
}

/// What each named car has beside its play.
fn has(named: Named) -> &'static [&'static str] {
    match named {
        Named::Marten => &["bad hub", "play", "rough"],
        Named::Curlew => &["sound hub", "play", "tires"],
        Named::Dormouse => &["sound hub", "play", "nuts"],
        Named::Stoat => &["sound hub", "play", "base"],
        Named::Lapwing => &["bad hub", "play", "rough", "card"],
        Named::Newt => &["bad hub", "play", "new hub"],
    }
}

#[test]
fn who_believes_the_car_finds_what_it_has() {
    for named in Named::ALL {
        let mut whats = inspected(*named, honest);
        // Who finds the slip types the spec again from its page.
        whats.extend(specs(&source(), None).map(Event::Spec));
        let found = outcomes(&whats);
        let names: Vec<_> = found.iter().map(|(name, _)| *name).collect();
        assert_eq!(names, has(*named), "{named:?}");
        for (name, outcome) in found {
            assert_eq!(outcome, Outcome::Found, "{named:?}: {name}");
        }
    }
}

/// The answer of somebody who calls everything in order.
fn careless(planned: &PlannedStep, met: Met) -> Option<Reply> {
    Some(match met {
        Met::Nuts(_) => honest(planned, Met::Nuts(0))?,
        Met::Found(_) => Reply::Picked(match planned.key.step {
            Step::SignSwerve => Choice::LouderRight,
            _ => Choice::SmoothQuiet,
        }),
        Met::Base(_) => Reply::Picked(Choice::FlexNone),
        Met::Felt(_) => Reply::Felt(crate::trade::play::Felt::Nothing),
        Met::Sign(_) => Reply::Said(Answer::No),
        other => honest(planned, other)?,
    })
}

#[test]
fn who_calls_everything_in_order_misses_it() {
    for named in Named::ALL {
        let found = outcomes(&inspected(*named, careless));
        for (name, outcome) in &found {
            match *name {
                "rough" | "tires" | "nuts" | "base" | "card" => {
                    assert_eq!(*outcome, Outcome::Missed, "{named:?}: {name}");
                }
                // The dial cannot be talked out of it.
                _ => {}
            }
        }
        let hub = found[0];
        let wrong = matches!(named, Named::Marten | Named::Stoat);
        assert_eq!(hub.1 == Outcome::Missed, wrong, "{named:?}: {found:?}");
    }
}

#[test]
fn who_did_not_look_is_reported_so() {
    for named in Named::ALL {
        let expected = |name: &str| match name {
            "card" => Outcome::Missed,
            _ => Outcome::NotLooked,
        };
        for (name, outcome) in outcomes(&whats(*named)) {
            assert_eq!(outcome, expected(name), "{named:?}: {name}");
        }
    }
}
