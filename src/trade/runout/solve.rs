//! Least squares with few unknowns, and how well the places determine them.
//!
//! Works on plain numbers, all of one unit, as the room of uncertainty does. The columns of the
//! design are turned against each other until they stand square (one-sided Jacobi rotations), so
//! that the same fifty lines give solution, rank, condition, leverage and covariance; a library
//! of linear algebra would cost the phone more than this whole room.
//!
//! Source: Hestenes 1958, Golub and Van Loan 8.6.3 (from memory); checked against
//! scipy.linalg.lstsq in `tests/reference/03_runout.json`.

use crate::trade::play::uncertainty::count;

/// Columns this square to each other are square; rounding leaves no more.
const SQUARE: f64 = 1e-15;
/// Five columns need about five sweeps.
const MOST_SWEEPS: usize = 30;
/// A column shorter than this share of the longest says nothing.
const NOTHING: f64 = 1e-10;

/// A column after turning: its values at each place, and what it is made of.
struct Column {
    values: Vec<f64>,
    made_of: Vec<f64>,
    length: f64,
}

/// A solved system.
pub(super) struct Solved {
    /// The unknowns.
    pub(super) unknowns: Vec<f64>,
    /// Reading less fit at each place.
    pub(super) residuals: Vec<f64>,
    /// How much of its own fit each reading decides, 0 to 1.
    pub(super) leverage: Vec<f64>,
    /// Largest over smallest singular value: how much a slip can grow.
    pub(super) condition: f64,
    columns: Vec<Column>,
}

/// The places determine fewer unknowns than there are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Deficient {
    /// How many they determine.
    pub(super) rank: usize,
}

/// Solves `columns · unknowns = readings` in the least squares sense.
pub(super) fn solve(columns: Vec<Vec<f64>>, readings: &[f64]) -> Result<Solved, Deficient> {
    let columns = squared(columns);
    let lengths = || columns.iter().map(|column| column.length);
    let longest = lengths().fold(0.0, f64::max);
    let rank = lengths().filter(|one| *one > NOTHING * longest).count();
    if rank < columns.len() {
        return Err(Deficient { rank });
    }
    let mut unknowns = vec![0.0; columns.len()];
    let mut residuals = readings.to_vec();
    let mut leverage = vec![0.0; readings.len()];
    for column in &columns {
        let share = dot(&column.values, readings) / column.length.powi(2);
        for (unknown, part) in unknowns.iter_mut().zip(&column.made_of) {
            *unknown += share * part;
        }
        let places = residuals.iter_mut().zip(&mut leverage);
        for ((residual, lever), value) in places.zip(&column.values) {
            *residual -= share * value;
            *lever += (value / column.length).powi(2);
        }
    }
    Ok(Solved {
        unknowns,
        residuals,
        leverage,
        condition: longest / lengths().fold(longest, f64::min),
        columns,
    })
}

impl Solved {
    /// Root mean square of the residuals over all readings.
    pub(super) fn rms(&self) -> f64 {
        (dot(&self.residuals, &self.residuals) / count(self.residuals.len())).sqrt()
    }

    /// How many readings there are beyond what the unknowns need.
    pub(super) fn spare(&self) -> usize {
        self.residuals.len().saturating_sub(self.unknowns.len())
    }

    /// A root of the unknowns' covariance for readings of standard uncertainty 1, row by row.
    pub(super) fn root(&self) -> Vec<Vec<f64>> {
        let row = |column: &Column| {
            let parts = column.made_of.iter();
            parts.map(|part| part / column.length).collect()
        };
        self.columns.iter().map(row).collect()
    }

    /// Standard uncertainty of the pair of unknowns from `at` on, in its worst direction, for
    /// readings of standard uncertainty 1.
    pub(super) fn worst_of_pair(&self, at: usize) -> f64 {
        let (mut xx, mut yy, mut xy) = (0.0, 0.0, 0.0);
        for column in &self.columns {
            let mut pair = column
                .made_of
                .iter()
                .skip(at)
                .map(|part| part / column.length);
            let (x, y) = (pair.next().unwrap_or(0.0), pair.next().unwrap_or(0.0));
            xx += x * x;
            yy += y * y;
            xy += x * y;
        }
        (f64::midpoint(xx, yy) + ((xx - yy) / 2.0).hypot(xy)).sqrt()
    }
}

/// The columns turned until each stands square on every other.
fn squared(columns: Vec<Vec<f64>>) -> Vec<Column> {
    let unknowns = columns.len();
    let mut columns: Vec<Column> = columns
        .into_iter()
        .enumerate()
        .map(|(own, values)| Column {
            values,
            made_of: (0..unknowns)
                .map(|other| if other == own { 1.0 } else { 0.0 })
                .collect(),
            length: 0.0,
        })
        .collect();
    for _ in 0..MOST_SWEEPS {
        let mut turned = false;
        for second in 1..unknowns {
            let (before, from) = columns.split_at_mut(second);
            let Some(b) = from.first_mut() else { continue };
            for a in before {
                turned |= turn(a, b);
            }
        }
        if !turned {
            break;
        }
    }
    for column in &mut columns {
        column.length = dot(&column.values, &column.values).sqrt();
    }
    columns
}

/// Turns two columns against each other so that they stand square; `false` if they did.
fn turn(a: &mut Column, b: &mut Column) -> bool {
    let (mut aa, mut bb, mut ab) = (0.0, 0.0, 0.0);
    for (a, b) in a.values.iter().zip(&b.values) {
        aa += a * a;
        bb += b * b;
        ab += a * b;
    }
    if ab.abs() <= SQUARE * (aa * bb).sqrt() {
        return false;
    }
    let slope = (bb - aa) / (2.0 * ab);
    let tangent = slope.signum() / (slope.abs() + slope.hypot(1.0));
    let cosine = 1.0 / tangent.hypot(1.0);
    let sine = cosine * tangent;
    let rotate = |a: &mut Vec<f64>, b: &mut Vec<f64>| {
        for (a, b) in a.iter_mut().zip(b) {
            (*a, *b) = (cosine * *a - sine * *b, sine * *a + cosine * *b);
        }
    };
    rotate(&mut a.values, &mut b.values);
    rotate(&mut a.made_of, &mut b.made_of);
    true
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}
