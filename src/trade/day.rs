//! A day as it stands in the record and as a person types it.

use chrono::NaiveDate;

/// A day in the form `YYYY-MM-DD` (ISO 8601), zeros before month and day may be left out; `None`
/// for what is no day of the calendar.
///
/// ```
/// use hubslate::trade::day::day_of;
///
/// assert_eq!(day_of("2028-02-29").map(|day| day.to_string()).as_deref(), Some("2028-02-29"));
/// assert_eq!(day_of("2026-02-29"), None); // 2026 is no leap year
/// ```
pub fn day_of(text: &str) -> Option<NaiveDate> {
    let mut parts = text.trim().split('-');
    let mut part = |most: usize| {
        let part = parts.next()?;
        let digits = part.bytes().all(|c| c.is_ascii_digit()) && part.len() <= most;
        part.parse::<u32>().ok().filter(|_| digits)
    };
    let (year, month, day) = (part(4)?, part(2)?, part(2)?);
    let whole = parts.next().is_none() && year >= 1000;
    NaiveDate::from_ymd_opt(i32::try_from(year).ok()?, month, day).filter(|_| whole)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn what_is_no_day_is_none() {
        for text in [
            "",
            "2026",
            "2026-01",
            "2026-1-1-1",
            "26-01-01",
            "2026-13-01",
            "2026-00-10",
            "2026-01-32",
            "+2026-01-01",
            "2026-01-+1",
            "2026-01-001",
            "02026-1-1",
            "2026/01/01",
            "1/2/2026",
        ] {
            assert_eq!(day_of(text), None, "{text}");
        }
        assert_eq!(day_of(" 2026-1-5 "), NaiveDate::from_ymd_opt(2026, 1, 5));
    }

    proptest! {
        // Held to chrono's own reader.
        #[test]
        fn every_day_is_read_as_chrono_reads_it(year in 1000_i32..=9999, nth in 1_u32..=366) {
            if let Some(this) = NaiveDate::from_yo_opt(year, nth) {
                let text = this.to_string();
                prop_assert_eq!(day_of(&text), text.parse().ok());
            }
        }
    }
}
