//! A hub unit bolted to the knuckle or the axle, not driven: no shaft and no nut.
//!
//! Source of the order: `common practice, no source`. Nothing but the bolts clamps the unit, so that
//! the reading after comes as soon as they are at spec. With a drum the same bolts hold the backing
//! plate with its shoes.

use crate::trade::play::Limit;
use crate::trade::wheel_end::kind::{KitItem, WheelEnd};
use crate::trade::wheel_end::planned::If::{Disc, NoSensor, Sensor};
use crate::trade::wheel_end::planned::{place, run};
use crate::trade::wheel_end::runs::{
    BRACKET_ON, BRAKE_ON, DRUM_OFF, DRUM_OFF_AGAIN, DRUM_ON, HUB_BOLTS, OPEN, OPEN_AGAIN, PROOF,
    RAISE, READ, SPECS, WHEEL_ON_BOLTED, WIRE_OFF, WORN, WRENCHES,
};
use crate::trade::wheel_end::step::Check;
use crate::trade::wheel_end::step::HoldPoint::{Before, Yes};
use crate::trade::wheel_end::steps::Step;

pub(super) static BOLTED_FREE: WheelEnd = WheelEnd {
    specs: &[place(Step::SpecHubBolts), run(SPECS)],
    kit: &[
        &[KitItem::Hub, KitItem::HubBolts, KitItem::Pads],
        WRENCHES,
        &[KitItem::Puller],
        RAISE,
        &[KitItem::GuidePin, KitItem::Threadlocker],
        WORN,
    ],
    play: Limit::HOUSE,
    measure: &[run(OPEN), DRUM_OFF, run(READ)],
    // From the brake to the hub out of its seat.
    remove: &[
        place(Step::StripBrake).only(&[Disc]).needs(&[Before, Yes]),
        run(WIRE_OFF),
        place(Step::StripHub).needs(&[Before, Yes]),
    ],
    // From the box to the new hub with its bolts at spec.
    install: &[
        place(Step::Compare).only(&[Sensor]).rows(ALIKE_WIRED),
        place(Step::Compare).only(&[NoSensor]).rows(ALIKE),
        place(Step::ComparePhoto),
        place(Step::Seat),
        place(Step::Offer),
        place(Step::RouteSensor).only(&[Sensor]),
        run(HUB_BOLTS),
        place(Step::RotorOn).only(&[Disc]).alone(),
    ],
    reopen: &[run(OPEN_AGAIN), DRUM_OFF_AGAIN],
    close: &[
        run(PROOF),
        DRUM_ON,
        run(BRACKET_ON),
        run(BRAKE_ON),
        run(WHEEL_ON_BOLTED),
    ],
    put_back: &[DRUM_ON, run(BRAKE_ON), run(WHEEL_ON_BOLTED)],
};

const ALIKE: &[Check] = &[Check::Pilot, Check::Depth, Check::BoltCircle];
const ALIKE_WIRED: &[Check] = &[Check::Pilot, Check::Depth, Check::BoltCircle, Check::Plug];
