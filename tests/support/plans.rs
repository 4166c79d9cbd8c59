//! Every combination of the facts that a procedure depends on.

use hubslate::trade::fastening::SpecItem;
use hubslate::trade::vehicle::Corner;
use hubslate::trade::wheel_end::{
    CornerPlan, Course, Fitted, ItemKind, Kind, LOOKS, NutPosition, Plan, Sign, Start,
};

const YES_NO: [bool; 2] = [false, true];

/// Subsets of the signs: none, all, the first five, and each by itself.
fn sign_sets() -> Vec<Vec<Sign>> {
    let mut sets = vec![Vec::new(), Sign::ALL.to_vec()];
    sets.push(Sign::ALL.iter().copied().filter(|s| s.is_first()).collect());
    sets.extend(Sign::ALL.iter().map(|sign| vec![*sign]));
    sets
}

/// What may be known of one corner.
fn corners(corner: Corner) -> Vec<CornerPlan> {
    let mut all = Vec::new();
    for course in Course::ALL.iter().copied() {
        for play_felt in YES_NO {
            for second_set in YES_NO {
                all.push(CornerPlan {
                    corner,
                    course,
                    stop: second_set && !play_felt,
                    play_felt,
                    second_set,
                    blocked: second_set,
                    reopened: play_felt,
                    waited: play_felt,
                    broken_stud: None,
                });
            }
        }
    }
    all
}

/// No corner, one, and two in every combination.
fn corner_sets() -> Vec<Vec<CornerPlan>> {
    let (left, right) = (corners(Corner::FrontLeft), corners(Corner::RearRight));
    let mut sets = vec![Vec::new()];
    sets.extend(left.iter().map(|one| vec![one.clone()]));
    for one in &left {
        sets.extend(right.iter().map(|two| vec![one.clone(), two.clone()]));
    }
    sets
}

/// Hands every plan to a test: with up to one corner all facts combined, with two all that
/// concern the corners.
pub fn each_plan(mut test: impl FnMut(&Plan)) {
    for corners in corner_sets() {
        let two = corners.len() > 1;
        for start in Start::ALL.iter().copied() {
            for nut in NutPosition::ALL.iter().copied() {
                let plan = Plan {
                    kind: Kind::BoltedDriven,
                    fitted: Fitted::COMMON,
                    start,
                    corners: corners.clone(),
                    nut,
                    site_refused: false,
                    teardown_refused: false,
                    nuts_loose: two,
                    wrong_looks: if two { LOOKS.to_vec() } else { Vec::new() },
                    warning_lights: None,
                    driven: true,
                    more_questions: false,
                    signs: vec![Sign::Speed],
                    ended: false,
                };
                if two {
                    test(&plan);
                } else {
                    each_road(&plan, &mut test);
                }
            }
        }
    }
}

/// The facts that do not belong to a corner, combined.
fn each_road(plan: &Plan, test: &mut impl FnMut(&Plan)) {
    for signs in sign_sets() {
        for driven in YES_NO {
            for more_questions in YES_NO {
                for ended in YES_NO {
                    test(&Plan {
                        driven,
                        more_questions,
                        ended,
                        signs: signs.clone(),
                        ..plan.clone()
                    });
                }
            }
        }
    }
}

/// As [`each_plan`], where every corner was put back, declined or replaced.
pub fn each_settled_plan(mut test: impl FnMut(&Plan)) {
    let open = |at: &CornerPlan| matches!(at.course, Course::Open | Course::Asking);
    let mut tested = 0;
    each_plan(|plan| {
        if !plan.corners.is_empty() && !plan.corners.iter().any(open) {
            tested += 1;
            test(plan);
        }
    });
    assert!(tested > 1_000, "only {tested} plans");
}

/// The spec that a group of fasteners is turned to.
pub fn spec_of(group: ItemKind) -> SpecItem {
    match group {
        ItemKind::AxleNut => SpecItem::AxleNut,
        ItemKind::HubBolts => SpecItem::HubBolts,
        ItemKind::BracketBolts => SpecItem::BracketBolts,
        ItemKind::CaliperPins => SpecItem::CaliperPins,
        ItemKind::LugNuts => SpecItem::LugNuts,
        ItemKind::SpindleNut => SpecItem::SpindleNut,
        ItemKind::LockNut => SpecItem::LockNut,
        ItemKind::StrutBolts => SpecItem::StrutBolts,
        ItemKind::BallJoint => SpecItem::BallJoint,
        ItemKind::TieRod => SpecItem::TieRod,
        other => panic!("{other:?} has no spec"),
    }
}
