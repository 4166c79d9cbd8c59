//! Running numbers: every device counts its entries, so that what is missing has a name.

use crate::exchange::json::form;
use crate::job::entry::Entry;
use crate::job::practice::OWN_COUNT;
use crate::map::OrderedMap;
use crate::sorted::Sorted;

/// Running numbers of one device that follow on one another.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Run {
    /// The device.
    pub device: String,
    /// The first number.
    pub from: u64,
    /// The last one.
    pub to: u64,
    /// How many entries have them: more than numbers, where a kill made one be used twice.
    pub count: u64,
    /// Who held the device at the last one.
    pub by: String,
}

form!(Run {
    device,
    from,
    to,
    count,
    by
});

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

/// The runs of these entries, by device.
pub fn runs<'a>(entries: impl IntoIterator<Item = &'a Entry>) -> Vec<Run> {
    let single = |entry: &Entry| Run {
        device: entry.device.clone(),
        from: entry.n,
        to: entry.n,
        count: 1,
        by: entry.by.clone(),
    };
    joined(entries.into_iter().map(single).collect())
}

/// Runs that touch or overlap become one.
pub(super) fn joined(mut all: Vec<Run>) -> Vec<Run> {
    all.order();
    let mut joined: Vec<Run> = Vec::new();
    for run in all {
        match joined.last_mut() {
            Some(last) if last.device == run.device && run.from <= last.to.saturating_add(1) => {
                last.count = last.count.saturating_add(run.count);
                if last.to <= run.to {
                    (last.to, last.by) = (run.to, run.by);
                }
            }
            _ => joined.push(run),
        }
    }
    joined
}

/// The running numbers that are missing between the first and the last of each device.
///
/// A device counts through all its logs, so that a gap may also lie in a job that was not handed
/// in. Practice is counted apart and is nobody's loss.
pub fn gaps<'a>(runs: impl IntoIterator<Item = &'a Run>) -> Vec<Gap> {
    let counted = runs
        .into_iter()
        .filter(|run| !run.device.ends_with(OWN_COUNT));
    let runs = joined(counted.cloned().collect());
    let pairs = runs.iter().zip(runs.iter().skip(1));
    let gaps = pairs.filter(|(before, after)| before.device == after.device);
    gaps.filter_map(|(before, after)| {
        Some(Gap {
            device: before.device.clone(),
            from: before.to.checked_add(1)?,
            to: after.from.checked_sub(1)?,
        })
    })
    .collect()
}

/// Who held each device last.
pub fn holders<'a>(runs: impl IntoIterator<Item = &'a Run>) -> OrderedMap<&'a str, &'a str> {
    let mut last: OrderedMap<&str, &Run> = OrderedMap::new();
    for run in runs {
        let known = last.or_make(&run.device, || run);
        if known.to < run.to {
            *known = run;
        }
    }
    let holder = |(device, run): (&'a str, &'a Run)| (device, run.by.as_str());
    OrderedMap::from_iter(last.into_iter().map(holder))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn run(device: &str, from: u64, to: u64) -> Run {
        let (device, by) = (device.to_owned(), format!("{device} at {to}"));
        Run {
            device,
            from,
            to,
            count: to.saturating_sub(from).saturating_add(1),
            by,
        }
    }

    #[test]
    fn holes_lie_between_the_runs_of_one_device() {
        let all = [
            run("a", 431, 440),
            run("b", 1, 3),
            run("a", 400, 405),
            run("a", 404, 411),
            run("b", 4, 4),
            run("a-practice", 1, 2),
            run("a-practice", 9, 9),
        ];
        let gap = Gap {
            device: "a".to_owned(),
            from: 412,
            to: 430,
        };
        assert_eq!(gaps(&all), [gap]);
        assert_eq!(gaps(&all[1..]), []);
        assert_eq!(holders(&all).get("a"), Some(&"a at 440"));
    }

    #[test]
    fn the_ends_of_the_count_are_no_trap() {
        assert_eq!(
            gaps(&[run("a", 0, u64::MAX), run("a", u64::MAX, u64::MAX)]),
            []
        );
        assert_eq!(gaps(&[run("a", 0, 0), run("a", 2, 2)]).len(), 1);
    }
}
