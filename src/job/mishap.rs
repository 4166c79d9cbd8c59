//! What went wrong with a fastener or a part: recorded with part, time and a further yes, and closed
//! when it is fixed. Until then the item counts as off, whatever was tapped.

use crate::job::entry::{Consent, Event, Moved, Reply, Scope};
use crate::job::key::Key;
use crate::job::sheet::JobState;
use crate::job::wheel_end::group_items;
use crate::map::OrderedMap;
use crate::trade::answer::Answer;
use crate::trade::fastening::mishap::MishapKind;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{
    Change, Form, Hands, Item, ItemKind, ItemState, Phase, PlannedStep, SHOVE_FURTHER, STUD_BROKE,
    Step, StepKey, can_happen, is_seen_behind,
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
/// until it is fixed wherever such a fastener is turned, of a part where it or the hub is put in.
/// A broken stud may so be left until the new hub brings its own.
pub fn in_the_way<'a>(sheet: &'a JobState, planned: &PlannedStep) -> Option<&'a Mishap> {
    let concerns = |mishap: &&Mishap| {
        let here = planned.key.corner == Some(mishap.item.corner);
        match planned.form {
            Form::Turn(group) => here && group == mishap.item.group,
            _ if here && puts_in(planned, mishap) => true,
            _ => mishap.step == planned.key && !may_wait(sheet, planned, mishap),
        }
    };
    open_mishaps(sheet).into_iter().find(concerns)
}

/// Whether the step at which something was seen goes on before it is fixed: the customer agreed, and
/// what is in the way of a later step is fixed there. What is closed at once is fixed at once, and a
/// part that was delivered wrong is no part.
fn may_wait(sheet: &JobState, planned: &PlannedStep, mishap: &Mishap) -> bool {
    let part = !mishap.item.group.is_fastener() && !mishap.kind.ends_when_loose();
    let closing = matches!(planned.key.step.row().phase, Phase::Tighten | Phase::Prove);
    let at_once = !mishap.kind.asks_customer() || part && closing;
    mending(sheet, mishap) == Mending::Agreed && !at_once
}

/// Whether a step is where a mishap has to be fixed: it puts in the part itself, or the hub on a hub
/// or knuckle that is damaged, or the new stud.
fn puts_in(planned: &PlannedStep, mishap: &Mishap) -> bool {
    use ItemKind::{Bearing, Hub, Knuckle, LugNuts};
    let group = mishap.item.group;
    if group.is_fastener() {
        return planned.key.step == Step::StudIn && group == LugNuts;
    }
    let holds = |put: ItemKind| {
        put == group || matches!(group, Hub | Knuckle) && matches!(put, Hub | Bearing)
    };
    let puts = |change: &Change| change.to == ItemState::Done && holds(change.group);
    planned.changes.iter().any(puts)
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
    if !mishap.kind.asks_customer() {
        return Mending::Agreed;
    }
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

/// What one tap writes when it is fixed at `planned`: the fastener is in by hand, and where several
/// are turned the pass begins again, since the others were drawn down without it. The last new stud
/// is the step that puts them in.
pub fn mended(sheet: &JobState, planned: &PlannedStep, item: Item) -> Vec<Event> {
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
    if planned.key.step == Step::StudIn {
        let seen_at = sheet.open_mishap(item).map(|mishap| mishap.step);
        whats.extend(seen_at.map(Event::Pass));
        let mut open = open_mishaps(sheet).into_iter();
        if !open.any(|other| other.item != item && puts_in(planned, other)) {
            whats.push(Event::Answered(planned.key, Reply::Done));
        }
    }
    whats
}

/// The step at which lug nuts are turned on the ground where a stud or bolt broke that was agreed to
/// be replaced: the car is raised for it, and the wheel comes off.
pub fn broken_stud(sheet: &JobState, corner: Corner) -> Option<StepKey> {
    let (_, broke) = stud_broke(sheet, corner)?;
    let begun = StepKey::at(Step::LoosenLugNuts, corner).nth(STUD_BROKE);
    let open = sheet.open_mishap(broke.item);
    let agreed = open.is_some_and(|mishap| mending(sheet, mishap) == Mending::Agreed);
    (agreed || sheet.reply(begun).is_some()).then_some(broke.step)
}

/// The last stud or bolt that broke at a corner while its wheel stood on the ground, and where in the
/// record.
pub fn stud_broke(sheet: &JobState, corner: Corner) -> Option<(usize, &Mishap)> {
    let broke = sheet.counting_places().filter_map(|(place, entry)| {
        let Event::Mishap(mishap) = &entry.what else {
            return None;
        };
        let stud = mishap.item.group == ItemKind::LugNuts && mishap.kind.takes_a_new_stud();
        let down = mishap.step.step.row().form == Form::Turn(ItemKind::LugNuts);
        (mishap.item.corner == corner && stud && down).then_some((place, mishap))
    });
    broke.last()
}

/// What can have gone wrong on a screen that tells these steps, each kind with the items that it can
/// have happened to and the step at which: the last that has hands on the item.
pub fn possible(
    sheet: &JobState,
    recorded: &[&PlannedStep],
) -> Vec<(MishapKind, Vec<(Item, StepKey)>)> {
    let kinds = MishapKind::ALL.iter().copied().map(|kind| {
        let mut at = OrderedMap::new();
        for planned in recorded {
            for (item, hands) in handled(sheet, planned) {
                // Old and new are held next to one another by a list that stands alone.
                let compared = hands == Hands::Compare;
                if compared && recorded.len() > 1 {
                    continue;
                }
                let behind = is_seen_behind(kind, item.group) && hands == Hands::See;
                let hidden = behind && !is_out(sheet, planned, item.corner);
                if !hidden && can_happen(kind, item.group, hands) {
                    at.insert(item, planned.key);
                }
            }
        }
        (kind, at.into_iter().collect())
    });
    kinds
        .filter(|(_, at): &(_, Vec<_>)| !at.is_empty())
        .collect()
}

/// Whether the hub is out once a step is done.
fn is_out(sheet: &JobState, planned: &PlannedStep, corner: Corner) -> bool {
    let takes = |change: &Change| change.group == ItemKind::Hub && change.to == ItemState::Off;
    let hub = group_items(sheet, corner, ItemKind::Hub);
    let off = hub
        .iter()
        .any(|hub| sheet.item(*hub) == Some(ItemState::Off));
    off || planned.changes.iter().any(takes)
}

/// The items that a step has hands on, and what they do; parts that are bare, and of the parts that
/// are compared those that are off.
fn handled(sheet: &JobState, planned: &PlannedStep) -> Vec<(Item, Hands)> {
    let Some(corner) = planned.key.corner else {
        return Vec::new();
    };
    let all = |group| group_items(sheet, corner, group).into_iter();
    let row = planned.key.step.row();
    let mut found = Vec::new();
    if let Form::Turn(group) = planned.form {
        found.extend(all(group).map(|item| (item, Hands::Bring(ItemState::Done))));
    } else {
        for change in &planned.changes {
            let of =
                all(change.group).filter(|item| change.only.is_none_or(|only| only == item.number));
            found.extend(of.map(|item| (item, Hands::Bring(change.to))));
        }
    }
    for group in row.bare {
        found.extend(all(*group).map(|item| (item, Hands::See)));
    }
    for group in row.compares {
        let off = all(*group).filter(|item| sheet.item(*item) == Some(ItemState::Off));
        found.extend(off.map(|item| (item, Hands::Compare)));
    }
    found
}

#[cfg(test)]
mod tests;
