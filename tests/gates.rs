//! The six hold points: each is closed until its answer is given, and "not done" is no answer.

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

use hubslate::job::answers::given;
use hubslate::job::dial_setup::recorded;
use hubslate::job::ending::proposed;
use hubslate::job::entry::{Ending, Event, Reply, Side};
use hubslate::job::{Held, held, plan};
use hubslate::trade::answer::Answer;
use hubslate::trade::fastening::SpecItem;
use hubslate::trade::play::{Decision, Rig, Way};
use hubslate::trade::wheel_end::{
    Choice, Form, HoldPoint, ItemKind, ItemState, NotDoneReason, NutPosition, PlannedStep,
    SHOVE_CRACKED, SetName, Step, StepKey, When, round_number, stays_open,
};
use record::{HERE, Job, item, moved, said};
use technician::{Story, answer, begin, consent, next_key, steps, turn, walk_to};

const PUT_BACK: Story = Story {
    decision: Decision::Watch,
    ..Story::REPLACED
};

fn at(step: Step) -> StepKey {
    StepKey::at(step, HERE)
}

fn planned(steps: &[PlannedStep], key: StepKey) -> &PlannedStep {
    steps.iter().find(|planned| planned.key == key).unwrap()
}

/// What stands before the step, by the plan of the job as it is.
fn before(job: &Job, key: StepKey) -> Option<Held> {
    let sheet = job.sheet();
    let steps = steps(&sheet);
    held(&sheet, &steps, planned(&steps, key))
}

fn point(job: &Job, key: StepKey) -> Option<HoldPoint> {
    before(job, key).map(|held| held.point)
}

/// The job after one more tap.
fn after(job: &Job, what: Event) -> Job {
    let mut job = job.clone();
    job.tap(vec![what]);
    job
}

/// Every way of saying that something was not done.
fn not_done(step: StepKey) -> Vec<Event> {
    let reasons = NotDoneReason::ALL.iter();
    let mut all: Vec<Event> = reasons
        .map(|because| Event::Answered(step, Reply::NotDone(*because)))
        .collect();
    all.push(said(step, Answer::NotDone));
    all
}

#[track_caller]
fn stays_closed(job: &Job, gated: StepKey, expected: HoldPoint, whats: Vec<Event>) {
    assert_eq!(point(job, gated), Some(expected), "before anything is said");
    for what in whats {
        let said = after(job, what.clone());
        assert_eq!(point(&said, gated), Some(expected), "after {what:?}");
    }
}

#[test]
fn the_wheel_stays_on_until_the_car_was_shoved_and_stood() {
    let shove = at(Step::Shove).nth(SHOVE_CRACKED);
    let job = walk_to(Story::REPLACED, shove);
    let expected = Held {
        point: HoldPoint::Stand,
        answer_at: Some(shove),
        given: None,
    };
    assert_eq!(before(&job, at(Step::WheelOff)), Some(expected));
    let mut no = not_done(shove);
    no.push(said(shove, Answer::No));
    no.push(Event::Answered(shove, Reply::Done));
    stays_closed(&job, at(Step::WheelOff), HoldPoint::Stand, no);
    let stood = after(&job, said(shove, Answer::Yes));
    assert_eq!(before(&stood, at(Step::WheelOff)), None);
}

#[test]
fn the_first_shove_does_not_let_the_wheel_off_again() {
    let ground = Story {
        nut: NutPosition::OnGround,
        ..Story::REPLACED
    };
    let again = at(Step::Shove).nth(2);
    let job = walk_to(ground, again);
    let off = at(Step::WheelOffAgain);
    assert_eq!(before(&job, off).unwrap().answer_at, Some(again));
    stays_closed(&job, off, HoldPoint::Stand, not_done(again));
    assert_eq!(before(&after(&job, said(again, Answer::Yes)), off), None);
}

/// The dial of a set, set up for this rig.
fn set_up(when: When, rig: Rig) -> Event {
    let set = SetName { when, nth: 1 };
    let way = Way {
        rig: Some(rig),
        ..Way::DEFAULT
    };
    recorded(HERE, set, way)
}

