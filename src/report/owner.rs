//! Page one: what it means and what to do, in the owner's words.

use super::block::{Block, Size};
use super::cards::{card_source, limit_value, source_line};
use super::record::parts;
use super::standing::{self, must_not_drive};
use super::strip::{Set, mean, strip};
use super::technician::{house_limit, limit_card};
use super::{Told, duty};
use crate::drawing::corner::{self, Place};
use crate::drawing::mark::Mark;
use crate::job::entry::Ending;
use crate::job::judge::{self, Measured, before};
use crate::text::{self, ReportWord};
use crate::trade::play::{Conformity, Decision};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{SetName, When};

/// The page.
pub(super) fn page(told: &Told) -> Vec<Block> {
    let mut blocks = answer(told);
    for corner in told.corners() {
        blocks.extend(found(told, *corner));
    }
    blocks.extend(done(told));
    blocks.extend(duty::declined(told));
    blocks.extend(duty::left(told));
    blocks.extend(duty::must_do(told));
    blocks.extend(duty::price(told));
    blocks.extend(duty::not_checked(told));
    blocks.extend(duty::cautions(told));
    blocks
}

fn answer(told: &Told) -> Vec<Block> {
    let mut blocks = Vec::new();
    if must_not_drive(told.sheet) {
        blocks.push(told_not_to_drive(told));
    }
    blocks.push(drawing(told));
    blocks.push(told.heading(ReportWord::TheAnswer));
    for corner in told.corners() {
        blocks.extend(decision(told, *corner));
    }
    blocks.push(match standing::ending(told.sheet) {
        Some(ending) => Block::Sentence(text::answer_owner(told.lang, ending).to_owned()),
        None => told.sentence(ReportWord::JobOpenYet),
    });
    if any_fails(told) {
        blocks.push(told.sentence(ReportWord::ProofFailed));
    }
    if may_drive(told) {
        blocks.push(told.sentence(ReportWord::MayDrive));
    }
    blocks
}

/// Said only where the work ended well; a declined repair is no promise.
fn may_drive(told: &Told) -> bool {
    let well = matches!(
        standing::ending(told.sheet),
        Some(Ending::Finished | Ending::NothingWrong)
    );
    well && !must_not_drive(told.sheet)
}

/// The first thing on the page where the car must not be driven. What can happen stands here or,
/// for a STOP, in the decision's own sentence below.
fn told_not_to_drive(told: &Told) -> Block {
    let words: &[ReportWord] = if standing::is_unfinished(told.sheet) {
        &[
            ReportWord::LeftOnStands,
            ReportWord::UnfinishedDanger,
            ReportWord::TowIt,
        ]
    } else if standing::has_stop(told.sheet, &told.plan) {
        &[ReportWord::DoNotDrive, ReportWord::TowIt]
    } else {
        &[
            ReportWord::DoNotDrive,
            ReportWord::UnfinishedDanger,
            ReportWord::TowIt,
        ]
    };
    let words: Vec<String> = words.iter().map(|word| told.word(*word)).collect();
    Block::Notice(words.join(" "))
}

fn any_fails(told: &Told) -> bool {
    let mut corners = told.corners().iter();
    corners.any(|corner| standing::fails(told.sheet, &told.plan, *corner))
}

fn drawing(told: &Told) -> Block {
    let places: Vec<Place> = told.corners().iter().map(|c| place(*c)).collect();
    let names: Vec<&str> = told
        .corners()
        .iter()
        .map(|c| text::corner(told.lang, *c))
        .collect();
    Block::Drawing {
        size: Size::Beside,
        svg: corner::large(&places).to_svg(&names.join(", ")),
    }
}

const fn place(corner: Corner) -> Place {
    match corner {
        Corner::FrontLeft => Place::FrontLeft,
        Corner::FrontRight => Place::FrontRight,
        Corner::RearLeft => Place::RearLeft,
        Corner::RearRight => Place::RearRight,
    }
}

const fn mark(decision: Decision) -> Mark {
    match decision {
        Decision::Keep => Mark::Keep,
        Decision::Watch => Mark::Watch,
        Decision::Replace => Mark::Replace,
        Decision::Stop => Mark::Stop,
    }
}

