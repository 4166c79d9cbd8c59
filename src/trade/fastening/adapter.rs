//! An extension or crowfoot on the wrench: what to set, what arrives.

use crate::units::{Angle, AngleUnit, Length, LengthUnit, Torque, TypedAngle, TypedLength};

/// A wrench with an adapter on it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lever {
    /// From the middle of the grip to the wrench's square.
    pub wrench: Length,
    /// From the square to the fastener.
    pub adapter: Length,
    /// Between the two: 0° straight ahead, 90° to the side, 180° folded back.
    pub angle: Angle,
}

/// The same as typed.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct TypedLever {
    /// From the middle of the grip to the wrench's square.
    pub wrench: TypedLength,
    /// From the square to the fastener.
    pub adapter: TypedLength,
    /// Between the two.
    pub angle: TypedAngle,
}

impl TypedLever {
    /// The lever that was typed.
    pub fn lever(&self) -> Lever {
        Lever {
            wrench: self.wrench.length(),
            adapter: self.adapter.length(),
            angle: self.angle.angle(),
        }
    }
}

/// Why no setting can be given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LeverError {
    /// The wrench's own length must be above zero, the adapter's not below it.
    NoLength,
    /// The adapter folds back past the grip: the pull no longer turns the fastener that way.
    NotLonger,
}

/// Torque to set on the wrench so that the fastener gets `target`.
///
/// `set = target · L / (L + E · cos φ)`; `L` wrench length to the grip, `E` adapter length,
/// `φ` the angle between them. At 90° nothing changes; a socket extension on the axis has
/// `E = 0`.
///
/// # Errors
/// [`LeverError`] for a wrench without length or `L + E · cos φ <= 0`.
///
/// # Source
/// Moment balance about the fastener; checked against `tests/reference/04_fasteners.json`.
pub fn wrench_setting(target: Torque, lever: Lever) -> Result<Torque, LeverError> {
    Ok(target.times(1.0 / gain(lever)?))
}

/// Torque that the fastener gets when the wrench is set to `setting`.
///
/// # Errors
/// As [`wrench_setting`].
pub fn applied_torque(setting: Torque, lever: Lever) -> Result<Torque, LeverError> {
    Ok(setting.times(gain(lever)?))
}

fn gain(lever: Lever) -> Result<f64, LeverError> {
    let mm = |length: Length| length.in_unit(LengthUnit::Millimetre);
    if mm(lever.wrench) <= 0.0 || mm(lever.adapter) < 0.0 {
        return Err(LeverError::NoLength);
    }
    let phi = lever.angle.in_unit(AngleUnit::Degree).to_radians();
    let gain = 1.0 + mm(lever.adapter) / mm(lever.wrench) * phi.cos();
    if gain > 0.0 {
        Ok(gain)
    } else {
        Err(LeverError::NotLonger)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lever(wrench: f64, adapter: f64, degrees: f64) -> Lever {
        Lever {
            wrench: Length::millimetres(wrench),
            adapter: Length::millimetres(adapter),
            angle: Angle::new(degrees, AngleUnit::Degree).unwrap(),
        }
    }

    #[test]
    fn a_lever_that_cannot_turn_it_is_refused() {
        let target = Torque::newton_metres(100.0);
        let refused = |l| wrench_setting(target, l).unwrap_err();
        assert_eq!(refused(lever(0.0, 50.0, 0.0)), LeverError::NoLength);
        assert_eq!(refused(lever(400.0, -50.0, 0.0)), LeverError::NoLength);
        assert_eq!(refused(lever(100.0, 100.0, 180.0)), LeverError::NotLonger);
    }

    #[test]
    fn what_is_set_arrives() {
        let target = Torque::newton_metres(120.0);
        let bent = lever(500.0, 75.0, 45.0);
        let back = applied_torque(wrench_setting(target, bent).unwrap(), bent).unwrap();
        assert!(back.minus(target).abs() < Torque::newton_metres(1e-9));
    }
}
