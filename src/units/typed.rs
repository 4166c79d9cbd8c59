//! A typed number with its unit: what the record keeps of every measured value.

use super::{
    Angle, AngleUnit, Decimal, DecimalError, Distance, DistanceUnit, Length, LengthUnit, Mass,
    MassUnit, Temperature, TemperatureUnit, Torque, TorqueUnit,
};

/// The decimal text as typed, and the unit it was typed in.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Typed<U> {
    /// The number as it was typed.
    pub number: Decimal,
    /// The unit that stood behind it.
    pub unit: U,
}

/// A typed length.
pub type TypedLength = Typed<LengthUnit>;
/// A typed torque.
pub type TypedTorque = Typed<TorqueUnit>;
/// A typed angle.
pub type TypedAngle = Typed<AngleUnit>;
/// A typed temperature.
pub type TypedTemperature = Typed<TemperatureUnit>;
/// A typed mass.
pub type TypedMass = Typed<MassUnit>;
/// A typed distance on the road.
pub type TypedDistance = Typed<DistanceUnit>;

impl<U> Typed<U> {
    /// Reads a typed text in `unit`.
    ///
    /// # Errors
    /// The [`DecimalError`] that makes the text no number.
    pub fn parse(text: &str, unit: U) -> Result<Self, DecimalError> {
        Decimal::parse(text).map(|number| Self { number, unit })
    }

    /// How many digits stand behind the separator.
    pub fn decimals(&self) -> usize {
        self.number.decimals()
    }
}

/// Gives a typed text its quantity. At most fifteen digits are typed, so the value is finite.
macro_rules! quantity_of {
    ($unit:ident, $name:ident, $quantity:ident) => {
        impl Typed<$unit> {
            /// The quantity that was typed.
            pub fn $name(&self) -> $quantity {
                $quantity::new(self.number.value(), self.unit).unwrap_or($quantity::ZERO)
            }
        }
    };
}

quantity_of!(LengthUnit, length, Length);
quantity_of!(TorqueUnit, torque, Torque);
quantity_of!(AngleUnit, angle, Angle);
quantity_of!(DistanceUnit, distance, Distance);
quantity_of!(TemperatureUnit, temperature, Temperature);
quantity_of!(MassUnit, mass, Mass);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn typed_text_keeps_its_digits_and_gives_its_quantity() {
        let limit = TypedLength::parse("2.0", LengthUnit::Thou).unwrap();
        assert_eq!(limit.number.as_typed(), "2.0");
        assert_eq!(limit.decimals(), 1);
        assert!((limit.length().mm() - 0.0508).abs() < 1e-15);
    }

    #[test]
    fn a_zero_limit_is_a_value() {
        let limit = TypedLength::parse("0", LengthUnit::Millimetre).unwrap();
        assert_eq!(limit.length(), Length::ZERO);
    }
}
