//! The waves in a series: once round is a wobble, twice round is a warp, the rest is the rest.

use core::hash::{Hash, Hasher};

use super::arrow::Arrow;
use super::heights::Heights;
use super::rice::longer;
use super::series::Series;
use super::solve::{Deficient, Solved, solve};
use crate::trade::play::uncertainty::{Combined, Contribution, count, resolution};
use crate::units::{Angle, AngleUnit, Length};

/// How many waves are looked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Order {
    /// The wobble alone.
    First,
    /// The wobble and the warp.
    Second,
}

impl Order {
    /// The mean, and two for each wave.
    pub const fn unknowns(self) -> usize {
        match self {
            Self::First => 3,
            Self::Second => 5,
        }
    }

    const fn waves(self) -> u8 {
        match self {
            Self::First => 1,
            Self::Second => 2,
        }
    }
}

/// The waves of a series by least squares.
#[derive(Clone, Debug, PartialEq)]
pub struct Fit {
    /// The needle's middle.
    pub mean: Length,
    /// Once round: high spot at its phase.
    pub first: Arrow,
    /// Twice round: high spots at half its phase and half a turn on.
    pub second: Option<Arrow>,
    /// Root mean square of what the waves do not explain.
    pub rms: Length,
    /// Readings beyond what the waves need; at 0 the fit meets every reading and proves nothing.
    pub spare: usize,
    /// How much a slip of one reading can grow: 1 is best.
    pub condition: f64,
    /// Reading less fit, in the order of the readings that count.
    pub residuals: Vec<Length>,
    /// How much of its own fit each reading decides, from 0 to 1.
    pub(super) leverage: Vec<f64>,
    /// Standard uncertainty of one reading, by what the waves leave.
    pub(super) of_one: Combined,
    /// The unknowns: mean, then cosine and sine of each wave, in millimetres.
    pub(super) unknowns: Vec<f64>,
    /// A root of the unknowns' covariance for readings of standard uncertainty 1, row by row.
    pub(super) root: Vec<Vec<f64>>,
}

/// Why the waves cannot be told from these places.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Undetermined {
    /// The places leave an unknown open: too few, or each opposite another.
    Rank {
        /// How many unknowns they determine.
        rank: usize,
        /// How many there are.
        needed: usize,
    },
    /// The places stand so close together that a slip of one reading would decide everything.
    Bunched {
        /// How much a slip would grow.
        condition: f64,
    },
    /// The wave takes nearly every reading, so that scatter cannot be told from it.
    NoSpare {
        /// How many readings more would leave enough.
        more: usize,
    },
}

impl Hash for Undetermined {
    fn hash<H: Hasher>(&self, state: &mut H) {
        match *self {
            Self::Rank { rank, needed } => (0, rank, needed).hash(state),
            Self::Bunched { condition } => (1, condition.to_bits()).hash(state),
            Self::NoSpare { more } => (2, more).hash(state),
        }
    }
}

/// Beyond this a slip of one division could look like a real wobble (our bound).
pub(super) const MOST_CONDITION: f64 = 30.0;
/// Readings beyond the unknowns that the wobble needs to be told from scatter: with one alone the
/// interval of a fit covers less than it says, and four places do not see half of a warp (both
/// simulated in `tests/runout_coverage.rs`).
pub(super) const SPARE_FOR_WOBBLE: usize = 2;
/// The same for a second wave, which is looked for beside the first (common practice, no source).
pub(super) const SPARE_FOR_WARP: usize = 3;
/// A second wave counts if scatter alone would make it no more often than this.
pub(super) const CHANCE_OF_WARP: f64 = 0.002;
/// And the first if scatter alone would make it no more often than this.
pub(super) const CHANCE_OF_WOBBLE: f64 = 0.05;

/// Mean and waves of a series, as many as are named, also where no reading is to spare.
///
/// `reading(θ) = mean + Σ Aₖ cos(kθ − φₖ)`, by least squares over the readings that count. The
/// uncertainty of a wave is that of one reading carried through the fit in its worst direction:
/// what the waves do not explain, no less than the division leaves (ISO 14253-2, the larger of
/// both, from memory), with the degrees of freedom of the spare readings; without one it is
/// unknown, which is infinite.
///
/// # Errors
/// [`Undetermined`] where the places leave a wave open, or nearly so.
///
/// # Source
/// GUM 5.1 and H.3 for carrying the uncertainty through a fit (from memory); values checked
/// against numpy's FFT and scipy's least squares in `tests/reference/03_runout.json`.
pub fn fit(series: &Series, order: Order) -> Result<Fit, Undetermined> {
    fit_heights(&Heights::from(series), order)
}

pub(super) fn fit_heights(heights: &Heights, order: Order) -> Result<Fit, Undetermined> {
    let saved = heights.places();
    // Taken about the first reading, so that a dial far from zero costs no digits.
    let about = saved.first().map_or(Length::ZERO, |(_, reading)| *reading);
    let readings: Vec<f64> = saved.iter().map(|(_, r)| r.minus(about).mm()).collect();
    let angles: Vec<f64> = saved.iter().map(|(angle, _)| radians(*angle)).collect();
    let needed = order.unknowns();
    let solved = solve(design(&angles, order), &readings)
        .map_err(|Deficient { rank }| Undetermined::Rank { rank, needed })?;
    if solved.condition > MOST_CONDITION {
        let condition = solved.condition;
        return Err(Undetermined::Bunched { condition });
    }
    let size = saved.iter().fold(Length::ZERO, |a, (_, r)| a.max(r.abs()));
    let of_one = of_one_reading(&solved, heights.division());
    let at = |index: usize| {
        let unknown = solved.unknowns.get(index).copied().unwrap_or(0.0);
        Length::millimetres(unknown)
    };
    let wave = |from: usize| {
        let u = Combined {
            u: of_one.u * solved.worst_of_pair(from),
            ..of_one
        };
        Arrow::of_parts(at(from), at(from + 1), size, u)
    };
    Ok(Fit {
        mean: about.plus(at(0)),
        first: wave(1),
        second: (order == Order::Second).then(|| wave(3)),
        rms: Length::millimetres(solved.rms()),
        spare: solved.spare(),
        condition: solved.condition,
        residuals: solved
            .residuals
            .iter()
            .map(|r| Length::millimetres(*r))
            .collect(),
        root: solved.root(),
        leverage: solved.leverage,
        of_one,
        unknowns: solved.unknowns,
    })
}

