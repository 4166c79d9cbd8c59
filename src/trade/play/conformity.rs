//! A set against its limit: proven in, in, out, proven out, or no comparison at all.

use super::budget::Budget;
use super::limit::Limit;
use super::series::{Mark, ReadingSet};
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
    /// Probability that the true play is at or under the limit, from the distribution of `g`.
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
    Mark(Mark),
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

    /// The stable code of the kind of result.
    pub const fn code(&self) -> &'static str {
        match self {
            Self::ProvenIn(_) => Guarded::ProvenIn.code(),
            Self::InNotProven(_) => Guarded::InNotProven.code(),
            Self::OutNotProven(_) => Guarded::OutNotProven.code(),
            Self::ProvenOut(_) => Guarded::ProvenOut.code(),
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
        return Conformity::NoComparison(WhyNot::Mark(mark));
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
        match judged.result {
            Guarded::ProvenIn if proves => Conformity::ProvenIn(comparison),
            Guarded::ProvenIn | Guarded::InNotProven => Conformity::InNotProven(comparison),
            Guarded::ProvenOut if proves => Conformity::ProvenOut(comparison),
            Guarded::ProvenOut | Guarded::OutNotProven => Conformity::OutNotProven(comparison),
        }
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
mod tests {
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

    fn judged(divisions: f64, way: Way, marks: Vec<Mark>, limit: &Limit) -> Conformity {
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
            judged(3.0, Way::DEFAULT, vec![Mark::NutSlack], &manufacturer(0.05)),
            Conformity::NoComparison(WhyNot::Mark(Mark::NutSlack))
        );
    }

    #[test]
    fn the_probability_is_one_half_on_the_limit() {
        let Conformity::InNotProven(on) = judged(5.0, Way::DEFAULT, vec![], &manufacturer(0.05))
        else {
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
}
