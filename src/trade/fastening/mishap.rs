//! What goes wrong with a fastener, and what that asks for.

use crate::words;

words! {
    /// What happened to a fastener.
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
    }
}

impl MishapKind {
    /// Whether the fastener is out of its place until it is mended.
    ///
    /// Without its key a locking nut is where it was, and cannot be brought to its spec.
    pub const fn takes_off(self) -> bool {
        !matches!(self, Self::LockKeyMissing)
    }
}
