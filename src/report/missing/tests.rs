//! That page one and the end screen say no more of a repair than was proved on the road.
use super::not_proved;
use crate::job::entry::{Event, Reply};
use crate::report::sample::{self, Job};
use crate::report::tests::{context, never_says, report, says};
use crate::report::{Block, must_not_drive};
use crate::text::Lang::English;
use crate::trade::answer::Answer;
use crate::trade::wheel_end::{Check, Choice, NotDoneReason, Step, StepKey};

const SAFE: &str = "REPLACED, safe to drive";
const OPEN: &str = "REPLACED, not released yet";
const ROAD: StepKey = StepKey::once(Step::ProveRoad);
const WARNING_LIGHTS: StepKey = StepKey::once(Step::ProveWarningLights);

fn head(job: &Job) -> String {
    let first: Vec<Block> = report(job).page_one.into_iter().take(1).collect();
    context(&first)
}

/// The finished job without the last answer to a step, as if it never came.
fn without(step: StepKey) -> Job {
    let mut job = sample::finished(None);
    let answers = |what: &Event| matches!(what, Event::Answered(of, _) if *of == step);
    let answer = job.entries.iter().find(|entry| answers(&entry.what));
    let id = answer.unwrap().id.clone();
    job.tap(vec![Event::Strike(vec![id])]);
    job
}

fn with(step: StepKey, reply: Reply) -> Job {
    let mut job = sample::finished(None);
    job.answer(step, reply);
    job
}

/// Page one and the end screen say it, and neither says more.
#[track_caller]
fn not_released(job: &Job, why: &str) {
    let head = head(job);
    says(&head, &[OPEN, why, "Ask us before you drive"]);
    never_says(&head, &[SAFE]);
    let open = not_proved(English, &job.sheet());
    assert!(open.iter().any(|line| line.contains(why)), "{open:?}");
}

#[test]
fn a_repair_that_was_not_driven_after_it_is_not_called_safe() {
    says(
        &head(&sample::finished(None)),
        &[SAFE, "finished and road-tested"],
    );
    assert!(not_proved(English, &sample::finished(None).sheet()).is_empty());
    let why = "no road test after the repair is recorded";
    not_released(&without(ROAD), why);
    not_released(&with(ROAD, Reply::NotDone(NotDoneReason::NotSafe)), why);
    let nothing_tried = Reply::Checked(vec![(Check::SpeedGone, Answer::NotDone)]);
    not_released(&with(ROAD, nothing_tried), why);
    let driven = with(ROAD, Reply::Done);
    says(&head(&driven), &[SAFE]);
}

#[test]
fn a_sign_that_is_still_there_or_was_not_tried_again_is_named_and_not_released() {
    let rows = |speed| {
        let rows = vec![(Check::CoastGone, Answer::Yes), (Check::SpeedGone, speed)];
        with(ROAD, Reply::Checked(rows))
    };
    let sign = "Noise rises with road speed";
    not_released(
        &rows(Answer::No),
        &format!("still there on the road after the repair: {sign}"),
    );
    not_released(
        &rows(Answer::NotDone),
        &format!("not tried again on the road after the repair: {sign}"),
    );
    says(&head(&rows(Answer::Yes)), &[SAFE]);
    // Each sign is named once.
    assert_eq!(head(&rows(Answer::No)).matches(sign).count(), 1);
}

#[test]
fn a_sign_that_was_reported_after_the_road_test_was_not_tried_in_it() {
    let mut job = sample::finished(None);
    let shake = StepKey::once(Step::SignShake);
    job.answer(shake, Reply::Said(Answer::Yes));
    not_released(&job, "Shake without braking");
    job.answer(shake, Reply::Said(Answer::No));
    says(&head(&job), &[SAFE]);
}

#[test]
fn warning_lights_that_nobody_looked_at_or_that_are_on_keep_it_from_being_called_safe() {
    let why = "the warning lights are not recorded as checked after the repair";
    not_released(&without(WARNING_LIGHTS), why);
    not_released(
        &with(WARNING_LIGHTS, Reply::NotDone(NotDoneReason::NoTime)),
        why,
    );
    let abs = with(WARNING_LIGHTS, Reply::Picked(Choice::AbsWarningLight));
    not_released(&abs, "the ABS or stability warning light is on");
    let other = with(WARNING_LIGHTS, Reply::Picked(Choice::OtherWarningLight));
    not_released(&other, "a warning light other than brake and ABS is on");
    // With the brake light on the car must not be driven at all.
    let brake = with(WARNING_LIGHTS, Reply::Picked(Choice::BrakeWarningLight));
    says(
        &head(&brake),
        &[
            "DO NOT DRIVE",
            "The brake warning light was on when last seen.",
        ],
    );
    assert!(must_not_drive(&brake.sheet()));
}
