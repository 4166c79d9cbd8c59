#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]
use super::*;
use crate::trade::play::budget::{IndicatorError, RigFacts};
use crate::trade::play::dial::{Dial, Divisions, Round};
use crate::trade::play::way::{Method, Place, Rig, Way};
use crate::units::{Force, ForceUnit};

const RIG: RigFacts = RigFacts {
    indicator: IndicatorError::OneDivision,
    flex: Length::millimetres(0.005),
    temperature: None,
};

fn judged(divisions: f64, way: Way, marks: Vec<ReadingFlag>, limit: &Limit) -> Conformity {
    let rounds = [Round::zeroed(Divisions::new(divisions).unwrap()); 3];
    let set = ReadingSet::read(Dial::HUNDREDTH_MM, way, &rounds, marks).unwrap();
    compare(&set, &Budget::of(&set, &RIG), limit)
}

fn manufacturer(mm: f64) -> Limit {
    Limit::manufacturer(Length::millimetres(mm), Way::DEFAULT).unwrap()
}

// u is about 8.2 µm here (dial 5.8, two readings 4.1, repeat 2.9, flex 2.9), g·u 13.5 µm.
#[test]
fn the_four_results_stand_in_number_line_order() {
    for (divisions, code) in [
        (3.0, "proven_in"),
        (4.0, "in_not_proven"),
        (5.0, "in_not_proven"),
        (6.0, "out_not_proven"),
        (7.0, "proven_out"),
    ] {
        let got = judged(divisions, Way::DEFAULT, vec![], &manufacturer(0.05));
        assert_eq!(got.code(), code, "{divisions} divisions");
    }
}

#[test]
fn a_zero_limit_is_never_proven_within() {
    let got = judged(0.0, Way::DEFAULT, vec![], &manufacturer(0.0));
    assert_eq!(
        got,
        Conformity::NoMovementSeen {
            resolution: Length::millimetres(0.01)
        }
    );
    let seen = |divisions| match judged(divisions, Way::DEFAULT, vec![], &manufacturer(0.0)) {
        Conformity::MovementSeen { proven, .. } => proven,
        other => panic!("{other:?}"),
    };
    assert!(!seen(1.0));
    assert!(seen(2.0));
}

#[test]
fn another_way_is_no_comparison() {
    let kilograms = |kg| Some(Force::new(kg, ForceUnit::Kilogram).unwrap());
    let base = Way::DEFAULT;
    let cases = [
        (
            Way {
                method: Method::Rock,
                ..base
            },
            Difference::Method,
        ),
        (
            Way {
                place: Place::RotorFace,
                ..base
            },
            Difference::Place,
        ),
        (
            Way {
                rig: Some(Rig::RotorOff),
                ..base
            },
            Difference::Rig,
        ),
        (
            Way {
                force: kilograms(10.0),
                ..base
            },
            Difference::Force,
        ),
    ];
    for (way, difference) in cases {
        assert_eq!(
            judged(3.0, way, vec![], &manufacturer(0.05)),
            Conformity::NoComparison(WhyNot::Way(difference))
        );
    }
    let forced = Way {
        force: kilograms(10.0),
        ..base
    };
    let limit = Limit::manufacturer(Length::millimetres(0.05), forced).unwrap();
    let near = Way {
        force: kilograms(10.5),
        ..base
    };
    assert_eq!(judged(3.0, near, vec![], &limit).code(), "proven_in");
    assert_eq!(judged(3.0, base, vec![], &limit).code(), "no_comparison");
}

#[test]
fn a_limit_that_names_no_rig_takes_either() {
    let off = Way {
        rig: Some(Rig::RotorOff),
        ..Way::DEFAULT
    };
    assert_eq!(judged(3.0, off, vec![], &Limit::HOUSE).code(), "proven_in");
}

#[test]
fn a_slack_nut_is_no_comparison() {
    assert_eq!(
        judged(
            3.0,
            Way::DEFAULT,
            vec![ReadingFlag::NutSlack],
            &manufacturer(0.05)
        ),
        Conformity::NoComparison(WhyNot::ReadingFlag(ReadingFlag::NutSlack))
    );
}

