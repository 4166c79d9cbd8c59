//! A set against its limit: proven in, in, out, proven out, or no comparison at all.

use super::budget::Budget;
use super::limit::Limit;
use super::series::{ReadingFlag, ReadingSet};
use super::uncertainty::{Guarded, guarded};
use super::way::Difference;
use crate::units::Length;

/// A mean, its limit, and how sure the difference is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Comparison {
    /// Mean play of the set.
    pub play: Length,
    /// What it was compared with.
    pub limit: Limit,
    /// Combined standard uncertainty.
    pub u: Length,
    /// Its effective degrees of freedom; `None` is infinite.
    pub dof: Option<f64>,
    /// One-sided 95 % factor; proven means beyond the limit by `g · u`.
    pub g: f64,
    /// From how many cycles the mean comes.
    pub cycles: usize,
    /// Over the limit by more than the rig alone can be wrong, its cycles taken to scatter by no
    /// more than the floor. Unlike a proof this cannot be undone by a larger reading.
    pub beyond_rig: bool,
    /// Probability that the true play is at or under the limit, and not under the least where there
    /// is one, from the distribution of `g`.
    pub conformance: f64,
}

/// Fewer cycles may be within or over, never proven: one says nothing of its own scatter, and the
/// scatter of two is known by one degree of freedom (the number is ours, common practice, no
/// source).
pub const CYCLES_TO_PROVE: usize = 3;

/// Why a reading and a limit cannot be compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum WhyNot {
    /// Method, place, rig or force differs.
    Way(Difference),
    /// The reading is no play of this bearing.
    ReadingFlag(ReadingFlag),
}

/// What a set says against a limit.
#[derive(Clone, Copy, Debug, PartialEq, Hash)]
pub enum Conformity {
    /// Under the limit by more than `g · u`.
    ProvenIn(Comparison),
    /// At or under the limit, by less than `g · u`.
    InNotProven(Comparison),
    /// Over the limit, by no more than `g · u`.
    OutNotProven(Comparison),
    /// Over the limit by more than `g · u`.
    ProvenOut(Comparison),
    /// Under the least play, by no more than `g · u`.
    TightNotProven(Comparison),
    /// Under the least play by more than `g · u`.
    TightProven(Comparison),
    /// The limit is zero and nothing was seen to move; that proves nothing within.
    NoMovementSeen {
        /// What the dial can show.
        resolution: Length,
    },
    /// The limit is zero and movement was seen.
    MovementSeen {
        /// The figures.
        comparison: Comparison,
        /// Whether it is more than `g · u`.
        proven: bool,
    },
    /// They cannot be compared.
    NoComparison(WhyNot),
}

impl Conformity {
    /// The figures of the comparison, if there was one.
    pub const fn comparison(&self) -> Option<&Comparison> {
        match self {
            Self::ProvenIn(comparison)
            | Self::InNotProven(comparison)
            | Self::OutNotProven(comparison)
            | Self::ProvenOut(comparison)
            | Self::TightNotProven(comparison)
            | Self::TightProven(comparison)
            | Self::MovementSeen { comparison, .. } => Some(comparison),
            Self::NoMovementSeen { .. } | Self::NoComparison(_) => None,
        }
    }

    /// The same result with other figures.
    #[must_use]
    pub fn with(self, figures: impl FnOnce(Comparison) -> Comparison) -> Self {
        match self {
            Self::ProvenIn(comparison) => Self::ProvenIn(figures(comparison)),
            Self::InNotProven(comparison) => Self::InNotProven(figures(comparison)),
            Self::OutNotProven(comparison) => Self::OutNotProven(figures(comparison)),
            Self::ProvenOut(comparison) => Self::ProvenOut(figures(comparison)),
            Self::TightNotProven(comparison) => Self::TightNotProven(figures(comparison)),
            Self::TightProven(comparison) => Self::TightProven(figures(comparison)),
            Self::MovementSeen { comparison, proven } => Self::MovementSeen {
                comparison: figures(comparison),
                proven,
            },
            Self::NoMovementSeen { .. } | Self::NoComparison(_) => self,
        }
    }

    /// Whether reading and limit were compared at all.
    pub const fn is_compared(&self) -> bool {
        !matches!(self, Self::NoComparison(_))
    }

    /// Whether the reading is over its limit, proven or not.
    pub const fn is_over(&self) -> bool {
        matches!(
            self,
            Self::OutNotProven(_) | Self::ProvenOut(_) | Self::MovementSeen { .. }
        )
    }

    /// Whether the reading is under the least play, proven or not.
    pub const fn is_tight(&self) -> bool {
        matches!(self, Self::TightNotProven(_) | Self::TightProven(_))
    }

    /// Whether the reading is past either end of its window, proven or not.
    pub const fn is_out(&self) -> bool {
        self.is_over() || self.is_tight()
    }

    /// The stable code of the kind of result.
    pub const fn code(&self) -> &'static str {
        match self {
            Self::ProvenIn(_) => Guarded::ProvenIn.code(),
            Self::InNotProven(_) => Guarded::InNotProven.code(),
            Self::OutNotProven(_) => Guarded::OutNotProven.code(),
            Self::ProvenOut(_) => Guarded::ProvenOut.code(),
            Self::TightNotProven(_) => "tight_not_proven",
            Self::TightProven(_) => "tight_proven",
            Self::NoMovementSeen { .. } => "no_movement_seen",
            Self::MovementSeen { .. } => "movement_seen",
            Self::NoComparison(_) => "no_comparison",
        }
    }
}

