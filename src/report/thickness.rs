//! The thickness of rotors: every reading, the thinnest place and the variation with how sure
//! they are, the limits with their sources.

use super::ReportContext;
use super::block::{Block, Size};
use super::cards::source_line;
use super::reach::reach_line;
use super::runout::{degrees, place_angle};
use super::time::when;
use crate::drawing::Drawing;
use crate::drawing::strip::{self, Row, Strip, Tick};
use crate::job::JobState;
use crate::job::Key;
use crate::job::entry::{AgainstLimit, Gauging, RotorFound, ThicknessCard, ThicknessReading};
use crate::job::found::rotor;
use crate::job::thickness::{Measurement, angle_of, measurements, same_place};
use crate::text::{self, FaceWord, Lang, ReportWord, ThickWord};
use crate::trade::runout::{Bound, Micrometer};
use crate::trade::vehicle::{Axle, Corner};
use crate::units::{Format, Length, LengthUnit, System, Unit};

/// Every measurement of every corner; nothing where nobody took one.
pub(super) fn measured_through(told: &ReportContext) -> Vec<Block> {
    let blocks: Vec<Block> = told
        .corners()
        .iter()
        .flat_map(|corner| at_corner(told, *corner))
        .collect();
    if blocks.is_empty() {
        return blocks;
    }
    let head = Block::Heading(thick(told, ThickWord::Title));
    std::iter::once(head).chain(blocks).collect()
}

fn thick(told: &ReportContext, word: ThickWord) -> String {
    text::thick(told.lang, word).to_owned()
}

fn at_corner(told: &ReportContext, corner: Corner) -> Vec<Block> {
    let all = measurements(told.sheet, corner);
    all.iter().flat_map(|of| one(told, corner, of)).collect()
}

fn one(told: &ReportContext, corner: Corner, of: &Measurement) -> Vec<Block> {
    let title = text::measurement_title(told.lang, of.nth);
    let corner_title = text::corner_title(told.lang, corner);
    let step = step(told.format, of.gauging.micrometer);
    let mut blocks = vec![
        Block::Subheading(format!("{corner_title}, {title}")),
        Block::Rows(vec![(thick(told, ThickWord::Micrometer), step)]),
        readings(told, corner, of),
    ];
    match rotor(told.sheet, corner, of) {
        Ok(found) => blocks.extend(says(told, of, &found)),
        Err(fault) => blocks.push(Block::Sentence(text::thickness_fault(told.lang, fault))),
    }
    blocks
}

/// Every place, as typed with its twin, and over the thinnest.
fn readings(told: &ReportContext, corner: Corner, of: &Measurement) -> Block {
    let measured = || of.measured().map(|(_, thickness)| thickness);
    let thinnest = measured().reduce(Length::min);
    let rows = of.readings.iter().map(|reading| {
        let key = Key::Thickness(corner, of.nth, reading.place);
        let entry = told.sheet.holds(&key);
        let over = reading.thickness.as_ref().zip(thinnest);
        let over = over.map(|(here, thinnest)| told.both(here.length().minus(thinnest), 3));
        vec![
            reading.place.to_string(),
            angle(told.format, told.sheet, corner, of.gauging, reading.place),
            typed(told.lang, told.format, reading),
            over.unwrap_or_default(),
            entry.map_or_else(String::new, |entry| when(told.lang, &entry.at)),
        ]
    });
    let rows = rows.collect();
    let face = |word| text::face(told.lang, word).to_owned();
    let head = vec![
        face(FaceWord::Place),
        face(FaceWord::Angle),
        thick(told, ThickWord::Thickness),
        thick(told, ThickWord::OverThinnest),
        told.word(ReportWord::When),
    ];
    Block::Table { head, rows }
}

