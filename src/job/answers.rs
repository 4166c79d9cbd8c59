//! What was answered, answer by answer, and what follows from it by the one table of the trade.

use crate::job::entry::Reply;
use crate::job::plan::has_sign;
use crate::job::sheet::JobState;
use crate::trade::answer::Answer;
use crate::trade::wheel_end::{
    Check, Choice, Form, Given, PlannedStep, Sign, Step, StepKey, sign_gone, stays_open,
};

/// The answers in a reply to a step; a list that was not looked at has each of its rows so.
pub fn given(planned: &PlannedStep, reply: &Reply) -> Vec<Given> {
    match (reply, &planned.form) {
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

/// Whether a reply leaves its step open.
pub(super) fn is_open_after(planned: &PlannedStep, reply: &Reply) -> bool {
    given(planned, reply)
        .into_iter()
        .any(|given| stays_open(planned.key, given))
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
