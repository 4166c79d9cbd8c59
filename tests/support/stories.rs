//! Three invented jobs. People, plates, numbers, vehicles and documents are made up.

use std::collections::BTreeMap;

use hubslate::job::entry::{Ending, PersonField, Price, Reply, VehicleField};
use hubslate::trade::answer::Answer;
use hubslate::trade::fastening::{Position, SpecBody};
use hubslate::trade::play::{Dial, Felt};
use hubslate::trade::vehicle::Corner;
use hubslate::trade::wheel_end::{Choice, NotDoneReason, Start, When};
use hubslate::units::LengthUnit;

use crate::parts::{carried, day, estimate, fahrenheit, miles, play, price, specs};
use crate::story::Story;

/// Front left hums and rocks; the hub is replaced and the new one proven.
pub fn replaced_hub() -> Story {
    let mut replies = common();
    replies.extend([
        ("odometer", miles("81204")),
        ("sign_speed", said(Answer::Yes)),
        ("sign_swerve", Reply::Picked(Choice::LouderRight)),
        ("sign_coast", said(Answer::Yes)),
        ("sign_surface", said(Answer::No)),
        ("sign_brake", said(Answer::No)),
        ("heat_here", fahrenheit("121")),
        ("heat_other", fahrenheit("97")),
        ("rock_twelve_six", Reply::Felt(Felt::JustFelt)),
        ("rock_nine_three", Reply::Felt(Felt::JustFelt)),
        ("rock_axial", Reply::Felt(Felt::JustFelt)),
        ("brake_held", Reply::Picked(Choice::PlayGone)),
        ("spin_hand", Reply::Picked(Choice::RoughNoisy)),
        ("other_side", Reply::Picked(Choice::OtherTighter)),
        ("prove_spin", Reply::Picked(Choice::SmoothQuiet)),
    ]);
    Story {
        start: Start::AtHome,
        by: "R. Okafor",
        begins: morning(2026, 2, 17),
        offset_min: -300,
        seed: 4417,
        message: "Hello, this is Dana Quill. A hum from the front left since autumn, from 40 mph \
                  up, louder when I turn right. VIN GZZBD4RAXK1004417, plate KLM 4821, \
                  12 Alder Lane, Fernbrook. Call 555-0142",
        persons: Vec::new(),
        vehicle: facts("Marlin Estate 2.0, 2019 (invented)"),
        corners: vec![Corner::FrontLeft],
        specs: specs(
            "Marlin Estate service book, wheel ends (invented)",
            "R. Okafor",
            day(2026, 2, 16),
            Position::AirBrakeHeld,
            play("2.0", LengthUnit::Thou),
        ),
        carried: carried(Dial::THOU),
        price: Price {
            estimate: Some(estimate()),
            ..price(48_600, 9_500)
        },
        replies,
        readings: BTreeMap::from([
            ((When::Before, 1), ["6.3", "6.4", "6.3"]),
            ((When::After, 1), ["1.0", "1.0", "1.2"]),
        ]),
        slips: BTreeMap::from([("round@front_left.2", "64")]),
        notes: BTreeMap::from([(
            "strip_hub@front_left",
            "Hub came with two turns of the puller. Seat cleaned to bright metal.",
        )]),
        yes: true,
        part: ("MX-4410-H (invented)", "lot 25-48"),
        photos: true,
        ending: Ending::Finished,
    }
}

/// Front right knocks: STOP, the customer declines, it is put back.
pub fn declined_stop() -> Story {
    let mut replies = common();
    replies.extend([
        ("odometer", miles("143880")),
        ("drive", Reply::NotDone(NotDoneReason::NotSafe)),
        ("heat_here", Reply::NotDone(NotDoneReason::NotNeeded)),
        ("heat_other", Reply::NotDone(NotDoneReason::NotNeeded)),
        ("rock_twelve_six", Reply::Felt(Felt::Knocks)),
        ("rock_nine_three", Reply::Felt(Felt::Knocks)),
        ("rock_axial", Reply::Felt(Felt::Seen)),
        ("brake_held", Reply::Picked(Choice::PlayGone)),
        ("spin_hand", Reply::Picked(Choice::RoughNoisy)),
        ("other_side", Reply::Picked(Choice::OtherTighter)),
    ]);
    let not_found = SpecBody::NotFound {
        reason: "No figure of play in the wheel end chapter; looked through it twice.".to_owned(),
    };
    Story {
        start: Start::AtHome,
        by: "T. Lindqvist",
        begins: morning(2026, 2, 19),
        offset_min: -300,
        seed: 1893,
        message: "Front right knocks over every drain cover and the wheel wobbles. \
                  Plate RTV 0937. Moss Ferrer, 4 Quarry Road, Fernbrook, 555-0177. \
                  VIN GZZHT2SC8J2001893",
        persons: Vec::new(),
        vehicle: facts("Tarn Hatch 1.6, 2018 (invented)"),
        corners: vec![Corner::FrontRight],
        specs: specs(
            "Tarn Hatch workshop pages (invented)",
            "T. Lindqvist",
            day(2026, 2, 18),
            Position::OnGround,
            not_found,
        ),
        carried: carried(Dial::HUNDREDTH_MM),
        price: price(52_000, 11_000),
        replies,
        readings: BTreeMap::from([((When::Before, 1), ["21", "22", "21"])]),
        slips: BTreeMap::new(),
        notes: BTreeMap::from([(
            "agree@front_right",
            "Told the customer: the wheel can come off. It must not be driven. Customer will have it towed.",
        )]),
        yes: false,
        part: ("", ""),
        photos: false,
        ending: Ending::Declined,
    }
}

