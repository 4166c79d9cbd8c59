//! The quantities, with exact factors written as products of exact definitions.
//!
//! Exact by definition: 1 in = 25.4 mm, 1 ft = 12 in, 1 mi = 5280 ft, 1 lb = 0.453 592 37 kg,
//! g0 = 9.806 65 m/s² (international shop and pound agreement; CGPM 1901). Nothing is rounded.

use super::unit::{
    AngleUnit, AreaUnit, DistanceUnit, ForceUnit, LengthUnit, MassUnit, PressureUnit, SpeedUnit,
    TemperatureUnit, TorqueUnit, Unit,
};

/// Millimetres in an inch.
const INCH_MM: f64 = 25.4;
/// Metres in a foot.
const FOOT_M: f64 = 12.0 * INCH_MM / 1000.0;
/// Metres in a mile.
const MILE_M: f64 = 5280.0 * FOOT_M;
/// Kilograms in a pound.
const POUND_KG: f64 = 0.453_592_37;
/// Standard gravity, m/s².
const GRAVITY: f64 = 9.806_65;
/// Newtons in a pound-force.
const POUND_N: f64 = POUND_KG * GRAVITY;

/// A value was not a finite number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotFinite;

/// One quantity: a newtype over its base unit, and `symbol`, `twin` and factor for each unit.
/// `factor` is the base unit over `over`, so that a thou stays exactly 25.4 mm over 1000.
macro_rules! quantity {
    ($(#[$meta:meta])* $name:ident, $unit:ident, base $base:ident,
     $($variant:ident: $symbol:literal, twin $twin:ident, $factor:expr, over $over:expr;)+) => {
        impl $unit {
            /// Base units in one of this unit, as a product and a divisor that are both exact.
            const fn factor(self) -> (f64, f64) {
                match self { $($unit::$variant => ($factor, $over)),+ }
            }
        }

        impl Unit for $unit {
            fn symbol(self) -> &'static str {
                match self { $($unit::$variant => $symbol),+ }
            }
            fn twin(self) -> Self {
                match self { $($unit::$variant => $unit::$twin),+ }
            }
            fn shown_in(self, value: f64, to: Self) -> f64 {
                if self == to {
                    return value;
                }
                let ((up, down), (to_up, to_down)) = (self.factor(), to.factor());
                value * (up * to_down) / (down * to_up)
            }
        }

        $(#[$meta])*
        #[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl core::hash::Hash for $name {
            fn hash<H: core::hash::Hasher>(&self, state: &mut H) {
                // Minus zero is equal to zero.
                (self.0 + 0.0).to_bits().hash(state);
            }
        }

        impl $name {
            /// Nothing of this quantity.
            pub const ZERO: Self = Self(0.0);

            /// `value` in `unit`.
            ///
            /// # Errors
            /// [`NotFinite`] for NaN, infinities and what overflows.
            pub fn new(value: f64, unit: $unit) -> Result<Self, NotFinite> {
                let base = unit.shown_in(value, $unit::$base);
                if base.is_finite() { Ok(Self(base)) } else { Err(NotFinite) }
            }

            /// The value in `unit`.
            pub fn in_unit(self, unit: $unit) -> f64 {
                $unit::$base.shown_in(self.0, unit)
            }

            /// The value without its sign.
            pub const fn abs(self) -> Self {
                Self(self.0.abs())
            }

            /// The larger of two.
            pub const fn max(self, other: Self) -> Self {
                Self(self.0.max(other.0))
            }

            /// The smaller of two.
            pub const fn min(self, other: Self) -> Self {
                Self(self.0.min(other.0))
            }

            /// The sum; stays at the largest number rather than overflow.
            pub fn plus(self, other: Self) -> Self {
                Self((self.0 + other.0).clamp(f64::MIN, f64::MAX))
            }

            /// The difference; stays at the largest number rather than overflow.
            pub fn minus(self, other: Self) -> Self {
                Self((self.0 - other.0).clamp(f64::MIN, f64::MAX))
            }

            /// This many times the value; zero times for a factor that is no number.
            pub fn times(self, factor: f64) -> Self {
                let product = self.0 * factor;
                if product.is_nan() { Self::ZERO } else { Self(product.clamp(f64::MIN, f64::MAX)) }
            }
        }
    };
}

quantity! {
    /// A length at the wheel end, of any sign.
    Length, LengthUnit, base Millimetre,
    Millimetre: "mm", twin Inch, 1.0, over 1.0;
    Micrometre: "µm", twin Thou, 1.0, over 1000.0;
    Inch: "in", twin Millimetre, INCH_MM, over 1.0;
    Thou: "thou", twin Millimetre, INCH_MM, over 1000.0;
}

quantity! {
    /// A torque.
    Torque, TorqueUnit, base NewtonMetre,
    NewtonMetre: "N·m", twin PoundFoot, 1.0, over 1.0;
    PoundFoot: "lb-ft", twin NewtonMetre, POUND_N * FOOT_M, over 1.0;
    PoundInch: "lb-in", twin NewtonMetre, POUND_N * INCH_MM, over 1000.0;
    KilogramMetre: "kgf·m", twin NewtonMetre, GRAVITY, over 1.0;
}

quantity! {
    /// A plane angle.
    Angle, AngleUnit, base Degree,
    Degree: "°", twin Degree, 1.0, over 1.0;
    Turn: "turn", twin Degree, 360.0, over 1.0;
}

quantity! {
    /// A distance on the road.
    Distance, DistanceUnit, base Kilometre,
    Kilometre: "km", twin Mile, 1.0, over 1.0;
    Mile: "mi", twin Kilometre, MILE_M, over 1000.0;
}

