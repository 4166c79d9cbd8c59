//! Where work must not go on: hold points, answers that hold a step, and the order of the work.
//!
//! They are judged when a step is opened or a key is pressed, never when entries are folded; a step
//! that is opened by its address, of a job that has ended too, is judged like every other.

use crate::job::entry::Reply;
use crate::job::evidence::verdict;
use crate::job::holding::{Holding, holding};
use crate::job::interruption::{TAKE_OVER, is_left};
use crate::job::key::Key;
use crate::job::plan::plan;
use crate::job::progress::status;
use crate::job::sheet::JobState;
use crate::job::turn::{spec_item, spec_step};
use crate::job::wheel_end::is_tight;
use crate::trade::answer::Answer;
use crate::trade::fastening::SpecBody;
use crate::trade::play::{Decision, Rig};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{
    Car, Change, Form, Given, HoldPoint, Item, ItemKind, ItemState, Phase, Plan, PlannedStep,
    Scope, SetName, Step, StepKey, When, is_guard, is_work,
};

/// What holds a step, and the step that would answer it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Held {
    /// Which.
    pub point: HoldPoint,
    /// Where the answer is given; none when the loose list itself must be emptied.
    pub answer_at: Option<StepKey>,
    /// The answer that holds, where one does.
    pub given: Option<Given>,
}

/// What stands before `spec`, if anything: its hold points, a car that is not on its stand, an
/// answer that holds it, or work before it that is still open.
pub fn held(sheet: &JobState, steps: &[PlannedStep], planned: &PlannedStep) -> Option<Held> {
    held_after(sheet, steps, planned, &[])
}

/// The same where the steps `told` stand before it on one screen: what they close is closed by then,
/// and their order is that of the screen.
pub(super) fn held_after(
    sheet: &JobState,
    steps: &[PlannedStep],
    planned: &PlannedStep,
    recorded: &[&PlannedStep],
) -> Option<Held> {
    left(sheet, planned)
        .or_else(|| {
            let mut points = planned.holds.iter();
            points.find_map(|point| open(sheet, steps, planned.key, *point))
        })
        .or_else(|| lowered(sheet, steps, planned))
        .or_else(|| unready(sheet, steps, planned, recorded))
        .or_else(|| held_by_answer(sheet, steps, planned))
        .or_else(|| out_of_order(sheet, steps, planned).filter(|_| recorded.is_empty()))
}

/// No work goes on at a car that was left before somebody looked it over.
fn left(sheet: &JobState, planned: &PlannedStep) -> Option<Held> {
    let waits = is_work(planned) && is_left(sheet);
    waits.then_some(Held {
        point: HoldPoint::TakeOver,
        answer_at: Some(TAKE_OVER),
        given: None,
    })
}

/// The first answer that holds any ending but "left unfinished".
pub fn end_holding(sheet: &JobState, plan: &Plan, steps: &[PlannedStep]) -> Option<Holding> {
    steps
        .iter()
        .filter_map(|question| holding(sheet, plan, question))
        .find(|held| matches!(held.scope, Scope::Move | Scope::HandOver))
}

fn held_by_answer(sheet: &JobState, steps: &[PlannedStep], planned: &PlannedStep) -> Option<Held> {
    let plan = plan(sheet);
    let held = steps
        .iter()
        .filter_map(|question| holding(sheet, &plan, question))
        .find(|held| {
            held.scope.covers(held.question, planned) && !reads_so(sheet, held, planned)
        })?;
    Some(Held {
        point: HoldPoint::Answer,
        answer_at: Some(held.question),
        given: Some(held.given),
    })
}

/// Whether a cycle is read with on the car what the answer left there: its dial was set up so.
fn reads_so(sheet: &JobState, held: &Holding, planned: &PlannedStep) -> bool {
    let (Form::Round(set, _), Some(corner)) = (&planned.form, planned.key.corner) else {
        return false;
    };
    let rig = sheet
        .dial_setup(corner, *set)
        .and_then(|setup| setup.way.rig);
    let asked = held.question.step.row().changes;
    let removes = |group| {
        let off = |change: &Change| change.group == group && change.to == ItemState::Off;
        asked.iter().any(off)
    };
    match rig {
        Some(Rig::WheelOn) => removes(ItemKind::Wheel) || removes(ItemKind::Caliper),
        Some(Rig::RotorOff) => removes(ItemKind::Caliper),
        _ => false,
    }
}

/// Nothing is loosened under a car that was lowered since it was last shoved on its stand.
fn lowered(sheet: &JobState, steps: &[PlannedStep], planned: &PlannedStep) -> Option<Held> {
    let corner = planned.key.corner?;
    let loosens = planned
        .changes
        .iter()
        .any(|change| change.to < ItemState::ByHand);
    if !loosens || planned.key.step.row().car == Some(Car::Grips) {
        return None;
    }
    let (down, stood) = last_down_and_up(sheet, steps, corner);
    if down.is_none() || stood > down {
        return None;
    }
    let shove = shove_before(steps, planned.key, corner)?;
    Some(Held {
        point: HoldPoint::Stand,
        answer_at: Some(shove),
        given: None,
    })
}

