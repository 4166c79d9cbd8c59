//! What goes wrong with a fastener or a part, and what that asks for.

use crate::words;

words! {
    /// What happened to a fastener or a part.
    pub enum MishapKind {
        /// A stud or bolt broke.
        Sheared = "sheared",
        /// It went in askew, or its thread is damaged.
        ThreadCrossed = "thread_crossed",
        /// It turned on and the torque did not rise: bolt or thread is giving way.
        TurnsOn = "turns_on",
        /// It would not start by hand.
        WouldNotStart = "would_not_start",
        /// It clicked early once more after it was run in by hand.
        ClickedEarly = "clicked_early",
        /// The key of a locking nut is not here.
        LockKeyMissing = "lock_key_missing",
        /// Its seat is not that of the wheel: cone, ball or flat.
        WrongSeat = "wrong_seat",
        /// A wheel bolt too long: it would reach the drum, the sensor or the parking brake.
        BoltTooLong = "bolt_too_long",
        /// It has a crack: a stud or bolt, or the flange or knuckle that it holds.
        Cracked = "cracked",
        /// It is seized in its thread.
        Seized = "seized",
        /// A part is stuck where it sits.
        Stuck = "stuck",
        /// Fluid is seen where it must be dry.
        Leaking = "leaking",
        /// The brake hose is twisted.
        HoseTwisted = "hose_twisted",
        /// The speed sensor or its wire broke.
        SensorBroken = "sensor_broken",
        /// A spline or a seat is damaged.
        SeatDamaged = "seat_damaged",
        /// The bore of the knuckle is worn.
        BoreWorn = "bore_worn",
        /// The part that was delivered is for another car.
        WrongPart = "wrong_part",
        /// The part that was delivered is damaged.
        DamagedPart = "damaged_part",
    }
}

impl MishapKind {
    /// Whether the fastener is out of its place until it is mended.
    ///
    /// Without its key a locking nut is where it was, and cannot be brought to spec; so is what is
    /// stuck.
    pub const fn takes_off(self) -> bool {
        !matches!(self, Self::LockKeyMissing) && !self.ends_when_loose()
    }

    /// Whether it is over once the item is loosened or off.
    pub const fn ends_when_loose(self) -> bool {
        matches!(self, Self::Seized | Self::Stuck)
    }

    /// Whether the customer is asked for more before it is fixed. A part that was delivered wrong
    /// costs the customer nothing, and a hose is turned back at once.
    pub const fn asks_customer(self) -> bool {
        !matches!(self, Self::HoseTwisted) && !self.goes_back()
    }

    /// Whether a part that was delivered goes back.
    pub const fn goes_back(self) -> bool {
        matches!(self, Self::WrongPart | Self::DamagedPart)
    }

    /// Whether a stud or bolt of the wheel has to be replaced from behind: the wheel comes off.
    pub const fn takes_a_new_stud(self) -> bool {
        matches!(
            self,
            Self::Sheared | Self::ThreadCrossed | Self::TurnsOn | Self::Cracked
        )
    }
}
