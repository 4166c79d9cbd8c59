//! The risk of a wrong decision over many parts: what a limit, a gauge and a rule cost.
//!
//! Plain numbers of one unit, as in [`super::uncertainty`]. Source: JCGM 106:2012 9.5.

use statrs::distribution::{Continuous, ContinuousCDF, Normal};

/// A production of parts, its tolerance, and how they are judged.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Inspection {
    /// Mean of the true values.
    pub mean: f64,
    /// Standard deviation of the true values; above zero.
    pub sd: f64,
    /// Standard uncertainty of one reading; above zero.
    pub u: f64,
    /// Lower and upper end of the tolerance.
    pub tolerance: (f64, f64),
    /// Lower and upper end of what is accepted when read.
    pub accepted: (f64, f64),
}

/// Beyond nine deviations a normal density is nothing to ten digits.
const FAR: f64 = 9.0;
/// Slices of the integral; even, for Simpson's rule.
const SLICES: u32 = 2000;

impl Inspection {
    /// Probability that a part is outside the tolerance and accepted.
    pub fn consumer_risk(&self) -> f64 {
        let (low, high) = self.tolerance;
        self.integral(self.mean - FAR * self.sd, low, |x| self.accepts(x))
            + self.integral(high, self.mean + FAR * self.sd, |x| self.accepts(x))
    }

    /// Probability that a part is inside the tolerance and refused.
    pub fn producer_risk(&self) -> f64 {
        let (low, high) = self.tolerance;
        self.integral(low, high, |x| 1.0 - self.accepts(x))
    }

    /// Probability that a part whose true value is `x` is accepted.
    fn accepts(&self, x: f64) -> f64 {
        let (low, high) = self.accepted;
        let normal = Normal::standard();
        normal.cdf((high - x) / self.u) - normal.cdf((low - x) / self.u)
    }

    /// Simpson's rule over the density of true values times `share`.
    fn integral(&self, from: f64, to: f64, share: impl Fn(f64) -> f64) -> f64 {
        if to <= from {
            return 0.0;
        }
        let width = (to - from) / f64::from(SLICES);
        let sum: f64 = (0..=SLICES)
            .map(|i| {
                let x = from + f64::from(i) * width;
                let density = Normal::standard().pdf((x - self.mean) / self.sd) / self.sd;
                simpson_weight(i) * density * share(x)
            })
            .sum();
        sum * width / 3.0
    }
}

fn simpson_weight(i: u32) -> f64 {
    match i {
        0 | SLICES => 1.0,
        i if i % 2 == 1 => 4.0,
        _ => 2.0,
    }
}
