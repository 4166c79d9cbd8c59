//! The thickness of rotors: every reading, the thinnest place and the variation with how sure
//! they are, the limits with their sources.

use super::ReportContext;
use super::block::{Block, Size};
use super::reach::reach_line;
use super::runout::{degrees, place_angle};
use super::specs::source_line;
use super::time::when;
use crate::drawing::Drawing;
use crate::drawing::strip::{self, Row, Strip, Tick};
use crate::job::JobState;
use crate::job::Key;
use crate::job::entry::{AgainstLimit, Gauging, RotorFound, ThicknessReading, ThicknessSpec};
use crate::job::found::rotor;
use crate::job::thickness::{Measurement, angle_of, measurements, same_place};
use crate::text::{self, FaceWord, Lang, ReportWord, ThickWord};
use crate::trade::runout::{Bound, Micrometer};
use crate::trade::vehicle::{Axle, Corner};
use crate::units::{Format, Length, LengthUnit, System, Unit};

/// Every measurement of every corner; nothing where nobody took one.
pub(super) fn measured_through(context: &ReportContext) -> Vec<Block> {
    let blocks: Vec<Block> = context
        .corners()
        .iter()
        .flat_map(|corner| at_corner(context, *corner))
        .collect();
    if blocks.is_empty() {
        return blocks;
    }
    let head = Block::Heading(thick(context, ThickWord::Title));
    std::iter::once(head).chain(blocks).collect()
}

fn thick(context: &ReportContext, word: ThickWord) -> String {
    text::thick(context.lang, word).to_owned()
}

fn at_corner(context: &ReportContext, corner: Corner) -> Vec<Block> {
    let all = measurements(context.sheet, corner);
    all.iter().flat_map(|of| one(context, corner, of)).collect()
}

fn one(context: &ReportContext, corner: Corner, of: &Measurement) -> Vec<Block> {
    let title = text::measurement_title(context.lang, of.nth);
    let corner_title = text::corner_title(context.lang, corner);
    let step = step(context.format, of.gauging.micrometer);
    let mut blocks = vec![
        Block::Subheading(format!("{corner_title}, {title}")),
        Block::Rows(vec![(thick(context, ThickWord::Micrometer), step)]),
        readings(context, corner, of),
    ];
    match rotor(context.sheet, corner, of) {
        Ok(found) => blocks.extend(says(context, of, &found)),
        Err(fault) => blocks.push(Block::Sentence(text::thickness_fault(context.lang, fault))),
    }
    blocks
}

/// Every place, as typed with its twin, and over the thinnest.
fn readings(context: &ReportContext, corner: Corner, of: &Measurement) -> Block {
    let measured = || of.measured().map(|(_, thickness)| thickness);
    let thinnest = measured().reduce(Length::min);
    let rows = of.readings.iter().map(|reading| {
        let key = Key::Thickness(corner, of.nth, reading.place);
        let entry = context.sheet.holds(&key);
        let over = reading.thickness.as_ref().zip(thinnest);
        let over = over.map(|(here, thinnest)| context.both(here.length().minus(thinnest), 3));
        vec![
            reading.place.to_string(),
            angle(
                context.format,
                context.sheet,
                corner,
                of.gauging,
                reading.place,
            ),
            typed(context.lang, context.format, reading),
            over.unwrap_or_default(),
            entry.map_or_else(String::new, |entry| when(context.lang, &entry.at)),
        ]
    });
    let rows = rows.collect();
    let face = |word| text::face(context.lang, word).to_owned();
    let head = vec![
        face(FaceWord::Place),
        face(FaceWord::Angle),
        thick(context, ThickWord::Thickness),
        thick(context, ThickWord::OverThinnest),
        context.word(ReportWord::When),
    ];
    Block::Table { head, rows }
}

