//! The recorded proof of a corner, and what was told since it was recorded.

use std::collections::BTreeSet;

use super::Sheet;
use crate::job::entry::{Proved, What};
use crate::job::key::{Key, keys};
use crate::trade::vehicle::Corner;

impl Sheet {
    /// The last proof of a corner that was recorded.
    pub fn proved(&self, corner: Corner) -> Option<&Proved> {
        match self.fact(&Key::Proved(corner)) {
            Some(What::Proved(proved)) => Some(proved),
            _ => None,
        }
    }

    /// The place of the last counting entry that states one of these facts, or that takes back or
    /// brings back an entry that did.
    pub(in crate::job) fn last_about(&self, facts: &[Key]) -> Option<usize> {
        let (mut about, mut last) = (BTreeSet::new(), None);
        let entries = self.entries.iter().zip(&self.effective).enumerate();
        for (place, (entry, counts)) in entries {
            let is_about = match &entry.what {
                What::Strike(hits) => hits.iter().any(|hit| about.contains(hit)),
                what => keys(what).iter().any(|key| facts.contains(key)),
            };
            if is_about {
                about.insert(&entry.id);
                last = counts.then_some(place).or(last);
            }
        }
        last
    }
}
