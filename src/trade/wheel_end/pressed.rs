//! A double-row bearing pressed into the knuckle, its hub driven through a shaft with an axle nut.
//!
//! Source of the order: `common practice, no source`; that a knuckle more than 0.001 in out of round
//! is rejected and that a bearing pressed in the wrong way round is lost: technicians' guides. Once
//! knuckle and hub are in place it is measured and closed as a bolted hub is.

use crate::trade::play::Limit;
use crate::trade::wheel_end::bolted_driven::{
    CLOSE, LOOK, MEASURE, MEASURE_AGAIN, PUT_BACK, REOPEN, SHOVE_AXLE_NUT,
};
use crate::trade::wheel_end::item::ItemKind;
use crate::trade::wheel_end::kind::{Count, KitItem, WheelEnd};
use crate::trade::wheel_end::planned::If::{AtCar, Bar, KnuckleOff, NotBar, OnGround, Sensor};
use crate::trade::wheel_end::planned::{Place, place};
use crate::trade::wheel_end::row::moves;
use crate::trade::wheel_end::step::Check;
use crate::trade::wheel_end::step::HoldPoint::{Before, Yes};
use crate::trade::wheel_end::step::Phase::{Strip, Tighten};
use crate::trade::wheel_end::steps::Step;

pub(super) static PRESSED: WheelEnd = WheelEnd {
    specs: &[
        place(Step::SpecAxleNut),
        place(Step::SpecStrutBolts).only(&[KnuckleOff]),
        place(Step::SpecBallJoint).only(&[KnuckleOff]),
        place(Step::SpecTieRod).only(&[KnuckleOff]),
        place(Step::SpecBracketBolts),
        place(Step::SpecCaliperPins),
        place(Step::SpecLugNuts),
        place(Step::SpecPlayLimit),
    ],
    kit: &[
        KitItem::Bearing,
        KitItem::AxleNut,
        KitItem::SpareNut,
        KitItem::PressSet,
        KitItem::Pads,
        KitItem::AxleSocket,
        KitItem::TorqueWrench,
        KitItem::AngleGauge,
        KitItem::DialGauge,
        KitItem::Stand,
        KitItem::Jack,
        KitItem::Chocks,
        KitItem::Hook,
        KitItem::PedalDepressor,
        KitItem::GuidePin,
        KitItem::Threadlocker,
        KitItem::Gloves,
        KitItem::Charged,
    ],
    counts: &[
        Count::new(ItemKind::LugNuts, 3, 5, 10),
        Count::new(ItemKind::BracketBolts, 2, 2, 2),
        Count::new(ItemKind::CaliperPins, 2, 2, 2),
        Count::new(ItemKind::StrutBolts, 2, 2, 2),
    ],
    play: Limit::HOUSE,
    look: LOOK,
    measure: MEASURE,
    measure_again: MEASURE_AGAIN,
    remove: REMOVE,
    install: INSTALL,
    reopen: REOPEN,
    close: CLOSE,
    put_back: PUT_BACK,
};

/// From the staked nut to the bearing out of its knuckle.
const REMOVE: &[Place] = &[
    place(Step::SpecAxleNut).only(&[AtCar]).under(Strip),
    place(Step::LoosenAxleNut).only(&[NotBar]),
    place(Step::Shove)
        .only(&[NotBar])
        .nth(SHOVE_AXLE_NUT)
        .under(Strip),
    place(Step::StripNut).only(&[NotBar]),
    place(Step::StripNut)
        .only(&[Bar])
        .needs(&[Before, Yes])
        .moves(moves![Stake: Off, AxleNut: Off]),
    place(Step::StripBrake),
    place(Step::SensorPhoto).only(&[Sensor]),
    place(Step::StripSensor).only(&[Sensor]),
    place(Step::StripKnuckle).only(&[KnuckleOff]),
    place(Step::PullHub),
    place(Step::SnapRingOut),
    place(Step::PressOut),
];

const ALIKE: &[Check] = &[Check::BearingSize];

/// From the bare knuckle to the hub with its nut at spec.
const INSTALL: &[Place] = &[
    place(Step::BoreLook),
    place(Step::Compare).rows(ALIKE),
    place(Step::ComparePhoto),
    place(Step::EncoderPhoto).only(&[Sensor]),
    place(Step::EncoderSide).only(&[Sensor]),
    place(Step::PressIn),
    place(Step::SnapRingIn),
    place(Step::PressHub),
    place(Step::KnuckleOn).only(&[KnuckleOff]),
    place(Step::RouteSensor).only(&[Sensor]),
    place(Step::SpecStrutBolts)
        .only(&[KnuckleOff, AtCar])
        .under(Tighten),
    place(Step::TurnStrutBolts).only(&[KnuckleOff]),
    place(Step::SpecBallJoint)
        .only(&[KnuckleOff, AtCar])
        .under(Tighten),
    place(Step::TurnBallJoint).only(&[KnuckleOff]),
    place(Step::SpecTieRod)
        .only(&[KnuckleOff, AtCar])
        .under(Tighten),
    place(Step::TurnTieRod).only(&[KnuckleOff]),
    place(Step::RotorOn).only(&[NotBar]),
    place(Step::BracketOn).only(&[NotBar]),
    place(Step::SpecBracketBolts)
        .only(&[NotBar, AtCar])
        .under(Tighten),
    place(Step::TurnBracketBolts).only(&[NotBar]),
    place(Step::CaliperOn).only(&[NotBar]),
    place(Step::SpecCaliperPins)
        .only(&[NotBar, AtCar])
        .under(Tighten),
    place(Step::Pedal).only(&[NotBar]),
    place(Step::NutOn),
    place(Step::NutFirst).only(&[OnGround]),
    place(Step::WheelOn).only(&[OnGround]),
    place(Step::Lower).only(&[OnGround]).needs(&[]),
    place(Step::SpecLugNuts)
        .only(&[OnGround, AtCar])
        .under(Tighten),
    place(Step::TurnLugNuts).only(&[OnGround]),
    place(Step::TurnAxleNut),
    place(Step::LoosenLugNuts)
        .only(&[OnGround])
        .nth(2)
        .under(Tighten),
    place(Step::Shove).only(&[OnGround]).nth(2).under(Tighten),
    place(Step::WheelOffAgain).only(&[OnGround]).under(Tighten),
    place(Step::CaliperUpAgain).only(&[NotBar]),
    place(Step::RotorOn).only(&[Bar]).alone(),
];
