//! The procedure under every combination of the facts that pick and order its steps.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/bench.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod bench;
#[path = "support/plans.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod plans;

use std::collections::BTreeSet;

use bench::Bench;
use hubslate::trade::vehicle::Corner;
use hubslate::trade::wheel_end::{
    CornerPlan, Course, Form, HoldPoint, ItemKind, ItemState, NutPosition, Phase, Plan,
    PlannedStep, Start, Step, StepKey, When, procedure,
};
use plans::{each_plan, each_settled_plan};

fn place(phase: Phase) -> usize {
    Phase::ALL.iter().position(|other| *other == phase).unwrap()
}

/// Where a phase may run back: a second set after a first decision, the reading after among the
/// tightening, and a corner after the one before it.
fn may_run_back(from: &PlannedStep, to: &PlannedStep) -> bool {
    let second_set =
        (Phase::Decide, Phase::Gauge) == (from.phase, to.phase) && to.key.step == Step::RigTip;
    let proof =
        (Phase::Prove, Phase::Tighten) == (from.phase, to.phase) && from.key.corner.is_some();
    let next_corner = from.key.corner.is_some()
        && to.key.corner.is_some()
        && from.key.corner != to.key.corner
        && to.phase == Phase::Lift;
    second_set || proof || next_corner
}

#[test]
fn every_step_has_a_key_of_its_own() {
    each_plan(|plan| {
        let steps = procedure(plan);
        let keys: BTreeSet<StepKey> = steps.iter().map(|planned| planned.key).collect();
        assert_eq!(keys.len(), steps.len(), "{plan:?}");
    });
}

#[test]
fn phases_run_back_only_where_it_is_written() {
    each_plan(|plan| {
        for pair in procedure(plan).windows(2) {
            let (from, to) = (&pair[0], &pair[1]);
            assert!(
                place(from.phase) <= place(to.phase) || may_run_back(from, to),
                "{:?} {:?} after {:?} {:?} in {plan:?}",
                to.phase,
                to.key,
                from.phase,
                from.key
            );
        }
    });
}

#[test]
fn a_refused_site_leads_straight_to_the_report() {
    each_plan(|plan| {
        let refused = Plan {
            site_refused: true,
            ..plan.clone()
        };
        let steps = procedure(&refused);
        let after: Vec<Step> = steps
            .iter()
            .map(|planned| planned.key.step)
            .skip_while(|step| *step != Step::SiteLook)
            .collect();
        assert_eq!(after, [Step::SiteLook, Step::Report, Step::End]);
        assert!(steps.iter().all(|planned| planned.changes.is_empty()));
    });
}

#[test]
fn what_a_step_loosens_a_later_step_closes() {
    each_settled_plan(|plan| {
        let mut bench = Bench::default();
        for planned in procedure(plan) {
            bench.work(&planned);
            if planned.key.step == Step::Tools {
                assert_eq!(bench.loose(), [], "before the tools are packed: {plan:?}");
            }
        }
        assert_eq!(bench.loose(), [], "{plan:?}");
        assert!(bench.was_touched(ItemKind::LugNuts), "{plan:?}");
    });
}

#[test]
fn without_any_one_of_its_last_turns_the_loose_list_is_not_empty() {
    each_settled_plan(|plan| {
        let steps = procedure(plan);
        for (left_out, planned) in steps.iter().enumerate() {
            let Form::Turn(group) = planned.form else {
                continue;
            };
            let again = steps[left_out + 1..]
                .iter()
                .any(|later| later.form == planned.form && later.key.corner == planned.key.corner);
            if again {
                continue;
            }
            let mut bench = Bench::default();
            let others = steps.iter().enumerate().filter(|(n, _)| *n != left_out);
            others.for_each(|(_, planned)| bench.work(planned));
            assert!(
                bench.loose().iter().any(|item| item.group == group),
                "{:?} in {plan:?}",
                planned.key
            );
        }
    });
}

#[test]
fn no_fastener_is_closed_but_by_its_turn() {
    each_plan(|plan| {
        for planned in procedure(plan) {
            for change in &planned.changes {
                let closes = change.to == ItemState::Done;
                assert!(!(closes && change.group.is_fastener()), "{:?}", planned.key);
            }
        }
    });
}

#[test]
fn what_is_loosened_last_is_turned_after_it() {
    each_settled_plan(|plan| {
        let steps = procedure(plan);
        for at in &plan.corners {
            for group in [
                ItemKind::CaliperPins,
                ItemKind::LugNuts,
                ItemKind::HubBolts,
                ItemKind::BracketBolts,
                ItemKind::AxleNut,
            ] {
                let touches = |planned: &&PlannedStep| {
                    planned.key.corner == Some(at.corner)
                        && (planned.form == Form::Turn(group)
                            || planned.changes.iter().any(|change| change.group == group))
                };
                if let Some(last) = steps.iter().rfind(touches) {
                    assert_eq!(last.form, Form::Turn(group), "{:?} in {plan:?}", last.key);
                }
            }
        }
    });
}

