//! The day of all vans side by side: which job at which hour, what is open, what is late.

use crate::exchange::summary::Summary;
use crate::exchange::vans::{VanName, Vans};
use crate::map::OrderedMap;
use crate::sorted::Sorted;

/// The jobs of one van on one day.
#[derive(Clone, Debug, PartialEq)]
pub struct Column<'a> {
    /// The van; nothing where any van may do them.
    pub van: Option<VanName>,
    /// Its jobs by time; those for any time come last.
    pub jobs: Vec<Planned<'a>>,
}

/// One job on the board.
#[derive(Clone, Debug, PartialEq)]
pub struct Planned<'a> {
    /// The job.
    pub job: &'a Summary,
    /// Whether it is late: of an earlier day and not over, or not begun though its time has come.
    pub is_late: bool,
}

/// A moment by the clock on the wall: the day `YYYY-MM-DD` and the time `HH:MM`.
pub type Now<'a> = (&'a str, &'a str);

/// The board of a day. On the day of `now` it has what is left of the days before as well.
pub fn board<'a>(jobs: &'a [Summary], day: &str, now: Now) -> Vec<Column<'a>> {
    let vans = Vans::of(jobs);
    let left_over = |job: &Summary| day == now.0 && job.day.as_str() < day && is_to_do(job);
    let planned =
        |job: &&Summary| !job.practice && !job.day.is_empty() && (job.day == day || left_over(job));
    let mut columns: OrderedMap<(bool, Option<VanName>), Vec<&Summary>> = OrderedMap::new();
    for job in jobs.iter().filter(planned) {
        let van = vans.of_job(job);
        columns.or_default((van.is_none(), van)).push(job);
    }
    let column = |((_, van), mut jobs): ((bool, Option<VanName>), Vec<&'a Summary>)| {
        jobs.order_by(|a, b| (a.slot_order(), &a.log).cmp(&(b.slot_order(), &b.log)));
        let jobs = jobs.into_iter().map(|job| Planned {
            job,
            is_late: is_late(job, now),
        });
        Column {
            van,
            jobs: jobs.collect(),
        }
    };
    columns.into_iter().map(column).collect()
}

/// Whether work on it is still to come.
fn is_to_do(job: &Summary) -> bool {
    job.ending.is_empty() || job.is_left()
}

/// Whether nothing was done at the car yet.
fn is_not_begun(job: &Summary) -> bool {
    job.ending.is_empty() && job.tally.van.is_empty()
}

fn is_late(job: &Summary, (today, time): Now) -> bool {
    let time_has_come = !job.time.is_empty() && job.time.as_str() < time;
    match job.day.as_str().cmp(today) {
        std::cmp::Ordering::Less => is_to_do(job),
        std::cmp::Ordering::Equal => time_has_come && is_not_begun(job),
        std::cmp::Ordering::Greater => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::entry::LogId;
    use crate::job::fold;

    fn job(log: &str, day: &str, time: &str, van: &str) -> Summary {
        let mut job = Summary::of(&LogId(log.to_owned()), &fold([]), &[], None);
        (job.day, job.time, job.van) = (day.to_owned(), time.to_owned(), van.to_owned());
        job
    }

    const NOW: Now = ("2026-03-04", "10:00");

    fn shown(jobs: &[Summary], day: &str) -> Vec<(String, Vec<(String, bool)>)> {
        let column = |column: Column| {
            let van = column.van.map(|van| van.letters).unwrap_or_default();
            let jobs = column.jobs.iter();
            let jobs = jobs.map(|it| (it.job.log.clone(), it.is_late));
            (van, jobs.collect())
        };
        board(jobs, day, NOW).into_iter().map(column).collect()
    }

    fn rows(rows: &[(&str, bool)]) -> Vec<(String, bool)> {
        let rows = rows.iter();
        rows.map(|(log, late)| ((*log).to_owned(), *late)).collect()
    }

    #[test]
    fn each_van_has_its_hours_and_jobs_for_any_van_come_last() {
        let jobs = [
            job("any", "2026-03-04", "", ""),
            job("s", "2026-03-04", "09:59", "S"),
            job("n late", "2026-03-04", "14:00", "N"),
            job("n early", "2026-03-04", "10:00", "N"),
            job("tomorrow", "2026-03-05", "08:00", "N"),
            job("no slot", "", "", ""),
        ];
        let n = rows(&[("n early", false), ("n late", false)]);
        let expected = [
            ("N".to_owned(), n),
            ("S".to_owned(), rows(&[("s", true)])),
            (String::new(), rows(&[("any", false)])),
        ];
        assert_eq!(shown(&jobs, "2026-03-04"), expected);
        let tomorrow = [("N".to_owned(), rows(&[("tomorrow", false)]))];
        assert_eq!(shown(&jobs, "2026-03-05"), tomorrow);
    }

    #[test]
    fn what_is_begun_is_not_late_and_what_is_left_of_yesterday_is() {
        let mut jobs = [
            job("begun", "2026-03-04", "08:00", "N"),
            job("ended", "2026-03-04", "08:30", "N"),
            job("yesterday", "2026-03-03", "08:00", "N"),
            job("done yesterday", "2026-03-03", "08:00", "N"),
            job("left yesterday", "2026-03-03", "09:00", "N"),
        ];
        jobs[0].tally.van = "phone".to_owned();
        jobs[1].ending = "finished".to_owned();
        jobs[3].ending = "finished".to_owned();
        jobs[4].ending = "left_unfinished".to_owned();
        let all = rows(&[
            ("yesterday", true),
            ("left yesterday", true),
            ("begun", false),
            ("ended", false),
        ]);
        assert_eq!(shown(&jobs, "2026-03-04"), [("N".to_owned(), all)]);
        // Looked at as a day gone by, the board has that day alone.
        let before = shown(&jobs, "2026-03-03");
        assert_eq!(before[0].1.len(), 3);
        assert!(!before[0].1.contains(&("done yesterday".to_owned(), true)));
    }
}
