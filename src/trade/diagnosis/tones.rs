//! What can be heard or measured of a turning wheel end: the tones of a rolling bearing, the pulses
//! of a speed sensor, a coil's resistance, and four wheel speeds side by side.

use crate::units::{Angle, AngleUnit, Length, Speed, SpeedUnit, Temperature, TemperatureUnit};

/// The inside of a rolling bearing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bearing {
    /// Rolling elements in a row.
    pub elements: u8,
    /// Diameter of one.
    pub element: Length,
    /// Pitch diameter of their row.
    pub pitch: Length,
    /// Contact angle.
    pub contact: Angle,
}

/// Tones in orders of the wheel's turns: 1 is once a turn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tones {
    /// A defect of the outer ring (BPFO).
    pub outer: f64,
    /// A defect of the inner ring (BPFI).
    pub inner: f64,
    /// A rolling element's spin (BSF); a defect on it strikes both rings, at twice this.
    pub element: f64,
    /// The cage (FTF).
    pub cage: f64,
}

/// Why there are no tones.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BearingError {
    /// Fewer than three rolling elements.
    Elements,
    /// An element has a diameter above zero, and less than the pitch.
    Diameters,
    /// A contact angle lies between 0 and 90 degrees.
    Contact,
}

impl Bearing {
    /// Its tones when one ring turns with the wheel and the other stands.
    ///
    /// `g = d / D · cos α`; with the inner ring turning BPFO = n/2 (1 − g), BPFI = n/2 (1 + g),
    /// FTF = (1 − g)/2, BSF = D/2d (1 − g²). Where the outer ring turns, the cage alone differs:
    /// FTF = (1 + g)/2.
    ///
    /// # Errors
    /// [`BearingError`].
    ///
    /// # Source
    /// Kinematics of pure rolling; checked against published bearings in
    /// `tests/reference/07_bearing.json`. Slip makes real tones 1 to 2 % lower (from memory).
    pub fn tones(self, turning: Turning) -> Result<Tones, BearingError> {
        let (d, pitch) = (self.element.mm(), self.pitch.mm());
        let contact = self.contact.in_unit(AngleUnit::Degree);
        if self.elements < 3 {
            return Err(BearingError::Elements);
        }
        if d <= 0.0 || pitch <= d {
            return Err(BearingError::Diameters);
        }
        if !(0.0..90.0).contains(&contact) {
            return Err(BearingError::Contact);
        }
        let g = d / pitch * contact.to_radians().cos();
        let half = f64::from(self.elements) / 2.0;
        Ok(Tones {
            outer: half * (1.0 - g),
            inner: half * (1.0 + g),
            element: pitch / (2.0 * d) * g.mul_add(-g, 1.0),
            cage: match turning {
                Turning::Inner => (1.0 - g) / 2.0,
                Turning::Outer => f64::midpoint(1.0, g),
            },
        })
    }
}

/// Which ring turns with the wheel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turning {
    /// The inner ring: driven hubs and most others.
    Inner,
    /// The outer ring: a hub that turns on a fixed spindle.
    Outer,
}

/// How many pulses a second a sensor gives: one for each tooth or pole pair that passes.
///
/// # Examples
/// ```
/// use hubslate::trade::diagnosis::pulses_per_second;
///
/// // A wheel that turns ten times a second under a ring of 48 teeth.
/// assert!((pulses_per_second(48, 10.0) - 480.0).abs() < 1e-12);
/// ```
pub fn pulses_per_second(teeth: u16, turns_per_second: f64) -> f64 {
    f64::from(teeth) * turns_per_second
}

/// How much more resistance copper has for each kelvin, at 20 °C (IEC 60028).
const COPPER_PER_K: f64 = 0.003_93;

/// What a passive sensor's coil would read at 20 °C: `R / (1 + 0.00393 (T − 20))`, in the unit of
/// `ohms`. An active sensor is never measured in ohms.
///
/// # Source
/// IEC 60028; checked in `tests/reference/09_wheel_speed.json`.
pub fn coil_at_20(ohms: f64, coil: Temperature) -> f64 {
    let above = coil.in_unit(TemperatureUnit::Celsius) - 20.0;
    ohms / COPPER_PER_K.mul_add(above, 1.0)
}

