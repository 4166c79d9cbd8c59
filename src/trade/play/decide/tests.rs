//! One row for each rule of the verdict.
mod sets;

use super::*;
use crate::trade::play::limit::Limit;
use crate::trade::play::series::ReadingFlag;
use crate::trade::play::way::{Difference, Way};

fn comparison(source: LimitSource) -> Comparison {
    let limit = match source {
        LimitSource::House => Limit::HOUSE,
        LimitSource::Manufacturer => {
            Limit::manufacturer(Length::millimetres(0.05), Way::DEFAULT).unwrap()
        }
    };
    Comparison {
        play: Length::millimetres(0.05),
        limit,
        u: Length::millimetres(0.008),
        dof: None,
        g: 1.645,
        cycles: 3,
        beyond_rig: false,
        conformance: 0.5,
    }
}

fn manufacturer() -> Comparison {
    comparison(LimitSource::Manufacturer)
}

fn house() -> Comparison {
    comparison(LimitSource::House)
}

fn clean(sets: Vec<Conformity>) -> Evidence {
    Evidence {
        sets,
        joined: None,
        spec_apart: None,
        roughness: Answer::No,
        noise: Answer::No,
        felt: Some(Felt::Nothing),
        brake_held: BrakeHeld::NotDone,
        road: Road::Quiet,
        heat: Heat::Alike,
        stop_signs: vec![],
        not_done: vec![],
    }
}

/// Two sets and what they say together.
fn twice(first: Conformity, second: Conformity, joined: Conformity) -> Evidence {
    Evidence {
        joined: Some(joined),
        ..clean(vec![first, second])
    }
}

#[track_caller]
fn decides(evidence: &Evidence, decision: Decision, first: Reason) -> Verdict {
    let verdict = decide(evidence);
    assert_eq!(
        (verdict.decision, verdict.reasons.first().copied()),
        (decision, Some(first))
    );
    verdict
}

#[test]
fn the_dial_alone_gives_each_decision_of_its_own() {
    let over = |sets| Reason::OverNotProven {
        comparison: manufacturer(),
        sets,
    };
    let rows = [
        (
            vec![Conformity::ProvenIn(manufacturer())],
            Decision::Keep,
            Reason::UnderProven(manufacturer()),
        ),
        (
            vec![Conformity::InNotProven(manufacturer())],
            Decision::Watch,
            Reason::UnderNotProven(manufacturer()),
        ),
        (
            vec![Conformity::OutNotProven(manufacturer())],
            Decision::Replace,
            over(1),
        ),
        (
            vec![Conformity::ProvenOut(manufacturer())],
            Decision::Replace,
            Reason::OverProven(manufacturer()),
        ),
    ];
    for (sets, decision, reason) in rows {
        decides(&clean(sets), decision, reason);
    }
}

#[test]
fn road_and_heat_decide_by_their_table() {
    let rows = [
        (Road::Quiet, Heat::Hotter, Decision::Watch, Reason::Hotter),
        (Road::NotDone, Heat::Hotter, Decision::Watch, Reason::Hotter),
        (
            Road::Elsewhere,
            Heat::Alike,
            Decision::Keep,
            Reason::RoadPointsElsewhere,
        ),
        (
            Road::Elsewhere,
            Heat::Hotter,
            Decision::Watch,
            Reason::Hotter,
        ),
        (
            Road::NotLocated,
            Heat::NotDone,
            Decision::Watch,
            Reason::RoadNotLocated,
        ),
        (
            Road::NotLocated,
            Heat::Hotter,
            Decision::Watch,
            Reason::RoadNotLocated,
        ),
        (
            Road::Here,
            Heat::NotDone,
            Decision::Watch,
            Reason::RoadPointsHere,
        ),
        (
            Road::Here,
            Heat::Hotter,
            Decision::Replace,
            Reason::RoadPointsHere,
        ),
    ];
    for (road, heat, decision, reason) in rows {
        let mut evidence = clean(vec![Conformity::ProvenIn(manufacturer())]);
        (evidence.road, evidence.heat) = (road, heat);
        let verdict = decides(&evidence, decision, reason);
        assert!(
            !verdict.reasons.contains(&Reason::SmoothAndQuiet),
            "{road:?}"
        );
        assert_eq!(
            verdict.rests_on.contains(&Ground::Road),
            road != Road::NotDone
        );
        assert_eq!(
            verdict.rests_on.contains(&Ground::Heat),
            heat != Heat::NotDone
        );
    }
}

#[test]
fn over_by_less_than_the_uncertainty_asks_for_one_more_set() {
    let asked = |sets| decide(&clean(sets)).second_set_asked;
    let over = Conformity::OutNotProven(manufacturer());
    assert!(asked(vec![over]));
    let both = twice(over, over, over);
    assert!(!decide(&both).second_set_asked);
    assert!(!asked(vec![Conformity::ProvenOut(manufacturer())]));
    assert!(!asked(vec![Conformity::InNotProven(manufacturer())]));
    assert!(asked(vec![Conformity::MovementSeen {
        comparison: manufacturer(),
        proven: false
    }]));
    assert_eq!(decide(&clean(vec![over])).not_done, [Test::SecondSet]);
}

#[test]
fn the_house_limit_condemns_and_never_clears() {
    for under in [
        Conformity::ProvenIn(house()),
        Conformity::InNotProven(house()),
    ] {
        decides(
            &clean(vec![under]),
            Decision::Keep,
            Reason::NoManufacturerLimit(house()),
        );
        let mut unheard = clean(vec![under]);
        unheard.noise = Answer::NotDone;
        decides(&unheard, Decision::Watch, Reason::NotLookedAt(Test::Ear));
    }
    decides(
        &clean(vec![Conformity::ProvenOut(house())]),
        Decision::Replace,
        Reason::OverProven(house()),
    );
    let sets = 2;
    decides(
        &twice(
            Conformity::OutNotProven(house()),
            Conformity::OutNotProven(house()),
            Conformity::OutNotProven(house()),
        ),
        Decision::Replace,
        Reason::OverNotProven {
            comparison: house(),
            sets,
        },
    );
}

