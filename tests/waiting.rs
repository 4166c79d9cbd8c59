//! A car that waits for its customer's yes is lifted and shoved again before the work goes on.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/record.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod record;
#[path = "support/technician.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod technician;

use hubslate::job::entry::{Event, Reply};
use hubslate::job::held;
use hubslate::trade::answer::Answer;
use hubslate::trade::wheel_end::{HoldPoint, NotDoneReason, SHOVE_WAITED, Step, StepKey};
use record::{HERE, Job, said};
use technician::{Story, consent, next_key, steps, walk_to};

fn at(step: Step) -> StepKey {
    StepKey::at(step, HERE)
}

fn asked() -> Job {
    walk_to(Story::REPLACED, at(Step::Agree))
}

fn point(job: &Job, key: StepKey) -> Option<HoldPoint> {
    let sheet = job.sheet();
    let steps = steps(&sheet);
    let planned = steps.iter().find(|planned| planned.key == key).unwrap();
    held(&sheet, &steps, planned).map(|held| held.point)
}

fn waited(yes: bool) -> Job {
    let mut job = asked();
    job.tap(vec![Event::Answered(at(Step::Wait), Reply::Done)]);
    assert_eq!(
        next_key(&job.sheet()),
        Some(at(Step::Agree)),
        "still waiting"
    );
    job.tap(vec![consent(at(Step::Agree), yes)]);
    job
}

#[test]
fn a_job_that_did_not_wait_goes_on_at_once() {
    let mut job = asked();
    job.tap(vec![consent(at(Step::Agree), true)]);
    assert_eq!(next_key(&job.sheet()), Some(at(Step::LoosenAxleNut)));
    assert_eq!(point(&job, at(Step::LoosenAxleNut)), None);
}

#[test]
fn after_waiting_it_is_held_jacked_stood_and_shoved_before_the_work_goes_on() {
    let mut job = waited(true);
    for step in [Step::LiftHold, Step::LiftStand] {
        assert_eq!(next_key(&job.sheet()), Some(at(step).nth(2)));
        job.tap(vec![Event::Answered(at(step).nth(2), Reply::Done)]);
    }
    let shove = at(Step::Shove).nth(SHOVE_WAITED);
    assert_eq!(next_key(&job.sheet()), Some(shove));
    assert_eq!(point(&job, at(Step::LoosenAxleNut)), Some(HoldPoint::Stand));
    for no in [
        said(shove, Answer::No),
        said(shove, Answer::NotDone),
        Event::Answered(shove, Reply::NotDone(NotDoneReason::DoneEarlier)),
    ] {
        let mut job = job.clone();
        job.tap(vec![no]);
        assert_eq!(point(&job, at(Step::LoosenAxleNut)), Some(HoldPoint::Stand));
    }
    job.tap(vec![said(shove, Answer::Yes)]);
    assert_eq!(point(&job, at(Step::LoosenAxleNut)), None);
    assert_eq!(next_key(&job.sheet()), Some(at(Step::LoosenAxleNut)));
}

#[test]
fn a_no_after_waiting_puts_it_back_only_behind_a_shove() {
    let job = waited(false);
    assert_eq!(next_key(&job.sheet()), Some(at(Step::LiftHold).nth(2)));
    assert_eq!(point(&job, at(Step::CaliperDown)), Some(HoldPoint::Stand));
}
