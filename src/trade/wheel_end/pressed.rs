//! A double-row bearing pressed into the knuckle, its hub driven through a shaft with an axle nut.
//!
//! Source of the order: `common practice, no source`; that a knuckle more than 0.001 in out of round
//! is rejected and that a bearing pressed in the wrong way round is lost: technicians' guides. Once
//! knuckle and hub are in place it is measured and closed as a bolted hub is.

use crate::trade::play::Limit;
use crate::trade::wheel_end::kind::{KitItem, WheelEnd};
use crate::trade::wheel_end::planned::If::{AtCar, KnuckleOff, Sensor};
use crate::trade::wheel_end::planned::{Place, place, run};
use crate::trade::wheel_end::runs::{
    AXLE_CLOSE, AXLE_NUT_OFF, AXLE_NUT_ON, AXLE_PUT_BACK, BEARING_IN, BEARING_OUT, OPEN,
    OPEN_AGAIN, RAISE, READ, SPECS, WIRE_OFF, WORN, WRENCHES,
};
use crate::trade::wheel_end::step::Phase::Tighten;
use crate::trade::wheel_end::steps::Step;

pub(super) static PRESSED: WheelEnd = WheelEnd {
    specs: &[
        place(Step::SpecAxleNut),
        place(Step::SpecStrutBolts).only(&[KnuckleOff]),
        place(Step::SpecBallJoint).only(&[KnuckleOff]),
        place(Step::SpecTieRod).only(&[KnuckleOff]),
        run(SPECS),
    ],
    kit: &[
        &[
            KitItem::Bearing,
            KitItem::AxleNut,
            KitItem::SpareNut,
            KitItem::PressSet,
            KitItem::Pads,
            KitItem::AxleSocket,
        ],
        WRENCHES,
        RAISE,
        &[KitItem::GuidePin, KitItem::Threadlocker],
        WORN,
    ],
    play: Limit::HOUSE,
    measure: &[run(OPEN), place(Step::NutFound), run(READ)],
    // From the staked nut to the bearing out of its knuckle.
    remove: &[
        run(AXLE_NUT_OFF),
        place(Step::StripBrake),
        run(WIRE_OFF),
        place(Step::StripKnuckle).only(&[KnuckleOff]),
        place(Step::PullHub),
        run(BEARING_OUT),
    ],
    // From the bare knuckle to the hub with its nut at spec.
    install: &[
        run(BEARING_IN),
        place(Step::PressHub),
        place(Step::KnuckleOn).only(&[KnuckleOff]),
        place(Step::RouteSensor).only(&[Sensor]),
        run(KNUCKLE_AT_SPEC).only(&[KnuckleOff]),
        run(AXLE_NUT_ON),
    ],
    reopen: OPEN_AGAIN,
    close: AXLE_CLOSE,
    put_back: AXLE_PUT_BACK,
};

const KNUCKLE_AT_SPEC: &[Place] = &[
    place(Step::SpecStrutBolts).only(&[AtCar]).under(Tighten),
    place(Step::TurnStrutBolts),
    place(Step::SpecBallJoint).only(&[AtCar]).under(Tighten),
    place(Step::TurnBallJoint),
    place(Step::SpecTieRod).only(&[AtCar]).under(Tighten),
    place(Step::TurnTieRod),
];
