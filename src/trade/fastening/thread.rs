//! A thread as it is printed, and the cross section that carries its load.

use crate::units::double;
use crate::units::{Area, AreaUnit, Length, LengthUnit};

/// A thread: the text as printed, and what it says.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct Thread {
    text: String,
    diameter: Length,
    pitch: Length,
    series: Series,
}

/// Which standard a thread is cut to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Series {
    /// `M12x1.5`: diameter and pitch in millimetres.
    Metric,
    /// `1/2-20`: diameter in inches, threads in an inch.
    Inch,
}

/// Why a text is no thread.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ThreadError {
    /// It is neither `M12x1.5` nor `1/2-20`.
    NotAThread,
    /// The pitch is missing: M12 alone is cut with three of them.
    NoPitch,
    /// No fastener of a wheel end has such a diameter or pitch.
    OutOfRange,
}

impl Thread {
    /// Reads a printed thread: `M12x1.5`, `M14 × 1,5`, `1/2-20`, `.4375-20 UNF`, `1 1/8-12`.
    ///
    /// # Errors
    /// The [`ThreadError`] that makes the text none.
    pub fn parse(printed: &str) -> Result<Self, ThreadError> {
        let plain = plain(printed);
        let (series, diameter, pitch) = match plain.strip_prefix('M') {
            Some(metric) => {
                let (diameter, pitch) = pair(metric, metric.split_once('X'))?;
                (Series::Metric, number(diameter)?, number(pitch)?)
            }
            None => {
                let (diameter, threads) = pair(&plain, plain.rsplit_once('-'))?;
                let diameter = 25.4 * fraction(diameter)?;
                (Series::Inch, diameter, 25.4 / number(threads)?)
            }
        };
        let fits = (3.0..=64.0).contains(&diameter) && (0.25..=6.0).contains(&pitch);
        if !fits || pitch > diameter / 3.0 {
            return Err(ThreadError::OutOfRange);
        }
        Ok(Self {
            text: printed.trim().to_owned(),
            diameter: Length::millimetres(diameter),
            pitch: Length::millimetres(pitch),
            series,
        })
    }

    /// Whether it is a metric thread.
    pub(crate) const fn is_metric(&self) -> bool {
        matches!(self.series, Series::Metric)
    }

    /// The text as it was typed.
    pub fn as_typed(&self) -> &str {
        &self.text
    }

    /// The nominal diameter.
    pub const fn diameter(&self) -> Length {
        self.diameter
    }

    /// From one turn of the thread to the next.
    pub const fn pitch(&self) -> Length {
        self.pitch
    }

    /// The stress area: that of the mean of pitch and root diameter.
    ///
    /// `A = π/4 · (d − c · P)²`, `c` 0.9382 for a metric thread, 0.9743 for an inch thread.
    ///
    /// # Source
    /// ISO 898-1 and ASME B1.1; checked against `tests/reference/04_fasteners.json`.
    pub fn stress_area(&self) -> Area {
        let factor = match self.series {
            Series::Metric => 0.9382,
            Series::Inch => 0.9743,
        };
        let mean = self.diameter.minus(self.pitch.times(factor)).mm();
        let square_mm = core::f64::consts::FRAC_PI_4 * mean * mean;
        Area::new(square_mm, AreaUnit::SquareMillimetre).unwrap_or(Area::ZERO)
    }

    /// Whether its diameter is this many millimetres, but for what is lost in print.
    pub(crate) fn is_about_mm(&self, diameter_mm: f64) -> bool {
        (self.diameter.in_unit(LengthUnit::Millimetre) - diameter_mm).abs() < 0.02
    }
}

/// Without spaces, but for one between two digits: `1 1/8` is no `11/8`.
fn plain(printed: &str) -> String {
    let mut plain = String::new();
    for word in printed.split_whitespace() {
        let digits = (plain.chars().last(), word.chars().next());
        if let (Some('0'..='9'), Some('0'..='9')) = digits {
            plain.push(' ');
        }
        plain.extend(word.chars().map(|c| match c {
            '×' | '*' => 'X',
            ',' => '.',
            '–' | '\u{2212}' => '-',
            other => other.to_ascii_uppercase(),
        }));
    }
    let series = ["UNEF", "UNF", "UNC", "UNS", "UN"];
    let cut = series.iter().find_map(|name| plain.strip_suffix(name));
    cut.unwrap_or(&plain).trim_end_matches('-').to_owned()
}

