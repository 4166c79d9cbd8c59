//! The verdict on a corner: KEEP, WATCH, REPLACE or STOP, what it rests on, what was not done.
//!
//! Each piece of evidence gives a decision of its own, and the gravest holds. Roughness, noise
//! or looseness in the bearing condemns it whatever the dial says; absence of play never clears.

use super::conformity::{Comparison, Conformity, WhyNot};
use super::evidence::{BrakeHeld, Decision, Evidence, Felt, StopSign, Test};
use super::limit::LimitSource;
use crate::trade::answer::Answer;
use crate::units::Length;
use crate::words;

/// Counts up when a rule below changes; recorded with every decision.
pub const RULES_VERSION: u32 = 1;

words! {
    /// What a verdict rests on.
    pub enum Ground {
        /// The dial against a maker's limit or the house limit.
        Dial = "dial",
        /// Roughness by hand.
        Hand = "hand",
        /// Noise by ear.
        Ear = "ear",
        /// Rocking by hand.
        Rock = "rock",
        /// A sign for which it must not be driven.
        Sign = "sign",
    }
}

/// One reason of a verdict, with its figures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// A sign for which it must not be driven.
    MustNotDrive(StopSign),
    /// Movement felt that was gone with the brake held: it is in the bearing.
    LooseInBearing(Felt),
    /// Movement felt that stayed with the brake held: a joint, or the wheel on its hub.
    LooseElsewhere(Felt),
    /// Movement felt and the brake-held test not done: it may be the bearing.
    LooseNotLocated(Felt),
    /// Rough by hand.
    Rough,
    /// Noise from the bearing.
    Noisy,
    /// Over the limit, proven.
    OverProven(Comparison),
    /// Over the limit by less than the uncertainty.
    OverNotProven {
        /// The figures of the last set.
        comparison: Comparison,
        /// How many sets were taken.
        sets: usize,
    },
    /// One set was over the limit, the last one is not.
    SetsDisagree,
    /// Under the maker's limit by less than the uncertainty.
    UnderNotProven(Comparison),
    /// Under the maker's limit, proven.
    UnderProven(Comparison),
    /// Under the house limit, which clears nothing: no maker limit, it rests on hand and ear.
    NoMakerLimit(Comparison),
    /// The maker allows no movement and none was seen; that proves nothing.
    NoMovementSeen {
        /// What the dial can show.
        resolution: Length,
    },
    /// Reading and limit cannot be compared; it rests on hand and ear.
    NoComparison(WhyNot),
    /// A test without which nothing can be kept was not done.
    NotLookedAt(Test),
    /// Smooth by hand, quiet by ear, nothing felt.
    SmoothAndQuiet,
}

/// A verdict.
#[derive(Clone, Debug, PartialEq)]
pub struct Verdict {
    /// The decision.
    pub decision: Decision,
    /// Its reasons, those of the gravest decision first.
    pub reasons: Vec<Reason>,
    /// What was looked at at all.
    pub rests_on: Vec<Ground>,
    /// What was not done, each once.
    pub not_done: Vec<Test>,
    /// The base should come off, be set elsewhere, and a second set be taken before this stands.
    pub second_set_asked: bool,
}

type Finding = (Decision, Reason);

/// Judges the evidence on one corner.
pub fn decide(evidence: &Evidence) -> Verdict {
    let mut findings: Vec<Finding> = evidence
        .stop_signs
        .iter()
        .map(|sign| (Decision::Stop, Reason::MustNotDrive(*sign)))
        .collect();
    findings.extend(rocked(evidence.felt, evidence.brake_held));
    findings.extend(felt_or_heard(evidence.roughness, Reason::Rough, Test::Hand));
    findings.extend(felt_or_heard(evidence.noise, Reason::Noisy, Test::Ear));
    findings.extend(dialled(&evidence.sets));
    if smooth_and_quiet(evidence) {
        findings.push((Decision::Keep, Reason::SmoothAndQuiet));
    }
    findings.sort_by_key(|(decision, _)| std::cmp::Reverse(*decision));
    Verdict {
        decision: findings
            .first()
            .map_or(Decision::Watch, |(worst, _)| *worst),
        reasons: findings.into_iter().map(|(_, reason)| reason).collect(),
        rests_on: rests_on(evidence),
        not_done: not_done(evidence),
        second_set_asked: asks_second_set(&evidence.sets),
    }
}

