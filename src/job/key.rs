//! Which facts an entry states. Two entries that state the same fact can disagree.

use crate::job::entry::{
    AgainstLimit, DueKind, Ending, PersonField, Reply, Scope, Side, VehicleField, What,
};
use crate::trade::answer::Answer;
use crate::trade::fastening::CardItem;
use crate::trade::play::{After, Decision, Felt, Place};
use crate::trade::runout::{Bound, Surface};
use crate::trade::vehicle::{Axle, Corner};
use crate::trade::wheel_end::{Check, Hold, Item, Pick, SetName, Sign, Step, StepKey, sign_step};

/// The name of one fact of a job.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Key {
    /// How the job was started.
    Opened,
    /// A personal fact.
    Person(PersonField),
    /// The complaint.
    Said,
    /// A fact of the vehicle.
    Vehicle(VehicleField),
    /// The corners.
    Corners,
    /// A spec card.
    Card(CardItem),
    /// What the kit lacks.
    Missing,
    /// The instruments.
    Carried,
    /// The answer to a step.
    Step(StepKey),
    /// Where an item stands.
    Item(Item),
    /// That an item was turned at one step.
    Turned(StepKey, Item),
    /// What went wrong with an item, or that it is mended.
    Mishap(Item),
    /// The adapter at a step.
    Lever(StepKey),
    /// The owner's answer about extra work seen at a step.
    Extra(StepKey),
    /// Where a pass began.
    Pass(StepKey),
    /// How the dial was set up for a set.
    DialSetup(Corner, SetName),
    /// One side of a round.
    Reading(Corner, SetName, u8, Side),
    /// A decision.
    Decided(Corner, u8),
    /// The proof after the work.
    Proved(Corner),
    /// What a run round a face said.
    FaceFound(Corner, u8),
    /// What a measurement of a rotor said.
    RotorFound(Corner, u8),
    /// The price.
    Price,
    /// The invoice's number.
    Invoice,
    /// The owner's answer.
    Consent(StepKey),
    /// A signature.
    Signed(StepKey),
    /// A part.
    Part(Corner),
    /// Something due.
    Due(DueKind),
    /// The handing over.
    HandedOver,
    /// One place of a run round a face.
    Runout(Corner, u8, u8),
    /// A limit of run-out.
    RunoutLimit(Surface),
    /// What was seen on the old part.
    Damage(Corner),
    /// Why it came back.
    CameBackFor,
    /// What the van has of a part.
    Stock(String),
    /// One place of a rotor under the micrometer.
    Thickness(Corner, u8, u8),
    /// A limit of the thickness of an axle's rotors.
    ThicknessLimit(Axle, Bound),
    /// How far a place of the tip is from the axle's middle.
    TipRadius(Place),
    /// How far off square the tip stood.
    TipAngle(Corner, SetName),
    /// How far the needle crept.
    Crept(Corner, SetName),
    /// The ending.
    Ended,
    /// What a picture shows, by its digest.
    Caption(String),
    /// What was read from paper.
    FromPaper,
    /// When, and by which van.
    Slot,
    /// The shop's settings.
    Shop,
    /// By what an angle is read at a step.
    Angled(StepKey),
}

/// The facts that `what` states; none for entries that only add to a list.
pub(super) fn keys(what: &What) -> Vec<Key> {
    match what {
        What::Opened(_) => vec![Key::Opened],
        What::Person(field, _) => vec![Key::Person(*field)],
        What::Said(_) => vec![Key::Said],
        What::Vehicle(field, _) => vec![Key::Vehicle(*field)],
        What::Corners(_) => vec![Key::Corners],
        What::Card(card) => vec![Key::Card(card.item)],
        What::Missing(_) => vec![Key::Missing],
        What::Carried(_) => vec![Key::Carried],
        What::Answered(step, _) => vec![Key::Step(*step)],
        What::Moved(moved) => {
            let items = moved.items.iter();
            items
                .flat_map(|item| [Key::Item(*item), Key::Turned(moved.step, *item)])
                .collect()
        }
        What::Also(also) => vec![Key::Item(also.item)],
        What::Lever(step, _) => vec![Key::Lever(*step)],
        What::Mishap(mishap) => vec![Key::Mishap(mishap.item)],
        What::Mended(item) => vec![Key::Mishap(*item)],
        What::Pass(step) => vec![Key::Pass(*step)],
        What::DialSetup(setup) => vec![Key::DialSetup(setup.corner, setup.set)],
        What::Reading(r) => vec![Key::Reading(r.corner, r.set, r.round, r.side)],
        What::Decided(decided) => vec![Key::Decided(decided.corner, decided.nth)],
        What::Proved(proved) => vec![Key::Proved(proved.corner)],
        What::FaceFound(found) => vec![Key::FaceFound(found.corner, found.run)],
        What::RotorFound(found) => vec![Key::RotorFound(found.corner, found.run)],
        What::Price(_) => vec![Key::Price],
        What::Invoice(_) => vec![Key::Invoice],
        What::Consent(consent) if consent.scope == Scope::Extra => vec![Key::Extra(consent.step)],
        What::Consent(consent) => vec![Key::Consent(consent.step)],
        What::Signed(signed) => vec![Key::Signed(signed.step)],
        What::Part(part) => vec![Key::Part(part.corner)],
        What::Due(due) => vec![Key::Due(due.kind)],
        What::HandedOver(_) => vec![Key::HandedOver],
        What::Runout(r) => vec![Key::Runout(r.corner, r.run, r.place)],
        What::RunoutLimit(card) => vec![Key::RunoutLimit(card.surface)],
        What::Damage(corner, _) => vec![Key::Damage(*corner)],
        What::CameBackFor(_) => vec![Key::CameBackFor],
        What::Stock(stock) => vec![Key::Stock(stock.number.clone())],
        What::Thickness(r) => vec![Key::Thickness(r.corner, r.run, r.place)],
        What::ThicknessLimit(card) => vec![Key::ThicknessLimit(card.axle, card.bound)],
        What::TipRadius(place, _) => vec![Key::TipRadius(*place)],
        What::TipAngle(corner, set, _) => vec![Key::TipAngle(*corner, *set)],
        What::Crept(corner, set, _) => vec![Key::Crept(*corner, *set)],
        What::Ended(_) => vec![Key::Ended],
        What::Captioned(said) => vec![Key::Caption(said.sha256.clone())],
        What::FromPaper(_) => vec![Key::FromPaper],
        What::Slot(_) => vec![Key::Slot],
        What::Shop(_) => vec![Key::Shop],
        What::Angled(step, _) => vec![Key::Angled(*step)],
        What::Erased(_)
        | What::LetGo(_)
        | What::Receipt(_)
        | What::Paid(_)
        | What::Photo(_)
        | What::Voice(_)
        | What::Note(..)
        | What::Strike(_)
        | What::Unknown(_) => Vec::new(),
    }
}

