//! What the first page of the report says of the car as it is now; the sentences stand in
//! `en/customer.rs`.

use crate::trade::wheel_end::Pick;

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
    BrakeLamp,
    /// Replaced, nothing loose, pedal firm, proof passed, ended as finished.
    ReplacedSafe,
    /// Replaced, and one of these is missing.
    ReplacedOpen,
    /// Inspected, and nothing was found.
    NothingFound,
    /// Inspected, nothing found at the bearing, and a warning light is on.
    LampOn,
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
        Self::BrakeLamp,
        Self::ReplacedSafe,
        Self::ReplacedOpen,
        Self::NothingFound,
        Self::LampOn,
        Self::Watch,
        Self::Declined,
        Self::InspectionDeclined,
        Self::NotSafeHere,
        Self::Incomplete,
        Self::Open,
    ];

    /// Whether the car must not be driven.
    pub const fn forbids_driving(self) -> bool {
        matches!(
            self,
            Self::Unfinished | Self::Stop | Self::ProofFailed | Self::PedalSoft | Self::BrakeLamp
        )
    }
}

/// A sentence of the customer's page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Customer<'a> {
    /// The heading over the reasons.
    Why,
    /// The heading over the amounts.
    Total,
    /// The label of the amount to pay.
    ToPay,
    /// The label of the amount that is still open after a payment.
    StillToPay,
    /// The label of what is in the amount.
    Included,
    /// The inspection is in the amount.
    InspectionIncluded,
    /// Tax is in the amount: its percentage, empty where the amount was typed as a whole.
    TaxIncluded(&'a str),
    /// No tax was added.
    NoTax,
    /// The label of the repair that was declined.
    NotCharged,
    /// The label of the repair that was approved, before the job has ended.
    WhenFinished,
    /// The label of the inspection, before a job has ended whose repair was declined.
    AtTheEnd,
    /// The new part does not match the car and was not installed.
    WrongPart,
    /// The label of the repair before it was approved.
    IfApproved,
    /// The label of the inspection, paid alone if the repair is declined.
    IfDeclined,
    /// Nothing is to pay.
    NothingToPay,
    /// Work was left unfinished, so that nothing is due yet.
    NotDueYet,
    /// The play of the new hub, after a repair that did not rest on play.
    NewHubMoves(&'a str),
    /// The play before the work, which was no reason for the repair.
    PlayNotTheReason(&'a str),
    /// The play before the work, which could not be compared with the limit.
    PlayNotCompared(&'a str),
    /// How the drawing of the readings is read.
    Legend,
    /// The same where no limit is drawn.
    LegendNoLimit,
    /// What a reader can compare such a length with.
    PaperThickness(&'a str),
    /// What is not recorded, before the car can be called safe to drive: the job's end.
    MissingEnd,
    /// The checks of the new part.
    MissingProof,
    /// The brake pedal.
    MissingPedal,
    /// The lug nuts that were found loose.
    MissingNuts,
    /// A look at the warning lights after the work.
    MissingLamps,
    /// This warning light is on after the work.
    MissingLit(Pick),
    /// A road test after the work.
    MissingRoad,
    /// Something was noticed on the road test after the repair.
    MissingRoadClean,
    /// These signs are still there after the work.
    StillThere(&'a str),
    /// These signs were not tried again after the work.
    NotTried(&'a str),
    /// Nobody looked at the warning lights.
    LampsNotChecked,
    /// The new part does not pass, and what follows from that.
    NotProved,
    /// What to do until then.
    AskBeforeDriving,
    /// A corner whose bearing was replaced.
    CornerReplaced,
    /// A corner whose new part failed.
    CornerFails,
    /// A corner where nothing was found.
    CornerNothing,
    /// A corner that nothing was decided on.
    CornerOpen,
    /// The label of a wrench past its check, with what is due.
    WrenchOverdue(&'a str),
    /// The field for the customer's name, asked before a signature.
    NameFirst,
    /// What is shown where the price of the inspection was not given.
    InspectionPriceFirst,
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
