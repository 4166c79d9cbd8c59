//! What one job adds to what a shop counts: minutes, what was proved, how it was noted.
//!
//! Pure facts of one sheet; over many jobs they are put together in `exchange`. Nothing here asks
//! who did it.

use crate::job::entry::{Ending, Entry, Event, Reply};
use crate::job::key::Key;
use crate::job::kit::clicked;
use crate::job::progress::{Status, status};
use crate::job::proof::after;
use crate::job::sheet::JobState;
use crate::map::OrderedMap;
use crate::trade::answer::Answer;
use crate::trade::damage::{CameBackFor, PartReading};
use crate::trade::money::{Line, LineKind};
use crate::trade::play::{After, Decision};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{
    Check, HoldPoint, Item, ItemKind, ItemState, Phase, PlannedStep, ROUNDS, Sign, Step, StepKey,
    sign_gone,
};
use crate::words;

/// So many of so many.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Part {
    /// How many it holds for.
    pub of: usize,
    /// How many there are.
    pub all: usize,
}

words! {
    /// What is counted of each job, by its van.
    pub enum Measure {
        /// Hubs that were decided to be replaced and proved to be mended by it.
        Mended = "mended",
        /// Jobs that came back with the same corner.
        CameBack = "came_back",
        /// Entries that were noted later than they were done.
        NotedLater = "noted_later",
        /// Wheels whose nuts clicked in less than four seconds.
        QuickNuts = "quick_nuts",
        /// Hold points passed with a reason instead of an answer.
        Reasons = "reasons",
    }
}

/// Five lug nuts that all click within less than this were not all turned to their torque
/// (common practice, no source).
const QUICK_MS: i64 = 4_000;
/// Fewer than five are quickly done.
const QUICK_NUTS: usize = 5;
/// A told time closer than this to the clock's is the same moment, as in the report.
const SAME_MS: u64 = 60_000;
const MINUTE_MS: i64 = 60_000;

impl JobState {
    /// How the removed part of a corner was read.
    pub fn removed_part(&self, corner: Corner) -> Option<&PartReading> {
        match &self.holds(&Key::RemovedPart(corner))?.what {
            Event::RemovedPart(_, reading) => Some(reading),
            _ => None,
        }
    }

    /// Why the job came back, if that was told.
    pub fn came_back_for(&self) -> Option<CameBackFor> {
        match self.holds(&Key::CameBackFor).map(|entry| &entry.what) {
            Some(Event::CameBackFor(cause)) => Some(*cause),
            _ => None,
        }
    }
}

/// The entry that ended the job as finished.
pub fn finished(sheet: &JobState) -> Option<&Entry> {
    let ended = sheet.ended().map(|ended| ended.ending);
    sheet
        .holds(&Key::Ended)
        .filter(|_| ended == Some(Ending::Finished))
}

/// The phone of the van that did the job: the one that recorded most of the work at the car, of two
/// the one that began it. Empty before any was done: whoever prepares a job or follows it up did not
/// do it.
pub fn van(sheet: &JobState) -> &str {
    let mut phones: OrderedMap<&str, usize> = OrderedMap::new();
    let work = || sheet.counting().filter(|entry| is_at_the_car(&entry.what));
    for entry in work() {
        *phones.or_default(entry.device.as_str()) += 1;
    }
    let most = phones.values().max().copied().unwrap_or(0);
    let mut first = work().map(|entry| entry.device.as_str());
    first
        .find(|phone| phones.get(phone) == Some(&most))
        .unwrap_or_default()
}

/// Whether it is work that is done at the car.
fn is_at_the_car(what: &Event) -> bool {
    match what {
        Event::Answered(key, _) => !matches!(
            key.step.row().phase,
            Phase::Pack | Phase::HandOver | Phase::LookBack
        ),
        Event::Moved(_) | Event::Reading(_) | Event::Runout(_) | Event::Thickness(_) => true,
        _ => false,
    }
}