/// How careful a value is: of two that cannot both be true, the smaller holds until it is settled.
///
/// Loose beats tight, STOP beats WATCH, no beats yes, and the yes to a sign of the road test its
/// no; what is wrong beats "not done", and that beats what is well.
pub(super) fn care(what: &What) -> u8 {
    match what {
        What::Moved(moved) => moved.to as u8,
        What::Also(_) => Hold::Off as u8,
        What::Mishap(_) => 0,
        What::Decided(decided) => match decided.decision {
            Decision::Stop => 0,
            Decision::Replace => 1,
            Decision::Watch => 2,
            Decision::Keep => 3,
        },
        What::Proved(proved) => match proved.outcome {
            After::Blocked { .. } => 0,
            After::NotJudged { .. } => NOT_DONE,
            After::Pass { .. } => WELL,
        },
        What::FaceFound(found) if is_over(found.against.as_ref()) => 0,
        What::RotorFound(found) if is_over(found.least.as_ref()) => 0,
        What::RotorFound(found) if is_over(found.variation.as_ref()) => 1,
        What::Answered(key, Reply::Said(answer)) if is_sign(key.step) => care_of_sign(*answer),
        What::Answered(_, reply) => care_of_reply(reply),
        What::Consent(consent) => u8::from(consent.yes),
        What::Ended(ended) => u8::from(ended.ending != Ending::LeftUnfinished),
        _ => WELL,
    }
}

fn is_over<C>(against: Option<&AgainstLimit<C>>) -> bool {
    against.is_some_and(AgainstLimit::is_over)
}

const NOT_DONE: u8 = 4;
const WELL: u8 = 5;

/// Whether a step asks for a sign that something is wrong: there "yes" is the bad news.
fn is_sign(step: Step) -> bool {
    Sign::ALL.iter().any(|sign| sign_step(*sign) == step)
}

const fn care_of_sign(answer: Answer) -> u8 {
    match answer {
        Answer::Yes => 0,
        Answer::NotDone => NOT_DONE,
        Answer::No => WELL,
    }
}

/// A row that must not be lost to another phone's list, since its "no" alone means STOP.
fn is_stop((check, answer): &(Check, Answer)) -> bool {
    *answer == Answer::No && matches!(check, Check::WheelUpright | Check::NutsAsFound)
}

fn care_of_reply(reply: &Reply) -> u8 {
    match reply {
        Reply::Said(Answer::No) => 0,
        Reply::NotDone(_) | Reply::Said(Answer::NotDone) => NOT_DONE,
        Reply::Felt(felt) => match felt {
            Felt::Knocks => 0,
            Felt::Seen => 1,
            Felt::JustFelt => 2,
            Felt::Nothing => WELL,
        },
        Reply::Picked(pick) => care_of_pick(*pick),
        Reply::Checked(checks) if checks.iter().any(is_stop) => 0,
        Reply::Checked(checks) if checks.iter().any(|(_, a)| *a == Answer::No) => 1,
        Reply::FoundLoose(count) => care_of_pick(if *count > 0 {
            Pick::SomeLoose
        } else {
            Pick::NoneLoose
        }),
        Reply::Checked(checks) if checks.iter().any(|(_, a)| *a == Answer::No) => 0,
        Reply::Checked(checks) if checks.iter().any(|(_, a)| *a == Answer::NotDone) => NOT_DONE,
        Reply::Done | Reply::Said(Answer::Yes) | Reply::Number(_) | Reply::Checked(_) => WELL,
    }
}

const fn care_of_pick(pick: Pick) -> u8 {
    match pick {
        Pick::GrindsHot | Pick::NutSlack | Pick::FlexMore | Pick::BrakeLamp => 0,
        Pick::BaseElsewhere => 0,
        Pick::RoughNoisy | Pick::NutRetorqued | Pick::FlexOne | Pick::AbsLamp => 1,
        Pick::Rough | Pick::Noisy | Pick::FlexHalf | Pick::OtherLamp => 2,
        Pick::PlayGone | Pick::SomeLoose | Pick::SameCorner | Pick::OtherTighter => 2,
        Pick::PlayStays | Pick::OtherCorner | Pick::RetorqueDeclined | Pick::LouderRight => 3,
        Pick::LouderLeft | Pick::OtherLooser => 3,
        Pick::SmoothQuiet | Pick::NutTight | Pick::FlexNone | Pick::NoLamps | Pick::NoChange => {
            WELL
        }
        Pick::SameAsOther | Pick::NoneLoose | Pick::NoComeback => WELL,
    }
}
