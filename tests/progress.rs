//! The step that comes next: after an undo, after a kill, after a pass that was broken off.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "progress/again.rs"]
mod again;
#[path = "support/record.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod record;
#[path = "support/technician.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod technician;

use hubslate::exchange::wire::{decode, encode};
use hubslate::job::entry::{Decided, Ending, Event, Reading, Reply, Side};
use hubslate::job::proof::is_blocked;
use hubslate::job::{Status, fold, group_items, held, measure_again, next, status};
use hubslate::slate::undo;
use hubslate::trade::answer::Answer;
use hubslate::trade::play::Decision;
use hubslate::trade::wheel_end::{
    Check, Choice, Form, ItemKind, ItemState, NotDoneReason, NutPosition, Start, Step, StepKey,
    When,
};
use hubslate::units::Decimal;
use record::{HERE, Job, moved, said};
use technician::{Story, begin, next_key, step, steps, walk_to};

fn at(step: Step) -> StepKey {
    StepKey::at(step, HERE)
}

/// How far a step of this job is.
fn far(job: &Job, key: StepKey) -> Status {
    let sheet = job.sheet();
    let steps = steps(&sheet);
    status(
        &sheet,
        steps.iter().find(|planned| planned.key == key).unwrap(),
    )
}

/// Every course that a job can take.
fn stories() -> Vec<Story> {
    let mut all = Vec::new();
    for start in Start::ALL.iter().copied() {
        for nut in NutPosition::ALL.iter().copied() {
            for decision in [Decision::Keep, Decision::Replace, Decision::Stop] {
                for (yes, again) in [(true, false), (false, true)] {
                    all.push(Story {
                        start,
                        nut,
                        decision,
                        yes,
                        again,
                        still_plays: false,
                        end: &[],
                    });
                }
            }
        }
    }
    all
}

#[test]
fn whoever_does_what_comes_next_reaches_the_end_with_nothing_loose() {
    for story in stories() {
        let mut job = begin(story);
        let mut last = None;
        for _ in 0..200 {
            let sheet = job.sheet();
            let steps = steps(&sheet);
            let done = |key| steps.iter().find(|planned| Some(planned.key) == key);
            if let Some(planned) = done(last) {
                assert_eq!(
                    status(&sheet, planned),
                    Status::Done,
                    "{last:?} in {story:?}"
                );
            }
            let Some(planned) = next(&sheet, &steps) else {
                break;
            };
            assert_eq!(held(&sheet, &steps, planned), None, "{:?}", planned.key);
            last = Some(planned.key);
            job.tap(technician::answer(&sheet, planned, story));
        }
        let sheet = job.sheet();
        assert_eq!(next_key(&sheet), None, "{story:?}");
        assert_eq!(sheet.loose(), [], "{story:?}");
        assert_eq!(sheet.problems(), [], "{story:?}");
        assert!(sheet.ended().is_some(), "{story:?}");
    }
}

#[test]
fn after_a_kill_the_same_step_comes_next() {
    let mut job = begin(Story::REPLACED);
    while step(&mut job, Story::REPLACED) {
        let texts: Vec<String> = job.entries.iter().map(|e| encode(e).unwrap()).collect();
        let read = texts.iter().rev().chain(&texts);
        let sheet = fold(read.map(|text| decode(text).unwrap()));
        assert_eq!(sheet, job.sheet());
        assert_eq!(next_key(&sheet), next_key(&job.sheet()));
    }
}

#[test]
fn after_an_undo_the_step_comes_next_again() {
    let each_nut = NutPosition::ALL.iter().map(|nut| Story {
        nut: *nut,
        ..Story::REPLACED
    });
    let declined_at_the_car = Story {
        start: Start::AtCar,
        yes: false,
        again: true,
        ..Story::REPLACED
    };
    for story in each_nut.chain([declined_at_the_car]) {
        let mut job = begin(story);
        while let Some(key) = next_key(&job.sheet()) {
            let loose = job.sheet().loose();
            step(&mut job, story);
            let mut undone = job.clone();
            let strike = undo(&job.sheet(), job.phone.device).unwrap();
            undone.tap(vec![strike]);
            assert_eq!(next_key(&undone.sheet()), Some(key), "{story:?}");
            assert_eq!(undone.sheet().loose(), loose, "{story:?}");
        }
    }
}

