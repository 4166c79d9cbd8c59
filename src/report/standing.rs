//! What the entries say of the vehicle as it is left: may it be driven, what was replaced.

use crate::job::entry::Ending;
use crate::job::judge::after;
use crate::job::{Sheet, plan};
use crate::trade::play::{After, Decision};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Course, Group, Hold, Item, Plan};

/// Whether the vehicle must not be driven: a STOP that stands, work left open, something loose,
/// or a new part that does not pass.
pub fn must_not_drive(sheet: &Sheet) -> bool {
    let plan = plan(sheet);
    let stop = |corner: &Corner| {
        sheet
            .decided(*corner)
            .is_some_and(|d| d.decision == Decision::Stop)
            && !is_repaired(sheet, &plan, *corner)
    };
    is_unfinished(sheet)
        || sheet
            .corners()
            .iter()
            .any(|c| stop(c) || fails(sheet, &plan, *c))
}

/// Whether work was begun and not brought to its end.
pub(super) fn is_unfinished(sheet: &Sheet) -> bool {
    ending(sheet) == Some(Ending::LeftUnfinished) || !sheet.loose().is_empty()
}

/// How the job ended, if it did.
pub(super) fn ending(sheet: &Sheet) -> Option<Ending> {
    sheet.ended().map(|ended| ended.ending)
}

/// Whether the new part at a corner measures out, runs rough or is noisy.
pub(super) fn fails(sheet: &Sheet, plan: &Plan, corner: Corner) -> bool {
    course(plan, corner) == Some(Course::Replace)
        && matches!(after(sheet, corner), After::Blocked { .. })
}

/// Whether the hub at a corner was taken off and another is in.
pub(super) fn is_replaced(sheet: &Sheet, plan: &Plan, corner: Corner) -> bool {
    let hub = Item {
        corner,
        group: Group::Hub,
        number: 1,
    };
    course(plan, corner) == Some(Course::Replace) && sheet.item(hub) == Some(Hold::Done)
}

/// Whether the repair of a corner is finished and passed.
pub(super) fn is_repaired(sheet: &Sheet, plan: &Plan, corner: Corner) -> bool {
    is_replaced(sheet, plan, corner)
        && ending(sheet) == Some(Ending::Finished)
        && !is_unfinished(sheet)
        && !fails(sheet, plan, corner)
}

/// Whether something at a corner was opened, nothing was replaced, and all of it is back.
pub(super) fn is_put_back(sheet: &Sheet, plan: &Plan, corner: Corner) -> bool {
    let wheel = Item {
        corner,
        group: Group::Wheel,
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
