//! What went wrong with a fastener: recorded with part, time and a further yes, and closed when
//! it is mended. Until then the fastener counts as off, whatever was tapped.

use crate::job::entry::{Consent, Event, Moved, Reply, Scope};
use crate::job::key::Key;
use crate::job::sheet::JobState;
use crate::job::wheel_end::group_items;
use crate::map::OrderedMap;
use crate::trade::answer::Answer;
use crate::trade::fastening::mishap::MishapKind;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{
    Change, Form, Item, ItemKind, ItemState, PlannedStep, SHOVE_FURTHER, Step, StepKey, can_happen,
};

pub use crate::job::entry::Mishap;

/// How far the mending of an open mishap is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mending {
    /// The customer was not asked.
    Asking,
    /// The customer was asked and thinks it over; the car waits as it stands.
    Waiting,
    /// The customer said no: it stays open.
    Refused,
    /// The customer said yes after the car had waited: it is shoved before anybody reaches under it.
    Shove,
    /// The customer said yes: it can be mended.
    Agreed,
}

/// Every open mishap, in the order of the items.
pub fn open_mishaps(sheet: &JobState) -> Vec<&Mishap> {
    let items = sheet.keys().filter_map(|key| match key {
        Key::Mishap(item) => Some(*item),
        _ => None,
    });
    items.filter_map(|item| sheet.open_mishap(item)).collect()
}

/// The open mishap that stands in the way of a step: where it was seen until the customer agreed, and
/// until it is mended wherever such a fastener is turned, of a cracked part where the hub is put in.
/// A broken stud may so be left until the new hub brings its own.
pub fn in_the_way<'a>(sheet: &'a JobState, planned: &PlannedStep) -> Option<&'a Mishap> {
    let concerns = |mishap: &&Mishap| match planned.form {
        Form::Turn(group) => {
            group == mishap.item.group && planned.key.corner == Some(mishap.item.corner)
        }
        _ if holds_part(planned, mishap) => true,
        _ => mishap.step == planned.key && mending(sheet, mishap) != Mending::Agreed,
    };
    open_mishaps(sheet).into_iter().find(concerns)
}

/// Whether a step puts the hub on what is cracked: the knuckle, or the hub itself.
fn holds_part(planned: &PlannedStep, mishap: &Mishap) -> bool {
    let puts = |change: &Change| change.group == ItemKind::Hub && change.to == ItemState::Done;
    !mishap.item.group.is_fastener()
        && planned.key.corner == Some(mishap.item.corner)
        && planned.changes.iter().any(puts)
}

/// Whether something at a corner is cracked and not replaced.
pub fn is_cracked(sheet: &JobState, corner: Corner) -> bool {
    let cracked = |mishap: &&Mishap| mishap.kind == MishapKind::Cracked;
    let here = |mishap: &Mishap| mishap.item.corner == corner;
    open_mishaps(sheet).into_iter().filter(cracked).any(here)
}

/// The first step of a screen that an open mishap stands in the way of, with the mishap.
pub fn in_the_way_of<'a>(
    sheet: &'a JobState,
    recorded: &[&'a PlannedStep],
) -> Option<(&'a PlannedStep, &'a Mishap)> {
    let mut recorded = recorded.iter();
    recorded.find_map(|planned| Some((*planned, in_the_way(sheet, planned)?)))
}

/// How far the mending of an open mishap is: only a yes given after it counts.
pub fn mending(sheet: &JobState, mishap: &Mishap) -> Mending {
    let seen = sheet.place(&Key::Mishap(mishap.item));
    let asked = sheet.place(&Key::Extra(mishap.step));
    let answer = match sheet.holds(&Key::Extra(mishap.step)).map(|e| &e.what) {
        Some(Event::Consent(consent)) if seen < asked => Some(consent),
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

/// Leaving the car while the customer thinks of further work.
pub const fn waiting(mishap: &Mishap) -> StepKey {
    StepKey::at(Step::Wait, mishap.item.corner).nth(2)
}

/// Shoving the car after it waited.
pub const fn shoving(mishap: &Mishap) -> StepKey {
    StepKey::at(Step::Shove, mishap.item.corner).nth(SHOVE_FURTHER)
}

/// Whether the car was shoved after the yes and stood firm.
fn stands_firm(sheet: &JobState, mishap: &Mishap) -> bool {
    let shove = shoving(mishap);
    let after = sheet.place(&Key::Extra(mishap.step)) < sheet.place(&Key::Step(shove));
    after && sheet.reply(shove) == Some(&Reply::Said(Answer::Yes))
}

/// Every yes or no to extra work, in order.
pub fn extra_consents(sheet: &JobState) -> impl Iterator<Item = &Consent> {
    sheet.counting().filter_map(|entry| match &entry.what {
        Event::Consent(consent) if consent.scope == Scope::Extra => Some(consent),
        _ => None,
    })
}

/// What one tap writes when it is mended at `spec`: the fastener is in by hand, and where several
/// are turned the pass begins again, since the others were drawn down without it.
pub fn mended(planned: &PlannedStep, item: Item) -> Vec<Event> {
    let mut whats = vec![Event::Mended(item)];
    if matches!(planned.form, Form::Turn(group) if group == item.group) {
        whats.push(Event::Moved(Moved {
            step: planned.key,
            items: vec![item],
            to: ItemState::ByHand,
            wrench: None,
        }));
        whats.push(Event::Pass(planned.key));
    }
    whats
}

/// What can have gone wrong on a screen that tells these steps, each kind with the fasteners that
/// it can have happened to and the step at which: the last that has hands on the fastener.
pub fn possible(
    sheet: &JobState,
    recorded: &[&PlannedStep],
) -> Vec<(MishapKind, Vec<(Item, StepKey)>)> {
    let kinds = MishapKind::ALL.iter().copied().map(|kind| {
        let mut at = OrderedMap::new();
        for (item, to, step) in recorded.iter().flat_map(|planned| handled(sheet, planned)) {
            if can_happen(kind, item.group, to) {
                at.insert(item, step);
            }
        }
        (kind, at.into_iter().collect())
    });
    kinds
        .filter(|(_, at): &(_, Vec<_>)| !at.is_empty())
        .collect()
}

/// The fasteners that a step has hands on, and what it brings them to; the parts that are bare.
fn handled(sheet: &JobState, planned: &PlannedStep) -> Vec<(Item, ItemState, StepKey)> {
    let Some(corner) = planned.key.corner else {
        return Vec::new();
    };
    let changes = match planned.form {
        Form::Turn(group) => vec![Change {
            group,
            only: None,
            to: ItemState::Done,
        }],
        _ => planned.changes.clone(),
    };
    let fastens = |change: &Change| change.group.is_fastener();
    let of_change = |change: Change| {
        let all = group_items(sheet, corner, change.group).into_iter();
        all.filter(move |item| change.only.is_none_or(|only| only == item.number))
            .map(move |item| (item, change.to, planned.key))
    };
    let parts = planned.key.step.row().bare.iter().map(|group| Change {
        group: *group,
        only: None,
        to: ItemState::Off,
    });
    let changes = changes.into_iter().filter(fastens).chain(parts);
    changes.flat_map(of_change).collect()
}

#[cfg(test)]
mod tests;
