//! Steps that one screen tells together, and what its one tap writes of them.
//!
//! Each keeps its own name and its own answer in the record. The last is answered with its own
//! keys; those before it are rows that are empty, and the keys say for how many rows they stand. A
//! row that was turned to "not yet" stays open: its step comes next, alone, where it can be answered
//! with no or "not done".

use crate::job::act::done;
use crate::job::entry::{Event, Reply};
use crate::job::gate::{held, held_after};
use crate::job::progress::{Status, status};
use crate::job::sheet::JobState;
use crate::job::turn::Turning;
use crate::trade::answer::Answer;
use crate::trade::wheel_end::{Check, Choice, Form, NotDoneReason, StepSpec};

/// One row of the steps that stand before the last.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Line {
    /// Which of the steps, from 0.
    pub step: usize,
    /// The one thing of a list; none where the step is done or not.
    pub check: Option<Check>,
    /// How it was answered by hand; none where the key below answers it with yes.
    pub answer: Option<Answer>,
}

/// The steps from `first` on that one screen tells: all but the last are rows.
///
/// They follow one another without a gap; a step that is settled, begun or held ends them, and so
/// does one that cannot be answered before something else is known.
pub fn combined_steps<'a>(
    sheet: &JobState,
    steps: &'a [StepSpec],
    first: &'a StepSpec,
) -> Vec<&'a StepSpec> {
    let mut told = vec![first];
    // What is held says what to do now, alone.
    if status(sheet, first) == Status::Held || held(sheet, steps, first).is_some() {
        return told;
    }
    let after = steps
        .iter()
        .skip_while(|spec| spec.key != first.key)
        .skip(1);
    for spec in after {
        let joins = told.last().is_some_and(|last| last.joins);
        if !joins || !can_follow(sheet, steps, spec, &told) {
            break;
        }
        told.push(spec);
    }
    told
}

fn can_follow(sheet: &JobState, steps: &[StepSpec], spec: &StepSpec, told: &[&StepSpec]) -> bool {
    // What comes before it is told on the same screen.
    let held = held_after(sheet, steps, spec, told);
    let untouched = status(sheet, spec) == Status::Open && held.is_none();
    untouched
        && match spec.form {
            Form::Card(_) => false,
            Form::Turn(group) => Turning::of(sheet, spec, group)
                .is_some_and(|turning| turning.next().is_some() && !turning.is_begun()),
            _ => true,
        }
}

/// The rows of steps: each is empty until it is turned.
pub fn lines(steps: &[StepSpec]) -> Vec<Line> {
    let of_step = |(step, spec): (usize, &StepSpec)| -> Vec<Line> {
        let line = |check| Line {
            step,
            check,
            answer: None,
        };
        match &spec.form {
            Form::Checks(checks) => checks.iter().map(|check| line(Some(*check))).collect(),
            _ => vec![line(None)],
        }
    };
    steps.iter().enumerate().flat_map(of_step).collect()
}

impl Line {
    /// The next answer in turn; what is done or not has no "no" here.
    pub const fn turned(self) -> Self {
        let answer = match (self.answer, self.check) {
            (None | Some(Answer::Yes), None) => Answer::NotDone,
            (Some(_), None) => Answer::Yes,
            (answer, Some(_)) => next_answer(answer),
        };
        Self {
            answer: Some(answer),
            ..self
        }
    }

    /// What it is kept as: what was not touched is what the key says of it.
    fn kept(self) -> Answer {
        self.answer.unwrap_or(Answer::Yes)
    }
}

/// What a tap turns a row of a list to: what is not right is what a finger is for.
pub const fn next_answer(answer: Option<Answer>) -> Answer {
    match answer {
        None | Some(Answer::Yes) => Answer::No,
        Some(Answer::No) => Answer::NotDone,
        Some(Answer::NotDone) => Answer::Yes,
    }
}

/// The rows of a list that stands alone: empty, or as they were answered while one of them was not
/// yes, so that only a touch of that row lifts it.
pub fn rows(sheet: &JobState, spec: &StepSpec, checks: &[Check]) -> Vec<Option<Answer>> {
    let told = match sheet.reply(spec.key) {
        Some(Reply::Checked(told)) => told.as_slice(),
        _ => &[],
    };
    let wrong = told.iter().any(|(_, answer)| *answer != Answer::Yes);
    let answered = |check: &Check| {
        let row = told.iter().find(|(of, _)| of == check).filter(|_| wrong);
        row.map(|(_, answer)| *answer)
    };
    checks.iter().map(answered).collect()
}

