//! Whole jobs at every kind of wheel end: they close, what holds them holds, and a proof that fails is
//! taken again at a wheel end that is opened and closed once more.

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

use std::collections::BTreeSet;

use hubslate::job::entry::{Event, Reply, VehicleField};
use hubslate::job::{evidence, held, is_closed_again, measure_again, plan};
use hubslate::report::{Reader, Report};
use hubslate::text::Lang;
use hubslate::trade::answer::Answer;
use hubslate::trade::play::{Decision, Reason, StopSign};
use hubslate::trade::wheel_end::{
    Check, Choice, Form, HoldPoint, ItemKind, Kind, NotDoneReason, Step, StepKey,
};
use hubslate::units::{DecimalMark, Format, System};
use record::{HERE, Job, said};
use technician::{Story, answer, begin, next_key, steps, walk_to};

const DRUM_ON_SPINDLE: Story = Story::at(Story::KINDS[3]);
const TAPERED: Story = Story::at(Story::KINDS[4]);
const LOCKED: Story = Story::at(Story::KINDS[5]);
const PRESSED: Story = Story::at(Story::KINDS[6]);
const PRESSED_FREE: Story = Story::at(Story::KINDS[8]);

fn at(step: Step) -> StepKey {
    StepKey::at(step, HERE)
}

/// Does what comes next until nothing is left before the end; no step on the way is held.
fn work(job: &mut Job, story: Story) -> Vec<String> {
    let mut done = Vec::new();
    for _ in 0..250 {
        let sheet = job.sheet();
        let steps = steps(&sheet);
        let key = next_key(&sheet).expect("a step before the end");
        let planned = steps.iter().find(|planned| planned.key == key).unwrap();
        let held = held(&sheet, &steps, planned);
        assert_eq!(held, None, "{} at {:?}", key.code(), story.end);
        if planned.form == Form::End {
            return done;
        }
        done.push(key.code());
        job.tap(answer(&sheet, planned, story));
    }
    panic!("the job does not end");
}

fn point(job: &Job, step: Step) -> Option<(HoldPoint, Option<StepKey>)> {
    let sheet = job.sheet();
    let steps = steps(&sheet);
    let planned = steps
        .iter()
        .find(|planned| planned.key == at(step))
        .unwrap();
    held(&sheet, &steps, planned).map(|held| (held.point, held.answer_at))
}

fn picked(step: Step, pick: Choice) -> Event {
    Event::Answered(at(step), Reply::Picked(pick))
}

#[test]
fn a_job_of_each_kind_is_worked_from_its_first_step_to_its_end_and_leaves_nothing_loose() {
    let mut worked = BTreeSet::new();
    for end in Story::KINDS {
        let story = Story::at(end);
        let mut job = begin(story);
        let done = work(&mut job, story);
        let sheet = job.sheet();
        assert_eq!(sheet.loose(), [], "{end:?}");
        assert!(done.len() > 60, "{end:?}: {}", done.len());
        worked.insert(plan(&sheet).kind);
    }
    assert_eq!(worked.len(), 5, "{worked:?}");
}

#[test]
fn a_declined_repair_is_put_back_at_each_kind() {
    for end in Story::KINDS {
        let story = Story {
            yes: false,
            ..Story::at(end)
        };
        let mut job = begin(story);
        let done = work(&mut job, story);
        assert_eq!(job.sheet().loose(), [], "{end:?}");
        assert!(!done.iter().any(|code| code.starts_with("strip_")));
    }
}

#[test]
fn a_closed_wheel_end_of_each_kind_is_opened_and_closed_again_for_a_proof() {
    for end in Story::KINDS {
        let story = Story {
            still_plays: true,
            ..Story::at(end)
        };
        let mut job = begin(story);
        let first = work(&mut job, story);
        let sheet = job.sheet();
        assert!(is_closed_again(&sheet, HERE), "{end:?}");
        job.tap(measure_again(&sheet, &steps(&sheet), HERE));
        let good = Story::at(end);
        let again = work(&mut job, good);
        assert_eq!(job.sheet().loose(), [], "{end:?}");
        assert!(
            again
                .iter()
                .any(|code| code.starts_with("wheel_off_again@"))
        );
        assert!(again.iter().any(|code| code.starts_with("turn_lug_nuts@")));
        assert!(again.len() < first.len(), "{end:?}");
    }
}

