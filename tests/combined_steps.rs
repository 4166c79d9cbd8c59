//! Steps that one screen tells together: which they are, and what one tap writes of them.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/plans.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod plans;
#[path = "support/record.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod record;
#[path = "support/technician.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod technician;
#[path = "combined_steps/wrong.rs"]
mod wrong;

use hubslate::job::combined_steps::{
    Line, lines, no_to, open_rows, put_right, recorded, rows, screen_without, turns,
};
use hubslate::job::entry::{Event, Reply};
use hubslate::job::{JobState, combined_steps, done, next, status};
use hubslate::trade::answer::Answer;
use hubslate::trade::wheel_end::{
    Check, Choice, Form, HoldPoint, NotDoneReason, NutPosition, PlannedStep, SHOVE_CRACKED, Start,
    Step, StepKey, procedure, sign_of,
};
use record::{HERE, Job, said};
use technician::{Story, begin, next_key, step, steps, walk_to};

fn at(step: Step) -> StepKey {
    StepKey::at(step, HERE)
}

/// What the screen tells that comes next.
fn screen(sheet: &JobState) -> Vec<PlannedStep> {
    let steps = steps(sheet);
    let first = next(sheet, &steps).unwrap();
    combined_steps(sheet, &steps, first)
        .into_iter()
        .cloned()
        .collect()
}

fn keys(planned_steps: &[PlannedStep]) -> Vec<StepKey> {
    planned_steps.iter().map(|planned| planned.key).collect()
}

/// The steps, without their corner, of the screen at which a plain job meets `first`.
fn screen_at(story: Story, first: StepKey) -> Vec<Step> {
    let screen = screen(&walk_to(story, first).sheet());
    screen.iter().map(|planned| planned.key.step).collect()
}

fn nothing(_: &PlannedStep) -> Vec<Event> {
    Vec::new()
}

#[test]
fn what_the_same_hands_do_at_the_same_place_is_reported_on_one_screen() {
    use Step::*;
    let expected: &[&[Step]] = &[
        &[SignSpeed, SignSwerve, SignCoast, SignSurface, SignBrake],
        &[LiftStand, StandPhoto],
        &[LoosenLugNuts, Shove],
        &[CaliperUp, NutFound],
        &[LoosenAxleNut, Shove],
        &[StripNut, StripBrake, SensorPhoto],
        &[StripSensor, StripHub],
        &[GaugeClean, RigTip],
        &[Compare, ComparePhoto],
        &[Seat, Offer, RouteSensor],
        &[RotorOn, BracketOn],
        &[CaliperOn, Pedal],
        &[NutOn, TurnAxleNut],
        &[CaliperDown, TurnCaliperPins],
        &[Stake, Pedal],
        &[WheelOn, Lower],
        &[Retorque, Sign],
        &[Report, End],
    ];
    for recorded in expected {
        let first = match recorded[0] {
            once @ (SignSpeed | Retorque | Report) => StepKey::once(once),
            here => at(here),
        };
        assert_eq!(screen_at(Story::REPLACED, first), *recorded);
    }
}

#[test]
fn only_the_last_of_a_screen_is_a_question_but_for_the_signs_of_the_road() {
    let mut joined = 0;
    plans::each_plan(|plan| {
        let mut first: Vec<HoldPoint> = Vec::new();
        let mut begun = false;
        for pair in procedure(plan).windows(2) {
            let (row, after) = (&pair[0], &pair[1]);
            // What is held stands alone: what may hold a later row holds the first already.
            if !std::mem::replace(&mut begun, row.joins) {
                first.clone_from(&row.holds);
            }
            if !row.joins {
                continue;
            }
            joined += 1;
            assert_eq!(row.key.corner, after.key.corner, "{row:?}");
            if sign_of(row.key.step).is_some() {
                assert!(sign_of(after.key.step).is_some(), "{after:?}");
            } else {
                assert!(!matches!(row.form, Form::Ask | Form::Choice(_)), "{row:?}");
                let held = |point| first.contains(point);
                assert!(row.holds.iter().all(held), "{row:?}");
            }
        }
    });
    assert!(0 < joined);
}

#[test]
fn a_row_writes_what_its_step_would_have_written_alone() {
    let sheet = walk_to(Story::REPLACED, at(Step::Seat)).sheet();
    let mut recorded_steps = screen(&sheet);
    recorded_steps.pop().unwrap();
    let whats = recorded(&sheet, &recorded_steps, &lines(&recorded_steps), nothing);
    let alone: Vec<Event> = recorded_steps
        .iter()
        .flat_map(|planned| done(&sheet, planned, Reply::Done))
        .collect();
    assert_eq!(whats, alone);
    assert!(whats.len() > 2);
}

