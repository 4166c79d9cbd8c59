//! What else is off: named by hand, an item of its own on the loose list like every other.

use crate::job::entry::Event;
use crate::job::key::Key;
use crate::job::sheet::JobState;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Item, ItemKind};

pub use crate::job::entry::Also;

/// The next free place at a corner; a number that was used is not used again.
///
/// `None` when there are no more places.
pub fn next_place(sheet: &JobState, corner: Corner) -> Option<Item> {
    let used = sheet
        .entries()
        .iter()
        .filter_map(|entry| match &entry.what {
            Event::Also(also) if also.item.corner == corner => Some(also.item.number),
            _ => None,
        });
    let number = used.max().unwrap_or(0).checked_add(1)?;
    Some(Item {
        corner,
        group: ItemKind::Other,
        number,
    })
}

/// How many names of one place are told.
const MOST_NAMES: usize = 50;

/// What stands at a place. Two phones may have named two things by one number while neither saw
/// the other: both are told, and both are meant. More than [`MOST_NAMES`] no phones write; the rest
/// of a forged file stays in the record alone.
pub fn named(sheet: &JobState, item: Item) -> Vec<&Also> {
    let all = sheet.named(item).filter_map(|what| match what {
        Event::Also(also) => Some(also),
        _ => None,
    });
    all.take(MOST_NAMES).collect()
}

/// Whether anything was added by hand.
pub fn any(sheet: &JobState) -> bool {
    let is_other = |key: &Key| matches!(key, Key::Item(item) if item.group == ItemKind::Other);
    sheet.keys().any(is_other)
}