#[test]
fn a_nut_on_a_spindle_waits_for_the_reading_its_spec_and_the_yes() {
    for story in [DRUM_ON_SPINDLE, PRESSED_FREE, TAPERED, LOCKED] {
        let job = walk_to(story, at(Step::Agree));
        let (held, answer_at) = {
            // The nut stands among the steps once the repair is agreed.
            let mut job = job.clone();
            let sheet = job.sheet();
            let all = steps(&sheet);
            let agree = all
                .iter()
                .find(|planned| planned.key == at(Step::Agree))
                .unwrap();
            job.tap(answer(&sheet, agree, story));
            let read = |what: &Event| matches!(what, Event::Reading(_));
            let ids = job.entries.iter().filter(|entry| read(&entry.what));
            let strike = Event::Strike(ids.map(|entry| entry.id.clone()).collect());
            job.tap(vec![strike]);
            point(&job, Step::SpindleNutOff).unwrap()
        };
        assert_eq!(held, HoldPoint::Before);
        assert_eq!(answer_at.unwrap().step, Step::Round);

        let mut job = walk_to(story, at(Step::SpindleNutOff));
        assert_eq!(point(&job, Step::SpindleNutOff), None);
        let spec = |entry: &&hubslate::job::entry::Entry| matches!(&entry.what, Event::Spec(spec) if spec.item == hubslate::trade::fastening::SpecItem::SpindleNut);
        let id = job.entries.iter().find(spec).unwrap().id.clone();
        job.tap(vec![Event::Strike(vec![id])]);
        let spec = StepKey::once(Step::SpecSpindleNut);
        assert_eq!(
            point(&job, Step::SpindleNutOff),
            Some((HoldPoint::Ready, Some(spec)))
        );
    }
}

#[test]
fn no_weight_comes_on_a_spindle_nut_that_is_not_at_its_spec() {
    for story in [DRUM_ON_SPINDLE, PRESSED_FREE, TAPERED, LOCKED] {
        let job = walk_to(story, at(Step::TurnSpindleNut));
        assert_eq!(
            point(&job, Step::Lower),
            Some((HoldPoint::Nut, Some(at(Step::TurnSpindleNut))))
        );
        // Nor is the setting read before nut and lock are where they stay.
        let steps = steps(&job.sheet());
        let round = steps
            .iter()
            .rfind(|planned| planned.key.step == Step::Round)
            .unwrap();
        let held = held(&job.sheet(), &steps, round).unwrap();
        assert_eq!(held.answer_at, Some(at(Step::TurnSpindleNut)), "{held:?}");
    }
    let job = walk_to(LOCKED, at(Step::TurnLockNut));
    let steps = steps(&job.sheet());
    let round = steps
        .iter()
        .rfind(|planned| planned.key.step == Step::Round)
        .unwrap();
    let held = held(&job.sheet(), &steps, round).unwrap();
    assert_eq!(held.answer_at, Some(at(Step::TurnLockNut)), "{held:?}");
}

#[test]
fn a_nut_that_was_found_unlocked_is_stop() {
    let mut job = walk_to(TAPERED, at(Step::LockFound));
    job.tap(vec![picked(Step::LockFound, Choice::LockGone)]);
    let verdict = evidence::verdict(&job.sheet(), HERE);
    assert_eq!(verdict.decision, Decision::Stop);
    let sign = Reason::MustNotDrive(StopSign::LooseAxleNut);
    assert!(verdict.reasons.contains(&sign));
    job.tap(vec![picked(Step::LockFound, Choice::LockHolds)]);
    assert_ne!(
        evidence::verdict(&job.sheet(), HERE).decision,
        Decision::Stop
    );
}

#[test]
fn a_slot_that_only_tightening_would_reach_holds_all_that_comes_after() {
    let mut job = walk_to(TAPERED, at(Step::NutSlot));
    job.tap(vec![picked(Step::NutSlot, Choice::SlotTighter)]);
    assert_eq!(next_key(&job.sheet()), Some(at(Step::NutSlot)));
    for step in [Step::Stake, Step::CapOn, Step::WheelOn] {
        let held = point(&job, step).unwrap();
        assert!(
            matches!(held.0, HoldPoint::Order | HoldPoint::Ready),
            "{held:?}"
        );
    }
    job.tap(vec![picked(Step::NutSlot, Choice::SlotLooser)]);
    assert_ne!(next_key(&job.sheet()), Some(at(Step::NutSlot)));
}

/// Page one of a job's report as a customer reads it.
fn page_one(job: &Job) -> String {
    let format = Format {
        system: System::Us,
        decimal: DecimalMark::Dot,
    };
    let report = Report::of(&job.sheet(), Lang::English, format, &Reader::default());
    let lines = report.page_one.iter().flat_map(|block| block.texts());
    lines.collect::<Vec<_>>().join("\n")
}

#[test]
fn the_report_says_which_rollers_are_new_and_what_was_only_set() {
    for (new, word, said) in [
        (
            Some(Choice::RenewedBoth),
            "REPLACED",
            "Both roller bearings in it are new.",
        ),
        (
            Some(Choice::RenewedOuter),
            "REPLACED",
            "The outer roller bearing in it is new",
        ),
        (
            Some(Choice::RenewedInner),
            "REPLACED",
            "The inner roller bearing in it is new",
        ),
        (
            Some(Choice::RenewedNone),
            "ADJUSTED",
            "were sound and were not replaced",
        ),
        (None, "REPLACED", "was not recorded"),
    ] {
        let mut job = walk_to(TAPERED, at(Step::RollersNew));
        job.tap(vec![match new {
            Some(new) => picked(Step::RollersNew, new),
            None => Event::Answered(at(Step::RollersNew), Reply::NotDone(NotDoneReason::NoTime)),
        }]);
        work(&mut job, TAPERED);
        let page = page_one(&job);
        assert!(page.contains(said), "{new:?}: {page}");
        assert!(page.contains("set it by its nut"), "{page}");
        assert!(
            page.lines().next().unwrap().starts_with(word),
            "{new:?}: {page}"
        );
        assert!(!page.contains("We replaced the"), "{page}");
        // Taken back, it is not recorded any more.
        let answer = |entry: &&hubslate::job::entry::Entry| matches!(&entry.what, Event::Answered(key, _) if key.step == Step::RollersNew);
        let id = job.entries.iter().find(answer).unwrap().id.clone();
        job.tap(vec![Event::Strike(vec![id])]);
        assert!(page_one(&job).contains("was not recorded"), "{new:?}");
    }
    let mut job = begin(Story::at(Story::KINDS[0]));
    work(&mut job, Story::at(Story::KINDS[0]));
    assert!(page_one(&job).contains("We replaced the front left wheel bearing."));
}