fn says(told: &ReportContext, of: &Measurement, found: &RotorFound) -> Vec<Block> {
    let (lang, format) = (told.lang, told.format);
    let row = |word, value| (thick(told, word), value);
    let mut rows = vec![
        row(ThickWord::Thinnest, both(format, found.thinnest)),
        row(ThickWord::UncertainThinnest, told.both(found.u, 4)),
        row(ThickWord::Thickest, both(format, found.thickest)),
        row(ThickWord::Range, told.both(found.range(), 3)),
    ];
    if let Ok(reach) = &found.varies {
        rows.push(row(ThickWord::Variation, reach_line(lang, format, reach)));
        rows.push(row(ThickWord::UncertainVariation, told.both(reach.u, 4)));
    }
    let limits = [
        (Bound::Least, &found.least),
        (Bound::Variation, &found.variation),
    ];
    for (bound, against) in limits {
        rows.extend(limit_rows(told, bound, against.as_ref()));
        if bound == Bound::Least && against.is_some() {
            let band = told.both(found.guard_band, 4);
            rows.push((told.word(ReportWord::GuardBand), band));
        }
    }
    let next = text::next_of_rotor(lang, found.next).to_owned();
    rows.push((text::face(lang, FaceWord::Next).to_owned(), next));
    rows.push((told.word(ReportWord::Rules), found.rules.to_string()));
    let answers = answers(lang, format, found);
    let mut blocks: Vec<Block> = answers.into_iter().map(Block::Sentence).collect();
    let variation = length(format, found.range());
    blocks.push(Block::Drawing {
        size: Size::Wide,
        svg: drawing(lang, format, of, found).to_svg(&text::thickness_alt(lang, &variation)),
    });
    blocks.push(Block::Rows(rows));
    blocks.push(Block::Sentence(thick(told, ThickWord::Common)));
    blocks
}

fn limit_rows(
    told: &ReportContext,
    bound: Bound,
    against: Option<&AgainstLimit<ThicknessCard>>,
) -> Vec<(String, String)> {
    let name = text::bound(told.lang, bound).to_owned();
    let Some(against) = against else {
        let none = text::face(told.lang, FaceWord::NoLimit).to_owned();
        return vec![(name, none)];
    };
    let mut rows = vec![
        (name, printed(told.lang, told.format, &against.card)),
        (
            told.word(ReportWord::Source),
            source_line(told.lang, &against.card.source),
        ),
    ];
    if let Some(judged) = against.judged {
        let percent = told.format.number(100.0 * judged.conformance, 1);
        rows.push((
            text::face(told.lang, FaceWord::Probability).to_owned(),
            format!("{percent}\u{a0}%"),
        ));
    }
    rows
}

/// What a measurement says in two sentences: how thin, and how even.
pub fn answers(lang: Lang, format: Format, found: &RotorFound) -> Vec<String> {
    let limit = |against: &AgainstLimit<ThicknessCard>| format.typed(&against.card.value).line();
    let least = found.least.as_ref();
    let least = least.and_then(|it| Some(text::against_least(lang, it.judged?.result, &limit(it))));
    let least = least.unwrap_or_else(|| text::thick(lang, ThickWord::NoLeast).to_owned());
    let variation = found.variation.as_ref();
    let variation =
        variation.and_then(|it| Some(text::against_limit(lang, it.judged?.result, &limit(it))));
    let variation =
        variation.unwrap_or_else(|| text::thick(lang, ThickWord::NoVariation).to_owned());
    let varies = match &found.varies {
        Ok(reach) => text::varies_by(lang, &reach_line(lang, format, reach), &variation),
        Err(why) => text::undetermined(lang, *why),
    };
    let thinnest = length(format, found.thinnest);
    vec![
        text::thinnest_at(lang, &thinnest, found.place, &least),
        varies,
    ]
}

/// A limit as printed, with its twin.
pub fn printed(lang: Lang, format: Format, card: &ThicknessCard) -> String {
    let twin = format.typed_twin(&card.value).line();
    let value = format.typed(&card.value).line();
    format!("{value} {}", text::also_value(lang, &twin))
}

/// The name of a limit: what it is of, and on which axle.
pub fn limit_name(lang: Lang, (axle, bound): (Axle, Bound)) -> String {
    format!(
        "{}, {}",
        text::bound(lang, bound),
        text::rotors_of(lang, axle)
    )
}

