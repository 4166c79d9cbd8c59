//! The rest of page one: what was declined, what is left to do, what it costs, what to mind.

use super::bill::bill;
use super::block::Block;
use super::money::money;
use super::plain;
use super::record::{consent_lines, scope, signatures};
use super::standing::{self, must_not_drive};
use super::warning_lights;
use super::why::sets;
use super::{ReportContext, answers, time};
use crate::job::ending::{is_watched, retorque_odometer, watched};
use crate::job::entry::{
    Consent, Due, DueKind, Ending, Event, How, PersonField, Remark, Reply, Scope,
};
use crate::job::evidence::{as_recorded, verdict};
use crate::job::proof::after;
use crate::job::{JobState, fitted};
use crate::map::OrderedSet;
use crate::sorted::Sorted;
use crate::text::{self, Asking, Customer, Lang, ReportWord};
use crate::trade::play::{After, Conformity, Test};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Item, ItemKind, NotDoneReason, Step, StepKey};
use crate::units::Format;

/// What the customer said no to, and what can come of it.
pub(super) fn declined(context: &ReportContext) -> Vec<Block> {
    let mut blocks = Vec::new();
    for entry in context.sheet.counting() {
        let Event::Consent(consent) = &entry.what else {
            continue;
        };
        let is_extra = consent.scope == Scope::Extra;
        let holds = if is_extra {
            context.sheet.extra(consent.step)
        } else {
            context.sheet.consent(consent.step)
        };
        let stands = holds == Some(consent);
        if consent.yes || !stands {
            continue;
        }
        let date = time::day(&entry.at).map(|day| plain::day(context.lang, day));
        blocks.push(Block::Sentence(declined_line(
            context,
            consent,
            &date.unwrap_or_default(),
        )));
        if refused_to_sign(context, consent) {
            let who = context
                .sheet
                .person(PersonField::Witness)
                .unwrap_or_default();
            let line = text::asking(context.lang, Asking::RefusedToSign(who));
            blocks.push(Block::Sentence(line));
        }
        let decided = consent.step.corner.and_then(|c| context.sheet.decided(c));
        if let Some(decided) = decided.filter(|_| !is_extra) {
            let consequence = text::declined_consequence(context.lang, decided.decision);
            blocks.push(Block::Subheading(context.word(ReportWord::WhatCanHappen)));
            blocks.push(Block::Sentence(consequence.to_owned()));
        }
    }
    if !blocks.is_empty() {
        blocks.insert(0, context.heading(ReportWord::YouDeclined));
        blocks.insert(1, context.sentence(ReportWord::YouDeclinedSay));
    }
    blocks
}

/// The steps at which it was noted that the customer would not sign.
pub(super) fn unsigned(sheet: &JobState) -> OrderedSet<StepKey> {
    let steps = sheet.counting().filter_map(|entry| match &entry.what {
        Event::Remark(step, Remark::RefusedToSign) => Some(*step),
        _ => None,
    });
    OrderedSet::from_iter(steps)
}

fn declined_line(context: &ReportContext, consent: &Consent, date: &str) -> String {
    let what = scope(context, consent);
    match &consent.amount {
        Some(amount) => {
            text::declined_customer(context.lang, &what, &money(context.format, amount), date)
        }
        None => text::declined_customer_open(context.lang, &what, date),
    }
}

/// What is still loose by name, and who took charge of the car.
pub(super) fn left(context: &ReportContext) -> Vec<Block> {
    if !standing::is_unfinished(context.sheet) {
        return Vec::new();
    }
    let mut blocks = vec![context.heading(ReportWord::LooseList)];
    let loose: Vec<Item> = context
        .sheet
        .loose()
        .iter()
        .map(|(item, _)| *item)
        .collect();
    if !loose.is_empty() {
        let names = super::entry_line::items(context, &loose);
        blocks.push(Block::Sentence(text::left_loose(context.lang, &names)));
    }
    let charge = context.sheet.ended().and_then(|ended| ended.charge);
    let who = charge.map_or_else(
        || context.word(ReportWord::NotRecorded),
        |charge| text::charge(context.lang, charge).to_owned(),
    );
    blocks.push(Block::Rows(vec![(
        context.word(ReportWord::TookCharge),
        who,
    )]));
    blocks
}