/// The letters of the invoices that a phone gave a number; empty where it gave none.
pub fn letters<'a>(sheet: &'a JobState, phone: &str) -> &'a str {
    let mut own = sheet.invoices().filter(|(entry, _)| entry.device == phone);
    let number = own
        .next()
        .map_or("", |(_, invoice)| invoice.number.as_str());
    number.trim_end_matches(|c: char| c.is_ascii_digit())
}

/// The phone that did the job, with its running number when its part was done: what it fitted left
/// its stock then.
pub fn done_at<'a>(sheet: &'a JobState, end: &'a Entry) -> (&'a str, u64) {
    let van = van(sheet);
    if van.is_empty() || van == end.device {
        return (&end.device, end.n);
    }
    let own = sheet.counting().filter(|entry| entry.device == van);
    let work = own.filter(|entry| is_at_the_car(&entry.what));
    (van, work.map(|entry| entry.n).max().unwrap_or_default())
}

fn when(entry: &Entry) -> i64 {
    entry.at.recorded.unwrap_or(entry.at.utc_ms)
}

/// Minutes from the look at the site to the end, by one phone's clock and on one day, less those
/// that the car waited for an answer; other breaks are not known and count. `None` where that was
/// not told, or by two phones, or over night.
pub fn real_minutes(sheet: &JobState) -> Option<u32> {
    let end = finished(sheet)?;
    let begin = sheet.answered(StepKey::once(Step::SiteLook))?;
    let one_day = begin.at.day().is_some() && begin.at.day() == end.at.day();
    let took = when(end).checked_sub(when(begin))?;
    let took = took.checked_sub(waited_ms(sheet, &begin.device))?;
    let fits = begin.device == end.device && one_day && took > 0;
    fits.then(|| u32::try_from(took / MINUTE_MS).ok()).flatten()
}

/// How long the car waited for its customer's answers, as one phone noted it.
fn waited_ms(sheet: &JobState, device: &str) -> i64 {
    let (mut since, mut waited) = (None, 0_i64);
    for entry in sheet.counting().filter(|entry| entry.device == device) {
        match &entry.what {
            Event::Answered(key, Reply::Done) if key.step == Step::Wait => {
                since.get_or_insert(when(entry));
            }
            Event::Consent(_) => {
                let begun = since.take().unwrap_or(when(entry));
                waited = waited.saturating_add(when(entry).saturating_sub(begun).max(0));
            }
            _ => {}
        }
    }
    waited
}

/// Minutes that the estimate sells: the quantity of a labour line is read as hours. `None` without
/// a labour line.
pub fn sold_minutes(sheet: &JobState) -> Option<u32> {
    let estimate = sheet.price()?.estimate.as_ref()?;
    let labour = |line: &&Line| line.kind == LineKind::Labour;
    let hours: Vec<f64> = estimate
        .lines
        .iter()
        .filter(labour)
        .map(|line| line.quantity.value())
        .collect();
    let minutes = hours.iter().sum::<f64>() * 60.0;
    // More than a week is no repair here.
    let fits = !hours.is_empty() && (0.0..10_080.0).contains(&minutes);
    fits.then(|| minutes.round() as u32)
}

/// How the hub of a corner stands; nothing where it was never touched.
fn hub(sheet: &JobState, corner: Corner) -> Option<ItemState> {
    sheet.item(Item {
        corner,
        group: ItemKind::Hub,
        number: 1,
    })
}

/// Whether a new part was put in at a corner.
pub fn is_replaced(sheet: &JobState, corner: Corner) -> bool {
    hub(sheet, corner) == Some(ItemState::Done)
}

/// Whether the old part of a corner is off: it can be read.
pub fn is_off_or_new(sheet: &JobState, corner: Corner) -> bool {
    hub(sheet, corner).is_some()
}

/// Whether the new part of a corner was proved to have mended what its old one was replaced for:
/// by the dial, by hand and by ear, and on the road. `None` where it was not judged.
pub fn mended(sheet: &JobState, corner: Corner) -> Option<bool> {
    finished(sheet)?;
    if !is_replaced(sheet, corner) {
        return None;
    }
    match (after(sheet, corner), sign_stayed(sheet)) {
        (After::Blocked { .. }, _) | (_, true) => Some(false),
        (After::Pass { .. }, false) => Some(true),
        (After::NotJudged { .. }, false) => None,
    }
}

