//! Jobs as a table for a spreadsheet, one row a job, and entries as lines for a data warehouse.
//!
//! The heads and the words are the stable codes of the files, so that a formula keeps working
//! whatever language the app speaks; lengths are in millimetres, amounts in whole currency units.

use crate::exchange::canonical::canonical_entry;
use crate::exchange::csv::harmless;
use crate::exchange::envelope::{SavedText, digest};
use crate::exchange::erase::pseudonym;
use crate::exchange::wire::decode;
use crate::job::entry::{DueKind, Event, LogId, Money, PersonField, Scope, VehicleField};
use crate::job::judge::{self, Measured};
use crate::job::sets;
use crate::job::{JobState, Key, fold};
use crate::map::OrderedSet;
use crate::report::stamp;
use crate::trade::money::{minor_digits, plain};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{SetName, Step, StepKey, When};
use crate::units::{Length, LengthUnit};

/// The heads of the table. Where a job has several corners, a cell holds one value a corner, in
/// the order of `corners`, with a semicolon between.
pub const HEADS: [&str; 25] = [
    "job",
    "practice",
    "opened",
    "ended",
    "ending",
    "technicians",
    "customer",
    "plate",
    "family",
    "vin",
    "corners",
    "decisions",
    "limit_mm",
    "limit_source",
    "before_mm",
    "after_mm",
    "parts",
    "repair_yes",
    "repair_how",
    "repair_amount",
    "currency",
    "retorque_by",
    "retorque_done",
    "loose",
    "digest",
];

/// The row of one job, a cell a head. The customer is named as in the record, and by a pseudonym
/// where the record has no name any more.
pub fn row(job: &LogId, records: &[SavedText]) -> Vec<String> {
    let entries = records.iter().filter_map(|r| decode(&r.text).ok());
    let sheet = fold(entries);
    let mut cells = vec![
        job.0.clone(),
        practice(&sheet),
        when(&sheet, &Key::Opened),
        when(&sheet, &Key::Ended),
        code(sheet.ended().map(|ended| ended.ending.code())),
    ];
    cells.extend(who_and_what(job, &sheet));
    cells.extend(corners(&sheet));
    cells.extend(money(&sheet));
    let due = sheet.due(DueKind::Retorque);
    let done = sheet.reply(StepKey::once(Step::RetorqueDone)).is_some();
    cells.extend([
        due.map(|due| due.date.clone()).unwrap_or_default(),
        yes(done).to_owned(),
        sheet.loose().len().to_string(),
        digest(records.iter().map(|record| record.text.as_str())),
    ]);
    cells.into_iter().map(harmless).collect()
}

fn code(code: Option<&str>) -> String {
    code.unwrap_or_default().to_owned()
}

const fn yes(is: bool) -> &'static str {
    if is { "yes" } else { "no" }
}

fn practice(sheet: &JobState) -> String {
    let opened = sheet.opened();
    yes(opened.is_some_and(|opened| opened.practice.is_some())).to_owned()
}

fn when(sheet: &JobState, key: &Key) -> String {
    let at = sheet.holds(key).map(|entry| entry.at);
    at.map_or_else(String::new, |at| stamp(at.utc_ms, at.offset_min))
}

fn who_and_what(job: &LogId, sheet: &JobState) -> [String; 5] {
    let by: OrderedSet<&str> = sheet.counting().map(|entry| entry.by.as_str()).collect();
    let by: Vec<&str> = by.into_iter().collect();
    let name = sheet.person(PersonField::Name).map(str::to_owned);
    let vehicle = |field| code(sheet.vehicle(field));
    [
        by.join("; "),
        name.unwrap_or_else(|| pseudonym(job)),
        code(sheet.person(PersonField::Plate)),
        vehicle(VehicleField::Family),
        vehicle(VehicleField::Vin),
    ]
}

fn corners(sheet: &JobState) -> [String; 7] {
    let each = |of: &dyn Fn(Corner) -> String| {
        let cells = sheet.corners().iter().map(|corner| of(*corner));
        cells.collect::<Vec<_>>().join("; ")
    };
    let limit = judge::limit(sheet);
    [
        each(&|corner| corner.code().to_owned()),
        each(&|corner| code(sheet.decided(corner).map(|d| d.decision.code()))),
        mm(limit.value),
        limit.source.code().to_owned(),
        each(&|corner| mean(sheet, corner, When::Before)),
        each(&|corner| mean(sheet, corner, When::After)),
        each(&|corner| code(sheet.part(corner).map(|part| part.number.as_str()))),
    ]
}

/// The mean of the last set, to a tenth of a micrometre.
fn mean(sheet: &JobState, corner: Corner, when: When) -> String {
    let set = |nth| sets::reported(sheet, corner, SetName { when, nth })?.ok();
    let last = [2, 1].into_iter().find_map(set);
    last.map_or_else(String::new, |set: Measured| mm(set.mean()))
}

fn mm(length: Length) -> String {
    format!("{:.4}", length.in_unit(LengthUnit::Millimetre))
}

fn money(sheet: &JobState) -> [String; 4] {
    let consents = sheet.counting().filter_map(|entry| match &entry.what {
        Event::Consent(consent) if consent.scope == Scope::Repair => Some(consent),
        _ => None,
    });
    let Some(consent) = consents.last() else {
        return Default::default();
    };
    let amount = |money: &Money| plain(money.minor, minor_digits(&money.currency));
    [
        yes(consent.yes).to_owned(),
        consent.how.code().to_owned(),
        consent.amount.as_ref().map(amount).unwrap_or_default(),
        code(consent.amount.as_ref().map(|money| money.currency.as_str())),
    ]
}

/// The table of these jobs (RFC 4180).
///
/// # Errors
/// [`::csv::Error`] if memory runs out.
pub fn table<'a>(
    jobs: impl IntoIterator<Item = (&'a LogId, &'a [SavedText])>,
) -> Result<String, ::csv::Error> {
    written(
        &HEADS,
        jobs.into_iter().map(|(job, records)| row(job, records)),
    )
}

/// Rows under their heads (RFC 4180).
pub(super) fn written(
    heads: &[&str],
    rows: impl Iterator<Item = Vec<String>>,
) -> Result<String, ::csv::Error> {
    let ends = ::csv::Terminator::CRLF;
    let mut out = ::csv::WriterBuilder::new()
        .terminator(ends)
        .from_writer(Vec::new());
    out.write_record(heads)?;
    for row in rows {
        out.write_record(row)?;
    }
    out.flush()?;
    let bytes = out.into_inner().unwrap_or_default();
    Ok(String::from_utf8(bytes).unwrap_or_default())
}

/// Entries, one JSON object a line, each as its canonical text.
pub fn lines<'a>(records: impl IntoIterator<Item = &'a SavedText>) -> String {
    let texts = records.into_iter().filter_map(|r| canonical_entry(&r.text));
    texts.map(|text| text + "\n").collect()
}
