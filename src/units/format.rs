//! The one formatter: every quantity on a screen, in a report or in a table goes through it.
//!
//! It never changes what was typed: a typed text is shown again digit by digit, with the chosen
//! decimal mark. A minus is U+2212, as wide as the digits.

use super::{
    Angle, AngleUnit, Distance, DistanceUnit, Force, ForceUnit, Length, LengthUnit, Mass, MassUnit,
    Temperature, TemperatureUnit, Torque, TorqueUnit, Typed, Unit,
};
use crate::words;

words! {
    /// Which units are shown first; the other system stands beside as the twin.
    pub enum System {
        /// mm, N·m, °C, km.
        Metric = "metric",
        /// in, lb-ft, °F, mi.
        Us = "us",
    }
}

words! {
    /// The decimal mark on screens and paper.
    pub enum DecimalMark {
        /// `0.05`
        Dot = "dot",
        /// `0,05`
        Comma = "comma",
    }
}

/// How this technician reads numbers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Format {
    /// The units shown first.
    pub system: System,
    /// The decimal mark.
    pub decimal: DecimalMark,
}

/// A number and its unit as they are shown, apart, since the unit is set smaller.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shown {
    /// The number with sign and decimal mark.
    pub number: String,
    /// The unit's symbol.
    pub unit: &'static str,
}

impl Shown {
    /// Number and unit on one line, held together by a no-break space; a degree sign of an angle
    /// stands close.
    pub fn line(&self) -> String {
        let gap = if self.unit == "°" { "" } else { "\u{a0}" };
        format!("{}{gap}{}", self.number, self.unit)
    }
}

/// More digits than any gauge here gives would only be noise.
const MOST_DECIMALS: usize = 9;

impl Format {
    /// A bare number with so many decimals; what rounds to zero has no sign.
    pub fn number(self, value: f64, decimals: usize) -> String {
        let plain = format!("{value:.*}", decimals.min(MOST_DECIMALS));
        let zero = !plain.contains(|c: char| ('1'..='9').contains(&c));
        self.marked(if zero {
            plain.trim_start_matches('-')
        } else {
            &plain
        })
    }

    /// A share of 1 as whole percent.
    pub fn percent(self, share: f64) -> String {
        format!("{}\u{a0}%", self.number(share * 100.0, 0))
    }

    /// A decimal text with the chosen mark and a true minus, its digits untouched.
    pub fn marked(self, text: &str) -> String {
        let mark = match self.decimal {
            DecimalMark::Dot => '.',
            DecimalMark::Comma => ',',
        };
        text.chars()
            .map(|c| match c {
                '.' | ',' => mark,
                '-' => '\u{2212}',
                other => other,
            })
            .collect()
    }

    /// A typed value as it was typed, in its own unit.
    pub fn typed<U: Unit>(self, typed: &Typed<U>) -> Shown {
        Shown {
            number: self.marked(typed.number.as_typed()),
            unit: typed.unit.symbol(),
        }
    }

    /// A typed value in the other unit, never coarser than it was typed.
    pub fn typed_twin<U: Unit>(self, typed: &Typed<U>) -> Shown {
        self.typed_in(typed, typed.unit.twin())
    }

    /// A typed value told in `unit`, never coarser than it was typed; untouched in its own.
    pub fn typed_in<U: Unit>(self, typed: &Typed<U>, unit: U) -> Shown {
        if unit == typed.unit {
            return self.typed(typed);
        }
        let step = 10_f64.powi(-i32::try_from(typed.decimals()).unwrap_or(0));
        let recorded = |value| typed.unit.shown_in(value, unit);
        // A difference, so that the offset of a temperature scale falls out.
        let decimals = decimals_for(recorded(step) - recorded(0.0));
        Shown {
            number: self.number(recorded(typed.number.value()), decimals),
            unit: unit.symbol(),
        }
    }

    /// A length in one named unit with so many decimals.
    pub fn length_in(self, length: Length, unit: LengthUnit, decimals: usize) -> Shown {
        self.shown(length.in_unit(unit), unit, decimals)
    }

    /// A short length: in millimetres with so many decimals, or in inches with one more, which is
    /// as fine.
    pub fn length(self, length: Length, decimals: usize) -> Shown {
        match self.system {
            System::Metric => self.length_in(length, LengthUnit::Millimetre, decimals),
            System::Us => self.length_in(length, LengthUnit::Inch, decimals.saturating_add(1)),
        }
    }

    /// The same length in the other system.
    pub fn length_twin(self, length: Length, decimals: usize) -> Shown {
        self.other().length(length, decimals)
    }

    /// A torque in one named unit with so many decimals.
    pub fn torque_in(self, torque: Torque, unit: TorqueUnit, decimals: usize) -> Shown {
        self.shown(torque.in_unit(unit), unit, decimals)
    }

    /// A torque in N·m or lb-ft with so many decimals.
    pub fn torque(self, torque: Torque, decimals: usize) -> Shown {
        let unit = self.pick(TorqueUnit::NewtonMetre, TorqueUnit::PoundFoot);
        self.torque_in(torque, unit, decimals)
    }