#[test]
fn a_zero_limit_speaks_of_movement_only() {
    let resolution = Length::millimetres(0.01);
    decides(
        &clean(vec![Conformity::NoMovementSeen { resolution }]),
        Decision::Watch,
        Reason::NoMovementSeen { resolution },
    );
    let moved = |proven| Conformity::MovementSeen {
        comparison: manufacturer(),
        proven,
    };
    decides(
        &clean(vec![moved(true)]),
        Decision::Replace,
        Reason::OverProven(manufacturer()),
    );
    decides(
        &clean(vec![moved(false)]),
        Decision::Replace,
        Reason::OverNotProven {
            comparison: manufacturer(),
            sets: 1,
        },
    );
}

#[test]
fn hand_ear_and_looseness_condemn_whatever_the_dial_says() {
    let dials = [
        vec![],
        vec![Conformity::ProvenIn(manufacturer())],
        vec![Conformity::ProvenIn(house())],
        vec![Conformity::NoMovementSeen {
            resolution: Length::millimetres(0.01),
        }],
    ];
    for sets in dials {
        let mut rough = clean(sets.clone());
        rough.roughness = Answer::Yes;
        decides(&rough, Decision::Replace, Reason::Rough);
        let mut noisy = clean(sets.clone());
        noisy.noise = Answer::Yes;
        decides(&noisy, Decision::Replace, Reason::Noisy);
        let mut loose = clean(sets);
        loose.felt = Some(Felt::JustFelt);
        loose.brake_held = BrakeHeld::Gone;
        decides(
            &loose,
            Decision::Replace,
            Reason::LooseInBearing(Felt::JustFelt),
        );
    }
}

#[test]
fn what_is_felt_is_judged_by_where_it_sits() {
    let rows = [
        (Felt::JustFelt, BrakeHeld::Gone, Decision::Replace),
        (Felt::JustFelt, BrakeHeld::Stays, Decision::Watch),
        (Felt::JustFelt, BrakeHeld::NotDone, Decision::Watch),
        (Felt::Seen, BrakeHeld::Gone, Decision::Stop),
        (Felt::Seen, BrakeHeld::Stays, Decision::Stop),
        (Felt::Seen, BrakeHeld::NotDone, Decision::Stop),
        (Felt::Knocks, BrakeHeld::Gone, Decision::Stop),
        (Felt::Knocks, BrakeHeld::Stays, Decision::Stop),
        (Felt::Knocks, BrakeHeld::NotDone, Decision::Stop),
    ];
    for (felt, brake_held, decision) in rows {
        let mut evidence = clean(vec![Conformity::ProvenIn(manufacturer())]);
        evidence.felt = Some(felt);
        evidence.brake_held = brake_held;
        let reason = match brake_held {
            BrakeHeld::Gone => Reason::LooseInBearing(felt),
            BrakeHeld::Stays => Reason::LooseElsewhere(felt),
            BrakeHeld::NotDone => Reason::LooseNotLocated(felt),
        };
        let verdict = decides(&evidence, decision, reason);
        let retest_open = verdict.not_done.contains(&Test::BrakeHeld);
        assert_eq!(retest_open, brake_held == BrakeHeld::NotDone);
    }
}

#[test]
fn every_stop_sign_stops_whatever_else_is_known() {
    for sign in StopSign::ALL {
        let mut evidence = clean(vec![Conformity::ProvenIn(manufacturer())]);
        evidence.stop_signs = vec![*sign];
        decides(&evidence, Decision::Stop, Reason::MustNotDrive(*sign));
    }
}

#[test]
fn not_done_is_never_counted_as_no() {
    let nothing = Evidence {
        not_done: vec![Test::Road, Test::Ear],
        ..Evidence::nothing()
    };
    let verdict = decides(&nothing, Decision::Watch, Reason::NotLookedAt(Test::Rock));
    assert_eq!(
        verdict.not_done,
        [Test::Dial, Test::Hand, Test::Ear, Test::Rock, Test::Road]
    );
    assert_eq!(verdict.rests_on, []);
}

#[test]
fn absence_of_play_never_clears() {
    let mut evidence = clean(vec![Conformity::ProvenIn(manufacturer())]);
    evidence.roughness = Answer::NotDone;
    decides(&evidence, Decision::Watch, Reason::NotLookedAt(Test::Hand));
}

#[test]
fn without_a_dial_it_rests_on_hand_and_ear_and_the_missing_test_is_said() {
    let verdict = decides(
        &clean(vec![]),
        Decision::Watch,
        Reason::NotLookedAt(Test::Dial),
    );
    let grounds = [
        Ground::Hand,
        Ground::Ear,
        Ground::Rock,
        Ground::Road,
        Ground::Heat,
    ];
    assert_eq!(verdict.rests_on, grounds);
    assert_eq!(verdict.not_done, [Test::Dial]);
    for why in [
        WhyNot::Way(Difference::Place),
        WhyNot::ReadingFlag(ReadingFlag::NutSlack),
    ] {
        let verdict = decides(
            &clean(vec![Conformity::NoComparison(why)]),
            Decision::Watch,
            Reason::NoComparison(why),
        );
        assert_eq!(verdict.not_done, [Test::Dial]);
        assert!(!verdict.rests_on.contains(&Ground::Dial));
    }
}
