//! The warning lights: what was on when the car was met, and what is on after the work.

use crate::job::Sheet;
use crate::job::entry::Reply;
use crate::text::{self, Lang, Lit};
use crate::trade::wheel_end::{Pick, Step, StepKey};

/// The light that stayed on at a look, `NoLamps` where none did; nothing where nobody looked.
fn seen(sheet: &Sheet, step: Step) -> Option<Pick> {
    match sheet.reply(StepKey::once(step)) {
        Some(Reply::Picked(pick)) => Some(*pick),
        _ => None,
    }
}

fn on(seen: Option<Pick>) -> Option<Pick> {
    seen.filter(|pick| *pick != Pick::NoLamps)
}

/// Whether somebody looked at the lights after the work.
pub(super) fn seen_after(sheet: &Sheet) -> bool {
    seen(sheet, Step::ProveLamps).is_some()
}

/// Whether nobody ever looked at the lights, and it was said so.
pub(super) fn never_seen(sheet: &Sheet) -> bool {
    let refused = |step| matches!(sheet.reply(StepKey::once(step)), Some(Reply::NotDone(_)));
    let unseen = |step| seen(sheet, step).is_none();
    let asked = [Step::Lamps, Step::ProveLamps];
    asked.into_iter().all(unseen) && asked.into_iter().any(refused)
}

/// The light that is on as far as the record says: by the look after the work, else by the first.
pub(super) fn lit(sheet: &Sheet) -> Option<Pick> {
    on(seen(sheet, Step::ProveLamps).or_else(|| seen(sheet, Step::Lamps)))
}

/// Whether the brake warning light is on: then the car must not be driven.
pub(super) fn brake_is_on(sheet: &Sheet) -> bool {
    lit(sheet) == Some(Pick::BrakeLamp)
}

/// The light for which a car with a new hub is not called safe to drive: brake, ABS, and any other
/// that was not on before the work.
pub(super) fn keeps_from_driving(sheet: &Sheet) -> Option<Pick> {
    let after = on(seen(sheet, Step::ProveLamps))?;
    let was_so = after == Pick::OtherLamp && seen(sheet, Step::Lamps) == Some(after);
    (!was_so).then_some(after)
}

/// Which light is or was on, and what to do, in one line each; nothing where none was.
pub fn lamp_lines(lang: Lang, sheet: &Sheet) -> Vec<String> {
    let (first, last) = (seen(sheet, Step::Lamps), seen(sheet, Step::ProveLamps));
    let before = on(first).map(|lamp| match last {
        None => (lamp, Lit::OnArrival),
        Some(Pick::NoLamps) => (lamp, Lit::OutSince),
        Some(_) => (lamp, Lit::Before),
    });
    let after = on(last).map(|lamp| match first {
        Some(first) if first == lamp => (lamp, Lit::AsBefore),
        Some(Pick::NoLamps) => (lamp, Lit::SinceTheWork),
        _ => (lamp, Lit::After),
    });
    // The light that was on before and is on after is told once.
    let before = before.filter(|(lamp, _)| Some(*lamp) != on(last));
    let lines = after.into_iter().chain(before);
    lines
        .map(|(lamp, lit)| text::lamp(lang, lamp, lit))
        .collect()
}

#[cfg(test)]
mod tests;