fn says(context: &ReportContext, of: &Measurement, found: &RotorFound) -> Vec<Block> {
    let (lang, format) = (context.lang, context.format);
    let row = |word, value| (thick(context, word), value);
    let mut rows = vec![
        row(ThickWord::Thinnest, both(format, found.thinnest)),
        row(ThickWord::UncertainThinnest, context.both(found.u, 4)),
        row(ThickWord::Thickest, both(format, found.thickest)),
        row(ThickWord::Range, context.both(found.range(), 3)),
    ];
    if let Ok(reach) = &found.varies {
        rows.push(row(ThickWord::Variation, reach_line(lang, format, reach)));
        rows.push(row(ThickWord::UncertainVariation, context.both(reach.u, 4)));
    }
    let limits = [
        (Bound::Least, &found.least),
        (Bound::Variation, &found.variation),
    ];
    for (bound, against) in limits {
        rows.extend(limit_rows(context, bound, against.as_ref()));
        if bound == Bound::Least && against.is_some() {
            let band = context.both(found.guard_band, 4);
            rows.push((context.word(ReportWord::GuardBand), band));
        }
    }
    let next = text::next_of_rotor(lang, found.next).to_owned();
    rows.push((text::face(lang, FaceWord::Next).to_owned(), next));
    rows.push((context.word(ReportWord::Rules), found.rules.to_string()));
    let answers = answers(lang, format, found);
    let mut blocks: Vec<Block> = answers.into_iter().map(Block::Sentence).collect();
    let variation = length(format, found.range());
    blocks.push(Block::Drawing {
        size: Size::Wide,
        svg: drawing(lang, format, of, found).to_svg(&text::thickness_alt(lang, &variation)),
    });
    blocks.push(Block::Rows(rows));
    blocks.push(Block::Sentence(thick(context, ThickWord::Common)));
    blocks
}

fn limit_rows(
    context: &ReportContext,
    bound: Bound,
    against: Option<&AgainstLimit<ThicknessSpec>>,
) -> Vec<(String, String)> {
    let name = text::bound(context.lang, bound).to_owned();
    let Some(against) = against else {
        let none = text::face(context.lang, FaceWord::NoLimit).to_owned();
        return vec![(name, none)];
    };
    let mut rows = vec![
        (name, printed(context.lang, context.format, &against.spec)),
        (
            context.word(ReportWord::Source),
            source_line(context.lang, &against.spec.source),
        ),
    ];
    if let Some(judged) = against.judged {
        let percent = context.format.number(100.0 * judged.conformance, 1);
        rows.push((
            text::face(context.lang, FaceWord::Probability).to_owned(),
            format!("{percent}\u{a0}%"),
        ));
    }
    rows
}

/// What a measurement says in two sentences: how thin, and how even.
pub fn answers(lang: Lang, format: Format, found: &RotorFound) -> Vec<String> {
    let limit = |against: &AgainstLimit<ThicknessSpec>| format.typed(&against.spec.value).line();
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
pub fn printed(lang: Lang, format: Format, spec: &ThicknessSpec) -> String {
    let twin = format.typed_twin(&spec.value).line();
    let value = format.typed(&spec.value).line();
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
        let spec = &against.spec.value;
        let value = format.typed(spec).line();
        let source = crate::trade::play::LimitSource::Manufacturer;
        (at(spec.length()), text::limit_name(lang, &value, source))
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
        limits: limit
            .as_ref()
            .map(|(at, name)| strip::Limit { at: *at, name })
            .as_slice(),
        rows: &rows,
    }
    .drawing()
}

/// One place in one line, for the list of what was taken back or told twice.
pub(super) fn reading_line(context: &ReportContext, reading: &ThicknessReading) -> String {
    let title = text::measurement_title(context.lang, reading.run);
    let corner = text::corner_title(context.lang, reading.corner);
    let place = text::face(context.lang, FaceWord::Place);
    let value = typed(context.lang, context.format, reading);
    format!("{corner}, {title}, {place} {}: {value}", reading.place)
}

/// What was found in one line, for the same list.
pub(super) fn found_line(context: &ReportContext, found: &RotorFound) -> String {
    let corner = text::corner_title(context.lang, found.corner);
    let title = text::measurement_title(context.lang, found.run);
    let answers = answers(context.lang, context.format, found).join(" ");
    format!("{corner}, {title}: {answers}")
}

/// A limit in one line.
pub(super) fn limit_line(context: &ReportContext, spec: &ThicknessSpec) -> String {
    let name = limit_name(context.lang, (spec.axle, spec.bound));
    format!("{name}: {}", printed(context.lang, context.format, spec))
}

#[cfg(test)]
mod tests;
