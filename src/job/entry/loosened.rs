//! What is off, broke or was turned by an angle, beside what the steps of the procedure say.

use crate::trade::fastening::mishap::MishapKind;
use crate::trade::wheel_end::{Item, StepKey};
use crate::units::TypedTorque;
use crate::words;

words! {
    /// By what an angle was read.
    pub enum AngleBy { Gauge = "gauge", Swings = "swings" }
}

words! {
    /// What is noted of a step in one tap, without words of one's own.
    pub enum Remark {
        /// Something prevents it; a note says what.
        WillNotGo = "will_not_go",
        /// The customer declined and would not sign.
        RefusedToSign = "refused_to_sign",
        /// A fastener clicked before it seated, and the pass began again.
        ClickedEarly = "clicked_early",
        /// A fastener would not start by hand, and the pass began again.
        WouldNotStart = "would_not_start",
        /// There was no room for a photo.
        NoRoom = "no_room",
    }
}

words! {
    /// Why work stops in the middle.
    pub enum Interruption {
        Call = "call", Rain = "rain", Dark = "dark", Part = "part", Other = "other",
    }
}

/// The car was left in the middle of the work.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Interrupted {
    /// The step that would have come next.
    pub step: StepKey,
    /// Why.
    pub why: Interruption,
    /// Who goes on with it; empty where that is whoever left it.
    pub to: String,
}

/// Something that no step of the procedure loosens.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Also {
    /// Its place on the list.
    pub item: Item,
    /// What it is, so that another technician finds it.
    pub name: String,
    /// Its own spec: the torque as printed and where it was read; none where it is put back
    /// without one.
    pub spec: Option<(TypedTorque, String)>,
}

/// Something that went wrong.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Mishap {
    /// The step at which it was seen.
    pub step: StepKey,
    /// The fastener.
    pub item: Item,
    /// What happened.
    pub kind: MishapKind,
    /// The part that mends it, in words; may be empty.
    pub part: String,
    /// How many minutes more it takes.
    pub minutes: u16,
}
