//! What the list of jobs shows of one job: derived from its sheet, disposable, made again at will.

mod facts;

use facts::{came_back, declined, moved_from, on, parts, visited, waits};

use crate::exchange::erase::pseudonym;
use crate::exchange::gaps::{Run, runs};
use crate::exchange::json::{form, read, written};
use crate::exchange::sums::Sums;
use crate::exchange::tally::Tally;
use crate::job::conflict::conflicts;
use crate::job::ending::watched;
use crate::job::entry::{Due, DueKind, Ending, Event, LogId, PersonField, VehicleField};
use crate::job::flow;
use crate::job::practice::is_practice;
use crate::job::{JobState, fold};
use crate::report::retorque_to_do;
use crate::trade::wheel_end::PlannedStep;

/// The version of the summary's form; another one is made again from the entries.
const VERSION: u32 = 11;

/// A part that was fitted.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Fitted {
    /// Its number.
    pub number: String,
    /// The manufacturer's lot; empty if it has none.
    pub lot: String,
}

/// A corner as an earlier visit left it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Visited {
    /// The code of the corner.
    pub corner: String,
    /// The code of the decision on it; empty if there is none.
    pub found: String,
    /// Whether a new part was put in.
    pub replaced: bool,
}

/// One line of the list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Summary {
    pub(super) v: u32,
    /// The job.
    pub log: String,
    /// The plate, as typed.
    pub plate: String,
    /// The customer's name.
    pub name: String,
    /// The customer's telephone, as typed.
    pub phone: String,
    /// The vehicle family.
    pub family: String,
    /// The VIN, as typed.
    pub vin: String,
    /// The code of the step that comes next; empty if none does.
    pub next: String,
    /// The code of its phase.
    pub phase: String,
    /// How many items are loose.
    pub loose: usize,
    /// Whether entries are missing, so that more may be loose.
    pub incomplete: bool,
    /// The code of the ending; empty if it has not ended.
    pub ending: String,
    /// The day by which the lug nuts are due, `YYYY-MM-DD`; empty if none.
    pub due: String,
    /// The repair was advised and nobody has said yes or no yet.
    pub waiting: bool,
    /// The customer said no to the repair of what must not be driven.
    pub declined_stop: bool,
    /// The customer said no to a repair that was advised.
    pub declined: bool,
    /// What its account comes to.
    pub sums: Sums,
    /// What is still to pay in minor units, and its currency; after the end only.
    pub unpaid: Option<(i64, String)>,
    /// The parts that were fitted.
    pub parts: Vec<Fitted>,
    /// Whether it came back with the same corner; nothing if that was not asked yet.
    pub came_back: Option<bool>,
    /// The numbers of its invoices and credit notes.
    pub invoices: Vec<String>,
    /// How many facts two phones recorded differently.
    pub conflicts: usize,
    /// The day by which a bearing that is watched is checked again; empty if none is.
    pub recheck: String,
    /// Whether it is practice.
    pub practice: bool,
    /// What it adds to the counts of the shop.
    pub tally: Tally,
    /// The day it belongs to, `YYYY-MM-DD`: that of its end, else of its slot, else of its beginning;
    /// empty if none is known.
    pub on: String,
    /// What was found and done at each corner.
    pub visited: Vec<Visited>,
    /// When it was last written, milliseconds since 1970 in UTC.
    pub touched: i64,
    /// The day it is to be done, `YYYY-MM-DD`; empty if none is set.
    pub day: String,
    /// When on that day, `HH:MM`; empty for any time.
    pub time: String,
    /// The mark of the van that does it; empty if any may.
    pub van: String,
    /// The vans that were to do it before, by their letters.
    pub moved_from: Vec<String>,
    /// Whether the person left this device, and the shop has the job.
    pub let_go: bool,
    /// Whether a person was erased.
    pub erased: bool,
    /// The running numbers of its entries, by device.
    pub runs: Vec<Run>,
    /// How many entries it has, where it is too long and was not read; else 0.
    pub too_long: usize,
}

form!(Fitted { number, lot });
form!(Visited {
    corner,
    found,
    replaced
});
form!(Summary {
    v,
    log,
    plate,
    name,
    phone,
    family,
    vin,
    next,
    phase,
    loose,
    incomplete,
    ending,
    due,
    waiting,
    declined_stop,
    declined,
    sums,
    unpaid,
    parts,
    came_back,
    invoices,
    conflicts,
    recheck,
    practice,
    tally,
    on,
    visited,
    touched,
    day,
    time,
    van,
    moved_from,
    let_go,
    erased,
    runs,
    too_long,
});

