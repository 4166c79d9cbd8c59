//! The stable codes under which the reasons of a verdict are recorded, and back.
//!
//! A code says which rule spoke; its figures stand beside it, in what the decision rested on.

use crate::job::entry::{Decided, Inputs};
use crate::trade::play::way::Difference;
use crate::trade::play::{
    Comparison, Conformity, Felt, ReadingFlag, Reason, StopSign, Test, WhyNot,
};
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
        TightProven = "tight_proven",
        TightNotProven = "tight_not_proven",
        SetsDisagree = "sets_disagree",
        UnderNotProven = "under_not_proven",
        UnderProven = "under_proven",
        NoManufacturerLimit = "no_manufacturer_limit",
        NoMovementSeen = "no_movement_seen",
        NoComparison = "no_comparison",
        NotLookedAt = "not_looked_at",
        SmoothAndQuiet = "smooth_and_quiet",
        RoadPointsHere = "road_points_here",
        RoadNotLocated = "road_not_located",
        RoadPointsElsewhere = "road_points_elsewhere",
        Hotter = "hotter",
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
        Reason::TightProven(_) => (Rule::TightProven, ""),
        Reason::TightNotProven { .. } => (Rule::TightNotProven, ""),
        Reason::SetsDisagree => (Rule::SetsDisagree, ""),
        Reason::UnderNotProven(_) => (Rule::UnderNotProven, ""),
        Reason::UnderProven(_) => (Rule::UnderProven, ""),
        Reason::NoManufacturerLimit(_) => (Rule::NoManufacturerLimit, ""),
        Reason::NoMovementSeen { .. } => (Rule::NoMovementSeen, ""),
        Reason::NoComparison(why) => (Rule::NoComparison, why_not(*why)),
        Reason::NotLookedAt(test) => (Rule::NotLookedAt, test.code()),
        Reason::SmoothAndQuiet => (Rule::SmoothAndQuiet, ""),
        Reason::RoadPointsHere => (Rule::RoadPointsHere, ""),
        Reason::RoadNotLocated => (Rule::RoadNotLocated, ""),
        Reason::RoadPointsElsewhere => (Rule::RoadPointsElsewhere, ""),
        Reason::Hotter => (Rule::Hotter, ""),
    }
}

impl Decided {
    /// The reasons with the figures that stand in the entry; one whose code this version does not
    /// know is left out, and its code still stands in [`Decided::reasons`].
    pub fn recorded_reasons(&self) -> Vec<Reason> {
        let reasons = self.reasons.iter();
        reasons
            .filter_map(|code| recorded(code, &self.inputs))
            .collect()
    }
}

fn recorded(code: &str, inputs: &Inputs) -> Option<Reason> {
    let (rule, of) = code.split_once('.').unwrap_or((code, ""));
    Some(match Rule::from_code(rule)? {
        Rule::MustNotDrive => Reason::MustNotDrive(StopSign::from_code(of)?),
        Rule::LooseInBearing => Reason::LooseInBearing(Felt::from_code(of)?),
        Rule::LooseElsewhere => Reason::LooseElsewhere(Felt::from_code(of)?),
        Rule::LooseNotLocated => Reason::LooseNotLocated(Felt::from_code(of)?),
        Rule::Rough => Reason::Rough,
        Rule::Noisy => Reason::Noisy,
        Rule::OverProven => Reason::OverProven(compared(inputs, |of| {
            matches!(
                of,
                Conformity::ProvenOut(_) | Conformity::MovementSeen { proven: true, .. }
            )
        })?),
        Rule::OverNotProven => Reason::OverNotProven {
            comparison: spoken(inputs, Conformity::is_over)?,
            sets: out(inputs),
        },
        Rule::TightProven => Reason::TightProven(compared(inputs, |of| {
            matches!(of, Conformity::TightProven(_))
        })?),
        Rule::TightNotProven => Reason::TightNotProven {
            comparison: spoken(inputs, Conformity::is_tight)?,
            sets: out(inputs),
        },
        Rule::SetsDisagree => Reason::SetsDisagree,
        Rule::UnderNotProven => Reason::UnderNotProven(spoken(inputs, |of| !of.is_out())?),
        Rule::UnderProven => Reason::UnderProven(spoken(inputs, |of| !of.is_out())?),
        Rule::NoManufacturerLimit => {
            Reason::NoManufacturerLimit(spoken(inputs, |of| !of.is_out())?)
        }
        Rule::NoMovementSeen => Reason::NoMovementSeen {
            resolution: of_both(inputs).find_map(|set| match set {
                Conformity::NoMovementSeen { resolution } => Some(*resolution),
                _ => None,
            })?,
        },
        Rule::NoComparison => Reason::NoComparison(why_not_of(of)?),
        Rule::NotLookedAt => Reason::NotLookedAt(Test::from_code(of)?),
        Rule::SmoothAndQuiet => Reason::SmoothAndQuiet,
        Rule::RoadPointsHere => Reason::RoadPointsHere,
        Rule::RoadNotLocated => Reason::RoadNotLocated,
        Rule::RoadPointsElsewhere => Reason::RoadPointsElsewhere,
        Rule::Hotter => Reason::Hotter,
    })
}

