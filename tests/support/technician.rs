//! A technician who does every step that comes next, so that whole jobs can be folded.

use hubslate::job::dial_setup::recorded;
use hubslate::job::entry::{
    Consent, Decided, Due, DueKind, Ended, Ending, Event, How, Inputs, Money, Moved, Photo, Price,
    Quantity, Reading, Reply, Scope, Side, Signed, VehicleField,
};
use hubslate::job::{JobState, group_items, next, plan};
use hubslate::trade::answer::Answer;
use hubslate::trade::fastening::{
    Printed, Spec, SpecBody, SpecItem, SpecSource, Stage, TorqueBody,
};
use hubslate::trade::play::{Decision, Dial, Felt, Way};
use hubslate::trade::wheel_end::{
    Change, Form, ItemKind, Measured, NutPosition, PlannedStep, Start, Step, StepKey, When,
    procedure,
};
use hubslate::units::{Decimal, DistanceUnit, LengthUnit, TemperatureUnit, TorqueUnit, Typed};

use crate::record::{HERE, Job, opened};

/// What this job turns out to be.
#[derive(Clone, Copy, Debug)]
pub struct Story {
    pub start: Start,
    pub nut: NutPosition,
    pub decision: Decision,
    /// Whether the customer says yes to the repair.
    pub yes: bool,
    /// Whether the first decision asks for a second set.
    pub again: bool,
    /// Whether the new hub plays as far as the old one did.
    pub still_plays: bool,
    /// What stands at the wheel, where it is no bolted, driven hub.
    pub end: &'static [(VehicleField, &'static str)],
}

impl Story {
    /// The plain case: at home, nut against the brake, replaced with a yes.
    pub const REPLACED: Self = Self {
        start: Start::AtHome,
        nut: NutPosition::AirBrakeHeld,
        decision: Decision::Replace,
        yes: true,
        again: false,
        still_plays: false,
        end: &[],
    };

    /// A repair of each other kind, with what of it changes the steps; the parking brake acts on the
    /// corner that is worked at.
    pub const KINDS: [&'static [(VehicleField, &'static str)]; 9] = [
        &[(VehicleField::Kind, "bolted_free")],
        &[
            (VehicleField::Kind, "bolted_free"),
            (VehicleField::Brake, "drum"),
            (VehicleField::ParkingBrake, "front"),
        ],
        &[
            (VehicleField::Kind, "spindle_hub"),
            (VehicleField::Sensor, "none"),
        ],
        &[
            (VehicleField::Kind, "spindle_hub"),
            (VehicleField::Brake, "drum"),
        ],
        &[
            (VehicleField::Kind, "tapered"),
            (VehicleField::Brake, "drum"),
        ],
        &[
            (VehicleField::Kind, "tapered"),
            (VehicleField::NutLock, "lock_nut"),
            (VehicleField::Brake, "none"),
        ],
        &[(VehicleField::Kind, "pressed")],
        &[
            (VehicleField::Kind, "pressed"),
            (VehicleField::Pressing, "on_car"),
            (VehicleField::Encoder, "ring"),
            (VehicleField::Fixing, "bolts"),
        ],
        &[
            (VehicleField::Kind, "pressed_free"),
            (VehicleField::Brake, "drum"),
        ],
    ];

    /// The plain case at a wheel end of another kind.
    pub const fn at(end: &'static [(VehicleField, &'static str)]) -> Self {
        Self {
            end,
            ..Self::REPLACED
        }
    }
}

/// A job that is opened and not begun.
pub fn begin(story: Story) -> Job {
    let mut job = Job::opened();
    job.entries.clear();
    job.tap(vec![opened(story.start)]);
    job
}

/// The steps of the job as it stands.
pub fn steps(sheet: &JobState) -> Vec<PlannedStep> {
    procedure(&plan(sheet))
}

/// The key of the step that comes next.
pub fn next_key(sheet: &JobState) -> Option<StepKey> {
    next(sheet, &steps(sheet)).map(|planned| planned.key)
}

/// Does the next step in one tap; `false` when none is left.
pub fn step(job: &mut Job, story: Story) -> bool {
    let sheet = job.sheet();
    let steps = steps(&sheet);
    match next(&sheet, &steps) {
        Some(planned) => {
            job.tap(answer(&sheet, planned, story));
            true
        }
        None => false,
    }
}

/// Walks until `stop` comes next.
///
/// # Panics
/// If the job ends before, or goes round in circles.
pub fn walk_to(story: Story, stop: StepKey) -> Job {
    let mut job = begin(story);
    for _ in 0..200 {
        if next_key(&job.sheet()) == Some(stop) {
            return job;
        }
        assert!(step(&mut job, story), "{stop:?} never came");
    }
    panic!("went round in circles before {stop:?}");
}

