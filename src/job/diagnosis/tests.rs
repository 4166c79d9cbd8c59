#![allow(clippy::unwrap_used)]
use super::*;
use crate::job::recorded::sheet;
use crate::trade::diagnosis::{Cause, TABLE, corners, rank};
use crate::trade::wheel_end::NotDoneReason;

const AT: Corner = Corner::FrontLeft;

fn hum(more: &[Event]) -> JobState {
    let begun = [Event::Corners(vec![AT]), Event::Complaint(Complaint::Hum)];
    sheet([&begun, more].concat())
}

fn once(step: Step, reply: Reply) -> Event {
    Event::Answered(StepKey::once(step), reply)
}

fn at(step: Step, reply: Reply) -> Event {
    Event::Answered(StepKey::at(step, AT), reply)
}

/// What is known of every clue, in the order of `Clue::ALL`, but for those that were not tried.
fn known(more: &[Event]) -> Vec<(Clue, Answer)> {
    let found = findings(&hum(more), Some(AT)).unwrap();
    let all = Clue::ALL.iter().map(|clue| (*clue, found.answer(*clue)));
    all.filter(|(_, answer)| *answer != Answer::NotDone)
        .collect()
}

#[test]
fn nothing_is_ranked_before_the_complaint_is_picked() {
    assert_eq!(findings(&sheet([Event::Corners(vec![AT])]), Some(AT)), None);
    assert_eq!(known(&[]), []);
}

#[test]
fn each_answer_of_the_road_is_a_clue_and_not_done_is_none() {
    let signs = [
        (Step::SignSpeed, Clue::RisesWithSpeed),
        (Step::SignCoast, Clue::SameInNeutral),
        (Step::SignSurface, Clue::ChangesWithSurface),
        (Step::SignBrake, Clue::BrakeChanges),
        (Step::SignFullLock, Clue::ClicksAtLock),
        (Step::SignShake, Clue::ShakeAtSpeed),
        (Step::SignPulse, Clue::PulseBraking),
    ];
    for (step, clue) in signs {
        for answer in [Answer::Yes, Answer::No] {
            assert_eq!(known(&[once(step, Reply::Said(answer))]), [(clue, answer)]);
        }
        assert_eq!(known(&[once(step, Reply::Said(Answer::NotDone))]), []);
        let because = NotDoneReason::ALL.first().copied().unwrap();
        assert_eq!(known(&[once(step, Reply::NotDone(because))]), []);
    }
    let swerve = |choice| known(&[once(Step::SignSwerve, Reply::Picked(choice))]);
    assert_eq!(
        swerve(Choice::LouderLeft),
        [(Clue::SwerveOneWay, Answer::Yes)]
    );
    assert_eq!(
        swerve(Choice::LouderRight),
        [(Clue::SwerveOneWay, Answer::Yes)]
    );
    assert_eq!(
        swerve(Choice::NoChange),
        [(Clue::SwerveNoChange, Answer::Yes)]
    );
}

#[test]
fn rocking_shows_one_thing_and_only_with_the_brake_tried_or_every_direction_still() {
    use Felt::{Nothing, Seen};
    let rocked = |felt: [Felt; 3], held: Option<Choice>| {
        let steps = [Step::RockTwelveSix, Step::RockNineThree, Step::RockAxial];
        let felt = steps.into_iter().zip(felt);
        let mut all: Vec<Event> = felt
            .map(|(step, felt)| at(step, Reply::Felt(felt)))
            .collect();
        all.extend(held.map(|held| at(Step::BrakeHeld, Reply::Picked(held))));
        known(&all)
    };
    let (gone, stays) = (Some(Choice::PlayGone), Some(Choice::PlayStays));
    assert_eq!(
        rocked([Seen, Seen, Nothing], gone),
        [(Clue::PlayGone, Answer::Yes)]
    );
    assert_eq!(
        rocked([Seen, Nothing, Nothing], stays),
        [(Clue::PlayUprightStays, Answer::Yes)]
    );
    assert_eq!(
        rocked([Nothing, Seen, Nothing], stays),
        [(Clue::PlayAcrossStays, Answer::Yes)]
    );
    assert_eq!(rocked([Nothing; 3], None), [(Clue::NoPlay, Answer::Yes)]);
    assert_eq!(rocked([Seen, Nothing, Nothing], None), []);
    assert_eq!(known(&[at(Step::RockTwelveSix, Reply::Felt(Nothing))]), []);
}

