//! A wheel end on paper: what the steps of a plan loosen and close, without any entry.

use std::collections::BTreeMap;

use hubslate::trade::wheel_end::{Form, Item, ItemKind, ItemState, PlannedStep, items};

/// Where every item stands that was touched.
#[derive(Default)]
pub struct Bench {
    holds: BTreeMap<Item, ItemState>,
}

impl Bench {
    /// Does all that a step says.
    pub fn work(&mut self, planned: &PlannedStep) {
        let Some(corner) = planned.key.corner else {
            assert!(planned.changes.is_empty(), "{planned:?} has no corner");
            return;
        };
        for change in &planned.changes {
            let all = items(corner, change.group, count(change.group));
            let of = |item: &Item| change.only.is_none_or(|only| only == item.number);
            let touched: Vec<Item> = all.into_iter().filter(of).collect();
            assert!(!touched.is_empty(), "{planned:?} changes nothing");
            self.holds
                .extend(touched.into_iter().map(|item| (item, change.to)));
        }
        if let Form::Turn(group) = planned.form {
            for item in items(corner, group, count(group)) {
                let before = self.holds.insert(item, ItemState::Done);
                assert!(
                    matches!(before, Some(ItemState::ByHand | ItemState::Snug)),
                    "{:?} turns {item:?}, which was {before:?}",
                    planned.key
                );
            }
        }
    }

    /// Every item that is not back.
    pub fn loose(&self) -> Vec<Item> {
        let open = self.holds.iter().filter(|(_, hold)| hold.is_loose());
        open.map(|(item, _)| *item).collect()
    }

    /// Whether no item of the group is loose at the corner of `spec`.
    pub fn is_back(&self, planned: &PlannedStep, group: ItemKind) -> bool {
        let here = |item: &Item| item.group == group && Some(item.corner) == planned.key.corner;
        !self.loose().iter().any(here)
    }

    /// Whether any item of the group was ever touched.
    pub fn was_touched(&self, group: ItemKind) -> bool {
        self.holds.keys().any(|item| item.group == group)
    }
}

/// How many items a group has on the paper wheel end.
const fn count(group: ItemKind) -> u8 {
    match group {
        ItemKind::LugNuts => 5,
        ItemKind::HubBolts => 4,
        ItemKind::BracketBolts | ItemKind::CaliperPins => 2,
        _ => 1,
    }
}
