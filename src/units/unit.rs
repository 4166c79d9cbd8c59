//! The units of each quantity, each with the stable code it is stored under.

use crate::words;

/// A unit of one quantity: what a formatter and a typed field need to know of it.
pub trait Unit: Copy + PartialEq {
    /// The symbol that stands behind the number.
    fn symbol(self) -> &'static str;
    /// The unit of the other system in which the same value is also shown.
    fn twin(self) -> Self;
    /// `value` in this unit, told in `to`.
    fn shown_in(self, value: f64, to: Self) -> f64;
}

words! {
    /// Units of length at the wheel end.
    pub enum LengthUnit {
        /// Millimetre.
        Millimetre = "mm",
        /// Micrometre.
        Micrometre = "um",
        /// Inch.
        Inch = "in",
        /// Thousandth of an inch.
        Thou = "thou",
    }
}

words! {
    /// Units of torque.
    pub enum TorqueUnit {
        /// Newton metre.
        NewtonMetre = "n_m",
        /// Pound-force foot.
        PoundFoot = "lbf_ft",
        /// Pound-force inch.
        PoundInch = "lbf_in",
        /// Kilogram-force metre.
        KilogramMetre = "kgf_m",
    }
}

words! {
    /// Units of plane angle.
    pub enum AngleUnit {
        /// Degree.
        Degree = "deg",
        /// Whole turn of 360 degrees.
        Turn = "turn",
    }
}

words! {
    /// Units of temperature.
    pub enum TemperatureUnit {
        /// Degree Celsius.
        Celsius = "c",
        /// Degree Fahrenheit.
        Fahrenheit = "f",
    }
}

words! {
    /// Units of distance on the road.
    pub enum DistanceUnit {
        /// Kilometre.
        Kilometre = "km",
        /// Mile.
        Mile = "mi",
    }
}

words! {
    /// Units of force.
    pub enum ForceUnit {
        /// Newton.
        Newton = "n",
        /// Pound-force.
        Pound = "lbf",
        /// Kilogram-force.
        Kilogram = "kgf",
    }
}

words! {
    /// Units of speed.
    pub enum SpeedUnit {
        /// Metre per second.
        MetrePerSecond = "m_s",
        /// Kilometre per hour.
        KilometrePerHour = "km_h",
        /// Mile per hour.
        MilePerHour = "mph",
    }
}

words! {
    /// Units of mass.
    pub enum MassUnit {
        /// Kilogram.
        Kilogram = "kg",
        /// Pound.
        Pound = "lb",
    }
}

words! {
    /// Units of pressure.
    pub enum PressureUnit {
        /// Kilopascal.
        Kilopascal = "kpa",
        /// Pound-force per square inch.
        Psi = "psi",
        /// Newton per square millimetre.
        Megapascal = "mpa",
    }
}

words! {
    /// Units of a small area.
    pub enum AreaUnit {
        /// Square millimetre.
        SquareMillimetre = "mm2",
        /// Square inch.
        SquareInch = "in2",
    }
}
