//! Every kind of wheel end with every combination of what is asked of it: the procedure that is
//! composed from the answers is held against the rules of the trade, and each rule is seen to fire
//! where a procedure breaks it.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/checker.rs"]
mod checker;

use std::collections::{BTreeMap, BTreeSet};

use checker::{Rule, broken};
use hubslate::trade::vehicle::{
    Corner, Encoder, Fixing, NutLock, ParkingBrake, Pressing, SpeedSensor, WheelBrake,
};
use hubslate::trade::wheel_end::{
    CornerPlan, Course, Fitted, Form, Kind, NutPosition, Plan, PlannedStep, Start, Step, procedure,
};

fn brakes(kind: Kind) -> &'static [WheelBrake] {
    match kind.may_have_a_drum() {
        true => WheelBrake::ALL,
        false => &[WheelBrake::Disc],
    }
}

fn fittings(kind: Kind) -> Vec<Fitted> {
    let locks = if kind == Kind::Tapered {
        NutLock::ALL
    } else {
        &[NutLock::Cotter]
    };
    let pressings = if kind == Kind::Pressed {
        Pressing::ALL
    } else {
        &[Pressing::NotKnown]
    };
    let encoders = if kind.is_pressed() {
        Encoder::ALL
    } else {
        &[Encoder::NotKnown]
    };
    let mut all = Vec::new();
    for fixing in Fixing::ALL {
        for brake in brakes(kind) {
            for parking in ParkingBrake::ALL {
                for sensor in SpeedSensor::ALL {
                    for encoder in encoders {
                        for lock in locks {
                            all.extend(pressings.iter().map(|pressing| Fitted {
                                fixing: *fixing,
                                brake: *brake,
                                parking: *parking,
                                sensor: *sensor,
                                encoder: *encoder,
                                lock: *lock,
                                pressing: *pressing,
                            }));
                        }
                    }
                }
            }
        }
    }
    all
}

fn nuts(kind: Kind) -> &'static [NutPosition] {
    match kind {
        Kind::BoltedDriven | Kind::Pressed => NutPosition::ALL,
        _ => &[NutPosition::AirBrakeHeld],
    }
}

