//! The runs round a face: every reading, the waves in it, the limit with its source, and the
//! rotor on every stud.

use super::ReportContext;
use super::block::{Block, Size};
use super::measured::dial_rows;
use super::reach::{how_sure, reach_line};
use super::specs::source_line;
use super::time::when;
use crate::drawing::Drawing;
use crate::drawing::polar::{Dot, Polar};
use crate::job::Key;
use crate::job::entry::{FaceFound, RunoutReading, RunoutSpec, ShapeFound, WaveFound};
use crate::job::found::face as face_found;
use crate::job::runout::{Angles, Found, Run, angle, found, runs, studs};
use crate::text::{self, FaceWord, Lang, ReportWord, Say};
use crate::trade::runout::{Form, Studs};
use crate::trade::vehicle::Corner;
use crate::units::{Angle, AngleUnit, Format, Length, LengthUnit, Unit};

/// Points of the drawn wave.
const CURVE: u8 = 36;

/// Every run of every corner; nothing where nobody read one.
pub(super) fn runs_round(context: &ReportContext) -> Vec<Block> {
    let corners = context.corners().iter();
    let blocks: Vec<Block> = corners
        .flat_map(|corner| at_corner(context, *corner))
        .collect();
    if blocks.is_empty() {
        return blocks;
    }
    let head = Block::Heading(face(context, FaceWord::Title));
    std::iter::once(head).chain(blocks).collect()
}

fn face(context: &ReportContext, word: FaceWord) -> String {
    text::face(context.lang, word).to_owned()
}

fn at_corner(context: &ReportContext, corner: Corner) -> Vec<Block> {
    let runs = runs(context.sheet, corner);
    runs.iter()
        .flat_map(|run| one(context, corner, &runs, run))
        .collect()
}

fn one(context: &ReportContext, corner: Corner, runs: &[Run], run: &Run) -> Vec<Block> {
    let title = text::run_title(context.lang, run.nth, run.setup.surface);
    let corner_title = text::corner_title(context.lang, corner);
    let mut blocks = vec![
        Block::Subheading(format!("{corner_title}, {title}")),
        Block::Rows(taken(context, run)),
        readings(context, corner, run),
    ];
    match face_found(context.sheet, corner, run) {
        Ok(face) => {
            let live = found(context.sheet, runs, run).ok();
            blocks.extend(says(context, run, &face, live.as_ref()));
        }
        Err(fault) => blocks.push(Block::Sentence(text::series_fault(context.lang, fault))),
    }
    blocks
}

fn taken(context: &ReportContext, run: &Run) -> Vec<(String, String)> {
    let cleaned = text::answer(context.lang, run.setup.cleaned).to_owned();
    let angles = text::angles(context.lang, run.angles()).to_owned();
    let mut rows = vec![
        (face(context, FaceWord::Angles), angles),
        (face(context, FaceWord::Stud), run.setup.stud.to_string()),
        (face(context, FaceWord::Cleaned), cleaned),
    ];
    let radius = run.readings.first().and_then(|first| first.radius.as_ref());
    if let Some(radius) = radius {
        let radius = context.format.typed(radius).line();
        rows.push((face(context, FaceWord::Radius), radius));
    }
    rows.extend(dial_rows(context, &run.dial));
    rows
}

/// Every place, in the needle's own divisions and from the first one on.
fn readings(context: &ReportContext, corner: Corner, run: &Run) -> Block {
    let heights: Vec<Length> = run.series().map_or_else(
        |_| Vec::new(),
        |series| {
            let spots = series.spots().iter();
            spots.map(|spot| run.dial.worth(spot.needle)).collect()
        },
    );
    let first = heights.first().copied();
    let mut heights = heights.into_iter();
    let rows = run.readings.iter().map(|reading| {
        let key = Key::Runout(corner, run.nth, reading.place);
        let entry = context.sheet.holds(&key);
        let (needle, height) = match &reading.divisions {
            None => (face(context, FaceWord::Skipped), String::new()),
            Some(needle) => {
                let height = heights.next().zip(first);
                let height = height.map(|(height, first)| context.both(height.minus(first), 3));
                (
                    context.format.marked(needle.as_typed()),
                    height.unwrap_or_default(),
                )
            }
        };
        let counts = match reading.left_out {
            Some(why) => text::left_out(context.lang, why).to_owned(),
            None => context.say(Say::Yes),
        };
        vec![
            reading.place.to_string(),
            place_angle_in(context.format, run, reading),
            needle,
            height,
            counts,
            entry.map_or_else(String::new, |entry| when(context.lang, &entry.at)),
        ]
    });
    let rows = rows.collect();
    let mut head: Vec<String> = [
        FaceWord::Place,
        FaceWord::Angle,
        FaceWord::Needle,
        FaceWord::FromFirst,
        FaceWord::Counts,
    ]
    .map(|word| face(context, word))
    .to_vec();
    head.push(context.word(ReportWord::When));
    Block::Table { head, rows }
}

