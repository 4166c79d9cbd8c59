//! The recorded proof of a corner, and whether anything was told that it had not seen.

use super::JobState;
use crate::job::entry::{Entry, EntryId, Event, Proved};
use crate::job::key::{Key, keys};
use crate::map::OrderedSet;
use crate::trade::vehicle::Corner;

impl JobState {
    /// The proof of a corner as it was recorded last.
    pub fn proved(&self, corner: Corner) -> Option<&Proved> {
        match self.fact(&Key::Proved(corner)) {
            Some(Event::Proved(proved)) => Some(proved),
            _ => None,
        }
    }

    /// Whether an entry had seen every counting one that states one of these facts, or that takes
    /// back or brings back one that did.
    pub(in crate::job) fn had_seen_all(
        &self,
        entry: &Entry,
        is_recorded: impl Fn(&Key) -> bool,
    ) -> bool {
        let seen = self.seen_by(entry);
        let mut about = OrderedSet::new();
        let entries = self.entries.iter().zip(&self.effective);
        let mut unseen = entries.filter(|(one, counts)| {
            let is_about = match &one.what {
                Event::Strike(hits) => hits.iter().any(|hit| about.contains(hit)),
                what => keys(what).iter().any(&is_recorded),
            };
            is_about && about.insert(&one.id) && **counts && !seen.contains(&one.id)
        });
        unseen.next().is_none()
    }

    /// The entries that an entry had seen, and those that had seen it.
    pub(in crate::job) fn before_and_after<'a>(
        &'a self,
        entry: &'a Entry,
    ) -> [OrderedSet<&'a EntryId>; 2] {
        let mut after = OrderedSet::from_iter([&entry.id]);
        for one in &self.entries {
            if one.after.iter().any(|id| after.contains(id)) {
                after.insert(&one.id);
            }
        }
        [self.seen_by(entry), after]
    }

    /// Everything that an entry had seen: what it names, and what that had seen.
    fn seen_by<'a>(&'a self, entry: &'a Entry) -> OrderedSet<&'a EntryId> {
        let mut seen: OrderedSet<&EntryId> = OrderedSet::from_iter(entry.after.iter());
        // Each entry stands after all that it saw.
        for one in self.entries.iter().rev() {
            if seen.contains(&one.id) {
                seen.extend(&one.after);
            }
        }
        seen
    }
}