impl Summary {
    /// The line of a job; `steps` are those of its plan, `next` the one that comes next.
    pub fn of(
        log: &LogId,
        sheet: &JobState,
        steps: &[PlannedStep],
        next: Option<&PlannedStep>,
    ) -> Self {
        let person = |field| sheet.person(field).unwrap_or_default().to_owned();
        let vehicle = |field| sheet.vehicle(field).unwrap_or_default().to_owned();
        let day = |due: Option<&Due>| due.map(|due| due.date.clone()).unwrap_or_default();
        let times = sheet.entries().iter().map(|entry| entry.at.utc_ms);
        let slot = flow::slot(sheet);
        let gone = |is: fn(&Event) -> bool| sheet.entries().iter().any(|entry| is(&entry.what));
        let sums = Sums::of(sheet);
        Self {
            v: VERSION,
            log: log.0.clone(),
            plate: person(PersonField::Plate),
            name: person(PersonField::Name),
            phone: person(PersonField::Phone),
            family: vehicle(VehicleField::Family),
            vin: vehicle(VehicleField::Vin),
            next: next.map(|planned| planned.key.code()).unwrap_or_default(),
            phase: next
                .map(|planned| planned.phase.code().to_owned())
                .unwrap_or_default(),
            loose: sheet.loose().len(),
            incomplete: sheet.is_incomplete(),
            ending: sheet
                .ended()
                .map(|e| e.ending.code().to_owned())
                .unwrap_or_default(),
            due: day(retorque_to_do(sheet)),
            waiting: sheet.ended().is_none() && waits(sheet),
            declined_stop: declined(sheet, true),
            declined: declined(sheet, false),
            unpaid: sums.unpaid(),
            sums,
            parts: parts(sheet),
            came_back: came_back(sheet),
            invoices: sheet
                .invoices()
                .map(|(_, invoice)| invoice.number.clone())
                .collect(),
            conflicts: conflicts(sheet).len(),
            recheck: day(watched(sheet)),
            practice: is_practice(sheet),
            tally: Tally::of(sheet, steps),
            on: on(sheet),
            visited: visited(sheet),
            touched: times.max().unwrap_or(0),
            day: slot.map(|slot| slot.day.to_string()).unwrap_or_default(),
            time: slot
                .and_then(|slot| slot.time)
                .map(|time| time.to_string())
                .unwrap_or_default(),
            van: slot.map(|slot| slot.van.clone()).unwrap_or_default(),
            moved_from: moved_from(sheet),
            let_go: gone(|what| matches!(what, Event::LetGo(_))),
            erased: gone(|what| matches!(what, Event::Erased(_))),
            runs: runs(sheet.entries()),
            too_long: 0,
        }
    }

    /// The line of a job of so many entries that was not read: more may be loose than is known.
    pub fn unread(log: &LogId, entries: usize) -> Self {
        Self {
            incomplete: true,
            too_long: entries,
            ..Self::of(log, &fold([]), &[], None)
        }
    }

    /// The text it is kept as.
    pub fn to_text(&self) -> String {
        written(self)
    }

    /// The line of a text, unless it is of another form.
    pub fn from_text(text: &str) -> Option<Self> {
        read(text).filter(|summary: &Self| summary.v == VERSION)
    }

    /// Of how many entries it was made; none were read of a job that is too long.
    pub fn entries(&self) -> u64 {
        self.runs.iter().map(|run| run.count).sum()
    }

    /// The name it is shown under: its plate, or a pseudonym where its person is gone.
    pub fn title(&self) -> String {
        match self.plate.as_str() {
            "" if self.let_go || self.erased => pseudonym(&LogId(self.log.clone())),
            plate => plate.to_owned(),
        }
    }

    /// What open jobs are sorted by: one that was not read first, then those with a slot, by day and
    /// time; any time comes last on its day.
    pub fn slot_order(&self) -> (bool, bool, &str, bool, &str) {
        let (day, time) = (self.day.as_str(), self.time.as_str());
        let is_read = self.too_long == 0;
        (is_read, day.is_empty(), day, time.is_empty(), time)
    }

    /// Whether the car was left with the job unfinished: it is at STOP.
    pub fn is_left(&self) -> bool {
        self.ending == Ending::LeftUnfinished.code()
    }

    /// Whether there is still work on the car: it has not ended, or it was left unfinished.
    pub fn is_open(&self) -> bool {
        self.ending.is_empty() || self.is_left() || self.loose > 0 || self.incomplete
    }

    /// Whether the re-torque is still to be looked back on.
    fn next_is_due(&self) -> bool {
        self.next == "retorque_done"
    }

    /// What is due of a job that has ended, each with its day, until it is looked back on; nobody
    /// waits in practice.
    pub fn dues(&self) -> Vec<(DueKind, &str)> {
        let retorque = (DueKind::Retorque, self.due.as_str());
        let recheck = (DueKind::Recheck, self.recheck.as_str());
        let open = |(kind, day): &(DueKind, &str)| {
            let waits = match kind {
                DueKind::Retorque => self.next_is_due(),
                DueKind::Recheck => !self.ending.is_empty() && !self.next.is_empty(),
            };
            waits && !day.is_empty() && !self.practice
        };
        [retorque, recheck].into_iter().filter(open).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_says_of_how_many_entries_it_was_made() {
        let log = LogId("a".to_owned());
        let mut line = Summary::of(&log, &fold([]), &[], None);
        assert_eq!(line.entries(), 0);
        let run = |device: &str, count| Run {
            device: device.to_owned(),
            from: 1,
            to: count,
            count,
            by: String::new(),
        };
        line.runs = vec![run("a", 4), run("b", 3)];
        assert_eq!(line.entries(), 7);
    }

    #[test]
    fn nothing_is_due_in_practice() {
        let mut summary = Summary::of(&LogId("a".to_owned()), &fold([]), &[], None);
        summary.next = "retorque_done".to_owned();
        summary.due = "2026-03-04".to_owned();
        assert_eq!(summary.dues(), [(DueKind::Retorque, "2026-03-04")]);
        summary.practice = true;
        assert_eq!(summary.dues(), []);
    }
}
