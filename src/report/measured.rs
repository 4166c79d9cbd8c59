//! Every set of readings with its rounds, its uncertainty and what it says against the limit.

use super::block::{Block, Size};
use super::specs::{limit_value, way_lines};
use super::time::when;
use super::{ReportContext, budget, entry_line, reason};
use crate::job::Key;
use crate::job::entry::{Reading, Side};
use crate::job::judge::{Measured, round_play};
use crate::job::proof;
use crate::job::sets;
use crate::text::{self, ReportWord, Say};
use crate::trade::fastening::SpecItem;
use crate::trade::play::conformity::CYCLES_TO_PROVE;
use crate::trade::play::{Conformity, Dial, ReadingFlag, Way};
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
pub(super) fn readings(context: &ReportContext, corner: Corner) -> Vec<Block> {
    let mut blocks: Vec<Block> = SETS
        .iter()
        .flat_map(|name| set(context, corner, *name))
        .collect();
    if blocks.is_empty() {
        blocks.push(context.sentence(ReportWord::NoSet));
    }
    blocks.extend(proof(context, corner));
    blocks
}

/// The proof of a corner where another version of the rules judged it than its decision.
fn proof(context: &ReportContext, corner: Corner) -> Option<Block> {
    let proved = proof::recorded(context.sheet, corner)?;
    let decided = context.sheet.decided(corner).map(|decided| decided.rules);
    (decided != Some(proved.rules)).then(|| {
        let outcome = entry_line::proof(context, &proved.outcome);
        Block::Rows(vec![
            (context.word(ReportWord::SignAfter), outcome),
            (context.word(ReportWord::Rules), proved.rules.to_string()),
        ])
    })
}

/// The set's name: "Before: Second set".
fn title(context: &ReportContext, name: SetName) -> String {
    match name.when {
        When::After => context.word(ReportWord::SignAfter),
        When::Before => format!(
            "{}: {}",
            context.word(ReportWord::SignBefore),
            context.word(if name.nth == 1 {
                ReportWord::SetOne
            } else {
                ReportWord::SetTwo
            })
        ),
    }
}

fn set(context: &ReportContext, corner: Corner, name: SetName) -> Vec<Block> {
    let rows: Vec<Vec<String>> = (1..=ROUNDS)
        .filter_map(|n| round(context, corner, name, n))
        .collect();
    let first = (1..=ROUNDS).find_map(|n| any_side(context, corner, name, n));
    let Some(first) = first else {
        return Vec::new();
    };
    let corner_title = text::corner_title(context.lang, corner);
    let way = context
        .sheet
        .dial_setup(corner, name)
        .map(|setup| &setup.way);
    let mut blocks = vec![
        Block::Subheading(format!("{corner_title}, {}", title(context, name))),
        Block::Rows(taken(context, first, way)),
        Block::Table {
            head: [
                ReportWord::Round,
                ReportWord::Push,
                ReportWord::Pull,
                ReportWord::Play,
                ReportWord::When,
            ]
            .map(|word| context.word(word))
            .to_vec(),
            rows,
        },
    ];
    match sets::reported(context.sheet, corner, name) {
        Some(Ok(measured)) => blocks.extend(result(context, corner, name, &measured)),
        Some(Err(fault)) => blocks.push(Block::Sentence(text::set_fault(context.lang, fault))),
        None => {}
    }
    blocks
}

fn any_side<'a>(
    context: &ReportContext<'a>,
    corner: Corner,
    name: SetName,
    round: u8,
) -> Option<&'a Reading> {
    [Side::Pull, Side::Push]
        .into_iter()
        .find_map(|side| context.sheet.reading(corner, name, round, side))
}

/// The dial and the way; where none was recorded, that stands in its place.
fn taken(context: &ReportContext, reading: &Reading, way: Option<&Way>) -> Vec<(String, String)> {
    let mut rows = dial_rows(context, &reading.dial);
    match way {
        Some(way) => rows.extend(way_lines(context.lang, context.format, way)),
        None => rows.push((
            context.word(ReportWord::Method),
            text::mark(context.lang, ReadingFlag::MethodNotRecorded).to_owned(),
        )),
    }
    rows
}

/// A dial, label by label.
pub(super) fn dial_rows(context: &ReportContext, dial: &Dial) -> Vec<(String, String)> {
    let division = context.both(dial.graduation(), 3);
    vec![
        (
            context.word(ReportWord::Dial),
            text::dial_kind(context.lang, dial.kind()).to_owned(),
        ),
        (context.word(ReportWord::Division), division),
        (
            context.word(ReportWord::DivisionsTurn),
            dial.divisions_per_turn().to_string(),
        ),
    ]
}

fn round(context: &ReportContext, corner: Corner, name: SetName, n: u8) -> Option<Vec<String>> {
    let at = |side| context.sheet.reading(corner, name, n, side);
    let (push, pull) = (at(Side::Push), at(Side::Pull));
    let entry = [Side::Pull, Side::Push]
        .into_iter()
        .find_map(|side| context.sheet.holds(&Key::Reading(corner, name, n, side)))?;
    let divisions = |reading: &Reading| context.format.marked(reading.divisions.as_typed());
    let push = match push {
        Some(push) => divisions(push),
        None => format!(
            "{} ({})",
            context.format.number(0.0, 0),
            context.word(ReportWord::DialZeroed)
        ),
    };
    Some(vec![
        n.to_string(),
        push,
        pull.map_or_else(|| context.word(ReportWord::NotMeasured), divisions),
        match round_play(context.sheet, corner, name, n) {
            Some(Ok(play)) => context.both(play, 3),
            Some(Err(error)) => text::round_error(context.lang, error).to_owned(),
            None => context.word(ReportWord::NotMeasured),
        },
        when(context.lang, &entry.at),
    ])
}

