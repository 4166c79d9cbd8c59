//! What a shop counts over many jobs, each share between its ends at 95 %.
//!
//! Rows stand in the order of their names and are never ranked: few jobs say little. They are of
//! vans and of causes, never of persons. Practice enters nothing.

use crate::drawing::spans::Span;
use crate::exchange::summary::Summary;
use crate::exchange::tally::{Counts, Replaced};
use crate::job::tally::Measure;
use crate::map::{OrderedMap, OrderedSet};
use crate::trade::damage::{CameBackFor, Inspected, LikelyCause, PartReading};
use crate::trade::mean::{Mean, mean};
use crate::trade::share::{Share, share};

/// How sure the ends of a share are.
pub(super) const CONFIDENCE: f64 = 0.95;

/// So many of so many, with the share between its ends; no share of nothing.
#[derive(Clone, Debug, PartialEq)]
pub struct Row<K> {
    /// What is counted.
    pub what: K,
    /// How many it holds for.
    pub of: usize,
    /// How many there are.
    pub all: usize,
    /// The share.
    pub share: Option<Share>,
}

impl<K> Row<K> {
    fn new(what: K, (of, all): Counts) -> Self {
        Self {
            what,
            of,
            all,
            share: share(of, all, CONFIDENCE).ok(),
        }
    }

    /// The same under a name.
    pub fn named(self, name: impl FnOnce(K) -> String) -> Row<String> {
        Row {
            what: name(self.what),
            of: self.of,
            all: self.all,
            share: self.share,
        }
    }
}

impl Row<String> {
    /// The row on a scale from nothing to all; nothing where nothing was counted.
    pub fn span<'a>(&'a self, value: &'a str) -> Option<Span<'a>> {
        let share = self.share?;
        Some(Span {
            name: &self.what,
            value,
            low: share.low,
            at: self.of as f64 / self.all as f64,
            high: share.high,
            beside: None,
        })
    }
}

/// The jobs that count.
fn real(jobs: &[Summary]) -> impl Iterator<Item = &Summary> {
    jobs.iter().filter(|job| !job.practice)
}

/// What one job adds to a measure.
fn counted(measure: Measure, job: &Summary) -> Counts {
    let tally = &job.tally;
    let ended = !job.ending.is_empty();
    let count = |counts: Counts| if ended { counts } else { (0, 0) };
    match measure {
        Measure::Mended => {
            let recorded = tally.corners.iter().filter(|corner| corner.decided);
            let recorded: Vec<bool> = recorded.filter_map(|corner| corner.mended).collect();
            (recorded.iter().filter(|yes| **yes).count(), recorded.len())
        }
        Measure::CameBack => match job.came_back {
            Some(back) => (usize::from(back), 1),
            None => (0, 0),
        },
        Measure::NotedLater => count(tally.later),
        Measure::QuickNuts => count(tally.quick),
        Measure::Reasons => count(tally.reasons),
    }
}

/// What is counted over all vans together, under an empty name, and then of each van.
pub fn by_van(jobs: &[Summary], measure: Measure) -> Vec<Row<String>> {
    let mut vans: OrderedMap<&str, Counts> = OrderedMap::new();
    for job in real(jobs) {
        let (of, all) = counted(measure, job);
        // A job that no van did counts for all of them together alone.
        let own = Some(job.tally.van.as_str()).filter(|van| !van.is_empty());
        for van in [""].into_iter().chain(own) {
            let sum = vans.or_default(van);
            sum.0 += of;
            sum.1 += all;
        }
    }
    let recorded = vans.into_iter().filter(|(_, (_, all))| *all > 0);
    recorded
        .map(|(van, sum)| Row::new(van.to_owned(), sum))
        .collect()
}

/// A likely cause over the removed parts that were inspected; no cause where nothing was visible.
#[derive(Clone, Debug, PartialEq)]
pub struct CauseRow {
    /// How many parts point to it.
    pub row: Row<Option<LikelyCause>>,
    /// How many of these were cut open; of the others it is suspected.
    pub cut_open: usize,
}

