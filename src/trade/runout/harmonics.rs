//! The waves in a series: once round is a wobble, twice round is a warp, the rest is the rest.

use super::arrow::Arrow;
use super::series::Series;
use super::solve::{Deficient, Solved, solve};
use crate::trade::play::budget::REPEAT_FLOOR;
use crate::trade::play::uncertainty::{Combined, Contribution, combine, count, resolution};
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
}

/// Beyond this a slip of one division could look like a real wobble (our bound).
const MOST_CONDITION: f64 = 30.0;

/// Mean and waves of a series.
///
/// `reading(θ) = mean + Σ Aₖ cos(kθ − φₖ)`, by least squares over the readings that count. The
/// uncertainty of a wave is that of one reading carried through the fit in its worst direction:
/// what the waves do not explain with its degrees of freedom, no less than a hand repeats, and
/// the division of the dial.
///
/// # Errors
/// [`Undetermined`] where the places leave a wave open, or nearly so.
///
/// # Source
/// GUM 5.1 and H.3 for carrying the uncertainty through a fit (from memory); values checked
/// against numpy's FFT and scipy's least squares in `tests/reference/03_runout.json`.
pub fn fit(series: &Series, order: Order) -> Result<Fit, Undetermined> {
    let kept: Vec<_> = series.kept().collect();
    // Taken about the first reading, so that a dial far from zero costs no digits.
    let about = kept.first().map_or(Length::ZERO, |(_, reading)| *reading);
    let readings: Vec<f64> = kept.iter().map(|(_, r)| r.minus(about).mm()).collect();
    let angles: Vec<f64> = kept.iter().map(|(angle, _)| radians(*angle)).collect();
    let needed = order.unknowns();
    let solved = solve(design(&angles, order), &readings)
        .map_err(|Deficient { rank }| Undetermined::Rank { rank, needed })?;
    if solved.condition > MOST_CONDITION {
        let condition = solved.condition;
        return Err(Undetermined::Bunched { condition });
    }
    let size = kept.iter().fold(Length::ZERO, |a, (_, r)| a.max(r.abs()));
    let one = of_one_reading(&solved, series.dial().graduation());
    let at = |index: usize| {
        let unknown = solved.unknowns.get(index).copied().unwrap_or(0.0);
        Length::millimetres(unknown)
    };
    let wave = |from: usize| {
        let u = Combined {
            u: one.u * solved.worst_of_pair(from),
            ..one
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
        leverage: solved.leverage,
    })
}

/// Both waves if the places determine them, else the wobble alone.
///
/// # Errors
/// As [`fit`] for the wobble.
pub fn best_fit(series: &Series) -> Result<Fit, Undetermined> {
    fit(series, Order::Second).or_else(|_| fit(series, Order::First))
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

    /// How far the needle would still move with the wobble gone.
    pub fn without_wobble(&self) -> Length {
        let highest = self.residuals.iter().copied().reduce(Length::max);
        let lowest = self.residuals.iter().copied().reduce(Length::min);
        let spread = match (highest, lowest) {
            (Some(highest), Some(lowest)) => highest.minus(lowest),
            _ => Length::ZERO,
        };
        self.second.map_or(spread, |warp| spread.plus(warp.reach()))
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
fn of_one_reading(solved: &Solved, graduation: Length) -> Combined {
    let readings = count(solved.residuals.len());
    let spare = count(solved.spare());
    let s = solved.rms() * (readings / spare.max(1.0)).sqrt();
    let scatter = if solved.spare() > 0 && s > REPEAT_FLOOR.mm() {
        Contribution {
            u: s,
            dof: Some(spare),
        }
    } else {
        Contribution {
            u: REPEAT_FLOOR.mm(),
            dof: None,
        }
    };
    let division = Contribution {
        u: resolution(graduation.mm()),
        dof: None,
    };
    combine(&[scatter, division])
}

fn radians(angle: Angle) -> f64 {
    angle.in_unit(AngleUnit::Degree).to_radians()
}
