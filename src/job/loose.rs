//! The loose list as a second technician reads it: every item that was touched, how far it is,
//! who had it last, when and with which wrench.

use crate::job::angled::{AngleBy, angles};
use crate::job::entry::{Entry, EntryId, Event, Moved};
use crate::job::key::Key;
use crate::job::mishap::Mishap;
use crate::job::progress::status;
use crate::job::sheet::JobState;
use crate::job::turn::{Turning, shown_in_wrench};
use crate::map::{OrderedMap, OrderedSet};
use crate::sorted::Sorted;
use crate::trade::fastening::Wrench;
use crate::trade::fastening::wrench::pick;
use crate::trade::wheel_end::{Form, Item, ItemState, PlannedStep, StepKey};
use crate::units::{TorqueUnit, Typed, TypedTorque};

/// One item of the list.
#[derive(Clone, Debug, PartialEq)]
pub struct Row<'a> {
    /// The item.
    pub item: Item,
    /// How far it is.
    pub hold: ItemState,
    /// The stage that it has reached, and how many its spec has.
    pub stage: Option<(usize, usize)>,
    /// What is wrong with it.
    pub mishap: Option<&'a Mishap>,
    /// The entry that moved it last.
    pub entry: Option<&'a Entry>,
    /// The wrench of its last torque, and what that was set to.
    pub wrench: Option<&'a (String, Typed<TorqueUnit>)>,
    /// By what its angle was read, once it is at a spec that ends with one.
    pub angled: Option<AngleBy>,
}

/// A wrench by its name, and what it was set to.
type Used = (String, Typed<TorqueUnit>);

/// By entry and item, the wrench with which an item got its last torque in the pass that the entry
/// belongs to: its own, or that of the torque before an angle, which no wrench clicks at.
pub type Wrenches<'a> = OrderedMap<(&'a EntryId, Item), &'a Used>;

/// The wrenches of all that was moved.
pub fn wrenches(sheet: &JobState) -> Wrenches<'_> {
    let mut all = Wrenches::new();
    let mut passes: OrderedMap<StepKey, usize> = OrderedMap::new();
    let mut taken_off: OrderedMap<Item, usize> = OrderedMap::new();
    let mut used: OrderedMap<(StepKey, Item), (usize, &Used)> = OrderedMap::new();
    for (place, entry) in sheet.counting_places() {
        match &entry.what {
            Event::Pass(step) => {
                passes.insert(*step, place);
            }
            Event::Moved(moved) => {
                for item in &moved.items {
                    let of = (moved.step, *item);
                    if matches!(moved.to, ItemState::Off | ItemState::ByHand) {
                        taken_off.insert(*item, place);
                    } else if let Some(wrench) = &moved.wrench {
                        used.insert(of, (place, wrench));
                    }
                    let begun = passes.get(&moved.step).max(taken_off.get(item)).copied();
                    if let Some((at, wrench)) = used.get(&of)
                        && begun.is_none_or(|begun| begun < *at)
                    {
                        all.insert((&entry.id, *item), wrench);
                    }
                }
            }
            _ => {}
        }
    }
    all
}

/// Every item that was touched; what is loose stands first.
pub fn rows<'a>(sheet: &'a JobState, steps: &[PlannedStep]) -> Vec<Row<'a>> {
    let items: OrderedSet<Item> = OrderedSet::from_iter(sheet.keys().filter_map(|key| match key {
        Key::Item(item) | Key::Mishap(item) => Some(*item),
        _ => None,
    }));
    let (wrenches, angles) = (wrenches(sheet), angles(sheet));
    let row = |item: Item| {
        let entry = sheet.holds(&Key::Item(item));
        Some(Row {
            item,
            hold: sheet.item(item)?,
            stage: stage(sheet, steps, item),
            mishap: sheet.open_mishap(item),
            entry,
            wrench: entry.and_then(|entry| wrenches.get(&(&entry.id, item)).copied()),
            angled: entry
                .filter(|_| sheet.item(item) == Some(ItemState::Done))
                .and_then(|entry| angles.get(&entry.id).copied()),
        })
    };
    let mut rows: Vec<Row> = items.into_iter().filter_map(row).collect();
    rows.order_by_key(|row| !row.hold.is_loose());
    rows
}

/// How far the pass that is under way has brought an item.
fn stage(sheet: &JobState, steps: &[PlannedStep], item: Item) -> Option<(usize, usize)> {
    let turns = |planned: &&PlannedStep| {
        planned.form == Form::Turn(item.group) && planned.key.corner == Some(item.corner)
    };
    let mut open = steps.iter().filter(turns);
    let planned = open.find(|planned| !status(sheet, planned).is_settled())?;
    let turning = Turning::of(sheet, planned, item.group)?;
    let reached = turning.reached(item)?;
    (0 < reached).then_some((reached, turning.stages.len()))
}

