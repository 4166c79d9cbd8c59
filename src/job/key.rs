//! Which facts an entry states. Two entries that state the same fact can disagree.

use std::cmp::Ordering;

use crate::job::entry::{
    AgainstLimit, Consent, DueKind, Ending, Event, PersonField, Reply, Scope, Side,
    ThicknessReading, VehicleField,
};
use crate::trade::answer::Answer;
use crate::trade::diagnosis::Clue;
use crate::trade::fastening::{SpecBody, SpecItem};
use crate::trade::play::{After, Decision, Felt, Place};
use crate::trade::runout::{Bound, Surface};
use crate::trade::vehicle::{Axle, Corner};
use crate::trade::wheel_end::{
    Check, Choice, Item, ItemState, SetName, Sign, Step, StepKey, sign_step,
};

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
    /// A spec spec.
    Spec(SpecItem),
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
    /// That the car was left in the middle of the work.
    Interrupted,
    /// The adapter at a step.
    Lever(StepKey),
    /// The customer's answer about extra work seen at a step.
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
    /// The customer's answer.
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
    /// How the removed part was read.
    RemovedPart(Corner),
    /// Why it came back.
    CameBackFor,
    /// What the customer complains of.
    Complaint,
    /// A clue, at a corner where it belongs to one.
    Clue(Option<Corner>, Clue),
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
pub(super) fn keys(what: &Event) -> Vec<Key> {
    match what {
        Event::Opened(_) => vec![Key::Opened],
        Event::Person(field, _) => vec![Key::Person(*field)],
        Event::Said(_) => vec![Key::Said],
        Event::Vehicle(field, _) => vec![Key::Vehicle(*field)],
        Event::Corners(_) => vec![Key::Corners],
        Event::Spec(spec) => vec![Key::Spec(spec.item)],
        Event::Missing(_) => vec![Key::Missing],
        Event::Carried(_) => vec![Key::Carried],
        Event::Answered(step, _) => vec![Key::Step(*step)],
        Event::Moved(moved) => {
            let items = moved.items.iter();
            items
                .flat_map(|item| [Key::Item(*item), Key::Turned(moved.step, *item)])
                .collect()
        }
        Event::Also(also) => vec![Key::Item(also.item)],
        Event::Lever(step, _) => vec![Key::Lever(*step)],
        Event::Mishap(mishap) => vec![Key::Mishap(mishap.item)],
        Event::Mended(item) => vec![Key::Mishap(*item)],
        Event::Interrupted(_) => vec![Key::Interrupted],
        Event::Pass(step) => vec![Key::Pass(*step)],
        Event::DialSetup(setup) => vec![Key::DialSetup(setup.corner, setup.set)],
        Event::Reading(r) => vec![Key::Reading(r.corner, r.set, r.round, r.side)],
        Event::Decided(decided) => vec![Key::Decided(decided.corner, decided.nth)],
        Event::Proved(proved) => vec![Key::Proved(proved.corner)],
        Event::FaceFound(found) => vec![Key::FaceFound(found.corner, found.run)],
        Event::RotorFound(found) => vec![Key::RotorFound(found.corner, found.run)],
        Event::Price(_) => vec![Key::Price],
        Event::Consent(consent) if consent.scope == Scope::Extra => vec![Key::Extra(consent.step)],
        Event::Consent(consent) => vec![Key::Consent(consent.step)],
        Event::Signed(signed) => vec![Key::Signed(signed.step)],
        Event::Part(part) => vec![Key::Part(part.corner)],
        Event::Due(due) => vec![Key::Due(due.kind)],
        Event::HandedOver(_) => vec![Key::HandedOver],
        Event::Runout(r) => vec![Key::Runout(r.corner, r.run, r.place)],
        Event::RunoutLimit(spec) => vec![Key::RunoutLimit(spec.surface)],
        Event::RemovedPart(corner, _) => vec![Key::RemovedPart(*corner)],
        Event::CameBackFor(_) => vec![Key::CameBackFor],
        Event::Complaint(_) => vec![Key::Complaint],
        Event::Clue(corner, clue, _) => vec![Key::Clue(*corner, *clue)],
        Event::Stock(stock) => vec![Key::Stock(stock.number.clone())],
        Event::Thickness(r) => vec![Key::Thickness(r.corner, r.run, r.place)],
        Event::ThicknessLimit(spec) => vec![Key::ThicknessLimit(spec.axle, spec.bound)],
        Event::TipRadius(place, _) => vec![Key::TipRadius(*place)],
        Event::TipAngle(corner, set, _) => vec![Key::TipAngle(*corner, *set)],
        Event::Crept(corner, set, _) => vec![Key::Crept(*corner, *set)],
        Event::Ended(_) => vec![Key::Ended],
        Event::Captioned(said) => vec![Key::Caption(said.sha256.clone())],
        Event::FromPaper(_) => vec![Key::FromPaper],
        Event::Slot(_) => vec![Key::Slot],
        Event::Shop(_) => vec![Key::Shop],
        Event::Angled(step, _) => vec![Key::Angled(*step)],
        Event::Erased(_)
        | Event::LetGo(_)
        | Event::Confirmation(_)
        | Event::Invoice(_)
        | Event::Paid(_)
        | Event::Refunded(_)
        | Event::Discount(_)
        | Event::Photo(_)
        | Event::Voice(_)
        | Event::Note(..)
        | Event::Remark(..)
        | Event::Strike(_)
        | Event::Unknown(_) => Vec::new(),
    }
}