/// Where in the record a corner was last lowered, and where it last stood firm on its stand.
fn last_down_and_up(
    sheet: &JobState,
    steps: &[PlannedStep],
    corner: Corner,
) -> (Option<usize>, Option<usize>) {
    (
        last_down(sheet, steps, corner),
        last_shoved(sheet, steps, corner),
    )
}

/// Where in the record a corner was last lowered.
pub(super) fn last_down(sheet: &JobState, steps: &[PlannedStep], corner: Corner) -> Option<usize> {
    last(sheet, steps, corner, HoldPoint::Down, &Reply::Done)
}

/// Where in the record a corner last stood firm on its stand.
pub(super) fn last_shoved(
    sheet: &JobState,
    steps: &[PlannedStep],
    corner: Corner,
) -> Option<usize> {
    let firm = Reply::Said(Answer::Yes);
    last(sheet, steps, corner, HoldPoint::Stand, &firm)
}

fn last(
    sheet: &JobState,
    steps: &[PlannedStep],
    corner: Corner,
    point: HoldPoint,
    reply: &Reply,
) -> Option<usize> {
    let here = steps
        .iter()
        .filter(|other| proves(other.key, point) && other.key.corner == Some(corner))
        .filter(|other| sheet.reply(other.key) == Some(reply));
    here.filter_map(|other| sheet.place(&Key::Step(other.key)))
        .max()
}

/// Whether a step answers a hold point.
fn proves(key: StepKey, point: HoldPoint) -> bool {
    key.step.row().proves == Some(point)
}

/// The corner that still stands on its jack stand, and the step that lowers it: nothing is taken
/// from under it, and the car is not driven.
fn still_up(sheet: &JobState, steps: &[PlannedStep]) -> Option<Option<StepKey>> {
    let up = |corner: &&Corner| {
        let (down, stood) = last_down_and_up(sheet, steps, **corner);
        stood > down
    };
    let corner = sheet.corners().iter().find(up)?;
    let lowers = |key: &StepKey| proves(*key, HoldPoint::Down) && key.corner == Some(*corner);
    Some(steps.iter().map(|other| other.key).rfind(lowers))
}

/// What must be in its place and tight before a step: the part that fasteners hold, what carries
/// the weight, and what a reading after the work is taken on.
fn rests_on(planned: &PlannedStep) -> &'static [ItemKind] {
    match &planned.form {
        Form::Round(set, _) | Form::DialSetup(set) if set.when == When::Before => &[],
        _ => planned.key.step.row().rests_on,
    }
}

/// Whether a torque for a nut is known.
fn has_torque(sheet: &JobState, nut: ItemKind) -> bool {
    let spec = spec_item(nut).and_then(|item| sheet.spec(item));
    spec.is_some_and(|spec| matches!(spec.body, SpecBody::Torque(_)))
}

/// Whether a step brings a group back to its place and spec.
fn closes(planned: &PlannedStep, group: ItemKind) -> bool {
    let back = |change: &Change| change.group == group && change.to == ItemState::Done;
    planned.form == Form::Turn(group) || planned.changes.iter().any(back)
}

/// What a step rests on is off or loose; that a bearing can stay rests on every look, and an axle nut
/// that can never be brought to spec is not loosened.
fn unready(
    sheet: &JobState,
    steps: &[PlannedStep],
    planned: &PlannedStep,
    recorded: &[&PlannedStep],
) -> Option<Held> {
    let corner = planned.key.corner?;
    let held = |answer_at| {
        Some(Held {
            point: HoldPoint::Ready,
            answer_at,
            given: None,
        })
    };
    let here = |other: &&PlannedStep| other.key.corner == Some(corner);
    let before = || steps.iter().take_while(|other| other.key != planned.key);
    let groups = rests_on(planned);
    let loose = sheet.loose();
    let open = loose.iter().map(|(item, _)| item).find(|item| {
        let rests = item.corner == corner && groups.contains(&item.group);
        rests && !recorded.iter().any(|other| closes(other, item.group))
    });
    if let Some(item) = open {
        let closing = |other: &&PlannedStep| closes(other, item.group);
        let step = before().filter(here).filter(closing).last();
        return held(step.map(|step| step.key));
    }
    let frees =
        |change: &&Change| change.group.holds_the_bearing() && change.to < ItemState::ByHand;
    let freed = planned
        .changes
        .iter()
        .find(frees)
        .map(|change| change.group);
    if let Some(nut) = freed.filter(|nut| !has_torque(sheet, *nut)) {
        return held(spec_step(steps, planned, nut));
    }
    // What condemns a bearing may be told early; that it can stay is told after every look.
    if matches!(planned.form, Form::Decide(_))
        && verdict(sheet, corner).decision < Decision::Replace
    {
        let look = before()
            .filter(here)
            .find(|other| !status(sheet, other).is_settled());
        return look.and_then(|look| held(Some(look.key)));
    }
    None
}

