//! The plan of a job: the facts that pick and order its steps, folded from its entries.

use crate::job::entry::{Ending, Reply};
use crate::job::loose_lug_nuts::{found_loose, wrong_looks};
use crate::job::mishap::broken_stud;
use crate::job::proof::{is_blocked, is_reopened};
use crate::job::sheet::JobState;
use crate::job::wheel_end::{fitted, kind};
use crate::trade::answer::Answer;
use crate::trade::fastening::{SpecBody, SpecItem};
use crate::trade::play::{Decision, Felt};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{
    Choice, CornerPlan, Course, Form, NutPosition, Plan, Sign, Start, Step, StepKey, sign_step,
};

/// The facts that pick and order the steps, from the entries alone.
pub fn plan(sheet: &JobState) -> Plan {
    Plan {
        kind: kind(sheet),
        fitted: fitted(sheet),
        start: sheet.opened().map_or(Start::AtHome, |opened| opened.start),
        corners: sheet
            .corners()
            .iter()
            .map(|corner| corner_plan(sheet, *corner))
            .collect(),
        nut: nut_position(sheet),
        site_refused: said(sheet, StepKey::once(Step::SiteLook)) == Some(Answer::No),
        teardown_refused: sheet
            .consent(StepKey::once(Step::TeardownYes))
            .is_some_and(|consent| !consent.yes),
        nuts_loose: found_loose(sheet),
        wrong_looks: wrong_looks(sheet),
        warning_lights: match sheet.reply(StepKey::once(Step::WarningLights)) {
            Some(Reply::Picked(pick)) => Some(*pick),
            _ => None,
        },
        driven: sheet.reply(StepKey::once(Step::Drive)) == Some(&Reply::Done),
        more_questions: more_questions(sheet),
        signs: Sign::ALL
            .iter()
            .copied()
            .filter(|sign| has_sign(sheet, *sign))
            .collect(),
        ended: sheet.ended().is_some(),
    }
}

fn corner_plan(sheet: &JobState, corner: Corner) -> CornerPlan {
    CornerPlan {
        corner,
        course: course(sheet, corner),
        stop: sheet
            .decided(corner)
            .is_some_and(|decided| decided.decision == Decision::Stop),
        play_felt: play_felt(sheet, corner),
        second_set: sheet
            .decided_nth(corner, 1)
            .is_some_and(|decided| decided.again),
        blocked: is_blocked(sheet, corner),
        reopened: is_reopened(sheet, corner),
        waited: sheet.reply(StepKey::at(Step::Wait, corner)) == Some(&Reply::Done),
        broken_stud: broken_stud(sheet, corner),
    }
}

fn course(sheet: &JobState, corner: Corner) -> Course {
    let Some(decided) = sheet.decided(corner) else {
        return course_on_paper(sheet, corner).unwrap_or(Course::Open);
    };
    if decided.again && decided.nth == 1 {
        return Course::Open;
    }
    match decided.decision {
        Decision::Keep | Decision::Watch => Course::PutBack,
        Decision::Replace | Decision::Stop => {
            match sheet
                .consent(StepKey::at(Step::Agree, corner))
                .map(|consent| consent.yes)
            {
                None => Course::Asking,
                Some(false) => Course::Declined,
                Some(true) => Course::Replace,
            }
        }
    }
}

/// What had come of a corner when the paper of an ended job was printed.
fn course_on_paper(sheet: &JobState, corner: Corner) -> Option<Course> {
    let slip = sheet.slip().filter(|slip| is_over(slip.ending()))?;
    let repaired = slip.agreed(corner).is_some_and(|consent| consent.yes);
    Some(match slip.decided(corner)?.decision {
        Decision::Keep | Decision::Watch => Course::PutBack,
        _ if repaired => Course::Replace,
        _ => Course::Declined,
    })
}

fn play_felt(sheet: &JobState, corner: Corner) -> bool {
    let mut rocks = Step::ALL.iter().filter(|it| it.row().form == Form::Swing);
    rocks.any(|step| {
        matches!(
            sheet.reply(StepKey::at(*step, corner)),
            Some(Reply::Felt(Felt::JustFelt | Felt::Seen | Felt::Knocks))
        )
    })
}

fn nut_position(sheet: &JobState) -> NutPosition {
    match sheet.spec(SpecItem::AxleNut).map(|spec| &spec.body) {
        Some(SpecBody::Torque(body)) => body.position.unwrap_or(NutPosition::AirBrakeHeld),
        _ => NutPosition::AirBrakeHeld,
    }
}

fn said(sheet: &JobState, step: StepKey) -> Option<Answer> {
    match sheet.reply(step) {
        Some(Reply::Said(answer)) => Some(*answer),
        _ => None,
    }
}

pub(super) fn has_sign(sheet: &JobState, sign: Sign) -> bool {
    match sheet.reply(StepKey::once(sign_step(sign))) {
        Some(Reply::Said(answer)) => *answer == Answer::Yes,
        Some(Reply::Picked(pick)) => matches!(pick, Choice::LouderRight | Choice::LouderLeft),
        _ => false,
    }
}

/// The first five decide if they point at a bearing, or away from it; otherwise more are asked.
///
/// Towards: louder one way in the swerve, and not changing with the road. Away: it changes with
/// the road and not with the swerve. `common practice, no source`.
fn more_questions(sheet: &JobState) -> bool {
    let first = Sign::ALL.iter().filter(|sign| sign.is_first());
    let all = first
        .clone()
        .all(|sign| sheet.reply(StepKey::once(sign_step(*sign))).is_some());
    all && has_sign(sheet, Sign::Swerve) == has_sign(sheet, Sign::Surface)
}

/// Whether a job with this ending is only looked back on.
pub(super) fn is_over(ending: Option<Ending>) -> bool {
    ending.is_some_and(|ending| ending != Ending::LeftUnfinished)
}