/// Turns the first `count` lug nuts of the final pass, one tap each.
fn turn_some(job: &mut Job, count: usize) {
    let nuts = group_items(&job.sheet(), HERE, ItemKind::LugNuts);
    for nut in nuts.into_iter().take(count) {
        job.tap(vec![moved(Step::TurnLugNuts, vec![nut], ItemState::Done)]);
    }
}

#[test]
fn a_pass_that_was_broken_off_begins_again_at_the_first() {
    let key = at(Step::TurnLugNuts);
    let mut job = walk_to(Story::REPLACED, key);
    job.tap(vec![Event::Pass(key)]);
    turn_some(&mut job, 3);
    assert_eq!(far(&job, key), Status::Partly(3, 5));
    job.tap(vec![Event::Pass(key)]);
    assert_eq!(far(&job, key), Status::Open);
    let nuts = group_items(&job.sheet(), HERE, ItemKind::LugNuts);
    assert!(nuts.iter().all(|nut| !job.sheet().turned(key, *nut)));
    turn_some(&mut job, 4);
    assert_eq!(far(&job, key), Status::Partly(4, 5));
    assert_eq!(next_key(&job.sheet()), Some(key));
    job.tap(vec![moved(
        Step::TurnLugNuts,
        vec![nuts[4]],
        ItemState::Done,
    )]);
    assert_eq!(far(&job, key), Status::Done);
}

#[test]
fn an_undone_beginning_brings_the_broken_pass_back() {
    let key = at(Step::TurnLugNuts);
    let mut job = walk_to(Story::REPLACED, key);
    job.tap(vec![Event::Pass(key)]);
    turn_some(&mut job, 3);
    let again = job.tap(vec![Event::Pass(key)]);
    job.tap(vec![Event::Strike(again)]);
    assert_eq!(far(&job, key), Status::Partly(3, 5));
}

#[test]
fn not_done_is_settled_and_is_not_done() {
    let key = at(Step::OtherSide);
    let mut job = walk_to(Story::REPLACED, key);
    job.tap(vec![Event::Answered(
        key,
        Reply::NotDone(NotDoneReason::NoTime),
    )]);
    assert_eq!(far(&job, key), Status::NotDone(NotDoneReason::NoTime));
    assert!(far(&job, key).is_settled());
    assert_ne!(next_key(&job.sheet()), Some(key));
}

#[test]
fn a_question_answered_with_not_done_is_settled_and_is_not_done() {
    let key = StepKey::once(Step::SignSpeed);
    let mut job = walk_to(Story::REPLACED, key);
    job.tap(vec![said(key, Answer::NotDone)]);
    assert_eq!(far(&job, key), Status::NotDone(NotDoneReason::Other));
    assert_ne!(next_key(&job.sheet()), Some(key));
}

#[test]
fn a_no_that_must_be_mended_keeps_its_question_open() {
    let asked = [
        StepKey::once(Step::RightCar),
        at(Step::Shove),
        at(Step::RockNuts),
        at(Step::Pedal),
        at(Step::Pedal).nth(2),
        StepKey::once(Step::ProvePedal),
    ];
    for key in asked {
        let mut job = walk_to(Story::REPLACED, key);
        job.tap(vec![said(key, Answer::No)]);
        assert_eq!(far(&job, key), Status::Held, "{key:?}");
        assert_eq!(next_key(&job.sheet()), Some(key));
        job.tap(vec![said(key, Answer::Yes)]);
        assert_eq!(far(&job, key), Status::Done, "{key:?}");
    }
}

