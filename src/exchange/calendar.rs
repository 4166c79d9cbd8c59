//! What is due, as a calendar file (RFC 5545) that any calendar can take in.
//!
//! It names the vehicle and what is to be done, never the customer.

use crate::exchange::envelope::MADE_BY;
use crate::job::ending::retorque_odometer;
use crate::job::entry::{Due, DueKind, Entry, Event, PersonField, VehicleField};
use crate::job::{JobState, Key};
use crate::report::{retorque_sentence, retorque_to_do, stamp};
use crate::text::{self, Lang};
use crate::trade::day::day_of;
use crate::trade::wheel_end::{Step, StepKey};
use crate::units::Format;

/// Octets of a line before it is folded (RFC 5545 3.1).
const LINE: usize = 75;
/// When the calendar speaks up on the day: nine in the morning.
const ALARM: &str = "PT9H";

/// The calendar of these jobs; `None` if nothing is due in them.
///
/// Made from the entries alone, so that the same jobs give the same file.
pub fn calendar<'a>(
    lang: Lang,
    format: Format,
    jobs: impl IntoIterator<Item = &'a JobState>,
) -> Option<String> {
    let jobs = jobs.into_iter();
    of_events(
        lang,
        jobs.flat_map(|sheet| events(lang, format, sheet)).collect(),
    )
}

/// The calendar of these events; `None` if there is none.
pub fn of_events(lang: Lang, events: Vec<String>) -> Option<String> {
    if events.is_empty() {
        return None;
    }
    let mut lines = vec![
        "BEGIN:VCALENDAR".to_owned(),
        "VERSION:2.0".to_owned(),
        format!(
            "PRODID:-//hubslate//{MADE_BY}//{}",
            lang.code().to_ascii_uppercase()
        ),
    ];
    lines.extend(events);
    lines.push("END:VCALENDAR".to_owned());
    Some(lines.iter().map(|line| folded(line) + "\r\n").collect())
}

/// The lines of what is due in one job and not yet done.
pub fn events(lang: Lang, format: Format, sheet: &JobState) -> Vec<String> {
    let retorque = || {
        sheet.reply(StepKey::once(Step::RetorqueDone)).is_none() && retorque_to_do(sheet).is_some()
    };
    let open = |kind: &DueKind| *kind != DueKind::Retorque || retorque();
    let kinds = DueKind::ALL.iter().filter(|kind| open(kind));
    let due = kinds.filter_map(|kind| {
        let entry = sheet.holds(&Key::Due(*kind))?;
        match &entry.what {
            Event::Due(due) => event(lang, format, sheet, entry, due),
            _ => None,
        }
    });
    due.flatten().collect()
}

fn event(
    lang: Lang,
    format: Format,
    sheet: &JobState,
    entry: &Entry,
    due: &Due,
) -> Option<Vec<String>> {
    let day = digits(&day_of(&due.date)?.to_string());
    let noted = digits(&stamp(entry.at.utc_ms, 0));
    let (date, time) = noted.split_at_checked(8)?;
    let vehicle = sheet
        .person(PersonField::Plate)
        .or_else(|| sheet.vehicle(VehicleField::Family))
        .unwrap_or_default();
    let title = format!("{} {vehicle}", text::due_kind(lang, due.kind));
    let title = title.trim_end();
    let recorded = match due.kind {
        DueKind::Recheck => escaped(title),
        DueKind::Retorque => escaped(&retorque_sentence(lang, format, sheet, due)),
    };
    let title = match retorque_odometer(sheet, due) {
        Some((_, then)) => text::due_at(lang, title, &format.typed(&then).line()),
        None => title.to_owned(),
    };
    let title = escaped(&title);
    Some(vec![
        "BEGIN:VEVENT".to_owned(),
        format!("UID:{}", entry.id.0),
        format!("DTSTAMP:{date}T{time}00Z"),
        format!("DTSTART;VALUE=DATE:{day}"),
        format!("SUMMARY:{title}"),
        format!("DESCRIPTION:{recorded}"),
        "TRANSP:TRANSPARENT".to_owned(),
        "BEGIN:VALARM".to_owned(),
        "ACTION:DISPLAY".to_owned(),
        format!("TRIGGER:{ALARM}"),
        format!("DESCRIPTION:{title}"),
        "END:VALARM".to_owned(),
        "END:VEVENT".to_owned(),
    ])
}

fn digits(time: &str) -> String {
    time.chars().filter(char::is_ascii_digit).collect()
}

/// A text as the value of a property.
///
/// # Source
/// RFC 5545 3.3.11.
pub fn escaped(text: &str) -> String {
    text.replace('\\', "\\\\")
        .replace(';', "\\;")
        .replace(',', "\\,")
        .replace("\r\n", "\\n")
        .replace(['\n', '\r'], "\\n")
}

/// A line in pieces of at most 75 octets, each after the first behind one space; no character is
/// cut in two.
///
/// # Source
/// RFC 5545 3.1.
pub fn folded(line: &str) -> String {
    let mut out = String::new();
    let mut octets = 0;
    for c in line.chars() {
        if octets + c.len_utf8() > LINE {
            out.push_str("\r\n ");
            octets = 1;
        }
        out.push(c);
        octets += c.len_utf8();
    }
    out
}