/// What one tap writes when something named by hand is back: by its own spec with the wrench that
/// fits, or back in place.
pub fn put_back(step: StepKey, item: Item, set: Option<(String, TypedTorque)>) -> Event {
    Event::Moved(Moved {
        step,
        items: vec![item],
        to: ItemState::Done,
        wrench: set,
    })
}

/// The wrench on board for a torque, and what it is set to.
pub fn wrench_for(sheet: &JobState, torque: &TypedTorque) -> Option<(String, TypedTorque)> {
    let carried = sheet.carried()?;
    let kit: &[Wrench] = &carried.wrenches;
    let place = pick(torque.torque(), kit, carried.share()).ok()?;
    let wrench = kit.get(place)?;
    Some((wrench.name.clone(), shown_in_wrench(torque, wrench)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::manual_item::{Also, named, next_place};
    use crate::job::recorded::sheet;
    use crate::job::turn::tests::{CORNER, kit, planned, spec, torque};
    use crate::trade::fastening::SpecItem;
    use crate::trade::wheel_end::{ItemKind, Step, items};

    #[test]
    fn a_row_says_how_far_the_pass_is_and_with_which_wrench() {
        let planned = planned(Step::TurnLugNuts, ItemKind::LugNuts);
        let all = items(CORNER, ItemKind::LugNuts, 5);
        let mut whats = vec![
            kit(),
            spec(SpecItem::LugNuts, vec![torque("60"), torque("120")]),
            Event::Moved(Moved {
                step: StepKey::at(Step::WheelOn, CORNER),
                items: all.clone(),
                to: ItemState::Snug,
                wrench: None,
            }),
        ];
        let tap = |whats: &mut Vec<Event>| {
            let now = sheet(&*whats);
            whats.push(
                Turning::of(&now, &planned, ItemKind::LugNuts)
                    .unwrap()
                    .tap()
                    .unwrap(),
            );
        };
        (0..6).for_each(|_| tap(&mut whats));
        let now = sheet(&whats);
        let rows = rows(&now, std::slice::from_ref(&planned));
        let recorded: Vec<_> = rows
            .iter()
            .map(|row| (row.item.number, row.stage))
            .collect();
        let (one, two) = (Some((1, 2)), Some((2, 2)));
        assert_eq!(recorded, [(2, one), (3, one), (4, one), (5, one), (1, two)]);
        assert_eq!(rows[0].wrench.unwrap().0, "B");
        assert_eq!(rows[4].hold, ItemState::Done);
    }

    #[test]
    fn after_an_angle_the_row_names_the_wrench_of_the_torque_before_it() {
        use crate::job::kit::clicks;
        use crate::job::turn::tests::angle;
        let planned = planned(Step::TurnAxleNut, ItemKind::AxleNut);
        let mut whats = vec![
            kit(),
            spec(SpecItem::AxleNut, vec![torque("120"), angle("60")]),
        ];
        for _ in 0..2 {
            let now = sheet(&whats);
            let turning = Turning::of(&now, &planned, ItemKind::AxleNut).unwrap();
            whats.push(turning.tap().unwrap());
        }
        let now = sheet(&whats);
        let rows = rows(&now, std::slice::from_ref(&planned));
        assert_eq!(rows[0].hold, ItemState::Done);
        assert_eq!(rows[0].wrench.unwrap().0, "B");
        // One click for the torque, none for the angle.
        let wrench = now.carried().unwrap().wrenches[0].clone();
        assert_eq!(clicks(&now, &wrench, None), 1);
    }

    #[test]
    fn what_was_named_by_hand_is_loose_until_it_is_back() {
        let also = |item, name: &str| {
            Event::Also(Also {
                item,
                name: name.to_owned(),
                spec: None,
            })
        };
        let first = next_place(&sheet(&[]), CORNER).unwrap();
        let mut whats = vec![kit(), also(first, "undertray clip")];
        let second = next_place(&sheet(&whats), CORNER).unwrap();
        assert_ne!(first, second);
        whats.push(also(second, "hose bracket"));
        let now = sheet(&whats);
        assert_eq!(
            now.loose(),
            [(first, ItemState::Off), (second, ItemState::Off)]
        );
        assert_eq!(named(&now, second)[0].name, "hose bracket");
        let step = StepKey::at(Step::Lower, CORNER);
        whats.push(put_back(step, first, None));
        let torque = Typed::parse("60", TorqueUnit::NewtonMetre).unwrap();
        let set = wrench_for(&sheet(&whats), &torque);
        assert!(set.is_some());
        whats.push(put_back(step, second, set));
        let now = sheet(&whats);
        assert_eq!(now.loose(), []);
        assert_eq!(next_place(&now, CORNER).unwrap().number, 3);
    }
}
