//! The length of an arrow with an error that points anywhere: what is read is too long on average.
//!
//! Works on plain numbers, as the room of uncertainty does. An arrow of true length `m` is read
//! with an error in the plane; `x` is the length that was read. Both are in units of the standard
//! uncertainty of one part of the arrow, which has `dof` degrees of freedom (`None`: known).
//!
//! With a known uncertainty `x` has Rice's distribution (Rice 1945). With one that is estimated,
//! the error has a t distribution in the plane, whose distances exceed `ρ` with the chance
//! `(1 + ρ²/ν)^(−ν/2)`, the tail of F with 2 and ν degrees of freedom.
//!
//! Source: Rice 1945, JCGM 101:2008 6.4.9 for the t distribution of an estimate (from memory);
//! checked against scipy's noncentral chi-square in `tests/reference/17_reach.json`, and against
//! simulated readings in `tests/runout_coverage.rs`.

use core::f64::consts::PI;

/// The chance that an error is longer than the root of `square`.
pub(super) fn longer(square: f64, dof: Option<f64>) -> f64 {
    match dof {
        Some(dof) => (-0.5 * dof * (square / dof).ln_1p()).exp(),
        None => (-0.5 * square).exp(),
    }
}

/// The chance that a length of at most `x` is read of an arrow of true length `m`.
///
/// The mean of the error's distribution over the circle of radius `x`, seen from the tip of the
/// arrow: `1/π ∫ (1 − S(v)) (x² − x m cos φ)/v dφ` from 0 to π, with `v = x² + m² − 2 x m cos φ`
/// and `S` as in [`longer`]. The integrand is smooth and has a period, so that the midpoint rule
/// ends in rounding.
pub(super) fn at_most(x: f64, m: f64, dof: Option<f64>) -> f64 {
    if m <= 0.0 {
        return 1.0 - longer(x * x, dof);
    }
    let steep = dof.map_or(STEEP, |dof| (16.0 / dof.sqrt()).max(STEEP));
    let nodes = (16.0 + steep * x.max(m)).min(MOST_NODES).ceil();
    let step = PI / nodes;
    let (mut sum, mut angle) = (0.0, 0.5 * step);
    while angle < PI {
        let along = x * m * angle.cos();
        let square = m
            .mul_add(m, x.mul_add(x, -2.0 * along))
            .max(f64::MIN_POSITIVE);
        sum += (1.0 - longer(square, dof)) / square * (x * x - along);
        angle += step;
    }
    (sum / nodes).clamp(0.0, 1.0)
}

/// So many places on the circle for each unit of its radius leave rounding alone; a few degrees of
/// freedom need more.
const STEEP: f64 = 5.5;
/// Enough for an arrow of 350 times its uncertainty; a longer one is off by less than is printed.
const MOST_NODES: f64 = 4000.0;

/// The true length for which a length of at most `x` is read with the chance `p`; nothing where
/// even an arrow of no length is read longer more often.
pub(super) fn length_at(x: f64, p: f64, dof: Option<f64>) -> f64 {
    let over = |m: f64| at_most(x, m, dof) - p;
    let (mut low, mut at_low) = (0.0, over(0.0));
    if at_low <= LAST_BITS {
        return 0.0;
    }
    let (mut high, mut step) = (x + 1.0, 1.0);
    let mut at_high = over(high);
    while at_high > 0.0 && step < FARTHEST {
        (low, at_low) = (high, at_high);
        step *= 2.0;
        high += step;
        at_high = over(high);
    }
    between((low, at_low), (high, at_high), over)
}

/// A chance that differs by no more than this is the same: a length near nothing is the root of it.
const LAST_BITS: f64 = 1e-9;
/// Far beyond what a t of two degrees of freedom needs.
const FARTHEST: f64 = 1e6;
/// The rule below needs about ten.
const MOST_STEPS: usize = 200;

/// The root between two ends of unlike sign, by the false position with the Illinois rule.
fn between(mut a: (f64, f64), mut b: (f64, f64), of: impl Fn(f64) -> f64) -> f64 {
    for _ in 0..MOST_STEPS {
        let at = b.0 - b.1 * (b.0 - a.0) / (b.1 - a.1);
        if !at.is_finite() || (at - b.0).abs() <= 1e-13 * b.0.abs() {
            break;
        }
        let next = (at, of(at));
        if next.1 == 0.0 {
            return at;
        }
        if (next.1 < 0.0) == (b.1 < 0.0) {
            a.1 *= 0.5;
        } else {
            a = b;
        }
        b = next;
    }
    b.0
}

/// The length that is read of no arrow at all with the chance one half.
pub(super) fn usual_of_nothing(dof: Option<f64>) -> f64 {
    let square = match dof {
        Some(dof) => dof * (core::f64::consts::LN_2 * 2.0 / dof).exp_m1(),
        None => 2.0 * core::f64::consts::LN_2,
    };
    square.sqrt()
}