/// What a tap turns a row to that stood at `told`: what was put right is yes at once.
pub fn put_right(told: Option<Answer>, answer: Option<Answer>) -> Answer {
    match told {
        Some(wrong) if wrong != Answer::Yes && answer == told => Answer::Yes,
        _ => next_answer(answer),
    }
}

/// How many rows were not touched.
pub fn open_rows(lines: &[Line]) -> usize {
    lines.iter().filter(|line| line.answer.is_none()).count()
}

/// Whether a row may say that a step is done; a question is answered or stays open.
const fn is_work(spec: &StepSpec) -> bool {
    !matches!(spec.form, Form::Ask | Form::Choice(_) | Form::DialSetup(_))
}

/// What the rows write where the last step was not done: what was touched, and of questions that
/// they were not asked. A row that nobody touched stays open and comes next, alone.
pub fn told_without(
    sheet: &JobState,
    steps: &[StepSpec],
    lines: &[Line],
    because: NotDoneReason,
    beside: impl Fn(&StepSpec) -> Vec<Event>,
) -> Vec<Event> {
    let of_step = |(step, spec): (usize, &StepSpec)| {
        let rows: Vec<Line> = lines.iter().filter(|it| it.step == step).copied().collect();
        let touched = rows.iter().any(|line| line.answer.is_some());
        match &spec.form {
            _ if !is_work(spec) => vec![Event::Answered(spec.key, Reply::NotDone(because))],
            _ if !touched => Vec::new(),
            Form::Checks(_) => {
                let answer = |line: &Line| line.answer.unwrap_or(Answer::NotDone);
                let checked = rows.iter().filter_map(|it| Some((it.check?, answer(it))));
                done(sheet, spec, Reply::Checked(checked.collect()))
            }
            _ => worked(sheet, spec, &rows, &beside),
        }
    };
    steps.iter().enumerate().flat_map(of_step).collect()
}

/// What a tap turns a question of a list to, one after the other, before it is open again.
pub fn turns(spec: &StepSpec) -> Vec<Reply> {
    let mut turns: Vec<Reply> = match &spec.form {
        Form::Choice(picks) => picks
            .iter()
            .filter(|pick| **pick != Choice::NoChange)
            .map(|pick| Reply::Picked(*pick))
            .collect(),
        _ => vec![Reply::Said(Answer::Yes)],
    };
    turns.push(Reply::NotDone(NotDoneReason::Other));
    turns
}

/// What "no to the rest" answers to a question of a list.
pub const fn no_to(spec: &StepSpec) -> Reply {
    match spec.form {
        Form::Choice(_) => Reply::Picked(Choice::NoChange),
        _ => Reply::Said(Answer::No),
    }
}

/// What the rows write; `beside` gives what a step writes before its own answer.
pub fn told(
    sheet: &JobState,
    steps: &[StepSpec],
    lines: &[Line],
    beside: impl Fn(&StepSpec) -> Vec<Event>,
) -> Vec<Event> {
    let of_step = |(step, spec): (usize, &StepSpec)| {
        let rows = lines.iter().filter(|line| line.step == step);
        if let Form::Checks(_) = spec.form {
            let checked = rows.filter_map(|line| Some((line.check?, line.kept())));
            return done(sheet, spec, Reply::Checked(checked.collect()));
        }
        if !is_work(spec) {
            return Vec::new();
        }
        worked(sheet, spec, &rows.copied().collect::<Vec<_>>(), &beside)
    };
    steps.iter().enumerate().flat_map(of_step).collect()
}

/// What a row of work writes: that it is done, unless it was turned to "not yet".
fn worked(
    sheet: &JobState,
    spec: &StepSpec,
    rows: &[Line],
    beside: &impl Fn(&StepSpec) -> Vec<Event>,
) -> Vec<Event> {
    if rows.iter().all(|line| line.kept() != Answer::Yes) {
        return Vec::new();
    }
    let mut whats = beside(spec);
    whats.extend(done(sheet, spec, Reply::Done));
    whats
}
