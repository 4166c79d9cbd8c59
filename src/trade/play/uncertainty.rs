//! The arithmetic of uncertainty: type A, type B, combining, coverage, conformity.
//!
//! A statistic has the unit of what it is taken of, so this room alone works on plain numbers,
//! all of one unit; its callers turn them into lengths. Quantiles come from `statrs`.
//!
//! Source: JCGM 100:2008 (GUM), JCGM 106:2012, ISO 14253-1:2017; `tests/reference/SOURCES.md`
//! says how each was seen.

use crate::words;
use statrs::distribution::{Continuous, ContinuousCDF, Normal, StudentsT};

/// What a series of readings of one thing says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TypeA {
    /// How many readings.
    pub n: usize,
    /// Arithmetic mean.
    pub mean: f64,
    /// Standard deviation of one reading, with n − 1.
    pub s: f64,
    /// Standard uncertainty of the mean, s / √n.
    pub u: f64,
}

/// Why a series gives no type A uncertainty.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SeriesError {
    /// A scatter needs two readings at least.
    TooFew {
        /// How many there were.
        n: usize,
    },
    /// A reading is not a finite number.
    NotFinite {
        /// Which one, from 0.
        index: usize,
    },
}

/// One contribution to a combined uncertainty.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Contribution {
    /// Standard uncertainty times its sensitivity; its sign does not count.
    pub u: f64,
    /// Degrees of freedom; `None` for a value taken as known (infinite).
    pub dof: Option<f64>,
}

/// A combined standard uncertainty with its effective degrees of freedom.
pub type Combined = Contribution;

/// Mean, standard deviation and standard uncertainty of a series.
///
/// # Errors
/// [`SeriesError`] for fewer than two readings or one that is no number.
///
/// # Source
/// GUM 4.2.
pub fn type_a(readings: &[f64]) -> Result<TypeA, SeriesError> {
    if let Some(index) = readings.iter().position(|r| !r.is_finite()) {
        return Err(SeriesError::NotFinite { index });
    }
    let n = readings.len();
    let count = count(n);
    if n < 2 {
        return Err(SeriesError::TooFew { n });
    }
    // Taken about the first reading, so that a large common part costs no digits.
    let first = readings.first().copied().unwrap_or(0.0);
    let offset = readings.iter().map(|r| r - first).sum::<f64>() / count;
    let squares: f64 = readings.iter().map(|r| (r - first - offset).powi(2)).sum();
    let s = (squares / (count - 1.0)).sqrt();
    Ok(TypeA {
        n,
        mean: first + offset,
        s,
        u: s / count.sqrt(),
    })
}

/// Standard uncertainty of something anywhere within ± `half_width`: half width / √3 (GUM 4.4.5).
pub fn rectangle(half_width: f64) -> f64 {
    half_width.abs() / 3_f64.sqrt()
}

/// Standard uncertainty of a triangle of ± `half_width`: half width / √6 (GUM 4.4.6).
pub fn triangle(half_width: f64) -> f64 {
    half_width.abs() / 6_f64.sqrt()
}

/// Standard uncertainty of something that swings with `amplitude`: amplitude / √2 (GUM H.1.3.4).
///
/// ```
/// use hubslate::trade::play::uncertainty::{arcsine, rectangle, triangle};
///
///
/// // GUM 4.4.5, 4.4.6 and H.1.3.4: the squares are a third, a sixth and a half.
/// let squares = [rectangle(1.0), triangle(1.0), arcsine(1.0)].map(|u| u * u);
/// assert!(squares.iter().zip([3.0, 6.0, 2.0]).all(|(u2, n)| (u2 * n - 1.0).abs() < 1e-12));
/// ```
pub fn arcsine(amplitude: f64) -> f64 {
    amplitude.abs() / 2_f64.sqrt()
}

/// Standard uncertainty of reading in steps of `step`: a rectangle of ± half a step (GUM F.2.2.1).
pub fn resolution(step: f64) -> f64 {
    rectangle(step / 2.0)
}

