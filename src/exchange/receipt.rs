//! The yard's answer to a van: which entries it has, so that the van knows what is still to bring.
//!
//! A line of a receipt counts only where the digest that it states is that of the entries here:
//! whoever has other contents under the same numbers has not got these.

use serde::Deserialize;

use crate::exchange::envelope::{KeptText, digest};
use crate::exchange::gaps::Run;
use crate::job::entry::{Held, LogId};

#[derive(Deserialize)]
struct Numbered {
    device: String,
    n: u64,
}

/// Device and running number of a kept text.
fn numbered(text: &str) -> Option<(String, u64)> {
    let numbered: Numbered = serde_json::from_str(text).ok()?;
    Some((numbered.device, numbered.n))
}

/// The devices of a log with their last numbers.
fn devices(records: &[KeptText]) -> Vec<(String, u64)> {
    let mut all: Vec<(String, u64)> = records.iter().filter_map(|r| numbered(&r.text)).collect();
    all.sort_unstable_by(|a, b| b.cmp(a));
    all.dedup_by(|next, last| next.0 == last.0);
    all
}

/// What one device noted up to a number: how many entries, and their digest.
fn sum(records: &[KeptText], device: &str, through: u64) -> (u64, String) {
    let is = |record: &&KeptText| {
        numbered(&record.text).is_some_and(|(of, n)| of == device && n <= through)
    };
    let texts: Vec<&str> = records.iter().filter(is).map(|r| r.text.as_str()).collect();
    let count = u64::try_from(texts.len()).unwrap_or(u64::MAX);
    (count, digest(texts))
}

/// The lines of a receipt for a log that is here whole.
pub fn held_in(log: &LogId, records: &[KeptText]) -> Vec<Held> {
    let line = |(device, through): (String, u64)| {
        let (count, digest) = sum(records, &device, through);
        Held {
            log: log.clone(),
            device,
            through,
            count,
            digest,
        }
    };
    devices(records).into_iter().map(line).collect()
}

/// Whether a line is about the very entries that are here.
fn fits(line: &Held, records: &[KeptText]) -> bool {
    sum(records, &line.device, line.through) == (line.count, line.digest.clone())
}

/// The entries of a log that no receipt holds, in their order.
pub fn not_held<'a>(log: &str, records: &'a [KeptText], lines: &[Held]) -> Vec<&'a KeptText> {
    let fitting: Vec<&Held> = lines
        .iter()
        .filter(|line| line.log.0 == log && fits(line, records))
        .collect();
    let is_held = |text: &str| {
        let Some((device, n)) = numbered(text) else {
            return false;
        };
        let mut lines = fitting.iter();
        lines.any(|line| line.device == device && n <= line.through)
    };
    let open = records.iter().filter(|record| !is_held(&record.text));
    open.collect()
}

/// Whether the receipts name as many entries of a job as are here, for each of its devices.
///
/// By numbers alone, for a list of jobs; what rests on it asks [`not_held`].
pub fn is_named(log: &str, runs: &[Run], lines: &[Held]) -> bool {
    let named = |device: &str| {
        let of_device = || runs.iter().filter(|run| run.device == device);
        let last = of_device().map(|run| run.to).max();
        let count = |run: &Run| run.to.saturating_sub(run.from).saturating_add(1);
        let count = of_device().map(count).fold(0, u64::saturating_add);
        lines.iter().any(|line| {
            let is = line.log.0 == log && line.device == device;
            is && Some(line.through) >= last && line.count == count
        })
    };
    !runs.is_empty() && runs.iter().all(|run| named(&run.device))
}
