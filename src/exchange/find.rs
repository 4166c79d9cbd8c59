//! Finding a job among thousands by what was typed: plate, VIN, name, telephone, invoice, part, lot.

use crate::exchange::summary::Summary;
use crate::letters::plain;
use crate::sorted::Sorted;

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

/// Another job on what may be the same vehicle.
#[derive(Clone, Debug, PartialEq)]
pub struct Visit<'a> {
    /// Its line.
    pub job: &'a Summary,
    /// Whether the plate alone is the same, and another VIN stands next to it: a plate can move from
    /// one car to the next.
    pub other_vin: bool,
}

/// The other jobs with this VIN or this plate, the latest first; practice is none, and what is empty
/// is the same as nothing.
pub fn earlier_visits<'a>(
    jobs: &'a [Summary],
    vin: &str,
    plate: &str,
    log: &str,
) -> Vec<Visit<'a>> {
    let (vin, plate) = (plain(vin), plain(plate));
    let same = |typed: &str, known: &str| !typed.is_empty() && plain(known) == typed;
    let visit = |job: &'a Summary| {
        let is_vin = same(&vin, &job.vin);
        (is_vin || same(&plate, &job.plate)).then(|| Visit {
            job,
            other_vin: !is_vin && !vin.is_empty() && !plain(&job.vin).is_empty(),
        })
    };
    let others = jobs.iter().filter(|job| !job.practice && job.log != log);
    let mut visits: Vec<Visit> = others.filter_map(visit).collect();
    visits.order_by_key(|visit| std::cmp::Reverse(visit.job.touched));
    visits
}

/// The latest other job on the vehicle of a VIN.
pub fn earlier_visit<'a>(jobs: &'a [Summary], vin: &str, log: &str) -> Option<&'a Summary> {
    let latest = earlier_visits(jobs, vin, "", log).into_iter().next();
    latest.map(|visit| visit.job)
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