/// How many sets were past an end of what is allowed.
fn out(inputs: &Inputs) -> usize {
    let sets = inputs.evidence.sets.iter();
    sets.filter(|set| set.is_out()).count()
}

/// The results, both sets together first where they were joined.
fn of_both(inputs: &Inputs) -> impl Iterator<Item = &Conformity> {
    inputs.evidence.joined.iter().chain(&inputs.evidence.sets)
}

/// The figures of what spoke: of both sets together, else of the set.
fn spoken(inputs: &Inputs, is: impl Fn(&Conformity) -> bool) -> Option<Comparison> {
    let mut all = of_both(inputs).filter(|set| is(set));
    all.find_map(|set| set.comparison().copied())
}

/// The figures of what was proven: of the set, else of both together.
fn compared(inputs: &Inputs, is: impl Fn(&Conformity) -> bool) -> Option<Comparison> {
    let all = inputs.evidence.sets.iter().chain(&inputs.evidence.joined);
    all.filter(|set| is(set))
        .find_map(|set| set.comparison().copied())
}

/// Why a reading and a limit could not be compared, by its code.
pub fn why_not_of(code: &str) -> Option<WhyNot> {
    let ways = WAYS.into_iter().map(WhyNot::Way);
    let marks = ReadingFlag::ALL.iter().copied().map(WhyNot::ReadingFlag);
    ways.chain(marks).find(|why| why_not(*why) == code)
}

const WAYS: [Difference; 4] = [
    Difference::Method,
    Difference::Place,
    Difference::Rig,
    Difference::Force,
];

/// The code of why a reading and a limit cannot be compared.
pub const fn why_not(why: WhyNot) -> &'static str {
    match why {
        WhyNot::Way(Difference::Method) => "method",
        WhyNot::Way(Difference::Place) => "place",
        WhyNot::Way(Difference::Rig) => "rig",
        WhyNot::Way(Difference::Force) => "force",
        WhyNot::ReadingFlag(mark) => mark.code(),
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
            let ways = WAYS.into_iter().map(WhyNot::Way);
            let marks = ReadingFlag::ALL.iter().copied().map(WhyNot::ReadingFlag);
            ways.chain(marks).map(why_not).collect()
        }
        Rule::NotLookedAt => Test::ALL.iter().map(|test| test.code()).collect(),
        _ => Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::entry::{Event, Reply};
    use crate::job::evidence::decided;
    use crate::job::recorded::sheet;
    use crate::trade::play::Decision;
    use crate::trade::vehicle::Corner;
    use crate::trade::wheel_end::{Choice, Step, StepKey};

    #[test]
    fn a_verdict_is_recorded_with_its_rules_and_its_reasons_in_their_order() {
        let at = |step| StepKey::at(step, Corner::RearLeft);
        let whats = [
            Event::Answered(at(Step::RockAxial), Reply::Felt(Felt::Knocks)),
            Event::Answered(at(Step::BrakeHeld), Reply::Picked(Choice::PlayGone)),
            Event::Answered(at(Step::SpinHand), Reply::Picked(Choice::Rough)),
        ];
        let entry = decided(&sheet(&whats), Corner::RearLeft, 1);
        assert_eq!(entry.decision, Decision::Stop);
        assert_eq!(
            entry.reasons,
            ["loose_in_bearing.knocks", "rough", "not_looked_at.dial"]
        );
        assert_eq!((entry.rules, entry.again), (RULES_VERSION, false));
        let back: Vec<String> = entry.recorded_reasons().iter().map(code).collect();
        assert_eq!(back, entry.reasons);
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
