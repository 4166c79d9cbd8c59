//! What was answered, answer by answer, and what follows from it by the one table of the trade.

use crate::job::entry::Reply;
use crate::job::progress::{Status, has_sign, status};
use crate::job::sheet::JobState;
use crate::trade::answer::Answer;
use crate::trade::wheel_end::{
    Check, Choice, Form, Given, Plan, Scope, Sign, Step, StepKey, StepSpec, hold, sign_gone,
    stays_open,
};

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

/// The answers in a reply to a step; a list that was not looked at has each of its rows so.
pub fn given(spec: &StepSpec, reply: &Reply) -> Vec<Given> {
    match (reply, &spec.form) {
        (Reply::NotDone(_), Form::Checks(rows)) => {
            let not_done = |check: &Check| Given::Row(*check, Answer::NotDone);
            rows.iter().map(not_done).collect()
        }
        (Reply::Checked(rows), _) => rows.iter().map(|(c, a)| Given::Row(*c, *a)).collect(),
        (Reply::NotDone(_), _) => vec![Given::NotDone],
        (Reply::Said(answer), _) => vec![Given::Said(*answer)],
        (Reply::Picked(pick), _) => vec![Given::Picked(*pick)],
        (Reply::Felt(felt), _) => vec![Given::Felt(*felt)],
        (Reply::FoundLoose(0), _) => vec![Given::Picked(Choice::NoneLoose)],
        (Reply::FoundLoose(_), _) => vec![Given::Picked(Choice::SomeLoose)],
        (Reply::Done | Reply::Number(_), _) => vec![Given::Done],
    }
}

/// The first answer at a step that holds something.
pub fn holding(sheet: &JobState, plan: &Plan, spec: &StepSpec) -> Option<Holding> {
    let reply = sheet.reply(spec.key)?;
    // What stands in an entry of its own is there, whatever was said of it before.
    if !is_replied(&spec.form) && status(sheet, spec) == Status::Done {
        return None;
    }
    let given = given(spec, reply);
    let held = |given: &Given| hold(spec.key, *given, plan).map(|scope| (*given, scope));
    // What is wrong is told before what was not looked at.
    let unseen = |given: &Given| matches!(given, Given::Row(_, Answer::NotDone));
    let wrong = given.iter().filter(|given| !unseen(given)).find_map(held);
    let found = wrong.or_else(|| given.iter().find_map(held));
    // A list that nobody looked at is not told as if one of its rows was wrong.
    let unseen = matches!(reply, Reply::NotDone(_));
    found.map(|(given, scope)| Holding {
        question: spec.key,
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

/// Whether a reply leaves its step open.
pub(super) fn is_open_after(spec: &StepSpec, reply: &Reply) -> bool {
    given(spec, reply)
        .into_iter()
        .any(|given| stays_open(spec.key, given))
}

/// Whether the car was driven on the road after the work; a list of which nothing was tried is no
/// road test.
pub fn driven_after(sheet: &JobState) -> bool {
    match sheet.reply(StepKey::once(Step::ProveRoad)) {
        Some(Reply::Done) => true,
        Some(Reply::Checked(rows)) => rows.iter().any(|(_, answer)| *answer != Answer::NotDone),
        _ => false,
    }
}

/// The signs of the road that were there before the work and were noticed again after it.
pub fn still_there(sheet: &JobState) -> Vec<Sign> {
    let Some(Reply::Checked(rows)) = sheet.reply(StepKey::once(Step::ProveRoad)) else {
        return Vec::new();
    };
    let signs = Sign::ALL.iter().copied();
    signs
        .filter(|sign| rows.contains(&(sign_gone(*sign), Answer::No)))
        .collect()
}

/// Whether something else was noticed on the road after the work.
pub fn noticed_after(sheet: &JobState) -> bool {
    let noticed = &(Check::RoadClean, Answer::No);
    match sheet.reply(StepKey::once(Step::ProveRoad)) {
        Some(Reply::Checked(rows)) => rows.contains(noticed),
        _ => false,
    }
}

/// The signs that were there before the work and were not tried after it, once the road test after
/// it was asked for; one that was told later has no row in it.
pub fn not_tried(sheet: &JobState) -> Vec<Sign> {
    let rows: &[(Check, Answer)] = match sheet.reply(StepKey::once(Step::ProveRoad)) {
        Some(Reply::Checked(rows)) => rows,
        Some(Reply::NotDone(_)) => &[],
        _ => return Vec::new(),
    };
    let untried = |sign: &Sign| {
        let mut rows = rows.iter();
        match rows.find(|(check, _)| *check == sign_gone(*sign)) {
            Some((_, answer)) => *answer == Answer::NotDone,
            None => has_sign(sheet, *sign),
        }
    };
    Sign::ALL.iter().copied().filter(untried).collect()
}
