//! How a job may end as it stands, and the reminder that it leaves behind.

use crate::job::conflict::is_contested;
use crate::job::entry::{Due, DueKind, Ending, Quantity, Reply, ShopRetorque};
use crate::job::gate::end_holding;
use crate::job::loose_lug_nuts::{is_to_be_judged_again, nuts_are_loose};
use crate::job::progress::{Status, status};
use crate::job::proof::is_blocked;
use crate::job::sheet::JobState;
use crate::job::wheel_end::{kind, was_loosened};
use crate::trade::answer::Answer;
use crate::trade::day::day_of;
use crate::trade::fastening::{RetorqueRule, retorque_due};
use crate::trade::play::{Decision, recheck_by};
use crate::trade::vehicle::Corner;
use crate::trade::vehicle::odometer::{Odometer, OdometerDoubt};
use crate::trade::wheel_end::{
    CornerPlan, Course, HoldPoint, Item, ItemKind, ItemState, Kind, Plan, PlannedStep, Step,
    StepKey, procedure,
};
use crate::units::{DistanceUnit, Typed, TypedDistance};

/// The one ending that fits the entries; anything open makes it "left unfinished".
pub fn proposed(sheet: &JobState, plan: &Plan) -> Ending {
    if !sheet.loose().is_empty() || sheet.is_incomplete() {
        return Ending::LeftUnfinished;
    }
    if plan.site_refused {
        return Ending::NotSafeHere;
    }
    let steps = procedure(plan);
    if end_holding(sheet, plan, &steps).is_some() || is_unseen(sheet, &steps) {
        return Ending::LeftUnfinished;
    }
    if inspection_refused(sheet) && !plan.corners.iter().any(|at| was_opened(sheet, at.corner)) {
        return Ending::Declined;
    }
    let course = |is: Course| plan.corners.iter().any(|at| at.course == is);
    let contested = |at: &CornerPlan| {
        let nth = if sheet.decides(at.corner, 2) { 2 } else { 1 };
        is_to_be_judged_again(sheet, at.corner, nth) && is_contested(sheet, at.corner, nth)
    };
    if plan.corners.iter().any(contested) {
        return Ending::LeftUnfinished;
    }
    let undecided = plan.corners.is_empty() || course(Course::Open) || course(Course::Asking);
    let replaced = plan
        .corners
        .iter()
        .filter(|at| at.course == Course::Replace);
    let mut proved = replaced.map(|at| is_proved(sheet, at.corner));
    // A new hub does not make good what was found loose elsewhere on the car.
    let nuts_open = course(Course::Replace) && nuts_are_loose(sheet);
    if undecided || nuts_open || pedal_open(sheet, plan) || !proved.all(|proved| proved) {
        Ending::LeftUnfinished
    } else if course(Course::Declined) {
        Ending::Declined
    } else if course(Course::Replace) {
        Ending::Finished
    } else {
        Ending::NothingWrong
    }
}

/// Whether one of the last looks was not done: under the car, at the warning lights.
fn is_unseen(sheet: &JobState, steps: &[PlannedStep]) -> bool {
    steps.iter().any(|planned| {
        planned.key.step.row().must_be_seen && status(sheet, planned) != Status::Done
    })
}

fn inspection_refused(sheet: &JobState) -> bool {
    sheet
        .consent(StepKey::once(Step::TeardownYes))
        .is_some_and(|consent| !consent.yes)
}

const fn one(corner: Corner, group: ItemKind) -> Item {
    Item {
        corner,
        group,
        number: 1,
    }
}

fn was_opened(sheet: &JobState, corner: Corner) -> bool {
    was_loosened(sheet, one(corner, ItemKind::LugNuts))
}

/// Whether no wheel of the job was taken loose.
pub fn nothing_was_opened(sheet: &JobState) -> bool {
    !sheet.corners().iter().any(|c| was_opened(sheet, *c))
}

/// The new hub is in, and the result was looked at with nothing against it.
fn is_proved(sheet: &JobState, corner: Corner) -> bool {
    let looked_at = sheet.reply(StepKey::once(Step::ProveResult)) == Some(&Reply::Done);
    sheet.item(one(corner, ItemKind::Hub)) == Some(ItemState::Done)
        && looked_at
        && !is_blocked(sheet, corner)
}

/// Whether a brake was opened and one of the questions about the pedal is not answered with yes.
fn pedal_open(sheet: &JobState, plan: &Plan) -> bool {
    let opened = |corner| was_loosened(sheet, one(corner, ItemKind::Caliper));
    procedure(plan).iter().any(|planned| {
        let asked = planned.key.step.row().proves == Some(HoldPoint::Pedal);
        let open = match planned.key.corner {
            Some(corner) => opened(corner),
            None => plan.corners.iter().any(|at| opened(at.corner)),
        };
        asked && open && sheet.reply(planned.key) != Some(&Reply::Said(Answer::Yes))
    })
}