/// The wobble, and the warp where it is more than scatter.
///
/// A wave that takes every reading fits anything: five readings meet a wobble and a warp, whatever
/// they are. So each wave needs readings to spare, and the warp counts only if it is significant.
///
/// # Errors
/// As [`fit`] for the wobble, and [`Undetermined::NoSpare`].
pub fn best_fit(series: &Series) -> Result<Fit, Undetermined> {
    Ok(Fits::of(&Heights::from(series))?.best())
}

/// The fits that leave readings to spare.
pub(super) struct Fits {
    first: Fit,
    both: Option<Fit>,
}

impl Fits {
    pub(super) fn of(heights: &Heights) -> Result<Self, Undetermined> {
        let first = fit_heights(heights, Order::First)?;
        if first.spare < SPARE_FOR_WOBBLE {
            let more = SPARE_FOR_WOBBLE - first.spare;
            return Err(Undetermined::NoSpare { more });
        }
        let both = fit_heights(heights, Order::Second).ok();
        let both = both.filter(|fit| fit.spare >= SPARE_FOR_WARP);
        Ok(Self { first, both })
    }

    /// The fit with so many readings to spare at least, that of both waves before the other.
    pub(super) fn sparing(&self, spare: usize) -> Option<&Fit> {
        let mut fits = self.both.iter().chain([&self.first]);
        fits.find(|fit| fit.spare >= spare)
    }

    pub(super) fn best(self) -> Fit {
        let both = self.both.filter(|fit| fit.chance(3) <= CHANCE_OF_WARP);
        both.unwrap_or(self.first)
    }
}

impl Fit {
    /// Where the fit stands at an angle.
    pub fn at(&self, angle: Angle) -> Length {
        let wave = |arrow: &Arrow, waves: f64| {
            let phase = arrow.phase().map_or(0.0, radians);
            arrow
                .amplitude()
                .times((waves * radians(angle) - phase).cos())
        };
        let warp = self.second.map_or(Length::ZERO, |warp| wave(&warp, 2.0));
        self.mean.plus(wave(&self.first, 1.0)).plus(warp)
    }

    /// How far the needle would still move with the wobble gone: the warp, where it counts.
    pub fn without_wobble(&self) -> Length {
        self.second.map_or(Length::ZERO, |warp| warp.reach())
    }

    /// Whether the wobble is more than scatter.
    pub fn wobbles(&self) -> bool {
        self.chance(1) <= CHANCE_OF_WOBBLE
    }

    /// Standard uncertainty in millimetres of a sum of the unknowns with these factors.
    pub(super) fn u_of(&self, factors: &[f64]) -> f64 {
        let of = |row: &Vec<f64>| row.iter().zip(factors).map(|(a, b)| a * b).sum::<f64>();
        let squares: f64 = self.root.iter().map(|row| of(row).powi(2)).sum();
        self.of_one.u * squares.sqrt()
    }

    /// How often scatter alone makes the wave of the unknowns from `at` on as high as this one:
    /// the tail of F with two degrees of freedom and those of the scatter (GUM H.3, from memory).
    fn chance(&self, at: usize) -> f64 {
        let part = |nth: usize| self.unknowns.get(at + nth).copied().unwrap_or(0.0);
        let (x, y) = (part(0), part(1));
        let sum = |one: usize, other: usize| {
            let of = |row: &Vec<f64>| Some(row.get(at + one)? * row.get(at + other)?);
            self.root.iter().filter_map(of).sum::<f64>()
        };
        let (xx, xy, yy) = (sum(0, 0), sum(0, 1), sum(1, 1));
        let form = (yy * x * x - 2.0 * xy * x * y + xx * y * y) / (xx * yy - xy * xy);
        let square = form / self.of_one.u.powi(2);
        longer(square, self.of_one.dof)
    }
}

/// The columns: 1, then cosine and sine of each wave.
fn design(angles: &[f64], order: Order) -> Vec<Vec<f64>> {
    let mut columns = vec![vec![1.0; angles.len()]];
    for wave in 1..=order.waves() {
        let turned = || angles.iter().map(|angle| angle * f64::from(wave));
        columns.push(turned().map(f64::cos).collect());
        columns.push(turned().map(f64::sin).collect());
    }
    columns
}

/// Standard uncertainty of one reading.
fn of_one_reading(solved: &Solved, division: Length) -> Combined {
    let spare = count(solved.spare());
    if solved.spare() == 0 {
        return Contribution {
            u: f64::INFINITY,
            dof: None,
        };
    }
    let s = solved.rms() * (count(solved.residuals.len()) / spare).sqrt();
    Contribution {
        u: s.max(resolution(division.mm())),
        dof: Some(spare),
    }
}

pub(super) fn radians(angle: Angle) -> f64 {
    angle.in_unit(AngleUnit::Degree).to_radians()
}