/// A plan with one settled corner.
fn plan(kind: Kind, fitted: Fitted, corner: CornerPlan) -> Plan {
    Plan {
        kind,
        fitted,
        start: Start::AtHome,
        corners: vec![corner],
        nut: NutPosition::AirBrakeHeld,
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

/// Every combination of answers, with every course that a corner can take; with what most wheel
/// ends have, also everything else that may be known of a corner.
fn each(kind: Kind, mut test: impl FnMut(&Plan)) {
    for fitted in fittings(kind) {
        let common = fitted
            == Fitted {
                brake: fitted.brake,
                lock: fitted.lock,
                ..Fitted::COMMON
            };
        for start in Start::ALL {
            for nut in nuts(kind) {
                for at in [Corner::FrontLeft, Corner::RearRight] {
                    for course in [Course::PutBack, Course::Declined, Course::Replace] {
                        for at in known(corner(at, course), common) {
                            test(&Plan {
                                start: *start,
                                nut: *nut,
                                ..plan(kind, fitted, at)
                            });
                        }
                    }
                }
            }
        }
    }
}

/// What may be known of a corner: all combined, or nothing and everything.
fn known(corner: CornerPlan, all: bool) -> Vec<CornerPlan> {
    let bits = (0..16_u8).filter(|bits| all || matches!(bits, 0 | 15));
    let with = |bits: u8| {
        let on = |bit: u8| bits & (1 << bit) != 0;
        CornerPlan {
            play_felt: on(0),
            second_set: on(1),
            waited: on(2),
            // A new part is proved only where there is one.
            blocked: on(3) && corner.course == Course::Replace,
            ..corner.clone()
        }
    };
    bits.map(with).collect()
}

/// A wheel end that is closed and opened again asks its steps again under numbers of their own.
#[test]
fn no_two_steps_of_a_procedure_share_a_key() {
    for kind in Kind::ALL {
        each(*kind, |plan| {
            let mut plan = plan.clone();
            let course = plan.corners[0].course;
            plan.corners[0].reopened = course == Course::Replace;
            let asked = procedure(&plan);
            let keys: BTreeSet<_> = asked.iter().map(|planned| planned.key).collect();
            assert_eq!(keys.len(), asked.len(), "{plan:?}");
        });
    }
}

#[test]
fn every_combination_of_answers_gives_a_procedure_that_keeps_every_rule() {
    let (mut all, mut total, mut steps_seen) = (0_usize, 0_usize, BTreeSet::new());
    for kind in Kind::ALL {
        let (mut combinations, mut steps, mut orders) = (0_usize, 0_usize, BTreeSet::new());
        each(*kind, |plan| {
            let asked = procedure(plan);
            let broken = broken(plan, &asked);
            assert!(broken.is_empty(), "{broken:#?}\n{plan:?}");
            combinations += 1;
            steps += asked.len();
            steps_seen.extend(asked.iter().map(|planned| planned.key.step));
            orders.insert(
                asked
                    .iter()
                    .map(|planned| planned.key.code())
                    .collect::<Vec<_>>(),
            );
        });
        println!(
            "{kind:?}: {combinations} combinations, {} different procedures, {steps} steps",
            orders.len()
        );
        all += combinations;
        total += steps;
    }
    println!(
        "all kinds: {all} combinations, {total} steps, {} of {} named steps",
        steps_seen.len(),
        Step::ALL.len()
    );
    assert!(10_000 < all, "only {all}");
}

/// What is left out on purpose of the steps that are tried: nothing rests on them by these rules.
fn is_free(planned: &PlannedStep) -> bool {
    matches!(
        planned.form,
        Form::Booking
            | Form::Vehicle
            | Form::Corners
            | Form::Price
            | Form::Kit
            | Form::Ready
            | Form::Number(_)
            | Form::Consent
            | Form::Photo
            | Form::Result
            | Form::Retorque
            | Form::Sign
            | Form::Report
            | Form::End
            | Form::Ask
            | Form::Choice(_)
            | Form::Checks(_)
    )
}

/// The rules that some change of a sound procedure breaks: each step left out, and each pair of
/// neighbors swapped.
#[test]
fn every_rule_fires_where_a_procedure_breaks_it() {
    let mut fired: BTreeMap<Rule, usize> = BTreeMap::new();
    let mut silent = Vec::new();
    for kind in Kind::ALL {
        for lock in NutLock::ALL {
            for brake in brakes(*kind) {
                let fitted = Fitted {
                    brake: *brake,
                    lock: *lock,
                    ..Fitted::COMMON
                };
                let at = CornerPlan {
                    play_felt: true,
                    ..corner(Corner::RearRight, Course::Replace)
                };
                let plan = plan(*kind, fitted, at);
                let sound = procedure(&plan);
                assert_eq!(broken(&plan, &sound), []);
                for left_out in 0..sound.len() {
                    let mut steps = sound.clone();
                    let gone = steps.remove(left_out);
                    let rules = broken(&plan, &steps);
                    // What moves a part or turns a fastener is never left out unseen.
                    let works = !gone.changes.is_empty() || matches!(gone.form, Form::Turn(_));
                    if works && rules.is_empty() && !is_free(&gone) {
                        silent.push(format!("{kind:?} without {}", gone.key.code()));
                    }
                    rules
                        .iter()
                        .for_each(|(rule, _)| *fired.entry(*rule).or_default() += 1);
                }
                for first in 1..sound.len() {
                    let mut steps = sound.clone();
                    steps.swap(first - 1, first);
                    let rules = broken(&plan, &steps);
                    rules
                        .iter()
                        .for_each(|(rule, _)| *fired.entry(*rule).or_default() += 1);
                }
            }
        }
    }
    println!("{fired:#?}");
    assert_eq!(silent, Vec::<String>::new());
    for rule in Rule::ALL {
        assert!(fired.contains_key(&rule), "{rule:?} never fires");
    }
}

/// Each of these is one slip in the data; the rule that guards against it is named.
#[test]
fn a_slip_in_the_order_is_caught_by_the_rule_that_guards_against_it() {
    let electric = Fitted {
        parking: ParkingBrake::Electric,
        ..Fitted::COMMON
    };
    let drum = Fitted {
        brake: WheelBrake::Drum,
        ..Fitted::COMMON
    };
    for (kind, fitted, gone, rule) in [
        (Kind::BoltedFree, electric, Step::ReleaseBrake, Rule::Braked),
        (Kind::BoltedFree, drum, Step::ShoesSet, Rule::Closed),
        (Kind::BoltedFree, drum, Step::DrumOn, Rule::Fitted),
        (Kind::BoltedFree, drum, Step::Pedal, Rule::Braked),
        (Kind::SpindleHub, drum, Step::CapOn, Rule::Fitted),
        (Kind::SpindleHub, drum, Step::NutFound, Rule::Asked),
        (Kind::SpindleHub, drum, Step::SpecSpindleNut, Rule::Closed),
        (Kind::PressedFree, drum, Step::EncoderSide, Rule::Pressed),
        (Kind::PressedFree, drum, Step::BoreLook, Rule::Pressed),
        (Kind::PressedFree, drum, Step::SnapRingOut, Rule::Possible),
        (Kind::PressedFree, drum, Step::SnapRingIn, Rule::Fitted),
        (Kind::PressedFree, drum, Step::TurnSpindleNut, Rule::Proved),
        (Kind::PressedFree, drum, Step::NutFound, Rule::Asked),
        (Kind::Tapered, drum, Step::TaperLook, Rule::Set),
        (Kind::Tapered, drum, Step::NutSlot, Rule::Set),
        (Kind::Tapered, drum, Step::LockFound, Rule::Asked),
        (Kind::Tapered, drum, Step::TurnSpindleNut, Rule::Proved),
        (Kind::Pressed, electric, Step::EncoderSide, Rule::Pressed),
        (Kind::Pressed, electric, Step::EncoderPhoto, Rule::Pressed),
        (Kind::Pressed, electric, Step::BoreLook, Rule::Pressed),
        (Kind::Pressed, electric, Step::SnapRingOut, Rule::Possible),
        (Kind::Pressed, electric, Step::TurnBallJoint, Rule::Closed),
        (Kind::Pressed, electric, Step::StripSensor, Rule::Wired),
        (
            Kind::BoltedDriven,
            electric,
            Step::CaliperUp,
            Rule::Possible,
        ),
    ] {
        let plan = plan(kind, fitted, corner(Corner::RearRight, Course::Replace));
        let mut steps = procedure(&plan);
        let before = steps.len();
        steps.retain(|planned| planned.key.step != gone);
        assert!(steps.len() < before, "{kind:?} has no {gone:?}");
        let rules: Vec<Rule> = broken(&plan, &steps)
            .into_iter()
            .map(|(rule, _)| rule)
            .collect();
        assert!(
            rules.contains(&rule),
            "{kind:?} without {gone:?}: {rules:?}"
        );
    }
}

/// A driven hub whose sensor nobody looked at and whose brake is a common one keeps its steps.
#[test]
fn what_was_not_asked_changes_nothing_at_a_bolted_driven_hub() {
    let at = corner(Corner::FrontLeft, Course::Replace);
    let common = plan(Kind::BoltedDriven, Fitted::COMMON, at.clone());
    let keys = |plan: &Plan| -> Vec<String> {
        procedure(plan)
            .iter()
            .map(|planned| planned.key.code())
            .collect()
    };
    let plain = keys(&common);
    for sensor in [SpeedSensor::Active, SpeedSensor::Passive] {
        for fixing in Fixing::ALL {
            let fitted = Fitted {
                sensor,
                fixing: *fixing,
                ..Fitted::COMMON
            };
            assert_eq!(keys(&plan(Kind::BoltedDriven, fitted, at.clone())), plain);
        }
    }
    let bare = Fitted {
        sensor: SpeedSensor::None,
        ..Fitted::COMMON
    };
    let bare = keys(&plan(Kind::BoltedDriven, bare, at));
    assert_eq!(plain.len() - bare.len(), 3);
}