#[test]
fn the_wheel_goes_on_only_over_a_hub_that_is_bolted() {
    each_plan(|plan| {
        let mut bench = Bench::default();
        for planned in procedure(plan) {
            if planned.key.step == Step::WheelOn {
                for group in [
                    ItemKind::Hub,
                    ItemKind::HubBolts,
                    ItemKind::Rotor,
                    ItemKind::Bracket,
                    ItemKind::BracketBolts,
                    ItemKind::Caliper,
                    ItemKind::Pads,
                    ItemKind::SensorWire,
                ] {
                    assert!(bench.is_back(&planned, group), "{group:?} in {plan:?}");
                }
            }
            bench.work(&planned);
        }
    });
}

#[test]
fn no_weight_comes_before_the_nut_is_at_its_spec() {
    each_plan(|plan| {
        let mut bench = Bench::default();
        for planned in procedure(plan) {
            let nut_waits_for_the_ground =
                plan.nut == NutPosition::OnGround && planned.key.nth == 1;
            if planned.key.step == Step::Lower && !nut_waits_for_the_ground {
                assert!(bench.is_back(&planned, ItemKind::AxleNut), "{plan:?}");
                assert!(planned.holds.contains(&HoldPoint::Nut), "{plan:?}");
            }
            bench.work(&planned);
        }
    });
}

#[test]
fn the_readings_before_come_before_the_nut_is_loosened() {
    each_plan(|plan| {
        let steps = procedure(plan);
        for at in &plan.corners {
            let here = |planned: &&PlannedStep| planned.key.corner == Some(at.corner);
            let nut = steps
                .iter()
                .position(|planned| here(&planned) && loosens_nut(planned));
            let read = steps
                .iter()
                .rposition(|planned| here(&planned) && reads(planned, When::Before));
            assert!(read.is_some(), "{plan:?}");
            if let Some(nut) = nut {
                assert!(read.unwrap() < nut, "{plan:?}");
                assert!(steps[nut].holds.contains(&HoldPoint::Before), "{plan:?}");
                assert!(steps[nut].holds.contains(&HoldPoint::Yes), "{plan:?}");
            }
            assert_eq!(nut.is_some(), at.course == Course::Replace, "{plan:?}");
        }
    });
}

fn loosens_nut(planned: &PlannedStep) -> bool {
    let changes = planned.changes.iter();
    changes
        .filter(|change| change.group == ItemKind::AxleNut)
        .any(|change| change.to < ItemState::ByHand)
}

fn reads(planned: &PlannedStep, when: When) -> bool {
    matches!(planned.form, Form::Round(set, _) if set.when == when)
}

#[test]
fn the_nut_is_staked_only_after_the_readings_after() {
    each_settled_plan(|plan| {
        let steps = procedure(plan);
        for at in plan.corners.iter().filter(|c| c.course == Course::Replace) {
            let here = |planned: &PlannedStep| planned.key.corner == Some(at.corner);
            let last = |is: &dyn Fn(&PlannedStep) -> bool| {
                steps
                    .iter()
                    .rposition(|planned| here(planned) && is(planned))
                    .unwrap()
            };
            let turned = last(&|planned| planned.form == Form::Turn(ItemKind::AxleNut));
            let read = last(&|planned| reads(planned, When::After));
            let staked = last(&|planned| planned.key.step == Step::Stake);
            assert!(turned < read && read < staked, "{plan:?}");
        }
    });
}

#[test]
fn nothing_is_stripped_without_a_yes_before_it() {
    each_plan(|plan| {
        for planned in procedure(plan) {
            let strips = planned.phase == Phase::Strip && !planned.changes.is_empty();
            assert!(
                !strips || planned.holds.contains(&HoldPoint::Yes),
                "{planned:?}"
            );
        }
    });
}

#[test]
fn the_wheel_comes_off_only_behind_stand_and_shove() {
    each_plan(|plan| {
        for planned in procedure(plan) {
            let off = planned
                .changes
                .iter()
                .any(|c| c.group == ItemKind::Wheel && c.to == ItemState::Off);
            // The nut that was broken loose on the ground comes off with the wheel.
            let off = off || planned.key.step == Step::StripNut && plan.nut != NutPosition::AirBar;
            let stand = planned.holds.contains(&HoldPoint::Stand);
            // A car that waited is shoved again before anything goes on; see tests/waiting.rs.
            let waited = |at: &&CornerPlan| at.waited && Some(at.corner) == planned.key.corner;
            let waited = plan.corners.iter().any(|at| waited(&at));
            assert!(
                if waited { !off || stand } else { off == stand },
                "{planned:?}"
            );
        }
    });
}

#[test]
fn a_car_that_stood_on_its_wheel_is_shoved_before_anything_comes_off() {
    each_plan(|plan| {
        let mut shoved = false;
        for planned in procedure(plan) {
            match planned.key.step {
                Step::Shove => shoved = true,
                // To crack the nuts the car is set down until the tire bites.
                Step::Lower | Step::LoosenLugNuts | Step::LoosenAxleNut => shoved = false,
                Step::WheelOff | Step::WheelOffAgain | Step::StripNut => {
                    assert!(shoved, "{plan:?}");
                }
                _ => {}
            }
        }
    });
}