fn pair<'a>(
    text: &str,
    halves: Option<(&'a str, &'a str)>,
) -> Result<(&'a str, &'a str), ThreadError> {
    match halves {
        Some(halves) => Ok(halves),
        None if fraction(text).is_ok() => Err(ThreadError::NoPitch),
        None => Err(ThreadError::NotAThread),
    }
}

/// Inches as printed: `.5`, `1/2`, `1 1/8`, `1-1/8`.
fn fraction(text: &str) -> Result<f64, ThreadError> {
    let Some((over, under)) = text.split_once('/') else {
        return number(text);
    };
    let (inches, over) = match over.split_once([' ', '-']) {
        Some((inches, over)) => (number(inches)?, over),
        None => (0.0, over),
    };
    let part = number(over)? / number(under)?;
    if inches > 0.0 && part >= 1.0 {
        return Err(ThreadError::NotAThread);
    }
    Ok(inches + part)
}

fn number(text: &str) -> Result<f64, ThreadError> {
    let digits = text.chars().all(|c| c.is_ascii_digit() || c == '.');
    match double(text) {
        Some(number) if digits && number > 0.0 => Ok(number),
        _ => Err(ThreadError::NotAThread),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn reads(printed: &str, diameter_mm: f64, pitch_mm: f64) {
        let thread = Thread::parse(printed).unwrap();
        assert!((thread.diameter().mm() - diameter_mm).abs() < 1e-9);
        assert!((thread.pitch().mm() - pitch_mm).abs() < 1e-9);
        assert_eq!(thread.as_typed(), printed.trim());
    }

    #[test]
    fn a_thread_is_read_however_it_is_printed() {
        reads("M12x1.5", 12.0, 1.5);
        reads(" m14 × 1,5", 14.0, 1.5);
        reads("M22*1.5", 22.0, 1.5);
        reads("1/2-20", 12.7, 1.27);
        reads("7/16 - 20 UNF", 11.1125, 1.27);
        reads(".5–20", 12.7, 1.27);
    }

    // 1 1/8 in is 1.125 · 25.4 mm (the inch is 25.4 mm by definition), 28.6 mm to one decimal;
    // 11/8 in would be 34.9 mm.
    #[test]
    fn a_whole_inch_before_a_fraction_is_added_to_it() {
        reads("1 1/8-12", 28.575, 25.4 / 12.0);
        reads("1-1/8-12 UNF", 28.575, 25.4 / 12.0);
        reads("1  1/8 – 12", 28.575, 25.4 / 12.0);
        reads("1 1/4-12", 31.75, 25.4 / 12.0);
        reads("1-14", 25.4, 25.4 / 14.0);
        assert_eq!(Thread::parse("1 1/8"), Err(ThreadError::NoPitch));
        for none in ["1 9/8-12", "1/2 1/8-12", "1 1/8 12", "1 1-12"] {
            assert_eq!(Thread::parse(none), Err(ThreadError::NotAThread), "{none}");
        }
    }

    #[test]
    fn each_slip_has_its_name() {
        for printed in [
            "", "stud", "Mx1.5", "M12x", "1/0-20", "M1e1x1", "x", "M-3x1",
        ] {
            let slip = Thread::parse(printed).unwrap_err();
            assert!(
                matches!(slip, ThreadError::NotAThread | ThreadError::OutOfRange),
                "{printed}"
            );
        }
        assert_eq!(Thread::parse("M12"), Err(ThreadError::NoPitch));
        assert_eq!(Thread::parse("1/2-"), Err(ThreadError::NoPitch));
        assert_eq!(Thread::parse("1/2"), Err(ThreadError::NoPitch));
        assert_eq!(Thread::parse("M120x1.5"), Err(ThreadError::OutOfRange));
        assert_eq!(Thread::parse("M12x15"), Err(ThreadError::OutOfRange));
    }

    #[test]
    fn a_finer_pitch_carries_more() {
        let area = |text| Thread::parse(text).unwrap().stress_area();
        assert!(area("M12x1.75") < area("M12x1.5"));
        assert!(area("M12x1.5") < area("M12x1.25"));
        assert!(area("M12x1.25") < area("M14x1.5"));
    }
}
