//! How far a face runs out once scatter is taken out of it, and how sure that is.

use super::rice::{at_most, length_at, usual_of_nothing};
use crate::trade::play::conformity::Judged;
use crate::trade::play::uncertainty::{Contribution, Guarded};
use crate::units::Length;

/// A runout or a variation of thickness with its uncertainty.
///
/// What is read of a wave is too long on average, and of no wave at all it is never nothing. So
/// the true runout is told from the distribution of what is read: the estimate is too high as
/// often as too low, and limit, interval and probability come from that one distribution.
///
/// # Source
/// Rice's distribution (`rice`); the median as an estimate that is too high as often as too low,
/// and the interval by turning the test round, Neyman 1937 (from memory).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reach {
    read: Length,
    u: Length,
    scatter: Length,
    spare: Option<f64>,
    dof: Option<f64>,
}

/// An uncertainty of zero proves anything; nothing is told from it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoUncertainty;

/// Half of 5 % is left out on either side.
pub(super) const TAIL: f64 = 0.025;
/// A limit is passed for sure where the chance of the other side is below this (ISO 14253-1).
pub(super) const DOUBT: f64 = 0.05;
/// A reading of nothing is even with a limit of nothing, whatever its last bits say.
pub(super) const EVEN: f64 = 0.5 - 1e-9;

impl Reach {
    /// From what was read, what the scatter makes of it with its degrees of freedom, and the
    /// standard uncertainty that is known beside it.
    ///
    /// The degrees of freedom of the scatter count by its share of the variance: to the first
    /// order the variance-weighted t of Cochran (1964, from memory). Welch and Satterthwaite take
    /// the square of the share; with two or three spare readings a scatter that is small by luck
    /// then passes for a known one, and the interval covers 90 % only (simulated).
    ///
    /// # Errors
    /// [`NoUncertainty`] unless the scatter is a number above zero, and what was read and the known
    /// part are no less than zero.
    pub fn new(read: Length, scatter: Contribution, known: Length) -> Result<Self, NoUncertainty> {
        let is_number = scatter.u > 0.0 && scatter.u.is_finite();
        let has_freedom = scatter.dof.is_none_or(|dof| dof > 0.0);
        if !is_number || !has_freedom || known < Length::ZERO || read < Length::ZERO {
            return Err(NoUncertainty);
        }
        let u = scatter.u.hypot(known.mm());
        let share = (scatter.u / u).powi(2);
        Ok(Self {
            read,
            u: Length::millimetres(u),
            scatter: Length::millimetres(scatter.u),
            spare: scatter.dof,
            dof: scatter.dof.map(|dof| dof / share),
        })
    }

    /// What the readings show, scatter and all.
    pub const fn read(&self) -> Length {
        self.read
    }

    /// Combined standard uncertainty.
    pub const fn u(&self) -> Length {
        self.u
    }

    /// The part of it that the readings' own scatter makes.
    pub const fn scatter(&self) -> Length {
        self.scatter
    }

    /// Degrees of freedom of the scatter: the readings beyond what the waves need.
    pub const fn spare(&self) -> Option<f64> {
        self.spare
    }

    /// Effective degrees of freedom; `None` is infinite.
    pub const fn dof(&self) -> Option<f64> {
        self.dof
    }

    /// Whether more readings would make it surer: their scatter is no less than all else.
    pub fn is_mostly_scatter(&self) -> bool {
        self.scatter.mm() * std::f64::consts::SQRT_2 >= self.u.mm()
    }

    /// The runout itself: too high as often as too low, and nothing where scatter alone reads so.
    pub fn estimate(&self) -> Length {
        self.at(0.5)
    }

    /// The two ends of the 95 % interval.
    ///
    /// A length below the usual one of nothing tells no more than that one (power-constrained
    /// limits, Cowan et al. 2011, from memory); no true runout up to `turn`, where such a reading
    /// ends, is ever left out above it, so that all 5 % lie below it there.
    pub fn interval(&self) -> (Length, Length) {
        let turn = self.turn();
        let sure = self.at(1.0 - DOUBT);
        let low = if sure < turn {
            sure
        } else {
            turn.max(self.at(1.0 - TAIL))
        };
        let high = length_at(self.no_less_than_usual(), TAIL, self.dof);
        (low, self.u.times(high))
    }

    /// Whether a true runout lies in the 95 % interval.
    pub fn holds(&self, runout: Length) -> bool {
        let chance = self.at_most(runout);
        let is_low = chance > 1.0 - DOUBT;
        (TAIL..=1.0 - TAIL).contains(&chance) && (!is_low || runout >= self.turn())
    }

    /// Probability that the true runout is at or under a limit.
    pub fn conformance(&self, limit: Length) -> f64 {
        1.0 - self.at_most(limit)
    }

    /// What it says against a limit: proven means with 95 %.
    pub fn against(&self, limit: Length) -> Judged {
        let conformance = self.conformance(limit);
        let result = if conformance >= 1.0 - DOUBT {
            Guarded::ProvenIn
        } else if conformance >= EVEN {
            Guarded::InNotProven
        } else if conformance >= DOUBT {
            Guarded::OutNotProven
        } else {
            Guarded::ProvenOut
        };
        Judged {
            result,
            conformance,
        }
    }

    /// The length that was read in units of its uncertainty.
    fn units(&self) -> f64 {
        self.read.mm() / self.u.mm()
    }

    fn no_less_than_usual(&self) -> f64 {
        self.units().max(usual_of_nothing(self.dof))
    }

    /// The chance that no more is read of this true runout.
    fn at_most(&self, runout: Length) -> f64 {
        let m = runout.mm() / self.u.mm();
        at_most(self.no_less_than_usual(), m, self.dof)
    }

    fn at(&self, chance: f64) -> Length {
        self.u.times(length_at(self.units(), chance, self.dof))
    }

    /// Up to here a true runout is never left out above what was read.
    fn turn(&self) -> Length {
        let usual = usual_of_nothing(self.dof);
        self.u.times(length_at(usual, TAIL, self.dof))
    }
}
