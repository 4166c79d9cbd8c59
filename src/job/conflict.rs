//! What two phones recorded differently without having seen one another, until a person settles it.

use crate::job::entry::{Entry, Event};
use crate::job::judge::readings;
use crate::job::key::{Key, keys};
use crate::job::problem::Problem;
use crate::job::sheet::JobState;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{SetName, When};

/// One fact with every value that was recorded of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Conflict<'a> {
    /// The fact.
    pub key: &'a Key,
    /// The entries, in order.
    pub candidates: Vec<&'a Entry>,
    /// The one that counts until a person settles it.
    pub winner: &'a Entry,
}

/// Every fact that is recorded differently.
pub fn conflicts(sheet: &JobState) -> Vec<Conflict<'_>> {
    let keys = sheet.problems().iter().filter_map(|problem| match problem {
        Problem::Disagree(key) => Some(key),
        _ => None,
    });
    let one = |key| {
        Some(Conflict {
            key,
            candidates: sheet.stated(key).collect(),
            winner: sheet.holds(key)?,
        })
    };
    keys.filter_map(one).collect()
}

/// Whether a decision has not seen what another phone recorded of its sets, a reading or the dial's
/// setup: it is made again,
/// whichever reading holds by then.
pub fn is_contested(sheet: &JobState, corner: Corner, nth: u8) -> bool {
    let Some(decided) = sheet.holds(&Key::Decided(corner, nth)) else {
        return false;
    };
    let sets = (1..=nth).map(|nth| SetName {
        when: When::Before,
        nth,
    });
    let keys = sets.flat_map(|set| readings(corner, set).chain([Key::DialSetup(corner, set)]));
    let entries = keys.flat_map(|key| sheet.stated(&key).collect::<Vec<_>>());
    let others = entries.filter(|entry| entry.device != decided.device);
    let others: Vec<&Entry> = others.collect();
    if others.is_empty() {
        return false;
    }
    let [before, after] = sheet.before_and_after(decided);
    let mut ids = others.iter().map(|entry| &entry.id);
    ids.any(|id| !before.contains(id) && !after.contains(id))
}

/// What settles a fact for one of its candidates: the others no longer count, or where one of those
/// says something else too, the chosen one is recorded again.
pub fn settle(conflict: &Conflict, chosen: &Entry) -> Event {
    let others = conflict.candidates.iter().filter(|it| it.id != chosen.id);
    let alone = others.clone().all(|it| keys(&it.what).len() == 1);
    match alone {
        true => Event::Strike(others.map(|it| it.id.clone()).collect()),
        false => chosen.what.clone(),
    }
}