/// Root sum of squares, with effective degrees of freedom by Welch–Satterthwaite.
///
/// `ν = u⁴ / Σ (uᵢ⁴ / νᵢ)`, unrounded; `None` (infinite) if no contribution with degrees of
/// freedom has any weight.
///
/// # Source
/// GUM 5.1.2 and G.4.1.
pub fn combine(contributions: &[Contribution]) -> Combined {
    let u = contributions.iter().map(|c| c.u * c.u).sum::<f64>().sqrt();
    // Shares of u, so that the fourth power of a micrometre does not underflow.
    let weight: f64 = contributions
        .iter()
        .filter_map(|c| c.dof.map(|dof| (c.u / u).powi(4) / dof))
        .filter(|w| w.is_finite())
        .sum();
    let dof = (weight > 0.0).then(|| 1.0 / weight);
    Combined { u, dof }
}

/// Factor for a two-sided interval that holds with probability `p`; `dof` as in [`Contribution`].
///
/// # Source
/// GUM Table G.2.
///
/// ```
/// use hubslate::trade::play::uncertainty::t_two_sided;
///
/// // GUM Table G.2: 4 degrees of freedom, 95 %.
/// assert!((t_two_sided(0.95, Some(4.0)) - 2.78).abs() < 0.005);
/// ```
pub fn t_two_sided(p: f64, dof: Option<f64>) -> f64 {
    t_one_sided(f64::midpoint(1.0, p), dof)
}

/// Factor for a one-sided bound that holds with probability `p`: 1.645 for 0.95 and infinite
/// degrees of freedom.
///
/// The library's own inverse of the t distribution loses digits as the degrees of freedom grow,
/// is wrong at ten million and does not end beyond, so its distribution function is inverted here.
pub fn t_one_sided(p: f64, dof: Option<f64>) -> f64 {
    let normal = Normal::standard().inverse_cdf(p);
    let known = dof.filter(|dof| *dof < NEARLY_NORMAL);
    match known.and_then(|dof| StudentsT::new(0.0, 1.0, dof).ok()) {
        Some(t) if p > 0.5 => inverted(&t, p, normal),
        Some(t) if p < 0.5 => -inverted(&t, 1.0 - p, -normal),
        _ => normal,
    }
}

/// Beyond this the t factor is the normal one to seven digits.
const NEARLY_NORMAL: f64 = 1e7;
/// A heavy tail needs about twenty steps.
const MOST_STEPS: usize = 100;

/// Newton's steps from `start` below the root, for `p` above one half. The distribution bends
/// down there, so that no step passes the root and each comes nearer.
fn inverted(t: &StudentsT, p: f64, start: f64) -> f64 {
    let mut x = start;
    for _ in 0..MOST_STEPS {
        let step = (p - t.cdf(x)) / t.pdf(x);
        // Not above zero: as near as the distribution is computed; or no number: stay.
        if step.is_nan() || step <= x.abs() * f64::EPSILON {
            break;
        }
        x += step;
    }
    x
}

/// Probability that the true value is at most `upper`, the reading `y` with uncertainty `u`.
///
/// # Source
/// JCGM 106:2012 7.3, normal distribution.
pub fn conforms_below(y: f64, u: f64, upper: f64) -> f64 {
    if u > 0.0 {
        Normal::standard().cdf((upper - y) / u)
    } else if y <= upper {
        1.0
    } else {
        0.0
    }
}

/// The same with few degrees of freedom: Student's t in the place of the normal distribution.
///
/// It is 0.95 just where [`guarded`] with the factor of [`t_one_sided`] begins to prove, since both
/// come from one distribution.
///
/// # Source
/// GUM G.3 for the distribution.
pub fn conforms_below_with(y: f64, u: f64, upper: f64, dof: Option<f64>) -> f64 {
    let known = dof.filter(|dof| *dof < NEARLY_NORMAL && u > 0.0);
    match known.and_then(|dof| StudentsT::new(0.0, 1.0, dof).ok()) {
        Some(t) => t.cdf((upper - y) / u),
        None => conforms_below(y, u, upper),
    }
}

/// Probability that the true value is at least `lower`.
pub fn conforms_above(y: f64, u: f64, lower: f64) -> f64 {
    conforms_below(-y, u, -lower)
}

