//! Where a job stands: how far each step is, and which comes next.

use crate::job::answers::is_open_after;
use crate::job::entry::{Reply, Side};
use crate::job::key::Key;
use crate::job::loose_lug_nuts::is_to_be_judged_again;
use crate::job::mishap::stud_broke;
use crate::job::plan::is_over;
use crate::job::round::begun;
use crate::job::sheet::JobState;
use crate::job::wheel_end::group_items;
use crate::trade::answer::Answer;
use crate::trade::wheel_end::{
    Again, Change, Form, Item, ItemKind, ItemState, NotDoneReason, Phase, PlannedStep, STUD_BROKE,
    Step, StepKey,
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

/// How far a step is.
pub fn status(sheet: &JobState, planned: &PlannedStep) -> Status {
    let by_entry =
        match &planned.form {
            Form::Turn(group) => turned(sheet, planned, *group),
            Form::Round(set, round) => planned.key.corner.map(|corner| {
                let pulled = sheet.reading(corner, *set, *round, Side::Pull).is_some();
                if pulled && begun(sheet, (corner, *set, *round)).is_none() {
                    Status::Done
                } else {
                    Status::Open
                }
            }),
            Form::DialSetup(set) => {
                let at = planned.key.corner;
                done_if(at.is_some_and(|at| sheet.dial_setup(at, *set).is_some()))
            }
            Form::Spec(item) => done_if(sheet.spec(*item).is_some()),
            Form::Corners => done_if(!sheet.corners().is_empty()),
            Form::Decide(nth) => done_if(planned.key.corner.is_some_and(|at| {
                sheet.decides(at, *nth) && !is_to_be_judged_again(sheet, at, *nth)
            })),
            Form::Consent => done_if(sheet.consent(planned.key).is_some()),
            Form::Price => done_if(sheet.price().is_some()),
            Form::Photo => done_if(sheet.photos(planned.key).next().is_some()),
            Form::Sign => done_if(sheet.signed(planned.key).is_some()),
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
        Some(begun @ Status::Partly(..)) => match replied(sheet, planned) {
            given_up @ Status::NotDone(_) if was_given_up(sheet, planned) => given_up,
            _ => begun,
        },
        _ => replied(sheet, planned),
    }
}

/// Whether "not done" was said after the last fastener that was turned at this step.
fn was_given_up(sheet: &JobState, planned: &PlannedStep) -> bool {
    let (Form::Turn(group), Some(corner)) = (&planned.form, planned.key.corner) else {
        return false;
    };
    let turned = group_items(sheet, corner, *group)
        .into_iter()
        .filter_map(|item| sheet.place(&Key::Turned(planned.key, item)))
        .max();
    turned < sheet.place(&Key::Step(planned.key))
}

fn done_if(done: bool) -> Option<Status> {
    done.then_some(Status::Done)
}

fn replied(sheet: &JobState, planned: &PlannedStep) -> Status {
    match sheet.reply(planned.key) {
        None => Status::Open,
        Some(reply) if is_open_after(planned, reply) => Status::Held,
        Some(_) if is_stale(sheet, planned.key) => Status::Open,
        Some(Reply::NotDone(because)) => Status::NotDone(*because),
        Some(Reply::Said(Answer::NotDone)) => Status::NotDone(NotDoneReason::Other),
        Some(_) => Status::Done,
    }
}

/// Whether something was loosened after a look that is then asked again, or another stud broke after
/// one was replaced.
fn is_stale(sheet: &JobState, look: StepKey) -> bool {
    let answered = sheet.place(&Key::Step(look));
    let loosened = look.step.row().again == Again::Loosened && answered < sheet.last_loosened();
    let stud = look.nth == STUD_BROKE || look.step == Step::StudIn;
    let broke = look.corner.filter(|_| stud);
    let broke = broke.and_then(|corner| stud_broke(sheet, corner));
    loosened || broke.is_some_and(|(place, _)| answered < Some(place))
}

fn turned(sheet: &JobState, planned: &PlannedStep, group: ItemKind) -> Option<Status> {
    let all = group_items(sheet, planned.key.corner?, group);
    let done = all
        .iter()
        .filter(|item| sheet.turned(planned.key, **item))
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
pub fn next<'a>(sheet: &JobState, steps: &'a [PlannedStep]) -> Option<&'a PlannedStep> {
    if let Some(back) = brings_back(sheet, steps).filter(|_| sheet.is_open_again()) {
        return Some(back);
    }
    let over = is_over(sheet.ended().map(|ended| ended.ending));
    let mut asked = steps
        .iter()
        .filter(|planned| !over || planned.phase == Phase::LookBack);
    asked.find(|planned| !status(sheet, planned).is_settled())
}

/// The first of the steps by which what is loose is brought back last.
fn brings_back<'a>(sheet: &JobState, steps: &'a [PlannedStep]) -> Option<&'a PlannedStep> {
    let closes = |planned: &PlannedStep, item: Item| {
        let turns = planned.form == Form::Turn(item.group);
        let moves = |change: &Change| change.group == item.group && change.to == ItemState::Done;
        planned.key.corner == Some(item.corner) && (turns || planned.changes.iter().any(moves))
    };
    let last = |item| steps.iter().rposition(|planned| closes(planned, item));
    let loose = sheet.loose();
    let first = loose.iter().filter_map(|(item, _)| last(*item)).min()?;
    steps.get(first)
}