#[test]
fn a_row_that_was_turned_stays_open_and_comes_next_alone() {
    let mut job = walk_to(Story::REPLACED, at(Step::Seat));
    let sheet = job.sheet();
    let mut rows = screen(&sheet);
    let last = rows.pop().unwrap();
    let mut lines = lines(&rows);
    assert_eq!(lines.len(), 2);
    lines[1] = lines[1].turned();
    assert_eq!(lines[1].answer, Some(Answer::NotDone));
    let mut whats = recorded(&sheet, &rows, &lines, nothing);
    whats.extend(done(&sheet, &last, Reply::Done));
    job.tap(whats);
    assert_eq!(keys(&screen(&job.sheet())), [at(Step::Offer)]);
    assert_eq!(lines[1].turned().answer, Some(Answer::Yes));
}

#[test]
fn a_row_of_a_list_is_turned_to_no_and_to_not_done() {
    let sheet = walk_to(Story::REPLACED, at(Step::LiftStand)).sheet();
    let rows = &screen(&sheet)[..1];
    let mut lines = lines(rows);
    lines[0] = lines[0].turned();
    lines[1] = lines[1].turned().turned();
    let whats = recorded(&sheet, rows, &lines, nothing);
    let expected = Reply::Checked(vec![
        (Check::JackPoint, Answer::No),
        (Check::StandUnder, Answer::NotDone),
        (Check::WheelUnderRocker, Answer::Yes),
    ]);
    assert_eq!(whats, [Event::Answered(at(Step::LiftStand), expected)]);
}

#[test]
fn a_shove_after_cracking_is_answered_by_itself() {
    let mut job = walk_to(Story::REPLACED, at(Step::LoosenLugNuts));
    let sheet = job.sheet();
    let mut rows = screen(&sheet);
    let shove = rows.pop().unwrap();
    assert_eq!(shove.key, at(Step::Shove).nth(SHOVE_CRACKED));
    let whats = recorded(&sheet, &rows, &lines(&rows), nothing);
    let answers = |what: &Event| matches!(what, Event::Answered(step, _) if *step == shove.key);
    assert!(!whats.iter().any(answers));
    // The nuts are cracked and it moved: it is asked again, alone.
    job.tap([whats, vec![said(shove.key, Answer::No)]].concat());
    assert_eq!(keys(&screen(&job.sheet())), [shove.key]);
}

#[test]
fn a_spec_that_is_not_known_ends_a_screen_and_so_does_a_fastener_without_a_figure() {
    let at_car = Story {
        start: Start::AtCar,
        ..Story::REPLACED
    };
    let first = at(Step::CaliperOn);
    assert_eq!(screen_at(at_car, first), [Step::CaliperOn]);
    let mut job = walk_to(Story::REPLACED, at(Step::NutOn));
    job.tap(vec![Event::Spec(hubslate::trade::fastening::Spec {
        item: hubslate::trade::fastening::SpecItem::AxleNut,
        body: hubslate::trade::fastening::SpecBody::NotFound {
            reason: "not in the document".to_owned(),
        },
    })]);
    assert_eq!(keys(&screen(&job.sheet())), [at(Step::NutOn)]);
}

#[test]
fn weight_that_is_held_back_is_not_reported_with_the_wheel() {
    let mut job = walk_to(Story::REPLACED, at(Step::WheelOn));
    let nut = record::item(hubslate::trade::wheel_end::ItemKind::AxleNut, 1);
    job.tap(vec![record::moved(
        Step::TurnAxleNut,
        vec![nut],
        hubslate::trade::wheel_end::ItemState::Snug,
    )]);
    let recorded = keys(&screen(&job.sheet()));
    assert!(!recorded.contains(&at(Step::Lower)), "{recorded:?}");
}

#[test]
fn a_job_with_something_loose_is_not_ended_with_its_report() {
    let mut job = walk_to(Story::REPLACED, StepKey::once(Step::Report));
    let nut = record::item(hubslate::trade::wheel_end::ItemKind::LugNuts, 1);
    job.tap(vec![record::moved(
        Step::WheelOff,
        vec![nut],
        hubslate::trade::wheel_end::ItemState::Loosened,
    )]);
    job.tap(vec![Event::Answered(
        at(Step::TurnLugNuts),
        Reply::NotDone(NotDoneReason::NoTool),
    )]);
    let recorded = screen(&job.sheet());
    assert!(!recorded.iter().any(|planned| planned.key.step == Step::End));
}

#[test]
fn a_sign_has_no_answer_until_it_is_tapped_or_said_no_to() {
    let sheet = walk_to(Story::REPLACED, StepKey::once(Step::SignSpeed)).sheet();
    let signs = screen(&sheet);
    // As rows they write nothing by themselves.
    assert_eq!(recorded(&sheet, &signs, &lines(&signs), nothing), []);
    let not_done = Reply::NotDone(NotDoneReason::Other);
    for planned in &signs {
        let (first, no) = match planned.key.step {
            Step::SignSwerve => (
                Reply::Picked(Choice::LouderRight),
                Reply::Picked(Choice::NoChange),
            ),
            _ => (Reply::Said(Answer::Yes), Reply::Said(Answer::No)),
        };
        assert_eq!(turns(planned)[0], first);
        assert_eq!(turns(planned).last(), Some(&not_done));
        assert_eq!(no_to(planned), no);
        assert!(!turns(planned).contains(&no));
    }
    let unasked = screen_without(
        &sheet,
        &signs,
        &lines(&signs),
        NotDoneReason::NoTime,
        nothing,
    );
    assert_eq!(unasked.len(), signs.len());
    // Nothing is answered before a finger or the key says so.
    let empty = |line: &Line| line.answer.is_none();
    assert!(lines(&signs).iter().all(empty));
    assert_eq!(open_rows(&lines(&signs)), signs.len());
}

