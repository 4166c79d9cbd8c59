//! Small invented jobs for the tests of the report.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

mod whole_jobs;
pub use whole_jobs::*;

use chrono::NaiveDate;

use crate::job::dial_setup::recorded;
use crate::job::entry::*;
use crate::job::evidence::decided;
use crate::job::kit::MoreKit;
use crate::job::proof::with_records;
use crate::job::{JobState, fold, group_items};
use crate::slate::{Pen, compose};
use crate::trade::answer::Answer;
use crate::trade::fastening::{
    Condition, Position, Printed, Spec, SpecBody, SpecItem, SpecSource, Stage, TorqueBody, Upkeep,
    Wrench,
};
use crate::trade::play::{Decision, Dial, Felt, Way};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{
    Check, Choice, ItemKind, ItemState, NotDoneReason, SetName, Start, Step, StepKey, When,
};
use crate::units::{
    AngleUnit, Decimal, DistanceUnit, LengthUnit, Torque, TorqueUnit, TypedAngle, TypedDistance,
    TypedLength, TypedTorque,
};

pub const AT: Corner = Corner::FrontLeft;
/// 2025-03-04 08:00 UTC: 20151 days after 1970.
const START_MS: i64 = (20_151 * 86_400 + 8 * 3600) * 1000;
const MINUTE: i64 = 60_000;

/// A job that is being written down, a minute a tap, an hour east of Greenwich.
pub struct Job {
    pub entries: Vec<Entry>,
    minute: i64,
}

impl Job {
    pub fn begin(practice: Option<&str>) -> Self {
        let mut job = Self {
            entries: Vec::new(),
            minute: 0,
        };
        let practice = practice.map(str::to_owned);
        let start = Start::AtHome;
        job.tap(vec![Event::Opened(Opened { start, practice })]);
        job
    }

    /// One tap.
    pub fn tap(&mut self, whats: Vec<Event>) -> Vec<EntryId> {
        self.tap_recorded(None, whats)
    }

    /// One tap that tells another time, minutes before it is noted.
    pub fn tap_recorded(&mut self, ago: Option<i64>, whats: Vec<Event>) -> Vec<EntryId> {
        let utc_ms = START_MS + self.minute * MINUTE;
        self.minute += 1;
        let pen = Pen {
            by: "Ada Rook".to_owned(),
            device: "phone".to_owned(),
            n: self.entries.len() as u64,
            utc_ms,
            offset_min: 60,
            recorded: ago.map(|minutes| utc_ms - minutes * MINUTE),
            chance: [7; 10],
        };
        let heads: Vec<EntryId> = self
            .entries
            .last()
            .map(|e| e.id.clone())
            .into_iter()
            .collect();
        let new = compose(&LogId("log".to_owned()), &heads, &pen, whats);
        let ids = new.iter().map(|entry| entry.id.clone()).collect();
        self.entries.extend(new);
        ids
    }

    pub fn answer(&mut self, step: StepKey, reply: Reply) {
        self.tap(vec![Event::Answered(step, reply)]);
    }

    pub fn sheet(&self) -> JobState {
        fold(self.entries.clone())
    }

    pub fn moved(&mut self, step: Step, group: ItemKind, to: ItemState) {
        let items = group_items(&self.sheet(), AT, group);
        let step = StepKey::at(step, AT);
        let wrench = None;
        self.tap(vec![Event::Moved(Moved {
            step,
            items,
            to,
            wrench,
        })]);
    }

    /// Each fastener of a group to its spec, a tap each.
    pub fn turned(&mut self, step: Step, group: ItemKind, set: &str) {
        for item in group_items(&self.sheet(), AT, group) {
            let step = StepKey::at(step, AT);
            let set = TypedTorque::parse(set, TorqueUnit::NewtonMetre).unwrap();
            self.tap(vec![Event::Moved(Moved {
                step,
                items: vec![item],
                to: ItemState::Done,
                wrench: Some(("long wrench".to_owned(), set)),
            })]);
        }
    }

    /// Three rounds on a dial of a hundredth, zeroed at the push.
    pub fn rounds(&mut self, when: When, pulls: [&str; 3]) {
        let set = SetName { when, nth: 1 };
        self.tap(vec![recorded(AT, set, Way::DEFAULT)]);
        for (round, pull) in (1..).zip(pulls) {
            self.tap(vec![Event::Reading(Reading {
                corner: AT,
                set,
                round,
                side: Side::Pull,
                divisions: Decimal::parse(pull).unwrap(),
                turns: None,
                dial: Dial::HUNDREDTH_MM,
            })]);
        }
    }

    pub fn decided(&mut self, decision: Decision) {
        let decided = decided(&self.sheet(), AT, 1);
        self.tap(vec![Event::Decided(Decided {
            decision,
            ..decided
        })]);
    }

    pub fn consent(&mut self, yes: bool) {
        self.tap(vec![Event::Consent(Consent {
            step: StepKey::at(Step::Agree, AT),
            scope: Scope::Repair,
            yes,
            how: How::Written,
            amount: Some(euro(48_050)),
        })]);
    }

    pub fn ended(&mut self, ending: Ending, charge: Option<Charge>) {
        let ended = Event::Ended(Ended { ending, charge });
        self.tap(with_records(&self.sheet(), vec![ended]));
    }
}

pub fn euro(minor: i64) -> Money {
    let currency = "EUR".to_owned();
    Money { minor, currency }
}

pub fn source(day: u32) -> SpecSource {
    SpecSource {
        document: "Workshop data 12".to_owned(),
        page: "204".to_owned(),
        looked_up: NaiveDate::from_ymd_opt(2025, 3, day).unwrap(),
        who: "Ada Rook".to_owned(),
        override_reason: None,
    }
}

