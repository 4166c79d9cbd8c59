//! What the first page of the report says of the car as it is now; the sentences stand in
//! `en/customer.rs`.

use super::en;
use super::table::templates;
use crate::trade::wheel_end::Choice;

/// What is true of the car, as far as the record says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Now {
    /// Something is loose or off, or the job was left unfinished.
    Unfinished,
    /// A STOP that stands.
    Stop,
    /// The new part failed its check.
    ProofFailed,
    /// The brake pedal is not firm.
    PedalSoft,
    /// The brake warning light is on.
    BrakeWarningLight,
    /// Replaced, nothing loose, pedal firm, proof passed, ended as finished.
    ReplacedSafe,
    /// Replaced, and one of these is missing.
    ReplacedOpen,
    /// Opened and set with all its old rollers; otherwise as replaced.
    AdjustedSafe,
    /// The same, and something is missing.
    AdjustedOpen,
    /// Inspected, and nothing was found.
    NothingFound,
    /// Inspected, nothing found at the bearing, and a warning light is on.
    WarningLightOn,
    /// Inspected, and to be checked again by a date.
    Watch,
    /// The repair was declined.
    Declined,
    /// The inspection was declined.
    InspectionDeclined,
    /// The place was not safe for the work.
    NotSafeHere,
    /// Entries of the job are not here: nothing can be said of the car as a whole.
    Incomplete,
    /// The job is open and nothing is decided.
    Open,
}

impl Now {
    /// Every one of them.
    pub const ALL: &'static [Self] = &[
        Self::Unfinished,
        Self::Stop,
        Self::ProofFailed,
        Self::PedalSoft,
        Self::BrakeWarningLight,
        Self::ReplacedSafe,
        Self::ReplacedOpen,
        Self::AdjustedSafe,
        Self::AdjustedOpen,
        Self::NothingFound,
        Self::WarningLightOn,
        Self::Watch,
        Self::Declined,
        Self::InspectionDeclined,
        Self::NotSafeHere,
        Self::Incomplete,
        Self::Open,
    ];

    /// Whether it is repaired and something is missing to call it safe.
    pub const fn is_not_released(self) -> bool {
        matches!(self, Self::ReplacedOpen | Self::AdjustedOpen)
    }

    /// Whether the car must not be driven.
    pub const fn forbids_driving(self) -> bool {
        matches!(
            self,
            Self::Unfinished
                | Self::Stop
                | Self::ProofFailed
                | Self::PedalSoft
                | Self::BrakeWarningLight
        )
    }
}

templates! {
    /// A sentence of the customer's page.
    pub enum Customer<'a>, customer {
        Why => "Why",
        Total => "What you pay",
        ToPay => "Total to pay",
        StillToPay => "Still to pay",
        Included => "Included",
        InspectionIncluded => "inspection",
        TaxIncluded(percent: &'a str) => match percent {
            "" => "tax".to_owned(),
            _ => format!("tax of {percent}\u{a0}%"),
        },
        NoTax => "no tax was added",
        NotCharged => "Repair you declined, not charged",
        WhenFinished => "Full repair, due only when it is finished",
        AtTheEnd => "Inspection and reassembly, due when everything is back in place",
        WrongPart =>
            "The new part does not match this car and was not installed. You do not pay for it.",
        IfApproved => "Full repair, if you approve it",
        IfDeclined => "Inspection and reassembly, if you decline",
        NothingToPay => "Nothing to pay.",
        NotDueYet => "The work is not finished. No payment for it is due yet.",
        NewHubMoves(play: &'a str) => format!("After the repair the hub moves {play}."),
        PlayNotTheReason(play: &'a str) =>
            format!("Movement was not the reason: the hub moved {play}."),
        PlayNotCompared(play: &'a str) =>
            format!("The hub moved {play}. That could not be compared with the limit, so it says nothing for or against the bearing."),
        Legend =>
            "Each dot is one reading. The dashed box shows where the true value most likely lies, the bold line the limit.",
        LegendNoLimit =>
            "Each dot is one reading. The dashed box shows where the true value most likely lies.",
        PaperThickness(length: &'a str) =>
            format!("A sheet of printer paper is about {length} thick."),
        MissingEnd => "the job has not been closed as finished",
        MissingProof => "the checks of the new part are not complete",
        MissingPedal => "the brake pedal is not recorded as firm",
        MissingNuts => "lugs of the wheel were found loose and not recorded as tight since",
        MissingWarningLights => "the warning lights are not recorded as checked after the repair",
        MissingLit(warning_light: Choice) => format!("{} is on", en::customer::warning_light_name(warning_light)),
        MissingRoad => "no road test after the repair is recorded",
        MissingRoadClean => "something was noticed on the road test after the repair",
        StillThere(signs: &'a str) => format!("still there on the road after the repair: {signs}"),
        NotTried(signs: &'a str) =>
            format!("not tried again on the road after the repair: {signs}"),
        WarningLightsNotChecked => "The warning lights were not checked.",
        NotProved =>
            "The repair is not proved. The cause must be found and the wheel bearing checked again before the car is driven.",
        AskBeforeDriving => "Ask us before you drive this car.",
        CornerNothing => "no fault found",
        CornerOpen => "no decision yet",
        WrenchOverdue(due: &'a str) => format!("wrench overdue: {due}"),
        NameFirst => "Customer's name",
        InspectionPriceFirst =>
            "The price of the inspection was not given. Enter it before you ask the customer.",
    }
}

/// When a warning light was seen on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lit {
    /// Before the work; nobody looked again.
    OnArrival,
    /// Before the work, and none is on after it.
    OutSince,
    /// Before the work; another is on after it.
    Before,
    /// Before the work and after it.
    AsBefore,
    /// After the work, and none was on before it.
    SinceTheWork,
    /// After the work.
    After,
}