#[test]
fn not_done_says_nothing_of_rows_that_nobody_touched() {
    let rows_before = |first: StepKey| {
        let sheet = walk_to(Story::REPLACED, first).sheet();
        let mut planned_steps = screen(&sheet);
        planned_steps.pop().unwrap();
        (sheet, planned_steps)
    };
    for step in [Step::LiftStand, Step::StripNut, Step::Compare, Step::Seat] {
        let (sheet, planned_steps) = rows_before(at(step));
        let untouched = lines(&planned_steps);
        let because = NotDoneReason::NoTime;
        let whats = screen_without(&sheet, &planned_steps, &untouched, because, nothing);
        assert_eq!(whats, [], "{step:?}");
        // The first row is touched: it is told, and no other is called right by it.
        let mut touched = untouched.clone();
        touched[0].answer = Some(Answer::Yes);
        let whats = screen_without(&sheet, &planned_steps, &touched, because, nothing);
        assert!(!whats.is_empty());
        for what in whats {
            if let Event::Answered(_, Reply::Checked(rows)) = what {
                let yes = rows.iter().filter(|(_, answer)| *answer == Answer::Yes);
                assert_eq!(yes.count(), 1, "{step:?}");
            }
        }
    }
}

/// A whole job told screen by screen is the job told step by step.
#[test]
fn screens_and_steps_come_to_the_same_end() {
    for nut in NutPosition::ALL.iter().copied() {
        let story = Story {
            nut,
            ..Story::REPLACED
        };
        let mut by_screen = begin(story);
        let mut screens = 0;
        while next_key(&by_screen.sheet()).is_some() {
            tap_screen(&mut by_screen, story);
            screens += 1;
            assert!(screens < 300);
        }
        let mut by_step = begin(story);
        let mut count = 0;
        while step(&mut by_step, story) {
            count += 1;
        }
        assert!(screens < count);
        let (one, other) = (by_screen.sheet(), by_step.sheet());
        assert_eq!(one.loose(), other.loose());
        for planned in steps(&other) {
            assert_eq!(
                status(&one, &planned),
                status(&other, &planned),
                "{:?}",
                planned.key
            );
        }
    }
}

fn tap_screen(job: &mut Job, story: Story) {
    let sheet = job.sheet();
    let mut rows = screen(&sheet);
    let last = rows.pop().unwrap();
    let mut whats = if sign_of(last.key.step).is_some() {
        let asked = rows
            .iter()
            .map(|planned| Event::Answered(planned.key, turns(planned)[0].clone()));
        asked.collect()
    } else {
        recorded(&sheet, &rows, &lines(&rows), |planned| {
            let mut beside = technician::answer(&sheet, planned, story);
            beside.retain(|what| matches!(what, Event::Due(_)));
            beside
        })
    };
    whats.extend(technician::answer(&sheet, &last, story));
    job.tap(whats);
}

/// What was not right is lifted by a touch of its own row, never by the key of the list.
#[test]
fn a_list_that_was_not_all_yes_stands_as_it_was_answered() {
    let stand = at(Step::LiftStand);
    let mut job = walk_to(Story::REPLACED, stand);
    let planned = |job: &Job| {
        let all = steps(&job.sheet());
        all.into_iter()
            .find(|planned| planned.key == stand)
            .unwrap()
    };
    let Form::Checks(checks) = planned(&job).form else {
        panic!("a list");
    };
    let shown = |job: &Job| rows(&job.sheet(), &planned(job), &checks);
    assert!(shown(&job).iter().all(Option::is_none));
    for wrong in [Answer::No, Answer::NotDone] {
        let given = [Answer::Yes, wrong, Answer::Yes];
        let recorded = checks.iter().copied().zip(given).collect();
        job.tap(vec![Event::Answered(stand, Reply::Checked(recorded))]);
        assert_eq!(shown(&job), given.map(Some));
        assert_eq!(put_right(Some(wrong), Some(wrong)), Answer::Yes);
    }
    assert_eq!(put_right(Some(Answer::Yes), Some(Answer::Yes)), Answer::No);
    assert_eq!(put_right(None, None), Answer::No);
    let recorded = checks.iter().map(|check| (*check, Answer::Yes)).collect();
    job.tap(vec![Event::Answered(stand, Reply::Checked(recorded))]);
    assert!(shown(&job).iter().all(Option::is_none));
}