#[test]
fn no_dial_is_read_with_a_wheel_on_or_pads_in_unless_it_was_set_up_so() {
    let ground = Story {
        nut: NutPosition::OnGround,
        ..Story::REPLACED
    };
    let wheel_on: &[Rig] = &[Rig::WheelOn];
    let caliper_off: &[Rig] = &[Rig::WheelOn, Rig::RotorOff];
    for (story, step, when, so) in [
        (Story::REPLACED, Step::WheelOff, When::Before, wheel_on),
        (Story::REPLACED, Step::CaliperUp, When::Before, caliper_off),
        (ground, Step::WheelOffAgain, When::After, wheel_on),
        (ground, Step::CaliperUpAgain, When::After, caliper_off),
    ] {
        let nth = round_number(SetName { when, nth: 1 }, 1);
        let round = at(Step::Round).nth(nth);
        let job = walk_to(story, at(step));
        let by_this = |job: &Job| before(job, round).and_then(|held| held.answer_at);
        for what in not_done(at(step)) {
            let on = after(&job, what.clone());
            assert_eq!(by_this(&on), Some(at(step)), "{what:?}");
            for rig in Rig::ALL {
                let read = after(&on, set_up(when, *rig));
                let held = by_this(&read) == Some(at(step));
                assert_eq!(held, !so.contains(rig), "{step:?} {rig:?}");
            }
            let off = after(&on, Event::Answered(at(step), Reply::Done));
            assert_ne!(by_this(&off), Some(at(step)), "{what:?}");
        }
    }
}

#[test]
fn nothing_is_taken_apart_behind_a_wheel_that_is_on() {
    let job = walk_to(Story::REPLACED, at(Step::StripBrake));
    assert_eq!(point(&job, at(Step::StripBrake)), None);
    let on = Event::Answered(at(Step::WheelOff), Reply::NotDone(NotDoneReason::WillNotGo));
    let on = after(&job, on);
    for step in [Step::CaliperUp, Step::GaugeClean, Step::StripBrake] {
        assert_eq!(
            before(&on, at(step)).unwrap().answer_at,
            Some(at(Step::WheelOff))
        );
    }
    // What is looked at through the wheel, and the decision, do not wait for it.
    for step in [Step::NutFound, Step::RigTip, Step::Decide] {
        assert_eq!(point(&on, at(step)), None, "{step:?}");
    }
}

/// A job that stands before the nut, its readings struck.
fn unread() -> Job {
    let mut job = walk_to(Story::REPLACED, at(Step::LoosenAxleNut));
    let read = |what: &Event| matches!(what, Event::Reading(_));
    let ids = job.entries.iter().filter(|entry| read(&entry.what));
    let strike = Event::Strike(ids.map(|entry| entry.id.clone()).collect());
    job.tap(vec![strike]);
    job
}

fn rounds(job: &Job) -> Vec<PlannedStep> {
    let before = steps(&job.sheet()).into_iter();
    before
        .take_while(|planned| planned.key != at(Step::Decide))
        .filter(|planned| matches!(planned.form, Form::Round(..)))
        .collect()
}

#[test]
fn the_nut_stays_tight_until_the_three_rounds_were_read() {
    let mut job = unread();
    for round in rounds(&job) {
        let expected = Held {
            point: HoldPoint::Before,
            answer_at: Some(round.key),
            given: None,
        };
        assert_eq!(before(&job, at(Step::LoosenAxleNut)), Some(expected));
        let readings = answer(&job.sheet(), &round, Story::REPLACED);
        let pushed = |what: &&Event| matches!(what, Event::Reading(r) if r.side == Side::Push);
        let push = readings.iter().find(pushed).unwrap();
        let half = after(&job, push.clone());
        assert_eq!(
            point(&half, at(Step::LoosenAxleNut)),
            Some(HoldPoint::Before)
        );
        job.tap(readings);
    }
    assert_eq!(before(&job, at(Step::LoosenAxleNut)), None);
}

