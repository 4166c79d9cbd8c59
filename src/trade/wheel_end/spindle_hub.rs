//! A hub unit in one piece on a spindle: its nut clamps the bearing's rings, its cap seals it.
//!
//! Source of the order: `common practice, no source`. The spindle stands still, so that its nut is
//! turned in the air and nothing has to be held. The reading after comes before brake and cap.

use crate::trade::play::Limit;
use crate::trade::wheel_end::kind::{KitItem, WheelEnd};
use crate::trade::wheel_end::planned::If::{Disc, NoSensor, Sensor};
use crate::trade::wheel_end::planned::{place, run};
use crate::trade::wheel_end::runs::{
    DRUM_OFF, OPEN, RAISE, READ, SPECS, SPINDLE_CLOSE, SPINDLE_NUT_OFF, SPINDLE_PUT_BACK,
    SPINDLE_REOPEN, WORN, WRENCHES,
};
use crate::trade::wheel_end::step::Check;
use crate::trade::wheel_end::steps::Step;

pub(super) static SPINDLE_HUB: WheelEnd = WheelEnd {
    specs: &[place(Step::SpecSpindleNut), run(SPECS)],
    kit: &[
        &[
            KitItem::Hub,
            KitItem::SpindleNut,
            KitItem::Cap,
            KitItem::Pads,
            KitItem::AxleSocket,
        ],
        WRENCHES,
        &[KitItem::Puller],
        RAISE,
        &[KitItem::GuidePin],
        WORN,
    ],
    play: Limit::HOUSE,
    measure: &[
        run(OPEN),
        place(Step::CapOff),
        place(Step::NutFound),
        DRUM_OFF,
        run(READ),
    ],
    // From the nut to the hub off its spindle.
    remove: &[run(SPINDLE_NUT_OFF), place(Step::HubOff)],
    // From the box to the new hub with its nut at spec.
    install: &[
        place(Step::Compare).only(&[Sensor]).rows(ALIKE_WIRED),
        place(Step::Compare).only(&[NoSensor]).rows(ALIKE),
        place(Step::ComparePhoto),
        place(Step::Seat),
        place(Step::HubOn),
        place(Step::RouteSensor).only(&[Sensor]),
        place(Step::TurnSpindleNut),
        place(Step::RotorOn).only(&[Disc]).alone(),
    ],
    reopen: SPINDLE_REOPEN,
    close: SPINDLE_CLOSE,
    put_back: SPINDLE_PUT_BACK,
};

const ALIKE: &[Check] = &[Check::SpindleBore, Check::Depth, Check::BoltCircle];
const ALIKE_WIRED: &[Check] = &[
    Check::SpindleBore,
    Check::Depth,
    Check::BoltCircle,
    Check::Plug,
];
