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
use crate::job::JobState;
use crate::job::ending::{is_watched, retorque_odometer, watched};
use crate::job::entry::{
    Consent, Due, DueKind, Ending, Event, How, PersonField, Remark, Reply, Scope,
};
use crate::job::evidence::{as_recorded, verdict};
use crate::job::proof::after;
use crate::map::OrderedSet;
use crate::sorted::Sorted;
use crate::text::{self, Asking, Customer, Lang, ReportWord};
use crate::trade::play::{After, Conformity, Test};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Item, ItemKind, NotDoneReason, Step, StepKey};
use crate::units::Format;

/// What the customer said no to, and what can come of it.
pub(super) fn declined(told: &ReportContext) -> Vec<Block> {
    let mut blocks = Vec::new();
    for entry in told.sheet.counting() {
        let Event::Consent(consent) = &entry.what else {
            continue;
        };
        let is_extra = consent.scope == Scope::Extra;
        let holds = if is_extra {
            told.sheet.extra(consent.step)
        } else {
            told.sheet.consent(consent.step)
        };
        let stands = holds == Some(consent);
        if consent.yes || !stands {
            continue;
        }
        let date = time::day(&entry.at).map(|day| plain::day(told.lang, day));
        blocks.push(Block::Sentence(declined_line(
            told,
            consent,
            &date.unwrap_or_default(),
        )));
        if refused_to_sign(told, consent) {
            let who = told.sheet.person(PersonField::Witness).unwrap_or_default();
            let line = text::asking(told.lang, Asking::RefusedToSign(who));
            blocks.push(Block::Sentence(line));
        }
        let decided = consent.step.corner.and_then(|c| told.sheet.decided(c));
        if let Some(decided) = decided.filter(|_| !is_extra) {
            let consequence = text::declined_consequence(told.lang, decided.decision);
            blocks.push(Block::Subheading(told.word(ReportWord::WhatCanHappen)));
            blocks.push(Block::Sentence(consequence.to_owned()));
        }
    }
    if !blocks.is_empty() {
        blocks.insert(0, told.heading(ReportWord::YouDeclined));
        blocks.insert(1, told.sentence(ReportWord::YouDeclinedSay));
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

fn declined_line(told: &ReportContext, consent: &Consent, date: &str) -> String {
    let what = scope(told, consent);
    match &consent.amount {
        Some(amount) => {
            text::declined_customer(told.lang, &what, &money(told.format, amount), date)
        }
        None => text::declined_customer_open(told.lang, &what, date),
    }
}

/// What is still loose by name, and who took charge of the car.
pub(super) fn left(told: &ReportContext) -> Vec<Block> {
    if !standing::is_unfinished(told.sheet) {
        return Vec::new();
    }
    let mut blocks = vec![told.heading(ReportWord::LooseList)];
    let loose: Vec<Item> = told.sheet.loose().iter().map(|(item, _)| *item).collect();
    if !loose.is_empty() {
        let names = super::entry_line::items(told, &loose);
        blocks.push(Block::Sentence(text::left_loose(told.lang, &names)));
    }
    let charge = told.sheet.ended().and_then(|ended| ended.charge);
    let who = charge.map_or_else(
        || told.word(ReportWord::NotRecorded),
        |charge| text::charge(told.lang, charge).to_owned(),
    );
    blocks.push(Block::Rows(vec![(told.word(ReportWord::TookCharge), who)]));
    blocks
}

/// What is left for the customer to do, and what to stop for.
pub(super) fn must_do(told: &ReportContext) -> Vec<Block> {
    let stays = must_not_drive(told.sheet);
    // A car that must not move has no distance to cover; the date stands with the technician.
    let mut blocks = if stays { Vec::new() } else { retorque(told) };
    if let Some(due) = watched(told.sheet) {
        blocks.extend(
            told.corners()
                .iter()
                .filter(|corner| is_watched(told.sheet, **corner))
                .map(|c| {
                    let date = plain::date(told.lang, &due.date);
                    Block::Sentence(text::recheck_customer(told.lang, *c, &date))
                }),
        );
    }
    if stays {
        let words = [ReportWord::DoNotDrive, ReportWord::TowIt].map(|word| told.word(word));
        blocks.insert(0, Block::Sentence(words.join(" ")));
    } else if standing::ending(told.sheet) != Some(Ending::NotSafeHere) {
        blocks.push(Block::Subheading(told.word(ReportWord::StopFor)));
        blocks.push(Block::List(
            [
                ReportWord::StopForNoise,
                ReportWord::StopForWobble,
                ReportWord::StopForSmell,
                ReportWord::StopForPedal,
                ReportWord::StopForWarningLight,
            ]
            .map(|word| told.word(word))
            .to_vec(),
        ));
    }
    if !blocks.is_empty() {
        blocks.insert(0, told.heading(ReportWord::YouMustDo));
    }
    blocks
}

/// The lug nuts again, wherever a wheel was off and is back.
fn retorque(told: &ReportContext) -> Vec<Block> {
    let Some(sentence) = retorque_line(told) else {
        return Vec::new();
    };
    vec![
        Block::Sentence(sentence),
        told.sentence(ReportWord::RetorqueWhy),
    ]
}

/// By when and after how far the lug nuts are tightened again.
pub(super) fn retorque_line(told: &ReportContext) -> Option<String> {
    let due = told.sheet.due(DueKind::Retorque);
    let was_off = |corner: &Corner| {
        let wheel = Item {
            corner: *corner,
            group: ItemKind::Wheel,
            number: 1,
        };
        told.sheet.item(wheel).is_some()
    };
    Some(match due {
        Some(due) => retorque_sentence(told.lang, told.format, told.sheet, due),
        None if told.corners().iter().any(was_off) => format!(
            "{}. {}",
            told.word(ReportWord::RetorqueHead),
            told.word(ReportWord::RetorqueNoDate)
        ),
        None => return None,
    })
}

/// When the lug nuts are due, in the customer's words: by distance, by what the odometer shows
/// then if it was read, and by date.
pub fn retorque_sentence(lang: Lang, format: Format, sheet: &JobState, due: &Due) -> String {
    let date = plain::date(lang, &due.date);
    let Some(far) = &due.distance else {
        return text::retorque_customer_by(lang, &date);
    };
    let far = format.typed(far).line();
    match retorque_odometer(sheet, due) {
        Some((_, then)) => {
            text::retorque_customer_at(lang, &far, &format.typed(&then).line(), &date)
        }
        None => text::retorque_customer(lang, &far, &date),
    }
}

/// The price, and every approval and refusal.
pub(super) fn price(told: &ReportContext) -> Vec<Block> {
    let mut blocks = bill(told);
    let answers = consent_lines(told);
    if !answers.is_empty() {
        blocks.push(told.heading(ReportWord::Consents));
        blocks.push(Block::List(answers));
    }
    blocks
}

/// Warranty and signatures. Where the customer refused to sign, no signature stands on this page:
/// it would read as theirs. What was signed at other steps stands on the technician's pages.
pub(super) fn signed(told: &ReportContext) -> Vec<Block> {
    let mut blocks = warranty(told);
    let refused = Reply::NotDone(NotDoneReason::CustomerSaysNo);
    let at_the_end = told.sheet.reply(StepKey::once(Step::Sign)) == Some(&refused);
    if at_the_end {
        blocks.push(told.sentence(ReportWord::SignatureRefused));
    } else if !told
        .sheet
        .counting()
        .any(|entry| is_refused(told, &entry.what))
    {
        blocks.extend(signatures(told, plain::moment));
    }
    blocks
}

/// Whether an entry is an answer that stands and whose customer would not sign it.
fn is_refused(told: &ReportContext, what: &Event) -> bool {
    match what {
        Event::Consent(consent) => refused_to_sign(told, consent),
        _ => false,
    }
}

/// Whether an answer that stands was spoken because the customer would not sign.
fn refused_to_sign(told: &ReportContext, consent: &Consent) -> bool {
    let is_extra = consent.scope == Scope::Extra;
    let holds = if is_extra {
        told.sheet.extra(consent.step)
    } else {
        told.sheet.consent(consent.step)
    };
    let stands = holds == Some(consent) && !consent.yes;
    let unsigned = told.sheet.signed(consent.step).is_none();
    // Inspection and further work are asked verbally as well, where nobody was to sign.
    let was_to = consent.scope == Scope::Repair || told.unsigned.contains(&consent.step);
    stands && unsigned && consent.how == How::Spoken && was_to
}

/// The shop's own words, where something was repaired.
fn warranty(told: &ReportContext) -> Vec<Block> {
    let repaired = |c: &Corner| standing::is_replaced(told.sheet, &told.plan, *c);
    if told.reader.warranty.is_empty() || !told.corners().iter().any(repaired) {
        return Vec::new();
    }
    vec![
        told.heading(ReportWord::Warranty),
        Block::Sentence(told.reader.warranty.clone()),
    ]
}

/// The tests that were not done, each once, and how many steps beside them.
pub(super) fn not_checked(told: &ReportContext) -> Vec<Block> {
    let mut tests: Vec<Test> = told
        .corners()
        .iter()
        .flat_map(|corner| match told.sheet.decided(*corner) {
            Some(decided) => as_recorded(decided).not_done,
            None => verdict(told.sheet, *corner).not_done,
        })
        .collect();
    tests.order();
    tests.dedup();
    let mut lines: Vec<String> = tests
        .iter()
        .map(|test| text::test_customer(told.lang, *test).to_owned())
        .collect();
    if warning_lights::never_seen(told.sheet) {
        lines.push(told.customer(Customer::WarningLightsNotChecked));
    }
    lines.extend(not_proved(told));
    let steps = answers::not_done(told).len();
    if 0 < steps {
        lines.push(text::steps_not_done_customer(told.lang, steps));
    }
    if lines.is_empty() {
        return Vec::new();
    }
    vec![told.heading(ReportWord::NotChecked), Block::List(lines)]
}

/// What nobody looked at on the new part.
fn not_proved(told: &ReportContext) -> Vec<String> {
    let replaced = |corner: &&Corner| standing::is_replaced(told.sheet, &told.plan, **corner);
    let mut tests: Vec<Test> = told
        .corners()
        .iter()
        .filter(replaced)
        .flat_map(|corner| match after(told.sheet, *corner) {
            After::Pass { not_done, .. } | After::NotJudged { not_done } => not_done,
            After::Blocked { .. } => Vec::new(),
        })
        .collect();
    tests.order();
    tests.dedup();
    let name = told.word(ReportWord::SignAfter);
    tests
        .iter()
        .map(|test| format!("{name}: {}", text::test_customer(told.lang, *test)))
        .collect()
}

/// What no report can promise, who wins over it, and how to reach whoever made it.
pub(super) fn cautions(told: &ReportContext) -> Vec<Block> {
    let last = |corner: &Corner| {
        let (before, after) = sets(told, *corner);
        after.or(before)
    };
    let not_proven = told
        .corners()
        .iter()
        .filter_map(last)
        .any(|set| matches!(set.conformity, Conformity::InNotProven(_)));
    let mut blocks = vec![told.heading(ReportWord::Cautions)];
    if not_proven {
        blocks.push(told.sentence(ReportWord::WithinNotProven));
    }
    let always = [
        ReportWord::NothingClears,
        ReportWord::ManufacturerWins,
        ReportWord::Disclaimer,
    ];
    let always = always.map(|word| told.word(word));
    blocks.push(Block::Small(always.join(" ")));
    let us = [&told.reader.made_by, &told.reader.contact];
    let us: Vec<&str> = us
        .into_iter()
        .map(String::as_str)
        .filter(|text| !text.is_empty())
        .collect();
    if !us.is_empty() {
        blocks.push(Block::Rows(vec![(
            told.word(ReportWord::Contact),
            us.join(", "),
        )]));
    }
    blocks
}

#[cfg(test)]
mod tests;
