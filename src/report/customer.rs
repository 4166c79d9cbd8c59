//! Page one: what is true of the car now, why, what was done, what it costs, what to do.

use super::block::{Block, Size};
use super::missing::{missing, names};
use super::record::parts;
use super::standing;
use super::warning_lights::warning_light_lines;
use super::why::why;
use super::{ReportContext, due_items};
use crate::drawing::corner::{self, Place};
use crate::drawing::mark::Mark;
use crate::job::answers::{not_tried, still_there};
use crate::job::proof::after;
use crate::job::repair;
use crate::text::{self, Customer, Now, ReportWord};
use crate::trade::play::{After, Decision};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::Sign;

/// The page.
pub(super) fn page(context: &ReportContext) -> Vec<Block> {
    let now = standing::now(context.sheet, &context.plan);
    let mut blocks = vec![head(context, now), drawing(context)];
    blocks.extend(super::conflict::notices(context));
    blocks.extend(due_items::left(context));
    for corner in context.corners() {
        blocks.extend(why(context, *corner));
    }
    blocks.extend(done(context));
    blocks.extend(due_items::declined(context));
    blocks.extend(due_items::price(context));
    blocks.extend(due_items::must_do(context));
    blocks.extend(due_items::not_checked(context));
    blocks.extend(due_items::cautions(context));
    blocks.extend(due_items::signed(context));
    blocks
}

/// What is true now, in a large word, with what it means and how each corner is.
fn head(context: &ReportContext, now: Now) -> Block {
    let mut lines = vec![text::now_say(context.lang, now).to_owned()];
    if now.is_not_released() {
        let open = missing(context.sheet, &context.plan);
        let open: Vec<String> = open.iter().map(|it| it.say(context.lang)).collect();
        let first = lines.pop().unwrap_or_default();
        lines.push(format!("{first} {}.", open.join("; ")));
        lines.push(context.customer(Customer::AskBeforeDriving));
    }
    if now.forbids_driving() {
        lines.push(context.word(ReportWord::TowIt));
    }
    lines.extend(
        context
            .corners()
            .iter()
            .filter_map(|c| corner_line(context, *c, now)),
    );
    lines.extend(warning_light_lines(context.lang, context.sheet));
    // What is missing already names the signs.
    if !now.is_not_released() {
        lines.extend(on_the_road(context));
    }
    Block::Standing {
        stop: now.forbids_driving(),
        title: text::now(context.lang, now).to_owned(),
        mark: mark(now).map(|(mark, decision)| {
            mark.drawing()
                .to_svg(text::decision(context.lang, decision))
        }),
        lines,
    }
}

/// The signs of the road that the repair did not take away, and those that were not tried.
fn on_the_road(context: &ReportContext) -> Vec<String> {
    let names = |signs: Vec<Sign>| names(context.lang, &signs);
    let still = Some(names(still_there(context.sheet))).filter(|names| !names.is_empty());
    let untried = Some(names(not_tried(context.sheet))).filter(|names| !names.is_empty());
    let still = still.map(|names| text::still_there(context.lang, &names));
    let untried = untried.map(|names| text::not_tried(context.lang, &names));
    still.into_iter().chain(untried).collect()
}

/// The ring of a decision, drawn where the word beside it says the same.
const fn mark(now: Now) -> Option<(Mark, Decision)> {
    match now {
        Now::Unfinished
        | Now::Stop
        | Now::ProofFailed
        | Now::PedalSoft
        | Now::BrakeWarningLight => Some((Mark::Stop, Decision::Stop)),
        Now::ReplacedSafe | Now::AdjustedSafe | Now::NothingFound => {
            Some((Mark::Keep, Decision::Keep))
        }
        Now::Watch => Some((Mark::Watch, Decision::Watch)),
        Now::Declined => Some((Mark::Replace, Decision::Replace)),
        Now::ReplacedOpen
        | Now::AdjustedOpen
        | Now::InspectionDeclined
        | Now::NotSafeHere
        | Now::WarningLightOn
        | Now::Incomplete
        | Now::Open => None,
    }
}

/// How one corner is; a decision stands here only where it is not repaired since.
fn corner_line(context: &ReportContext, corner: Corner, now: Now) -> Option<String> {
    let name = text::corner_title(context.lang, corner);
    let plain = |say| Some(format!("{name}: {}.", context.customer(say)));
    let done = repair(context.sheet, corner);
    let short = |say: &str| format!("{name}: {say}.");
    if standing::fails(context.sheet, &context.plan, corner) {
        let line = short(text::corner_fails(context.lang, done));
        return Some(fails_because(context, corner, line));
    }
    if standing::is_replaced(context.sheet, &context.plan, corner) {
        return Some(short(text::corner_repaired(context.lang, done)));
    }
    let decided = context
        .sheet
        .decided(corner)
        .map(|decided| decided.decision);
    let unjudged = matches!(now, Now::InspectionDeclined | Now::NotSafeHere);
    match decided {
        Some(Decision::Keep) => plain(Customer::CornerNothing),
        Some(Decision::Replace) => {
            let title = text::corner_decision(context.lang, corner, Decision::Replace);
            let kind = context.plan.kind;
            let say = text::decision_sentence_customer(context.lang, Decision::Replace, kind);
            Some(format!("{title}. {say}"))
        }
        Some(decision) => Some(format!(
            "{}.",
            text::corner_decision(context.lang, corner, decision)
        )),
        None if unjudged => None,
        None if standing::stops_on_paper(context.sheet, corner) => {
            let title = text::corner_decision(context.lang, corner, Decision::Stop);
            Some(format!("{title}."))
        }
        None => plain(Customer::CornerOpen),
    }
}

/// That the new part of a corner does not pass, why, and what follows from that.
fn fails_because(context: &ReportContext, corner: Corner, line: String) -> String {
    let against = match after(context.sheet, corner) {
        After::Blocked { against } => against,
        After::Pass { .. } | After::NotJudged { .. } => Vec::new(),
    };
    let why = against.iter().map(|it| text::against(context.lang, *it));
    let why = why.map(str::to_owned).collect::<Vec<_>>();
    let next = context.customer(Customer::NotProved);
    [vec![line], why, vec![next]].concat().join(" ")
}

fn drawing(context: &ReportContext) -> Block {
    let places: Vec<Place> = context.corners().iter().map(|c| place(*c)).collect();
    let names: Vec<&str> = context
        .corners()
        .iter()
        .map(|c| text::corner(context.lang, *c))
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

fn done(context: &ReportContext) -> Vec<Block> {
    let lines: Vec<String> = context
        .corners()
        .iter()
        .filter_map(|corner| {
            if standing::is_replaced(context.sheet, &context.plan, *corner) {
                let done = repair(context.sheet, *corner);
                Some(text::repaired_customer(context.lang, *corner, done))
            } else if standing::is_put_back(context.sheet, &context.plan, *corner) {
                Some(text::put_back_customer(context.lang, *corner))
            } else {
                None
            }
        })
        .collect();
    let mut blocks = Vec::new();
    if !lines.is_empty() {
        blocks.push(context.heading(ReportWord::WhatWeDid));
        blocks.extend(lines.into_iter().map(Block::Sentence));
    }
    let parts = parts(context);
    if !parts.is_empty() {
        blocks.push(Block::Rows(parts));
    }
    blocks
}

#[cfg(test)]
mod tests;