#[test]
fn the_probability_is_one_half_on_the_limit() {
    let Conformity::InNotProven(on) = judged(5.0, Way::DEFAULT, vec![], &manufacturer(0.05)) else {
        panic!("not on the limit");
    };
    assert!((on.conformance - 0.5).abs() < 1e-12);
}

#[test]
fn a_reading_on_the_limit_is_never_over_it() {
    for thou in [1.0, 2.0, 3.0, 5.0, 7.0, 8.0] {
        let rounds = [Round::zeroed(Divisions::new(thou).unwrap()); 3];
        let set = ReadingSet::read(Dial::THOU, Way::DEFAULT, &rounds, vec![]).unwrap();
        let value = Length::new(thou / 1000.0, crate::units::LengthUnit::Inch).unwrap();
        let limit = Limit::manufacturer(value, Way::DEFAULT).unwrap();
        let got = compare(&set, &Budget::of(&set, &RIG), &limit);
        assert_eq!(got.code(), "in_not_proven", "{thou} thou");
    }
}

/// The end play that TMC RP 618 accepts, quoted by several trade sources: 0.001 to 0.005 in.
fn published() -> Limit {
    let most = Limit::manufacturer(Length::thou(5.0), Way::DEFAULT).unwrap();
    most.with_least(Some(Length::thou(1.0)))
}

/// A mean play of three cycles whose guard band is 1 thou.
fn of_three(thou: f64) -> (Mean, Budget) {
    let u = Length::thou(1.0 / 1.645);
    let budget = Budget {
        components: vec![crate::trade::play::Component {
            source: crate::trade::play::budget::Source::BetweenSets,
            u,
            dof: None,
        }],
        u_c: u,
        dof_eff: None,
        expanded95: u.times(2.0),
        g: 1.645,
    };
    let mean = Mean {
        play: Length::thou(thou),
        cycles: 3,
        still: None,
    };
    (mean, budget)
}

#[test]
fn a_window_is_judged_at_both_ends_with_the_guard_band_against_who_claims_proof() {
    let code = |thou| {
        let (mean, budget) = of_three(thou);
        mean.against(&budget, &published()).code()
    };
    let recorded = [-0.5, 0.5, 1.0, 1.5, 2.5, 3.5, 4.5, 5.0, 5.5, 6.5].map(code);
    assert_eq!(
        recorded,
        [
            "tight_proven",
            "tight_not_proven",
            "in_not_proven",
            "in_not_proven",
            "proven_in",
            "proven_in",
            "in_not_proven",
            "in_not_proven",
            "out_not_proven",
            "proven_out",
        ]
    );
}

/// Phi(3.29) - Phi(-3.29) = 0.998998 of a normal distribution in the middle of a window 4 thou wide
/// whose u is 1/1.645 thou: tables of the normal distribution.
#[test]
fn the_chance_in_a_window_is_what_both_ends_leave() {
    let chance = |thou| {
        let (mean, budget) = of_three(thou);
        let recorded = mean.against(&budget, &published());
        recorded.comparison().unwrap().conformance
    };
    assert!((chance(3.0) - 0.998_998).abs() < 2e-6, "{}", chance(3.0));
    // On an end half of it lies outside, and the other end takes nothing visible.
    assert!((chance(1.0) - 0.5).abs() < 1e-6 && (chance(5.0) - 0.5).abs() < 1e-6);
}

#[test]
fn a_window_that_is_none_is_no_window() {
    let most = Limit::manufacturer(Length::thou(5.0), Way::DEFAULT).unwrap();
    for least in [0.0, 5.0, 7.0] {
        let none = most.with_least(Some(Length::thou(least)));
        assert_eq!(none.least, None);
    }
    let (mean, budget) = of_three(0.0);
    assert_eq!(mean.against(&budget, &most).code(), "proven_in");
}
