//! Why a corner was decided as it was, in the customer's words: named reasons, and the readings
//! only where they speak.

use super::block::Block;
use super::strip::{Set, strip};
use super::technician::{house_limit, limit_spec};
use super::{ReportContext, plain, standing};
use crate::job::entry::Decided;
use crate::job::judge::Measured;
use crate::job::reason::Rule;
use crate::job::sets::{self, before};
use crate::text::{self, Customer, ReportWord};
use crate::trade::fastening::Spec;
use crate::trade::play::{Decision, Test};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{SetName, When};
use crate::units::Format;

/// The reasons of the decision on a corner, and what was measured.
pub(super) fn why(context: &ReportContext, corner: Corner) -> Vec<Block> {
    let mut blocks = Vec::new();
    let decided = context.sheet.decided(corner);
    if let Some(decided) = decided {
        if standing::is_replaced(context.sheet, &context.plan, corner) {
            let was = text::was_found_customer(context.lang, decided.decision);
            blocks.push(Block::Sentence(was.to_owned()));
        }
        let reasons = reasons(context, decided);
        if !reasons.is_empty() {
            blocks.push(Block::List(reasons));
        }
    }
    match decided {
        Some(decided) if is_condemned(decided) && !rests_on_play(decided) => {
            blocks.extend(play_beside(context, corner));
        }
        _ => blocks.extend(play(context, corner)),
    }
    if !blocks.is_empty() {
        blocks.insert(
            0,
            Block::Heading(heading(context, corner, decided.is_some())),
        );
    }
    blocks
}

fn heading(context: &ReportContext, corner: Corner, decided: bool) -> String {
    let head = if decided {
        context.customer(Customer::Why)
    } else {
        context.word(ReportWord::WhatWeFound)
    };
    if context.corners().len() > 1 {
        format!("{}: {head}", text::corner_title(context.lang, corner))
    } else {
        head
    }
}

const fn is_condemned(decided: &Decided) -> bool {
    matches!(decided.decision, Decision::Replace | Decision::Stop)
}

/// Whether the recorded decision rests on what the hub moved.
pub fn rests_on_play(decided: &Decided) -> bool {
    let mut rules = decided.reasons.iter().map(|code| of(code).0);
    rules.any(|rule| rule.is_some_and(is_of_play))
}

const fn is_of_play(rule: Rule) -> bool {
    matches!(
        rule,
        Rule::OverProven | Rule::OverNotProven | Rule::TightProven | Rule::TightNotProven
    )
}

/// A recorded reason as its rule and what it spoke of.
fn of(code: &str) -> (Option<Rule>, &str) {
    let (rule, of) = code.split_once('.').unwrap_or((code, ""));
    (Rule::from_code(rule), of)
}

/// The recorded reasons in words, the gravest first. Of a bearing that failed only what speaks
/// against it: "smooth" beside REPLACE would read as a doubt.
fn reasons(context: &ReportContext, decided: &Decided) -> Vec<String> {
    reason_lines(context.lang, decided, true)
}

/// The recorded reasons of a decision in the customer's words; those of the play only where they
/// are not drawn beside them.
pub fn reason_lines(lang: text::Lang, decided: &Decided, play: bool) -> Vec<String> {
    let condemned = is_condemned(decided);
    let lines = decided.reasons.iter().filter_map(|code| {
        let (rule, of) = of(code);
        let rule = rule.filter(|rule| !condemned || speaks_against(*rule))?;
        if !play && is_of_play(rule) {
            return None;
        }
        let line = match (rule, Test::from_code(of)) {
            (Rule::NotLookedAt, Some(test)) => text::test_customer(lang, test),
            _ => text::why(lang, rule, of)?,
        };
        Some(line.to_owned())
    });
    let mut lines: Vec<String> = lines.collect();
    lines.dedup();
    lines
}

const fn speaks_against(rule: Rule) -> bool {
    match rule {
        Rule::MustNotDrive
        | Rule::LooseInBearing
        | Rule::LooseElsewhere
        | Rule::LooseNotLocated
        | Rule::Rough
        | Rule::Noisy
        | Rule::OverProven
        | Rule::OverNotProven
        | Rule::TightProven
        | Rule::TightNotProven
        | Rule::RoadPointsHere
        | Rule::RoadNotLocated
        | Rule::Hotter => true,
        Rule::SetsDisagree
        | Rule::UnderNotProven
        | Rule::UnderProven
        | Rule::NoManufacturerLimit
        | Rule::NoMovementSeen
        | Rule::NoComparison
        | Rule::NotLookedAt
        | Rule::RoadPointsElsewhere
        | Rule::SmoothAndQuiet => false,
    }
}

