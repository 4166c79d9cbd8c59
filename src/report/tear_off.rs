//! The part that is cut off and stays in the car: when the lug nuts are due again, at what
//! torque, who to call, and the code that brings the job to another phone.

use super::block::Slip;
use super::due_items::retorque_line;
use super::specs::spec_value;
use super::standing::must_not_drive;
use super::{ReportContext, tail};
use crate::drawing::code::code;
use crate::job::entry::{PersonField, VehicleField};
use crate::text::{self, Paper, ReportWord, paper};
use crate::trade::fastening::SpecItem;

/// The tear-off; none where there is neither a code nor a date to keep.
pub(super) fn tear_off(context: &ReportContext) -> Option<Slip> {
    let line = (!must_not_drive(context.sheet)).then(|| retorque_line(context));
    let line = line.flatten();
    if line.is_none() && context.reader.codes.is_none() {
        return None;
    }
    let codes: Vec<String> = context.reader.codes.iter().flatten().cloned().collect();
    Some(Slip {
        title: context.word(ReportWord::TearOff),
        sentence: line,
        rows: rows(context),
        say: say(context, codes.len()),
        codes: drawn(context, &codes),
    })
}

fn rows(context: &ReportContext) -> Vec<(String, String)> {
    let plate = context.sheet.person(PersonField::Plate);
    let family = context.sheet.vehicle(VehicleField::Family);
    let vehicle: Vec<&str> = [plate, family].into_iter().flatten().collect();
    let corners = context
        .corners()
        .iter()
        .map(|c| text::corner(context.lang, *c));
    let nuts = context.sheet.spec(SpecItem::LugNuts);
    let us = [&context.reader.made_by, &context.reader.contact].map(String::as_str);
    let us = us.into_iter().filter(|text| !text.is_empty());
    let nuts = nuts.map(|spec| spec_value(context.lang, context.format, spec));
    let rows = [
        (context.word(ReportWord::Vehicle), vehicle.join(", ")),
        (
            context.word(ReportWord::Corners),
            corners.collect::<Vec<_>>().join(", "),
        ),
        (
            text::spec_item(context.lang, SpecItem::LugNuts, context.plan.fitted.fixing).to_owned(),
            nuts.unwrap_or_default(),
        ),
        (
            context.word(ReportWord::Contact),
            us.collect::<Vec<_>>().join(", "),
        ),
        (context.word(ReportWord::Job), context.reader.job.clone()),
    ];
    rows.into_iter()
        .filter(|(_, value)| !value.is_empty())
        .collect()
}

/// What stands beside the codes; where the job does not fit into them, that.
fn say(context: &ReportContext, codes: usize) -> Option<String> {
    context.reader.codes.as_ref().map(|_| {
        let say = match codes {
            0 => Paper::TooMuch,
            1 => Paper::CodeSay,
            of => Paper::CodesSay { of },
        };
        paper(context.lang, say)
    })
}

/// Each code with its caption; one alone needs none but the job's.
fn drawn(context: &ReportContext, codes: &[String]) -> Vec<(String, String)> {
    let of = codes.len();
    let drawn = (1..).zip(codes).filter_map(|(nth, text)| {
        let job = tail(&context.reader.job, 8);
        let caption = match of {
            1 => job.to_owned(),
            of => format!("{job}, {}", paper(context.lang, Paper::CodeOf { nth, of })),
        };
        Some((code(text)?.to_svg(&caption), caption))
    });
    drawn.collect()
}

#[cfg(test)]
mod tests;
