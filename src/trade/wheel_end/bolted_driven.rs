//! A hub unit bolted to the knuckle, driven through a shaft with an axle nut.
//!
//! Source of the order: `common practice, no source`, with the manufacturers' differences (where
//! the nut is tightened) taken from its spec.

use crate::trade::play::Limit;
use crate::trade::wheel_end::item::ItemKind;
use crate::trade::wheel_end::kind::{Count, KitItem, WheelEnd};
use crate::trade::wheel_end::planned::If::{
    AtCar, Bar, Blocked, Braked, InAir, NotBar, NotOpened, NotReleased, OnGround, Opened, PlayFelt,
    Released, Sensor,
};
use crate::trade::wheel_end::planned::{Place, place};
use crate::trade::wheel_end::procedure::{REOPENED, SHOVE_CRACKED};
use crate::trade::wheel_end::row::moves;
use crate::trade::wheel_end::step::HoldPoint::{Before, Yes};
use crate::trade::wheel_end::step::Phase::{Gauge, Prove, Strip, Tighten};
use crate::trade::wheel_end::step::SetName;
use crate::trade::wheel_end::steps::Step;

/// Which shove stands between the axle nut broken loose on the ground and the wheel coming off.
pub(super) const SHOVE_AXLE_NUT: u8 = 7;