#[test]
fn a_reason_for_each_round_opens_the_way_to_the_nut() {
    let mut job = unread();
    let rounds = rounds(&job);
    assert_eq!(rounds.len(), 3);
    for round in rounds {
        assert_eq!(
            point(&job, at(Step::LoosenAxleNut)),
            Some(HoldPoint::Before)
        );
        job.tap(vec![Event::Answered(
            round.key,
            Reply::NotDone(NotDoneReason::NoTool),
        )]);
    }
    assert_eq!(before(&job, at(Step::LoosenAxleNut)), None);
}

#[test]
fn nothing_is_stripped_until_the_customer_said_yes() {
    let agree = at(Step::Agree);
    let job = walk_to(Story::REPLACED, at(Step::LoosenAxleNut));
    let agreed = steps(&job.sheet());
    let asked = walk_to(Story::REPLACED, agree);
    let stripping = agreed.iter().filter(|s| s.holds.contains(&HoldPoint::Yes));
    let mut closed = not_done(agree);
    closed.push(consent(agree, false));
    closed.push(said(agree, Answer::Yes));
    let mut count = 0;
    for strip in stripping {
        count += 1;
        let held_at = |job: &Job| held(&job.sheet(), &agreed, strip);
        let expected = Held {
            point: HoldPoint::Yes,
            answer_at: Some(agree),
            given: None,
        };
        assert_eq!(held_at(&asked), Some(expected));
        for what in &closed {
            assert_eq!(held_at(&after(&asked, what.clone())), Some(expected));
        }
        // The first one is free, and each after it waits for those before.
        let agreed = held_at(&after(&asked, consent(agree, true))).map(|held| held.point);
        let order = match strip.key.step {
            Step::LoosenAxleNut => None,
            Step::StripNut => Some(HoldPoint::Stand),
            _ => Some(HoldPoint::Order),
        };
        assert_eq!(agreed, order, "{:?}", strip.key);
    }
    assert_eq!(count, 5);
}

#[test]
fn no_weight_is_let_down_until_the_nut_is_at_its_spec() {
    let turn_nut = at(Step::TurnAxleNut);
    let lower = at(Step::Lower);
    let job = walk_to(Story::REPLACED, turn_nut);
    assert_eq!(before(&job, lower).unwrap().answer_at, Some(turn_nut));
    let mut closed = not_done(turn_nut);
    closed.push(Event::Answered(turn_nut, Reply::Done));
    for short in [
        ItemState::Off,
        ItemState::Loosened,
        ItemState::ByHand,
        ItemState::Snug,
    ] {
        closed.push(moved(
            Step::TurnAxleNut,
            vec![item(ItemKind::AxleNut, 1)],
            short,
        ));
    }
    stays_closed(&job, lower, HoldPoint::Nut, closed);
    let mut turned = job.clone();
    turned.tap(turn(&job.sheet(), turn_nut, ItemKind::AxleNut));
    // The wheel is still off; the nut does no more.
    assert_eq!(point(&turned, lower), Some(HoldPoint::Ready));
}

#[test]
fn a_nut_that_was_never_touched_holds_no_weight_back() {
    let job = walk_to(PUT_BACK, at(Step::Lower));
    assert_eq!(before(&job, at(Step::Lower)), None);
}

#[test]
fn nothing_moves_until_every_pedal_was_firm() {
    let firm = StepKey::once(Step::ProvePedal);
    let warning_lights = StepKey::once(Step::ProveWarningLights);
    let job = walk_to(Story::REPLACED, firm);
    assert_eq!(before(&job, warning_lights).unwrap().answer_at, Some(firm));
    let mut closed = not_done(firm);
    closed.push(said(firm, Answer::No));
    stays_closed(&job, warning_lights, HoldPoint::Pedal, closed);
    let open = after(&job, said(firm, Answer::Yes));
    assert_eq!(before(&open, warning_lights), None);
    for nth in [1, 2] {
        let earlier = at(Step::Pedal).nth(nth);
        let soft = after(&open, said(earlier, Answer::No));
        assert_eq!(
            before(&soft, warning_lights).unwrap().answer_at,
            Some(earlier)
        );
    }
}

