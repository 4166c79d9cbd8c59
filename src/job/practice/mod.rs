//! Practice jobs: an invented car, packed already, that behaves by its hidden truth.
//!
//! [`met`] says what it shows at a step, [`truth`] what it had, at the end. Nothing here is a
//! value for any vehicle, and no spec of it ever reaches the spec library.

mod meet;
mod truth;

pub use meet::{Met, met};
pub use truth::{Finding, Hidden, Outcome, truth};

use crate::job::entry::{Carried, Event, Money, Opened, PersonField, Price, Reply, VehicleField};
use crate::job::sheet::JobState;
use crate::trade::fastening::{
    Condition, Position, Printed, Spec, SpecBody, SpecItem, SpecSource, Stage, TorqueBody,
};
use crate::trade::play::{Method, Place, Way};
use crate::trade::practice::{Car, Code, SpecTrap};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Start, Step, StepKey};
use crate::units::{LengthUnit, TorqueUnit, Typed};

/// An invented number; its check digit agrees, and no manufacturer has these first three.
const VIN: &str = "ZZ9PRACT5CE000001";

/// How a practice car is spoken of, in the words of a language.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Recorded<'a> {
    /// Its family.
    pub family: &'a str,
    /// What its customer says.
    pub said: &'a str,
}

/// What the name of a device ends with where it counts practice: those entries are nobody's loss
/// when they are thrown away, and leave no hole in the running numbers of the work.
pub const OWN_COUNT: &str = "-practice";

/// Whether a job is practice: it enters no statistic, no book, and is marked wherever it shows.
pub fn is_practice(sheet: &JobState) -> bool {
    sheet
        .opened()
        .is_some_and(|opened| opened.practice.is_some())
}

/// The practice car of a job; none for a real job, or a car that this version does not know.
pub fn car(sheet: &JobState) -> Option<Car> {
    let code = sheet.opened()?.practice.as_deref()?;
    Code::from_code(code).map(Car::of)
}

/// Everything that Pack would have written for a practice car.
///
/// `source` is the invented document that its specs are read from.
pub fn packed(
    code: Code,
    recorded: Recorded<'_>,
    source: &SpecSource,
    (carried, currency): (Carried, &str),
) -> Vec<Event> {
    let mut whats = vec![Event::Opened(Opened {
        start: Start::AtHome,
        practice: Some(code.code()),
    })];
    whats.extend(customer_and_car(recorded));
    whats.push(Event::Corners(vec![Corner::FrontLeft]));
    whats.extend(specs(source, Car::of(code).truth.slip).map(Event::Spec));
    let money = |minor| Money {
        minor,
        currency: currency.to_owned(),
    };
    whats.push(Event::Price(Price {
        repair: money(38_000),
        refit: Some(money(9_000)),
        estimate: None,
    }));
    whats.push(Event::Missing(Vec::new()));
    whats.push(Event::Carried(carried));
    for step in [Step::Booking, Step::Vehicle, Step::Kit, Step::Ready] {
        whats.push(Event::Answered(StepKey::once(step), Reply::Done));
    }
    whats
}

fn customer_and_car(recorded: Recorded<'_>) -> impl Iterator<Item = Event> {
    let person = [
        (PersonField::Name, "Pat Example"),
        (PersonField::Phone, "555 0100"),
        (PersonField::Plate, "PRC 001"),
    ];
    let vehicle = [
        (VehicleField::Vin, VIN),
        (VehicleField::Family, recorded.family),
        (VehicleField::Studs, "5"),
        (VehicleField::HubBolts, "4"),
        (VehicleField::Fixing, "nuts"),
        (VehicleField::Power, "combustion"),
        (VehicleField::ParkingBrake, "rear"),
    ];
    let person = person.map(|(field, text)| Event::Person(field, text.to_owned()));
    let vehicle = vehicle.map(|(field, text)| Event::Vehicle(field, text.to_owned()));
    person
        .into_iter()
        .chain(vehicle)
        .chain([Event::Said(recorded.said.to_owned())])
}

fn specs(source: &SpecSource, slip: Option<SpecTrap>) -> impl Iterator<Item = Spec> {
    let torque = |item, number: &str, conditions: &[Condition]| {
        let unit = match (item, slip) {
            (SpecItem::LugNuts, Some(SpecTrap::LugNutsInPoundFeet)) => TorqueUnit::PoundFoot,
            _ => TorqueUnit::NewtonMetre,
        };
        let stage = Typed::parse(number, unit).map(Stage::Torque);
        let body = TorqueBody {
            stages: stage.into_iter().collect(),
            position: (item == SpecItem::AxleNut).then_some(Position::AirBrakeHeld),
            conditions: conditions.to_vec(),
            printed: Printed::default(),
            source: source.clone(),
        };
        Spec {
            item,
            body: SpecBody::Torque(body),
        }
    };
    let new = &[Condition::NewFastener];
    let limit = Typed::parse("0.05", LengthUnit::Millimetre).map(|most| Spec {
        item: SpecItem::PlayLimit,
        body: SpecBody::Play {
            least: None,
            most,
            way: Way {
                method: Method::Axial,
                place: Place::Pilot,
                rig: None,
                force: None,
            },
            source: source.clone(),
        },
    });
    [
        torque(
            SpecItem::AxleNut,
            "180",
            &[Condition::NewFastener, Condition::Stake],
        ),
        torque(SpecItem::HubBolts, "90", new),
        torque(SpecItem::BracketBolts, "110", &[Condition::Dry]),
        torque(SpecItem::CaliperPins, "28", &[Condition::Dry]),
        torque(SpecItem::LugNuts, "120", &[Condition::Dry]),
    ]
    .into_iter()
    .chain(limit.ok())
}

#[cfg(test)]
mod tests;