/// Whether of two values that cannot both be true the first holds until it is settled: it is the
/// more careful one, or as careful and said later.
pub(super) fn is_no_less_careful(next: &Event, saved: &Event) -> bool {
    match care(next).cmp(&care(saved)) {
        Ordering::Equal => finer(next, saved),
        order => order == Ordering::Less,
    }
}

/// The same of two values that only differ in a number: the lower limit, the thinner place, the
/// higher drift, the lower amount.
fn finer(next: &Event, saved: &Event) -> bool {
    match (next, saved) {
        (Event::Spec(next), Event::Spec(saved)) => match (&next.body, &saved.body) {
            (SpecBody::Play { most: next, .. }, SpecBody::Play { most: saved, .. }) => {
                next.length().mm() <= saved.length().mm()
            }
            // A default limit is the lower one where the page gives none (common practice).
            _ => true,
        },
        (Event::Thickness(next), Event::Thickness(saved)) => {
            let mm = |it: &ThicknessReading| it.thickness.as_ref().map(|it| it.length().mm());
            mm(next) <= mm(saved)
        }
        (Event::RunoutLimit(next), Event::RunoutLimit(saved)) => {
            next.most.length().mm() <= saved.most.length().mm()
        }
        (Event::Crept(.., next), Event::Crept(.., saved)) => saved.value() <= next.value(),
        (Event::Consent(next), Event::Consent(saved)) => {
            let minor = |it: &Consent| it.amount.as_ref().map(|amount| amount.minor);
            minor(next) <= minor(saved)
        }
        _ => true,
    }
}

/// How careful a value is: of two that cannot both be true, the smaller holds until it is settled.
///
/// Loose beats tight, STOP beats WATCH, no beats yes, and the yes to a sign of the road test its
/// no; what is wrong beats "not done", and that beats what is well.
fn care(what: &Event) -> u8 {
    match what {
        Event::Moved(moved) => moved.to as u8,
        Event::Also(_) => ItemState::Off as u8,
        Event::Mishap(_) => 0,
        Event::Decided(decided) => match decided.decision {
            Decision::Stop => 0,
            Decision::Replace => 1,
            Decision::Watch => 2,
            Decision::Keep => 3,
        },
        Event::Proved(proved) => match proved.outcome {
            After::Blocked { .. } => 0,
            After::NotJudged { .. } => NOT_DONE,
            After::Pass { .. } => WELL,
        },
        Event::FaceFound(found) if is_over(found.against.as_ref()) => 0,
        Event::RotorFound(found) if is_over(found.least.as_ref()) => 0,
        Event::RotorFound(found) if is_over(found.variation.as_ref()) => 1,
        Event::Answered(key, Reply::Said(answer)) if is_sign(key.step) => care_of_sign(*answer),
        Event::Clue(_, _, answer) => care_of_sign(*answer),
        Event::Answered(_, reply) => care_of_reply(reply),
        Event::Consent(consent) => u8::from(consent.yes),
        Event::Ended(ended) => u8::from(ended.ending != Ending::LeftUnfinished),
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
            Choice::SomeLoose
        } else {
            Choice::NoneLoose
        }),
        Reply::Checked(checks) if checks.iter().any(|(_, a)| *a == Answer::No) => 0,
        Reply::Checked(checks) if checks.iter().any(|(_, a)| *a == Answer::NotDone) => NOT_DONE,
        Reply::Done | Reply::Said(Answer::Yes) | Reply::Number(_) | Reply::Checked(_) => WELL,
    }
}

const fn care_of_pick(pick: Choice) -> u8 {
    match pick {
        Choice::GrindsHot | Choice::NutSlack | Choice::FlexMore | Choice::BrakeWarningLight => 0,
        Choice::LockGone | Choice::SlotTighter => 0,
        Choice::BaseElsewhere => 0,
        Choice::RoughNoisy | Choice::NutRetorqued | Choice::FlexOne | Choice::AbsWarningLight => 1,
        Choice::Rough | Choice::Noisy | Choice::FlexHalf | Choice::OtherWarningLight => 2,
        Choice::PlayGone | Choice::SomeLoose | Choice::SameCorner | Choice::OtherTighter => 2,
        Choice::PlayStays
        | Choice::OtherCorner
        | Choice::RetorqueDeclined
        | Choice::LouderRight => 3,
        Choice::LouderLeft | Choice::OtherLooser | Choice::SlotLooser => 3,
        // What is less is claimed.
        Choice::RenewedNone => 2,
        Choice::RenewedOuter | Choice::RenewedInner => 3,
        Choice::LockHolds | Choice::SlotMeets | Choice::RenewedBoth => WELL,
        Choice::SmoothQuiet
        | Choice::NutTight
        | Choice::FlexNone
        | Choice::NoWarningLights
        | Choice::NoChange => WELL,
        Choice::SameAsOther | Choice::NoneLoose | Choice::NoComeback => WELL,
    }
}
