//! What can happen in a job. An entry is never edited; a later one may strike it.

mod at;
mod decided;
mod dial_setup;
mod ended;
mod flow;
mod found;
mod kit;
mod loosened;
mod price;
mod proved;
mod runout;
mod saved;
mod shop;
mod slip;
mod stock;
mod thickness;

pub use at::Timestamp;
pub use decided::{Decided, Inputs};
pub(super) use decided::{length, round};
pub use dial_setup::DialSetup;
pub use ended::{Charge, Ended, Ending};
pub use flow::{Confirmation, DayTime, Held, Slot};
pub use found::{AgainstLimit, Basis, FaceFound, ReachFound, RotorFound, ShapeFound, WaveFound};
pub use kit::{Carried, MoreKit, Stand};
pub use loosened::{Also, AngleBy, Interrupted, Interruption, Mishap, Remark};
pub use price::{Discount, Money, Paid, PaidHow, Price};
pub use proved::Proved;
pub use runout::{RunoutReading, RunoutSpec, Setup};
pub use saved::{Caption, Captioned, Named, Photo, Voice};
pub use shop::{Shop, ShopRetorque, Template};
pub use slip::Slip;
pub use stock::Stock;
pub use thickness::{Gauging, ThicknessReading, ThicknessSpec};

use crate::trade::answer::Answer;
use crate::trade::damage::{CameBackFor, PartReading};
use crate::trade::diagnosis::{Clue, Complaint};
use crate::trade::fastening::{Spec, TypedLever};
use crate::trade::money::Invoice;
use crate::trade::play::{Dial, Felt, Place};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{
    Check, Choice, Item, ItemState, NotDoneReason, SetName, Start, StepKey,
};
use crate::units::{
    Decimal, DistanceUnit, TemperatureUnit, TorqueUnit, Typed, TypedAngle, TypedLength,
};
use crate::words;

pub use crate::trade::wheel_end::KitItem;

/// The identity of an entry: a UUID version 7 as text.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct EntryId(pub String);

/// The identity of a log: a job, a spec library or a van kit.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct LogId(pub String);

/// One thing that happened.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct Entry {
    /// Its identity, never used again.
    pub id: EntryId,
    /// The log it belongs to.
    pub log: LogId,
    /// When.
    pub at: Timestamp,
    /// Who did it, as the device knows them.
    pub by: String,
    /// The device it was noted on.
    pub device: String,
    /// The device's running number.
    pub n: u64,
    /// The heads that the device saw when it noted this.
    pub after: Vec<EntryId>,
    /// What happened.
    pub what: Event,
}

