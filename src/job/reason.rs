//! The stable codes under which the reasons of a verdict are recorded, and the entry it becomes.
//!
//! A code says which rule spoke, never its figures: those are computed again from the readings.

use crate::job::entry::Decided;
use crate::trade::play::way::Difference;
use crate::trade::play::{Felt, Mark, Reason, StopSign, Test, Verdict, WhyNot};
use crate::trade::vehicle::Corner;
use crate::words;

/// The version of the rules that a decision names.
pub use crate::trade::play::decide::RULES_VERSION;

words! {
    /// The rules that can speak, without what they spoke of.
    pub enum Rule {
        MustNotDrive = "must_not_drive",
        LooseInBearing = "loose_in_bearing",
        LooseElsewhere = "loose_elsewhere",
        LooseNotLocated = "loose_not_located",
        Rough = "rough",
        Noisy = "noisy",
        OverProven = "over_proven",
        OverNotProven = "over_not_proven",
        SetsDisagree = "sets_disagree",
        UnderNotProven = "under_not_proven",
        UnderProven = "under_proven",
        NoMakerLimit = "no_maker_limit",
        NoMovementSeen = "no_movement_seen",
        NoComparison = "no_comparison",
        NotLookedAt = "not_looked_at",
        SmoothAndQuiet = "smooth_and_quiet",
    }
}

/// The code of a reason: its rule, and after a point what it spoke of: `must_not_drive.knocks`.
pub fn code(reason: &Reason) -> String {
    let (rule, of) = parts(reason);
    join(rule, of)
}

/// Every code that this version writes, for the schema and for the second opinion.
pub fn codes() -> Vec<String> {
    Rule::ALL
        .iter()
        .flat_map(|rule| match subjects(*rule) {
            subjects if subjects.is_empty() => vec![rule.code().to_owned()],
            subjects => subjects.into_iter().map(|of| join(*rule, of)).collect(),
        })
        .collect()
}

/// What is recorded of a verdict on a corner after its `nth` set.
pub fn decided(corner: Corner, nth: u8, verdict: &Verdict) -> Decided {
    Decided {
        corner,
        nth,
        decision: verdict.decision,
        again: verdict.second_set_asked,
        reasons: verdict.reasons.iter().map(code).collect(),
        rules: RULES_VERSION,
    }
}

fn join(rule: Rule, of: &str) -> String {
    if of.is_empty() {
        rule.code().to_owned()
    } else {
        format!("{}.{of}", rule.code())
    }
}

fn parts(reason: &Reason) -> (Rule, &'static str) {
    match reason {
        Reason::MustNotDrive(sign) => (Rule::MustNotDrive, sign.code()),
        Reason::LooseInBearing(felt) => (Rule::LooseInBearing, felt.code()),
        Reason::LooseElsewhere(felt) => (Rule::LooseElsewhere, felt.code()),
        Reason::LooseNotLocated(felt) => (Rule::LooseNotLocated, felt.code()),
        Reason::Rough => (Rule::Rough, ""),
        Reason::Noisy => (Rule::Noisy, ""),
        Reason::OverProven(_) => (Rule::OverProven, ""),
        Reason::OverNotProven { .. } => (Rule::OverNotProven, ""),
        Reason::SetsDisagree => (Rule::SetsDisagree, ""),
        Reason::UnderNotProven(_) => (Rule::UnderNotProven, ""),
        Reason::UnderProven(_) => (Rule::UnderProven, ""),
        Reason::NoMakerLimit(_) => (Rule::NoMakerLimit, ""),
        Reason::NoMovementSeen { .. } => (Rule::NoMovementSeen, ""),
        Reason::NoComparison(why) => (Rule::NoComparison, why_not(*why)),
        Reason::NotLookedAt(test) => (Rule::NotLookedAt, test.code()),
        Reason::SmoothAndQuiet => (Rule::SmoothAndQuiet, ""),
    }
}

/// The code of why a reading and a limit cannot be compared.
pub const fn why_not(why: WhyNot) -> &'static str {
    match why {
        WhyNot::Way(Difference::Method) => "method",
        WhyNot::Way(Difference::Place) => "place",
        WhyNot::Way(Difference::Rig) => "rig",
        WhyNot::Way(Difference::Force) => "force",
        WhyNot::Mark(mark) => mark.code(),
    }
}

fn subjects(rule: Rule) -> Vec<&'static str> {
    match rule {
        Rule::MustNotDrive => StopSign::ALL.iter().map(|sign| sign.code()).collect(),
        Rule::LooseInBearing | Rule::LooseElsewhere | Rule::LooseNotLocated => {
            // Nothing felt is no reason.
            let felt = Felt::ALL.iter().filter(|felt| **felt != Felt::Nothing);
            felt.map(|felt| felt.code()).collect()
        }
        Rule::NoComparison => {
            let ways = [
                Difference::Method,
                Difference::Place,
                Difference::Rig,
                Difference::Force,
            ];
            let ways = ways.into_iter().map(WhyNot::Way);
            let marks = Mark::ALL.iter().copied().map(WhyNot::Mark);
            ways.chain(marks).map(why_not).collect()
        }
        Rule::NotLookedAt => Test::ALL.iter().map(|test| test.code()).collect(),
        _ => Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    #![allow(
        clippy::unwrap_used,
        clippy::expect_used,
        clippy::panic,
        clippy::indexing_slicing
    )]
    use super::*;
    use crate::trade::answer::Answer;
    use crate::trade::play::{BrakeHeld, Decision, Evidence, decide};

    fn evidence() -> Evidence {
        Evidence {
            sets: Vec::new(),
            roughness: Answer::No,
            noise: Answer::No,
            felt: Some(Felt::Nothing),
            brake_held: BrakeHeld::NotDone,
            stop_signs: Vec::new(),
            not_done: Vec::new(),
        }
    }

    #[test]
    fn a_verdict_is_recorded_with_its_rules_and_its_reasons_in_their_order() {
        let knocking = Evidence {
            felt: Some(Felt::Knocks),
            brake_held: BrakeHeld::Gone,
            roughness: Answer::Yes,
            noise: Answer::NotDone,
            ..evidence()
        };
        let entry = decided(Corner::RearLeft, 1, &decide(&knocking));
        assert_eq!(entry.decision, Decision::Stop);
        assert_eq!(
            entry.reasons,
            ["loose_in_bearing.knocks", "rough", "not_looked_at.ear"]
        );
        assert_eq!((entry.rules, entry.again), (RULES_VERSION, false));
    }

    #[test]
    fn no_two_rules_share_a_code() {
        let mut all = codes();
        let count = all.len();
        all.sort();
        all.dedup();
        assert_eq!(all.len(), count);
        assert!(all.contains(&"must_not_drive.knocks".to_owned()));
        assert!(all.contains(&code(&Reason::SmoothAndQuiet)));
    }
}
