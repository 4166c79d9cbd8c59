//! The verdict on a corner: KEEP, WATCH, REPLACE or STOP, what it rests on, what was not done.
//!
//! Each piece of evidence gives a decision of its own, and the gravest holds: one more finding, a
//! lower limit, a test left out never make it better. Roughness, noise or looseness in the bearing
//! condemns it whatever the dial says; absence of play never clears.
//!
//! The rule for road and heat (common practice, no source). By itself neither condemns: a swerve
//! tells left from right and not front from rear, and a dragging brake heats a hub as well.
//!
//! | the road says | heat alike or not measured | hub clearly hotter |
//! |---|---|---|
//! | quiet, or not done | – | WATCH |
//! | noise, points elsewhere | KEEP, and that is the reason | WATCH |
//! | noise, not located | WATCH | WATCH |
//! | noise, points here | WATCH | REPLACE |
//!
//! A bearing that is set with play has a least play too: under it the rollers are too tight, they run
//! hot, and the same rules hold as over the most.
//!
//! The rule for the dial: what is proven over in any set or in both together is REPLACE; two sets
//! speak by their mean, and one that is over by more than its rig can be wrong is not cancelled by
//! the other; a set that cannot be compared does not speak. A dial that was not used, or
//! not compared with the limit of the spec, is a test that is missing and leaves it at WATCH, as
//! does every other test without which nothing is kept.

use super::conformity::{Comparison, Conformity, WhyNot};
use super::evidence::{BrakeHeld, Decision, Evidence, Felt, StopSign, Test};
use super::limit::LimitSource;
use super::road::{Heat, Road};
use crate::sorted::Sorted;
use crate::trade::answer::Answer;
use crate::units::Length;
use crate::words;

pub use super::rules::RULES_VERSION;

