//! A hub unit in one piece on a spindle: its nut clamps the bearing's rings, its cap seals it.
//!
//! Source of the order: `common practice, no source`. The spindle stands still, so that its nut is
//! turned in the air and nothing has to be held. The reading after comes before brake and cap.

use crate::trade::play::Limit;
use crate::trade::wheel_end::bolted_driven::{LOOK, MEASURE_AGAIN};
use crate::trade::wheel_end::item::ItemKind;
use crate::trade::wheel_end::kind::{Count, KitItem, WheelEnd};
use crate::trade::wheel_end::planned::If::{
    AtCar, Blocked, Braked, Disc, Drum, NoSensor, NotOpened, NotReleased, Opened, Released, Sensor,
};
use crate::trade::wheel_end::planned::{Place, place};
use crate::trade::wheel_end::procedure::{REOPENED, SHOVE_CRACKED};
use crate::trade::wheel_end::step::Check;
use crate::trade::wheel_end::step::Phase::{Gauge, Prove, Strip, Tighten};
use crate::trade::wheel_end::step::SetName;
use crate::trade::wheel_end::steps::Step;

pub(super) static SPINDLE_HUB: WheelEnd = WheelEnd {
    specs: &[
        place(Step::SpecSpindleNut),
        place(Step::SpecBracketBolts).only(&[Disc]),
        place(Step::SpecCaliperPins).only(&[Disc]),
        place(Step::SpecLugNuts),
        place(Step::SpecPlayLimit),
    ],
    kit: &[
        KitItem::Hub,
        KitItem::SpindleNut,
        KitItem::Cap,
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
        KitItem::GuidePin,
        KitItem::Gloves,
        KitItem::Charged,
    ],
    counts: COUNTS,
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

pub(super) const COUNTS: &[Count] = &[
    Count::new(ItemKind::LugNuts, 3, 5, 10),
    Count::new(ItemKind::BracketBolts, 2, 2, 2),
    Count::new(ItemKind::CaliperPins, 2, 2, 2),
];

/// Opened for the reading, and the first set.
const MEASURE: &[Place] = &[
    place(Step::LoosenLugNuts).only(&[NotReleased]),
    place(Step::LoosenLugNuts).only(&[Released]).alone(),
    place(Step::ReleaseBrake).only(&[Released]),
    place(Step::Shove).nth(SHOVE_CRACKED).under(Gauge),
    place(Step::WheelOff),
    place(Step::CaliperUp).only(&[Disc]),
    place(Step::ShoesBack).only(&[Drum]),
    place(Step::CapOff),
    place(Step::NutFound),
    place(Step::DrumOff).only(&[Drum]),
    place(Step::GaugeClean),
    place(Step::RigTip),
    place(Step::RigPush),
    place(Step::Round),
];

/// From the nut to the hub off its spindle.
const REMOVE: &[Place] = &[
    place(Step::SpecSpindleNut).only(&[AtCar]).under(Strip),
    place(Step::SpindleNutOff),
    place(Step::StripBrake).only(&[Disc]),
    place(Step::SensorPhoto).only(&[Sensor]),
    place(Step::StripSensor).only(&[Sensor]),
    place(Step::HubOff),
];

const ALIKE: &[Check] = &[Check::SpindleBore, Check::Depth, Check::BoltCircle];
const ALIKE_WIRED: &[Check] = &[
    Check::SpindleBore,
    Check::Depth,
    Check::BoltCircle,
    Check::Plug,
];

/// From the box to the new hub with its nut at spec.
const INSTALL: &[Place] = &[
    place(Step::Compare).only(&[Sensor]).rows(ALIKE_WIRED),
    place(Step::Compare).only(&[NoSensor]).rows(ALIKE),
    place(Step::ComparePhoto),
    place(Step::Seat),
    place(Step::HubOn),
    place(Step::RouteSensor).only(&[Sensor]),
    place(Step::TurnSpindleNut),
    place(Step::RotorOn).only(&[Disc]).alone(),
];

/// A wheel end that is closed again is opened to measure once more.
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
    place(Step::CaliperUpAgain).only(&[Disc]).nth(REOPENED),
    place(Step::ShoesBack)
        .only(&[Drum])
        .nth(REOPENED)
        .under(Prove),
    place(Step::CapOff).nth(REOPENED).under(Prove),
    place(Step::DrumOff)
        .only(&[Drum])
        .nth(REOPENED)
        .under(Prove),
];

/// The proof at the open wheel end; then lock and cap, the brake, and the wheel at spec.
const CLOSE: &[Place] = &[
    place(Step::RigTip).of(SetName::AFTER).under(Prove),
    place(Step::RigPush).nth(2).under(Prove),
    place(Step::Round).of(SetName::AFTER).under(Prove),
    place(Step::ProveSpin),
    place(Step::ProveResult).only(&[Blocked]),
    place(Step::Stake).alone(),
    place(Step::DrumOn).only(&[Drum]),
    place(Step::CapOn),
    place(Step::BracketOn).only(&[Disc]),
    place(Step::SpecBracketBolts)
        .only(&[Disc, AtCar])
        .under(Tighten),
    place(Step::TurnBracketBolts).only(&[Disc]),
    place(Step::CaliperDown).only(&[Disc]),
    place(Step::SpecCaliperPins)
        .only(&[Disc, AtCar])
        .under(Tighten),
    place(Step::TurnCaliperPins).only(&[Disc]),
    place(Step::ShoesSet).only(&[Drum]),
    place(Step::Pedal).only(&[Braked]),
    place(Step::SetBrake).only(&[Released]),
    place(Step::WheelOn),
    place(Step::Lower),
    place(Step::SpecLugNuts).only(&[AtCar]).under(Tighten),
    place(Step::TurnLugNuts),
];

/// What was opened for the reading is put back, nothing replaced.
const PUT_BACK: &[Place] = &[
    place(Step::Lower).only(&[NotOpened]).needs(&[]),
    place(Step::DrumOn).only(&[Opened, Drum]),
    place(Step::CapOn).only(&[Opened]),
    place(Step::CaliperDown).only(&[Opened, Disc]),
    place(Step::SpecCaliperPins)
        .only(&[Opened, Disc, AtCar])
        .under(Tighten),
    place(Step::TurnCaliperPins).only(&[Opened, Disc]),
    place(Step::ShoesSet).only(&[Opened, Drum]),
    place(Step::Pedal).only(&[Opened, Braked]),
    place(Step::SetBrake).only(&[Opened, Released]),
    place(Step::WheelOn).only(&[Opened]),
    place(Step::Lower).only(&[Opened]),
    place(Step::SpecLugNuts)
        .only(&[Opened, AtCar])
        .under(Tighten),
    place(Step::TurnLugNuts).only(&[Opened]),
];
