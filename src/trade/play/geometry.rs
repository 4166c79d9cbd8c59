//! Geometry at the dial: a tip that is not square, and a rock seen at another radius.

use crate::units::{Angle, AngleUnit, Length, LengthUnit};

/// Why a reading cannot be corrected.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum GeometryError {
    /// The tip stands so far off that the reading says little; set it again.
    TooSteep {
        /// The angle that was given.
        angle: Angle,
    },
    /// A radius must be above zero.
    NoRadius,
}

/// Beyond this a degree of doubt changes the reading by more than three per cent (our bound).
const STEEPEST_DEG: f64 = 60.0;

/// Share of the indicated travel that is true when the tip stands off by `angle`: cos(angle).
///
/// A plunger off square over-reads by 1 / cos, a lever held at an angle likewise; both are
/// corrected by the same factor.
///
/// # Errors
/// [`GeometryError::TooSteep`] beyond 60° either way.
///
/// ```
/// use hubslate::trade::play::geometry::cosine_factor;
/// use hubslate::units::{Angle, AngleUnit};
///
/// let steep = Angle::new(60.0, AngleUnit::Degree).unwrap();
/// assert!((cosine_factor(steep).unwrap() - 0.5).abs() < 1e-12); // cos 60°
/// ```
pub fn cosine_factor(angle: Angle) -> Result<f64, GeometryError> {
    let degrees = angle.in_unit(AngleUnit::Degree);
    if degrees.abs() <= STEEPEST_DEG {
        Ok(degrees.to_radians().cos())
    } else {
        Err(GeometryError::TooSteep { angle })
    }
}

/// True travel along the axle from the travel the dial indicated.
///
/// # Errors
/// As [`cosine_factor`].
pub fn true_travel(indicated: Length, off_square: Angle) -> Result<Length, GeometryError> {
    Ok(indicated.times(cosine_factor(off_square)?))
}

/// A tilt read at one radius as it would be read at another; an aid to the eye, never compared
/// with a limit, since the method differs.
///
/// # Errors
/// [`GeometryError::NoRadius`] unless both radii are above zero.
pub fn scaled_by_radius(
    read: Length,
    at_radius: Length,
    wanted: Length,
) -> Result<Length, GeometryError> {
    if at_radius <= Length::ZERO || wanted <= Length::ZERO {
        return Err(GeometryError::NoRadius);
    }
    let mm = LengthUnit::Millimetre;
    Ok(read.times(wanted.in_unit(mm) / at_radius.in_unit(mm)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_steep_tip_and_a_missing_radius_are_refused() {
        let angle = Angle::new(75.0, AngleUnit::Degree).unwrap();
        assert_eq!(cosine_factor(angle), Err(GeometryError::TooSteep { angle }));
        let mm = Length::millimetres(1.0);
        assert_eq!(
            scaled_by_radius(mm, Length::ZERO, mm),
            Err(GeometryError::NoRadius)
        );
    }
}
