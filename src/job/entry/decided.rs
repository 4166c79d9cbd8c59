//! A decision, with everything that it rested on.
//!
//! What was concluded is kept, not only what it was concluded from: a later version of the rules
//! never changes what a finished job says.

use crate::trade::play::{
    Budget, Comparison, Component, Decision, Evidence, Figures, Ground, Limit, Verdict,
};
use crate::trade::vehicle::Corner;
use crate::units::Length;

/// A decision on a corner.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct Decided {
    /// Which corner.
    pub corner: Corner,
    /// 1, or 2 after a second set.
    pub nth: u8,
    /// The decision.
    pub decision: Decision,
    /// Whether a second set is asked for before it stands.
    pub again: bool,
    /// Its reasons, as stable codes in their order.
    pub reasons: Vec<String>,
    /// The version of the rules that made it.
    pub rules: u32,
    /// What it rested on.
    pub inputs: Box<Inputs>,
}

/// What a decision rested on, its figures rounded as they are stored.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct Inputs {
    /// What each set of readings said, with its number.
    pub sets: Vec<(u8, Figures)>,
    /// What two of them said together.
    pub joined: Option<Figures>,
    /// What was looked at, and what all in all was not done.
    pub evidence: Evidence,
    /// What the decision rests on.
    pub rests_on: Vec<Ground>,
}

impl Inputs {
    /// None: of a decision that is known from paper.
    pub fn none() -> Box<Self> {
        Self::stored(Vec::new(), None, Evidence::nothing(), Vec::new())
    }

    /// What a verdict rested on.
    pub fn of(
        sets: impl Iterator<Item = (u8, Figures)>,
        joined: Option<Figures>,
        evidence: Evidence,
        verdict: &Verdict,
    ) -> Box<Self> {
        let sets = sets.map(|(nth, figures)| (nth, rounded(figures))).collect();
        Self::stored(
            sets,
            joined.map(rounded),
            Evidence {
                not_done: verdict.not_done.clone(),
                ..evidence
            },
            verdict.rests_on.clone(),
        )
    }

    /// What a verdict rested on, as it was stored: the evidence has the results of its sets.
    pub fn stored(
        sets: Vec<(u8, Figures)>,
        joined: Option<Figures>,
        evidence: Evidence,
        rests_on: Vec<Ground>,
    ) -> Box<Self> {
        let evidence = Evidence {
            sets: sets.iter().map(|(_, set)| set.conformity).collect(),
            joined: joined.as_ref().map(|both| both.conformity),
            ..evidence
        };
        Box::new(Self {
            sets,
            joined,
            evidence,
            rests_on,
        })
    }

    /// What the `nth` set said.
    pub fn set(&self, nth: u8) -> Option<&Figures> {
        let set = self.sets.iter().find(|(number, _)| *number == nth);
        set.map(|(_, figures)| figures)
    }
}

/// A nanometre, a millionth of a factor or of a chance: far below what is printed, and few digits
/// in a file.
const PARTS: f64 = 1e6;

pub(in crate::job) fn round(value: f64) -> f64 {
    (value * PARTS).round() / PARTS
}

pub(in crate::job) fn length(length: Length) -> Length {
    // A whole number of millionths is the double nearest to its decimals, so that it reads back.
    Length::millimetres(round(length.mm()))
}

fn limit(limit: Limit) -> Limit {
    Limit {
        value: length(limit.value),
        least: limit.least.map(length),
        ..limit
    }
}

/// The figures as they are stored.
pub(super) fn rounded(figures: Figures) -> Figures {
    let budget = figures.budget;
    let component = |part: Component| Component {
        u: length(part.u),
        dof: part.dof.map(round),
        ..part
    };
    Figures {
        play: length(figures.play),
        budget: Budget {
            components: budget.components.into_iter().map(component).collect(),
            u_c: length(budget.u_c),
            expanded95: length(budget.expanded95),
            g: round(budget.g),
            dof_eff: budget.dof_eff.map(round),
        },
        limit: limit(figures.limit),
        conformity: figures.conformity.with(|of: Comparison| Comparison {
            play: length(of.play),
            limit: limit(of.limit),
            u: length(of.u),
            dof: of.dof.map(round),
            g: round(of.g),
            conformance: round(of.conformance),
            ..of
        }),
        ..figures
    }
}
