//! Two rows of tapered rollers on a spindle: opened, washed, looked at, packed and set by the nut.
//!
//! Source of the order: `common practice, no source`. How it is seated, backed off and set comes
//! from its spec alone: published settings differ (US Army TM 9-2330-202-14&P, TM 9-2320-211-20,
//! TM 10-3930-653-14&P). The play after it is read with nut and lock where they stay.

use crate::trade::play::Limit;
use crate::trade::wheel_end::kind::{KitItem, WheelEnd};
use crate::trade::wheel_end::planned::If::{AtCar, Cotter, Disc, LockNut, Sensor};
use crate::trade::wheel_end::planned::{Place, place, run};
use crate::trade::wheel_end::row::moves;
use crate::trade::wheel_end::runs::{
    BRACKET_ON, BRAKE_ON, CAP_OFF_AGAIN, OPEN, OPEN_AGAIN, PROOF, RAISE, READ, SPECS, WHEEL_ON,
    WIRE_OFF, WORN, WRENCHES,
};
use crate::trade::wheel_end::step::Check;
use crate::trade::wheel_end::step::Phase::{Strip, Tighten};
use crate::trade::wheel_end::steps::Step;

pub(super) static TAPERED: WheelEnd = WheelEnd {
    specs: &[
        place(Step::SpecSpindleNut),
        place(Step::SpecLockNut).only(&[LockNut]),
        run(SPECS),
    ],
    kit: &[
        &[
            KitItem::Cones,
            KitItem::Cotter,
            KitItem::Grease,
            KitItem::Cap,
            KitItem::AxleSocket,
        ],
        WRENCHES,
        RAISE,
        &[KitItem::GuidePin],
        WORN,
    ],
    play: Limit::HOUSE_END_PLAY,
    // A drum is one with its hub and stays on.
    measure: &[
        run(OPEN),
        place(Step::CapOff),
        place(Step::LockFound),
        run(READ),
    ],
    // From the cotter to the hub off its spindle; a rotor stays on its hub.
    remove: &[
        place(Step::SpecSpindleNut).only(&[AtCar]).under(Strip),
        place(Step::SpindleNutOff).only(&[Cotter]),
        place(Step::SpindleNutOff)
            .only(&[LockNut])
            .moves(moves![Stake: Off, LockNut: Off, SpindleNut: Off]),
        place(Step::StripBrake)
            .only(&[Disc])
            .moves(moves![CaliperPins: Off, BracketBolts: Off, Bracket: Off]),
        run(WIRE_OFF),
        place(Step::HubOff).moves(moves![Hub: Off, Cones: Off]),
    ],
    // From the wash to the nut set and locked.
    install: &[
        place(Step::TaperLook),
        place(Step::RollersNew),
        place(Step::Compare).rows(&[Check::PairNumbers, Check::SealSize]),
        place(Step::ComparePhoto),
        place(Step::PackGrease),
        place(Step::SealIn),
        place(Step::HubOn).moves(moves![Cones: Done, Hub: Done, SpindleNut: ByHand]),
        place(Step::RouteSensor).only(&[Sensor]),
        place(Step::TurnSpindleNut),
        place(Step::NutSlot).only(&[Cotter]),
        run(LOCKED).only(&[LockNut]),
    ],
    reopen: &[run(OPEN_AGAIN), CAP_OFF_AGAIN],
    close: &[
        run(PROOF),
        place(Step::Stake).alone(),
        place(Step::CapOn),
        run(BRACKET_ON),
        run(BRAKE_ON),
        run(WHEEL_ON),
    ],
    put_back: &[place(Step::CapOn), run(BRAKE_ON), run(WHEEL_ON)],
};

const LOCKED: &[Place] = &[
    place(Step::LockNutOn),
    place(Step::SpecLockNut).only(&[AtCar]).under(Tighten),
    place(Step::TurnLockNut),
];