/// The decision that stands; for a repaired corner what it was before the work.
fn decision(told: &Told, corner: Corner) -> Option<Block> {
    let decision = told.sheet.decided(corner)?.decision;
    let sentence = if standing::is_repaired(told.sheet, &told.plan, corner) {
        text::was_found_owner(told.lang, decision)
    } else {
        text::decision_sentence_owner(told.lang, decision)
    };
    Some(Block::Decision {
        decision,
        title: text::corner_decision(told.lang, corner, decision),
        mark: mark(decision)
            .drawing()
            .to_svg(text::decision(told.lang, decision)),
        sentence: sentence.to_owned(),
    })
}

/// The set that counts before the work, and the one after it.
pub(super) fn sets(told: &Told, corner: Corner) -> (Option<Measured>, Option<Measured>) {
    let after = SetName {
        when: When::After,
        nth: 1,
    };
    let after = judge::told(told.sheet, corner, after).and_then(Result::ok);
    (before(told.sheet, corner), after)
}

fn found(told: &Told, corner: Corner) -> Vec<Block> {
    let (before, after) = sets(told, corner);
    let label = |word| {
        let name = text::corner_title(told.lang, corner);
        if told.corners().len() > 1 {
            Block::Heading(format!("{name}: {}", told.word(word)))
        } else {
            told.heading(word)
        }
    };
    let one = |word, measured| Set {
        label: told.word(word),
        measured,
    };
    match (&before, &after) {
        (None, None) => Vec::new(),
        (Some(before), Some(after)) if alike(before, after) => {
            let (was, is) = (mean(told, before), mean(told, after));
            let sets = [
                one(ReportWord::SignBefore, before),
                one(ReportWord::SignAfter, after),
            ];
            vec![
                label(ReportWord::BeforeAndAfter),
                Block::Sentence(text::before_after_owner(told.lang, &was, &is)),
                strip(told, &sets),
                limit(told, before),
            ]
        }
        _ => {
            let mut blocks = vec![label(ReportWord::WhatWeFound)];
            for (word, set) in [
                (ReportWord::SignBefore, &before),
                (ReportWord::SignAfter, &after),
            ] {
                if let Some(set) = set {
                    let play = mean(told, set);
                    blocks.push(Block::Sentence(text::found_owner(told.lang, &play)));
                    blocks.push(strip(told, &[one(word, set)]));
                    blocks.push(limit(told, set));
                }
            }
            if before.is_some() && after.is_some() {
                blocks.push(told.sentence(ReportWord::NotComparedSay));
            }
            blocks
        }
    }
}

/// Before and after may stand on one scale only if they were taken in one way.
fn alike(before: &Measured, after: &Measured) -> bool {
    before.set.way().differs_from(after.set.way()).is_none()
        && after.set.way().differs_from(before.set.way()).is_none()
}

/// The limit with its source, or that there is none to compare with.
fn limit(told: &Told, of: &Measured) -> Block {
    if matches!(of.conformity, Conformity::NoComparison(_)) {
        return told.sentence(ReportWord::NotComparedSay);
    }
    let card = limit_card(told).filter(|_| of.limit.is_makers());
    let Some(card) = card else {
        return Block::Sentence(house_limit(told, &of.limit, of.apart.is_some()));
    };
    let value = limit_value(told.format, &of.limit, Some(card));
    let source = card_source(card).map(|source| source_line(told.lang, source));
    Block::Sentence(text::limit_owner(
        told.lang,
        &value,
        &source.unwrap_or_default(),
    ))
}

fn done(told: &Told) -> Vec<Block> {
    let lines: Vec<String> = told
        .corners()
        .iter()
        .filter_map(|corner| {
            if standing::is_replaced(told.sheet, &told.plan, *corner) {
                Some(text::replaced_owner(told.lang, *corner))
            } else if standing::is_put_back(told.sheet, &told.plan, *corner) {
                Some(text::put_back_owner(told.lang, *corner))
            } else {
                None
            }
        })
        .collect();
    let mut blocks = Vec::new();
    if !lines.is_empty() {
        blocks.push(told.heading(ReportWord::WhatWeDid));
        blocks.extend(lines.into_iter().map(Block::Sentence));
    }
    let parts = parts(told);
    if !parts.is_empty() {
        blocks.push(told.heading(ReportWord::Parts));
        blocks.push(Block::Rows(parts));
    }
    blocks
}
