//! Where a job stands: the plan folded from its entries, and the step that comes next.

use crate::job::again::is_reopened;
use crate::job::answers::is_open_after;
use crate::job::ending::is_blocked;
use crate::job::entry::{Ending, Reply, Side, VehicleField};
use crate::job::key::Key;
use crate::job::loose_lug_nuts::{found_loose, is_to_be_judged_again, wrong_looks};
use crate::job::round::begun;
use crate::job::sheet::JobState;
use crate::job::slip::slip;
use crate::trade::answer::Answer;
use crate::trade::fastening::{CardBody, CardItem};
use crate::trade::play::Decision;
use crate::trade::play::Felt;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{
    Again, Change, Choice, CornerPlan, Course, Form, Item, ItemKind, ItemState, Kind,
    NotDoneReason, NutPosition, Phase, Plan, Sign, Start, Step, StepKey, StepSpec, WheelEnd, items,
    sign_step,
};

/// How far a step is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Status {
    /// Not touched.
    Open,
    /// Begun: so many of so many.
    Partly(u8, u8),
    /// Done.
    Done,
    /// Not done, with the reason; never counted as no.
    NotDone(NotDoneReason),
    /// Answered in a way that keeps it open until it is put right and answered again.
    Held,
}

impl Status {
    /// Whether the job may pass on.
    pub const fn is_settled(self) -> bool {
        matches!(self, Self::Done | Self::NotDone(_))
    }
}

/// The facts that pick and order the steps, from the entries alone.
pub fn plan(sheet: &JobState) -> Plan {
    Plan {
        kind: kind(sheet),
        start: sheet.opened().map_or(Start::AtHome, |opened| opened.start),
        corners: sheet
            .corners()
            .iter()
            .map(|corner| corner_plan(sheet, *corner))
            .collect(),
        nut: nut_position(sheet),
        site_refused: said(sheet, StepKey::once(Step::SiteLook)) == Some(Answer::No),
        teardown_refused: sheet
            .consent(StepKey::once(Step::TeardownYes))
            .is_some_and(|consent| !consent.yes),
        nuts_loose: found_loose(sheet),
        wrong_looks: wrong_looks(sheet),
        warning_lights: match sheet.reply(StepKey::once(Step::WarningLights)) {
            Some(Reply::Picked(pick)) => Some(*pick),
            _ => None,
        },
        driven: sheet.reply(StepKey::once(Step::Drive)) == Some(&Reply::Done),
        more_questions: more_questions(sheet),
        signs: Sign::ALL
            .iter()
            .copied()
            .filter(|sign| has_sign(sheet, *sign))
            .collect(),
        ended: sheet.ended().is_some(),
    }
}

/// The kind of wheel end that is worked on, as it was noted.
fn kind(sheet: &JobState) -> Kind {
    let noted = sheet.vehicle(VehicleField::Kind);
    noted
        .and_then(Kind::from_code)
        .unwrap_or(Kind::BoltedDriven)
}

/// The wheel end that is worked on.
pub fn wheel_end(sheet: &JobState) -> &'static WheelEnd {
    kind(sheet).wheel_end()
}

fn corner_plan(sheet: &JobState, corner: Corner) -> CornerPlan {
    CornerPlan {
        corner,
        course: course(sheet, corner),
        stop: sheet
            .decided(corner)
            .is_some_and(|decided| decided.decision == Decision::Stop),
        play_felt: play_felt(sheet, corner),
        second_set: sheet
            .decided_nth(corner, 1)
            .is_some_and(|decided| decided.again),
        blocked: is_blocked(sheet, corner),
        reopened: is_reopened(sheet, corner),
        waited: sheet.reply(StepKey::at(Step::Wait, corner)) == Some(&Reply::Done),
    }
}

fn course(sheet: &JobState, corner: Corner) -> Course {
    let Some(decided) = sheet.decided(corner) else {
        return course_on_paper(sheet, corner).unwrap_or(Course::Open);
    };
    if decided.again && decided.nth == 1 {
        return Course::Open;
    }
    match decided.decision {
        Decision::Keep | Decision::Watch => Course::PutBack,
        Decision::Replace | Decision::Stop => {
            match sheet
                .consent(StepKey::at(Step::Agree, corner))
                .map(|consent| consent.yes)
            {
                None => Course::Asking,
                Some(false) => Course::Declined,
                Some(true) => Course::Replace,
            }
        }
    }
}

