//! By what an angle after the torque is read: the angle gauge of the van, or counted swings.

use chrono::NaiveDate;

use crate::job::entry::{EntryId, Event, KitItem};
use crate::job::key::Key;
use crate::job::ready::missing;
use crate::job::ready::specs;
use crate::job::sheet::JobState;
use crate::map::OrderedMap;
use crate::trade::fastening::{SpecItem, Stage};
use crate::trade::wheel_end::StepKey;
use crate::units::TypedAngle;

pub use crate::job::entry::AngleBy;

/// Whether the van has an angle gauge to read by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AngleGauge {
    /// It is on board, and its check is not due as far as anybody knows.
    OnBoard,
    /// It is on board and was to be checked by this day.
    PastDue(NaiveDate),
    /// It is not, or nobody noted it.
    Missing,
}

/// The angle gauge that goes with a job. The list of what is missing is looked through last, so
/// that it counts where the van kit says nothing; of two words the more careful one holds.
pub fn angle_gauge(sheet: &JobState, today: Option<NaiveDate>) -> AngleGauge {
    let more = sheet.carried().map(|carried| &carried.more);
    let noted = more.and_then(|more| more.angle_gauge);
    let looked = sheet.holds(&Key::Missing).is_some();
    if missing(sheet).contains(&KitItem::AngleGauge) || !noted.unwrap_or(looked) {
        return AngleGauge::Missing;
    }
    match (more.and_then(|more| more.angle_due), today) {
        (Some(due), Some(today)) if due < today => AngleGauge::PastDue(due),
        _ => AngleGauge::OnBoard,
    }
}

/// The specs that ask for an angle, each with its last one.
pub fn angle_specs(sheet: &JobState) -> Vec<(SpecItem, &TypedAngle)> {
    let all = specs(sheet).into_iter().filter_map(|(_, item)| {
        let stages = sheet.spec(item)?.stages().iter().rev();
        let mut angles = stages.filter_map(|stage| match stage {
            Stage::Angle(angle) => Some((item, angle)),
            _ => None,
        });
        angles.next()
    });
    all.collect()
}

/// What a tap at an angle writes beside it: by what it was read, where that is news.
pub fn recorded(sheet: &JobState, step: StepKey, swings: u8) -> Option<Event> {
    let by = match (swings, angle_gauge(sheet, None)) {
        (0, AngleGauge::Missing) => return None,
        (0, _) => AngleBy::Gauge,
        _ => AngleBy::Swings,
    };
    let held = sheet.holds(&Key::Angled(step)).map(|entry| &entry.what);
    let said = Event::Angled(step, by);
    (held != Some(&said)).then_some(said)
}

/// By entry, by what the angle was read that it brought a fastener to; without those for which that
/// was not noted.
pub fn angles(sheet: &JobState) -> OrderedMap<&EntryId, AngleBy> {
    let mut recorded: OrderedMap<StepKey, AngleBy> = OrderedMap::new();
    let mut all = OrderedMap::new();
    for entry in sheet.counting() {
        match &entry.what {
            Event::Angled(step, by) => {
                recorded.insert(*step, *by);
            }
            Event::Moved(moved) => {
                all.extend(recorded.get(&moved.step).map(|by| (&entry.id, *by)));
            }
            _ => {}
        }
    }
    all
}

#[cfg(test)]
#[path = "angled/tests.rs"]
mod tests;
