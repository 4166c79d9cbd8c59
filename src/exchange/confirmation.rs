//! The shop's answer to a van: which entries it has, so that the van knows what is still to bring.
//!
//! A line of a confirmation counts only where the digest that it states is that of the entries here:
//! whoever has other contents under the same numbers has not got these.

use std::cmp::Reverse;

use crate::exchange::envelope::{SavedText, digest};
use crate::exchange::gaps::Run;
use crate::exchange::json::parse;
use crate::job::entry::{Held, LogId};
use crate::map::{OrderedMap, OrderedSet};
use crate::sorted::Sorted;

/// What one device noted in a log, by running number.
type Noted<'a> = OrderedMap<String, Vec<(u64, &'a str)>>;

/// Device and running number of a kept text.
pub(super) fn numbered(text: &str) -> Option<(String, u64)> {
    let json = parse(text).ok()?;
    Some((json.field("device")?, json.field("n")?))
}

/// The texts of a log by device, each device's by number.
fn noted(records: &[SavedText]) -> Noted<'_> {
    let mut all = Noted::new();
    for record in records {
        if let Some((device, n)) = numbered(&record.text) {
            all.or_default(device).push((n, &record.text));
        }
    }
    for (_, texts) in all.iter_mut() {
        texts.order_by_key(|(n, _)| *n);
    }
    all
}

fn count(texts: &[(u64, &str)]) -> u64 {
    u64::try_from(texts.len()).unwrap_or(u64::MAX)
}

fn digest_of(texts: &[(u64, &str)]) -> String {
    digest(texts.iter().map(|(_, text)| text))
}

/// The lines of a confirmation for a log that is here whole.
pub fn held_in(log: &LogId, records: &[SavedText]) -> Vec<Held> {
    let line = |(device, texts): (String, Vec<(u64, &str)>)| {
        Some(Held {
            log: log.clone(),
            device,
            through: texts.last()?.0,
            count: count(&texts),
            digest: digest_of(&texts),
        })
    };
    // The last device first.
    noted(records).into_iter().rev().filter_map(line).collect()
}

/// Lines of confirmations, so that those of one log are found at once.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Lines(OrderedMap<LogId, Vec<Held>>);

impl FromIterator<Held> for Lines {
    fn from_iter<I: IntoIterator<Item = Held>>(lines: I) -> Self {
        let mut all: OrderedMap<LogId, Vec<Held>> = OrderedMap::new();
        for line in lines {
            all.or_default(line.log.clone()).push(line);
        }
        Self(all)
    }
}

impl Lines {
    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Those of one log.
    fn of(&self, log: &str) -> &[Held] {
        let lines = self.0.get(&LogId(log.to_owned()));
        lines.map_or(&[][..], Vec::as_slice)
    }
}

/// How many lines of one device are held against its entries: a line with the right count and
/// another digest is about other contents, and no shop writes many of these.
const MOST_TRIED: usize = 5;

/// Up to which number lines of one device are about the very entries that are here.
fn held_through(texts: &[(u64, &str)], mut lines: Vec<&Held>) -> Option<u64> {
    lines.order_by_key(|line| Reverse(line.through));
    lines.dedup();
    let upto = |line: &Held| {
        texts
            .split_at(texts.partition_point(|(n, _)| *n <= line.through))
            .0
    };
    let counted = lines
        .into_iter()
        .filter(|line| count(upto(line)) == line.count);
    let mut tried = counted.take(MOST_TRIED);
    let fits = tried.find(|line| digest_of(upto(line)) == line.digest);
    fits.map(|line| line.through)
}

/// The entries of a log that no confirmation holds, in their order.
pub fn not_held<'a>(log: &str, records: &'a [SavedText], lines: &Lines) -> Vec<&'a SavedText> {
    let mut by_device: OrderedMap<&str, Vec<&Held>> = OrderedMap::new();
    for line in lines.of(log) {
        by_device.or_default(&line.device).push(line);
    }
    let noted = noted(records);
    let through: OrderedMap<&str, u64> =
        OrderedMap::from_iter(by_device.into_iter().filter_map(|(device, lines)| {
            let texts = noted.get(device).map_or(&[][..], Vec::as_slice);
            Some((device, held_through(texts, lines)?))
        }));
    let is_held = |text: &str| {
        let Some((device, n)) = numbered(text) else {
            return false;
        };
        through.get(device.as_str()).is_some_and(|last| n <= *last)
    };
    let open = records.iter().filter(|record| !is_held(&record.text));
    open.collect()
}

/// Whether the confirmations name as many entries of a job as are here, for each of its devices.
///
/// By numbers alone, for a list of jobs; what rests on it asks [`not_held`].
pub fn is_named(log: &str, runs: &[Run], lines: &Lines) -> bool {
    let mut here: OrderedMap<&str, (u64, u64)> = OrderedMap::new();
    for run in runs {
        let (last, count) = here.or_default(&run.device);
        *last = (*last).max(run.to);
        *count = count.saturating_add(run.count);
    }
    let all = lines.of(log).iter().filter(|line| {
        let here = here.get(line.device.as_str());
        here.is_some_and(|(last, count)| line.through >= *last && line.count == *count)
    });
    let named: OrderedSet<&str> = OrderedSet::from_iter(all.map(|line| line.device.as_str()));
    !here.is_empty() && here.keys().all(|device| named.contains(device))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::exchange::gaps::runs;
    use crate::exchange::wire::encode;
    use crate::job::entry::{Entry, EntryId, Event, Timestamp};

    #[test]
    fn an_entry_with_a_number_that_was_used_before_is_not_in_the_shop() {
        let entry = |id: &str, n| Entry {
            id: EntryId(id.to_owned()),
            log: LogId("job".to_owned()),
            at: Timestamp {
                utc_ms: 0,
                offset_min: 0,
                recorded: None,
            },
            by: String::new(),
            device: "van".to_owned(),
            n,
            after: Vec::new(),
            what: Event::Said(id.to_owned()),
        };
        let saved = |entry: &Entry| SavedText {
            log: entry.log.0.clone(),
            id: entry.id.0.clone(),
            text: encode(entry).unwrap_or_default(),
        };
        // After a kill the phone counts from 2 on once more.
        let all = [entry("a", 1), entry("b", 2), entry("c", 2)];
        let records: Vec<SavedText> = all.iter().map(saved).collect();
        let (log, two) = (LogId("job".to_owned()), records.split_at(2).0);
        let lines: Lines = held_in(&log, two).into_iter().collect();
        assert!(is_named("job", &runs(all.iter().take(2)), &lines));
        assert!(!is_named("job", &runs(&all), &lines));
        assert_eq!(not_held("job", &records, &lines).len(), 3);
        let whole: Lines = held_in(&log, &records).into_iter().collect();
        assert!(is_named("job", &runs(&all), &whole));
        assert!(not_held("job", &records, &whole).is_empty());
    }
}
