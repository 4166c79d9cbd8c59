//! Which facts an entry states. Two entries that state the same fact can disagree.

use crate::job::entry::{DueKind, Ending, PersonField, Reply, Side, VehicleField, What};
use crate::trade::answer::Answer;
use crate::trade::fastening::CardItem;
use crate::trade::play::{Decision, Felt};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Item, Pick, SetName, StepKey};

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
    /// Where a pass began.
    Pass(StepKey),
    /// One side of a round.
    Reading(Corner, SetName, u8, Side),
    /// A decision.
    Decided(Corner, u8),
    /// The price.
    Price,
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
    /// The ending.
    Ended,
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
        What::Pass(step) => vec![Key::Pass(*step)],
        What::Reading(r) => vec![Key::Reading(r.corner, r.set, r.round, r.side)],
        What::Decided(decided) => vec![Key::Decided(decided.corner, decided.nth)],
        What::Price(_) => vec![Key::Price],
        What::Consent(consent) => vec![Key::Consent(consent.step)],
        What::Signed(signed) => vec![Key::Signed(signed.step)],
        What::Part(part) => vec![Key::Part(part.corner)],
        What::Due(due) => vec![Key::Due(due.kind)],
        What::HandedOver(_) => vec![Key::HandedOver],
        What::Ended(_) => vec![Key::Ended],
        What::Erased(_) | What::Photo(_) | What::Note(..) | What::Strike(_) | What::Unknown(_) => {
            Vec::new()
        }
    }
}

/// How careful a value is: of two that cannot both be true, the smaller holds until it is settled.
///
/// Loose beats tight, STOP beats WATCH, no beats yes; what is wrong beats "not done", and that
/// beats what is well.
pub(super) fn care(what: &What) -> u8 {
    match what {
        What::Moved(moved) => moved.to as u8,
        What::Decided(decided) => match decided.decision {
            Decision::Stop => 0,
            Decision::Replace => 1,
            Decision::Watch => 2,
            Decision::Keep => 3,
        },
        What::Answered(_, reply) => care_of_reply(reply),
        What::Consent(consent) => u8::from(consent.yes),
        What::Ended(ended) => u8::from(ended.ending != Ending::LeftUnfinished),
        _ => WELL,
    }
}

const NOT_DONE: u8 = 4;
const WELL: u8 = 5;

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