/// What had come of a corner when the paper of an ended job was printed.
fn course_on_paper(sheet: &JobState, corner: Corner) -> Option<Course> {
    let slip = slip(sheet).filter(|slip| is_over(slip.ending()))?;
    let repaired = slip.agreed(corner).is_some_and(|consent| consent.yes);
    Some(match slip.decided(corner)?.decision {
        Decision::Keep | Decision::Watch => Course::PutBack,
        _ if repaired => Course::Replace,
        _ => Course::Declined,
    })
}

/// Whether a job with this ending is only looked back on.
fn is_over(ending: Option<Ending>) -> bool {
    ending.is_some_and(|ending| ending != Ending::LeftUnfinished)
}

fn play_felt(sheet: &JobState, corner: Corner) -> bool {
    let mut rocks = Step::ALL.iter().filter(|it| it.row().form == Form::Swing);
    rocks.any(|step| {
        matches!(
            sheet.reply(StepKey::at(*step, corner)),
            Some(Reply::Felt(Felt::JustFelt | Felt::Seen | Felt::Knocks))
        )
    })
}

fn nut_position(sheet: &JobState) -> NutPosition {
    match sheet.card(CardItem::AxleNut).map(|card| &card.body) {
        Some(CardBody::Torque(body)) => body.position.unwrap_or(NutPosition::AirBrakeHeld),
        _ => NutPosition::AirBrakeHeld,
    }
}

fn said(sheet: &JobState, step: StepKey) -> Option<Answer> {
    match sheet.reply(step) {
        Some(Reply::Said(answer)) => Some(*answer),
        _ => None,
    }
}

pub(super) fn has_sign(sheet: &JobState, sign: Sign) -> bool {
    match sheet.reply(StepKey::once(sign_step(sign))) {
        Some(Reply::Said(answer)) => *answer == Answer::Yes,
        Some(Reply::Picked(pick)) => matches!(pick, Choice::LouderRight | Choice::LouderLeft),
        _ => false,
    }
}

/// The first five decide if they point at a bearing, or away from it; otherwise more are asked.
///
/// Towards: louder one way in the swerve, and not changing with the road. Away: it changes with
/// the road and not with the swerve. `common practice, no source`.
fn more_questions(sheet: &JobState) -> bool {
    let first = Sign::ALL.iter().filter(|sign| sign.is_first());
    let all = first
        .clone()
        .all(|sign| sheet.reply(StepKey::once(sign_step(*sign))).is_some());
    all && has_sign(sheet, Sign::Swerve) == has_sign(sheet, Sign::Surface)
}

/// How many items a group has on this vehicle.
pub fn count(sheet: &JobState, group: ItemKind) -> u8 {
    let field = match group {
        ItemKind::LugNuts => Some(VehicleField::Studs),
        ItemKind::HubBolts => Some(VehicleField::HubBolts),
        _ => None,
    };
    let noted = field.and_then(|field| sheet.vehicle(field)?.parse().ok());
    wheel_end(sheet).count(group, noted)
}

/// Every item of a group at a corner of this vehicle.
pub fn group_items(sheet: &JobState, corner: Corner, group: ItemKind) -> Vec<Item> {
    items(corner, group, count(sheet, group))
}

/// How far a step is.
pub fn status(sheet: &JobState, spec: &StepSpec) -> Status {
    let by_entry =
        match &spec.form {
            Form::Turn(group) => turned(sheet, spec, *group),
            Form::Round(set, round) => spec.key.corner.map(|corner| {
                let pulled = sheet.reading(corner, *set, *round, Side::Pull).is_some();
                if pulled && begun(sheet, (corner, *set, *round)).is_none() {
                    Status::Done
                } else {
                    Status::Open
                }
            }),
            Form::DialSetup(set) => {
                let at = spec.key.corner;
                done_if(at.is_some_and(|at| sheet.dial_setup(at, *set).is_some()))
            }
            Form::Card(item) => done_if(sheet.card(*item).is_some()),
            Form::Corners => done_if(!sheet.corners().is_empty()),
            Form::Decide(nth) => done_if(spec.key.corner.is_some_and(|at| {
                sheet.decides(at, *nth) && !is_to_be_judged_again(sheet, at, *nth)
            })),
            Form::Consent => done_if(sheet.consent(spec.key).is_some()),
            Form::Price => done_if(sheet.price().is_some()),
            Form::Photo => done_if(sheet.photos(spec.key).next().is_some()),
            Form::Sign => done_if(sheet.signed(spec.key).is_some()),
            Form::End => done_if(sheet.ended().is_some()),
            // Answered by a reply alone.
            Form::Booking
            | Form::Vehicle
            | Form::Kit
            | Form::Ready
            | Form::Do
            | Form::Ask
            | Form::Checks(_)
            | Form::Choice(_)
            | Form::Number(_)
            | Form::Swing
            | Form::Result
            | Form::Retorque
            | Form::Report => None,
        };
    match by_entry {
        Some(Status::Done) => Status::Done,
        Some(begun @ Status::Partly(..)) => match replied(sheet, spec) {
            given_up @ Status::NotDone(_) if was_given_up(sheet, spec) => given_up,
            _ => begun,
        },
        _ => replied(sheet, spec),
    }
}

