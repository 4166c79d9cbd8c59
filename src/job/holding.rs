//! The answers that hold other steps.

use crate::job::answers::given;
use crate::job::entry::Reply;
use crate::job::progress::{Status, status};
use crate::job::sheet::JobState;
use crate::trade::answer::Answer;
use crate::trade::wheel_end::{Form, Given, Plan, PlannedStep, Scope, StepKey, hold};

/// A question whose answer holds something, and for what it holds it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Holding {
    /// The question.
    pub question: StepKey,
    /// The answer, or the row of it, that holds.
    pub given: Given,
    /// What waits.
    pub scope: Scope,
}

/// The first answer at a step that holds something.
pub fn holding(sheet: &JobState, plan: &Plan, planned: &PlannedStep) -> Option<Holding> {
    let reply = sheet.reply(planned.key)?;
    // What stands in an entry of its own is there, whatever was said of it before.
    if !is_replied(&planned.form) && status(sheet, planned) == Status::Done {
        return None;
    }
    let given = given(planned, reply);
    let held = |given: &Given| hold(planned.key, *given, plan).map(|scope| (*given, scope));
    // What is wrong is told before what was not looked at.
    let unseen = |given: &Given| matches!(given, Given::Row(_, Answer::NotDone));
    let wrong = given.iter().filter(|given| !unseen(given)).find_map(held);
    let found = wrong.or_else(|| given.iter().find_map(held));
    // A list that nobody looked at is not told as if one of its rows was wrong.
    let unseen = matches!(reply, Reply::NotDone(_));
    found.map(|(given, scope)| Holding {
        question: planned.key,
        given: if unseen { Given::NotDone } else { given },
        scope,
    })
}

/// Whether a step is answered by a reply alone.
const fn is_replied(form: &Form) -> bool {
    matches!(
        form,
        Form::Do | Form::Ask | Form::Checks(_) | Form::Choice(_) | Form::Swing | Form::Number(_)
    )
}