/// The set that counts before the work, and the one after it.
pub(super) fn sets(
    context: &ReportContext,
    corner: Corner,
) -> (Option<Measured>, Option<Measured>) {
    let after = SetName {
        when: When::After,
        nth: 1,
    };
    let after = sets::reported(context.sheet, corner, after).and_then(Result::ok);
    (before(context.sheet, corner), after)
}

fn length(context: &ReportContext, of: &Measured) -> String {
    plain::length(context.format, of.mean())
}

/// Play that was no reason: in words alone, since readings near zero beside REPLACE mislead.
fn play_beside(context: &ReportContext, corner: Corner) -> Vec<Block> {
    let (before, after) = sets(context, corner);
    let mut blocks = Vec::new();
    if let Some(before) = before {
        let say = play_beside_line(context.lang, context.format, &before);
        blocks.push(Block::Sentence(say));
    }
    if let Some(after) = after {
        let play = length(context, &after);
        blocks.push(Block::Sentence(
            context.customer(Customer::NewHubMoves(&play)),
        ));
        blocks.push(limit(context, &after));
    }
    blocks
}

/// What a reading says beside a decision that does not rest on it: that movement was not the reason
/// can be said only of one that was compared with the limit it was looked up for.
pub fn play_beside_line(lang: text::Lang, format: Format, of: &Measured) -> String {
    let play = plain::length(format, of.mean());
    let say = if of.conformity.is_compared() && of.apart.is_none() {
        Customer::PlayNotTheReason(&play)
    } else {
        Customer::PlayNotCompared(&play)
    };
    text::customer(lang, say)
}

/// The readings with their drawing, its legend and their limit.
fn play(context: &ReportContext, corner: Corner) -> Vec<Block> {
    let (before, after) = sets(context, corner);
    let one = |word, measured| Set {
        label: context.word(word),
        measured,
    };
    match (&before, &after) {
        (None, None) => Vec::new(),
        (Some(before), Some(after)) if alike(before, after) => {
            let (was, is) = (length(context, before), length(context, after));
            let sets = [
                one(ReportWord::SignBefore, before),
                one(ReportWord::SignAfter, after),
            ];
            vec![
                Block::Sentence(text::before_after_customer(context.lang, &was, &is)),
                strip(context, &sets),
                legend(context, before),
                limit(context, before),
            ]
        }
        _ => {
            let mut blocks = Vec::new();
            for (word, set) in [
                (ReportWord::SignBefore, &before),
                (ReportWord::SignAfter, &after),
            ] {
                if let Some(set) = set {
                    let play = length(context, set);
                    blocks.push(Block::Sentence(text::found_customer(context.lang, &play)));
                    blocks.push(strip(context, &[one(word, set)]));
                    blocks.push(legend(context, set));
                    blocks.push(limit(context, set));
                }
            }
            if before.is_some() && after.is_some() {
                blocks.push(context.sentence(ReportWord::NotComparedSay));
            }
            blocks
        }
    }
}

/// Before and after may stand on one scale only if they were taken in one way.
pub fn alike(before: &Measured, after: &Measured) -> bool {
    match (before.set.way(), after.set.way()) {
        (Some(before), Some(after)) => {
            before.differs_from(after).is_none() && after.differs_from(before).is_none()
        }
        _ => false,
    }
}

/// How the drawing is read, and what such a length can be compared with.
fn legend(context: &ReportContext, of: &Measured) -> Block {
    let legend = if of.conformity.is_compared() {
        Customer::Legend
    } else {
        Customer::LegendNoLimit
    };
    let paper = plain::paper(context.format);
    let parts = [legend, Customer::PaperThickness(&paper)].map(|say| context.customer(say));
    Block::Small(parts.join(" "))
}

/// The limit with its source, or that there is none to compare with.
fn limit(context: &ReportContext, of: &Measured) -> Block {
    if !of.conformity.is_compared() {
        return context.sentence(ReportWord::NotComparedSay);
    }
    let spec = limit_spec(context).filter(|_| of.limit.is_manufacturers());
    let Some(spec) = spec else {
        return Block::Small(house_limit(context, &of.limit, of.apart.is_some()));
    };
    let value = plain::length(context.format, of.limit.value);
    let value = match of.limit.least {
        Some(least) => text::window(context.lang, &plain::length(context.format, least), &value),
        None => value,
    };
    Block::Small(text::limit_customer(
        context.lang,
        &value,
        &source(context, spec),
    ))
}

/// Document, page, day in words and who looked it up.
fn source(context: &ReportContext, spec: &Spec) -> String {
    let Some(source) = super::specs::spec_source(spec) else {
        return String::new();
    };
    let day = plain::day(context.lang, source.looked_up);
    text::source_line(
        context.lang,
        &source.document,
        &source.page,
        &day,
        &source.who,
    )
}

#[cfg(test)]
mod tests;