/// A hum that comes from saw-toothed tires: nothing is wrong with the bearing.
pub fn nothing_wrong() -> Story {
    let mut replies = common();
    replies.extend([
        ("odometer", miles("38415")),
        ("sign_speed", said(Answer::Yes)),
        ("sign_swerve", Reply::Picked(Choice::NoChange)),
        ("sign_coast", said(Answer::Yes)),
        ("sign_surface", said(Answer::Yes)),
        ("sign_brake", said(Answer::No)),
        ("heat_here", fahrenheit("88")),
        ("heat_other", fahrenheit("87")),
        ("rock_twelve_six", Reply::Felt(Felt::Nothing)),
        ("rock_nine_three", Reply::Felt(Felt::Nothing)),
        ("rock_axial", Reply::Felt(Felt::Nothing)),
        ("spin_hand", Reply::Picked(Choice::SmoothQuiet)),
        ("other_side", Reply::Picked(Choice::SameAsOther)),
    ]);
    Story {
        start: Start::AtCar,
        by: "R. Okafor",
        begins: morning(2026, 2, 24),
        offset_min: -300,
        seed: 7752,
        message: "",
        persons: vec![
            (PersonField::Name, "Wren Castellan"),
            (PersonField::Plate, "BRK 5520"),
            (PersonField::Phone, "555-0119"),
        ],
        vehicle: facts("Marlin Estate 2.0, 2020 (invented)"),
        corners: vec![Corner::FrontRight],
        specs: specs(
            "Marlin Estate service book, wheel ends (invented)",
            "R. Okafor",
            day(2026, 2, 24),
            Position::AirBrakeHeld,
            play("0.10", LengthUnit::Millimetre),
        ),
        carried: carried(Dial::HUNDREDTH_MM),
        price: price(48_600, 9_500),
        replies,
        readings: BTreeMap::from([((When::Before, 1), ["2", "1.5", "2"])]),
        slips: BTreeMap::new(),
        notes: BTreeMap::from([(
            "before_driving",
            "Inner shoulders of both front tires are saw-toothed.",
        )]),
        yes: false,
        part: ("", ""),
        photos: false,
        ending: Ending::NothingWrong,
    }
}

/// What goes the same way in all three.
pub fn common() -> BTreeMap<&'static str, Reply> {
    BTreeMap::from([
        ("warning_lights", Reply::Picked(Choice::NoWarningLights)),
        (
            "prove_warning_lights",
            Reply::Picked(Choice::NoWarningLights),
        ),
        ("nut_found", Reply::Picked(Choice::NutTight)),
        ("rig_push", Reply::Picked(Choice::FlexNone)),
    ])
}

pub fn facts(family: &'static str) -> Vec<(VehicleField, &'static str)> {
    vec![
        (VehicleField::Family, family),
        (VehicleField::Kind, "bolted_driven"),
        (VehicleField::Studs, "5"),
        (VehicleField::HubBolts, "4"),
        (VehicleField::Fixing, "nuts"),
        (VehicleField::Power, "combustion"),
        (VehicleField::ParkingBrake, "rear"),
        (VehicleField::Caliper, "sliding"),
    ]
}

pub fn said(answer: Answer) -> Reply {
    Reply::Said(answer)
}

/// Half past eight in the morning, five hours behind UTC.
pub fn morning(year: i32, month: u32, date: u32) -> i64 {
    let time = day(year, month, date).and_hms_opt(13, 30, 0).unwrap();
    time.and_utc().timestamp_millis()
}
