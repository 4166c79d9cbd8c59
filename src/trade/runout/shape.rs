//! Which shape the readings have: a wobble, a warp, one place that stands out, or none of them.

use super::harmonics::{Fit, Fits, Undetermined};
use super::heights::Heights;
use super::moves::{Moves, by_place, by_waves};
use super::series::Series;
use crate::trade::play::uncertainty::{count, resolution, t_two_sided};
use crate::units::{Angle, AngleUnit, Length};
use crate::words;

words! {
    /// What the readings look like.
    pub enum Form {
        /// Nothing moves more than a division: as true as this dial can show.
        True = "true",
        /// High on one side, low on the other: the face stands askew.
        Wobble = "wobble",
        /// High twice a turn: the part itself is bent.
        Warp = "warp",
        /// One place stands above the rest: dirt or a burr.
        Bump = "bump",
        /// One place lies below the rest: a stud hole or a pit.
        Hollow = "hollow",
        /// No one shape carries it: rust all round, or a tip that slips.
        Uneven = "uneven",
    }
}

/// The shape of a series with the fit it was told from.
#[derive(Clone, Debug, PartialEq)]
pub struct Shape {
    /// Which one.
    pub form: Form,
    /// The waves.
    pub fit: Fit,
    /// Where it is highest, if it can be said: the wobble's high spot, one of the warp's two, or
    /// the place that stands out.
    pub high_spot: Option<Angle>,
    /// How far the one place stands out; nothing for other shapes.
    pub stands_out: Option<Length>,
    /// How far the needle moves by what is more than scatter.
    pub moves: Moves,
}

/// One reading against all others.
struct Outlier {
    index: usize,
    angle: Angle,
    by: Length,
}

/// The shape of a series.
///
/// One place stands out if it lies further from the fit of all others than their scatter allows
/// with 99 %, however often one looks, and carries a third of the runout. Else that wave is the
/// shape which is more than scatter and has more than half of the readings' energy, `A²` against
/// `A₁² + A₂² + 2 rms²`.
///
/// # Errors
/// [`Undetermined`] as the fit of the wobble.
///
/// # Source
/// Externally studentized residual with Bonferroni's bound (Cook and Weisberg, from memory); the
/// shares of a third and a half are ours, common practice, no source.
pub fn shape(series: &Series) -> Result<Shape, Undetermined> {
    shape_of(&Heights::from(series))
}

pub(super) fn shape_of(heights: &Heights) -> Result<Shape, Undetermined> {
    let fits = Fits::of(heights)?;
    let range = heights.range();
    // The last bits of a product are no movement.
    let is_true = range.mm() <= heights.division().mm() * (1.0 + 1e-9);
    let outlier = if is_true {
        None
    } else {
        outlier(heights, &fits, range)
    };
    let fit = fits.best();
    if let Some(outlier) = outlier {
        let bump = outlier.by > Length::ZERO;
        return Ok(Shape {
            form: if bump { Form::Bump } else { Form::Hollow },
            high_spot: bump.then_some(outlier.angle),
            stands_out: Some(outlier.by.abs()),
            moves: by_place(heights, outlier.index)?,
            fit,
        });
    }
    let (form, high_spot) = if is_true {
        (Form::True, None)
    } else {
        carried(&fit, heights)
    };
    Ok(Shape {
        form,
        high_spot,
        stands_out: None,
        moves: by_waves(&fit),
        fit,
    })
}

/// The wave that carries the readings, and where it is high.
fn carried(fit: &Fit, heights: &Heights) -> (Form, Option<Angle>) {
    let energy = |height: Length| height.mm().powi(2);
    let wobble = energy(fit.first.amplitude());
    let warp = fit.second.map_or(0.0, |second| energy(second.amplitude()));
    let half = (wobble + warp + 2.0 * energy(fit.rms)) * SHARE_OF_ENERGY;
    if wobble > half && fit.wobbles() {
        (Form::Wobble, fit.first.phase())
    } else if warp > half {
        let phase = fit.second.and_then(|second| second.phase());
        (Form::Warp, phase.map(|phase| phase.times(0.5)))
    } else {
        // Where nothing is more than scatter, the highest reading is scatter too.
        let is_more = fit.wobbles() || fit.second.is_some();
        (Form::Uneven, is_more.then(|| highest(heights)).flatten())
    }
}

/// A place stands out if the scatter of the others would leave it so no more often than this.
pub(super) const CHANCE: f64 = 0.002;

/// A reading that decides more of its own fit than this cannot be doubted.
pub(super) const LARGEST_LEVERAGE: f64 = 0.999;
/// One place stands out only if the total reading is no more than so many times as far.
pub(super) const LARGEST_RANGE: f64 = 3.0;
/// A wave is the shape only if it has more than this share of the readings' energy.
pub(super) const SHARE_OF_ENERGY: f64 = 0.5;

/// The place that cannot belong to the waves of all others, if there is one.
fn outlier(heights: &Heights, fits: &Fits, range: Length) -> Option<Outlier> {
    // Two readings must be to spare beside the one that is doubted.
    let fit = fits.sparing(3)?;
    let squares: f64 = fit.residuals.iter().map(|r| r.mm().powi(2)).sum();
    let spare = count(fit.spare) - 1.0;
    let division = resolution(heights.division().mm());
    // What a reading is off the fit of all others: e / (1 − h).
    let doubted = fit.residuals.iter().zip(&fit.leverage).enumerate();
    let (by, seat, index) = doubted
        .filter(|(_, (_, lever))| **lever < LARGEST_LEVERAGE)
        .map(|(index, (residual, lever))| (residual.mm() / (1.0 - lever), 1.0 - lever, index))
        .max_by(|a, b| (a.0.powi(2) * a.1).total_cmp(&(b.0.powi(2) * b.1)))?;
    if by.abs() * LARGEST_RANGE < range.mm() {
        return None;
    }
    let others = ((squares - by.powi(2) * seat).max(0.0) / spare).sqrt();
    let chance = 1.0 - CHANCE / count(fit.residuals.len());
    let off = by.abs() * seat.sqrt();
    // Others that agree are still only read to the division. A t is never below the normal factor,
    // which is found at once.
    if off <= t_two_sided(chance, None) * others.max(division) {
        return None;
    }
    (off > t_two_sided(chance, Some(spare)) * others).then_some(Outlier {
        index,
        angle: heights.places().get(index)?.0,
        by: Length::millimetres(by),
    })
}

/// The angle of the highest reading.
fn highest(heights: &Heights) -> Option<Angle> {
    let places = heights.places().iter();
    let highest = places.reduce(|a, b| if b.1 > a.1 { b } else { a })?;
    let degrees = highest.0.in_unit(AngleUnit::Degree).rem_euclid(360.0);
    Angle::new(degrees, AngleUnit::Degree).ok()
}
