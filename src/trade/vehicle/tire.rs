//! Tire size: from what stands on the sidewall to how often a wheel turns at a speed.

use std::f64::consts::PI;

use crate::units::{Length, LengthUnit, Speed, SpeedUnit};

/// A size as it stands on the sidewall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TireSize {
    /// Section width in mm.
    pub width_mm: u16,
    /// Section height in percent of the width.
    pub aspect: u8,
    /// Rim in inches.
    pub rim_in: f64,
    /// Load index for a single tire.
    pub load_index: Option<u16>,
    /// Speed symbol.
    pub speed_symbol: Option<char>,
}

/// Why a text is no size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TireError {
    /// It is not of the form 205/55R16.
    Form,
    /// No tire has a section of this width, in mm.
    Width(u16),
    /// No tire has this aspect, in percent.
    Aspect(u8),
    /// No car or light truck has a rim of this many inches.
    Rim,
}

impl TireSize {
    /// Reads a metric size: `P225/60R16 97H`, `195/65 R 15`, `LT245/75R17 121/118S`.
    ///
    /// # Errors
    /// [`TireError`].
    pub fn parse(text: &str) -> Result<Self, TireError> {
        let mut text = text
            .trim()
            .chars()
            .filter(|c| !c.is_whitespace())
            .collect::<String>();
        text.make_ascii_uppercase();
        let text = ["LT", "P", "C"]
            .iter()
            .find_map(|kind| text.strip_prefix(kind))
            .unwrap_or(&text);
        let (width, rest) = text.split_once('/').ok_or(TireError::Form)?;
        let (aspect, rest) = rest.split_once('R').ok_or(TireError::Form)?;
        let aspect = aspect.trim_end_matches('Z');
        let is_service = |c: char| !c.is_ascii_digit() && c != '.';
        let rim = rest.get(..rim_length(rest)).ok_or(TireError::Form)?;
        let service = rest
            .get(rim.len()..)
            .unwrap_or_default()
            .trim_start_matches(is_service);
        let load: String = service.chars().take_while(char::is_ascii_digit).collect();
        let size = Self {
            width_mm: width.parse().map_err(|_| TireError::Form)?,
            aspect: aspect.parse().map_err(|_| TireError::Form)?,
            rim_in: rim.parse().map_err(|_| TireError::Form)?,
            load_index: load.parse().ok(),
            speed_symbol: service.chars().last().filter(char::is_ascii_uppercase),
        };
        size.check()
    }

    fn check(self) -> Result<Self, TireError> {
        match self {
            _ if !(105..=405).contains(&self.width_mm) => Err(TireError::Width(self.width_mm)),
            _ if !(20..=90).contains(&self.aspect) => Err(TireError::Aspect(self.aspect)),
            _ if !(10.0..=26.0).contains(&self.rim_in) => Err(TireError::Rim),
            size => Ok(size),
        }
    }

    /// Section height: `W · aspect / 100`.
    pub fn section_height(self) -> Length {
        length(f64::from(self.width_mm) * f64::from(self.aspect) / 100.0)
    }

    /// Overall diameter, unloaded: `rim · 25.4 + 2 H`.
    ///
    /// # Source
    /// ISO 4000-1 and ETRTO geometry; checked in `tests/reference/06_tire.json`. A listed diameter
    /// uses a rounded rim and may differ by 1 mm; a loaded tire turns about 3 % more often.
    pub fn diameter(self) -> Length {
        let rim = Length::new(self.rim_in, LengthUnit::Inch).unwrap_or(Length::ZERO);
        rim.plus(self.section_height().times(2.0))
    }

    /// Circumference, unloaded.
    pub fn circumference(self) -> Length {
        self.diameter().times(PI)
    }

    /// How often the wheel turns in a second at `speed`, unloaded.
    ///
    /// # Examples
    /// ```
    /// use hubslate::trade::vehicle::tire::TireSize;
    /// use hubslate::units::{Speed, SpeedUnit};
    ///
    /// let size = TireSize::parse("205/55R16").unwrap();
    /// let speed = Speed::new(1.985_172_397_803_390_1, SpeedUnit::MetrePerSecond).unwrap();
    /// assert!((size.turns_per_second(speed) - 1.0).abs() < 1e-12);
    /// ```
    pub fn turns_per_second(self, speed: Speed) -> f64 {
        speed.in_unit(SpeedUnit::MetrePerSecond) * 1000.0 / self.circumference().mm()
    }
}

/// How much of `rest` is the rim: two digits, and one place behind a point where there is one.
fn rim_length(rest: &str) -> usize {
    match rest.as_bytes() {
        [_, _, b'.', ..] => 4,
        _ => 2,
    }
}

fn length(mm: f64) -> Length {
    Length::new(mm, LengthUnit::Millimetre).unwrap_or(Length::ZERO)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn each_fault_of_a_size_is_named() {
        for text in [
            "",
            "205",
            "205/55",
            "205/55-16",
            "a/55R16",
            "205/xR16",
            "205/55Rxx",
            "205/55R1",
        ] {
            assert_eq!(TireSize::parse(text), Err(TireError::Form), "{text}");
        }
        assert_eq!(TireSize::parse("95/55R16"), Err(TireError::Width(95)));
        assert_eq!(TireSize::parse("205/99R16"), Err(TireError::Aspect(99)));
        assert_eq!(TireSize::parse("205/55R30"), Err(TireError::Rim));
    }

    #[test]
    fn zr_half_inch_rims_and_small_letters_are_read() {
        let size = TireSize::parse("225/45zr17 94y").unwrap();
        assert_eq!(
            (size.aspect, size.load_index, size.speed_symbol),
            (45, Some(94), Some('Y'))
        );
        let size = TireSize::parse("225/70R19.5").unwrap();
        assert!((size.rim_in - 19.5).abs() < 1e-12 && size.load_index.is_none());
    }
}