/// What was found, with the curve as it is drawn today.
fn says(context: &ReportContext, run: &Run, found: &FaceFound, live: Option<&Found>) -> Vec<Block> {
    let (lang, format) = (context.lang, context.format);
    let reach = found.reach.as_ref();
    let mut rows = reach.map_or_else(Vec::new, |reach| how_sure(context, reach));
    rows.extend([
        (face(context, FaceWord::Tir), context.both(found.tir, 3)),
        (face(context, FaceWord::Closure), closure(context, found)),
    ]);
    let mut blocks = vec![Block::Sentence(answer(lang, format, found))];
    if let Ok(shape) = &found.shape {
        rows.extend(waves(context, shape));
        let alt = text::polar_alt(lang, &runout(lang, format, found), shape.form);
        blocks.extend(live.map(|live| Block::Drawing {
            size: Size::Hand,
            svg: polar(run, live, studs(context.sheet)).to_svg(&alt),
        }));
    }
    rows.extend(limit_rows(context, found));
    let next = text::next_at_face(context.lang, found.next).to_owned();
    rows.push((face(context, FaceWord::Next), next));
    rows.push((context.word(ReportWord::Rules), found.rules.to_string()));
    blocks.push(Block::Rows(rows));
    blocks.extend(positions(context, run, found));
    blocks
}

fn closure(context: &ReportContext, found: &FaceFound) -> String {
    found.closure.map_or_else(
        || face(context, FaceWord::NotClosed),
        |off| context.both(off, 3),
    )
}

/// The waves: how far each moves the needle, how sure, and where it is high.
fn waves(context: &ReportContext, shape: &ShapeFound) -> Vec<(String, String)> {
    let wave = |wave: &WaveFound| {
        let sure = context.format.length(wave.u, 4).line();
        format!("{} (u {sure})", context.both(wave.reach, 3))
    };
    let mut rows = vec![
        (face(context, FaceWord::Mean), context.both(shape.mean, 3)),
        (face(context, FaceWord::Wobble), wave(&shape.wobble)),
    ];
    if let Some(warp) = &shape.warp {
        rows.push((face(context, FaceWord::Warp), wave(warp)));
    }
    rows.push((face(context, FaceWord::Rest), context.both(shape.rms, 4)));
    if let Some(by) = shape.stands_out {
        rows.push((face(context, FaceWord::StandsOut), context.both(by, 3)));
    }
    let place = high_spot(context.lang, context.format, shape, studs(context.sheet));
    rows.push((face(context, FaceWord::HighSpot), place));
    rows
}

fn limit_rows(context: &ReportContext, found: &FaceFound) -> Vec<(String, String)> {
    let Some(against) = &found.against else {
        let none = face(context, FaceWord::NoLimit);
        return vec![(context.word(ReportWord::Limit), none)];
    };
    let spec = &against.spec;
    let mut rows = vec![
        (
            context.word(ReportWord::Limit),
            most(context.lang, context.format, spec),
        ),
        (
            context.word(ReportWord::Source),
            source_line(context.lang, &spec.source),
        ),
    ];
    if let Some(judged) = against.judged {
        let percent = context.format.number(100.0 * judged.conformance, 1);
        rows.push((
            face(context, FaceWord::Probability),
            format!("{percent}\u{a0}%"),
        ));
    }
    rows
}

/// A limit as printed, with its twin.
pub fn most(lang: Lang, format: Format, spec: &RunoutSpec) -> String {
    let twin = format.typed_twin(&spec.most).line();
    let value = format.typed(&spec.most).line();
    format!("{value} {}", text::also_value(lang, &twin))
}

fn positions(context: &ReportContext, run: &Run, found: &FaceFound) -> Vec<Block> {
    let Some((basis, positions)) = &found.positions else {
        return Vec::new();
    };
    let now = run.setup.stud.saturating_sub(1);
    let rows = positions.iter().map(|(stud, wobble)| {
        let name = text::hole_on_stud(context.lang, stud + 1);
        let sure = context.format.length(wobble.u, 4).line();
        let expected = context.both(wobble.estimate, 3);
        let note = if *stud == now {
            face(context, FaceWord::Now)
        } else {
            String::new()
        };
        vec![name, expected, sure, note]
    });
    let rows = rows.collect();
    let head = vec![
        face(context, FaceWord::Position),
        face(context, FaceWord::Expected),
        context.word(ReportWord::Standard),
        String::new(),
    ];
    vec![
        Block::Subheading(face(context, FaceWord::Positions)),
        Block::Sentence(text::basis(context.lang, *basis).to_owned()),
        Block::Table { head, rows },
        Block::Sentence(face(context, FaceWord::Common)),
    ]
}

/// One place in one line, for the list of what was taken back or told twice.
pub(super) fn reading_line(context: &ReportContext, reading: &RunoutReading) -> String {
    let run = text::run_title(context.lang, reading.run, reading.setup.surface);
    let place = place_angle(context.format, reading);
    let place = text::place_of(context.lang, reading.place, reading.setup.places, &place);
    let needle = match &reading.divisions {
        Some(needle) => context.format.marked(needle.as_typed()),
        None => face(context, FaceWord::Skipped),
    };
    let corner = text::corner_title(context.lang, reading.corner);
    format!("{corner}, {run}, {place}: {needle}")
}

