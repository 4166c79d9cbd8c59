//! What went wrong with a fastener: recorded with part, time and a further yes, and closed when
//! it is mended. Until then the fastener counts as off, whatever was tapped.

use crate::job::entry::{Consent, Moved, Reply, Scope, What};
use crate::job::key::Key;
use crate::job::progress::group_items;
use crate::job::sheet::Sheet;
use crate::trade::answer::Answer;
use crate::trade::fastening::mishap::MishapKind;
use crate::trade::wheel_end::{Form, Hold, Item, SHOVE_FURTHER, Step, StepKey, StepSpec};

/// Something that went wrong.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mishap {
    /// The step at which it was seen.
    pub step: StepKey,
    /// The fastener.
    pub item: Item,
    /// What happened.
    pub kind: MishapKind,
    /// The part that mends it, in words; may be empty.
    pub part: String,
    /// How many minutes more it takes.
    pub minutes: u16,
}

/// How far the mending of an open mishap is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mending {
    /// The owner was not asked.
    Asking,
    /// The owner was asked and thinks it over; the car waits as it stands.
    Waiting,
    /// The owner said no: it stays open.
    Refused,
    /// The owner said yes after the car had waited: it is shoved before anybody reaches under it.
    Shove,
    /// The owner said yes: it can be mended.
    Agreed,
}

/// The open mishap of an item.
pub fn open_mishap(sheet: &Sheet, item: Item) -> Option<&Mishap> {
    match sheet.fact(&Key::Mishap(item)) {
        Some(What::Mishap(mishap)) => Some(mishap),
        _ => None,
    }
}

/// Every open mishap, in the order of the items.
pub fn open_mishaps(sheet: &Sheet) -> Vec<&Mishap> {
    let items = sheet.keys().filter_map(|key| match key {
        Key::Mishap(item) => Some(*item),
        _ => None,
    });
    items.filter_map(|item| open_mishap(sheet, item)).collect()
}

/// The open mishap that stands in the way of a step: where it was seen until the owner agreed, and
/// wherever such a fastener is turned until it is mended. A broken stud may so be left until the
/// new hub brings its own.
pub fn in_the_way<'a>(sheet: &'a Sheet, spec: &StepSpec) -> Option<&'a Mishap> {
    let concerns = |mishap: &&Mishap| match spec.form {
        Form::Turn(group) => {
            group == mishap.item.group && spec.key.corner == Some(mishap.item.corner)
        }
        _ => mishap.step == spec.key && mending(sheet, mishap) != Mending::Agreed,
    };
    open_mishaps(sheet).into_iter().find(concerns)
}

/// How far the mending of an open mishap is: only a yes given after it counts.
pub fn mending(sheet: &Sheet, mishap: &Mishap) -> Mending {
    let seen = sheet.place(&Key::Mishap(mishap.item));
    let asked = sheet.place(&Key::Extra(mishap.step));
    let answer = match sheet.holds(&Key::Extra(mishap.step)).map(|e| &e.what) {
        Some(What::Consent(consent)) if seen < asked => Some(consent),
        _ => None,
    };
    let waited = seen < sheet.place(&Key::Step(waiting(mishap)));
    match answer.map(|consent| consent.yes) {
        None if waited => Mending::Waiting,
        None => Mending::Asking,
        Some(false) => Mending::Refused,
        Some(true) if waited && !stands_firm(sheet, mishap) => Mending::Shove,
        Some(true) => Mending::Agreed,
    }
}

/// Leaving the car while the owner thinks of further work.
pub const fn waiting(mishap: &Mishap) -> StepKey {
    StepKey::at(Step::Wait, mishap.item.corner).nth(2)
}

/// Shoving the car after it waited.
pub const fn shoving(mishap: &Mishap) -> StepKey {
    StepKey::at(Step::Shove, mishap.item.corner).nth(SHOVE_FURTHER)
}

/// Whether the car was shoved after the yes and stood firm.
fn stands_firm(sheet: &Sheet, mishap: &Mishap) -> bool {
    let shove = shoving(mishap);
    let after = sheet.place(&Key::Extra(mishap.step)) < sheet.place(&Key::Step(shove));
    after && sheet.reply(shove) == Some(&Reply::Said(Answer::Yes))
}

/// Every yes or no to extra work, in order.
pub fn extra_consents(sheet: &Sheet) -> impl Iterator<Item = &Consent> {
    sheet.counting().filter_map(|entry| match &entry.what {
        What::Consent(consent) if consent.scope == Scope::Extra => Some(consent),
        _ => None,
    })
}

/// What one tap writes when it is mended at `spec`: the fastener is in by hand, and where several
/// are turned the pass begins again, since the others were drawn down without it.
pub fn mended(spec: &StepSpec, item: Item) -> Vec<What> {
    let mut whats = vec![What::Mended(item)];
    if matches!(spec.form, Form::Turn(group) if group == item.group) {
        whats.push(What::Moved(Moved {
            step: spec.key,
            items: vec![item],
            to: Hold::ByHand,
            wrench: None,
        }));
        whats.push(What::Pass(spec.key));
    }
    whats
}

/// Which fasteners can have gone wrong at a step: those that it turns or moves, else all that
/// were loosened at its corner.
pub fn candidates(sheet: &Sheet, spec: &StepSpec) -> Vec<Item> {
    let Some(corner) = spec.key.corner else {
        return Vec::new();
    };
    let moved = spec.changes.iter().map(|change| change.group);
    let mut groups: Vec<_> = match spec.form {
        Form::Turn(group) => vec![group],
        _ => moved.filter(|group| group.is_fastener()).collect(),
    };
    if groups.is_empty() {
        let touched = sheet.keys().filter_map(|key| match key {
            Key::Item(item) if item.corner == corner => Some(item.group),
            _ => None,
        });
        groups = touched.filter(|group| group.is_fastener()).collect();
    }
    groups.sort_unstable();
    groups.dedup();
    let items = groups.into_iter();
    items
        .flat_map(|group| group_items(sheet, corner, group))
        .collect()
}

#[cfg(test)]
mod tests;