/// What is left for the customer to do, and what to stop for.
pub(super) fn must_do(context: &ReportContext) -> Vec<Block> {
    let stays = must_not_drive(context.sheet);
    // A car that must not move has no distance to cover; the date stands with the technician.
    let mut blocks = if stays { Vec::new() } else { retorque(context) };
    if let Some(due) = watched(context.sheet) {
        blocks.extend(
            context
                .corners()
                .iter()
                .filter(|corner| is_watched(context.sheet, **corner))
                .map(|c| {
                    let date = plain::date(context.lang, &due.date);
                    Block::Sentence(text::recheck_customer(context.lang, *c, &date))
                }),
        );
    }
    if stays {
        let words = [ReportWord::DoNotDrive, ReportWord::TowIt].map(|word| context.word(word));
        blocks.insert(0, Block::Sentence(words.join(" ")));
    } else if standing::ending(context.sheet) != Some(Ending::NotSafeHere) {
        blocks.push(Block::Subheading(context.word(ReportWord::StopFor)));
        blocks.push(Block::List(
            [
                ReportWord::StopForNoise,
                ReportWord::StopForWobble,
                ReportWord::StopForSmell,
                ReportWord::StopForPedal,
                ReportWord::StopForWarningLight,
            ]
            .map(|word| context.word(word))
            .to_vec(),
        ));
    }
    if !blocks.is_empty() {
        blocks.insert(0, context.heading(ReportWord::YouMustDo));
    }
    blocks
}

/// The lug nuts again, wherever a wheel was off and is back.
fn retorque(context: &ReportContext) -> Vec<Block> {
    let Some(sentence) = retorque_line(context) else {
        return Vec::new();
    };
    vec![
        Block::Sentence(sentence),
        Block::Sentence(text::retorque_why(context.lang, fitted(context.sheet).fixing).to_owned()),
    ]
}

/// By when and after how far the lug nuts are tightened again.
pub(super) fn retorque_line(context: &ReportContext) -> Option<String> {
    let due = context.sheet.due(DueKind::Retorque);
    let was_off = |corner: &Corner| {
        let wheel = Item {
            corner: *corner,
            group: ItemKind::Wheel,
            number: 1,
        };
        context.sheet.item(wheel).is_some()
    };
    Some(match due {
        Some(due) => retorque_sentence(context.lang, context.format, context.sheet, due),
        None if context.corners().iter().any(was_off) => {
            let fixing = fitted(context.sheet).fixing;
            text::retorque_customer(context.lang, fixing, None, None, None)
        }
        None => return None,
    })
}

/// When the lug nuts are due, in the customer's words: by distance, by what the odometer shows
/// then if it was read, and by date.
pub fn retorque_sentence(lang: Lang, format: Format, sheet: &JobState, due: &Due) -> String {
    let date = plain::date(lang, &due.date);
    let far = due.distance.as_ref().map(|far| format.typed(far).line());
    let then = due
        .distance
        .as_ref()
        .and_then(|_| retorque_odometer(sheet, due));
    let then = then.map(|(_, then)| format.typed(&then).line());
    let fixing = fitted(sheet).fixing;
    text::retorque_customer(lang, fixing, far.as_deref(), then.as_deref(), Some(&date))
}

/// The price, and every approval and refusal.
pub(super) fn price(context: &ReportContext) -> Vec<Block> {
    let mut blocks = bill(context);
    let answers = consent_lines(context);
    if !answers.is_empty() {
        blocks.push(context.heading(ReportWord::Consents));
        blocks.push(Block::List(answers));
    }
    blocks
}

/// Warranty and signatures. Where the customer refused to sign, no signature stands on this page:
/// it would read as theirs. What was signed at other steps stands on the technician's pages.
pub(super) fn signed(context: &ReportContext) -> Vec<Block> {
    let mut blocks = warranty(context);
    let refused = Reply::NotDone(NotDoneReason::CustomerSaysNo);
    let at_the_end = context.sheet.reply(StepKey::once(Step::Sign)) == Some(&refused);
    if at_the_end {
        blocks.push(context.sentence(ReportWord::SignatureRefused));
    } else if !context
        .sheet
        .counting()
        .any(|entry| is_refused(context, &entry.what))
    {
        blocks.extend(signatures(context, plain::moment));
    }
    blocks
}