/// How often each likely cause was read off the removed parts that were inspected. One part may point
/// to several.
pub fn removed_parts(jobs: &[Summary]) -> Vec<CauseRow> {
    let parts = real(jobs).flat_map(|job| &job.tally.corners);
    let parts: Vec<PartReading> = parts.filter_map(Replaced::reading).collect();
    let causes = LikelyCause::ALL.iter().copied().map(Some);
    let rows = causes.chain([None]).map(|cause| {
        let has = |part: &&PartReading| match cause {
            Some(cause) => part.causes().contains(&cause),
            None => part.findings().next().is_none(),
        };
        let of: Vec<&PartReading> = parts.iter().filter(has).collect();
        let cut = of.iter().filter(|it| it.inspected == Inspected::CutOpen);
        CauseRow {
            cut_open: cut.count(),
            row: Row::new(cause, (of.len(), parts.len())),
        }
    });
    rows.filter(|it| it.row.of > 0).collect()
}

/// Why jobs came back, of those that did and told why.
pub fn causes(jobs: &[Summary]) -> Vec<Row<CameBackFor>> {
    let back = real(jobs).filter(|job| job.came_back == Some(true));
    let recorded: Vec<CameBackFor> = back
        .filter_map(|job| CameBackFor::from_code(&job.tally.came_back_for))
        .collect();
    each(&recorded, CameBackFor::ALL)
}

/// A row for each word that was told, in the order of the set.
fn each<W: Copy + Ord>(recorded: &[W], all: &[W]) -> Vec<Row<W>> {
    let known: OrderedSet<&W> = OrderedSet::from_iter(recorded);
    let rows = all.iter().filter(|word| known.contains(word));
    let count = |word: &W| recorded.iter().filter(|it| *it == word).count();
    rows.map(|word| Row::new(*word, (count(word), recorded.len())))
        .collect()
}

/// Minutes at the car beside minutes sold, of the jobs of one kind that tell both.
#[derive(Clone, Debug, PartialEq)]
pub struct Minutes {
    /// The code of the kind of wheel end.
    pub kind: String,
    /// At how many corners it was done.
    pub corners: usize,
    /// On how many jobs.
    pub n: usize,
    /// The mean of what was sold, in minutes.
    pub sold: f64,
    /// The mean of what it took, in minutes.
    pub real: f64,
    /// What it took, between its ends; nothing from one job.
    pub between: Option<Mean>,
    /// What it took more than was sold, job by job; nothing from one job.
    pub over: Option<Mean>,
}

impl Minutes {
    /// The row on a scale from nothing to [`longest`]; what was sold as a second line.
    pub fn span<'a>(&self, name: &'a str, value: &'a str) -> Span<'a> {
        let ends = self
            .between
            .map_or((self.real, self.real), |it| (it.low, it.high));
        Span {
            name,
            value,
            low: ends.0,
            at: self.real,
            high: ends.1,
            beside: Some(self.sold),
        }
    }
}

/// The end of a scale that holds all of these: whole hours, in minutes.
pub fn longest(rows: &[Minutes]) -> f64 {
    let ends = rows.iter().flat_map(|row| {
        let high = row.between.map_or(row.real, |it| it.high);
        [high, row.sold]
    });
    (ends.fold(60.0, f64::max) / 60.0).ceil() * 60.0
}

/// Minutes sold and minutes taken, by the kind of wheel end and the number of corners.
pub fn minutes(jobs: &[Summary]) -> Vec<Minutes> {
    let mut kinds: OrderedMap<(&str, usize), Vec<(f64, f64)>> = OrderedMap::new();
    for job in real(jobs) {
        if let (Some(took), Some(sold)) = job.tally.minutes {
            let kind = (job.tally.kind.as_str(), job.tally.corners.len());
            let pair = (f64::from(took), f64::from(sold));
            kinds.or_default(kind).push(pair);
        }
    }
    let one = |((kind, corners), pairs): ((&str, usize), Vec<(f64, f64)>)| {
        let took: Vec<f64> = pairs.iter().map(|(took, _)| *took).collect();
        let over: Vec<f64> = pairs.iter().map(|(took, sold)| took - sold).collect();
        let sold = pairs.iter().map(|(_, sold)| *sold);
        Minutes {
            kind: kind.to_owned(),
            corners,
            n: pairs.len(),
            sold: average(sold),
            real: average(took.iter().copied()),
            between: mean(&took),
            over: mean(&over),
        }
    };
    kinds.into_iter().map(one).collect()
}

fn average(values: impl Iterator<Item = f64>) -> f64 {
    let (sum, n) = values.fold((0.0, 0_u32), |(sum, n), value| (sum + value, n + 1));
    if n == 0 { 0.0 } else { sum / f64::from(n) }
}

#[cfg(test)]
#[path = "counted/tests.rs"]
mod tests;
