//! What the entries say of the vehicle as it is left: may it be driven, what was replaced.

use super::missing::missing;
use super::warning_lights;
use crate::job::conflict::is_contested;
use crate::job::entry::{Consent, Due, DueKind, Ending, Event, Reply};
use crate::job::proof::after;
use crate::job::{JobState, Key, Repair, plan, repair};
use crate::text::Now;
use crate::trade::answer::Answer;
use crate::trade::play::{After, Decision};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Choice, Course, Item, ItemKind, ItemState, Plan, Step, StepKey};

/// Whether the vehicle must not be driven: a STOP that stands, work left open, something loose,
/// a new part that does not pass, a brake pedal that is not firm, or a brake warning light that is
/// on.
pub fn must_not_drive(sheet: &JobState) -> bool {
    let plan = plan(sheet);
    is_unfinished(sheet)
        || has_soft_pedal(sheet)
        || warning_lights::brake_is_on(sheet)
        || has_stop(sheet, &plan)
        || sheet.corners().iter().any(|c| fails(sheet, &plan, *c))
}

/// The re-torque that is due; none for a car that must not be driven.
pub fn retorque_to_do(sheet: &JobState) -> Option<&Due> {
    let due = sheet.due(DueKind::Retorque)?;
    (!must_not_drive(sheet)).then_some(due)
}

/// What is true of the car, as far as the record says; the gravest first.
pub(super) fn now(sheet: &JobState, plan: &Plan) -> Now {
    let corners = sheet.corners();
    if is_unfinished(sheet) {
        return Now::Unfinished;
    }
    if has_stop(sheet, plan) {
        return Now::Stop;
    }
    if corners.iter().any(|corner| fails(sheet, plan, *corner)) {
        return Now::ProofFailed;
    }
    if has_soft_pedal(sheet) {
        return Now::PedalSoft;
    }
    if warning_lights::brake_is_on(sheet) {
        return Now::BrakeWarningLight;
    }
    if sheet.is_incomplete() {
        return Now::Incomplete;
    }
    let replaced = corners.iter().any(|c| is_replaced(sheet, plan, *c));
    match ending(sheet) {
        Some(Ending::Declined) => declined(sheet),
        Some(Ending::NotSafeHere) => Now::NotSafeHere,
        _ if replaced => repaired(sheet, plan),
        Some(Ending::NothingWrong) => nothing_wrong(sheet),
        _ => Now::Open,
    }
}

/// What is true of a car that is repaired.
fn repaired(sheet: &JobState, plan: &Plan) -> Now {
    let as_it_was = Repair::Set(Some(Choice::RenewedNone));
    let mut done = sheet
        .corners()
        .iter()
        .filter(|c| is_replaced(sheet, plan, **c));
    let adjusted = done.all(|corner| repair(sheet, *corner) == as_it_was);
    match (adjusted, missing(sheet, plan).is_empty()) {
        (false, true) => Now::ReplacedSafe,
        (false, false) => Now::ReplacedOpen,
        (true, true) => Now::AdjustedSafe,
        (true, false) => Now::AdjustedOpen,
    }
}

fn declined(sheet: &JobState) -> Now {
    match sheet.consent(StepKey::once(Step::TeardownYes)) {
        Some(Consent { yes: false, .. }) => Now::InspectionDeclined,
        _ => Now::Declined,
    }
}

/// What an end without a repair says: nothing was found where every corner was decided and none of them asks for more.
pub fn nothing_wrong(sheet: &JobState) -> Now {
    // A decision that had not seen another phone's reading says nothing of the car.
    let contested = |corner: &Corner| {
        let known = sheet.decided(*corner).map(|decided| decided.nth);
        known.is_some_and(|nth| is_contested(sheet, *corner, nth))
    };
    if sheet.corners().iter().any(contested) {
        return Now::Open;
    }
    let decided = |corner: &Corner| sheet.decided(*corner).map(|decided| decided.decision);
    let worst = sheet
        .corners()
        .iter()
        .map(decided)
        .collect::<Option<Vec<_>>>();
    match worst.and_then(|all| all.into_iter().max()) {
        Some(Decision::Keep) if warning_lights::lit(sheet).is_some() => Now::WarningLightOn,
        Some(Decision::Keep) => Now::NothingFound,
        Some(Decision::Watch) => Now::Watch,
        Some(Decision::Replace | Decision::Stop) | None => Now::Open,
    }
}

