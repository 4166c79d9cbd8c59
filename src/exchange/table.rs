//! Jobs as a table for a spreadsheet, one row a job, and entries as lines for a data warehouse.
//!
//! The heads and the words are the stable codes of the files, so that a formula keeps working
//! whatever language the app speaks; lengths are in millimetres, amounts in whole currency units.

use std::io;

use crate::exchange::canonical::canonical_entry;
use crate::exchange::csv::harmless;
use crate::exchange::envelope::{SavedText, digest};
use crate::exchange::erase::pseudonym;
use crate::exchange::json::quoted;
use crate::exchange::wire::{decode, kind};
use crate::job::entry::{DueKind, Event, LogId, Money, PersonField, Scope, VehicleField};
use crate::job::judge::{self, Measured};
use crate::job::sets;
use crate::job::{JobState, Key, fold};
use crate::map::{OrderedMap, OrderedSet};
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
    let mut out = Rows::under(heads, Vec::new())?;
    for row in rows {
        out.add(&row)?;
    }
    Ok(String::from_utf8(out.end()?).unwrap_or_default())
}

/// A table that is written row by row (RFC 4180).
pub struct Rows<W: io::Write>(::csv::Writer<W>);

impl<W: io::Write> Rows<W> {
    /// Writes the heads.
    ///
    /// # Errors
    /// What the disk refused.
    pub fn under(heads: &[&str], out: W) -> Result<Self, ::csv::Error> {
        let ends = ::csv::Terminator::CRLF;
        let mut out = ::csv::WriterBuilder::new()
            .terminator(ends)
            .from_writer(out);
        out.write_record(heads)?;
        Ok(Self(out))
    }

    /// Writes a row.
    ///
    /// # Errors
    /// What the disk refused.
    pub fn add(&mut self, row: &[String]) -> Result<(), ::csv::Error> {
        self.0.write_record(row)
    }

    /// Gives the writer back.
    ///
    /// # Errors
    /// What the disk refused.
    pub fn end(mut self) -> Result<W, ::csv::Error> {
        self.0.flush()?;
        let out = self.0.into_inner();
        out.map_err(|error| io::Error::other(error.to_string()).into())
    }
}

/// An entry as a warehouse takes it: with what only its whole log tells.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line<'a> {
    /// The entry, byte for byte.
    pub text: &'a str,
    /// What it is, by its stable code.
    pub kind: String,
    /// Its place in its log: after all that it saw, ties by id. What cannot be read comes last.
    pub place: usize,
    /// Whether it holds: it was read and was not struck.
    pub counts: bool,
    /// The day it was noted on the clock of the phone, `YYYY-MM-DD`.
    pub day: Option<String>,
}

/// The entries of a log in their order.
pub fn lines(records: &[SavedText]) -> Vec<Line<'_>> {
    let texts = records.iter().map(|it| (it.id.as_str(), it.text.as_str()));
    let mut texts: OrderedMap<&str, &str> = OrderedMap::from_iter(texts);
    let sheet = fold(records.iter().filter_map(|it| decode(&it.text).ok()));
    let mut lines = Vec::with_capacity(records.len());
    for (entry, struck) in sheet.with_struck() {
        if let Some(text) = texts.remove(entry.id.0.as_str()) {
            lines.push(Line {
                text,
                kind: kind(text),
                place: lines.len(),
                counts: !struck,
                day: entry.at.day().map(|day| day.to_string()),
            });
        }
    }
    for (_, text) in texts {
        lines.push(Line {
            text,
            kind: kind(text),
            place: lines.len(),
            counts: false,
            day: None,
        });
    }
    lines
}

impl Line<'_> {
    /// It as one JSON object, canonical, with these facts beside those of the entry; nothing for what
    /// is no JSON.
    pub fn to_text(&self, shop: Option<&str>) -> Option<String> {
        let fields = self.text.trim_start().strip_prefix('{')?;
        let Self { place, counts, .. } = self;
        let or_null = |text: Option<&str>| text.map_or_else(|| "null".to_owned(), quoted);
        let (shop, day) = (or_null(shop), or_null(self.day.as_deref()));
        let kind = quoted(&self.kind);
        let line = format!(
            "{{\"counts\":{counts},\"day\":{day},\"kind\":{kind},\"place\":{place},\"shop\":{shop},{fields}"
        );
        canonical_entry(&line).or_else(|| canonical_entry(self.text))
    }
}