/// Every question of a whole job is either one of those that block, or a sign of the road.
#[test]
fn a_no_to_a_sign_is_an_answer() {
    let mut job = begin(Story::REPLACED);
    let mut signs = 0;
    while let Some(key) = next_key(&job.sheet()) {
        let sheet = job.sheet();
        let asked = steps(&sheet)
            .into_iter()
            .any(|planned| planned.key == key && planned.form == Form::Ask);
        if asked && key.step.code().starts_with("sign_") {
            signs += 1;
            job.tap(vec![said(key, Answer::No)]);
            assert_eq!(far(&job, key), Status::Done, "{key:?}");
        } else {
            step(&mut job, Story::REPLACED);
        }
    }
    assert!(signs >= 4, "{signs} signs");
}

#[test]
fn a_base_that_gives_too_much_is_set_again() {
    let again = Story {
        again: true,
        ..Story::REPLACED
    };
    for key in [
        at(Step::RigPush),
        at(Step::RigAgain),
        at(Step::RigPush).nth(2),
    ] {
        let mut job = walk_to(again, key);
        job.tap(vec![Event::Answered(key, Reply::Picked(Choice::FlexMore))]);
        assert_eq!(far(&job, key), Status::Held, "{key:?}");
        assert_eq!(next_key(&job.sheet()), Some(key));
        job.tap(vec![Event::Answered(key, Reply::Picked(Choice::FlexOne))]);
        assert_eq!(far(&job, key), Status::Done, "{key:?}");
    }
}

#[test]
fn a_round_is_done_only_when_it_was_pulled() {
    let key = at(Step::Round);
    let job = walk_to(Story::REPLACED, key);
    let whats = {
        let sheet = job.sheet();
        let steps = steps(&sheet);
        let planned = steps.iter().find(|planned| planned.key == key).unwrap();
        technician::answer(&sheet, planned, Story::REPLACED)
    };
    let mut pushed = job.clone();
    pushed.tap(vec![whats[0].clone()]);
    assert_eq!(far(&pushed, key), Status::Open);
    pushed.tap(vec![whats[1].clone()]);
    assert_eq!(far(&pushed, key), Status::Done);
}

#[test]
fn a_step_that_is_partly_turned_can_be_given_up_and_taken_up_again() {
    let turn = at(Step::TurnLugNuts);
    let mut job = walk_to(Story::REPLACED, turn);
    let all = technician::turn(&job.sheet(), turn, ItemKind::LugNuts);
    job.tap(all[..3].to_vec());
    assert_eq!(far(&job, turn), Status::Partly(2, 5));
    let given_up = Reply::NotDone(NotDoneReason::WillNotGo);
    job.tap(vec![Event::Answered(turn, given_up)]);
    assert_eq!(far(&job, turn), Status::NotDone(NotDoneReason::WillNotGo));
    assert_ne!(next_key(&job.sheet()), Some(turn));
    assert!(!job.sheet().loose().is_empty());
    job.tap(all[3..4].to_vec());
    assert_eq!(far(&job, turn), Status::Partly(3, 5));
    job.tap(all[4..].to_vec());
    assert_eq!(far(&job, turn), Status::Done);
}

#[test]
fn a_bearing_that_is_watched_stands_in_the_list_of_jobs_until_it_is_looked_back_on() {
    use hubslate::exchange::summary::Summary;
    use hubslate::job::ending::recheck;
    use hubslate::job::entry::{DueKind, LogId};

    let story = Story {
        decision: Decision::Watch,
        ..Story::REPLACED
    };
    let mut job = walk_to(story, at(Step::Decide));
    let due = Event::Due(recheck("2026-02-20").unwrap());
    job.tap(vec![technician::decided(1, story), due]);
    let listed = |job: &Job| {
        let sheet = job.sheet();
        let steps = steps(&sheet);
        Summary::of(
            &LogId("job".to_owned()),
            &sheet,
            &steps,
            next(&sheet, &steps),
        )
    };
    assert_eq!(listed(&job).dues(), []);
    while next_key(&job.sheet()) != Some(StepKey::once(Step::RetorqueDone)) {
        assert!(step(&mut job, story));
    }
    let recheck = (DueKind::Recheck, "2026-03-22");
    assert_eq!(listed(&job).dues()[1], recheck);
    step(&mut job, story);
    assert_eq!(listed(&job).dues(), [recheck]);
    step(&mut job, story);
    assert_eq!(listed(&job).dues(), []);
}
