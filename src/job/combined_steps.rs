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
use crate::trade::wheel_end::{Check, Choice, Form, NotDoneReason, PlannedStep};

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
    steps: &'a [PlannedStep],
    first: &'a PlannedStep,
) -> Vec<&'a PlannedStep> {
    let mut recorded = vec![first];
    // What is held says what to do now, alone.
    if status(sheet, first) == Status::Held || held(sheet, steps, first).is_some() {
        return recorded;
    }
    let after = steps
        .iter()
        .skip_while(|planned| planned.key != first.key)
        .skip(1);
    for planned in after {
        let joins = recorded.last().is_some_and(|last| last.joins);
        if !joins || !can_follow(sheet, steps, planned, &recorded) {
            break;
        }
        recorded.push(planned);
    }
    recorded
}

fn can_follow(
    sheet: &JobState,
    steps: &[PlannedStep],
    planned: &PlannedStep,
    recorded: &[&PlannedStep],
) -> bool {
    // What comes before it is told on the same screen.
    let held = held_after(sheet, steps, planned, recorded);
    let untouched = status(sheet, planned) == Status::Open && held.is_none();
    untouched
        && match planned.form {
            Form::Spec(_) => false,
            Form::Turn(group) => Turning::of(sheet, planned, group)
                .is_some_and(|turning| turning.next().is_some() && !turning.is_begun()),
            _ => true,
        }
}

/// The rows of steps: each is empty until it is turned.
pub fn lines(steps: &[PlannedStep]) -> Vec<Line> {
    let of_step = |(step, planned): (usize, &PlannedStep)| -> Vec<Line> {
        let line = |check| Line {
            step,
            check,
            answer: None,
        };
        match &planned.form {
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
    fn saved(self) -> Answer {
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
pub fn rows(sheet: &JobState, planned: &PlannedStep, checks: &[Check]) -> Vec<Option<Answer>> {
    let recorded = match sheet.reply(planned.key) {
        Some(Reply::Checked(recorded)) => recorded.as_slice(),
        _ => &[],
    };
    let wrong = recorded.iter().any(|(_, answer)| *answer != Answer::Yes);
    let answered = |check: &Check| {
        let row = recorded
            .iter()
            .find(|(of, _)| of == check)
            .filter(|_| wrong);
        row.map(|(_, answer)| *answer)
    };
    checks.iter().map(answered).collect()
}

/// What a tap turns a row to that stood at `told`: what was put right is yes at once.
pub fn put_right(recorded: Option<Answer>, answer: Option<Answer>) -> Answer {
    match recorded {
        Some(wrong) if wrong != Answer::Yes && answer == recorded => Answer::Yes,
        _ => next_answer(answer),
    }
}

/// How many rows were not touched.
pub fn open_rows(lines: &[Line]) -> usize {
    lines.iter().filter(|line| line.answer.is_none()).count()
}

/// Whether a row may say that a step is done; a question is answered or stays open.
const fn is_work(planned: &PlannedStep) -> bool {
    !matches!(
        planned.form,
        Form::Ask | Form::Choice(_) | Form::DialSetup(_)
    )
}

/// What the rows write where the last step was not done: what was touched, and of questions that
/// they were not asked. A row that nobody touched stays open and comes next, alone.
pub fn screen_without(
    sheet: &JobState,
    steps: &[PlannedStep],
    lines: &[Line],
    because: NotDoneReason,
    beside: impl Fn(&PlannedStep) -> Vec<Event>,
) -> Vec<Event> {
    let of_step = |(step, planned): (usize, &PlannedStep)| {
        let rows: Vec<Line> = lines.iter().filter(|it| it.step == step).copied().collect();
        let touched = rows.iter().any(|line| line.answer.is_some());
        match &planned.form {
            _ if !is_work(planned) => vec![Event::Answered(planned.key, Reply::NotDone(because))],
            _ if !touched => Vec::new(),
            Form::Checks(_) => {
                let answer = |line: &Line| line.answer.unwrap_or(Answer::NotDone);
                let checked = rows.iter().filter_map(|it| Some((it.check?, answer(it))));
                done(sheet, planned, Reply::Checked(checked.collect()))
            }
            _ => worked(sheet, planned, &rows, &beside),
        }
    };
    steps.iter().enumerate().flat_map(of_step).collect()
}

/// What a tap turns a question of a list to, one after the other, before it is open again.
pub fn turns(planned: &PlannedStep) -> Vec<Reply> {
    let mut turns: Vec<Reply> = match &planned.form {
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
pub const fn no_to(planned: &PlannedStep) -> Reply {
    match planned.form {
        Form::Choice(_) => Reply::Picked(Choice::NoChange),
        _ => Reply::Said(Answer::No),
    }
}

/// What the rows write; `beside` gives what a step writes before its own answer.
pub fn recorded(
    sheet: &JobState,
    steps: &[PlannedStep],
    lines: &[Line],
    beside: impl Fn(&PlannedStep) -> Vec<Event>,
) -> Vec<Event> {
    let of_step = |(step, planned): (usize, &PlannedStep)| {
        let rows = lines.iter().filter(|line| line.step == step);
        if let Form::Checks(_) = planned.form {
            let checked = rows.filter_map(|line| Some((line.check?, line.saved())));
            return done(sheet, planned, Reply::Checked(checked.collect()));
        }
        if !is_work(planned) {
            return Vec::new();
        }
        worked(sheet, planned, &rows.copied().collect::<Vec<_>>(), &beside)
    };
    steps.iter().enumerate().flat_map(of_step).collect()
}

/// What a row of work writes: that it is done, unless it was turned to "not yet".
fn worked(
    sheet: &JobState,
    planned: &PlannedStep,
    rows: &[Line],
    beside: &impl Fn(&PlannedStep) -> Vec<Event>,
) -> Vec<Event> {
    if rows.iter().all(|line| line.saved() != Answer::Yes) {
        return Vec::new();
    }
    let mut whats = beside(planned);
    whats.extend(done(sheet, planned, Reply::Done));
    whats
}
