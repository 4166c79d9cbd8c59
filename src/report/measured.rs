//! Every set of readings with its rounds, its uncertainty and what it says against the limit.

use super::block::{Block, Size};
use super::cards::{limit_value, way_lines};
use super::time::when;
use super::{ReportContext, budget, entry_line, reason};
use crate::job::Key;
use crate::job::entry::{Reading, Side};
use crate::job::judge::{Measured, round_play};
use crate::job::proof;
use crate::job::sets;
use crate::text::{self, ReportWord, Say};
use crate::trade::fastening::CardItem;
use crate::trade::play::conformity::CYCLES_TO_PROVE;
use crate::trade::play::{Conformity, Dial, Mark, Way};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{ROUNDS, SetName, When};
use crate::units::{Length, LengthUnit};

/// The sets that a corner can have, in the order in which they are taken.
pub(super) const SETS: [SetName; 3] = [
    SetName {
        when: When::Before,
        nth: 1,
    },
    SetName {
        when: When::Before,
        nth: 2,
    },
    SetName {
        when: When::After,
        nth: 1,
    },
];

/// The readings of one corner.
pub(super) fn readings(told: &ReportContext, corner: Corner) -> Vec<Block> {
    let mut blocks: Vec<Block> = SETS
        .iter()
        .flat_map(|name| set(told, corner, *name))
        .collect();
    if blocks.is_empty() {
        blocks.push(told.sentence(ReportWord::NoSet));
    }
    blocks.extend(proof(told, corner));
    blocks
}

/// The proof of a corner where another version of the rules judged it than its decision.
fn proof(told: &ReportContext, corner: Corner) -> Option<Block> {
    let proved = proof::recorded(told.sheet, corner)?;
    let decided = told.sheet.decided(corner).map(|decided| decided.rules);
    (decided != Some(proved.rules)).then(|| {
        let outcome = entry_line::proof(told, &proved.outcome);
        Block::Rows(vec![
            (told.word(ReportWord::SignAfter), outcome),
            (told.word(ReportWord::Rules), proved.rules.to_string()),
        ])
    })
}

/// The set's name: "Before: Second set".
fn title(told: &ReportContext, name: SetName) -> String {
    match name.when {
        When::After => told.word(ReportWord::SignAfter),
        When::Before => format!(
            "{}: {}",
            told.word(ReportWord::SignBefore),
            told.word(if name.nth == 1 {
                ReportWord::SetOne
            } else {
                ReportWord::SetTwo
            })
        ),
    }
}

fn set(told: &ReportContext, corner: Corner, name: SetName) -> Vec<Block> {
    let rows: Vec<Vec<String>> = (1..=ROUNDS)
        .filter_map(|n| round(told, corner, name, n))
        .collect();
    let first = (1..=ROUNDS).find_map(|n| any_side(told, corner, name, n));
    let Some(first) = first else {
        return Vec::new();
    };
    let corner_title = text::corner_title(told.lang, corner);
    let way = told.sheet.dial_setup(corner, name).map(|setup| &setup.way);
    let mut blocks = vec![
        Block::Subheading(format!("{corner_title}, {}", title(told, name))),
        Block::Rows(taken(told, first, way)),
        Block::Table {
            head: [
                ReportWord::Round,
                ReportWord::Push,
                ReportWord::Pull,
                ReportWord::Play,
                ReportWord::When,
            ]
            .map(|word| told.word(word))
            .to_vec(),
            rows,
        },
    ];
    match sets::told(told.sheet, corner, name) {
        Some(Ok(measured)) => blocks.extend(result(told, corner, name, &measured)),
        Some(Err(fault)) => blocks.push(Block::Sentence(text::set_fault(told.lang, fault))),
        None => {}
    }
    blocks
}

fn any_side<'a>(
    told: &ReportContext<'a>,
    corner: Corner,
    name: SetName,
    round: u8,
) -> Option<&'a Reading> {
    [Side::Pull, Side::Push]
        .into_iter()
        .find_map(|side| told.sheet.reading(corner, name, round, side))
}

/// The dial and the way; where none was recorded, that stands in its place.
fn taken(told: &ReportContext, reading: &Reading, way: Option<&Way>) -> Vec<(String, String)> {
    let mut rows = dial_rows(told, &reading.dial);
    match way {
        Some(way) => rows.extend(way_lines(told.lang, told.format, way)),
        None => rows.push((
            told.word(ReportWord::Method),
            text::mark(told.lang, Mark::MethodNotRecorded).to_owned(),
        )),
    }
    rows
}

/// A dial, label by label.
pub(super) fn dial_rows(told: &ReportContext, dial: &Dial) -> Vec<(String, String)> {
    let division = told.both(dial.graduation(), 3);
    vec![
        (
            told.word(ReportWord::Dial),
            text::dial_kind(told.lang, dial.kind()).to_owned(),
        ),
        (told.word(ReportWord::Division), division),
        (
            told.word(ReportWord::DivisionsTurn),
            dial.divisions_per_turn().to_string(),
        ),
    ]
}

