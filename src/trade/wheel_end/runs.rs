//! Runs of steps that several kinds of wheel end share; a kind puts its order together from them.
//!
//! Source of the order: `common practice, no source`. A step that only some wheel ends have stands
//! in its run with the facts under which it is asked.

use crate::trade::wheel_end::kind::KitItem;
use crate::trade::wheel_end::planned::If::{
    AtCar, Bar, Blocked, Braked, Disc, Drum, InAir, NotBar, NotReleased, OnGround, PlayFelt,
    Released, Sensor,
};
use crate::trade::wheel_end::planned::{Place, place, run};
use crate::trade::wheel_end::procedure::{REOPENED, SHOVE_CRACKED};
use crate::trade::wheel_end::row::moves;
use crate::trade::wheel_end::step::HoldPoint::{Before, Yes};
use crate::trade::wheel_end::step::Phase::{Gauge, Prove, Strip, Tighten};
use crate::trade::wheel_end::step::{Check, SetName};
use crate::trade::wheel_end::steps::Step;

/// Which shove stands between the axle nut broken loose on the ground and the wheel coming off.
const SHOVE_AXLE_NUT: u8 = 7;

/// What every kit measures, raises and works on the brake with.
pub(super) const RAISE: &[KitItem] = &[
    KitItem::DialGauge,
    KitItem::Stand,
    KitItem::Jack,
    KitItem::Chocks,
    KitItem::Hook,
    KitItem::PedalDepressor,
];
/// What every kit tightens with.
pub(super) const WRENCHES: &[KitItem] = &[KitItem::TorqueWrench, KitItem::AngleGauge];
/// What every kit ends with.
pub(super) const WORN: &[KitItem] = &[KitItem::Gloves, KitItem::Charged];

/// The specs of brake, wheel and play.
pub(super) const SPECS: &[Place] = &[
    place(Step::SpecBracketBolts).only(&[Disc]),
    place(Step::SpecCaliperPins).only(&[Disc]),
    place(Step::SpecLugNuts),
    place(Step::SpecPlayLimit),
];

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

/// From the tight wheel to the brake out of the dial's way; a drum is still on.
pub(super) const OPEN: &[Place] = &[
    place(Step::LoosenLugNuts).only(&[NotReleased]),
    place(Step::LoosenLugNuts).only(&[Released]).alone(),
    place(Step::ReleaseBrake).only(&[Released]),
    place(Step::Shove).nth(SHOVE_CRACKED).under(Gauge),
    place(Step::WheelOff),
    place(Step::CaliperUp).only(&[Disc]),
    place(Step::ShoesBack).only(&[Drum]),
];

/// A drum of its own comes off its hub.
pub(super) const DRUM_OFF: Place = place(Step::DrumOff).only(&[Drum]);

/// The first set of readings.
pub(super) const READ: &[Place] = &[
    place(Step::GaugeClean),
    place(Step::RigTip),
    place(Step::RigPush),
    place(Step::Round),
];

/// A second set before the work.
pub(super) const READ_AGAIN: &[Place] = &[
    place(Step::RigTip).of(SetName::SECOND),
    place(Step::RigAgain),
    place(Step::Round).of(SetName::SECOND),
];

/// The axle nut off. Where its wheel held the shaft, the car stood on it: it is shoved again on its
/// stand before the wheel and the nut come off.
pub(super) const AXLE_NUT_OFF: &[Place] = &[
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
];

/// A pressed bearing out, its hub already off.
pub(super) const BEARING_OUT: &[Place] = &[place(Step::SnapRingOut), place(Step::PressOut)];

/// A bearing pressed in, its encoder on the side of the sensor.
pub(super) const BEARING_IN: &[Place] = &[
    place(Step::BoreLook),
    place(Step::Compare).rows(&[Check::BearingSize]),
    place(Step::ComparePhoto),
    place(Step::EncoderPhoto).only(&[Sensor]),
    place(Step::EncoderSide).only(&[Sensor]),
    place(Step::PressIn),
    place(Step::SnapRingIn),
];

/// The sensor's wire free.
pub(super) const WIRE_OFF: &[Place] = &[
    place(Step::SensorPhoto).only(&[Sensor]),
    place(Step::StripSensor).only(&[Sensor]),
];

/// The hub bolts at their spec.
pub(super) const HUB_BOLTS: &[Place] = &[
    place(Step::SpecHubBolts).only(&[AtCar]).under(Tighten),
    place(Step::TurnHubBolts),
];

/// The caliper bracket at its spec.
pub(super) const BRACKET_ON: &[Place] = &[
    place(Step::BracketOn).only(&[Disc]),
    place(Step::SpecBracketBolts)
        .only(&[Disc, AtCar])
        .under(Tighten),
    place(Step::TurnBracketBolts).only(&[Disc]),
];
/// The spec of the guide pin bolts, where it was not asked at home.
pub(super) const PIN_SPEC: &[Place] = &[place(Step::SpecCaliperPins)
    .only(&[Disc, AtCar])
    .under(Tighten)];
/// The wheel's fasteners at their spec.
pub(super) const LUG_NUTS: &[Place] = &[
    place(Step::SpecLugNuts).only(&[AtCar]).under(Tighten),
    place(Step::TurnLugNuts),
];

