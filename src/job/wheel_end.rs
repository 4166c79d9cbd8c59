//! The wheel end that is worked on: of what kind it is, and what stands at it.

use crate::job::entry::{Reply, VehicleField};
use crate::job::key::Key;
use crate::job::sheet::JobState;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{
    Choice, Fitted, Item, ItemKind, ItemState, Kind, Step, StepKey, WheelEnd, items, usual_count,
};
use crate::word::Word;

/// The kind of wheel end that is worked on, as it was noted; a bolted, driven hub where it was not
/// asked. A code that this version does not know is no fact of a job: its entry is kept as unknown,
/// and the job is only read.
pub fn kind(sheet: &JobState) -> Kind {
    noted(sheet, VehicleField::Kind).unwrap_or(Kind::BoltedDriven)
}

/// What the wheel end has beside its bearing, as it was noted; what most have where it was not.
pub fn fitted(sheet: &JobState) -> Fitted {
    let common = Fitted::COMMON;
    Fitted {
        fixing: noted(sheet, VehicleField::Fixing).unwrap_or(common.fixing),
        // A shaft and a press-fit come with a rotor here.
        brake: noted(sheet, VehicleField::Brake)
            .filter(|_| kind(sheet).may_have_a_drum())
            .unwrap_or(common.brake),
        parking: noted(sheet, VehicleField::ParkingBrake).unwrap_or(common.parking),
        sensor: noted(sheet, VehicleField::Sensor).unwrap_or(common.sensor),
        encoder: noted(sheet, VehicleField::Encoder).unwrap_or(common.encoder),
        lock: noted(sheet, VehicleField::NutLock).unwrap_or(common.lock),
        pressing: noted(sheet, VehicleField::Pressing).unwrap_or(common.pressing),
    }
}

fn noted<W: Word>(sheet: &JobState, field: VehicleField) -> Option<W> {
    sheet.vehicle(field).and_then(W::of_code)
}

/// The wheel end that is worked on.
pub fn wheel_end(sheet: &JobState) -> &'static WheelEnd {
    kind(sheet).wheel_end()
}

/// What is done to a bearing that the customer has repaired.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Repair {
    /// It is replaced.
    NewPart,
    /// Its rollers are opened, packed and set; which of them are new, where it was recorded.
    Set(Option<Choice>),
}

/// What is done to the bearing of a corner.
pub fn repair(sheet: &JobState, corner: Corner) -> Repair {
    if kind(sheet) != Kind::Tapered {
        return Repair::NewPart;
    }
    match sheet.reply(StepKey::at(Step::RollersNew, corner)) {
        Some(Reply::Picked(new)) => Repair::Set(Some(*new)),
        _ => Repair::Set(None),
    }
}

/// How many items a group has on this vehicle.
pub fn count(sheet: &JobState, group: ItemKind) -> u8 {
    let field = match group {
        ItemKind::LugNuts => Some(VehicleField::Studs),
        ItemKind::HubBolts => Some(VehicleField::HubBolts),
        _ => None,
    };
    let noted = field.and_then(|field| sheet.vehicle(field)?.parse().ok());
    usual_count(group, noted)
}

/// Every item of a group at a corner of this vehicle.
pub fn group_items(sheet: &JobState, corner: Corner, group: ItemKind) -> Vec<Item> {
    items(corner, group, count(sheet, group))
}

/// Whether an item was ever loosened.
pub fn was_loosened(sheet: &JobState, item: Item) -> bool {
    sheet.stated(&Key::Item(item)).next().is_some()
}

/// Whether an item stands at its spec, or was never touched.
pub fn is_tight(sheet: &JobState, item: Item) -> bool {
    sheet.item(item).is_none_or(|hold| hold == ItemState::Done)
}

/// The corners that a step is about: its own, that of the hub whose heat it asks for, or all of the
/// job.
pub fn corners_of(sheet: &JobState, step: StepKey) -> Vec<Corner> {
    let all = sheet.corners();
    let first = all.first().copied();
    let one = match step.step {
        Step::HeatHere => first,
        Step::HeatOther => first.map(Corner::opposite_side),
        _ => step.corner,
    };
    one.map_or_else(|| all.to_vec(), |corner| vec![corner])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::entry::Event;
    use crate::job::recorded::sheet;

    #[test]
    fn heat_is_of_one_hub_and_what_has_no_corner_is_of_all() {
        let (left, right) = (Corner::FrontLeft, Corner::FrontRight);
        let now = sheet([Event::Corners(vec![right, left])]);
        let of = |step| corners_of(&now, step);
        assert_eq!(of(StepKey::once(Step::HeatHere)), [right]);
        assert_eq!(of(StepKey::once(Step::HeatOther)), [left]);
        assert_eq!(of(StepKey::at(Step::WheelOff, left)), [left]);
        assert_eq!(of(StepKey::once(Step::Drive)), [right, left]);
    }
}
