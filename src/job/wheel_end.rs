//! The wheel end that is worked on: of what kind it is, and what stands at it.

use crate::job::entry::VehicleField;
use crate::job::key::Key;
use crate::job::sheet::JobState;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Item, ItemKind, ItemState, Kind, WheelEnd, items};

/// The kind of wheel end that is worked on, as it was noted.
pub(super) fn kind(sheet: &JobState) -> Kind {
    let noted = sheet.vehicle(VehicleField::Kind);
    noted
        .and_then(Kind::from_code)
        .unwrap_or(Kind::BoltedDriven)
}

/// The wheel end that is worked on.
pub fn wheel_end(sheet: &JobState) -> &'static WheelEnd {
    kind(sheet).wheel_end()
}

/// How many items a group has on this vehicle.
pub fn count(sheet: &JobState, group: ItemKind) -> u8 {
    let field = match group {
        ItemKind::LugNuts => Some(VehicleField::Studs),
        ItemKind::HubBolts => Some(VehicleField::HubBolts),
        _ => None,
    };
    let noted = field.and_then(|field| sheet.vehicle(field)?.parse().ok());
    wheel_end(sheet).count(group, noted)
}

/// Every item of a group at a corner of this vehicle.
pub fn group_items(sheet: &JobState, corner: Corner, group: ItemKind) -> Vec<Item> {
    items(corner, group, count(sheet, group))
}

/// Whether an item was ever loosened.
pub fn was_loosened(sheet: &JobState, item: Item) -> bool {
    sheet.stated(&Key::Item(item)).next().is_some()
}

/// Whether an item stands at its card, or was never touched.
pub fn is_tight(sheet: &JobState, item: Item) -> bool {
    sheet.item(item).is_none_or(|hold| hold == ItemState::Done)
}