#[test]
fn a_job_put_back_does_not_end_on_a_soft_pedal() {
    let job = walk_to(PUT_BACK, StepKey::once(Step::End));
    let end = StepKey::once(Step::End);
    assert_eq!(before(&job, end), None);
    let pedal = at(Step::Pedal);
    let mut soft = not_done(pedal);
    soft.push(said(pedal, Answer::No));
    for what in soft {
        assert_eq!(point(&after(&job, what), end), Some(HoldPoint::Pedal));
    }
}

#[test]
fn a_job_does_not_end_while_anything_is_loose() {
    let turn_nuts = at(Step::TurnLugNuts);
    let end = StepKey::once(Step::End);
    let job = walk_to(PUT_BACK, turn_nuts);
    let expected = Held {
        point: HoldPoint::Loose,
        answer_at: None,
        given: None,
    };
    assert_eq!(before(&job, end), Some(expected));
    let mut closed = not_done(turn_nuts);
    closed.push(Event::Answered(turn_nuts, Reply::Done));
    stays_closed(&job, end, HoldPoint::Loose, closed);
    let whats = turn(&job.sheet(), turn_nuts, ItemKind::LugNuts);
    let mut short = job.clone();
    short.tap(whats[..whats.len() - 1].to_vec());
    assert_eq!(point(&short, end), Some(HoldPoint::Loose));
    short.tap(whats[whats.len() - 1..].to_vec());
    assert_eq!(before(&short, end), None);
}

/// The steps on which the car moves, or what carries it is taken away.
const MOVES: [Step; 4] = [
    Step::Drive,
    Step::Clear,
    Step::ProveWarningLights,
    Step::ProveRoad,
];

#[test]
fn with_anything_loose_the_car_is_not_lowered_cleared_or_driven() {
    for (turned, lowers) in [
        (Step::TurnHubBolts, true),
        (Step::TurnBracketBolts, true),
        (Step::TurnCaliperPins, false),
        (Step::TurnLugNuts, false),
    ] {
        let mut job = walk_to(Story::REPLACED, at(turned));
        job.tap(vec![Event::Answered(
            at(turned),
            Reply::NotDone(NotDoneReason::NoTime),
        )]);
        for moves in MOVES {
            let there = steps(&job.sheet()).iter().any(|s| s.key.step == moves);
            let held = there.then(|| before(&job, StepKey::once(moves)).is_some());
            assert_ne!(held, Some(false), "{turned:?} lets {moves:?}");
        }
        if lowers {
            let lower = before(&job, at(Step::Lower)).unwrap();
            assert!(matches!(lower.point, HoldPoint::Ready | HoldPoint::Nut));
        }
    }
}

#[test]
fn a_fastener_is_not_turned_while_what_it_holds_is_off() {
    let wheel = |to| moved(Step::WheelOn, vec![item(ItemKind::Wheel, 1)], to);
    let mut job = walk_to(Story::REPLACED, at(Step::TurnLugNuts));
    assert_eq!(before(&job, at(Step::TurnLugNuts)), None);
    job.tap(vec![wheel(ItemState::Off)]);
    let expected = Held {
        point: HoldPoint::Ready,
        answer_at: Some(at(Step::WheelOn)),
        given: None,
    };
    assert_eq!(before(&job, at(Step::TurnLugNuts)), Some(expected));
    job.tap(vec![wheel(ItemState::Done)]);
    assert_eq!(before(&job, at(Step::TurnLugNuts)), None);
}

#[test]
fn nothing_is_taken_from_under_a_car_that_was_not_lowered() {
    let mut job = walk_to(PUT_BACK, StepKey::once(Step::Clear));
    let clear = StepKey::once(Step::Clear);
    assert_eq!(before(&job, clear), None);
    let lower = at(Step::Lower);
    job.tap(vec![Event::Answered(
        lower,
        Reply::NotDone(NotDoneReason::NoTime),
    )]);
    let expected = Held {
        point: HoldPoint::Down,
        answer_at: Some(lower),
        given: None,
    };
    assert_eq!(before(&job, clear), Some(expected));
    job.tap(vec![Event::Answered(lower, Reply::Done)]);
    assert_eq!(before(&job, clear), None);
}

