//! What can come loose at a wheel end: every fastener and every part is an item of its own.

use crate::trade::vehicle::Corner;
use crate::words;

words! {
    /// A family of like items at one wheel end.
    pub enum ItemKind {
        /// The nut that clamps the hub to the driveshaft.
        AxleNut = "axle_nut",
        /// The bolts that hold the hub unit to the knuckle.
        HubBolts = "hub_bolts",
        /// The bolts that hold the caliper bracket to the knuckle.
        BracketBolts = "bracket_bolts",
        /// The bolts of the caliper's guide pins; number 1 is the upper one.
        CaliperPins = "caliper_pins",
        /// Lug nuts or wheel bolts.
        LugNuts = "lug_nuts",
        /// The wheel itself.
        Wheel = "wheel",
        /// The caliper, off its bracket or swung up.
        Caliper = "caliper",
        /// The brake pads.
        Pads = "pads",
        /// The caliper bracket.
        Bracket = "bracket",
        /// The brake rotor.
        Rotor = "rotor",
        /// The plug and the clips of the wheel speed sensor's wire.
        SensorWire = "sensor_wire",
        /// The splash plate behind the rotor.
        Plate = "plate",
        /// The hub unit.
        Hub = "hub",
        /// The stake or cotter of the axle nut, or its cap.
        Stake = "stake",
        /// The nut on the spindle: it clamps a sealed hub or sets tapered rollers.
        SpindleNut = "spindle_nut",
        /// The nut or washer that locks the setting nut.
        LockNut = "lock_nut",
        /// The cap over the spindle nut.
        Cap = "cap",
        /// The brake drum.
        Drum = "drum",
        /// The brake shoes, backed off their drum.
        Shoes = "shoes",
        /// The parking brake, released or in service mode.
        ParkingBrake = "parking_brake",
        /// Cones and seal of tapered rollers.
        Cones = "cones",
        /// The bearing pressed into the knuckle.
        Bearing = "bearing",
        /// The snap ring that keeps it there.
        SnapRing = "snap_ring",
        /// The knuckle: taken off for a press, or off while it has a crack.
        Knuckle = "knuckle",
        /// The bolts between strut and knuckle.
        StrutBolts = "strut_bolts",
        /// The nut or pinch bolt of the ball joint.
        BallJoint = "ball_joint",
        /// The nut of the tie rod end.
        TieRod = "tie_rod",
        /// What the technician named by hand.
        Other = "other",
    }
}

impl ItemKind {
    /// Whether the item is a fastener with a spec spec of its own.
    pub const fn is_fastener(self) -> bool {
        matches!(
            self,
            Self::AxleNut
                | Self::HubBolts
                | Self::BracketBolts
                | Self::CaliperPins
                | Self::LugNuts
                | Self::SpindleNut
                | Self::LockNut
                | Self::StrutBolts
                | Self::BallJoint
                | Self::TieRod
        )
    }

    /// Whether the item is a nut wherever it is fitted; lug nuts may be bolts.
    pub const fn is_nut(self) -> bool {
        matches!(
            self,
            Self::AxleNut | Self::SpindleNut | Self::LockNut | Self::BallJoint | Self::TieRod
        )
    }

    /// Whether the item clamps a bearing or sets it: no reading means anything with it loose.
    pub const fn holds_the_bearing(self) -> bool {
        matches!(self, Self::AxleNut | Self::SpindleNut)
    }
}

/// One fastener or part at one corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Item {
    /// Where it is.
    pub corner: Corner,
    /// What it is.
    pub group: ItemKind,
    /// Which of its group, counted from 1.
    pub number: u8,
}

words! {
    /// How far an item is from being back; the order runs from loose to tight.
    pub enum ItemState {
        /// Off the vehicle.
        Off = "off",
        /// Loosened, still in its thread.
        Loosened = "loosened",
        /// In by hand.
        ByHand = "by_hand",
        /// At its first stage, not yet at its spec.
        Snug = "snug",
        /// At its spec, or refitted.
        Done = "done",
    }
}

impl ItemState {
    /// Whether the item still stands on the loose list.
    pub const fn is_loose(self) -> bool {
        !matches!(self, Self::Done)
    }
}

/// Every item of `group` at `corner`, `count` of them.
pub fn items(corner: Corner, group: ItemKind, count: u8) -> Vec<Item> {
    (1..=count)
        .map(|number| Item {
            corner,
            group,
            number,
        })
        .collect()
}
