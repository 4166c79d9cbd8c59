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
use crate::trade::wheel_end::{Form, Phase, StepKey, StepSpec};

/// The answers, a table a phase, in the order of the work.
pub(super) fn answers(told: &ReportContext) -> Vec<Block> {
    let mut blocks = Vec::new();
    for phase in Phase::ALL {
        let keys = told
            .steps
            .iter()
            .filter(|spec| spec.phase == *phase)
            .map(|spec| spec.key);
        push_table(
            told,
            text::phase(told.lang, *phase).to_owned(),
            keys,
            &mut blocks,
        );
    }
    let others = told.word(ReportWord::OtherAnswers);
    push_table(told, others, left_over(told).into_iter(), &mut blocks);
    blocks
}

fn push_table(
    told: &ReportContext,
    title: String,
    keys: impl Iterator<Item = StepKey>,
    blocks: &mut Vec<Block>,
) {
    let rows: Vec<Vec<String>> = keys.flat_map(|key| stated(told, key)).collect();
    if rows.is_empty() {
        return;
    }
    blocks.push(Block::Subheading(title));
    blocks.push(Block::Table {
        head: [ReportWord::Step, ReportWord::Answer, ReportWord::When]
            .map(|word| told.word(word))
            .to_vec(),
        rows,
    });
}

/// Every answer to a step that stands; more than one if two phones disagree.
fn stated(told: &ReportContext, key: StepKey) -> Vec<Vec<String>> {
    let key = Key::Step(key);
    let entries = told.sheet.stated(&key);
    entries.flat_map(|entry| rows(told, entry)).collect()
}

fn rows(told: &ReportContext, entry: &Entry) -> Vec<Vec<String>> {
    let Event::Answered(step, answer) = &entry.what else {
        return Vec::new();
    };
    reply(told, answer)
        .into_iter()
        .map(|line| vec![told.step(*step), line, when(told.lang, &entry.at)])
        .collect()
}

/// Answered steps that the procedure no longer has, each once.
fn left_over(told: &ReportContext) -> Vec<StepKey> {
    let asked: OrderedSet<StepKey> = OrderedSet::from_iter(told.steps.iter().map(|spec| spec.key));
    let mut known = OrderedSet::new();
    let mut keys: Vec<StepKey> = Vec::new();
    for entry in told.sheet.counting() {
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
pub(super) fn not_done(told: &ReportContext) -> Vec<String> {
    let asked = told.steps.iter().map(|spec| spec.key);
    let mut lines: Vec<String> = asked
        .chain(left_over(told))
        .flat_map(|key| refused(told, key))
        .collect();
    if standing::ending(told.sheet).is_some() {
        let open = told.steps.iter().filter(|spec| is_left_open(told, spec));
        lines.extend(open.map(|spec| {
            format!(
                "{}: {}",
                told.step(spec.key),
                told.word(ReportWord::Untouched)
            )
        }));
    }
    lines
}

fn refused(told: &ReportContext, key: StepKey) -> Vec<String> {
    let name = || told.step(key);
    match told.sheet.reply(key) {
        Some(Reply::NotDone(because)) => vec![text::not_done_because(
            told.lang,
            &name(),
            text::because(told.lang, *because),
        )],
        Some(Reply::Said(Answer::NotDone)) => {
            vec![format!("{}: {}", name(), told.say(Say::NotDone))]
        }
        Some(Reply::Checked(checks)) => checks
            .iter()
            .filter(|(_, answer)| *answer == Answer::NotDone)
            .map(|(check, _)| {
                let row = told.numerals(text::check(told.lang, *check));
                format!("{}: {row}: {}", name(), told.say(Say::NotDone))
            })
            .collect(),
        _ => Vec::new(),
    }
}

/// A step that the ended job never answered. The report and the ending are told elsewhere, and
/// what is asked afterwards is not late yet.
fn is_left_open(told: &ReportContext, spec: &StepSpec) -> bool {
    spec.phase != Phase::LookBack
        && !matches!(spec.form, Form::Report | Form::End | Form::Result)
        && matches!(
            status(told.sheet, spec),
            Status::Open | Status::Held | Status::Partly(..)
        )
}