quantity! {
    /// A force.
    Force, ForceUnit, base Newton,
    Newton: "N", twin Pound, 1.0, over 1.0;
    Pound: "lb", twin Newton, POUND_N, over 1.0;
    Kilogram: "kgf", twin Newton, GRAVITY, over 1.0;
}

quantity! {
    /// A speed.
    Speed, SpeedUnit, base MetrePerSecond,
    MetrePerSecond: "m/s", twin MilePerHour, 1.0, over 1.0;
    KilometrePerHour: "km/h", twin MilePerHour, 1000.0, over 3600.0;
    MilePerHour: "mph", twin KilometrePerHour, MILE_M, over 3600.0;
}

quantity! {
    /// A mass.
    Mass, MassUnit, base Kilogram,
    Kilogram: "kg", twin Pound, 1.0, over 1.0;
    Pound: "lb", twin Kilogram, POUND_KG, over 1.0;
}

quantity! {
    /// A pressure; one psi is a pound-force on a square inch, and N/mm² are thousands of kPa.
    Pressure, PressureUnit, base Kilopascal,
    Kilopascal: "kPa", twin Psi, 1.0, over 1.0;
    Psi: "psi", twin Kilopascal, POUND_N * 1000.0, over INCH_MM * INCH_MM;
    Megapascal: "MPa", twin Psi, 1000.0, over 1.0;
}

quantity! {
    /// An area of a cross section.
    Area, AreaUnit, base SquareMillimetre,
    SquareMillimetre: "mm²", twin SquareInch, 1.0, over 1.0;
    SquareInch: "in²", twin SquareMillimetre, INCH_MM * INCH_MM, over 1.0;
}

impl Unit for TemperatureUnit {
    fn symbol(self) -> &'static str {
        match self {
            Self::Celsius => "°C",
            Self::Fahrenheit => "°F",
        }
    }
    fn twin(self) -> Self {
        match self {
            Self::Celsius => Self::Fahrenheit,
            Self::Fahrenheit => Self::Celsius,
        }
    }
    fn shown_in(self, value: f64, to: Self) -> f64 {
        match (self, to) {
            (Self::Celsius, Self::Fahrenheit) => value * 9.0 / 5.0 + 32.0,
            (Self::Fahrenheit, Self::Celsius) => (value - 32.0) * 5.0 / 9.0,
            _ => value,
        }
    }
}

/// A temperature on a scale; a difference of two is not one of these.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Temperature(f64);

impl Temperature {
    /// The zero of the Celsius scale.
    pub const ZERO: Self = Self(0.0);

    /// `value` in `unit`.
    ///
    /// # Errors
    /// [`NotFinite`] for NaN and infinities.
    pub fn new(value: f64, unit: TemperatureUnit) -> Result<Self, NotFinite> {
        let celsius = unit.shown_in(value, TemperatureUnit::Celsius);
        if celsius.is_finite() {
            Ok(Self(celsius))
        } else {
            Err(NotFinite)
        }
    }

    /// The value in `unit`.
    pub fn in_unit(self, unit: TemperatureUnit) -> f64 {
        TemperatureUnit::Celsius.shown_in(self.0, unit)
    }
}

impl Length {
    /// A length of so many millimetres, for constants known to be finite.
    pub(crate) const fn millimetres(value: f64) -> Self {
        Self(value)
    }

    /// A length of so many thousandths of an inch, for constants known to be finite.
    pub(crate) const fn thou(value: f64) -> Self {
        Self(value * INCH_MM / 1000.0)
    }

    /// The value in millimetres.
    pub const fn mm(self) -> f64 {
        self.0
    }
}

impl Pressure {
    /// The force that this stress makes on a cross section.
    pub(crate) fn on(self, area: Area) -> Force {
        let newtons = self.in_unit(PressureUnit::Megapascal) * area.0;
        Force(newtons.clamp(f64::MIN, f64::MAX))
    }
}

impl Force {
    /// The torque of this force at an arm.
    pub(crate) fn at(self, arm: Length) -> Torque {
        Torque((self.0 * arm.0 / 1000.0).clamp(f64::MIN, f64::MAX))
    }
}

impl Torque {
    /// A torque of so many newton metres, for constants known to be finite.
    pub(crate) const fn newton_metres(value: f64) -> Self {
        Self(value)
    }
}

impl Distance {
    /// A distance of so many kilometres, for constants known to be finite.
    pub(crate) const fn kilometres(value: f64) -> Self {
        Self(value)
    }

    /// A distance of so many miles, for constants known to be finite.
    pub(crate) const fn miles(value: f64) -> Self {
        Self(value * MILE_M / 1000.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_quantity_takes_a_value_that_is_no_number() {
        for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert_eq!(Length::new(bad, LengthUnit::Inch), Err(NotFinite));
            assert_eq!(Torque::new(bad, TorqueUnit::PoundFoot), Err(NotFinite));
            assert_eq!(
                Temperature::new(bad, TemperatureUnit::Celsius),
                Err(NotFinite)
            );
        }
        assert_eq!(Length::new(f64::MAX, LengthUnit::Inch), Err(NotFinite));
    }

    #[test]
    fn a_value_comes_back_untouched_in_its_base_unit() {
        let play = Length::new(0.05, LengthUnit::Millimetre).unwrap();
        assert_eq!(play.in_unit(LengthUnit::Millimetre), 0.05);
    }

    #[test]
    fn the_house_limit_in_thou_is_what_the_inch_says() {
        let in_inches = Length::new(0.004, LengthUnit::Inch).unwrap();
        assert!((Length::thou(4.0).mm() - 0.1016).abs() < 1e-15);
        assert!((in_inches.mm() - 0.1016).abs() < 1e-15);
    }
}
