//! Two rows of tapered rollers on a spindle: opened, washed, looked at, packed and set by the nut.
//!
//! Source of the order: `common practice, no source`. How it is seated, backed off and set comes
//! from its spec alone: published settings differ (US Army TM 9-2330-202-14&P, TM 9-2320-211-20,
//! TM 10-3930-653-14&P). The play after it is read with nut and lock where they stay.

use crate::trade::play::Limit;
use crate::trade::wheel_end::bolted_driven::{LOOK, MEASURE_AGAIN};
use crate::trade::wheel_end::kind::{KitItem, WheelEnd};
use crate::trade::wheel_end::planned::If::{
    AtCar, Blocked, Braked, Cotter, Disc, Drum, LockNut, NotOpened, NotReleased, Opened, Released,
    Sensor,
};
use crate::trade::wheel_end::planned::{Place, place};
use crate::trade::wheel_end::procedure::{REOPENED, SHOVE_CRACKED};
use crate::trade::wheel_end::row::moves;
use crate::trade::wheel_end::spindle_hub::COUNTS;
use crate::trade::wheel_end::step::Check;
use crate::trade::wheel_end::step::Phase::{Gauge, Prove, Strip, Tighten};
use crate::trade::wheel_end::step::SetName;
use crate::trade::wheel_end::steps::Step;

pub(super) static TAPERED: WheelEnd = WheelEnd {
    specs: &[
        place(Step::SpecSpindleNut),
        place(Step::SpecLockNut).only(&[LockNut]),
        place(Step::SpecBracketBolts).only(&[Disc]),
        place(Step::SpecCaliperPins).only(&[Disc]),
        place(Step::SpecLugNuts),
        place(Step::SpecPlayLimit),
    ],
    kit: &[
        KitItem::Cones,
        KitItem::Cotter,
        KitItem::Grease,
        KitItem::Cap,
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
        KitItem::Gloves,
        KitItem::Charged,
    ],
    counts: COUNTS,
    play: Limit::HOUSE_END_PLAY,
    look: LOOK,
    measure: MEASURE,
    measure_again: MEASURE_AGAIN,
    remove: REMOVE,
    install: INSTALL,
    reopen: REOPEN,
    close: CLOSE,
    put_back: PUT_BACK,
};

/// Opened for the reading, and the first set. A drum is one with its hub and stays on.
const MEASURE: &[Place] = &[
    place(Step::LoosenLugNuts).only(&[NotReleased]),
    place(Step::LoosenLugNuts).only(&[Released]).alone(),
    place(Step::ReleaseBrake).only(&[Released]),
    place(Step::Shove).nth(SHOVE_CRACKED).under(Gauge),
    place(Step::WheelOff),
    place(Step::CaliperUp).only(&[Disc]),
    place(Step::ShoesBack).only(&[Drum]),
    place(Step::CapOff),
    place(Step::LockFound),
    place(Step::GaugeClean),
    place(Step::RigTip),
    place(Step::RigPush),
    place(Step::Round),
];

/// From the cotter to the hub off its spindle; a rotor stays on its hub.
const REMOVE: &[Place] = &[
    place(Step::SpecSpindleNut).only(&[AtCar]).under(Strip),
    place(Step::SpindleNutOff).only(&[Cotter]),
    place(Step::SpindleNutOff)
        .only(&[LockNut])
        .moves(moves![Stake: Off, LockNut: Off, SpindleNut: Off]),
    place(Step::StripBrake)
        .only(&[Disc])
        .moves(moves![CaliperPins: Off, BracketBolts: Off, Bracket: Off]),
    place(Step::SensorPhoto).only(&[Sensor]),
    place(Step::StripSensor).only(&[Sensor]),
    place(Step::HubOff).moves(moves![Hub: Off, Cones: Off]),
];

const ALIKE: &[Check] = &[Check::PairNumbers, Check::SealSize];

/// From the wash to the nut set and locked.
const INSTALL: &[Place] = &[
    place(Step::TaperLook),
    place(Step::Compare).rows(ALIKE),
    place(Step::ComparePhoto),
    place(Step::PackGrease),
    place(Step::SealIn),
    place(Step::HubOn).moves(moves![Cones: Done, Hub: Done, SpindleNut: ByHand]),
    place(Step::RouteSensor).only(&[Sensor]),
    place(Step::TurnSpindleNut),
    place(Step::NutSlot).only(&[Cotter]),
    place(Step::LockNutOn).only(&[LockNut]),
    place(Step::SpecLockNut)
        .only(&[LockNut, AtCar])
        .under(Tighten),
    place(Step::TurnLockNut).only(&[LockNut]),
];

const REOPEN: &[Place] = &[
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
];

/// The proof at the open wheel end; then lock and cap, the brake, and the wheel at spec.
const CLOSE: &[Place] = &[
    place(Step::RigTip).of(SetName::AFTER).under(Prove),
    place(Step::RigPush).nth(2).under(Prove),
    place(Step::Round).of(SetName::AFTER).under(Prove),
    place(Step::ProveSpin),
    place(Step::ProveResult).only(&[Blocked]),
    place(Step::Stake).alone(),
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

/// What was opened for the reading is put back, nothing set.
const PUT_BACK: &[Place] = &[
    place(Step::Lower).only(&[NotOpened]).needs(&[]),
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
