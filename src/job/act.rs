//! What one tap on a step writes: the answer, and what it does to the loose list.

use crate::job::entry::{Event, Moved, Reply};
use crate::job::sheet::JobState;
use crate::job::wheel_end::group_items;
use crate::trade::wheel_end::{Item, PlannedStep};

/// The entries of a step that is done with this reply.
pub fn done(sheet: &JobState, planned: &PlannedStep, reply: Reply) -> Vec<Event> {
    let mut whats = vec![Event::Answered(planned.key, reply)];
    let Some(corner) = planned.key.corner else {
        return whats;
    };
    for change in &planned.changes {
        let all = group_items(sheet, corner, change.group);
        let items: Vec<Item> = all
            .into_iter()
            .filter(|item| change.only.is_none_or(|only| only == item.number))
            .collect();
        whats.push(Event::Moved(Moved {
            step: planned.key,
            items,
            to: change.to,
            wrench: None,
        }));
    }
    whats
}
