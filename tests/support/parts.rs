//! Invented specs, instruments, prices and answers, for stories and for single entries.

use chrono::NaiveDate;
use hubslate::job::entry::{Carried, Money, Price, Quantity, Reply};
use hubslate::job::kit::MoreKit;
use hubslate::trade::fastening::{
    Condition, Position, Printed, Spec, SpecBody, SpecItem, SpecSource, Stage, TorqueBody, Upkeep,
    Wrench,
};
use hubslate::trade::money::{Estimate, Line, LineKind, TaxRounding, TaxRule};
use hubslate::trade::play::{Dial, Way};
use hubslate::units::{
    AngleUnit, Decimal, DistanceUnit, LengthUnit, TemperatureUnit, Torque, TorqueUnit, Typed,
};

/// A spec spec for each fastener out of one invented document, and one for the play.
pub fn specs(
    document: &str,
    who: &str,
    looked_up: NaiveDate,
    position: Position,
    limit: Play,
) -> Vec<Spec> {
    let source = |page: &str| SpecSource {
        document: document.to_owned(),
        page: page.to_owned(),
        looked_up,
        who: who.to_owned(),
        override_reason: None,
    };
    let torque = |item, torques: &[&str], angle: Option<&str>, conditions: &[Condition], page| {
        let stages = torques
            .iter()
            .map(|text| Stage::Torque(Typed::parse(text, TorqueUnit::NewtonMetre).unwrap()));
        let angle = angle.map(|text| Stage::Angle(Typed::parse(text, AngleUnit::Degree).unwrap()));
        Spec {
            item,
            body: SpecBody::Torque(TorqueBody {
                stages: stages.chain(angle).collect(),
                position: (item == SpecItem::AxleNut).then_some(position),
                conditions: conditions.to_vec(),
                printed: Printed::default(),
                source: source(page),
            }),
        }
    };
    let (dry, new) = (Condition::Dry, Condition::NewFastener);
    vec![
        torque(
            SpecItem::AxleNut,
            &["200"],
            None,
            &[new, Condition::Stake],
            "WE-12",
        ),
        torque(SpecItem::HubBolts, &["60"], Some("45"), &[new], "WE-14"),
        torque(
            SpecItem::BracketBolts,
            &["110"],
            None,
            &[Condition::Threadlocker],
            "BR-6",
        ),
        torque(SpecItem::CaliperPins, &["35"], None, &[], "BR-7"),
        torque(SpecItem::LugNuts, &["120"], None, &[dry], "WH-2"),
        Spec {
            item: SpecItem::PlayLimit,
            body: match limit {
                SpecBody::Play {
                    most, least, way, ..
                } => SpecBody::Play {
                    most,
                    least,
                    way,
                    source: source("WE-3"),
                },
                other => other,
            },
        },
    ]
}

/// What a spec of the play says; its source is filled in by [`specs`].
pub type Play = SpecBody;

/// A limit by the default method at the hub centre.
pub fn play(most: &str, unit: LengthUnit) -> Play {
    SpecBody::Play {
        least: None,
        most: Typed::parse(most, unit).unwrap(),
        way: Way {
            rig: None,
            ..Way::DEFAULT
        },
        source: SpecSource {
            document: String::new(),
            page: String::new(),
            looked_up: day(2026, 1, 1),
            who: String::new(),
            override_reason: None,
        },
    }
}

/// What is on board.
pub fn carried(dial: Dial) -> Carried {
    let wrench = |name: &str, low, high| Wrench {
        name: name.to_owned(),
        low: Torque::new(low, TorqueUnit::NewtonMetre).unwrap(),
        high: Torque::new(high, TorqueUnit::NewtonMetre).unwrap(),
        unit: TorqueUnit::NewtonMetre,
        upkeep: Upkeep::default(),
    };
    Carried {
        wrenches: vec![
            wrench("three eighths", 10.0, 60.0),
            wrench("half inch", 20.0, 200.0),
            wrench("long", 60.0, 340.0),
        ],
        dial,
        more: MoreKit::default(),
        dial_due: None,
    }
}

pub fn price(repair: i64, refit: i64) -> Price {
    let dollars = |minor| Money {
        minor,
        currency: "USD".to_owned(),
    };
    Price {
        repair: dollars(repair),
        refit: Some(dollars(refit)),
        estimate: None,
    }
}

/// Lines that come to 486.00 with their tax.
pub fn estimate() -> Estimate {
    let line = |kind, text: &str, quantity: &str, each| Line {
        kind,
        text: text.to_owned(),
        quantity: Decimal::parse(quantity).unwrap(),
        each,
        taxed: true,
        rate: None,
        corner: None,
    };
    Estimate {
        lines: vec![
            line(LineKind::Part, "Hub with bearing", "1", 21_000),
            line(LineKind::Labour, "", "2.5", 9_200),
            Line {
                taxed: false,
                ..line(LineKind::Travel, "", "1", 970)
            },
        ],
        tax: Some(TaxRule {
            percent: Decimal::parse("8.25").unwrap(),
            rounding: TaxRounding::Total,
        }),
    }
}

pub fn miles(text: &str) -> Reply {
    Reply::Number(Quantity::Distance(
        Typed::parse(text, DistanceUnit::Mile).unwrap(),
    ))
}

pub fn fahrenheit(text: &str) -> Reply {
    Reply::Number(Quantity::Temperature(
        Typed::parse(text, TemperatureUnit::Fahrenheit).unwrap(),
    ))
}

pub fn day(year: i32, month: u32, day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(year, month, day).unwrap()
}
