//! The report as a pure value: page one for the customer in plain words, then the technician's
//! pages with every spec, reading and answer.
//!
//! It is the fold of the entries it is given and nothing else: it judges nothing again, reads no
//! clock and knows no browser. Screens and paper render the same [`Block`]s.

mod answers;
mod bill;
mod block;
pub mod budget;
mod car_state;
pub mod cause;
mod conflict;
mod customer;
mod due_items;
mod entry_line;
mod fasteners;
mod invoice;
mod measured;
mod missing;
mod money;
pub mod paper;
pub mod plain;
pub mod reach;
pub mod reason;
mod record;
mod removed_part;
pub mod runout;
#[cfg(test)]
mod sample;
mod saved;
pub mod scale;
mod signature;
pub mod specs;
mod standing;
mod strip;
mod tear_off;
mod technician;
#[cfg(test)]
mod tests;
pub mod thickness;
mod time;
pub mod tip_and_drift;
mod undone;
mod warning_lights;
pub mod why;

pub use bill::{part_name, warnings};
pub use block::{Block, Size, Slip};
pub use car_state::{given_words, last_line, loose_lines, mishap_words, wrong_lines};
pub use conflict::{ConflictText, conflict_texts, value_line};
pub use due_items::retorque_sentence;
pub use entry_line::item_name;
pub use missing::not_proved;
pub use money::money;
pub use signature::signature_svg;
pub use standing::{must_not_drive, nothing_wrong, retorque_to_do};
pub use time::{stamp, when};
pub use undone::undone;
pub use warning_lights::warning_light_lines;

use chrono::NaiveDate;

use crate::job::entry::{Event, PersonField, VehicleField};
use crate::job::practice::is_practice;
use crate::job::{JobState, plan};
use crate::map::OrderedSet;
use crate::text::{self, Customer, Lang, ReportWord, Say};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Plan, PlannedStep, StepKey, procedure};
use crate::units::{Format, Length};

/// What the report says about itself and cannot know from the entries.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Reader {
    /// The job's id.
    pub job: String,
    /// SHA-256 over the digests of the entries it was folded from, in hex; may be empty.
    pub digest: String,
    /// Who made it: the technician or the shop; may be empty.
    pub made_by: String,
    /// How the customer reaches them; may be empty.
    pub contact: String,
    /// What the shop promises, word for word; may be empty.
    pub warranty: String,
    /// The texts of the codes on the tear-off; none for a job that gets no code, an empty list
    /// for one that does not fit.
    pub codes: Option<Vec<String>>,
}

/// The head of every page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Head {
    /// The report's title.
    pub title: String,
    /// Vehicle, plate and corner, each with its label.
    pub facts: Vec<(String, String)>,
    /// That it is practice, if it is.
    pub practice: Option<String>,
    /// What stands at the foot of every page.
    pub foot: String,
    /// The heading of page one.
    pub customer: String,
    /// The heading of the pages after it.
    pub technician: String,
}

/// The report.
#[derive(Clone, Debug, PartialEq)]
pub struct Report {
    /// The head.
    pub head: Head,
    /// For the customer.
    pub page_one: Vec<Block>,
    /// What is cut off page one and stays in the car, for whoever works on it next.
    pub tear_off: Option<Slip>,
    /// Each invoice and credit note, on a page of its own.
    pub invoices: Vec<Vec<Block>>,
    /// For the technician; begins on a new page.
    pub technician: Vec<Block>,
}

impl Report {
    /// The report of a sheet, in one language and number format.
    pub fn of(sheet: &JobState, lang: Lang, format: Format, reader: &Reader) -> Self {
        let context = ReportContext::new(sheet, lang, format, reader);
        Self {
            head: head(&context),
            page_one: customer::page(&context),
            tear_off: tear_off::tear_off(&context),
            invoices: invoice::invoices(&context),
            technician: technician::pages(&context),
        }
    }
}

/// Everything a part of the report is told from.
struct ReportContext<'a> {
    sheet: &'a JobState,
    lang: Lang,
    format: Format,
    reader: &'a Reader,
    plan: Plan,
    steps: Vec<PlannedStep>,
    /// Where it was noted that the customer would not sign.
    unsigned: OrderedSet<StepKey>,
}