/// Compares a set with a limit by the one rule: proven means beyond it by `g · u`.
///
/// # Source
/// ISO 14253-1:2017 for the rule, JCGM 106:2012 for the probability.
pub fn compare(set: &ReadingSet, budget: &Budget, limit: &Limit) -> Conformity {
    if let Some(mark) = set.refusal() {
        return Conformity::NoComparison(WhyNot::ReadingFlag(mark));
    }
    let differs = set.way().and_then(|way| way.differs_from(&limit.way));
    if let Some(difference) = differs {
        return Conformity::NoComparison(WhyNot::Way(difference));
    }
    let mean = Mean {
        play: set.mean(),
        cycles: set.plays().len(),
        still: set.nothing_moved().then(|| set.dial().graduation()),
    };
    mean.against(budget, limit)
}

/// A mean play of one set or of several.
pub(super) struct Mean {
    /// The mean.
    pub(super) play: Length,
    /// From how many cycles.
    pub(super) cycles: usize,
    /// What the dial can show, where it showed no movement in any cycle.
    pub(super) still: Option<Length>,
}

impl Mean {
    /// The mean against a limit of its own way.
    pub(super) fn against(&self, budget: &Budget, limit: &Limit) -> Conformity {
        let judged = judged(self.play, budget, limit.value);
        let comparison = Comparison {
            play: self.play,
            limit: *limit,
            u: budget.u_c,
            dof: budget.dof_eff,
            g: budget.g,
            cycles: self.cycles,
            beyond_rig: self.play
                > limit
                    .value
                    .plus(budget.at_the_floor(self.cycles).guard_band()),
            conformance: judged.conformance,
        };
        let proves = self.cycles >= CYCLES_TO_PROVE;
        if limit.is_zero() {
            return match self.still {
                Some(resolution) => Conformity::NoMovementSeen { resolution },
                None => Conformity::MovementSeen {
                    comparison,
                    proven: proves && judged.result == Guarded::ProvenOut,
                },
            };
        }
        let judged = match limit.least {
            Some(least) => {
                let low = judged_from_below(self.play, budget, least);
                let chance = judged.conformance - (1.0 - low.conformance);
                let comparison = Comparison {
                    conformance: chance.max(0.0),
                    ..comparison
                };
                return in_window(judged.result, low.result, comparison, proves);
            }
            None => judged,
        };
        match judged.result {
            Guarded::ProvenIn if proves => Conformity::ProvenIn(comparison),
            Guarded::ProvenIn | Guarded::InNotProven => Conformity::InNotProven(comparison),
            Guarded::ProvenOut if proves => Conformity::ProvenOut(comparison),
            Guarded::ProvenOut | Guarded::OutNotProven => Conformity::OutNotProven(comparison),
        }
    }
}

/// Both ends of a window together: within only where it is within both.
const fn in_window(
    high: Guarded,
    low: Guarded,
    comparison: Comparison,
    proves: bool,
) -> Conformity {
    use Guarded::{InNotProven, OutNotProven, ProvenIn, ProvenOut};
    match (high, low) {
        (ProvenOut, _) if proves => Conformity::ProvenOut(comparison),
        (ProvenOut | OutNotProven, _) => Conformity::OutNotProven(comparison),
        (_, ProvenOut) if proves => Conformity::TightProven(comparison),
        (_, ProvenOut | OutNotProven) => Conformity::TightNotProven(comparison),
        (ProvenIn, ProvenIn) if proves => Conformity::ProvenIn(comparison),
        (ProvenIn | InNotProven, ProvenIn | InNotProven) => Conformity::InNotProven(comparison),
    }
}

/// What a value says against a lower limit: the one rule with both signs turned.
fn judged_from_below(value: Length, budget: &Budget, lower: Length) -> Judged {
    let (u, lower) = (budget.u_c.mm(), lower.mm());
    let y = on_the_limit_is_on_it(value.mm(), lower);
    Judged {
        result: guarded(-y, u, -lower, budget.g),
        conformance: budget.conforms(-y, -lower),
    }
}

/// What a value says against an upper limit, whatever it is a value of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Judged {
    /// Within or over, and whether that is proven.
    pub result: Guarded,
    /// Probability that the true value is at or under the limit (JCGM 106, Student's t).
    pub conformance: f64,
}

impl Judged {
    /// Whether it is over its limit, proven or not.
    pub const fn is_over(&self) -> bool {
        matches!(self.result, Guarded::OutNotProven | Guarded::ProvenOut)
    }
}

/// The one rule: proven means beyond the limit by `g · u`; factor and probability come from one
/// distribution.
pub(in crate::trade) fn judged(value: Length, budget: &Budget, upper: Length) -> Judged {
    let (u, upper) = (budget.u_c.mm(), upper.mm());
    let y = on_the_limit_is_on_it(value.mm(), upper);
    Judged {
        result: guarded(y, u, upper, budget.g),
        conformance: budget.conforms(y, upper),
    }
}

/// A reading of 2 thou is on a limit of 0.002 in, whatever the last bit of the products says.
fn on_the_limit_is_on_it(y_mm: f64, upper_mm: f64) -> f64 {
    if (y_mm - upper_mm).abs() < 1e-9 {
        upper_mm
    } else {
        y_mm
    }
}

#[cfg(test)]
mod tests;