/// Whether "not done" was said after the last fastener that was turned at this step.
fn was_given_up(sheet: &JobState, spec: &StepSpec) -> bool {
    let (Form::Turn(group), Some(corner)) = (&spec.form, spec.key.corner) else {
        return false;
    };
    let turned = group_items(sheet, corner, *group)
        .into_iter()
        .filter_map(|item| sheet.place(&Key::Turned(spec.key, item)))
        .max();
    turned < sheet.place(&Key::Step(spec.key))
}

fn done_if(done: bool) -> Option<Status> {
    done.then_some(Status::Done)
}

fn replied(sheet: &JobState, spec: &StepSpec) -> Status {
    match sheet.reply(spec.key) {
        None => Status::Open,
        Some(reply) if is_open_after(spec, reply) => Status::Held,
        Some(_) if is_stale(sheet, spec.key) => Status::Open,
        Some(Reply::NotDone(because)) => Status::NotDone(*because),
        Some(Reply::Said(Answer::NotDone)) => Status::NotDone(NotDoneReason::Other),
        Some(_) => Status::Done,
    }
}

/// Whether something was loosened after a look that is then asked again.
fn is_stale(sheet: &JobState, look: StepKey) -> bool {
    look.step.row().again == Again::Loosened
        && sheet.place(&Key::Step(look)) < sheet.last_loosened()
}

fn turned(sheet: &JobState, spec: &StepSpec, group: ItemKind) -> Option<Status> {
    let all = group_items(sheet, spec.key.corner?, group);
    let done = all
        .iter()
        .filter(|item| sheet.turned(spec.key, **item))
        .count();
    let (done, all) = (u8::try_from(done).ok()?, u8::try_from(all.len()).ok()?);
    Some(match done {
        0 => Status::Open,
        some if some < all => Status::Partly(some, all),
        _ => Status::Done,
    })
}

/// The step that comes next: the first that is not settled; in a job that was loosened again after
/// its end, the first that brings back what is loose.
///
/// A job that ended well is only looked back on: it may have been worked by a procedure that did
/// not yet ask everything that this one asks.
pub fn next<'a>(sheet: &JobState, steps: &'a [StepSpec]) -> Option<&'a StepSpec> {
    if let Some(back) = brings_back(sheet, steps).filter(|_| sheet.is_open_again()) {
        return Some(back);
    }
    let over = is_over(sheet.ended().map(|ended| ended.ending));
    let mut asked = steps
        .iter()
        .filter(|spec| !over || spec.phase == Phase::LookBack);
    asked.find(|spec| !status(sheet, spec).is_settled())
}

/// The first of the steps by which what is loose is brought back last.
fn brings_back<'a>(sheet: &JobState, steps: &'a [StepSpec]) -> Option<&'a StepSpec> {
    let closes = |spec: &StepSpec, item: Item| {
        let turns = spec.form == Form::Turn(item.group);
        let moves = |change: &Change| change.group == item.group && change.to == ItemState::Done;
        spec.key.corner == Some(item.corner) && (turns || spec.changes.iter().any(moves))
    };
    let last = |item| steps.iter().rposition(|spec| closes(spec, item));
    let loose = sheet.loose();
    let first = loose.iter().filter_map(|(item, _)| last(*item)).min()?;
    steps.get(first)
}

/// Whether an item was ever loosened.
pub fn was_loosened(sheet: &JobState, item: Item) -> bool {
    sheet.stated(&Key::Item(item)).next().is_some()
}

/// Whether an item stands at its card, or was never touched.
pub fn is_tight(sheet: &JobState, item: Item) -> bool {
    sheet.item(item).is_none_or(|hold| hold == ItemState::Done)
}