impl<'a> ReportContext<'a> {
    fn new(sheet: &'a JobState, lang: Lang, format: Format, reader: &'a Reader) -> Self {
        let plan = plan(sheet);
        let steps = procedure(&plan);
        Self {
            sheet,
            lang,
            format,
            reader,
            plan,
            steps,
            unsigned: due_items::unsigned(sheet),
        }
    }

    fn word(&self, word: ReportWord) -> String {
        text::report(self.lang, word).to_owned()
    }

    fn customer(&self, say: Customer) -> String {
        text::customer(self.lang, say)
    }

    fn say(&self, say: Say) -> String {
        text::say(self.lang, say).to_owned()
    }

    fn sentence(&self, word: ReportWord) -> Block {
        Block::Sentence(self.word(word))
    }

    fn heading_of(&self, say: Customer) -> Block {
        Block::Heading(self.customer(say))
    }

    fn heading(&self, word: ReportWord) -> Block {
        Block::Heading(self.word(word))
    }

    fn corners(&self) -> &'a [Corner] {
        self.sheet.corners()
    }

    /// A step's name with its corner.
    fn step(&self, key: StepKey) -> String {
        let name = self.numerals(text::step_for(self.lang, key, self.plan.build()).name);
        match key.corner {
            Some(corner) => text::step_at(self.lang, &name, corner),
            None => name,
        }
    }

    /// A fixed sentence, its numbers with the reader's decimal mark.
    fn numerals(&self, fixed: &str) -> String {
        let letters: Vec<char> = fixed.chars().collect();
        let digit = |at: Option<usize>| {
            at.and_then(|at| letters.get(at))
                .is_some_and(char::is_ascii_digit)
        };
        let marked = letters.iter().enumerate().map(|(at, letter)| {
            if *letter == '.' && digit(at.checked_sub(1)) && digit(Some(at + 1)) {
                self.format.marked(".")
            } else {
                letter.to_string()
            }
        });
        marked.collect()
    }

    /// A length with its twin: `0.051 mm = 2.0 thou`.
    fn both(&self, length: Length, decimals: usize) -> String {
        let (one, twin) = (
            self.format.length(length, decimals),
            self.format.length_twin(length, decimals),
        );
        format!(
            "{} {}",
            one.line(),
            text::also_value(self.lang, &twin.line())
        )
    }

    /// The day the job was opened on, by the clock of the device.
    fn opened_day(&self) -> Option<NaiveDate> {
        let opened = self
            .sheet
            .counting()
            .find(|e| matches!(e.what, Event::Opened(_)))?;
        time::day(&opened.at)
    }

    /// The day of the last thing that happened.
    fn last_day(&self) -> Option<NaiveDate> {
        self.sheet
            .counting()
            .filter(|entry| !matches!(entry.what, Event::Strike(_)) && !entry.what.is_gone())
            .filter_map(|entry| time::day(&entry.at))
            .max()
    }
}

fn head(context: &ReportContext) -> Head {
    let person = |field| context.sheet.person(field).unwrap_or_default().to_owned();
    let label = |field| text::person_field(context.lang, field).to_owned();
    let family = context
        .sheet
        .vehicle(VehicleField::Family)
        .unwrap_or_default();
    let corners: Vec<&str> = context
        .corners()
        .iter()
        .map(|c| text::corner(context.lang, *c))
        .collect();
    let facts = [
        (context.word(ReportWord::Vehicle), family.to_owned()),
        (label(PersonField::Plate), person(PersonField::Plate)),
        (
            context.word(ReportWord::Date),
            context
                .last_day()
                .map(|day| plain::day(context.lang, day))
                .unwrap_or_default(),
        ),
        (context.word(ReportWord::Corners), corners.join(", ")),
    ];
    let practice = is_practice(context.sheet);
    Head {
        title: context.word(ReportWord::Title),
        facts: facts
            .into_iter()
            .filter(|(_, value)| !value.is_empty())
            .collect(),
        practice: practice.then(|| context.word(ReportWord::Practice)),
        foot: text::foot(
            context.lang,
            tail(&context.reader.job, 8),
            front(&context.reader.digest, 12),
        ),
        customer: context.word(ReportWord::ForCustomer),
        technician: context.word(ReportWord::ForTechnician),
    }
}

/// The last characters of an id: its first ones are the time and alike for jobs of one hour.
fn tail(text: &str, count: usize) -> &str {
    text.get(text.len().saturating_sub(count)..).unwrap_or(text)
}

fn front(text: &str, count: usize) -> &str {
    text.get(..count).unwrap_or(text)
}
