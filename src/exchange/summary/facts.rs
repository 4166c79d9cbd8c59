//! What a line of the list takes from the sheet of its job.

use super::{Fitted, Visited};
use crate::job::entry::{Ending, Event, Reply};
use crate::job::tally::is_replaced;
use crate::job::{JobState, Key, flow};
use crate::map::OrderedSet;
use crate::trade::play::Decision;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Choice, Step, StepKey};

/// What the customer said to each repair that was advised, and whether it is of a STOP.
fn advised(sheet: &JobState) -> impl Iterator<Item = (Option<bool>, bool)> {
    sheet.corners().iter().filter_map(|corner| {
        let decision = sheet.decided(*corner)?.decision;
        let consent = sheet.consent(StepKey::at(Step::Agree, *corner));
        let is_advised = matches!(decision, Decision::Stop | Decision::Replace);
        is_advised.then(|| (consent.map(|it| it.yes), decision == Decision::Stop))
    })
}

/// Whether a repair that was advised has no answer yet.
pub(super) fn waits(sheet: &JobState) -> bool {
    advised(sheet).any(|(yes, _)| yes.is_none())
}

/// Whether a repair that was advised was declined; with `stop` one that leaves a STOP.
pub(super) fn declined(sheet: &JobState, stop: bool) -> bool {
    advised(sheet).any(|(yes, is_stop)| yes == Some(false) && (is_stop || !stop))
}

/// The day that a job belongs to.
pub(super) fn on(sheet: &JobState) -> String {
    let of = |key: &Key| sheet.holds(key)?.at.day();
    let slot = || flow::slot(sheet).map(|slot| slot.day);
    let day = of(&Key::Ended).or_else(slot).or_else(|| of(&Key::Opened));
    day.map(|day| day.to_string()).unwrap_or_default()
}

/// The letters of the vans that earlier slots named.
pub(super) fn moved_from(sheet: &JobState) -> Vec<String> {
    let now = flow::slot(sheet).map(|slot| slot.van.as_str());
    let vans = sheet.counting().filter_map(|entry| match &entry.what {
        Event::Slot(slot) if Some(slot.van.as_str()) != now => Some(&slot.van),
        _ => None,
    });
    let vans: OrderedSet<&String> = vans.filter(|van| !van.is_empty()).collect();
    vans.into_iter().cloned().collect()
}

/// The numbers of what was fitted, where the job was finished.
pub(super) fn parts(sheet: &JobState) -> Vec<Fitted> {
    let finished = sheet
        .ended()
        .is_some_and(|it| it.ending == Ending::Finished);
    let corners = Corner::ALL.iter().filter(|_| finished);
    corners
        .filter_map(|corner| sheet.part(*corner))
        .map(|part| Fitted {
            number: part.number.clone(),
            lot: part.lot.clone(),
        })
        .collect()
}

/// How each corner was left.
pub(super) fn visited(sheet: &JobState) -> Vec<Visited> {
    let corners = sheet.corners().iter().map(|corner| {
        let decided = sheet.decided(*corner);
        Visited {
            corner: corner.code().to_owned(),
            found: decided
                .map(|it| it.decision.code().to_owned())
                .unwrap_or_default(),
            replaced: is_replaced(sheet, *corner),
        }
    });
    corners.collect()
}

/// Whether it came back for the same corner; `None` while nobody looked.
pub(super) fn came_back(sheet: &JobState) -> Option<bool> {
    match sheet.reply(StepKey::once(Step::Comeback))? {
        Reply::Picked(pick) => Some(*pick == Choice::SameCorner),
        _ => None,
    }
}
