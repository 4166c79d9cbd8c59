//! What one job adds to the counts of a shop, as it is kept beside its line in the list.

use crate::exchange::json::form;
use crate::job::tally::{self as facts, Part};
use crate::job::{JobState, plan};
use crate::trade::damage::{Finding, Inspected, PartReading};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::PlannedStep;

/// So many of so many, as it is kept.
pub type Counts = (usize, usize);

/// What one job adds.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// The phone that did the work, which stands for its van; empty before any was done.
    pub van: String,
    /// The letters of the invoices that this phone gave; empty where it gave none.
    pub letters: String,
    /// The code of its kind of wheel end.
    pub kind: String,
    /// The day it was finished, `YYYY-MM-DD`; empty if it was not.
    pub finished: String,
    /// The phone that did a finished job, and its running number when that was done.
    pub last: (String, u64),
    /// The corners where a new part was put in.
    pub corners: Vec<Replaced>,
    /// The code of why it came back; empty where that was not told.
    pub came_back_for: String,
    /// Minutes from the site to the end, and those that were sold.
    pub minutes: (Option<u32>, Option<u32>),
    /// Entries noted later.
    pub later: Counts,
    /// Wheels whose nuts clicked too quickly.
    pub quick: Counts,
    /// Hold points passed with a reason.
    pub reasons: Counts,
    /// How often each wrench clicked, by phone and by its name.
    pub clicks: Vec<(String, String, u32)>,
}

/// One corner where a new part was put in.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Replaced {
    /// Whether the decision was to replace it.
    pub decided: bool,
    /// Whether that was proved to have mended it; nothing where it was not judged.
    pub mended: Option<bool>,
    /// The code of how the removed part was inspected; empty where nothing was said.
    pub inspected: String,
    /// The codes of what was seen on it.
    pub seen: Vec<String>,
}

form!(Tally {
    van,
    letters,
    kind,
    finished,
    last,
    corners,
    came_back_for,
    minutes,
    later,
    quick,
    reasons,
    clicks,
});
form!(Replaced {
    decided,
    mended,
    inspected,
    seen,
});

impl Tally {
    /// What a job adds; `steps` are those of its plan.
    pub fn of(sheet: &JobState, steps: &[PlannedStep]) -> Self {
        let end = facts::finished(sheet);
        let day = end.and_then(|entry| entry.at.day());
        let corners = Corner::ALL.iter().filter(|_| end.is_some());
        let van = facts::van(sheet);
        Self {
            van: van.to_owned(),
            letters: facts::letters(sheet, van).to_owned(),
            kind: plan(sheet).kind.code().to_owned(),
            finished: day.map(|day| day.to_string()).unwrap_or_default(),
            last: end.map_or_else(Default::default, |end| {
                let (phone, n) = facts::done_at(sheet, end);
                (phone.to_owned(), n)
            }),
            corners: corners.filter_map(|at| replaced(sheet, *at)).collect(),
            came_back_for: sheet
                .came_back_for()
                .map(|cause| cause.code().to_owned())
                .unwrap_or_default(),
            minutes: (facts::real_minutes(sheet), facts::sold_minutes(sheet)),
            later: counts(facts::noted_later(sheet)),
            quick: counts(facts::quick_nuts(sheet)),
            reasons: counts(facts::passed_with_reason(sheet, steps)),
            clicks: facts::clicks(sheet)
                .into_iter()
                .map(|((phone, name), clicks)| (phone.to_owned(), name.to_owned(), clicks))
                .collect(),
        }
    }
}

const fn counts(part: Part) -> Counts {
    (part.of, part.all)
}

fn replaced(sheet: &JobState, corner: Corner) -> Option<Replaced> {
    facts::is_replaced(sheet, corner).then(|| {
        let reading = sheet.removed_part(corner);
        let findings = reading.into_iter().flat_map(PartReading::findings);
        Replaced {
            decided: facts::decided_to_replace(sheet, corner),
            mended: facts::mended(sheet, corner),
            inspected: reading
                .map(|reading| reading.inspected.code().to_owned())
                .unwrap_or_default(),
            seen: findings.map(|it| it.code().to_owned()).collect(),
        }
    })
}

impl Replaced {
    /// The reading of the removed part; nothing where it was not inspected.
    pub fn reading(&self) -> Option<PartReading> {
        let inspected = Inspected::from_code(&self.inspected)?;
        let seen = self.seen.iter().filter_map(|code| Finding::from_code(code));
        let seen = seen.collect();
        let reading = PartReading { inspected, seen };
        (inspected != Inspected::NotInspected).then_some(reading)
    }
}