/// Whether a STOP was decided, here or on the paper that the job came from, and that corner is not
/// repaired since.
pub(super) fn has_stop(sheet: &JobState, plan: &Plan) -> bool {
    sheet.corners().iter().any(|corner| {
        let stop = match sheet.decided(*corner) {
            Some(decided) => decided.decision == Decision::Stop,
            None => stops_on_paper(sheet, *corner),
        };
        stop && !is_repaired(sheet, plan, *corner)
    })
}

/// Whether the paper that the job came from left a corner at STOP.
pub(super) fn stops_on_paper(sheet: &JobState, corner: Corner) -> bool {
    sheet.slip().is_some_and(|slip| slip.leaves_stop(corner))
}

/// Whether the last answer about the brake pedal is that it is not firm.
fn has_soft_pedal(sheet: &JobState) -> bool {
    let said = |key| match sheet.reply(key) {
        Some(Reply::Said(answer @ (Answer::Yes | Answer::No))) => Some(*answer),
        _ => None,
    };
    if let Some(answer) = said(StepKey::once(Step::ProvePedal)) {
        return answer == Answer::No;
    }
    sheet.corners().iter().any(|corner| {
        let pedal = StepKey::at(Step::Pedal, *corner);
        said(pedal.nth(2)).or_else(|| said(pedal)) == Some(Answer::No)
    })
}

/// Whether work was begun and not brought to its end.
pub(super) fn is_unfinished(sheet: &JobState) -> bool {
    let ended = sheet.ended().map(|ended| ended.ending);
    ended == Some(Ending::LeftUnfinished) || !sheet.loose().is_empty()
}

/// How the job ended, if it did; what paper says of it is not told as if it was seen here.
pub(super) fn ending(sheet: &JobState) -> Option<Ending> {
    match sheet.holds(&Key::Ended).map(|entry| &entry.what) {
        Some(Event::Ended(ended)) if !sheet.is_open_again() => Some(ended.ending),
        _ => None,
    }
}

/// Whether the new part at a corner measures out, runs rough or is noisy.
pub(super) fn fails(sheet: &JobState, plan: &Plan, corner: Corner) -> bool {
    course(plan, corner) == Some(Course::Replace)
        && matches!(after(sheet, corner), After::Blocked { .. })
}

/// Whether the hub at a corner was taken off and another is in.
pub(super) fn is_replaced(sheet: &JobState, plan: &Plan, corner: Corner) -> bool {
    let hub = Item {
        corner,
        group: ItemKind::Hub,
        number: 1,
    };
    course(plan, corner) == Some(Course::Replace) && sheet.item(hub) == Some(ItemState::Done)
}

/// Whether the repair of a corner is finished and passed.
pub(super) fn is_repaired(sheet: &JobState, plan: &Plan, corner: Corner) -> bool {
    // Before the end the proof alone speaks: the customer is shown what the end will say.
    let ended = match sheet.ended() {
        Some(ended) => ended.ending == Ending::Finished,
        None => matches!(after(sheet, corner), After::Pass { .. }),
    };
    is_replaced(sheet, plan, corner)
        && ended
        && !is_unfinished(sheet)
        && !fails(sheet, plan, corner)
}

/// Whether something at a corner was opened, nothing was replaced, and all of it is back.
pub(super) fn is_put_back(sheet: &JobState, plan: &Plan, corner: Corner) -> bool {
    let wheel = Item {
        corner,
        group: ItemKind::Wheel,
        number: 1,
    };
    !is_replaced(sheet, plan, corner)
        && sheet.item(wheel).is_some()
        && sheet.loose().iter().all(|(item, _)| item.corner != corner)
}

/// What comes of a corner.
pub(super) fn course(plan: &Plan, corner: Corner) -> Option<Course> {
    let at = plan.corners.iter().find(|at| at.corner == corner)?;
    Some(at.course)
}