/// A limit in one line.
pub(super) fn limit_line(context: &ReportContext, spec: &RunoutSpec) -> String {
    let of = text::surface(context.lang, spec.surface);
    let most = most(context.lang, context.format, spec);
    format!("{}, {of}: {most}", face(context, FaceWord::LimitTitle))
}

/// The runout with its interval in the reader's unit; the total reading where it cannot be told.
pub fn runout(lang: Lang, format: Format, found: &FaceFound) -> String {
    let line = |length| format.length(length, 3).line();
    match &found.reach {
        Some(reach) => reach_line(lang, format, reach),
        None => line(found.tir),
    }
}

/// The answer of a run in one sentence.
pub fn answer(lang: Lang, format: Format, found: &FaceFound) -> String {
    let shape = match &found.shape {
        Ok(shape) => shape,
        Err(why) => return text::undetermined(lang, *why),
    };
    let against = found.against.as_ref().and_then(|against| {
        let most = format.typed(&against.spec.most).line();
        Some(text::against_limit(lang, against.judged?.result, &most))
    });
    let against = against.unwrap_or_else(|| text::face(lang, FaceWord::NoLimitTail).to_owned());
    text::run_answer(lang, &runout(lang, format, found), shape.form, &against)
}

/// What was found in one line, for the list of what was taken back or told twice.
pub(super) fn found_line(context: &ReportContext, found: &FaceFound) -> String {
    let corner = text::corner_title(context.lang, found.corner);
    let run = text::run_title(context.lang, found.run, found.surface);
    let answer = answer(context.lang, context.format, found);
    format!("{corner}, {run}: {answer}")
}

/// Where it is highest and between which studs, or that it is too small to say.
pub fn high_spot(lang: Lang, format: Format, shape: &ShapeFound, studs: Option<Studs>) -> String {
    let Some(high) = shape.high_spot else {
        return text::face(lang, FaceWord::NoHighSpot).to_owned();
    };
    let is_vague = shape.form == Form::Wobble && shape.sure_to.is_none();
    if is_vague {
        return text::face(lang, FaceWord::NoHighSpot).to_owned();
    }
    let between = studs.map(|studs| {
        let (one, other) = studs.beside(high);
        (one + 1, other + 1)
    });
    let sure = shape.sure_to.map(|sure| degrees(format, sure));
    text::high_spot(lang, &degrees(format, high), sure.as_deref(), between)
}

/// The angle of a place: as typed, or its equal step to the degree.
pub fn place_angle(format: Format, reading: &RunoutReading) -> String {
    match &reading.angle {
        Some(typed) => format.typed(typed).line(),
        None => degrees(format, angle(reading)),
    }
}

/// The angle of a place of a run; a dash where its place was skipped before it had one.
pub fn place_angle_in(format: Format, run: &Run, reading: &RunoutReading) -> String {
    if run.angles() == Angles::Typed && reading.angle.is_none() && reading.divisions.is_none() {
        return "–".to_owned();
    }
    place_angle(format, reading)
}

/// An angle to the degree.
pub fn degrees(format: Format, angle: Angle) -> String {
    let degree = AngleUnit::Degree;
    let number = format.number(angle.in_unit(degree), 0);
    format!("{number}{}", degree.symbol())
}

/// A run as it is drawn, on screen and on paper.
pub fn polar(run: &Run, found: &Found, studs: Option<Studs>) -> Drawing {
    let height = |length: Length| length.in_unit(LengthUnit::Micrometre);
    let place = |angle: Angle| angle.in_unit(AngleUnit::Degree);
    let spots = found.series.spots().iter().map(|spot| {
        let dot = match spot.left_out {
            Some(_) => Dot::LeftOut,
            None => Dot::Counts,
        };
        (place(spot.angle), height(run.dial.worth(spot.needle)), dot)
    });
    let readings: Vec<_> = spots.collect();
    let shape = found.shape.as_ref().ok();
    let steps = (0..CURVE).map(|step| f64::from(step) / f64::from(CURVE));
    let wave: Vec<f64> = shape.map_or_else(Vec::new, |shape| {
        steps
            .filter_map(|turn| Angle::new(turn, AngleUnit::Turn).ok())
            .map(|angle| height(shape.fit.at(angle)))
            .collect()
    });
    let high = shape.and_then(|shape| Some((shape.form, place(shape.high_spot?))));
    let high = match high {
        Some((Form::Warp, one)) => vec![one, one + 180.0],
        Some((_, one)) => vec![one],
        None => Vec::new(),
    };
    Polar {
        readings: &readings,
        wave: &wave,
        high: &high,
        studs: studs.map_or(0, Studs::count),
    }
    .drawing()
}

#[cfg(test)]
mod tests;