/// The odometer as it was read.
pub fn odometer(sheet: &JobState) -> Option<Odometer> {
    match sheet.reply(StepKey::once(Step::Odometer)) {
        Some(Reply::Number(Quantity::Distance(read))) => Some(Odometer { read: read.clone() }),
        _ => None,
    }
}

/// Whether an odometer reads less than at an earlier visit.
pub fn went_back(now: &Odometer, before: &Odometer) -> bool {
    let doubts = now.doubts(Some((before, 1)));
    let back = |doubt: &OdometerDoubt| matches!(doubt, OdometerDoubt::WentBack { .. });
    doubts.iter().any(back)
}

/// The odometer as it was read, and as it will stand when the lug nuts are due by distance.
pub fn retorque_odometer(sheet: &JobState, due: &Due) -> Option<(TypedDistance, TypedDistance)> {
    let Some(Reply::Number(Quantity::Distance(now))) = sheet.reply(StepKey::once(Step::Odometer))
    else {
        return None;
    };
    let then = now.distance().plus(due.distance.as_ref()?.distance());
    // An odometer shows whole units.
    let whole = then.in_unit(now.unit).round() as i64;
    let then = Typed::parse(&whole.to_string(), now.unit).ok()?;
    Some((now.clone(), then))
}

/// When the lug nuts are due again: by the earliest published figures, in the unit of the
/// odometer or, where it was not read, in `unit`. `today` is `YYYY-MM-DD`; `None` if it is no day.
pub fn retorque(sheet: &JobState, today: &str, unit: DistanceUnit) -> Option<Due> {
    retorque_by(sheet, today, unit, None)
}

/// The same by the shop's own rule, where it has one.
pub fn retorque_by(
    sheet: &JobState,
    today: &str,
    unit: DistanceUnit,
    shop: Option<&ShopRetorque>,
) -> Option<Due> {
    let odometer = odometer(sheet);
    let unit = odometer
        .as_ref()
        .map_or(unit, |odometer| odometer.read.unit);
    let published = RetorqueRule::published(unit);
    let rule = shop.map_or(published, |shop| RetorqueRule {
        after: shop.after.distance(),
        first_day: published.first_day.min(shop.days),
        last_day: shop.days,
    });
    let due = retorque_due(day_of(today)?, odometer.as_ref(), rule);
    // The published figures are whole in their own unit, and a shop's are told to the whole one.
    let after = rule.after.in_unit(unit).round() as i64;
    Some(Due {
        kind: DueKind::Retorque,
        date: due.by.to_string(),
        distance: Typed::parse(&after.to_string(), unit).ok(),
    })
}

/// When a bearing that is watched is due to be checked again; `today` is `YYYY-MM-DD`, `None` if
/// it is no day.
pub fn recheck(today: &str) -> Option<Due> {
    Some(Due {
        kind: DueKind::Recheck,
        date: recheck_by(day_of(today)?).to_string(),
        distance: None,
    })
}

/// When tapered rollers that were set on this job are measured again: at the visit for the lug nuts.
///
/// # Source
/// Common practice, no source: end play is checked again after the first 50 to 100 miles.
pub fn end_play_again(sheet: &JobState, retorque: &Due) -> Option<Due> {
    was_set(sheet).then(|| Due {
        kind: DueKind::Recheck,
        ..retorque.clone()
    })
}

/// Whether tapered rollers were opened, and so set, on this job.
fn was_set(sheet: &JobState) -> bool {
    let nut = |corner: &Corner| Item {
        corner: *corner,
        group: ItemKind::SpindleNut,
        number: 1,
    };
    let opened = |corner: &Corner| was_loosened(sheet, nut(corner));
    kind(sheet) == Kind::Tapered && sheet.corners().iter().any(opened)
}

/// Whether the decision on a corner that stands is to watch it.
pub fn is_watched(sheet: &JobState, corner: Corner) -> bool {
    sheet
        .decided(corner)
        .is_some_and(|decided| decided.decision == Decision::Watch && !decided.again)
}

/// What a bearing waits for that is watched or was set; a decision made again may have left nothing
/// to watch.
pub fn watched(sheet: &JobState) -> Option<&Due> {
    let any = sheet.corners().iter().any(|at| is_watched(sheet, *at));
    let waits = any || was_set(sheet);
    sheet.due(DueKind::Recheck).filter(|_| waits)
}

#[cfg(test)]
#[path = "ending/tests.rs"]
mod tests;
