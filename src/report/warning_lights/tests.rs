//! That page one names a warning light that is or was on, and says what to do.
use super::warning_light_lines;
use crate::job::entry::{Ending, Event, Reply};
use crate::report::must_not_drive;
use crate::report::sample::{self, Job};
use crate::report::tests::{context, never_says, report, says};
use crate::text::Lang::English;
use crate::trade::play::{Decision, Felt};
use crate::trade::wheel_end::{Choice, NotDoneReason, Step, StepKey};

const FIRST: StepKey = StepKey::once(Step::WarningLights);
const LAST: StepKey = StepKey::once(Step::ProveWarningLights);

/// A bearing at which nothing was found, with these answers about the lights.
fn saved(answers: &[(StepKey, Reply)]) -> Job {
    let mut job = sample::kept_by_house_limit();
    for (step, reply) in answers {
        job.answer(*step, reply.clone());
    }
    job
}

fn lit(step: StepKey, warning_light: Choice) -> Job {
    saved(&[(step, Reply::Picked(warning_light))])
}

fn page(job: &Job) -> String {
    context(&report(job).page_one)
}

#[test]
fn a_brake_light_that_stopped_the_car_on_arrival_stops_it_on_page_one() {
    let job = lit(FIRST, Choice::BrakeWarningLight);
    says(
        &page(&job),
        &[
            "DO NOT DRIVE",
            "The brake warning light was on when we arrived, and nothing shows that it went out. \
             Have the brakes checked before the car is driven.",
            "Do not drive this car.",
        ],
    );
    never_says(
        &page(&job),
        &["Nothing found", "may be driven", "Have the lug"],
    );
    assert!(must_not_drive(&job.sheet()));
    // The answer is given again once the cause is known.
    let mut right = job;
    right.answer(FIRST, Reply::Picked(Choice::NoWarningLights));
    says(&page(&right), &["Nothing found", "The car may be driven"]);
    never_says(&page(&right), &["brake warning light was on"]);
    assert!(!must_not_drive(&right.sheet()));
}

#[test]
fn it_stops_a_car_that_was_never_opened_too() {
    let mut job = sample::packed(None, sample::play_spec("0.05"));
    job.answer(FIRST, Reply::Picked(Choice::BrakeWarningLight));
    job.ended(Ending::NotSafeHere, None);
    says(&page(&job), &["DO NOT DRIVE", "The brake warning light"]);
}

#[test]
fn another_light_is_named_and_is_not_nothing() {
    let abs = page(&lit(FIRST, Choice::AbsWarningLight));
    says(
        &abs,
        &[
            "WARNING LIGHT ON",
            "The ABS or stability warning light was on when we arrived",
            "Have the cause found.",
        ],
    );
    never_says(&abs, &["Nothing found", "DO NOT DRIVE"]);
    let other = page(&lit(FIRST, Choice::OtherWarningLight));
    says(&other, &["WARNING LIGHT ON", "owner's manual"]);
    let none = page(&lit(FIRST, Choice::NoWarningLights));
    says(&none, &["Nothing found"]);
    never_says(&none, &["The ABS", "light was on"]);
}

#[test]
fn lights_before_and_after_are_reported_as_they_were_seen() {
    let lines = |before: Choice, after: Choice| {
        let mut job = sample::finished(None);
        job.answer(FIRST, Reply::Picked(before));
        job.answer(LAST, Reply::Picked(after));
        warning_light_lines(English, &job.sheet()).join("\n")
    };
    let abs = "The ABS or stability warning light is on";
    says(
        &lines(Choice::AbsWarningLight, Choice::AbsWarningLight),
        &[&format!("{abs}, as it was before the work.")],
    );
    says(
        &lines(Choice::NoWarningLights, Choice::AbsWarningLight),
        &[&format!("{abs}. It was off before the work.")],
    );
    says(
        &lines(Choice::BrakeWarningLight, Choice::NoWarningLights),
        &["The brake warning light was on when we arrived and is out after the work."],
    );
    let two = lines(Choice::BrakeWarningLight, Choice::AbsWarningLight);
    says(
        &two,
        &[abs, "The brake warning light was on when we arrived."],
    );
    never_says(&two, &["off before", "as it was"]);
    assert_eq!(lines(Choice::NoWarningLights, Choice::NoWarningLights), "");
}

#[test]
fn a_light_of_another_kind_that_was_on_before_is_named_beside_a_repair_that_is_proved() {
    let mut job = sample::finished(None);
    for step in [FIRST, LAST] {
        job.answer(step, Reply::Picked(Choice::OtherWarningLight));
    }
    says(
        &page(&job),
        &[
            "REPLACED, safe to drive",
            "A warning light other than brake and ABS is on, as it was before the work.",
        ],
    );
}

#[test]
fn lights_that_nobody_looked_at_are_reported_as_not_checked() {
    let say = "The warning lights were not checked.";
    let not_done = Reply::NotDone(NotDoneReason::NoTime);
    says(&page(&saved(&[(FIRST, not_done.clone())])), &[say]);
    let looked = saved(&[
        (FIRST, not_done),
        (LAST, Reply::Picked(Choice::NoWarningLights)),
    ]);
    never_says(&page(&looked), &[say]);
}

#[test]
fn a_bearing_that_is_watched_names_the_light_too() {
    let mut job = sample::packed(None, sample::play_spec("0.05"));
    sample::measured(
        &mut job,
        Felt::JustFelt,
        Choice::SmoothQuiet,
        ["1", "1", "1"],
    );
    job.decided(Decision::Watch);
    sample::closed(&mut job);
    job.tap(vec![Event::Answered(
        FIRST,
        Reply::Picked(Choice::AbsWarningLight),
    )]);
    job.ended(Ending::NothingWrong, None);
    says(&page(&job), &["WATCH: check again", "The ABS or stability"]);
}
