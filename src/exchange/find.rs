//! Finding a job among thousands by what was typed: plate, VIN, name, telephone, invoice, part, lot.

use crate::exchange::summary::Summary;
use crate::letters::plain;

/// What each job can be found by, made once for a list of jobs.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Finder(Vec<Option<String>>);

impl Finder {
    /// The finder of these jobs, in their order.
    pub fn of(jobs: &[Summary]) -> Self {
        Self(jobs.iter().map(known_by).collect())
    }

    /// The places of the jobs that typed characters find; all where nothing was typed. One that was
    /// not read may be the one that is looked for.
    pub fn find<'a>(&'a self, typed: &str) -> impl Iterator<Item = usize> + 'a {
        let typed = plain(typed);
        let found = move |(place, known): (usize, &Option<String>)| {
            let fits = known.as_ref().is_none_or(|known| known.contains(&typed));
            fits.then_some(place)
        };
        self.0.iter().enumerate().filter_map(found)
    }
}

/// The latest other job on the vehicle of a VIN; practice and an empty VIN are none.
pub fn earlier_visit<'a>(jobs: &'a [Summary], vin: &str, log: &str) -> Option<&'a Summary> {
    let vin = plain(vin);
    let same = |job: &&Summary| !job.practice && job.log != log && plain(&job.vin) == vin;
    let visits = jobs.iter().filter(same).filter(|_| !vin.is_empty());
    visits.max_by_key(|job| job.touched)
}

/// Plate, name, telephone, family, VIN, invoice, parts and lots, each on a line of its own; nothing is known of
/// a job that was not read.
fn known_by(job: &Summary) -> Option<String> {
    if job.too_long > 0 {
        return None;
    }
    let parts = job.parts.iter().flat_map(|part| [&part.number, &part.lot]);
    let fields = [&job.plate, &job.name, &job.phone, &job.family, &job.vin];
    let fields = fields.into_iter().chain(&job.invoices).chain(parts);
    let lines = fields.map(|field| plain(field)).collect::<Vec<_>>();
    Some(lines.join("\n"))
}

#[cfg(test)]
#[path = "find/tests.rs"]
mod tests;