#[test]
fn nothing_is_pressed_before_the_bore_is_good_and_the_encoder_faces_the_sensor() {
    for story in [PRESSED, PRESSED_FREE] {
        nothing_is_pressed_before_its_answers(story);
    }
}

fn nothing_is_pressed_before_its_answers(story: Story) {
    let job = walk_to(story, at(Step::EncoderSide));
    for reply in [
        Reply::Said(Answer::No),
        Reply::Said(Answer::NotDone),
        Reply::NotDone(NotDoneReason::NoTool),
    ] {
        let mut job = job.clone();
        job.tap(vec![Event::Answered(at(Step::EncoderSide), reply)]);
        assert_eq!(next_key(&job.sheet()), Some(at(Step::EncoderSide)));
        assert_eq!(
            point(&job, Step::PressIn),
            Some((HoldPoint::Order, Some(at(Step::EncoderSide))))
        );
        let hub = match plan(&job.sheet()).kind {
            Kind::Pressed => Step::PressHub,
            _ => Step::HubOn,
        };
        assert!(point(&job, hub).is_some());
        job.tap(vec![said(at(Step::EncoderSide), Answer::Yes)]);
        assert_eq!(point(&job, Step::PressIn), None);
    }
    // A hub does not go on while the bearing in it is not held by its snap ring.
    let mut loose = walk_to(story, at(Step::SnapRingIn));
    loose.tap(vec![Event::Answered(
        at(Step::SnapRingIn),
        Reply::NotDone(NotDoneReason::NoTool),
    )]);
    for hub in [Step::PressHub, Step::HubOn] {
        let steps = steps(&loose.sheet());
        let asked = steps.iter().any(|planned| planned.key == at(hub));
        assert!(!asked || point(&loose, hub).is_some(), "{hub:?}");
    }
    let mut job = walk_to(story, at(Step::BoreLook));
    let bore = |round| {
        let rows = vec![
            (Check::BoreRound, round),
            (Check::BoreClean, Answer::Yes),
            (Check::BoreNotSpun, Answer::Yes),
        ];
        Event::Answered(at(Step::BoreLook), Reply::Checked(rows))
    };
    job.tap(vec![bore(Answer::No)]);
    assert_eq!(
        point(&job, Step::PressIn),
        Some((HoldPoint::Order, Some(at(Step::BoreLook))))
    );
    job.tap(vec![bore(Answer::Yes)]);
    assert_ne!(
        point(&job, Step::PressIn),
        Some((HoldPoint::Order, Some(at(Step::BoreLook))))
    );
}

#[test]
fn a_parking_brake_that_was_let_go_is_loose_until_it_is_set() {
    let story = Story::at(Story::KINDS[1]);
    let mut job = walk_to(story, at(Step::ReleaseBrake));
    job.tap(vec![Event::Answered(
        at(Step::ReleaseBrake),
        Reply::NotDone(NotDoneReason::WillNotGo),
    )]);
    assert_eq!(next_key(&job.sheet()), Some(at(Step::ReleaseBrake)));
    let job = walk_to(story, at(Step::SetBrake));
    let loose = job.sheet().loose();
    let brake = |group| loose.iter().any(|(item, _)| item.group == group);
    assert!(brake(ItemKind::ParkingBrake));
    let clear = StepKey::once(Step::Clear);
    let sheet = job.sheet();
    let steps = steps(&sheet);
    let planned = steps.iter().find(|planned| planned.key == clear).unwrap();
    assert!(held(&sheet, &steps, planned).is_some());
}

#[test]
fn an_open_kind_is_reported_as_a_bolted_driven_hub_and_a_changed_one_changes_the_steps() {
    let mut job = walk_to(Story::REPLACED, StepKey::once(Step::Price));
    let codes = |job: &Job| -> Vec<String> {
        steps(&job.sheet())
            .iter()
            .map(|planned| planned.key.code())
            .collect()
    };
    assert!(codes(&job).contains(&"spec_axle_nut".to_owned()));
    job.tap(vec![Event::Vehicle(
        VehicleField::Kind,
        "tapered".to_owned(),
    )]);
    let now = codes(&job);
    assert!(!now.contains(&"spec_axle_nut".to_owned()));
    assert_eq!(
        next_key(&job.sheet()),
        Some(StepKey::once(Step::SpecSpindleNut))
    );
}
