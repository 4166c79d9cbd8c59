//! Every answer of every phase with its time, and what was not done with its reason.

use super::block::Block;
use super::entry_line::reply;
use super::time::when;
use super::{ReportContext, standing};
use crate::job::entry::{Entry, Event, Reply};
use crate::job::{Key, Status, status};
use crate::map::OrderedSet;
use crate::text::{self, ReportWord, Say};
use crate::trade::answer::Answer;
use crate::trade::wheel_end::{Form, Phase, PlannedStep, StepKey};

/// The answers, a table a phase, in the order of the work.
pub(super) fn answers(context: &ReportContext) -> Vec<Block> {
    let mut blocks = Vec::new();
    for phase in Phase::ALL {
        let keys = context
            .steps
            .iter()
            .filter(|planned| planned.phase == *phase)
            .map(|planned| planned.key);
        push_table(
            context,
            text::phase(context.lang, *phase).to_owned(),
            keys,
            &mut blocks,
        );
    }
    let others = context.word(ReportWord::OtherAnswers);
    push_table(context, others, left_over(context).into_iter(), &mut blocks);
    blocks
}

fn push_table(
    context: &ReportContext,
    title: String,
    keys: impl Iterator<Item = StepKey>,
    blocks: &mut Vec<Block>,
) {
    let rows: Vec<Vec<String>> = keys.flat_map(|key| stated(context, key)).collect();
    if rows.is_empty() {
        return;
    }
    blocks.push(Block::Subheading(title));
    blocks.push(Block::Table {
        head: [ReportWord::Step, ReportWord::Answer, ReportWord::When]
            .map(|word| context.word(word))
            .to_vec(),
        rows,
    });
}

/// Every answer to a step that stands; more than one if two phones disagree.
fn stated(context: &ReportContext, key: StepKey) -> Vec<Vec<String>> {
    let key = Key::Step(key);
    let entries = context.sheet.stated(&key);
    entries.flat_map(|entry| rows(context, entry)).collect()
}

fn rows(context: &ReportContext, entry: &Entry) -> Vec<Vec<String>> {
    let Event::Answered(step, answer) = &entry.what else {
        return Vec::new();
    };
    reply(context, answer)
        .into_iter()
        .map(|line| vec![context.step(*step), line, when(context.lang, &entry.at)])
        .collect()
}

/// Answered steps that the procedure no longer has, each once.
fn left_over(context: &ReportContext) -> Vec<StepKey> {
    let asked: OrderedSet<StepKey> =
        OrderedSet::from_iter(context.steps.iter().map(|planned| planned.key));
    let mut known = OrderedSet::new();
    let mut keys: Vec<StepKey> = Vec::new();
    for entry in context.sheet.counting() {
        if let Event::Answered(key, _) = &entry.what
            && !asked.contains(key)
            && known.insert(*key)
        {
            keys.push(*key);
        }
    }
    keys
}

/// What was not done, each with its reason: steps, rows of lists, and what nobody answered.
pub(super) fn not_done(context: &ReportContext) -> Vec<String> {
    let asked = context.steps.iter().map(|planned| planned.key);
    let mut lines: Vec<String> = asked
        .chain(left_over(context))
        .flat_map(|key| refused(context, key))
        .collect();
    if standing::ending(context.sheet).is_some() {
        let open = context
            .steps
            .iter()
            .filter(|planned| is_left_open(context, planned));
        lines.extend(open.map(|planned| {
            format!(
                "{}: {}",
                context.step(planned.key),
                context.word(ReportWord::Untouched)
            )
        }));
    }
    lines
}

fn refused(context: &ReportContext, key: StepKey) -> Vec<String> {
    let name = || context.step(key);
    match context.sheet.reply(key) {
        Some(Reply::NotDone(because)) => vec![text::not_done_because(
            context.lang,
            &name(),
            text::because(context.lang, *because),
        )],
        Some(Reply::Said(Answer::NotDone)) => {
            vec![format!("{}: {}", name(), context.say(Say::NotDone))]
        }
        Some(Reply::Checked(checks)) => checks
            .iter()
            .filter(|(_, answer)| *answer == Answer::NotDone)
            .map(|(check, _)| {
                let row = context.numerals(text::check(
                    context.lang,
                    *check,
                    context.plan.fitted.fixing,
                ));
                format!("{}: {row}: {}", name(), context.say(Say::NotDone))
            })
            .collect(),
        _ => Vec::new(),
    }
}

/// A step that the ended job never answered. The report and the ending are told elsewhere, and
/// what is asked afterwards is not late yet.
fn is_left_open(context: &ReportContext, planned: &PlannedStep) -> bool {
    planned.phase != Phase::LookBack
        && !matches!(planned.form, Form::Report | Form::End | Form::Result)
        && matches!(
            status(context.sheet, planned),
            Status::Open | Status::Held | Status::Partly(..)
        )
}