fn rocked(felt: Option<Felt>, brake_held: BrakeHeld) -> Option<Finding> {
    let Some(felt) = felt else {
        return Some((Decision::Watch, Reason::NotLookedAt(Test::Rock)));
    };
    let in_bearing = match brake_held {
        BrakeHeld::Gone => Reason::LooseInBearing(felt),
        BrakeHeld::Stays => Reason::LooseElsewhere(felt),
        BrakeHeld::NotDone => Reason::LooseNotLocated(felt),
    };
    match (felt, brake_held) {
        (Felt::Nothing, _) => None,
        // Seen or knocking it is unsafe wherever it sits: a joint can part and a wheel come off.
        (Felt::Seen | Felt::Knocks, _) => Some((Decision::Stop, in_bearing)),
        (Felt::JustFelt, BrakeHeld::Gone) => Some((Decision::Replace, in_bearing)),
        (Felt::JustFelt, _) => Some((Decision::Watch, in_bearing)),
    }
}

fn felt_or_heard(answer: Answer, reason: Reason, test: Test) -> Option<Finding> {
    match answer {
        Answer::Yes => Some((Decision::Replace, reason)),
        Answer::No => None,
        Answer::NotDone => Some((Decision::Watch, Reason::NotLookedAt(test))),
    }
}

/// What the sets say together. A set that proves over stays proven; otherwise the last one
/// speaks, and an earlier one that was over is not forgotten.
fn dialled(sets: &[Conformity]) -> Option<Finding> {
    let proven = sets.iter().find_map(|set| match set {
        Conformity::ProvenOut(comparison)
        | Conformity::MovementSeen {
            comparison,
            proven: true,
        } => Some(*comparison),
        _ => None,
    });
    if let Some(comparison) = proven {
        return Some((Decision::Replace, Reason::OverProven(comparison)));
    }
    let last = sets.last()?;
    if !last.is_over() && sets.iter().any(Conformity::is_over) {
        return Some((Decision::Watch, Reason::SetsDisagree));
    }
    Some(last_set(last, sets.len()))
}

fn last_set(last: &Conformity, sets: usize) -> Finding {
    match *last {
        Conformity::ProvenOut(comparison) => (Decision::Replace, Reason::OverProven(comparison)),
        Conformity::OutNotProven(comparison) | Conformity::MovementSeen { comparison, .. } => (
            Decision::Replace,
            Reason::OverNotProven { comparison, sets },
        ),
        Conformity::ProvenIn(comparison) | Conformity::InNotProven(comparison)
            if comparison.limit.source == LimitSource::House =>
        {
            (Decision::Keep, Reason::NoMakerLimit(comparison))
        }
        Conformity::InNotProven(comparison) => {
            (Decision::Watch, Reason::UnderNotProven(comparison))
        }
        Conformity::ProvenIn(comparison) => (Decision::Keep, Reason::UnderProven(comparison)),
        Conformity::NoMovementSeen { resolution } => {
            (Decision::Keep, Reason::NoMovementSeen { resolution })
        }
        Conformity::NoComparison(why) => (Decision::Keep, Reason::NoComparison(why)),
    }
}

fn asks_second_set(sets: &[Conformity]) -> bool {
    matches!(
        sets,
        [Conformity::OutNotProven(_)] | [Conformity::MovementSeen { proven: false, .. }]
    )
}

fn smooth_and_quiet(evidence: &Evidence) -> bool {
    evidence.roughness == Answer::No
        && evidence.noise == Answer::No
        && evidence.felt == Some(Felt::Nothing)
}

fn rests_on(evidence: &Evidence) -> Vec<Ground> {
    let compared = |set: &Conformity| !matches!(set, Conformity::NoComparison(_));
    let grounds = [
        (Ground::Dial, evidence.sets.iter().any(compared)),
        (Ground::Hand, evidence.roughness != Answer::NotDone),
        (Ground::Ear, evidence.noise != Answer::NotDone),
        (Ground::Rock, evidence.felt.is_some()),
        (Ground::Sign, !evidence.stop_signs.is_empty()),
    ];
    grounds
        .into_iter()
        .filter_map(|(ground, stands)| stands.then_some(ground))
        .collect()
}

fn not_done(evidence: &Evidence) -> Vec<Test> {
    let something_felt = !matches!(evidence.felt, None | Some(Felt::Nothing));
    let missing = [
        (Test::Dial, evidence.sets.is_empty()),
        (Test::SecondSet, asks_second_set(&evidence.sets)),
        (Test::Hand, evidence.roughness == Answer::NotDone),
        (Test::Ear, evidence.noise == Answer::NotDone),
        (Test::Rock, evidence.felt.is_none()),
        (
            Test::BrakeHeld,
            something_felt && evidence.brake_held == BrakeHeld::NotDone,
        ),
    ];
    let mut tests = evidence.not_done.clone();
    tests.extend(
        missing
            .into_iter()
            .filter_map(|(test, open)| open.then_some(test)),
    );
    tests.sort_unstable();
    tests.dedup();
    tests
}

#[cfg(test)]
mod tests;
