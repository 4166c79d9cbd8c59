//! Lengths, days and times as a customer reads them.

use chrono::{Datelike, NaiveDate};

use super::time;
use crate::job::entry::Timestamp;
use crate::text::{self, Lang};
use crate::trade::day::day_of;
use crate::units::{Format, Length, LengthUnit, System};

/// The unit in which a customer reads a play.
pub(super) const fn unit(system: System) -> LengthUnit {
    match system {
        System::Metric => LengthUnit::Millimetre,
        System::Us => LengthUnit::Inch,
    }
}

/// `0.0020 in (0.05 mm)`, or `0.05 mm (0.0020 in)`.
pub fn length(format: Format, length: Length) -> String {
    let twin = one(format.other(), length, 2);
    format!("{} ({twin})", one(format, length, 3))
}

/// In the reader's unit alone.
pub(super) fn short(format: Format, length: Length) -> String {
    one(format, length, 3)
}

/// Four decimals of an inch; of a millimetre at most so many, and two where they say it all.
fn one(format: Format, length: Length, most: usize) -> String {
    let unit = unit(format.system);
    let decimals = match format.system {
        System::Us => 4,
        System::Metric => {
            let hundredths = 100.0 * length.mm();
            if (hundredths - hundredths.round()).abs() < 0.05 {
                2
            } else {
                most
            }
        }
    };
    format.length_in(length, unit, decimals).line()
}

/// About the thickness of a sheet of printer paper of 80 g/m² (20 lb): common practice, no source.
pub(super) fn paper(format: Format) -> String {
    let paper = Length::millimetres(0.1);
    match format.system {
        System::Us => format.length_in(paper, LengthUnit::Inch, 3).line(),
        System::Metric => format.length_in(paper, LengthUnit::Millimetre, 1).line(),
    }
}

/// A day in words: "Nov 29, 2026".
pub(super) fn day(lang: Lang, day: NaiveDate) -> String {
    text::day(lang, day.year(), day.month(), day.day())
}

/// A day of the record, `YYYY-MM-DD`, in words; any other text stays as it is.
pub fn date(lang: Lang, iso: &str) -> String {
    day_of(iso).map_or_else(|| iso.to_owned(), |parsed| day(lang, parsed))
}

/// When something was done, its day in words; that it was noted later if it was.
pub(super) fn moment(lang: Lang, at: &Timestamp) -> String {
    let words = |stamp: &str| match stamp.split_once(' ') {
        Some((day, time)) => format!("{}, {time}", date(lang, day)),
        None => stamp.to_owned(),
    };
    time::when_in(lang, at, words)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::DecimalMark;

    const US: Format = Format {
        system: System::Us,
        decimal: DecimalMark::Dot,
    };

    /// 0.05 mm are 0.001969 in, 0.0063 in are 0.16002 mm (1 in = 25.4 mm exactly).
    #[test]
    fn a_length_is_reported_in_inches_and_millimetres() {
        let limit = Length::millimetres(0.05);
        assert_eq!(length(US, limit), "0.0020\u{a0}in (0.05\u{a0}mm)");
        assert_eq!(length(US.other(), limit), "0.05\u{a0}mm (0.0020\u{a0}in)");
        let play = Length::millimetres(0.125);
        assert_eq!(length(US.other(), play), "0.125\u{a0}mm (0.0049\u{a0}in)");
        assert_eq!(
            length(US, Length::millimetres(0.160_02)),
            "0.0063\u{a0}in (0.16\u{a0}mm)"
        );
    }

    #[test]
    fn a_day_is_reported_in_words_and_another_text_as_it_is() {
        assert_eq!(date(Lang::English, "2026-11-29"), "Nov 29, 2026");
        assert_eq!(date(Lang::English, "2026-01-05"), "Jan 5, 2026");
        assert_eq!(date(Lang::English, "soon"), "soon");
    }
}
