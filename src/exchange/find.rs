//! Finding a job among thousands by what was typed: plate, VIN, name, part, lot.

use crate::exchange::summary::Summary;

/// What each job can be found by, made once for a list of jobs.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Finder(Vec<String>);

impl Finder {
    /// The finder of these jobs, in their order.
    pub fn of(jobs: &[Summary]) -> Self {
        Self(jobs.iter().map(known_by).collect())
    }

    /// The places of the jobs that typed characters find; all where nothing was typed.
    pub fn find<'a>(&'a self, typed: &str) -> impl Iterator<Item = usize> + 'a {
        let typed = plain(typed);
        let found = move |(place, known): (usize, &String)| known.contains(&typed).then_some(place);
        self.0.iter().enumerate().filter_map(found)
    }
}

/// Letters and digits alone, in lower case.
fn plain(text: &str) -> String {
    let kept = text.chars().filter(|c| c.is_alphanumeric());
    kept.flat_map(char::to_lowercase).collect()
}

/// Plate, name, family, VIN, invoice, parts and lots, each on a line of its own.
fn known_by(job: &Summary) -> String {
    let parts = job.parts.iter().flat_map(|part| [&part.number, &part.lot]);
    let fields = [&job.plate, &job.name, &job.family, &job.vin, &job.invoice];
    let fields = fields.into_iter().chain(parts);
    let lines = fields.map(|field| plain(field)).collect::<Vec<_>>();
    lines.join("\n")
}

#[cfg(test)]
#[path = "find/tests.rs"]
mod tests;