/// Work does not begin while a question of safety before it is open, nor before the work that it
/// rests on. A step that is settled may be opened again.
fn out_of_order(sheet: &JobState, steps: &[PlannedStep], planned: &PlannedStep) -> Option<Held> {
    // A site is looked at, and refused, before anything else is known.
    if !is_work(planned) || planned.phase == Phase::Site {
        return None;
    }
    let moves = |planned: &PlannedStep| {
        !planned.changes.is_empty() || matches!(planned.form, Form::Turn(_))
    };
    let rests_on = |earlier: &PlannedStep| {
        let work = moves(planned) && moves(earlier) && earlier.key.corner == planned.key.corner;
        // An answer that the customer owes for one corner does not hold the work at another.
        let elsewhere = earlier
            .key
            .corner
            .is_some_and(|at| planned.key.corner != Some(at));
        work || is_guard(earlier) && (!elsewhere || is_work(earlier))
    };
    let mut before = steps.iter().take_while(|other| other.key != planned.key);
    let first = before.find(|other| rests_on(other) && !status(sheet, other).is_settled())?;
    Some(Held {
        point: HoldPoint::Order,
        answer_at: Some(first.key),
        given: None,
    })
}

fn open(
    sheet: &JobState,
    steps: &[PlannedStep],
    before: StepKey,
    point: HoldPoint,
) -> Option<Held> {
    let held = |answer_at| {
        Some(Held {
            point,
            answer_at,
            given: None,
        })
    };
    match (point, before.corner) {
        (HoldPoint::Stand, Some(corner)) => {
            let shove = shove_before(steps, before, corner);
            let stood = shove.is_some_and(|shove| yes(sheet, shove));
            if stood { None } else { held(shove) }
        }
        (HoldPoint::Before, Some(corner)) => {
            let round = steps
                .iter()
                .find(|s| is_before(s, corner) && !status(sheet, s).is_settled());
            round.and_then(|round| held(Some(round.key)))
        }
        (HoldPoint::Yes, Some(corner)) => {
            let agree = StepKey::at(Step::Agree, corner);
            let agreed = sheet.consent(agree).is_some_and(|consent| consent.yes);
            if agreed { None } else { held(Some(agree)) }
        }
        (HoldPoint::Nut, Some(corner)) => {
            let turns = |planned: &PlannedStep| match planned.form {
                Form::Turn(group) if group.holds_the_bearing() => {
                    (planned.key.corner == Some(corner)).then_some((planned.key, group))
                }
                _ => None,
            };
            let loose = |group: ItemKind| {
                let number = 1;
                !is_tight(
                    sheet,
                    Item {
                        corner,
                        group,
                        number,
                    },
                )
            };
            let nuts = ItemKind::ALL.iter().filter(|it| it.holds_the_bearing());
            let mut loose = nuts.filter(|group| loose(**group));
            loose.next().and_then(|nut| {
                let mut turns = steps.iter().filter_map(turns);
                held(turns.find(|(_, group)| group == nut).map(|(key, _)| key))
            })
        }
        (HoldPoint::Pedal, _) => soft_pedal(sheet, steps).and_then(|pedal| held(Some(pedal))),
        (HoldPoint::Loose, _) => {
            if sheet.loose().is_empty() {
                None
            } else {
                held(None)
            }
        }
        (HoldPoint::Down, _) => still_up(sheet, steps).and_then(held),
        // These are judged of every step, not declared.
        (HoldPoint::Ready | HoldPoint::Answer | HoldPoint::Order | HoldPoint::TakeOver, _)
        | (_, None) => None,
    }
}

/// The shove that a step waits for: the last one before it, after the car stood on that wheel.
fn shove_before(steps: &[PlannedStep], key: StepKey, corner: Corner) -> Option<StepKey> {
    let before = steps.iter().take_while(|other| other.key != key);
    let shoves = before.map(|other| other.key);
    shoves
        .filter(|other| proves(*other, HoldPoint::Stand) && other.corner == Some(corner))
        .last()
}

fn yes(sheet: &JobState, step: StepKey) -> bool {
    sheet.reply(step) == Some(&Reply::Said(Answer::Yes))
}

fn is_before(planned: &PlannedStep, corner: Corner) -> bool {
    planned.key.corner == Some(corner)
        && matches!(planned.form, Form::Round(set, _) if set == SetName::FIRST)
}

/// The first question about the pedal that is not answered with yes.
fn soft_pedal(sheet: &JobState, steps: &[PlannedStep]) -> Option<StepKey> {
    let asked = steps
        .iter()
        .filter(|planned| proves(planned.key, HoldPoint::Pedal));
    asked
        .map(|planned| planned.key)
        .find(|step| !yes(sheet, *step))
}
