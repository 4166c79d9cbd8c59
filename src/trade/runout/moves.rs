//! How far the needle moves by what is more than scatter: the waves, and a place that stands out.

use super::harmonics::{Fit, Fits, Undetermined, radians};
use super::heights::Heights;
use crate::trade::play::uncertainty::Contribution;
use crate::units::Length;

/// How far, and what the scatter of the readings makes of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moves {
    /// From the lowest to the highest of the waves that count and of the place that stands out.
    pub by: Length,
    /// Standard uncertainty of it in millimetres, with the degrees of freedom of the scatter.
    pub scatter: Contribution,
}

/// Steps in which an end of the curve is looked for before it is closed in on.
pub(super) const STEPS: u16 = 360;
/// Newton's steps to the end of the curve.
pub(super) const CLOSER: u8 = 20;

/// A height, and its factors of mean and waves.
struct End {
    height: f64,
    row: Vec<f64>,
}

/// By the waves that count.
///
/// The wobble alone is taken as it is, since its length is judged by what scatter makes of it; as
/// soon as a warp counts, a wobble that is no more than scatter is left out.
pub(super) fn by_waves(fit: &Fit) -> Moves {
    if fit.second.is_none() {
        let (sin, cos) = fit.first.phase().map_or(0.0, radians).sin_cos();
        let u = fit.u_of(&[0.0, 2.0 * cos, 2.0 * sin]);
        return moves(fit, fit.first.reach().mm(), u);
    }
    let (low, high) = Waves::of(fit).ends();
    let row = minus(&high.row, &low.row);
    moves(fit, high.height - low.height, fit.u_of(&row))
}

/// By the waves of all others and the place that stands out from them.
///
/// # Errors
/// [`Undetermined`] where the others alone tell no wave.
pub(super) fn by_place(heights: &Heights, index: usize) -> Result<Moves, Undetermined> {
    let fit = Fits::of(&heights.without(index))?.best();
    let place = heights
        .places()
        .get(index)
        .map_or(fit.mean, |place| place.1);
    let place = place.minus(fit.mean).mm();
    let (low, high) = Waves::of(&fit).ends();
    let scatter = |end: &[f64], places: f64| (places * fit.of_one.u).hypot(fit.u_of(end));
    let (by, u) = if place > high.height {
        (place - low.height, scatter(&low.row, 1.0))
    } else if place < low.height {
        (high.height - place, scatter(&high.row, 1.0))
    } else {
        let row = minus(&high.row, &low.row);
        (high.height - low.height, scatter(&row, 0.0))
    };
    Ok(moves(&fit, by, u))
}

fn moves(fit: &Fit, by: f64, u: f64) -> Moves {
    Moves {
        by: Length::millimetres(by),
        scatter: Contribution {
            u,
            dof: fit.of_one.dof,
        },
    }
}

/// The waves without the mean: cosine and sine of each, and whether they count.
#[derive(Clone, Copy)]
struct Waves {
    parts: [f64; 4],
    counts: [f64; 4],
}

impl Waves {
    fn of(fit: &Fit) -> Self {
        let part = |nth: usize| fit.unknowns.get(nth).copied().unwrap_or(0.0);
        let first = if fit.wobbles() { 1.0 } else { 0.0 };
        let second = if fit.second.is_some() { 1.0 } else { 0.0 };
        Self {
            parts: [part(1), part(2), part(3), part(4)],
            counts: [first, first, second, second],
        }
    }

    /// The lowest and the highest of the curve.
    fn ends(self) -> (End, End) {
        let parts = self.parts.map(|part| -part);
        let lowest = Self { parts, ..self }.highest();
        let low = End {
            height: -lowest.height,
            row: lowest.row,
        };
        (low, self.highest())
    }

    fn highest(self) -> End {
        let step = core::f64::consts::TAU / f64::from(STEPS);
        let angles = (0..STEPS).map(|nth| f64::from(nth) * step);
        let mut at = angles
            .max_by(|a, b| self.height(*a).total_cmp(&self.height(*b)))
            .unwrap_or(0.0);
        for _ in 0..CLOSER {
            let (sin, cos) = at.sin_cos();
            let (sin2, cos2) = (2.0 * at).sin_cos();
            let slope = self.sum([-sin, cos, -2.0 * sin2, 2.0 * cos2]);
            let bend = self.sum([-cos, -sin, -4.0 * cos2, -4.0 * sin2]);
            let by = slope / bend;
            // Flat, or bent the wrong way: the step that was found is as good.
            if bend >= 0.0 || by.abs() > step || by == 0.0 {
                break;
            }
            at -= by;
        }
        let row = factors(at).into_iter().zip(self.counts);
        let row = row.map(|(factor, counts)| factor * counts);
        End {
            height: self.height(at),
            row: std::iter::once(1.0).chain(row).collect(),
        }
    }

    fn height(self, at: f64) -> f64 {
        self.sum(factors(at))
    }

    fn sum(self, factors: [f64; 4]) -> f64 {
        let parts = self.parts.iter().zip(self.counts).zip(factors);
        parts
            .map(|((part, counts), factor)| part * counts * factor)
            .sum()
    }
}

fn factors(at: f64) -> [f64; 4] {
    let (sin, cos) = at.sin_cos();
    let (sin2, cos2) = (2.0 * at).sin_cos();
    [cos, sin, cos2, sin2]
}

fn minus(a: &[f64], b: &[f64]) -> Vec<f64> {
    a.iter().zip(b).map(|(a, b)| a - b).collect()
}
