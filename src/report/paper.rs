//! What was read from the paper of an earlier visit, in its own words: nothing of it was measured
//! on this phone.

use super::block::Block;
use super::runout::high_spot;
use super::specs::way_lines;
use super::{ReportContext, entry_line};
use crate::job::entry::{Event, Reading, RunoutReading, ShapeFound, Side};
use crate::job::runout::Run;
use crate::job::slip::Slip;
use crate::text::{self, FaceWord, Lang, Paper, ReportWord, paper};
use crate::trade::play::{Divisions, ReadingFlag, Round};
use crate::trade::runout::shape;
use crate::trade::wheel_end::When;
use crate::units::Format;

/// All of it; nothing where the job did not come from paper.
pub(super) fn from_paper(context: &ReportContext) -> Vec<Block> {
    let Some(slip) = context.sheet.slip() else {
        return Vec::new();
    };
    let mut blocks = vec![
        Block::Heading(paper(context.lang, Paper::FromPaper)),
        Block::Notice(paper(context.lang, Paper::FromPaperSay)),
        Block::Rows(lines(context.lang, context.format, slip)),
    ];
    let loose = loose(context, slip);
    if !loose.is_empty() {
        blocks.push(Block::List(loose));
    }
    blocks
}

/// Readings, decisions, answers, parts, what was due and how it ended, label by label.
pub fn lines(lang: Lang, format: Format, slip: &Slip) -> Vec<(String, String)> {
    let mut lines = Vec::new();
    let mut rest = slip.facts.as_slice();
    while let [first, after @ ..] = rest {
        rest = after;
        if let Event::Runout(reading) = first {
            let same = |what: &Event| matches!(what, Event::Runout(next) if (next.corner, next.run) == (reading.corner, reading.run));
            let count = rest.iter().take_while(|what| same(what)).count();
            let (places, after) = rest.split_at(count);
            lines.push(run(lang, format, reading, places));
            rest = after;
        } else if let Event::Reading(reading) = first {
            let same = |what: &Event| matches!(what, Event::Reading(next) if combined_steps(next, reading));
            let count = rest.iter().take_while(|what| same(what)).count();
            let (set, after) = rest.split_at(count);
            lines.push(rounds(lang, format, slip, (reading, set)));
            rest = after;
        } else {
            lines.extend(line(lang, format, first));
        }
    }
    let label = paper(lang, Paper::PaperDigest);
    lines.push((label, slip.digest.clone()));
    lines.retain(|(_, value)| !value.is_empty());
    lines
}

fn combined_steps(one: &Reading, other: &Reading) -> bool {
    (one.corner, one.set, one.dial) == (other.corner, other.set, other.dial)
}

fn line(lang: Lang, format: Format, what: &Event) -> Option<(String, String)> {
    let word = |word| text::report(lang, word).to_owned();
    let corner = |corner| text::corner_title(lang, corner).to_owned();
    Some(match what {
        Event::Decided(decided) => {
            let word = text::decision(lang, decided.decision);
            (corner(decided.corner), word.to_owned())
        }
        Event::Consent(consent) => {
            let said = if consent.yes {
                Paper::Agreed
            } else {
                Paper::Declined
            };
            (corner(consent.step.corner?), paper(lang, said))
        }
        Event::Part(part) => {
            let label = format!("{}: {}", corner(part.corner), word(ReportWord::Parts));
            (label, format!("{} {}", part.number, part.lot))
        }
        Event::Due(due) => {
            let far = due.distance.as_ref().map(|far| format.typed(far).line());
            let value = match far {
                Some(far) => text::retorque_due(lang, &due.date, &far),
                None => due.date.clone(),
            };
            (text::due_kind(lang, due.kind).to_owned(), value)
        }
        Event::Ended(ended) => {
            let title = text::ending(lang, ended.ending).0;
            (word(ReportWord::Ended), title.to_owned())
        }
        _ => return None,
    })
}

/// The plays of a set with the way in which they were taken.
fn rounds(
    lang: Lang,
    format: Format,
    slip: &Slip,
    (first, set): (&Reading, &[Event]),
) -> (String, String) {
    let readings = set.iter().filter_map(|what| match what {
        Event::Reading(reading) => Some(reading),
        _ => None,
    });
    let readings: Vec<&Reading> = std::iter::once(first).chain(readings).collect();
    let place = |round, side| {
        let mut all = readings.iter();
        all.find(|it| it.round == round && it.side == side)
    };
    let pulls = readings.iter().filter(|it| it.side == Side::Pull);
    let plays = pulls.filter_map(|pull| {
        let at = |reading: &&Reading| Divisions::typed(&reading.divisions);
        let push = place(pull.round, Side::Push).map_or(Divisions::ZERO, at);
        let round = Round {
            turns: pull.turns,
            ..Round::of_two(push, at(pull))
        };
        let play = pull.dial.play(round).ok()?;
        Some(format.length(play, 3).line())
    });
    let plays = plays.collect::<Vec<_>>().join("; ");
    let way = slip.dial_setup(first.corner, first.set).into_iter();
    let way = way.flat_map(|way| way_lines(lang, format, way));
    let way = way.map(|(_, value)| value).collect::<Vec<_>>().join(", ");
    let when = match first.set.when {
        When::Before => ReportWord::SignBefore,
        When::After => ReportWord::SignAfter,
    };
    let label = format!(
        "{}: {}",
        text::corner_title(lang, first.corner),
        text::report(lang, when)
    );
    let way = match way.as_str() {
        "" => text::mark(lang, ReadingFlag::MethodNotRecorded),
        way => way,
    };
    let plays = plays.as_str();
    (label, paper(lang, Paper::Rounds { plays, way }))
}

/// The total reading of a run with its high spot, where its places tell them.
fn run(lang: Lang, format: Format, first: &RunoutReading, places: &[Event]) -> (String, String) {
    let places = places.iter().filter_map(|what| match what {
        Event::Runout(reading) => Some(reading),
        _ => None,
    });
    let run = Run {
        nth: first.run,
        setup: first.setup,
        dial: first.dial,
        readings: std::iter::once(first).chain(places).collect(),
    };
    let label = format!(
        "{}: {}",
        text::corner_title(lang, first.corner),
        text::run_title(lang, first.run, first.setup.surface)
    );
    let Ok(series) = run.series() else {
        return (
            label,
            text::report(lang, ReportWord::NotMeasured).to_owned(),
        );
    };
    let total = format.length(series.tir(), 3).line();
    let total = format!("{}: {total}", text::face(lang, FaceWord::Tir));
    let high = shape(&series).map(|shape| high_spot(lang, format, &ShapeFound::of(&shape), None));
    let found = std::iter::once(total).chain(high);
    (label, found.collect::<Vec<_>>().join(". "))
}

/// What was loose when the paper was printed.
fn loose(context: &ReportContext, slip: &Slip) -> Vec<String> {
    let is = |what: &&Event| matches!(what, Event::Moved(_) | Event::Also(_) | Event::Mishap(_));
    let facts = slip.facts.iter().filter(is);
    facts.map(|what| entry_line::entry(context, what)).collect()
}