/// What a good technician taps at a step.
pub fn answer(sheet: &JobState, planned: &PlannedStep, story: Story) -> Vec<Event> {
    let reply = |reply| Event::Answered(planned.key, reply);
    let mut whats = match &planned.form {
        Form::Corners => vec![Event::Corners(vec![HERE])],
        Form::Spec(item) => vec![Event::Spec(spec(*item, story.nut))],
        Form::Vehicle => {
            let studs = (VehicleField::Studs, "5");
            let facts = [studs].into_iter().chain(story.end.iter().copied());
            let fact = |(field, text): (_, &str)| Event::Vehicle(field, text.to_owned());
            facts.map(fact).chain([reply(Reply::Done)]).collect()
        }
        Form::Price => vec![price()],
        Form::Ask => vec![reply(Reply::Said(Answer::Yes))],
        Form::Checks(checks) => {
            let seen = checks.iter().map(|check| (*check, Answer::Yes)).collect();
            vec![reply(Reply::Checked(seen))]
        }
        Form::Choice(picks) => vec![reply(Reply::Picked(picks[0]))],
        Form::Number(Measured::Odometer) => vec![reply(odometer())],
        Form::Number(Measured::HubHeat) => vec![reply(heat())],
        Form::Photo => vec![Event::Photo(photo(planned.key))],
        Form::Swing => vec![reply(Reply::Felt(Felt::JustFelt))],
        Form::DialSetup(set) => vec![recorded(HERE, *set, Way::DEFAULT)],
        Form::Round(..) => readings(planned, story),
        Form::Decide(nth) => vec![decided(*nth, story)],
        Form::Consent => vec![consent(
            planned.key,
            planned.key.step != Step::Agree || story.yes,
        )],
        Form::Turn(group) => turn(sheet, planned.key, *group),
        Form::Retorque => vec![due(), reply(Reply::Done)],
        Form::Sign => vec![Event::Signed(Signed {
            step: planned.key,
            strokes: "M1 1L9 9".to_owned(),
        })],
        Form::End => vec![ended()],
        Form::Booking | Form::Kit | Form::Ready | Form::Do | Form::Result | Form::Report => {
            vec![reply(Reply::Done)]
        }
    };
    whats.extend(
        planned
            .changes
            .iter()
            .map(|c| change(sheet, planned.key, *c)),
    );
    whats
}

fn change(sheet: &JobState, step: StepKey, change: Change) -> Event {
    let mut items = group_items(sheet, HERE, change.group);
    items.retain(|item| change.only.is_none_or(|only| only == item.number));
    Event::Moved(Moved {
        step,
        items,
        to: change.to,
        wrench: None,
    })
}

/// A whole final pass: the pass begins, then one entry a fastener.
pub fn turn(sheet: &JobState, step: StepKey, group: ItemKind) -> Vec<Event> {
    let mut whats = vec![Event::Pass(step)];
    whats.extend(group_items(sheet, HERE, group).into_iter().map(|item| {
        Event::Moved(Moved {
            step,
            items: vec![item],
            to: hubslate::trade::wheel_end::ItemState::Done,
            wrench: None,
        })
    }));
    whats
}

pub fn spec(item: SpecItem, nut: NutPosition) -> Spec {
    let source = SpecSource {
        document: "Invented service sheet 7".to_owned(),
        page: "12".to_owned(),
        looked_up: chrono::NaiveDate::from_ymd_opt(2026, 5, 4).unwrap(),
        who: "T. Okafor-Lind".to_owned(),
        override_reason: None,
    };
    let body = match item {
        SpecItem::PlayLimit => SpecBody::Play {
            least: None,

            most: Typed::parse("0.05", LengthUnit::Millimetre).unwrap(),
            way: Way::DEFAULT,
            source,
        },
        _ => SpecBody::Torque(TorqueBody {
            stages: vec![Stage::Torque(
                Typed::parse("110", TorqueUnit::NewtonMetre).unwrap(),
            )],
            position: (item == SpecItem::AxleNut).then_some(nut),
            conditions: Vec::new(),
            printed: Printed::default(),
            source,
        }),
    };
    Spec { item, body }
}

pub fn consent(step: StepKey, yes: bool) -> Event {
    Event::Consent(Consent {
        step,
        scope: Scope::Repair,
        yes,
        how: How::Spoken,
        amount: None,
    })
}

pub fn decided(nth: u8, story: Story) -> Event {
    Event::Decided(Decided {
        corner: HERE,
        nth,
        decision: story.decision,
        again: story.again && nth == 1,
        reasons: vec!["rough".to_owned()],
        rules: 1,
        inputs: Inputs::none(),
    })
}

fn readings(planned: &PlannedStep, story: Story) -> Vec<Event> {
    let Form::Round(set, round) = planned.form else {
        return Vec::new();
    };
    let read = |(side, divisions)| {
        Event::Reading(Reading {
            corner: HERE,
            set,
            round,
            side,
            divisions: Decimal::parse(divisions).unwrap(),
            turns: None,
            dial: Dial::HUNDREDTH_MM,
        })
    };
    let pull = match set.when {
        When::After if !story.still_plays => "1",
        _ => "8",
    };
    [(Side::Push, "0"), (Side::Pull, pull)].map(read).to_vec()
}

fn ended() -> Event {
    Event::Ended(Ended {
        ending: Ending::Finished,
        charge: None,
    })
}

fn price() -> Event {
    let usd = |minor| Money {
        minor,
        currency: "USD".to_owned(),
    };
    Event::Price(Price {
        repair: usd(48_000),
        refit: Some(usd(12_000)),
        estimate: None,
    })
}

fn due() -> Event {
    Event::Due(Due {
        kind: DueKind::Retorque,
        date: "2026-06-01".to_owned(),
        distance: None,
    })
}

fn odometer() -> Reply {
    Reply::Number(Quantity::Distance(
        Typed::parse("61200", DistanceUnit::Mile).unwrap(),
    ))
}

fn heat() -> Reply {
    Reply::Number(Quantity::Temperature(
        Typed::parse("31", TemperatureUnit::Celsius).unwrap(),
    ))
}

fn photo(step: StepKey) -> Photo {
    Photo {
        step,
        sha256: "00".repeat(32),
        mime: "image/jpeg".to_owned(),
        width: 1600,
        height: 1200,
    }
}