/// Whether a sign of the road test before was still there after it.
fn sign_stayed(sheet: &JobState) -> bool {
    let is_gone = |check: &Check| Sign::ALL.iter().any(|sign| sign_gone(*sign) == *check);
    match sheet.reply(StepKey::once(Step::ProveRoad)) {
        Some(Reply::Checked(checks)) => checks
            .iter()
            .any(|(check, answer)| is_gone(check) && *answer == Answer::No),
        _ => false,
    }
}

/// Whether the decision on a corner that stands was to put a new part in.
pub fn decided_to_replace(sheet: &JobState, corner: Corner) -> bool {
    sheet
        .decided(corner)
        .is_some_and(|it| matches!(it.decision, Decision::Replace | Decision::Stop))
}

/// Of the entries that count, those of which another time was told than that of the clock.
pub fn noted_later(sheet: &JobState) -> Part {
    let recorded_later = |entry: &&Entry| {
        let recorded = entry.at.recorded;
        recorded.is_some_and(|recorded| recorded.abs_diff(entry.at.utc_ms) >= SAME_MS)
    };
    Part {
        of: sheet.counting().filter(recorded_later).count(),
        all: sheet.counting().count(),
    }
}

/// Of the wheels whose nuts were turned one by one, those that took less than four seconds.
pub fn quick_nuts(sheet: &JobState) -> Part {
    let mut clicks: OrderedMap<(StepKey, &str), Vec<(u8, i64)>> = OrderedMap::new();
    for entry in sheet.counting() {
        let Event::Moved(moved) = &entry.what else {
            continue;
        };
        if moved.step.step != Step::TurnLugNuts || moved.to != ItemState::Done {
            continue;
        }
        let wheel = clicks.or_default((moved.step, entry.device.as_str()));
        for item in &moved.items {
            // The last click of a nut counts: a pass may have begun again.
            wheel.retain(|(number, _)| *number != item.number);
            wheel.push((item.number, entry.at.utc_ms));
        }
    }
    let wheels = clicks.into_values().filter(|it| QUICK_NUTS <= it.len());
    let took = wheels.map(|wheel| {
        let times = wheel.iter().map(|(_, at)| *at);
        let first = times.clone().min().unwrap_or(0);
        times.max().unwrap_or(0).saturating_sub(first)
    });
    took.fold(Part::default(), |part, took| Part {
        of: part.of + usize::from(took < QUICK_MS),
        all: part.all + 1,
    })
}

/// Of the questions behind the hold points that were settled, those passed with a reason instead:
/// the shove, the readings before, the nut at its spec, the pedal.
pub fn passed_with_reason(sheet: &JobState, steps: &[PlannedStep]) -> Part {
    let behind = steps.iter().filter(|planned| is_behind_a_hold(planned.key));
    behind.fold(Part::default(), |part, planned| {
        match status(sheet, planned) {
            Status::Open | Status::Held | Status::Partly(..) => part,
            settled => Part {
                of: part.of + usize::from(settled != Status::Done),
                all: part.all + 1,
            },
        }
    })
}

const fn is_behind_a_hold(key: StepKey) -> bool {
    match key.step.row().proves {
        Some(HoldPoint::Stand | HoldPoint::Nut | HoldPoint::Pedal) => true,
        Some(HoldPoint::Before) => key.nth <= ROUNDS,
        _ => false,
    }
}

/// How often each wrench clicked, by the phone that recorded it and the wrench's name: two vans may
/// have a wrench of one name.
pub fn clicks(sheet: &JobState) -> OrderedMap<(&str, &str), u32> {
    let mut all: OrderedMap<(&str, &str), u32> = OrderedMap::new();
    for (entry, name) in clicked(sheet) {
        let count = all.or_default((entry.device.as_str(), name));
        *count = count.saturating_add(1);
    }
    all
}

#[cfg(test)]
#[path = "tally/tests.rs"]
mod tests;