/// The axle nut at its spec: brake and a pumped pedal come before a nut that is tightened against
/// the brake. On the ground the wheel comes before the nut's last torque, and off again; the car
/// stood on it, so it is shoved.
pub(super) const AXLE_NUT_ON: &[Place] = &[
    place(Step::RotorOn).only(&[NotBar]),
    run(BRACKET_ON).only(&[NotBar]),
    place(Step::CaliperOn).only(&[NotBar]),
    run(PIN_SPEC).only(&[NotBar]),
    place(Step::Pedal).only(&[NotBar]),
    place(Step::NutOn),
    place(Step::NutFirst).only(&[OnGround]),
    place(Step::WheelOn).only(&[OnGround]),
    place(Step::Lower).only(&[OnGround]).needs(&[]),
    run(LUG_NUTS).only(&[OnGround]),
    place(Step::TurnAxleNut),
    run(&[
        place(Step::LoosenLugNuts).nth(2).under(Tighten),
        place(Step::Shove).nth(2).under(Tighten),
        place(Step::WheelOffAgain).under(Tighten),
    ])
    .only(&[OnGround]),
    place(Step::CaliperUpAgain).only(&[NotBar]),
    place(Step::RotorOn).only(&[Bar]).alone(),
];

/// A wheel end that is closed is opened to measure the new part once more; a drum is still on.
pub(super) const OPEN_AGAIN: &[Place] = &[
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
];

/// The cap, and a drum of its own, off once more.
pub(super) const CAP_OFF_AGAIN: Place = place(Step::CapOff).nth(REOPENED).under(Prove);
pub(super) const DRUM_OFF_AGAIN: Place = place(Step::DrumOff)
    .only(&[Drum])
    .nth(REOPENED)
    .under(Prove);

/// The proof at the open wheel end: one that fails is told at once, while all is still at hand.
pub(super) const PROOF: &[Place] = &[
    place(Step::RigTip).of(SetName::AFTER).under(Prove),
    place(Step::RigPush).nth(2).under(Prove),
    place(Step::Round).of(SetName::AFTER).under(Prove),
    place(Step::ProveSpin),
    place(Step::ProveResult).only(&[Blocked]),
];

/// A drum of its own, straight onto its hub.
pub(super) const DRUM_ON: Place = place(Step::DrumOn).only(&[Drum]);

/// Caliper or shoes set, the pedal pumped, the parking brake set where it was let go.
pub(super) const BRAKE_ON: &[Place] = &[
    place(Step::CaliperDown).only(&[Disc]),
    run(PIN_SPEC),
    place(Step::TurnCaliperPins).only(&[Disc]),
    place(Step::ShoesSet).only(&[Drum]),
    place(Step::Pedal).only(&[Braked]),
    place(Step::SetBrake).only(&[Released]),
];

/// The wheel on and down, with the nut that holds the hub at its spec.
pub(super) const WHEEL_ON: &[Place] = &[place(Step::WheelOn), place(Step::Lower), run(LUG_NUTS)];
/// The same where no nut holds the hub.
pub(super) const WHEEL_ON_BOLTED: &[Place] = &[
    place(Step::WheelOn),
    place(Step::Lower).needs(&[]),
    run(LUG_NUTS),
];

/// What was opened for the reading of a driven hub is put back, nothing replaced.
pub(super) const AXLE_PUT_BACK: &[Place] = &[
    run(BRAKE_ON),
    place(Step::WheelOn),
    place(Step::Lower).only(&[InAir]),
    place(Step::Lower).only(&[OnGround]).needs(&[]),
    run(LUG_NUTS),
];

/// The proof of a driven hub at its open wheel end, and from there to the wheel at spec.
pub(super) const AXLE_CLOSE: &[Place] = &[
    run(PROOF),
    place(Step::Stake).only(&[Bar]).alone(),
    run(BRACKET_ON).only(&[Bar]),
    place(Step::CaliperDown),
    run(PIN_SPEC).only(&[Bar]),
    place(Step::TurnCaliperPins),
    place(Step::Stake).only(&[NotBar]),
    place(Step::Pedal).only(&[Bar]),
    place(Step::Pedal).only(&[NotBar]).nth(2),
    place(Step::SetBrake).only(&[Released]),
    run(WHEEL_ON).only(&[InAir]),
    place(Step::WheelOn).only(&[OnGround]).nth(2),
    place(Step::Lower).only(&[OnGround]).nth(2),
    place(Step::TurnLugNuts).only(&[OnGround]).nth(2),
];

/// The nut of a hub on a spindle off, and the brake and the wire after it.
pub(super) const SPINDLE_NUT_OFF: &[Place] = &[
    place(Step::SpecSpindleNut).only(&[AtCar]).under(Strip),
    place(Step::SpindleNutOff),
    place(Step::StripBrake).only(&[Disc]),
    run(WIRE_OFF),
];

/// A hub on a spindle is opened to measure it once more.
pub(super) const SPINDLE_REOPEN: &[Place] = &[run(OPEN_AGAIN), CAP_OFF_AGAIN, DRUM_OFF_AGAIN];

/// The proof of a hub on a spindle; then lock and cap, the brake, and the wheel at spec.
pub(super) const SPINDLE_CLOSE: &[Place] = &[
    run(PROOF),
    place(Step::Stake).alone(),
    DRUM_ON,
    place(Step::CapOn),
    run(BRACKET_ON),
    run(BRAKE_ON),
    run(WHEEL_ON),
];

/// What was opened for the reading of a hub on a spindle is put back, nothing replaced.
pub(super) const SPINDLE_PUT_BACK: &[Place] =
    &[DRUM_ON, place(Step::CapOn), run(BRAKE_ON), run(WHEEL_ON)];