    /// The same torque in the other system.
    pub fn torque_twin(self, torque: Torque, decimals: usize) -> Shown {
        self.other().torque(torque, decimals)
    }

    /// An angle in degrees with so many decimals.
    pub fn angle(self, angle: Angle, decimals: usize) -> Shown {
        self.shown(
            angle.in_unit(AngleUnit::Degree),
            AngleUnit::Degree,
            decimals,
        )
    }

    /// A mass in one named unit with so many decimals.
    pub fn mass_in(self, mass: Mass, unit: MassUnit, decimals: usize) -> Shown {
        self.shown(mass.in_unit(unit), unit, decimals)
    }

    /// A temperature in °C or °F with so many decimals.
    pub fn temperature(self, temperature: Temperature, decimals: usize) -> Shown {
        let unit = self.pick(TemperatureUnit::Celsius, TemperatureUnit::Fahrenheit);
        self.shown(temperature.in_unit(unit), unit, decimals)
    }

    /// A distance in km or mi with so many decimals.
    pub fn distance(self, distance: Distance, decimals: usize) -> Shown {
        let unit = self.pick(DistanceUnit::Kilometre, DistanceUnit::Mile);
        self.shown(distance.in_unit(unit), unit, decimals)
    }

    /// The same distance in the other system.
    pub fn distance_twin(self, distance: Distance, decimals: usize) -> Shown {
        self.other().distance(distance, decimals)
    }

    /// A force in N or lbf with so many decimals.
    pub fn force(self, force: Force, decimals: usize) -> Shown {
        let unit = self.pick(ForceUnit::Newton, ForceUnit::Pound);
        self.shown(force.in_unit(unit), unit, decimals)
    }

    /// The same reader with this system first.
    pub const fn first_in(self, system: System) -> Self {
        Self { system, ..self }
    }

    /// The same reader with the other system first.
    pub const fn other(self) -> Self {
        let system = match self.system {
            System::Metric => System::Us,
            System::Us => System::Metric,
        };
        Self { system, ..self }
    }

    fn pick<U>(self, metric: U, us: U) -> U {
        match self.system {
            System::Metric => metric,
            System::Us => us,
        }
    }

    fn shown(self, value: f64, unit: impl Unit, decimals: usize) -> Shown {
        Shown {
            number: self.number(value, decimals),
            unit: unit.symbol(),
        }
    }
}

/// The fewest decimals whose last digit is no coarser than `step`.
fn decimals_for(step: f64) -> usize {
    let mut decimals = 0;
    let mut last_digit = 1.0;
    // A thousandth of slack, so that a step of one mm told in µm and back stays where it was.
    while last_digit > step.abs() * 1.001 && decimals < MOST_DECIMALS {
        last_digit /= 10.0;
        decimals += 1;
    }
    decimals
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{TypedLength, TypedTemperature, TypedTorque};

    const METRIC: Format = Format {
        system: System::Metric,
        decimal: DecimalMark::Dot,
    };
    const US_COMMA: Format = Format {
        system: System::Us,
        decimal: DecimalMark::Comma,
    };

    #[test]
    fn numbers_have_a_true_minus_and_no_negative_zero() {
        assert_eq!(METRIC.number(-3.5, 1), "\u{2212}3.5");
        assert_eq!(METRIC.number(-0.004, 2), "0.00");
        assert_eq!(US_COMMA.number(0.05, 2), "0,05");
    }

    #[test]
    fn a_typed_text_keeps_every_digit() {
        let typed = TypedLength::parse("-0.050", LengthUnit::Millimetre).unwrap();
        assert_eq!(US_COMMA.typed(&typed).number, "\u{2212}0,050");
        assert_eq!(US_COMMA.typed(&typed).unit, "mm");
    }

    #[test]
    fn the_twin_is_never_coarser_than_what_was_typed() {
        let mm = TypedLength::parse("0.05", LengthUnit::Millimetre).unwrap();
        assert_eq!(METRIC.typed_twin(&mm).line(), "0.0020\u{a0}in");
        let inch = TypedLength::parse("0.002", LengthUnit::Inch).unwrap();
        assert_eq!(METRIC.typed_twin(&inch).line(), "0.05\u{a0}mm");
        let torque = TypedTorque::parse("100", TorqueUnit::PoundFoot).unwrap();
        assert_eq!(METRIC.typed_twin(&torque).line(), "136\u{a0}N·m");
        let hot = TypedTemperature::parse("80", TemperatureUnit::Celsius).unwrap();
        assert_eq!(METRIC.typed_twin(&hot).line(), "176\u{a0}°F");
    }

    #[test]
    fn both_systems_show_one_quantity() {
        let play = Length::new(0.0508, LengthUnit::Millimetre).unwrap();
        assert_eq!(METRIC.length(play, 3).line(), "0.051\u{a0}mm");
        assert_eq!(METRIC.length_twin(play, 3).line(), "0.0020\u{a0}in");
        let nut = Torque::new(245.0, TorqueUnit::NewtonMetre).unwrap();
        assert_eq!(US_COMMA.torque(nut, 1).line(), "180,7\u{a0}lb-ft");
        assert_eq!(US_COMMA.torque_twin(nut, 0).line(), "245\u{a0}N·m");
    }
}