words! {
    /// What a verdict rests on.
    pub enum Ground {
        /// The dial against a manufacturer's limit or the house limit.
        Dial = "dial",
        /// Roughness by hand.
        Hand = "hand",
        /// Noise by ear.
        Ear = "ear",
        /// Rocking by hand.
        Rock = "rock",
        /// What was heard on the road.
        Road = "road",
        /// The heat of both hubs.
        Heat = "heat",
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
    /// A noise on the road that is louder when this side is loaded.
    RoadPointsHere,
    /// A noise on the road, and nothing says where it sits.
    RoadNotLocated,
    /// A noise on the road that has another cause or sits on the other side.
    RoadPointsElsewhere,
    /// This hub is clearly hotter than that of the other side.
    Hotter,
    /// Over the limit, proven.
    OverProven(Comparison),
    /// Over the limit by less than the uncertainty.
    OverNotProven {
        /// The figures of the set, or of both together.
        comparison: Comparison,
        /// How many sets were over.
        sets: usize,
    },
    /// Under the least play, proven.
    TightProven(Comparison),
    /// Under the least play by less than the uncertainty.
    TightNotProven {
        /// The figures of the set, or of both together.
        comparison: Comparison,
        /// How many sets were past an end of the window.
        sets: usize,
    },
    /// One set was over the limit, another was not.
    SetsDisagree,
    /// Under the manufacturer's limit by less than the uncertainty.
    UnderNotProven(Comparison),
    /// Under the manufacturer's limit, proven.
    UnderProven(Comparison),
    /// Under the house limit, which clears nothing: no manufacturer limit, it rests on hand and ear.
    NoManufacturerLimit(Comparison),
    /// The manufacturer allows no movement and none was seen; that proves nothing.
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
    findings.extend(on_the_road(evidence.road, evidence.heat));
    findings.extend(dialled(evidence));
    if smooth_and_quiet(evidence) {
        findings.push((Decision::Keep, Reason::SmoothAndQuiet));
    }
    findings.order_by_key(|(decision, _)| std::cmp::Reverse(*decision));
    Verdict {
        decision: findings
            .first()
            .map_or(Decision::Watch, |(worst, _)| *worst),
        reasons: findings.into_iter().map(|(_, reason)| reason).collect(),
        rests_on: rests_on(evidence),
        not_done: not_done(evidence),
        second_set_asked: evidence.sets.len() == 1 && lacks_second_set(&evidence.sets),
    }
}

/// By the table above.
fn on_the_road(road: Road, heat: Heat) -> Vec<Finding> {
    let hotter = heat == Heat::Hotter;
    let noise = match road {
        Road::Quiet | Road::NotDone => None,
        Road::Elsewhere => Some((Decision::Keep, Reason::RoadPointsElsewhere)),
        Road::NotLocated => Some((Decision::Watch, Reason::RoadNotLocated)),
        Road::Here if hotter => Some((Decision::Replace, Reason::RoadPointsHere)),
        Road::Here => Some((Decision::Watch, Reason::RoadPointsHere)),
    };
    let grave = match road {
        Road::Here => Decision::Replace,
        _ => Decision::Watch,
    };
    noise
        .into_iter()
        .chain(hotter.then_some((grave, Reason::Hotter)))
        .collect()
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

/// What the dial says: each set that was compared, both together, and the spec that was not.
fn dialled(evidence: &Evidence) -> Vec<Finding> {
    let compared: Vec<&Conformity> = evidence.sets.iter().filter(|s| s.is_compared()).collect();
    if compared.is_empty() {
        let why = match evidence.sets.last() {
            Some(Conformity::NoComparison(why)) => Reason::NoComparison(*why),
            _ => Reason::NotLookedAt(Test::Dial),
        };
        return vec![(Decision::Watch, why)];
    }
    let mut findings: Vec<Finding> = match (proven_out(evidence), &evidence.joined) {
        (Some(reason), _) => vec![(Decision::Replace, reason)],
        (None, Some(joined)) => both(&compared, joined),
        (None, None) => compared.iter().map(|set| spoken(set, 1)).collect(),
    };
    let apart = evidence.spec_apart.map(Reason::NoComparison);
    findings.extend(apart.map(|why| (Decision::Watch, why)));
    findings
}

/// What was proven over, or too tight: in a set, or in both together.
fn proven_out(evidence: &Evidence) -> Option<Reason> {
    let all = evidence.sets.iter().chain(&evidence.joined);
    all.into_iter().find_map(|set| match set {
        Conformity::ProvenOut(comparison)
        | Conformity::MovementSeen {
            comparison,
            proven: true,
        } => Some(Reason::OverProven(*comparison)),
        Conformity::TightProven(comparison) => Some(Reason::TightProven(*comparison)),
        _ => None,
    })
}

/// Two sets by their mean. Where they disagree that is said, and it is no better than WATCH; a set
/// that is over by more than its rig can be wrong is not cancelled by the other.
fn both(compared: &[&Conformity], joined: &Conformity) -> Vec<Finding> {
    let over = compared.iter().filter(|set| set.is_out()).count();
    let disagree = 0 < over && over < compared.len();
    let disagree = disagree.then_some((Decision::Watch, Reason::SetsDisagree));
    let beyond = |set: &&&Conformity| set.comparison().is_some_and(|of| of.beyond_rig);
    let beyond = compared.iter().find(beyond).filter(|_| !joined.is_over());
    let beyond = beyond.map(|set| spoken(set, over));
    let joined = spoken(joined, over);
    [joined].into_iter().chain(beyond).chain(disagree).collect()
}

fn spoken(conformity: &Conformity, sets: usize) -> Finding {
    match *conformity {
        Conformity::ProvenOut(comparison) => (Decision::Replace, Reason::OverProven(comparison)),
        Conformity::OutNotProven(comparison) | Conformity::MovementSeen { comparison, .. } => (
            Decision::Replace,
            Reason::OverNotProven { comparison, sets },
        ),
        Conformity::TightProven(comparison) => (Decision::Replace, Reason::TightProven(comparison)),
        Conformity::TightNotProven(comparison) => (
            Decision::Replace,
            Reason::TightNotProven { comparison, sets },
        ),
        Conformity::ProvenIn(comparison) | Conformity::InNotProven(comparison)
            if comparison.limit.source == LimitSource::House =>
        {
            (Decision::Keep, Reason::NoManufacturerLimit(comparison))
        }
        Conformity::InNotProven(comparison) => {
            (Decision::Watch, Reason::UnderNotProven(comparison))
        }
        Conformity::ProvenIn(comparison) => (Decision::Keep, Reason::UnderProven(comparison)),
        // No arithmetic proves "no movement": it is no better than within and not proven.
        Conformity::NoMovementSeen { resolution } => {
            (Decision::Watch, Reason::NoMovementSeen { resolution })
        }
        Conformity::NoComparison(why) => (Decision::Watch, Reason::NoComparison(why)),
    }
}

/// One set alone was compared, and is over by less than it is sure.
fn lacks_second_set(sets: &[Conformity]) -> bool {
    let mut compared = sets.iter().filter(|set| set.is_compared());
    let unproven = matches!(
        compared.next(),
        Some(
            Conformity::OutNotProven(_)
                | Conformity::TightNotProven(_)
                | Conformity::MovementSeen { proven: false, .. }
        )
    );
    unproven && compared.next().is_none()
}

fn smooth_and_quiet(evidence: &Evidence) -> bool {
    evidence.roughness == Answer::No
        && evidence.noise == Answer::No
        && evidence.felt == Some(Felt::Nothing)
        && matches!(evidence.road, Road::Quiet | Road::NotDone)
        && evidence.heat != Heat::Hotter
}

fn rests_on(evidence: &Evidence) -> Vec<Ground> {
    let grounds = [
        (
            Ground::Dial,
            evidence.sets.iter().any(Conformity::is_compared),
        ),
        (Ground::Hand, evidence.roughness != Answer::NotDone),
        (Ground::Ear, evidence.noise != Answer::NotDone),
        (Ground::Rock, evidence.felt.is_some()),
        (Ground::Road, evidence.road != Road::NotDone),
        (Ground::Heat, evidence.heat != Heat::NotDone),
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
        (
            Test::Dial,
            evidence.spec_apart.is_some() || !evidence.sets.iter().any(Conformity::is_compared),
        ),
        (Test::SecondSet, lacks_second_set(&evidence.sets)),
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
    tests.order();
    tests.dedup();
    tests
}

#[cfg(test)]
mod tests;