/// What happened.
#[derive(Clone, Debug, PartialEq, Hash)]
pub enum Event {
    /// The job was started.
    Opened(Opened),
    /// A personal fact of the customer; erasing a person empties it always.
    Person(PersonField, String),
    /// The body was erased; the digest of the original text stands for it.
    Erased(String),
    /// The complaint, word for word.
    Said(String),
    /// A fact of the vehicle.
    Vehicle(VehicleField, String),
    /// Which corners the job is about, in the order of work.
    Corners(Vec<Corner>),
    /// A value from service information, or "not found".
    Spec(Spec),
    /// What is missing from the kit.
    Missing(Vec<KitItem>),
    /// The instruments carried, copied from the van kit.
    Carried(Carried),
    /// A step was answered.
    Answered(StepKey, Reply),
    /// Items were loosened, put in or tightened.
    Moved(Moved),
    /// Something else is off, named by hand.
    Also(Also),
    /// The wrench is used with an adapter at a step, or without one again.
    Lever(StepKey, Option<TypedLever>),
    /// Something went wrong with a fastener.
    Mishap(Mishap),
    /// It is mended.
    Mended(Item),
    /// The car was left in the middle of the work.
    Interrupted(Interrupted),
    /// A pass over several fasteners begins at the first.
    Pass(StepKey),
    /// How the dial was set up for a set of rounds, as recorded there.
    DialSetup(DialSetup),
    /// One side of one round on the dial.
    Reading(Reading),
    /// A decision, with what it rested on.
    Decided(Decided),
    /// The proof after the work, with what it rested on.
    Proved(Proved),
    /// What a run round a face said.
    FaceFound(Box<FaceFound>),
    /// What a measurement of a rotor said.
    RotorFound(Box<RotorFound>),
    /// What the work costs.
    Price(Price),
    /// An invoice or a credit note under its number.
    Invoice(Box<Invoice>),
    /// Less is asked for than was agreed.
    Discount(Discount),
    /// Money that came in.
    Paid(Paid),
    /// Money that went back.
    Refunded(Paid),
    /// The customer's yes or no.
    Consent(Consent),
    /// A signature.
    Signed(Signed),
    /// A picture was kept.
    Photo(Photo),
    /// A note.
    Note(Option<StepKey>, String),
    /// A note that is picked.
    Remark(StepKey, Remark),
    /// A part was fitted or taken off.
    Part(Part),
    /// Something is due.
    Due(Due),
    /// The report was handed over, as the entries stood then.
    HandedOver(HandedOver),
    /// The job ended.
    Ended(Ended),
    /// Earlier entries no longer count.
    Strike(Vec<EntryId>),
    /// One place of a run round a face.
    Runout(RunoutReading),
    /// The most run-out that the manufacturer allows.
    RunoutLimit(RunoutSpec),
    /// How the removed part of a corner was read.
    RemovedPart(Corner, PartReading),
    /// Why the job came back.
    CameBackFor(CameBackFor),
    /// What the customer complains of, as the ranking of causes knows it.
    Complaint(Complaint),
    /// What was found of a clue, at a corner where it belongs to one.
    Clue(Option<Corner>, Clue, Answer),
    /// What the van had of a part, counted.
    Stock(Stock),
    /// One place of a rotor under the micrometer.
    Thickness(ThicknessReading),
    /// A limit of the rotor's thickness.
    ThicknessLimit(ThicknessSpec),
    /// How far a place of the tip is from the axle's middle.
    TipRadius(Place, TypedLength),
    /// How far off square the tip stood while a set was taken.
    TipAngle(Corner, SetName, TypedAngle),
    /// By how many divisions the needle crept while nobody touched it, during a set.
    Crept(Corner, SetName, Decimal),
    /// A spoken note was kept.
    Voice(Voice),
    /// What a picture shows was said.
    Captioned(Captioned),
    /// What was read from the paper of an earlier visit.
    FromPaper(Slip),
    /// When, and by which van, it is done.
    Slot(Slot),
    /// What the shop has set for its vans.
    Shop(Box<Shop>),
    /// What the shop has.
    Confirmation(Confirmation),
    /// The body left this device, and the shop has it; the digest of the original stands for it.
    LetGo(String),
    /// By what an angle is read at a step, from here on.
    Angled(StepKey, AngleBy),
    /// An entry of a kind that this version does not know; kept as it came.
    Unknown(String),
}

impl Event {
    /// Whether its body is gone: erased everywhere, or let go of on this device.
    pub const fn is_gone(&self) -> bool {
        matches!(self, Self::Erased(_) | Self::LetGo(_))
    }
}

/// How a job was started.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Opened {
    /// At home or at the car.
    pub start: Start,
    /// The practice car, if it is practice.
    pub practice: Option<String>,
}

words! {
    /// Personal facts.
    pub enum PersonField {
        Name = "name", Phone = "phone", Address = "address", Plate = "plate", Email = "email",
        /// The number or address that an answer by message came from.
        Message = "message",
        /// Who saw that the customer would not sign.
        Witness = "witness",
    }
}