#[test]
fn the_brake_is_pumped_firm_after_the_pads_were_last_out() {
    each_settled_plan(|plan| {
        let steps = procedure(plan);
        for at in &plan.corners {
            let here = |planned: &PlannedStep| planned.key.corner == Some(at.corner);
            let pads = steps.iter().rposition(|planned| {
                here(planned) && planned.changes.iter().any(|c| c.group == ItemKind::Pads)
            });
            let pedal = steps
                .iter()
                .rposition(|planned| here(planned) && planned.key.step == Step::Pedal);
            assert!(pads.is_some() && pads < pedal, "{plan:?}");
        }
        let end = steps.iter().find(|planned| planned.key.step == Step::End);
        assert!(end.unwrap().holds.contains(&HoldPoint::Pedal), "{plan:?}");
    });
}

#[test]
fn a_job_ends_only_behind_its_loose_list() {
    each_settled_plan(|plan| {
        let steps = procedure(plan);
        let end = steps.iter().find(|planned| planned.key.step == Step::End);
        assert!(end.unwrap().holds.contains(&HoldPoint::Loose), "{plan:?}");
    });
}

/// Common practice, no source: lug nuts are checked again where a wheel was off. A car that must
/// not be driven is not sent on a drive first.
#[test]
fn the_retorque_is_due_only_of_torqued_nuts_on_a_car_that_may_be_driven() {
    let asks = |plan: &Plan, step| {
        procedure(plan)
            .iter()
            .any(|planned| planned.key.step == step)
    };
    let (mut with, mut without) = (0, 0);
    each_settled_plan(|plan| {
        let stopped = |at: &CornerPlan| at.stop && at.course != Course::Replace;
        let parked = plan.corners.iter().any(|at| at.blocked || stopped(at));
        assert_eq!(asks(plan, Step::Retorque), !parked, "{plan:?}");
        assert_eq!(asks(plan, Step::RetorqueDone), plan.ended && !parked);
        *(if parked { &mut without } else { &mut with }) += 1;
        let untouched = Plan {
            teardown_refused: true,
            nuts_loose: false,
            ..plan.clone()
        };
        assert!(!asks(&untouched, Step::Retorque), "{untouched:?}");
    });
    assert!(
        with > 100 && without > 100,
        "{with} with, {without} without"
    );
}

#[test]
fn an_undecided_corner_leads_to_no_handing_over() {
    each_plan(|plan| {
        let open = |at: &Course| matches!(at, Course::Open | Course::Asking);
        let any_open = plan.corners.iter().any(|at| open(&at.course));
        let hands_over = procedure(plan)
            .iter()
            .any(|planned| planned.phase == Phase::HandOver);
        assert_eq!(
            hands_over,
            !any_open && !plan.corners.is_empty(),
            "{plan:?}"
        );
    });
}

#[test]
fn a_job_started_at_the_car_asks_each_spec_before_its_turn() {
    each_settled_plan(|plan| {
        let steps = procedure(plan);
        let first = |form: &Form| steps.iter().position(|planned| planned.form == *form);
        for planned in &steps {
            if let Form::Turn(group) = planned.form {
                let spec = first(&Form::Spec(plans::spec_of(group)));
                let turn = first(&planned.form);
                assert!(spec.is_some() && spec < turn, "{group:?} in {plan:?}");
            }
        }
        assert_eq!(plan.start == Start::AtHome, steps[0].phase == Phase::Pack);
    });
}

#[test]
fn every_step_key_is_read_back_from_its_code() {
    let corners = || Corner::ALL.iter().copied().map(Some).chain([None]);
    let mut codes = BTreeSet::new();
    for step in Step::ALL.iter().copied() {
        for corner in corners() {
            for nth in 0..=u8::MAX {
                let key = StepKey { step, corner, nth };
                assert_eq!(StepKey::from_code(&key.code()), Some(key));
                codes.insert(key.code());
            }
        }
    }
    assert_eq!(codes.len(), Step::ALL.len() * 5 * 256);
}

#[test]
fn a_code_that_names_no_step_is_refused() {
    for code in [
        "",
        "@",
        "shove@",
        "shove@middle",
        "shove.",
        "shove.x",
        "shove.256",
        "no_step",
    ] {
        assert_eq!(StepKey::from_code(code), None, "{code}");
    }
}

#[test]
fn a_refused_teardown_opens_nothing_until_the_repair_is_agreed() {
    let mut opened = 0;
    each_plan(|plan| {
        let refused = Plan {
            teardown_refused: true,
            ..plan.clone()
        };
        let steps = procedure(&refused);
        for at in &refused.corners {
            let here = |step| {
                let key = StepKey::at(step, at.corner);
                steps.iter().position(|planned| planned.key == key)
            };
            let open = here(Step::WheelOff);
            assert_eq!(open.is_some(), at.course == Course::Replace, "{refused:?}");
            assert!(open.is_none() || here(Step::Agree) < open, "{refused:?}");
            opened += usize::from(open.is_some());
        }
    });
    assert!(0 < opened);
}