/// Whether an entry is an answer that stands and whose customer would not sign it.
fn is_refused(context: &ReportContext, what: &Event) -> bool {
    match what {
        Event::Consent(consent) => refused_to_sign(context, consent),
        _ => false,
    }
}

/// Whether an answer that stands was spoken because the customer would not sign.
fn refused_to_sign(context: &ReportContext, consent: &Consent) -> bool {
    let is_extra = consent.scope == Scope::Extra;
    let holds = if is_extra {
        context.sheet.extra(consent.step)
    } else {
        context.sheet.consent(consent.step)
    };
    let stands = holds == Some(consent) && !consent.yes;
    let unsigned = context.sheet.signed(consent.step).is_none();
    // Inspection and further work are asked verbally as well, where nobody was to sign.
    let was_to = consent.scope == Scope::Repair || context.unsigned.contains(&consent.step);
    stands && unsigned && consent.how == How::Spoken && was_to
}

/// The shop's own words, where something was repaired.
fn warranty(context: &ReportContext) -> Vec<Block> {
    let repaired = |c: &Corner| standing::is_replaced(context.sheet, &context.plan, *c);
    if context.reader.warranty.is_empty() || !context.corners().iter().any(repaired) {
        return Vec::new();
    }
    vec![
        context.heading(ReportWord::Warranty),
        Block::Sentence(context.reader.warranty.clone()),
    ]
}

/// The tests that were not done, each once, and how many steps beside them.
pub(super) fn not_checked(context: &ReportContext) -> Vec<Block> {
    let mut tests: Vec<Test> = context
        .corners()
        .iter()
        .flat_map(|corner| match context.sheet.decided(*corner) {
            Some(decided) => as_recorded(decided).not_done,
            None => verdict(context.sheet, *corner).not_done,
        })
        .collect();
    tests.order();
    tests.dedup();
    let mut lines: Vec<String> = tests
        .iter()
        .map(|test| text::test_customer(context.lang, *test).to_owned())
        .collect();
    if warning_lights::never_seen(context.sheet) {
        lines.push(context.customer(Customer::WarningLightsNotChecked));
    }
    lines.extend(not_proved(context));
    let steps = answers::not_done(context).len();
    if 0 < steps {
        lines.push(text::steps_not_done_customer(context.lang, steps));
    }
    if lines.is_empty() {
        return Vec::new();
    }
    vec![context.heading(ReportWord::NotChecked), Block::List(lines)]
}

/// What nobody looked at on the new part.
fn not_proved(context: &ReportContext) -> Vec<String> {
    let replaced = |corner: &&Corner| standing::is_replaced(context.sheet, &context.plan, **corner);
    let mut tests: Vec<Test> = context
        .corners()
        .iter()
        .filter(replaced)
        .flat_map(|corner| match after(context.sheet, *corner) {
            After::Pass { not_done, .. } | After::NotJudged { not_done } => not_done,
            After::Blocked { .. } => Vec::new(),
        })
        .collect();
    tests.order();
    tests.dedup();
    let name = context.word(ReportWord::SignAfter);
    tests
        .iter()
        .map(|test| format!("{name}: {}", text::test_customer(context.lang, *test)))
        .collect()
}

/// What no report can promise, who wins over it, and how to reach whoever made it.
pub(super) fn cautions(context: &ReportContext) -> Vec<Block> {
    let last = |corner: &Corner| {
        let (before, after) = sets(context, *corner);
        after.or(before)
    };
    let not_proven = context
        .corners()
        .iter()
        .filter_map(last)
        .any(|set| matches!(set.conformity, Conformity::InNotProven(_)));
    let mut blocks = vec![context.heading(ReportWord::Cautions)];
    if not_proven {
        blocks.push(context.sentence(ReportWord::WithinNotProven));
    }
    let always = [
        ReportWord::NothingClears,
        ReportWord::ManufacturerWins,
        ReportWord::Disclaimer,
    ];
    let always = always.map(|word| context.word(word));
    blocks.push(Block::Small(always.join(" ")));
    let us = [&context.reader.made_by, &context.reader.contact];
    let us: Vec<&str> = us
        .into_iter()
        .map(String::as_str)
        .filter(|text| !text.is_empty())
        .collect();
    if !us.is_empty() {
        blocks.push(Block::Rows(vec![(
            context.word(ReportWord::Contact),
            us.join(", "),
        )]));
    }
    blocks
}

#[cfg(test)]
mod tests;