/// A tire that is worn, or not of the size of the others, turns up to this share more or less often
/// (common practice, no source).
pub const TIRE_SHARE: f64 = 0.03;

/// What one of four wheel speeds says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum WheelSpeed {
    /// Like the others.
    Like,
    /// Off by this share; a tire may do so.
    Tire(f64),
    /// Off by this share; no tire does so: sensor, encoder or air gap.
    Off(f64),
    /// No speed at all while others show one.
    Silent,
}

/// Each of four wheel speeds read at one time straight ahead, against the median of them all.
///
/// Within a percent they are alike; up to three a tire may do so; beyond, it is the sensor's
/// (common practice, no source). `None` for fewer than three wheels that show a speed.
pub fn wheel_speeds(read: [Speed; 4]) -> Option<[WheelSpeed; 4]> {
    let mut sorted = read.map(|speed| speed.in_unit(SpeedUnit::MetrePerSecond));
    sorted.sort_by(f64::total_cmp);
    let [_, low, high, _] = sorted;
    let median = f64::midpoint(low, high);
    if low <= 0.0 {
        return None;
    }
    Some(read.map(|speed| {
        let speed = speed.in_unit(SpeedUnit::MetrePerSecond);
        let off = speed / median - 1.0;
        match off.abs() {
            _ if speed <= 0.0 => WheelSpeed::Silent,
            share if share <= LIKE_SHARE => WheelSpeed::Like,
            share if share <= TIRE_SHARE => WheelSpeed::Tire(off),
            _ => WheelSpeed::Off(off),
        }
    }))
}

/// Wheels within this share of the median are alike.
const LIKE_SHARE: f64 = 0.01;

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn bearing(elements: u8, d: f64, pitch: f64, contact: f64) -> Bearing {
        Bearing {
            elements,
            element: Length::millimetres(d),
            pitch: Length::millimetres(pitch),
            contact: Angle::new(contact, AngleUnit::Degree).unwrap(),
        }
    }

    #[test]
    fn each_fault_of_a_bearing_is_named() {
        let tones = |one: Bearing| one.tones(Turning::Inner).map(|_| ());
        assert_eq!(
            tones(bearing(2, 8.0, 40.0, 0.0)),
            Err(BearingError::Elements)
        );
        assert_eq!(
            tones(bearing(9, 0.0, 40.0, 0.0)),
            Err(BearingError::Diameters)
        );
        assert_eq!(
            tones(bearing(9, 40.0, 40.0, 0.0)),
            Err(BearingError::Diameters)
        );
        assert_eq!(
            tones(bearing(9, 8.0, 40.0, 90.0)),
            Err(BearingError::Contact)
        );
        assert_eq!(
            tones(bearing(9, 8.0, 40.0, -1.0)),
            Err(BearingError::Contact)
        );
    }

    fn read(mph: [f64; 4]) -> Option<[WheelSpeed; 4]> {
        wheel_speeds(mph.map(|mph| Speed::new(mph, SpeedUnit::MilePerHour).unwrap()))
    }

    #[test]
    fn one_wheel_of_four_is_reported_from_a_tire_and_from_silence() {
        use WheelSpeed::{Like, Off, Silent, Tire};
        assert_eq!(read([10.0, 10.0, 10.0, 10.0]), Some([Like; 4]));
        assert!(matches!(
            read([10.0, 10.0, 10.2, 10.0]),
            Some([Like, Like, Tire(_), Like])
        ));
        assert!(matches!(
            read([10.0, 10.0, 10.0, 7.0]),
            Some([Like, Like, Like, Off(_)])
        ));
        assert!(matches!(
            read([10.0, 0.0, 10.0, 10.0]),
            Some([Like, Silent, Like, Like])
        ));
        assert_eq!(read([10.0, 0.0, 0.0, 10.0]), None);
        assert_eq!(read([0.0; 4]), None);
    }
}
