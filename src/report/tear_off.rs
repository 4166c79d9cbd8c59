//! The part that is cut off and stays in the car: when the lug nuts are due again, at what
//! torque, who to call, and the code that brings the job to another phone.

use super::block::Slip;
use super::cards::card_value;
use super::due_items::retorque_line;
use super::standing::must_not_drive;
use super::{ReportContext, tail};
use crate::drawing::code::code;
use crate::job::entry::{PersonField, VehicleField};
use crate::text::{self, Paper, ReportWord, paper};
use crate::trade::fastening::CardItem;

/// The tear-off; none where there is neither a code nor a date to keep.
pub(super) fn tear_off(told: &ReportContext) -> Option<Slip> {
    let line = (!must_not_drive(told.sheet)).then(|| retorque_line(told));
    let line = line.flatten();
    if line.is_none() && told.reader.codes.is_none() {
        return None;
    }
    let codes: Vec<String> = told.reader.codes.iter().flatten().cloned().collect();
    Some(Slip {
        title: told.word(ReportWord::TearOff),
        sentence: line,
        rows: rows(told),
        say: say(told, codes.len()),
        codes: drawn(told, &codes),
    })
}

fn rows(told: &ReportContext) -> Vec<(String, String)> {
    let plate = told.sheet.person(PersonField::Plate);
    let family = told.sheet.vehicle(VehicleField::Family);
    let vehicle: Vec<&str> = [plate, family].into_iter().flatten().collect();
    let corners = told.corners().iter().map(|c| text::corner(told.lang, *c));
    let nuts = told.sheet.card(CardItem::LugNuts);
    let us = [&told.reader.made_by, &told.reader.contact].map(String::as_str);
    let us = us.into_iter().filter(|text| !text.is_empty());
    let nuts = nuts.map(|card| card_value(told.lang, told.format, card));
    let rows = [
        (told.word(ReportWord::Vehicle), vehicle.join(", ")),
        (
            told.word(ReportWord::Corners),
            corners.collect::<Vec<_>>().join(", "),
        ),
        (paper(told.lang, Paper::LugNuts), nuts.unwrap_or_default()),
        (
            told.word(ReportWord::Contact),
            us.collect::<Vec<_>>().join(", "),
        ),
        (told.word(ReportWord::Job), told.reader.job.clone()),
    ];
    rows.into_iter()
        .filter(|(_, value)| !value.is_empty())
        .collect()
}

/// What stands beside the codes; where the job does not fit into them, that.
fn say(told: &ReportContext, codes: usize) -> Option<String> {
    told.reader.codes.as_ref().map(|_| {
        let say = match codes {
            0 => Paper::TooMuch,
            1 => Paper::CodeSay,
            of => Paper::CodesSay { of },
        };
        paper(told.lang, say)
    })
}

/// Each code with its caption; one alone needs none but the job's.
fn drawn(told: &ReportContext, codes: &[String]) -> Vec<(String, String)> {
    let of = codes.len();
    let drawn = (1..).zip(codes).filter_map(|(nth, text)| {
        let job = tail(&told.reader.job, 8);
        let caption = match of {
            1 => job.to_owned(),
            of => format!("{job}, {}", paper(told.lang, Paper::CodeOf { nth, of })),
        };
        Some((code(text)?.to_svg(&caption), caption))
    });
    drawn.collect()
}

#[cfg(test)]
mod tests;
