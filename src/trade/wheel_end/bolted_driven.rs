//! A hub unit bolted to the knuckle, driven through a shaft with an axle nut.
//!
//! Source of the order: `common practice, no source`, with the manufacturers' differences (where
//! the nut is tightened) taken from its spec.

use crate::trade::play::Limit;
use crate::trade::wheel_end::kind::{KitItem, WheelEnd};
use crate::trade::wheel_end::planned::If::Sensor;
use crate::trade::wheel_end::planned::{place, run};
use crate::trade::wheel_end::runs::{
    AXLE_CLOSE, AXLE_NUT_OFF, AXLE_NUT_ON, AXLE_PUT_BACK, HUB_BOLTS, OPEN, OPEN_AGAIN, RAISE, READ,
    SPECS, WIRE_OFF, WORN, WRENCHES,
};
use crate::trade::wheel_end::steps::Step;

pub(super) static BOLTED_DRIVEN: WheelEnd = WheelEnd {
    specs: &[
        place(Step::SpecAxleNut),
        place(Step::SpecHubBolts),
        run(SPECS),
    ],
    kit: &[
        &[
            KitItem::Hub,
            KitItem::AxleNut,
            KitItem::SpareNut,
            KitItem::HubBolts,
            KitItem::Pads,
            KitItem::AxleSocket,
        ],
        WRENCHES,
        &[KitItem::Puller],
        RAISE,
        &[KitItem::Threadlocker],
        WORN,
    ],
    play: Limit::HOUSE,
    measure: &[run(OPEN), place(Step::NutFound), run(READ)],
    // From the staked nut to the hub out of its knuckle.
    remove: &[
        run(AXLE_NUT_OFF),
        place(Step::StripBrake),
        run(WIRE_OFF),
        place(Step::StripHub),
    ],
    // From the box to the new hub with its nut at spec.
    install: &[
        place(Step::Compare),
        place(Step::ComparePhoto),
        place(Step::Seat),
        place(Step::Offer),
        place(Step::RouteSensor).only(&[Sensor]),
        run(HUB_BOLTS),
        run(AXLE_NUT_ON),
    ],
    reopen: OPEN_AGAIN,
    close: AXLE_CLOSE,
    put_back: AXLE_PUT_BACK,
};