fn round(told: &ReportContext, corner: Corner, name: SetName, n: u8) -> Option<Vec<String>> {
    let at = |side| told.sheet.reading(corner, name, n, side);
    let (push, pull) = (at(Side::Push), at(Side::Pull));
    let entry = [Side::Pull, Side::Push]
        .into_iter()
        .find_map(|side| told.sheet.holds(&Key::Reading(corner, name, n, side)))?;
    let divisions = |reading: &Reading| told.format.marked(reading.divisions.as_typed());
    let push = match push {
        Some(push) => divisions(push),
        None => format!(
            "{} ({})",
            told.format.number(0.0, 0),
            told.word(ReportWord::DialZeroed)
        ),
    };
    Some(vec![
        n.to_string(),
        push,
        pull.map_or_else(|| told.word(ReportWord::NotMeasured), divisions),
        match round_play(told.sheet, corner, name, n) {
            Some(Ok(play)) => told.both(play, 3),
            Some(Err(error)) => text::round_error(told.lang, error).to_owned(),
            None => told.word(ReportWord::NotMeasured),
        },
        when(told.lang, &entry.at),
    ])
}

fn result(told: &ReportContext, corner: Corner, name: SetName, measured: &Measured) -> Vec<Block> {
    let tip = measured.set.off_square().map(|angle| {
        let angle = told.format.angle(angle, 1).line();
        Block::Sentence(text::tip_line(told.lang, &angle))
    });
    let crept = told.sheet.crept(corner, name).map(|crept| {
        let crept = told.format.marked(crept.as_typed());
        Block::Sentence(text::creep_line(told.lang, &crept))
    });
    let seen = super::tip_and_drift::lines(told.lang, told.format, told.sheet, measured);
    let mut blocks = vec![
        bars(told, measured),
        budget_table(told, measured),
        Block::Rows(figures(told, measured)),
    ];
    blocks.extend(tip);
    blocks.extend(crept);
    blocks.extend(seen.into_iter().map(Block::Sentence));
    blocks
}

/// The same parts as the table below, and which to mend first.
fn bars(told: &ReportContext, measured: &Measured) -> Block {
    let title = budget::mend_first(told.lang, measured).unwrap_or_default();
    Block::Drawing {
        size: Size::Wide,
        svg: budget::picture(told.lang, told.format, measured).to_svg(title),
    }
}

fn budget_table(told: &ReportContext, measured: &Measured) -> Block {
    let rows = measured.budget.components.iter().map(|row| {
        vec![
            text::budget_source(told.lang, row.source).to_owned(),
            told.both(row.u, 4),
            freedom(told, row.dof),
        ]
    });
    Block::Table {
        head: [
            ReportWord::Budget,
            ReportWord::Standard,
            ReportWord::Freedom,
        ]
        .map(|word| told.word(word))
        .to_vec(),
        rows: rows.collect(),
    }
}

fn freedom(told: &ReportContext, dof: Option<f64>) -> String {
    dof.map_or_else(
        || told.word(ReportWord::Unlimited),
        |dof| told.format.number(dof, 1),
    )
}

/// Mean, uncertainty, limit and what follows.
fn figures(told: &ReportContext, of: &Measured) -> Vec<(String, String)> {
    let budget = &of.budget;
    let k = coverage(budget.expanded95, budget.u_c);
    let expanded = told.format.length(budget.expanded95, 4).line();
    let k = text::uncertainty_k(told.lang, &told.format.number(k, 2));
    let mut rows = vec![
        (told.word(ReportWord::Mean), told.both(of.mean(), 4)),
        (told.say(Say::MedianLabel), told.both(of.set.median(), 4)),
        (told.word(ReportWord::Combined), told.both(budget.u_c, 4)),
        (
            told.word(ReportWord::Freedom),
            freedom(told, budget.dof_eff),
        ),
        (
            told.word(ReportWord::Uncertainty),
            format!("± {expanded} ({k}, 95\u{a0}%)"),
        ),
    ];
    if !of.set.marks().is_empty() {
        let marks = of.set.marks().iter().map(|m| text::mark(told.lang, *m));
        rows.push((
            told.word(ReportWord::Marked),
            marks.collect::<Vec<_>>().join("; "),
        ));
    }
    rows.extend(against(told, of));
    rows
}

fn against(told: &ReportContext, of: &Measured) -> Vec<(String, String)> {
    let card = told.sheet.card(CardItem::PlayLimit);
    let limit = format!(
        "{} ({})",
        limit_value(told.lang, told.format, &of.limit, card),
        text::limit_source(told.lang, of.limit.source)
    );
    let mut rows = vec![(told.word(ReportWord::Limit), limit)];
    if let Some(comparison) = of.conformity.comparison() {
        rows.push((
            told.word(ReportWord::GuardBand),
            told.both(of.budget.guard_band(), 4),
        ));
        // A chance of being within the default limit would read as a clearance, and few cycles
        // prove nothing, however sure they seem.
        if of.limit.is_manufacturers() && comparison.cycles >= CYCLES_TO_PROVE {
            let percent = told.format.number(100.0 * comparison.conformance, 1);
            rows.push((
                told.word(ReportWord::Probability),
                format!("{percent}\u{a0}%"),
            ));
        }
    }
    let mut word = text::conformity(told.lang, of.conformity).to_owned();
    if let Conformity::NoComparison(why) = of.conformity {
        word = format!("{word}: {}", reason::why_not(told.lang, why));
    } else if !of.limit.is_manufacturers() {
        word = format!("{word}. {}", told.word(ReportWord::HouseLimitSay));
    }
    let few = of.conformity.comparison();
    if few.is_some_and(|of| of.cycles < CYCLES_TO_PROVE) {
        word = format!("{word}. {}", told.word(ReportWord::TooFewCycles));
    }
    rows.push((told.word(ReportWord::Result), word));
    rows
}

/// The factor between expanded and standard uncertainty.
fn coverage(expanded: Length, standard: Length) -> f64 {
    let mm = LengthUnit::Millimetre;
    if standard > Length::ZERO {
        expanded.in_unit(mm) / standard.in_unit(mm)
    } else {
        0.0
    }
}
