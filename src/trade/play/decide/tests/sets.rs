//! Two sets, a set that cannot be compared, and a spec that was not met.

use super::*;

#[test]
fn two_sets_speak_by_their_mean_and_never_cancel_each_other() {
    let (within, under) = (
        Conformity::ProvenIn(manufacturer()),
        Conformity::InNotProven(manufacturer()),
    );
    let (over, proven) = (
        Conformity::OutNotProven(manufacturer()),
        Conformity::ProvenOut(manufacturer()),
    );
    let not_proven = |sets| Reason::OverNotProven {
        comparison: manufacturer(),
        sets,
    };
    decides(&twice(over, over, over), Decision::Replace, not_proven(2));
    // The mean over: one set under takes nothing away, and that they disagree is said.
    let verdict = decides(&twice(over, within, over), Decision::Replace, not_proven(1));
    assert_eq!(verdict.reasons[1], Reason::SetsDisagree);
    // The mean within: the set that was over is not forgotten.
    let verdict = decides(
        &twice(over, within, under),
        Decision::Watch,
        Reason::UnderNotProven(manufacturer()),
    );
    assert!(verdict.reasons.contains(&Reason::SetsDisagree));
    // Over by more than its rig can be wrong: the other set does not cancel it.
    let far = Conformity::OutNotProven(Comparison {
        beyond_rig: true,
        ..manufacturer()
    });
    let verdict = decide(&twice(within, far, under));
    assert_eq!(verdict.decision, Decision::Replace);
    assert!(verdict.reasons.contains(&Reason::SetsDisagree));
    for (first, second, joined) in [
        (over, proven, over),
        (proven, within, under),
        (over, over, proven),
    ] {
        let all = twice(first, second, joined);
        decides(&all, Decision::Replace, Reason::OverProven(manufacturer()));
    }
    decides(
        &twice(within, within, within),
        Decision::Keep,
        Reason::UnderProven(manufacturer()),
    );
}

#[test]
fn a_set_that_cannot_be_compared_does_not_speak() {
    let over = Conformity::OutNotProven(manufacturer());
    let bad = Conformity::NoComparison(WhyNot::ReadingFlag(ReadingFlag::FlexNotTested));
    for sets in [vec![over, bad], vec![bad, over]] {
        let verdict = decides(
            &clean(sets),
            Decision::Replace,
            Reason::OverNotProven {
                comparison: manufacturer(),
                sets: 1,
            },
        );
        assert_eq!(verdict.not_done, [Test::SecondSet]);
        assert!(!verdict.second_set_asked);
    }
}

#[test]
fn a_spec_that_was_not_met_is_a_test_that_was_not_done() {
    let why = WhyNot::Way(Difference::Method);
    let mut under = clean(vec![Conformity::ProvenIn(house())]);
    under.spec_apart = Some(why);
    let verdict = decides(&under, Decision::Watch, Reason::NoComparison(why));
    assert_eq!(verdict.not_done, [Test::Dial]);
    let mut over = clean(vec![Conformity::ProvenOut(house())]);
    over.spec_apart = Some(why);
    decides(&over, Decision::Replace, Reason::OverProven(house()));
}