/// Probability that the true value is between `lower` and `upper` (JCGM 106:2012 7.4).
pub fn conforms_between(y: f64, u: f64, lower: f64, upper: f64) -> f64 {
    (conforms_below(y, u, upper) - conforms_below(y, u, lower)).max(0.0)
}

words! {
    /// What a reading proves against an upper limit.
    pub enum Guarded {
        /// `y <= limit − g·u`: proven within.
        ProvenIn = "proven_in",
        /// At or under the limit, by less than `g·u`.
        InNotProven = "in_not_proven",
        /// Over the limit, by no more than `g·u`.
        OutNotProven = "out_not_proven",
        /// `y > limit + g·u`: proven over.
        ProvenOut = "proven_out",
    }
}

/// Compares `y` with an upper limit, the guard band `g·u` against whoever claims proof.
///
/// # Source
/// ISO 14253-1:2017 for the rule; JCGM 106:2012 8.3 for the guard band.
pub fn guarded(y: f64, u: f64, upper: f64, g: f64) -> Guarded {
    let band = g * u;
    if y <= upper - band {
        Guarded::ProvenIn
    } else if y <= upper {
        Guarded::InNotProven
    } else if y <= upper + band {
        Guarded::OutNotProven
    } else {
        Guarded::ProvenOut
    }
}

/// A count as a number; a series here has at most some dozens.
pub(crate) fn count(n: usize) -> f64 {
    u32::try_from(n).map_or(f64::MAX, f64::from)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_reading_has_no_scatter_and_nan_is_named() {
        assert_eq!(type_a(&[1.0]), Err(SeriesError::TooFew { n: 1 }));
        assert_eq!(type_a(&[]), Err(SeriesError::TooFew { n: 0 }));
        assert_eq!(
            type_a(&[1.0, f64::NAN]),
            Err(SeriesError::NotFinite { index: 1 })
        );
    }

    #[test]
    fn known_contributions_alone_have_infinite_freedom() {
        let known = Contribution {
            u: 0.003,
            dof: None,
        };
        assert_eq!(combine(&[known, known]).dof, None);
        assert_eq!(combine(&[]).u, 0.0);
        let silent = Contribution {
            u: 0.0,
            dof: Some(2.0),
        };
        assert_eq!(combine(&[known, silent]).dof, None);
    }

    #[test]
    fn the_chance_of_conforming_is_that_of_the_guard_band() {
        for dof in [None, Some(1.0), Some(2.0), Some(7.3), Some(200.0)] {
            let (u, g) = (0.4, t_one_sided(0.95, dof));
            let at = |y| conforms_below_with(y, u, 10.0, dof);
            assert!((at(10.0 - g * u) - 0.95).abs() < 1e-9, "{dof:?}");
            assert!((at(10.0 + g * u) - 0.05).abs() < 1e-9, "{dof:?}");
            assert!((at(10.0) - 0.5).abs() < 1e-12);
        }
    }

    // The library's own inverse gives 1.39 at ten million degrees of freedom and no end at 1e8.
    #[test]
    fn the_factor_of_any_freedom_is_found_and_falls_to_the_normal_one() {
        let mut before = f64::INFINITY;
        for dof in [1.0, 1.7, 20.0, 1e3, 1e4, 1e5, 1e6, 9.9e6, 1e8, 1e15] {
            let factor = t_one_sided(0.95, Some(dof));
            assert!(1.644_85 < factor && factor <= before, "{dof}: {factor}");
            before = factor;
        }
        assert!((t_one_sided(0.05, Some(2.0)) + t_one_sided(0.95, Some(2.0))).abs() < 1e-12);
        assert_eq!(t_one_sided(0.95, Some(f64::NAN)), t_one_sided(0.95, None));
    }

    #[test]
    fn the_guard_band_is_closed_below_and_open_above() {
        let rule = |y| guarded(y, 1.0, 10.0, 2.0);
        assert_eq!(rule(8.0), Guarded::ProvenIn);
        assert_eq!(rule(8.1), Guarded::InNotProven);
        assert_eq!(rule(10.0), Guarded::InNotProven);
        assert_eq!(rule(10.1), Guarded::OutNotProven);
        assert_eq!(rule(12.0), Guarded::OutNotProven);
        assert_eq!(rule(12.1), Guarded::ProvenOut);
    }
}
