//! What was done a while ago and is noted now, because the hands were not free.

use crate::job::entry::{Entry, EntryId};
use crate::map::OrderedMap;
use crate::words;

words! {
    /// How long ago, about: nobody looks at a watch in gloves.
    pub enum Ago {
        /// A quarter of an hour.
        Quarter = "quarter",
        /// Half an hour.
        Half = "half",
        /// An hour.
        Hour = "hour",
        /// Two hours.
        TwoHours = "two_hours",
        /// A day.
        Yesterday = "yesterday",
    }
}

impl Ago {
    /// In minutes.
    pub const fn minutes(self) -> u16 {
        match self {
            Self::Quarter => 15,
            Self::Half => 30,
            Self::Hour => 60,
            Self::TwoHours => 120,
            Self::Yesterday => 1440,
        }
    }

    /// The time so long before another; both in milliseconds since 1970 in UTC.
    pub fn before(self, utc_ms: i64) -> i64 {
        utc_ms.saturating_sub(i64::from(self.minutes()) * 60_000)
    }
}

/// How far the clocks of two phones may be apart, in milliseconds.
const APART_MS: i64 = 120_000;

/// Whether one phone noted something before what it had seen of another phone, by their clocks.
pub fn clocks_disagree(entries: &[Entry]) -> bool {
    let by_id: OrderedMap<&EntryId, &Entry> =
        OrderedMap::from_iter(entries.iter().map(|entry| (&entry.id, entry)));
    entries.iter().any(|entry| {
        let seen = entry.after.iter().filter_map(|id| by_id.get(id));
        let mut others = seen.filter(|seen| seen.device != entry.device);
        others.any(|seen| entry.at.utc_ms.saturating_add(APART_MS) < seen.at.utc_ms)
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::indexing_slicing)]
    use super::*;
    use crate::job::entry::Event;
    use crate::job::recorded::sheet;

    #[test]
    fn a_clock_is_wrong_where_one_phone_saw_what_its_clock_has_yet_to_come() {
        let words = |words: &str| Event::Said(words.to_owned());
        let recorded = sheet([words("one"), words("two")]);
        let two = |device: &str, first: i64, second: i64| {
            let mut entries = recorded.entries().to_vec();
            entries[1].device = device.to_owned();
            entries[0].at.utc_ms = first;
            entries[1].at.utc_ms = second;
            clocks_disagree(&entries)
        };
        assert!(two("another", APART_MS + 1, 0));
        assert!(!two("another", APART_MS, 0));
        assert!(!two("another", 0, APART_MS + 1));
        // One phone whose clock was set back is no other phone.
        assert!(!two("d", APART_MS + 1, 0));
    }

    // 90 000 000 ms after 1970 is 1970-01-02 01:00; an hour before is midnight (the calendar).
    #[test]
    fn an_hour_ago_is_an_hour_before_and_never_later() {
        assert_eq!(Ago::Hour.before(90_000_000), 86_400_000);
        assert!(Ago::ALL.iter().all(|ago| ago.before(0) < 0));
    }
}
