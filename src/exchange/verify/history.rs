//! What each entry had seen, put together for each that is looked at again, up to a limit.

use super::{Checked, Finding, Recorded, Remark};
use crate::job::entry::EntryId;
use crate::map::OrderedMap;

/// Over how many entries decisions, proofs and reports are looked at again in one log, counting
/// for each of them all that it had seen. A long job has a few ten thousand. The sentence names the
/// limit too.
pub const MAX_AGAIN: usize = 500_000;

/// What an entry rested on: the entries that it had seen.
pub(super) struct History<'a> {
    recorded: &'a [Recorded],
    /// The places of what each entry names; nothing for one that is not here.
    after: Vec<Vec<Option<usize>>>,
    /// For which entry each one was looked at last.
    looked_for: Vec<Option<usize>>,
    /// How many entries may still be looked at; nothing once there were more.
    left: Option<usize>,
}

impl<'a> History<'a> {
    pub(super) fn of(recorded: &'a [Recorded]) -> Self {
        let places = (0..).zip(recorded).map(|(place, one)| (&one.0.id, place));
        let places: OrderedMap<&EntryId, usize> = places.collect();
        let after = |one: &Recorded| {
            let after = one.0.after.iter();
            let mut after: Vec<_> = after.map(|id| places.get(id).copied()).collect();
            after.sort_unstable();
            after.dedup();
            after
        };
        Self {
            recorded,
            after: recorded.iter().map(after).collect(),
            looked_for: vec![None; recorded.len()],
            left: Some(MAX_AGAIN),
        }
    }

    /// Everything that the entry at `of` had seen; nothing, and that is said, if some of it is not
    /// here or the limit is reached.
    pub(super) fn before(&mut self, checked: &mut Checked, of: usize) -> Option<Vec<&'a Recorded>> {
        let mut before = Vec::new();
        let mut open = self.after.get(of)?.clone();
        while let Some(named) = open.pop() {
            let Some(place) = named else {
                let id = self.recorded.get(of)?.0.id.clone();
                checked.remarks.push(Remark::NotChecked(id));
                return None;
            };
            if self.looked_for.get_mut(place)?.replace(of) == Some(of) {
                continue;
            }
            let Some(left) = self.left.and_then(|left| left.checked_sub(1)) else {
                if self.left.take().is_some() {
                    checked.findings.push(Finding::TooMuch);
                }
                return None;
            };
            self.left = Some(left);
            open.extend(self.after.get(place)?);
            before.push(self.recorded.get(place)?);
        }
        Some(before)
    }
}
