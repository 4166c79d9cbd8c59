//! Pictures of the record: which one a new one replaces, and where one is asked for beyond the
//! steps that are nothing but a picture.
//!
//! The places were found by walking the procedure. Stand, sensor wire and old beside new are steps
//! of their own; what follows happens only where something is wrong, so that an uneventful job is
//! asked for no more. Each can be answered with "not done, because…" instead.

use crate::job::caption::caption;
use crate::job::entry::{Caption, Captioned, EntryId, Event, Photo, Reply};
use crate::job::key::Key;
use crate::job::mishap::{Mending, Mishap, in_the_way, mending};
use crate::job::sheet::JobState;
use crate::trade::answer::Answer;
use crate::trade::play::Decision;
use crate::trade::wheel_end::{Form, Phase, PlannedStep, Step, StepKey};

/// Every picture that counts, with the entry that names it, in order.
pub fn photos(sheet: &JobState) -> impl Iterator<Item = (&EntryId, &Photo)> {
    sheet.counting().filter_map(|entry| match &entry.what {
        Event::Photo(photo) => Some((&entry.id, photo)),
        _ => None,
    })
}

/// What one tap writes when `new` is taken instead of the picture of entry `old`: the old one is
/// struck and stays in the record as taken back, and the new one shows what it showed.
pub fn retaken(sheet: &JobState, old: &EntryId, new: Photo) -> Vec<Event> {
    let before = photos(sheet).find(|(id, _)| *id == old);
    let shown = before.map_or(&Caption::Step, |(_, old)| caption(sheet, &old.sha256));
    let said = (*shown != Caption::Step).then(|| {
        Event::Captioned(Captioned {
            sha256: new.sha256.clone(),
            caption: shown.clone(),
        })
    });
    let strike = Event::Strike(vec![old.clone()]);
    [strike, Event::Photo(new)]
        .into_iter()
        .chain(said)
        .collect()
}

/// The step under which the picture of a mishap is kept: a fastener has its own.
pub const fn mishap_key(mishap: &Mishap) -> StepKey {
    StepKey::at(Step::MishapPhoto, mishap.item.corner).nth(mishap.item.number)
}

/// The picture that the record needs before `spec` goes on, if it has neither it nor a reason.
///
/// Something wrong as found (one of the four looks, before anything is touched), what broke
/// (before the customer is asked for more), what stays dangerous because the customer said no (before it
/// is put back). `common practice, no source`.
pub fn owed(sheet: &JobState, planned: &PlannedStep) -> Option<StepKey> {
    if sheet.ended().is_some() || planned.form == Form::End {
        return None;
    }
    if let Some(mishap) = in_the_way(sheet, planned) {
        let asking = mending(sheet, mishap) == Mending::Asking;
        let seen = sheet.place(&Key::Mishap(mishap.item));
        let key = mishap_key(mishap);
        return (asking && !has(sheet, key, seen)).then_some(key);
    }
    let found = found_wrong(sheet).then_some(StepKey::once(Step::FoundPhoto));
    let refused = planned.key.corner.filter(|corner| {
        let dangerous = sheet
            .decided(*corner)
            .is_some_and(|said| matches!(said.decision, Decision::Replace | Decision::Stop));
        let agree = StepKey::at(Step::Agree, *corner);
        dangerous && sheet.consent(agree).is_some_and(|consent| !consent.yes)
    });
    let declined = refused
        .filter(|_| is_owed_in(Step::DeclinedPhoto, planned.phase))
        .map(|corner| StepKey::at(Step::DeclinedPhoto, corner));
    let here = |key: &StepKey| !has(sheet, *key, None);
    let looked = is_owed_in(Step::FoundPhoto, planned.phase);
    found
        .filter(|_| looked && planned.key.step != Step::BeforeDriving)
        .filter(here)
        .or_else(|| declined.filter(here))
}

/// Whether a photo is owed before the work of a phase.
fn is_owed_in(photo: Step, phase: Phase) -> bool {
    photo.row().owed_in.contains(&phase)
}

/// The picture that the record needs before a job is left unfinished.
pub fn owed_when_left(sheet: &JobState) -> Option<StepKey> {
    let key = StepKey::once(Step::LeftPhoto);
    (!has(sheet, key, None)).then_some(key)
}

/// Whether there is a picture of this step, or a reason against one, noted after a place in the
/// order of entries.
fn has(sheet: &JobState, key: StepKey, after: Option<usize>) -> bool {
    let taken = sheet
        .counting_places()
        .any(|(place, entry)| match &entry.what {
            Event::Photo(photo) => photo.step == key && after.is_none_or(|after| after < place),
            _ => false,
        });
    let said = sheet.place(&Key::Step(key));
    taken || said.is_some_and(|said| after.is_none_or(|after| after < said))
}

/// Whether one of the four looks before driving found something wrong.
fn found_wrong(sheet: &JobState) -> bool {
    let looked = sheet.reply(StepKey::once(Step::BeforeDriving));
    matches!(looked, Some(Reply::Checked(checks)) if checks.iter().any(|(_, a)| *a == Answer::No))
}

#[cfg(test)]
mod tests;
