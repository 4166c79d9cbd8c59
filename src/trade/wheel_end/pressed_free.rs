//! A double-row bearing pressed into a hub that slides onto a spindle: not driven, its rings clamped
//! by the spindle nut.
//!
//! Source of the order: `common practice, no source`. The hub comes off with the old bearing in it
//! and goes back with the new one: nothing on the car is pressed. From there it is measured and
//! closed as a hub with a spindle nut is.

use crate::trade::play::Limit;
use crate::trade::wheel_end::kind::{KitItem, WheelEnd};
use crate::trade::wheel_end::planned::If::{Disc, Sensor};
use crate::trade::wheel_end::planned::{place, run};
use crate::trade::wheel_end::runs::{
    BEARING_IN, BEARING_OUT, DRUM_OFF, OPEN, RAISE, READ, SPECS, SPINDLE_CLOSE, SPINDLE_NUT_OFF,
    SPINDLE_PUT_BACK, SPINDLE_REOPEN, WORN, WRENCHES,
};
use crate::trade::wheel_end::steps::Step;

pub(super) static PRESSED_FREE: WheelEnd = WheelEnd {
    specs: &[place(Step::SpecSpindleNut), run(SPECS)],
    kit: &[
        &[
            KitItem::Bearing,
            KitItem::SpindleNut,
            KitItem::Cap,
            KitItem::PressSet,
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
    // From the nut to the bearing out of its hub.
    remove: &[run(SPINDLE_NUT_OFF), place(Step::HubOff), run(BEARING_OUT)],
    // From the bare hub to the hub on its spindle with its nut at spec.
    install: &[
        run(BEARING_IN),
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