words! {
    /// Facts of a vehicle that the procedure or the report needs.
    pub enum VehicleField {
        Vin = "vin", Family = "family", Kind = "kind", Studs = "studs", HubBolts = "hub_bolts",
        Fixing = "fixing", Power = "power", ParkingBrake = "parking_brake", Caliper = "caliper",
        Mass = "mass", Brake = "brake", Sensor = "sensor", Encoder = "encoder",
        NutLock = "nut_lock", Pressing = "pressing",
    }
}

/// How a step was answered.
#[derive(Clone, Debug, PartialEq, Hash)]
pub enum Reply {
    /// It is done.
    Done,
    /// It was not done, and why.
    NotDone(NotDoneReason),
    /// Yes or no.
    Said(Answer),
    /// What the hands felt.
    Felt(Felt),
    /// One word.
    Picked(Choice),
    /// A number as typed, with its unit.
    Number(Quantity),
    /// So many were found loose; zero is a found number.
    FoundLoose(u8),
    /// A list, each with its own answer.
    Checked(Vec<(Check, Answer)>),
}

/// A number that a step asks for, as typed.
#[derive(Clone, Debug, PartialEq, Hash)]
pub enum Quantity {
    /// A distance driven.
    Distance(Typed<DistanceUnit>),
    /// A temperature.
    Temperature(Typed<TemperatureUnit>),
}

/// Items that changed.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct Moved {
    /// The step that changed them.
    pub step: StepKey,
    /// Which items.
    pub items: Vec<Item>,
    /// What they are now.
    pub to: ItemState,
    /// The wrench, and the torque it was set to, when one was used.
    pub wrench: Option<(String, Typed<TorqueUnit>)>,
}

words! {
    /// Which way the hub was held at a reading.
    pub enum Side { Push = "push", Pull = "pull" }
}

/// One reading of the dial.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct Reading {
    /// Where.
    pub corner: Corner,
    /// Of which set.
    pub set: SetName,
    /// Of which round, counted from 1.
    pub round: u8,
    /// Pushed or pulled.
    pub side: Side,
    /// Where the needle stood, in the dial's divisions, as typed.
    pub divisions: Decimal,
    /// Whole turns of the needle from push to pull, at a pull where they were asked for.
    pub turns: Option<i32>,
    /// The dial it was read on, so that the reading stands by itself.
    pub dial: Dial,
}

words! {
    /// What a yes is for.
    pub enum Scope { Teardown = "teardown", Repair = "repair", Extra = "extra" }
}

words! {
    /// How a yes was given.
    pub enum How { Written = "written", Spoken = "spoken", Electronic = "electronic" }
}

/// The customer's answer.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Consent {
    /// The step at which it was asked.
    pub step: StepKey,
    /// For what.
    pub scope: Scope,
    /// Yes or no.
    pub yes: bool,
    /// How it was given.
    pub how: How,
    /// For how much, if an amount was shown.
    pub amount: Option<Money>,
}

/// A signature as drawn.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Signed {
    /// The step it belongs to.
    pub step: StepKey,
    /// SVG path data in a box 300 wide and 120 high.
    pub strokes: String,
}

/// A part.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Part {
    /// Where.
    pub corner: Corner,
    /// Its number.
    pub number: String,
    /// The manufacturer's lot or date code, if it has one.
    pub lot: String,
}

words! {
    /// What is due.
    pub enum DueKind { Retorque = "retorque", Recheck = "recheck" }
}

/// Something that must be done later.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct Due {
    /// What.
    pub kind: DueKind,
    /// By which day, `YYYY-MM-DD`.
    pub date: String,
    /// After which distance, as typed.
    pub distance: Option<Typed<DistanceUnit>>,
}

/// The report as it was handed over.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct HandedOver {
    /// SHA-256 over the digests of the entries it was folded from.
    pub digest: String,
}

impl HandedOver {
    /// As the record stands when it is noted: its digest is put in as the entry is made.
    pub const NOW: Self = Self {
        digest: String::new(),
    };
}

#[cfg(test)]
#[path = "entry/tests.rs"]
mod tests;