fn torque_spec(item: SpecItem, torque: &str, angle: Option<&str>, day: u32) -> Event {
    let mut stages = vec![Stage::Torque(
        TypedTorque::parse(torque, TorqueUnit::NewtonMetre).unwrap(),
    )];
    stages.extend(angle.map(|a| Stage::Angle(TypedAngle::parse(a, AngleUnit::Degree).unwrap())));
    let nut = item == SpecItem::AxleNut;
    Event::Spec(Spec {
        item,
        body: SpecBody::Torque(TorqueBody {
            stages,
            position: nut.then_some(Position::AirBrakeHeld),
            conditions: if nut {
                vec![Condition::NewFastener, Condition::Stake]
            } else {
                vec![]
            },
            printed: Printed::default(),
            source: source(day),
        }),
    })
}

pub fn play_spec(most: &str) -> Event {
    Event::Spec(Spec {
        item: SpecItem::PlayLimit,
        body: SpecBody::Play {
            least: None,

            most: TypedLength::parse(most, LengthUnit::Millimetre).unwrap(),
            way: Way {
                rig: None,
                ..Way::DEFAULT
            },
            source: source(4),
        },
    })
}

pub fn no_play_spec() -> Event {
    Event::Spec(Spec {
        item: SpecItem::PlayLimit,
        body: SpecBody::NotFound {
            reason: "no play figure in Workshop data 12".to_owned(),
        },
    })
}

/// Pack, Meet and Listen; the hub bolts' spec was looked up three days before.
pub fn packed(practice: Option<&str>, play: Event) -> Job {
    let mut job = Job::begin(practice);
    let person = |field, value: &str| Event::Person(field, value.to_owned());
    let vehicle = |field, value: &str| Event::Vehicle(field, value.to_owned());
    job.tap(vec![
        person(PersonField::Name, "Noor Vale"),
        person(PersonField::Plate, "XR 204 K"),
        Event::Said("It hums, louder at speed; started after the big pothole.".to_owned()),
        vehicle(VehicleField::Family, "Invented hatchback"),
        vehicle(VehicleField::Vin, "11111111111111111"),
        vehicle(VehicleField::Kind, "bolted_driven"),
        Event::Corners(vec![AT]),
    ]);
    job.tap(vec![
        torque_spec(SpecItem::AxleNut, "180,5", Some("45"), 4),
        torque_spec(SpecItem::HubBolts, "80", None, 1),
        torque_spec(SpecItem::BracketBolts, "110", None, 4),
        torque_spec(SpecItem::CaliperPins, "28", None, 4),
        torque_spec(SpecItem::LugNuts, "120", None, 4),
        play,
    ]);
    job.tap(vec![
        Event::Price(Price {
            repair: euro(48_050),
            refit: Some(euro(9_000)),
            estimate: None,
        }),
        Event::Carried(Carried {
            wrenches: vec![Wrench {
                name: "long wrench".to_owned(),
                low: Torque::newton_metres(40.0),
                high: Torque::newton_metres(340.0),
                unit: TorqueUnit::NewtonMetre,
                upkeep: Upkeep::default(),
            }],
            dial: Dial::HUNDREDTH_MM,
            more: MoreKit::default(),
            dial_due: None,
        }),
    ]);
    job.answer(
        StepKey::once(Step::SiteLook),
        Reply::Checked(vec![
            (Check::Slope, Answer::Yes),
            (Check::Surface, Answer::Yes),
            (Check::Traffic, Answer::NotDone),
        ]),
    );
    let odometer = TypedDistance::parse("81200", DistanceUnit::Kilometre).unwrap();
    job.answer(
        StepKey::once(Step::Odometer),
        Reply::Number(Quantity::Distance(odometer)),
    );
    job.answer(
        StepKey::once(Step::Drive),
        Reply::NotDone(NotDoneReason::NotSafe),
    );
    job
}

/// Rocked, opened and measured: `pulls` in hundredths of a millimetre.
pub fn measured(job: &mut Job, felt: Felt, spin: Choice, pulls: [&str; 3]) {
    for step in [Step::RockTwelveSix, Step::RockNineThree, Step::RockAxial] {
        job.answer(StepKey::at(step, AT), Reply::Felt(felt));
    }
    job.answer(StepKey::at(Step::SpinHand, AT), Reply::Picked(spin));
    job.moved(Step::LoosenLugNuts, ItemKind::LugNuts, ItemState::Loosened);
    job.moved(Step::WheelOff, ItemKind::LugNuts, ItemState::Off);
    job.moved(Step::WheelOff, ItemKind::Wheel, ItemState::Off);
    job.answer(
        StepKey::at(Step::NutFound, AT),
        Reply::Picked(Choice::NutTight),
    );
    job.answer(
        StepKey::at(Step::RigPush, AT),
        Reply::Picked(Choice::FlexNone),
    );
    job.rounds(When::Before, pulls);
}

pub fn closed(job: &mut Job) {
    job.moved(Step::WheelOn, ItemKind::Wheel, ItemState::Done);
    job.tap(vec![Event::Pass(StepKey::at(Step::TurnLugNuts, AT))]);
    job.turned(Step::TurnLugNuts, ItemKind::LugNuts, "120");
    let distance = TypedDistance::parse("80", DistanceUnit::Kilometre).unwrap();
    job.tap(vec![Event::Due(Due {
        kind: DueKind::Retorque,
        date: "2025-03-09".to_owned(),
        distance: Some(distance),
    })]);
    job.tap(vec![Event::Signed(Signed {
        step: StepKey::once(Step::Sign),
        strokes: "M20 80 C60 20 80 20 100 80 C120 110 140 60 170 50 L260 44".to_owned(),
    })]);
}
