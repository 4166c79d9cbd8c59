//! Quantities with their units: typed text in, exact factors inside, never a bare number out.
//!
//! A quantity is a newtype over a finite number; its unit is asked for whenever a number goes in
//! or comes out. What a person typed is kept as [`Typed`] text and never written back from here.

mod decimal;
mod double;
mod format;
mod quantity;
mod typed;
mod unit;

pub use decimal::{Decimal, DecimalError};
pub use double::double;
pub use format::{DecimalMark, Format, Shown, System};
pub use quantity::{
    Angle, Area, Distance, Force, Length, Mass, NotFinite, Pressure, Speed, Temperature, Torque,
};
pub use typed::{
    Typed, TypedAngle, TypedDistance, TypedLength, TypedMass, TypedTemperature, TypedTorque,
};
pub use unit::{
    AngleUnit, AreaUnit, DistanceUnit, ForceUnit, LengthUnit, MassUnit, PressureUnit, SpeedUnit,
    TemperatureUnit, TorqueUnit, Unit,
};