#[test]
fn the_new_part_is_measured_only_with_nut_and_bolts_at_spec() {
    let setup = at(Step::RigTip).nth(2);
    let mut job = walk_to(Story::REPLACED, setup);
    assert_eq!(before(&job, setup), None);
    let nut = |to| moved(Step::TurnAxleNut, vec![item(ItemKind::AxleNut, 1)], to);
    job.tap(vec![nut(ItemState::ByHand)]);
    for step in [setup, at(Step::Round).nth(21), at(Step::ProveSpin)] {
        let held = before(&job, step).unwrap();
        assert_eq!(
            (held.point, held.answer_at),
            (HoldPoint::Ready, Some(at(Step::TurnAxleNut)))
        );
    }
    job.tap(vec![nut(ItemState::Done)]);
    assert_eq!(before(&job, setup), None);
}

#[test]
fn that_a_bearing_can_stay_waits_for_every_look_at_its_corner() {
    let decide = at(Step::Decide);
    let early = walk_to(Story::REPLACED, at(Step::RockTwelveSix));
    let held = before(&early, decide).unwrap();
    assert_eq!(
        (held.point, held.answer_at),
        (HoldPoint::Ready, Some(at(Step::RockTwelveSix)))
    );
    let there = walk_to(Story::REPLACED, decide);
    assert_eq!(before(&there, decide), None);
    // What condemns it may be told early.
    let rough = Event::Answered(at(Step::SpinHand), Reply::Picked(Choice::Rough));
    assert_eq!(before(&after(&early, rough), decide), None);
}

#[test]
fn an_axle_nut_without_a_torque_is_not_loosened() {
    let strip = at(Step::LoosenAxleNut);
    let mut job = walk_to(Story::REPLACED, strip);
    assert_eq!(before(&job, strip), None);
    let spec = job
        .entries
        .iter()
        .find(|entry| matches!(&entry.what, Event::Spec(spec) if spec.item == SpecItem::AxleNut));
    let id = spec.unwrap().id.clone();
    job.tap(vec![Event::Strike(vec![id])]);
    let held = before(&job, strip).unwrap();
    assert_eq!(
        (held.point, held.answer_at),
        (HoldPoint::Ready, Some(StepKey::once(Step::SpecAxleNut)))
    );
}

#[test]
fn an_undone_answer_closes_its_hold_point_again() {
    let shove = at(Step::Shove).nth(SHOVE_CRACKED);
    let mut job = walk_to(Story::REPLACED, shove);
    let ids = job.tap(vec![said(shove, Answer::Yes)]);
    assert_eq!(before(&job, at(Step::WheelOff)), None);
    job.tap(vec![Event::Strike(ids)]);
    assert_eq!(point(&job, at(Step::WheelOff)), Some(HoldPoint::Stand));
}

#[test]
fn a_technician_who_does_nothing_is_let_past_no_question_of_safety() {
    let mut job = begin(PUT_BACK);
    let mut guards = 0;
    while let Some(key) = next_key(&job.sheet()) {
        let sheet = job.sheet();
        let steps = steps(&sheet);
        let planned = planned(&steps, key);
        if planned.form == Form::End {
            break;
        }
        let reply = Reply::NotDone(NotDoneReason::NoTime);
        let stays = given(planned, &reply)
            .into_iter()
            .any(|given| stays_open(key, given));
        job.tap(vec![Event::Answered(key, reply)]);
        assert_eq!(next_key(&job.sheet()) == Some(key), stays, "{key:?}");
        // Without its answer the job stays where it is.
        if next_key(&job.sheet()) == Some(key) {
            guards += 1;
            job.tap(answer(&sheet, planned, PUT_BACK));
        }
    }
    assert!(guards >= 9, "only {guards}");
    let sheet = job.sheet();
    let end = point(&job, StepKey::once(Step::End));
    assert!(end.is_some());
    assert_eq!(proposed(&sheet, &plan(&sheet)), Ending::LeftUnfinished);
}