fn result(
    context: &ReportContext,
    corner: Corner,
    name: SetName,
    measured: &Measured,
) -> Vec<Block> {
    let tip = measured.set.off_square().map(|angle| {
        let angle = context.format.angle(angle, 1).line();
        Block::Sentence(text::tip_line(context.lang, &angle))
    });
    let crept = context.sheet.crept(corner, name).map(|crept| {
        let crept = context.format.marked(crept.as_typed());
        Block::Sentence(text::creep_line(context.lang, &crept))
    });
    let seen = super::tip_and_drift::lines(context.lang, context.format, context.sheet, measured);
    let mut blocks = vec![
        bars(context, measured),
        budget_table(context, measured),
        Block::Rows(figures(context, measured)),
    ];
    blocks.extend(tip);
    blocks.extend(crept);
    blocks.extend(seen.into_iter().map(Block::Sentence));
    blocks
}

/// The same parts as the table below, and which to mend first.
fn bars(context: &ReportContext, measured: &Measured) -> Block {
    let title = budget::mend_first(context.lang, measured).unwrap_or_default();
    Block::Drawing {
        size: Size::Wide,
        svg: budget::picture(context.lang, context.format, measured).to_svg(title),
    }
}

fn budget_table(context: &ReportContext, measured: &Measured) -> Block {
    let rows = measured.budget.components.iter().map(|row| {
        vec![
            text::budget_source(context.lang, row.source).to_owned(),
            context.both(row.u, 4),
            freedom(context, row.dof),
        ]
    });
    Block::Table {
        head: [
            ReportWord::Budget,
            ReportWord::Standard,
            ReportWord::Freedom,
        ]
        .map(|word| context.word(word))
        .to_vec(),
        rows: rows.collect(),
    }
}

fn freedom(context: &ReportContext, dof: Option<f64>) -> String {
    dof.map_or_else(
        || context.word(ReportWord::Unlimited),
        |dof| context.format.number(dof, 1),
    )
}

/// Mean, uncertainty, limit and what follows.
fn figures(context: &ReportContext, of: &Measured) -> Vec<(String, String)> {
    let budget = &of.budget;
    let k = coverage(budget.expanded95, budget.u_c);
    let expanded = context.format.length(budget.expanded95, 4).line();
    let k = text::uncertainty_k(context.lang, &context.format.number(k, 2));
    let mut rows = vec![
        (context.word(ReportWord::Mean), context.both(of.mean(), 4)),
        (
            context.say(Say::MedianLabel),
            context.both(of.set.median(), 4),
        ),
        (
            context.word(ReportWord::Combined),
            context.both(budget.u_c, 4),
        ),
        (
            context.word(ReportWord::Freedom),
            freedom(context, budget.dof_eff),
        ),
        (
            context.word(ReportWord::Uncertainty),
            format!("± {expanded} ({k}, 95\u{a0}%)"),
        ),
    ];
    if !of.set.marks().is_empty() {
        let marks = of.set.marks().iter().map(|m| text::mark(context.lang, *m));
        rows.push((
            context.word(ReportWord::Marked),
            marks.collect::<Vec<_>>().join("; "),
        ));
    }
    rows.extend(against(context, of));
    rows
}

fn against(context: &ReportContext, of: &Measured) -> Vec<(String, String)> {
    let spec = context.sheet.spec(SpecItem::PlayLimit);
    let limit = format!(
        "{} ({})",
        limit_value(context.lang, context.format, &of.limit, spec),
        text::limit_source(context.lang, of.limit.source)
    );
    let mut rows = vec![(context.word(ReportWord::Limit), limit)];
    if let Some(comparison) = of.conformity.comparison() {
        rows.push((
            context.word(ReportWord::GuardBand),
            context.both(of.budget.guard_band(), 4),
        ));
        // A chance of being within the default limit would read as a clearance, and few cycles
        // prove nothing, however sure they seem.
        if of.limit.is_manufacturers() && comparison.cycles >= CYCLES_TO_PROVE {
            let percent = context.format.number(100.0 * comparison.conformance, 1);
            rows.push((
                context.word(ReportWord::Probability),
                format!("{percent}\u{a0}%"),
            ));
        }
    }
    let mut word = text::conformity(context.lang, of.conformity).to_owned();
    if let Conformity::NoComparison(why) = of.conformity {
        word = format!("{word}: {}", reason::why_not(context.lang, why));
    } else if !of.limit.is_manufacturers() {
        word = format!("{word}. {}", context.word(ReportWord::HouseLimitSay));
    }
    let few = of.conformity.comparison();
    if few.is_some_and(|of| of.cycles < CYCLES_TO_PROVE) {
        word = format!("{word}. {}", context.word(ReportWord::TooFewCycles));
    }
    rows.push((context.word(ReportWord::Result), word));
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
