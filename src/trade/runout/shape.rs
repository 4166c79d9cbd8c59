//! Which shape the readings have: a wobble, a warp, one place that stands out, or none of them.

use super::harmonics::{Fit, Order, Undetermined, best_fit, fit};
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
}

/// One reading against all others.
struct Outlier {
    angle: Angle,
    by: Length,
}

/// The shape of a series.
///
/// One place stands out if it lies further from the fit of all others than their scatter allows
/// with 95 %, however often one looks, and carries a third of the run-out. Else that wave is the
/// shape which has more than half of the readings' energy, `A²` against `A₁² + A₂² + 2 rms²`.
///
/// # Errors
/// [`Undetermined`] as the fit of the wobble.
///
/// # Source
/// Externally studentized residual with Bonferroni's bound (Cook and Weisberg, from memory); the
/// shares of a third and a half are ours, common practice, no source.
pub fn shape(series: &Series) -> Result<Shape, Undetermined> {
    let fit = best_fit(series)?;
    let tir = series.tir();
    let of = |form, fit: Fit, high_spot| Shape {
        form,
        fit,
        high_spot,
        stands_out: None,
    };
    // The last bits of a product are no movement.
    if tir.mm() <= series.dial().graduation().mm() * (1.0 + 1e-9) {
        return Ok(of(Form::True, fit, None));
    }
    if let Some(outlier) = outlier(series, tir) {
        let bump = outlier.by > Length::ZERO;
        return Ok(Shape {
            form: if bump { Form::Bump } else { Form::Hollow },
            high_spot: bump.then_some(outlier.angle),
            stands_out: Some(outlier.by.abs()),
            fit,
        });
    }
    let energy = |height: Length| height.mm().powi(2);
    let wobble = energy(fit.first.amplitude());
    let warp = fit.second.map_or(0.0, |second| energy(second.amplitude()));
    let half = (wobble + warp + 2.0 * energy(fit.rms)) / 2.0;
    let (form, high_spot) = if wobble > half {
        (Form::Wobble, fit.first.phase())
    } else if warp > half {
        let phase = fit.second.and_then(|second| second.phase());
        (Form::Warp, phase.map(|phase| phase.times(0.5)))
    } else {
        (Form::Uneven, highest(series))
    };
    Ok(of(form, fit, high_spot))
}

/// The place that cannot belong to the waves of all others, if there is one.
fn outlier(series: &Series, tir: Length) -> Option<Outlier> {
    // Two readings must be to spare beside the one that is doubted.
    let fit = [Order::Second, Order::First]
        .into_iter()
        .filter_map(|order| fit(series, order).ok())
        .find(|fit| fit.spare >= 3)?;
    let squares: f64 = fit.residuals.iter().map(|r| r.mm().powi(2)).sum();
    let spare = count(fit.spare) - 1.0;
    let division = resolution(series.dial().graduation().mm());
    // What a reading is off the fit of all others: e / (1 − h).
    let doubted = fit.residuals.iter().zip(&fit.leverage).zip(series.kept());
    let (by, seat, (angle, _)) = doubted
        .filter(|((_, lever), _)| **lever < 0.999)
        .map(|((residual, lever), place)| (residual.mm() / (1.0 - lever), 1.0 - lever, place))
        .max_by(|a, b| (a.0.powi(2) * a.1).total_cmp(&(b.0.powi(2) * b.1)))?;
    if by.abs() * 3.0 < tir.mm() {
        return None;
    }
    let others = ((squares - by.powi(2) * seat).max(0.0) / spare).sqrt();
    let chance = 1.0 - 0.05 / count(fit.residuals.len());
    let by_scatter = t_two_sided(chance, Some(spare)) * others;
    // Others that agree are still only read to the division.
    let allowed = by_scatter.max(t_two_sided(chance, None) * division) / seat.sqrt();
    (by.abs() > allowed).then(|| Outlier {
        angle,
        by: Length::millimetres(by),
    })
}

/// The angle of the highest reading.
fn highest(series: &Series) -> Option<Angle> {
    let kept = series.kept();
    let highest = kept.reduce(|a, b| if b.1 > a.1 { b } else { a })?;
    let degrees = highest.0.in_unit(AngleUnit::Degree).rem_euclid(360.0);
    Angle::new(degrees, AngleUnit::Degree).ok()
}
