//! Two corners on one job: what is shared is asked once, each corner keeps every rule by itself, and
//! a stud that breaks on the ground opens its own corner alone.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/checker.rs"]
mod checker;
#[path = "support/record.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod record;
#[path = "support/technician.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod technician;

use std::collections::BTreeSet;

use checker::broken;
use hubslate::job::entry::Event;
use hubslate::job::held;
use hubslate::trade::vehicle::Corner;
use hubslate::trade::wheel_end::{
    CornerPlan, Course, Fitted, Form, HoldPoint, ItemKind, Kind, NutPosition, Plan, PlannedStep,
    STUD_BROKE, Start, Step, StepKey, procedure,
};
use record::HERE;
use technician::{Story, steps, walk_to};

const COURSES: [Course; 3] = [Course::PutBack, Course::Declined, Course::Replace];

const fn corner(corner: Corner, course: Course) -> CornerPlan {
    CornerPlan {
        corner,
        course,
        stop: false,
        play_felt: false,
        second_set: false,
        blocked: false,
        reopened: false,
        waited: false,
        broken_stud: None,
    }
}

fn plan(kind: Kind, nut: NutPosition, corners: Vec<CornerPlan>) -> Plan {
    Plan {
        kind,
        fitted: Fitted::COMMON,
        start: Start::AtHome,
        corners,
        nut,
        site_refused: false,
        teardown_refused: false,
        nuts_loose: false,
        wrong_looks: Vec::new(),
        warning_lights: None,
        driven: true,
        more_questions: false,
        signs: Vec::new(),
        ended: false,
    }
}

/// Every kind, position of the nut and pair of courses, for two corners.
fn each(one: Corner, two: Corner, mut test: impl FnMut(&Plan)) {
    for kind in Kind::ALL {
        for nut in NutPosition::ALL {
            for first in COURSES {
                for second in COURSES {
                    let corners = vec![corner(one, first), corner(two, second)];
                    test(&plan(*kind, *nut, corners));
                }
            }
        }
    }
}

fn count(steps: &[PlannedStep], step: Step) -> usize {
    steps.iter().filter(|it| it.key.step == step).count()
}

#[test]
fn what_two_corners_share_is_asked_once_and_never_between_the_steps_of_one() {
    let mut plans = 0;
    each(Corner::FrontLeft, Corner::FrontRight, |plan| {
        plans += 1;
        let steps = procedure(plan);
        let keys: BTreeSet<StepKey> = steps.iter().map(|it| it.key).collect();
        assert_eq!(keys.len(), steps.len(), "{plan:?}");
        for shared in [
            Step::SiteLook,
            Step::Odometer,
            Step::Drive,
            Step::HeatHere,
            Step::LiftHold,
            Step::Tools,
            Step::Report,
        ] {
            assert_eq!(count(&steps, shared), 1, "{shared:?} {plan:?}");
        }
        for own in [
            Step::LiftStand,
            Step::StandPhoto,
            Step::RockTwelveSix,
            Step::Decide,
        ] {
            assert_eq!(count(&steps, own), 2, "{own:?} {plan:?}");
        }
        // Shared, left, right, shared: work at one corner is over before the other is begun.
        let mut order: Vec<Option<Corner>> = steps.iter().map(|it| it.key.corner).collect();
        order.dedup();
        let (left, right) = (Some(Corner::FrontLeft), Some(Corner::FrontRight));
        assert_eq!(order, [None, left, right, None], "{plan:?}");
    });
    assert_eq!(plans, Kind::ALL.len() * NutPosition::ALL.len() * 9);
}

#[test]
fn each_of_two_corners_keeps_every_rule_by_itself() {
    each(Corner::RearRight, Corner::RearLeft, |plan| {
        let steps = procedure(plan);
        for at in &plan.corners {
            let here = |step: &&PlannedStep| step.key.corner.is_none_or(|it| it == at.corner);
            let own: Vec<PlannedStep> = steps.iter().filter(here).cloned().collect();
            let alone = Plan {
                corners: vec![at.clone()],
                ..plan.clone()
            };
            let found = broken(&alone, &own);
            assert!(found.is_empty(), "{found:#?}\n{plan:?}");
        }
    });
}

/// Whether the car is held again before the second corner is raised.
fn held_again(first: CornerPlan, second: Corner) -> bool {
    let corners = vec![first, corner(second, Course::Open)];
    let steps = procedure(&plan(Kind::BoltedDriven, NutPosition::AirBar, corners));
    let key = StepKey::at(Step::LiftHold, second);
    steps.iter().any(|it| it.key == key)
}

#[test]
fn the_car_is_held_again_on_another_axle_and_after_it_waited() {
    let first = |course| corner(Corner::FrontLeft, course);
    let waited = CornerPlan {
        waited: true,
        ..first(Course::Replace)
    };
    assert!(!held_again(first(Course::Replace), Corner::FrontRight));
    assert!(held_again(first(Course::Replace), Corner::RearLeft));
    assert!(held_again(waited, Corner::FrontRight));
    assert!(held_again(first(Course::Asking), Corner::FrontRight));
}

#[test]
fn a_stud_that_breaks_on_the_ground_has_its_wheel_taken_off_by_every_rule() {
    let mut tried = 0;
    each(Corner::FrontLeft, Corner::FrontRight, |plan| {
        let turned: Vec<StepKey> = procedure(plan)
            .iter()
            .filter(|it| it.form == Form::Turn(ItemKind::LugNuts))
            .map(|it| it.key)
            .filter(|key| key.corner == Some(Corner::FrontLeft))
            .collect();
        for turn in turned {
            tried += 1;
            let mut broke = plan.clone();
            broke.corners.truncate(1);
            broke.corners[0].broken_stud = Some(turn);
            let steps = procedure(&broke);
            let found = broken(&broke, &steps);
            assert!(found.is_empty(), "{found:#?}\n{broke:?}");
            let at = |key: StepKey| steps.iter().position(|it| it.key == key).unwrap();
            let key = |step| StepKey::at(step, Corner::FrontLeft).nth(STUD_BROKE);
            let order = [
                at(key(Step::LoosenLugNuts)),
                at(key(Step::Shove)),
                at(key(Step::WheelOffAgain)),
                at(StepKey::at(Step::StudIn, Corner::FrontLeft)),
                at(key(Step::WheelOn)),
                at(key(Step::Lower)),
                at(turn),
            ];
            assert!(order.is_sorted(), "{order:?}");
            assert_eq!(order[6] - order[0], 6, "nothing stands between");
        }
    });
    assert!(100 < tried, "{tried}");
}

#[test]
fn an_answer_owed_for_one_corner_does_not_hold_the_other_and_its_open_work_does() {
    let other = HERE.opposite_side();
    let point = |until: Step, step: Step| {
        let mut job = walk_to(Story::REPLACED, StepKey::at(until, HERE));
        job.tap(vec![Event::Corners(vec![HERE, other])]);
        let sheet = job.sheet();
        let all = steps(&sheet);
        let key = StepKey::at(step, other);
        let planned = all.iter().find(|it| it.key == key).unwrap();
        held(&sheet, &all, planned).map(|held| held.point)
    };
    // The customer has not answered for the left one: the right one is raised and looked at.
    assert_eq!(point(Step::Agree, Step::LiftHold), None);
    // A new part that was not compared, a shove that was not done: nothing begins elsewhere.
    assert_eq!(
        point(Step::Compare, Step::LiftStand),
        Some(HoldPoint::Order)
    );
    assert_eq!(point(Step::Shove, Step::LiftStand), Some(HoldPoint::Order));
}
