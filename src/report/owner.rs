//! Page one: what it means and what to do, in the owner's words.

use super::block::{Block, Size};
use super::cards::{card_source, limit_value, source_line};
use super::money::money;
use super::record::{consents, parts, signatures};
use super::standing::{self, must_not_drive};
use super::strip::{Set, mean, strip};
use super::technician::{house_limit, limit_card};
use super::{Told, answers};
use crate::drawing::corner::{self, Place};
use crate::drawing::mark::Mark;
use crate::job::entry::{Consent, DueKind, Ending, Reply, What};
use crate::job::judge::{Measured, measured, verdict};
use crate::text::{self, ReportWord};
use crate::trade::play::{Conformity, Decision, Test};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Because, Group, Item, SetName, Step, StepKey, When};

/// The page.
pub(super) fn page(told: &Told) -> Vec<Block> {
    let mut blocks = answer(told);
    for corner in told.corners() {
        blocks.extend(found(told, *corner));
    }
    blocks.extend(done(told));
    blocks.extend(declined(told));
    blocks.extend(left(told));
    blocks.extend(must_do(told));
    blocks.extend(price(told));
    blocks.extend(not_checked(told));
    blocks.extend(cautions(told));
    blocks
}

fn answer(told: &Told) -> Vec<Block> {
    let mut blocks = vec![drawing(told), told.heading(ReportWord::TheAnswer)];
    if must_not_drive(told.sheet) {
        blocks.push(told_not_to_drive(told));
    }
    for corner in told.corners() {
        blocks.extend(decision(told, *corner));
    }
    blocks.push(match standing::ending(told.sheet) {
        Some(ending) => Block::Sentence(text::answer_owner(told.lang, ending).to_owned()),
        None => told.sentence(ReportWord::JobOpenYet),
    });
    let corners = told.corners().iter();
    if corners
        .clone()
        .any(|corner| standing::fails(told.sheet, &told.plan, *corner))
    {
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

fn told_not_to_drive(told: &Told) -> Block {
    let why = if standing::is_unfinished(told.sheet) {
        told.word(ReportWord::UnfinishedDanger)
    } else {
        text::decision_sentence_owner(told.lang, Decision::Stop).to_owned()
    };
    let mut words = vec![why, told.word(ReportWord::TowIt)];
    if standing::is_unfinished(told.sheet) {
        words.insert(0, told.word(ReportWord::LeftOnStands));
    }
    Block::Notice(words.join(" "))
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
    let set = |when, nth| measured(told.sheet, corner, SetName { when, nth }).and_then(Result::ok);
    let before = set(When::Before, 2).or_else(|| set(When::Before, 1));
    (before, set(When::After, 1))
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
    let Some(card) = limit_card(told) else {
        return Block::Sentence(house_limit(told));
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

fn declined(told: &Told) -> Vec<Block> {
    let mut blocks = Vec::new();
    for entry in told.sheet.counting() {
        let What::Consent(consent) = &entry.what else {
            continue;
        };
        let stands = told.sheet.consent(consent.step) == Some(consent);
        if consent.yes || !stands {
            continue;
        }
        let date = super::time::day(&entry.at).map(|day| day.to_string());
        blocks.push(Block::Sentence(declined_line(
            told,
            consent,
            &date.unwrap_or_default(),
        )));
        let decided = consent.step.corner.and_then(|c| told.sheet.decided(c));
        if let Some(decided) = decided {
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

fn declined_line(told: &Told, consent: &Consent, date: &str) -> String {
    let what = text::scope(told.lang, consent.scope);
    let what = consent.step.corner.map_or_else(
        || what.to_owned(),
        |corner| text::step_at(told.lang, what, corner),
    );
    match &consent.amount {
        Some(amount) => text::declined_owner(told.lang, &what, &money(told.format, amount), date),
        None => text::declined_owner_open(told.lang, &what, date),
    }
}

/// What is still loose by name, and who took charge of the car.
fn left(told: &Told) -> Vec<Block> {
    if !standing::is_unfinished(told.sheet) {
        return Vec::new();
    }
    let mut blocks = vec![told.heading(ReportWord::LooseList)];
    let loose: Vec<Item> = told.sheet.loose().iter().map(|(item, _)| *item).collect();
    if !loose.is_empty() {
        let names = super::gist::items(told, &loose);
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

fn must_do(told: &Told) -> Vec<Block> {
    let mut blocks = retorque(told);
    if let Some(due) = told.sheet.due(DueKind::Recheck) {
        blocks.extend(
            told.corners()
                .iter()
                .filter(|corner| !standing::is_repaired(told.sheet, &told.plan, **corner))
                .map(|c| Block::Sentence(text::recheck_owner(told.lang, *c, &due.date))),
        );
    }
    if must_not_drive(told.sheet) {
        blocks.insert(0, Block::Notice(told.word(ReportWord::DoNotDrive)));
    } else if standing::ending(told.sheet) != Some(Ending::NotSafeHere) {
        blocks.push(Block::Subheading(told.word(ReportWord::StopFor)));
        blocks.push(Block::List(
            [
                ReportWord::StopForNoise,
                ReportWord::StopForWobble,
                ReportWord::StopForSmell,
                ReportWord::StopForPedal,
                ReportWord::StopForLamp,
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

/// The wheel nuts again, wherever a wheel was off and is back.
fn retorque(told: &Told) -> Vec<Block> {
    let due = told.sheet.due(DueKind::Retorque);
    let was_off = |corner: &Corner| {
        let wheel = Item {
            corner: *corner,
            group: Group::Wheel,
            number: 1,
        };
        told.sheet.item(wheel).is_some()
    };
    let sentence = match due {
        Some(due) => match &due.distance {
            Some(far) => text::retorque_owner(told.lang, &told.format.typed(far).line(), &due.date),
            None => text::retorque_owner_by(told.lang, &due.date),
        },
        None if told.corners().iter().any(was_off) => format!(
            "{}. {}",
            told.word(ReportWord::RetorqueHead),
            told.word(ReportWord::RetorqueNoDate)
        ),
        None => return Vec::new(),
    };
    vec![
        Block::Sentence(sentence),
        told.sentence(ReportWord::RetorqueWhy),
    ]
}

fn price(told: &Told) -> Vec<Block> {
    let mut blocks = Vec::new();
    if let Some(price) = told.sheet.price() {
        blocks.push(told.heading(ReportWord::PriceHead));
        blocks.push(Block::Rows(vec![
            (
                told.word(ReportWord::PriceRepair),
                money(told.format, &price.repair),
            ),
            (
                told.word(ReportWord::PriceRefit),
                money(told.format, &price.refit),
            ),
        ]));
    }
    if let Some(consents) = consents(told) {
        blocks.push(told.heading(ReportWord::Consents));
        blocks.push(consents);
    }
    blocks.extend(signatures(told));
    let refused = Reply::NotDone(Because::OwnerSaysNo);
    if told.sheet.reply(StepKey::once(Step::Sign)) == Some(&refused) {
        blocks.push(told.sentence(ReportWord::SignatureRefused));
    }
    blocks
}

/// The tests that were not done, each once, and how many steps beside them.
fn not_checked(told: &Told) -> Vec<Block> {
    let mut tests: Vec<Test> = told
        .corners()
        .iter()
        .flat_map(|corner| verdict(told.sheet, *corner).not_done)
        .collect();
    tests.sort_unstable();
    tests.dedup();
    let mut lines: Vec<String> = tests
        .iter()
        .map(|test| text::test_owner(told.lang, *test).to_owned())
        .collect();
    let steps = answers::not_done(told).len();
    if 0 < steps {
        lines.push(text::steps_not_done_owner(told.lang, steps));
    }
    if lines.is_empty() {
        return Vec::new();
    }
    vec![told.heading(ReportWord::NotChecked), Block::List(lines)]
}

fn cautions(told: &Told) -> Vec<Block> {
    let last = |corner: &Corner| {
        let (before, after) = sets(told, *corner);
        after.or(before)
    };
    let not_proven = told
        .corners()
        .iter()
        .filter_map(last)
        .any(|set| matches!(set.conformity, Conformity::InNotProven(_)));
    let mut lines = vec![told.word(ReportWord::NothingClears)];
    if not_proven {
        lines.push(told.word(ReportWord::WithinNotProven));
    }
    lines.push(told.word(ReportWord::MakerWins));
    lines.push(told.word(ReportWord::Disclaimer));
    let mut blocks = vec![told.heading(ReportWord::Cautions), Block::List(lines)];
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
