//! The known traps of the gauge: each has its own refusal, or its own warning.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/record.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod record;
#[path = "support/technician.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod technician;

use hubslate::job::entry::{Carried, Event, Quantity, Reply};
use hubslate::job::judge;
use hubslate::job::kit::first_kit;
use hubslate::trade::play::{Conformity, ReadingFlag, WhyNot};
use hubslate::trade::wheel_end::{Choice, NotDoneReason, SetName, Step, StepKey, When};
use hubslate::units::{System, TemperatureUnit, Typed};
use record::{HERE, Job};
use technician::{Story, walk_to};

const FIRST: SetName = SetName {
    when: When::Before,
    nth: 1,
};

fn at(step: Step) -> StepKey {
    StepKey::at(step, HERE)
}

/// A job with its first set read, where these steps were answered otherwise.
fn read_with(answers: &[(StepKey, Reply)]) -> Job {
    let mut job = walk_to(Story::REPLACED, at(Step::Decide));
    for (key, reply) in answers {
        job.tap(vec![Event::Answered(*key, reply.clone())]);
    }
    job
}

#[track_caller]
fn marked(answers: &[(StepKey, Reply)], mark: ReadingFlag, refuses: bool) {
    let before = judge::measured(&read_with(&[]).sheet(), HERE, FIRST);
    let before = before.unwrap().unwrap();
    assert!(
        !before.set.marks().contains(&mark),
        "{mark:?} from the start"
    );
    let sheet = read_with(answers).sheet();
    let measured = judge::measured(&sheet, HERE, FIRST).unwrap().unwrap();
    assert!(measured.set.marks().contains(&mark), "{mark:?} is missing");
    let refused = measured.conformity == Conformity::NoComparison(WhyNot::ReadingFlag(mark));
    assert_eq!(refused, refuses, "{mark:?}: {:?}", measured.conformity);
}

fn picked(step: Step, pick: Choice) -> (StepKey, Reply) {
    (at(step), Reply::Picked(pick))
}

#[test]
fn what_is_no_play_is_not_compared() {
    marked(
        &[picked(Step::NutFound, Choice::NutSlack)],
        ReadingFlag::NutSlack,
        true,
    );
    let on = (at(Step::WheelOff), Reply::NotDone(NotDoneReason::WillNotGo));
    marked(&[on], ReadingFlag::WheelFitted, true);
    marked(
        &[picked(Step::RigPush, Choice::BaseElsewhere)],
        ReadingFlag::BaseNotOnKnuckle,
        true,
    );
    let untested = (at(Step::RigPush), Reply::NotDone(NotDoneReason::NoTime));
    marked(&[untested], ReadingFlag::FlexNotTested, true);
}

#[test]
fn what_may_mislead_is_reported_beside_the_reading() {
    marked(
        &[picked(Step::NutFound, Choice::NutRetorqued)],
        ReadingFlag::NutHadBeenLoosened,
        false,
    );
    let heat = |number, unit| {
        let typed = Typed::parse(number, unit).unwrap();
        let reply = Reply::Number(Quantity::Temperature(typed));
        [(StepKey::once(Step::HeatHere), reply)]
    };
    marked(
        &heat("60", TemperatureUnit::Celsius),
        ReadingFlag::HotHub,
        false,
    );
    marked(
        &heat("140", TemperatureUnit::Fahrenheit),
        ReadingFlag::HotHub,
        false,
    );
    let carried = |due: &str| {
        Event::Carried(Carried {
            dial_due: Some(due.parse().unwrap()),
            ..first_kit(System::Metric)
        })
    };
    for (due, overdue) in [("1970-01-01", true), ("2999-01-01", false)] {
        let mut job = read_with(&[]);
        job.tap(vec![carried(due)]);
        let measured = judge::measured(&job.sheet(), HERE, FIRST).unwrap().unwrap();
        assert_eq!(
            measured.set.marks().contains(&ReadingFlag::GaugeOverdue),
            overdue
        );
    }
    let warm = read_with(&heat("59", TemperatureUnit::Celsius)).sheet();
    let measured = judge::measured(&warm, HERE, FIRST).unwrap().unwrap();
    assert!(!measured.set.marks().contains(&ReadingFlag::HotHub));
}
