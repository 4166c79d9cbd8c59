//! The warning lights: what was on when the car was met, and what is on after the work.

use crate::job::JobState;
use crate::job::entry::Reply;
use crate::text::{self, Lang, Lit};
use crate::trade::wheel_end::{Choice, Step, StepKey};

/// The light that stayed on at a look, `NoWarningLights` where none did; nothing where nobody looked.
fn seen(sheet: &JobState, step: Step) -> Option<Choice> {
    match sheet.reply(StepKey::once(step)) {
        Some(Reply::Picked(pick)) => Some(*pick),
        _ => None,
    }
}

fn on(seen: Option<Choice>) -> Option<Choice> {
    seen.filter(|pick| *pick != Choice::NoWarningLights)
}

/// Whether somebody looked at the lights after the work.
pub(super) fn seen_after(sheet: &JobState) -> bool {
    seen(sheet, Step::ProveWarningLights).is_some()
}

/// Whether nobody ever looked at the lights, and it was said so.
pub(super) fn never_seen(sheet: &JobState) -> bool {
    let refused = |step| matches!(sheet.reply(StepKey::once(step)), Some(Reply::NotDone(_)));
    let unseen = |step| seen(sheet, step).is_none();
    let asked = [Step::WarningLights, Step::ProveWarningLights];
    asked.into_iter().all(unseen) && asked.into_iter().any(refused)
}

/// The light that is on as far as the record says: by the look after the work, else by the first.
pub(super) fn lit(sheet: &JobState) -> Option<Choice> {
    on(seen(sheet, Step::ProveWarningLights).or_else(|| seen(sheet, Step::WarningLights)))
}

/// Whether the brake warning light is on: then the car must not be driven.
pub(super) fn brake_is_on(sheet: &JobState) -> bool {
    lit(sheet) == Some(Choice::BrakeWarningLight)
}

/// The light for which a car with a new hub is not called safe to drive: brake, ABS, and any other
/// that was not on before the work.
pub(super) fn keeps_from_driving(sheet: &JobState) -> Option<Choice> {
    let after = on(seen(sheet, Step::ProveWarningLights))?;
    let was_so =
        after == Choice::OtherWarningLight && seen(sheet, Step::WarningLights) == Some(after);
    (!was_so).then_some(after)
}

/// Which light is or was on, and what to do, in one line each; nothing where none was.
pub fn warning_light_lines(lang: Lang, sheet: &JobState) -> Vec<String> {
    let (first, last) = (
        seen(sheet, Step::WarningLights),
        seen(sheet, Step::ProveWarningLights),
    );
    let before = on(first).map(|warning_light| match last {
        None => (warning_light, Lit::OnArrival),
        Some(Choice::NoWarningLights) => (warning_light, Lit::OutSince),
        Some(_) => (warning_light, Lit::Before),
    });
    let after = on(last).map(|warning_light| match first {
        Some(first) if first == warning_light => (warning_light, Lit::AsBefore),
        Some(Choice::NoWarningLights) => (warning_light, Lit::SinceTheWork),
        _ => (warning_light, Lit::After),
    });
    // The light that was on before and is on after is told once.
    let before = before.filter(|(warning_light, _)| Some(*warning_light) != on(last));
    let lines = after.into_iter().chain(before);
    lines
        .map(|(warning_light, lit)| text::warning_light(lang, warning_light, lit))
        .collect()
}

#[cfg(test)]
mod tests;