/// A reading as typed with its twin, or that it was skipped.
pub fn typed(lang: Lang, format: Format, reading: &ThicknessReading) -> String {
    match &reading.thickness {
        None => text::face(lang, FaceWord::Skipped).to_owned(),
        Some(typed) => format!(
            "{} {}",
            format.typed(typed).line(),
            text::also_value(lang, &format.typed_twin(typed).line())
        ),
    }
}

/// The angle of a place: that of the run-out where it has as many places, else its equal step.
pub fn angle(
    format: Format,
    sheet: &JobState,
    corner: Corner,
    gauging: Gauging,
    place: u8,
) -> String {
    match same_place(sheet, corner, gauging, place) {
        Some(reading) => place_angle(format, reading),
        None => degrees(format, angle_of(sheet, corner, gauging, place)),
    }
}

/// The step of a micrometer as it is written on it.
pub fn step(format: Format, of: Micrometer) -> String {
    let (unit, decimals) = (of.unit(), of.decimals());
    format.length_in(of.division(), unit, decimals).line()
}

/// A thickness in the reader's unit: thousandths of a millimetre, or ten-thousandths of an inch.
fn length(format: Format, length: Length) -> String {
    match format.system {
        System::Metric => format.length_in(length, LengthUnit::Millimetre, 3).line(),
        System::Us => format.length_in(length, LengthUnit::Inch, 4).line(),
    }
}

fn both(format: Format, of: Length) -> String {
    let twin = length(format.other(), of);
    format!("{} ({twin})", length(format, of))
}

/// Every place over the thinnest on one line, with the most variation and how sure it is.
pub fn drawing(lang: Lang, format: Format, of: &Measurement, found: &RotorFound) -> Drawing {
    let unit = match format.system {
        System::Metric => LengthUnit::Micrometre,
        System::Us => LengthUnit::Thou,
    };
    let at = |length: Length| length.in_unit(unit);
    let over = of.measured();
    let over: Vec<f64> = over.map(|(_, one)| at(one.minus(found.thinnest))).collect();
    let band = found.varies.as_ref().ok();
    let band = band.map(|reach| (at(reach.low), at(reach.high)));
    let range = at(found.range());
    let reaches = band.map_or(range, |(_, high)| high.max(range));
    let limit = found.variation.as_ref().map(|against| {
        let card = &against.card.value;
        let value = format.typed(card).line();
        let source = crate::trade::play::LimitSource::Manufacturer;
        (at(card.length()), text::limit_name(lang, &value, source))
    });
    let highest = limit.as_ref().map_or(reaches, |(at, _)| reaches.max(*at));
    let places = strip::ticks(0.0, highest);
    let labels = super::scale::labels(format, &places);
    let ticks: Vec<Tick> = places
        .iter()
        .zip(&labels)
        .map(|(at, label)| Tick { at: *at, label })
        .collect();
    let rows = [Row {
        label: "",
        rounds: &over,
        band,
    }];
    Strip {
        ticks: &ticks,
        unit: unit.symbol(),
        limit: limit
            .as_ref()
            .map(|(at, name)| strip::Limit { at: *at, name }),
        rows: &rows,
    }
    .drawing()
}

/// One place in one line, for the list of what was taken back or told twice.
pub(super) fn reading_line(told: &ReportContext, reading: &ThicknessReading) -> String {
    let title = text::measurement_title(told.lang, reading.run);
    let corner = text::corner_title(told.lang, reading.corner);
    let place = text::face(told.lang, FaceWord::Place);
    let value = typed(told.lang, told.format, reading);
    format!("{corner}, {title}, {place} {}: {value}", reading.place)
}

/// What was found in one line, for the same list.
pub(super) fn found_line(told: &ReportContext, found: &RotorFound) -> String {
    let corner = text::corner_title(told.lang, found.corner);
    let title = text::measurement_title(told.lang, found.run);
    let answers = answers(told.lang, told.format, found).join(" ");
    format!("{corner}, {title}: {answers}")
}

/// A limit in one line.
pub(super) fn limit_line(told: &ReportContext, card: &ThicknessCard) -> String {
    let name = limit_name(told.lang, (card.axle, card.bound));
    format!("{name}: {}", printed(told.lang, told.format, card))
}

#[cfg(test)]
mod tests;