#[test]
fn a_hub_that_was_spun_grumbles_or_not_and_one_that_was_not_says_nothing() {
    let spun = |choice| known(&[at(Step::SpinHand, Reply::Picked(choice))]);
    assert_eq!(spun(Choice::SmoothQuiet), [(Clue::Grumble, Answer::No)]);
    for choice in [
        Choice::Rough,
        Choice::Noisy,
        Choice::RoughNoisy,
        Choice::GrindsHot,
    ] {
        assert_eq!(spun(choice), [(Clue::Grumble, Answer::Yes)]);
    }
    assert_eq!(known(&[]), []);
}

#[test]
fn what_no_step_asks_has_an_entry_and_a_local_one_stays_at_its_corner() {
    for test in Test::ALL.iter().filter(|test| step_of(**test).is_none()) {
        for clue in test.clues() {
            let corner = corner_of(*test, Some(AT));
            let entry = Event::Clue(corner, clue, Answer::Yes);
            assert_eq!(known(std::slice::from_ref(&entry)), [(clue, Answer::Yes)]);
            let job = hum(&[entry, Event::Clue(corner, clue, Answer::NotDone)]);
            let taken_back = findings(&job, Some(AT)).unwrap();
            assert_eq!(taken_back.answer(clue), Answer::NotDone);
            let job = hum(&[Event::Clue(corner, clue, Answer::Yes)]);
            let other = findings(&job, Some(Corner::RearRight)).unwrap();
            assert_eq!(other.answer(clue) == Answer::NotDone, test.is_local());
        }
    }
}

#[test]
fn louder_steering_right_points_to_the_left_corners_of_the_job() {
    let job = hum(&[once(Step::SignSwerve, Reply::Picked(Choice::LouderRight))]);
    let ranked = corners(&TABLE, &corner_findings(&job, Complaint::Hum));
    let first: Vec<Side> = ranked
        .iter()
        .take(2)
        .map(|(corner, _)| corner.side())
        .collect();
    assert_eq!(first, [Side::Left, Side::Left]);
    let job = hum(&[
        once(Step::SignSwerve, Reply::Picked(Choice::LouderRight)),
        Event::Clue(Some(Corner::RearLeft), Clue::LoudestHub, Answer::Yes),
    ]);
    let ranked = corners(&TABLE, &corner_findings(&job, Complaint::Hum));
    assert_eq!(ranked.first().unwrap().0, Corner::RearLeft);
}

#[test]
fn an_answer_moves_the_ranking_of_the_job() {
    let first = |more: &[Event]| {
        let found = findings(&hum(more), Some(AT)).unwrap();
        rank(&TABLE, &found).first().unwrap().cause
    };
    assert_eq!(first(&[]), Cause::Tire);
    let rough = at(Step::SpinHand, Reply::Picked(Choice::Rough));
    assert_eq!(first(&[rough]), Cause::Bearing);
}

#[test]
fn what_was_found_before_a_corner_was_chosen_holds_there_until_it_is_taken_back() {
    let early = Event::Clue(None, Clue::CuppedTread, Answer::Yes);
    assert_eq!(
        known(std::slice::from_ref(&early)),
        [(Clue::CuppedTread, Answer::Yes)]
    );
    let back = Event::Clue(Some(AT), Clue::CuppedTread, Answer::NotDone);
    assert_eq!(known(&[early, back]), []);
}