pub(super) static BOLTED_DRIVEN: WheelEnd = WheelEnd {
    specs: &[
        place(Step::SpecAxleNut),
        place(Step::SpecHubBolts),
        place(Step::SpecBracketBolts),
        place(Step::SpecCaliperPins),
        place(Step::SpecLugNuts),
        place(Step::SpecPlayLimit),
    ],
    kit: &[
        KitItem::Hub,
        KitItem::AxleNut,
        KitItem::SpareNut,
        KitItem::HubBolts,
        KitItem::Pads,
        KitItem::AxleSocket,
        KitItem::TorqueWrench,
        KitItem::AngleGauge,
        KitItem::Puller,
        KitItem::DialGauge,
        KitItem::Stand,
        KitItem::Jack,
        KitItem::Chocks,
        KitItem::Hook,
        KitItem::PedalDepressor,
        KitItem::Threadlocker,
        KitItem::Gloves,
        KitItem::Charged,
    ],
    counts: &[
        Count::new(ItemKind::LugNuts, 3, 5, 10),
        Count::new(ItemKind::HubBolts, 3, 4, 4),
        Count::new(ItemKind::BracketBolts, 2, 2, 2),
        Count::new(ItemKind::CaliperPins, 2, 2, 2),
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

/// Raised, and looked at with the wheel on.
pub(super) const LOOK: &[Place] = &[
    place(Step::LiftHold),
    place(Step::LiftStand),
    place(Step::StandPhoto),
    place(Step::Shove),
    place(Step::RockNuts),
    place(Step::RockTwelveSix),
    place(Step::RockNineThree),
    place(Step::RockAxial),
    place(Step::BrakeHeld).only(&[PlayFelt, Braked]),
    place(Step::SpinHand),
    place(Step::OtherSide),
];

/// Opened for the reading, and the first set.
pub(super) const MEASURE: &[Place] = &[
    place(Step::LoosenLugNuts).only(&[NotReleased]),
    place(Step::LoosenLugNuts).only(&[Released]).alone(),
    place(Step::ReleaseBrake).only(&[Released]),
    place(Step::Shove).nth(SHOVE_CRACKED).under(Gauge),
    place(Step::WheelOff),
    place(Step::CaliperUp),
    place(Step::NutFound),
    place(Step::GaugeClean),
    place(Step::RigTip),
    place(Step::RigPush),
    place(Step::Round),
];

pub(super) const MEASURE_AGAIN: &[Place] = &[
    place(Step::RigTip).of(SetName::SECOND),
    place(Step::RigAgain),
    place(Step::Round).of(SetName::SECOND),
];

/// From the staked nut to the hub out of its knuckle. Where its wheel held the shaft, the car stood
/// on it: it is shoved again on its stand before the wheel and the nut come off.
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
    place(Step::StripHub),
];

/// From the box to the new hub with its nut at spec: brake and a pumped pedal come before a nut
/// that is tightened against the brake. On the ground the wheel comes before the nut's last torque,
/// and off again; the car stood on it, so it is shoved.
const INSTALL: &[Place] = &[
    place(Step::Compare),
    place(Step::ComparePhoto),
    place(Step::Seat),
    place(Step::Offer),
    place(Step::RouteSensor).only(&[Sensor]),
    place(Step::SpecHubBolts).only(&[AtCar]).under(Tighten),
    place(Step::TurnHubBolts),
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

/// A wheel end that is closed again is opened to measure the new part once more.
pub(super) const REOPEN: &[Place] = &[
    place(Step::LoosenLugNuts)
        .only(&[NotReleased])
        .nth(REOPENED)
        .under(Prove),
    place(Step::LoosenLugNuts)
        .only(&[Released])
        .nth(REOPENED)
        .under(Prove)
        .alone(),
    place(Step::ReleaseBrake)
        .only(&[Released])
        .nth(REOPENED)
        .under(Prove),
    place(Step::Shove).nth(REOPENED).under(Prove),
    place(Step::WheelOffAgain).nth(REOPENED),
    place(Step::CaliperUpAgain).nth(REOPENED),
];

/// The proof at the open wheel end (one that fails is told at once, while all is still at hand),
/// and from there to the wheel at spec.
pub(super) const CLOSE: &[Place] = &[
    place(Step::RigTip).of(SetName::AFTER).under(Prove),
    place(Step::RigPush).nth(2).under(Prove),
    place(Step::Round).of(SetName::AFTER).under(Prove),
    place(Step::ProveSpin),
    place(Step::ProveResult).only(&[Blocked]),
    place(Step::Stake).only(&[Bar]).alone(),
    place(Step::BracketOn).only(&[Bar]),
    place(Step::SpecBracketBolts)
        .only(&[Bar, AtCar])
        .under(Tighten),
    place(Step::TurnBracketBolts).only(&[Bar]),
    place(Step::CaliperDown),
    place(Step::SpecCaliperPins)
        .only(&[Bar, AtCar])
        .under(Tighten),
    place(Step::TurnCaliperPins),
    place(Step::Stake).only(&[NotBar]),
    place(Step::Pedal).only(&[Bar]),
    place(Step::Pedal).only(&[NotBar]).nth(2),
    place(Step::SetBrake).only(&[Released]),
    place(Step::WheelOn).only(&[InAir]),
    place(Step::Lower).only(&[InAir]),
    place(Step::SpecLugNuts)
        .only(&[InAir, AtCar])
        .under(Tighten),
    place(Step::TurnLugNuts).only(&[InAir]),
    place(Step::WheelOn).only(&[OnGround]).nth(2),
    place(Step::Lower).only(&[OnGround]).nth(2),
    place(Step::TurnLugNuts).only(&[OnGround]).nth(2),
];

/// What was opened for the reading is put back, nothing replaced; where nothing was opened only the
/// lifted wheel comes down again.
pub(super) const PUT_BACK: &[Place] = &[
    place(Step::Lower).only(&[NotOpened]).needs(&[]),
    place(Step::CaliperDown).only(&[Opened]),
    place(Step::SpecCaliperPins)
        .only(&[Opened, AtCar])
        .under(Tighten),
    place(Step::TurnCaliperPins).only(&[Opened]),
    place(Step::Pedal).only(&[Opened]),
    place(Step::SetBrake).only(&[Opened, Released]),
    place(Step::WheelOn).only(&[Opened]),
    place(Step::Lower).only(&[Opened, InAir]),
    place(Step::Lower).only(&[Opened, OnGround]).needs(&[]),
    place(Step::SpecLugNuts)
        .only(&[Opened, AtCar])
        .under(Tighten),
    place(Step::TurnLugNuts).only(&[Opened]),
];
