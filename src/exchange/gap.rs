//! Running numbers of a phone that are in no job at hand.
//!
//! A phone counts through all its logs, so that a gap may also lie in a job that was not handed in.

use std::collections::{BTreeMap, BTreeSet};

/// Running numbers of a device that are in no file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Gap {
    /// The device.
    pub device: String,
    /// The first number that is missing.
    pub from: u64,
    /// The last one.
    pub to: u64,
}

/// Numbers in a row, both ends among them.
pub type Run = (u64, u64);

/// The numbers of one device in as few rows as they make.
pub fn runs(numbers: impl IntoIterator<Item = u64>) -> Vec<Run> {
    let sorted: BTreeSet<u64> = numbers.into_iter().collect();
    joined(sorted.into_iter().map(|n| (n, n)))
}

/// Rows in their order put together where they touch.
fn joined(rows: impl IntoIterator<Item = Run>) -> Vec<Run> {
    let mut joined: Vec<Run> = Vec::new();
    for (from, to) in rows {
        match joined.last_mut() {
            Some((_, last)) if from <= last.saturating_add(1) => *last = (*last).max(to),
            _ => joined.push((from, to)),
        }
    }
    joined
}

/// The numbers that are missing between the first and the last of each device.
pub fn gaps<'a>(rows: impl IntoIterator<Item = (&'a str, Run)>) -> Vec<Gap> {
    let mut devices: BTreeMap<&str, Vec<Run>> = BTreeMap::new();
    for (device, row) in rows {
        devices.entry(device).or_default().push(row);
    }
    let mut gaps = Vec::new();
    for (device, mut rows) in devices {
        rows.sort_unstable();
        let rows = joined(rows);
        for (before, after) in rows.iter().zip(rows.iter().skip(1)) {
            gaps.push(Gap {
                device: device.to_owned(),
                from: before.1.saturating_add(1),
                to: after.0.saturating_sub(1),
            });
        }
    }
    gaps
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_are_as_few_as_the_numbers_make() {
        assert_eq!(runs([5, 1, 2, 3, 3, 9, 6]), [(1, 3), (5, 6), (9, 9)]);
        assert_eq!(runs([]), []);
        assert_eq!(runs([u64::MAX, u64::MAX - 1]), [(u64::MAX - 1, u64::MAX)]);
    }

    #[test]
    fn a_gap_lies_between_jobs_of_one_device_only() {
        let rows = [
            ("a", (10, 12)),
            ("b", (1, 4)),
            ("a", (1, 4)),
            ("a", (5, 7)),
            ("b", (3, 9)),
        ];
        let gap = Gap {
            device: "a".to_owned(),
            from: 8,
            to: 9,
        };
        assert_eq!(gaps(rows), [gap]);
        assert_eq!(
            gaps([("a", (0, u64::MAX)), ("a", (u64::MAX, u64::MAX))]),
            []
        );
    }
}
