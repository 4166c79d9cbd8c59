//! The practice car: an invented one, packed already, so that a person starts at its site.
//!
//! Nothing here is a value for any vehicle, and no card of it ever reaches the card book.

use crate::job::entry::{Carried, Money, Opened, PersonField, Price, Reply, VehicleField, What};
use crate::trade::fastening::{
    CardBody, CardItem, CardSource, Condition, Position, Printed, SpecCard, Stage, TorqueBody,
};
use crate::trade::play::{Method, Place, Way};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Start, Step, StepKey};
use crate::units::{LengthUnit, TorqueUnit, Typed};

/// The code of the one practice car there is so far.
pub const FIRST: &str = "first";

/// An invented number; its check digit agrees, and no maker has these first three.
const VIN: &str = "ZZ9PRACT5CE000001";

/// Everything that Pack would have written for the practice car.
///
/// `source` is the invented document that its cards are read from.
pub fn packed(source: &CardSource, carried: Carried, currency: &str) -> Vec<What> {
    let mut whats = vec![What::Opened(Opened {
        start: Start::AtHome,
        practice: Some(FIRST.to_owned()),
    })];
    whats.extend(owner_and_car());
    whats.push(What::Corners(vec![Corner::FrontLeft]));
    whats.extend(cards(source).map(What::Card));
    let money = |minor| Money {
        minor,
        currency: currency.to_owned(),
    };
    whats.push(What::Price(Price {
        repair: money(38_000),
        refit: money(9_000),
        estimate: None,
    }));
    whats.push(What::Missing(Vec::new()));
    whats.push(What::Carried(carried));
    for step in [Step::Booking, Step::Vehicle, Step::Kit, Step::Ready] {
        whats.push(What::Answered(StepKey::once(step), Reply::Done));
    }
    whats
}

fn owner_and_car() -> impl Iterator<Item = What> {
    let person = [
        (PersonField::Name, "Pat Example"),
        (PersonField::Phone, "555 0100"),
        (PersonField::Plate, "PRC 001"),
    ];
    let vehicle = [
        (VehicleField::Vin, VIN),
        (VehicleField::Family, "Practice: Marten 1.4"),
        (VehicleField::Studs, "5"),
        (VehicleField::HubBolts, "4"),
        (VehicleField::Fixing, "nuts"),
        (VehicleField::Power, "combustion"),
        (VehicleField::ParkingBrake, "rear"),
    ];
    let said = "It hums from about 60 on, louder when I steer right. Front left I think.";
    person
        .into_iter()
        .map(|(field, text)| What::Person(field, text.to_owned()))
        .chain(
            vehicle
                .into_iter()
                .map(|(field, text)| What::Vehicle(field, text.to_owned())),
        )
        .chain([What::Said(said.to_owned())])
}

fn cards(source: &CardSource) -> impl Iterator<Item = SpecCard> {
    let torque = |item, number: &str, conditions: &[Condition]| {
        let stage = Typed::parse(number, TorqueUnit::NewtonMetre).map(Stage::Torque);
        let body = TorqueBody {
            stages: stage.into_iter().collect(),
            position: (item == CardItem::AxleNut).then_some(Position::AirBrakeHeld),
            conditions: conditions.to_vec(),
            printed: Printed::default(),
            source: source.clone(),
        };
        SpecCard {
            item,
            body: CardBody::Torque(body),
        }
    };
    let new = &[Condition::NewFastener];
    let limit = Typed::parse("0.05", LengthUnit::Millimetre).map(|most| SpecCard {
        item: CardItem::PlayLimit,
        body: CardBody::Play {
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
            CardItem::AxleNut,
            "180",
            &[Condition::NewFastener, Condition::Stake],
        ),
        torque(CardItem::HubBolts, "90", new),
        torque(CardItem::BracketBolts, "110", &[Condition::Dry]),
        torque(CardItem::CaliperPins, "28", &[Condition::Dry]),
        torque(CardItem::WheelNuts, "120", &[Condition::Dry]),
    ]
    .into_iter()
    .chain(limit.ok())
}

#[cfg(test)]
mod tests {
    #![allow(
        clippy::unwrap_used,
        clippy::expect_used,
        clippy::panic,
        clippy::indexing_slicing
    )]
    use super::*;
    use crate::job::entry::{At, Entry, EntryId, LogId};
    use crate::job::kit::first_kit;
    use crate::job::{fold, next, plan};
    use crate::trade::fastening::card::tests::source;
    use crate::trade::fastening::doubts;
    use crate::trade::vehicle::{CheckDigit, Vin};
    use crate::trade::wheel_end::{Phase, procedure};
    use crate::units::System;

    fn sheet() -> crate::job::Sheet {
        let whats = packed(&source(), first_kit(System::Metric), "USD");
        fold(whats.into_iter().enumerate().map(|(at, what)| Entry {
            id: EntryId(format!("{at:03}")),
            log: LogId("practice".to_owned()),
            at: At {
                utc_ms: 0,
                offset_min: 0,
                told: None,
            },
            by: String::new(),
            device: "d".to_owned(),
            n: 1,
            after: Vec::new(),
            what,
        }))
    }

    #[test]
    fn a_practice_job_begins_at_its_site() {
        let sheet = sheet();
        let steps = procedure(&plan(&sheet));
        let first = next(&sheet, &steps).unwrap();
        assert_eq!(first.phase, Phase::Site);
        assert!(sheet.problems().is_empty());
    }

    #[test]
    fn its_number_passes_and_its_cards_are_sound() {
        assert_eq!(Vin::parse(VIN).unwrap().check(), CheckDigit::Passes);
        let mut items = Vec::new();
        for card in cards(&source()) {
            assert_eq!(card.fault(), None, "{card:?}");
            assert_eq!(doubts(&card), Vec::new(), "{card:?}");
            items.push(card.item);
        }
        assert_eq!(items, CardItem::ALL);
    }

    #[test]
    fn no_card_of_it_reaches_the_book() {
        assert_eq!(crate::job::book::log_of_job(&sheet()), None);
    }
}
