//! When a torque wrench is due to be checked again, and how far off it may be.

use chrono::{Months, NaiveDate};

use crate::units::Torque;

/// After so many clicks a wrench is checked, where its manufacturer says nothing else.
///
/// # Source
/// ISO 6789-1:2017, 5.3 (quoted by calibration services); checked against
/// `tests/reference/04_fasteners.json`.
pub const CYCLES: u32 = 5_000;

/// After so many months at the latest, counted from the first use.
///
/// # Source
/// ISO 6789-1:2017, 5.3, and FAA AC 43.13-1B, 7-40, which gives the same; checked against
/// `tests/reference/04_fasteners.json`.
pub const MONTHS: u32 = 12;

/// The most that a setting wrench may be off, in hundredths of the set torque.
///
/// # Source
/// ISO 6789-1:2017, 5.1.5: 4 % where the largest torque is above 10 N·m, else 6 %; checked
/// against `tests/reference/04_fasteners.json`.
///
/// ```
/// use hubslate::trade::fastening::calibration::permitted_percent;
/// use hubslate::units::{Torque, TorqueUnit};
///
/// let percent = |most| Torque::new(most, TorqueUnit::NewtonMetre).map(permitted_percent);
/// assert_eq!([10.0, 200.0].map(percent), [Ok(6), Ok(4)]); // ISO 6789-1:2017, 5.1.5
/// ```
pub fn permitted_percent(largest: Torque) -> u8 {
    if largest > Torque::newton_metres(10.0) {
        4
    } else {
        6
    }
}

/// Why a wrench is to be checked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CheckDue {
    /// The day has passed.
    Day(NaiveDate),
    /// It has clicked so often.
    Clicks(u32),
    /// Nobody has said when it was last checked.
    Unknown,
}

/// The day by which a wrench checked on `checked` is checked again.
///
/// Calendar months: the same day of the month, or the last one where the month is shorter.
///
/// ```
/// use hubslate::trade::fastening::calibration::check_by;
/// use hubslate::trade::day::day_of;
///
/// // ISO 6789-1: twelve months; 2025 has no February 29.
/// assert_eq!(day_of("2024-02-29").map(check_by), day_of("2025-02-28"));
/// ```
pub fn check_by(checked: NaiveDate) -> NaiveDate {
    checked
        .checked_add_months(Months::new(MONTHS))
        .unwrap_or(NaiveDate::MAX)
}

/// Whether a wrench checked on `checked` is due by `today`, after so many clicks since.
pub fn check_due(checked: Option<NaiveDate>, clicks: u32, today: NaiveDate) -> Option<CheckDue> {
    let Some(checked) = checked else {
        return Some(CheckDue::Unknown);
    };
    let day = check_by(checked);
    if day <= today {
        Some(CheckDue::Day(day))
    } else if CYCLES <= clicks {
        Some(CheckDue::Clicks(clicks))
    } else {
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(year: i32, month: u32, day: u32) -> NaiveDate {
        NaiveDate::from_ymd_opt(year, month, day).unwrap()
    }

    // Expected dates from dateutil: `date(…) + relativedelta(months=12)`.
    #[test]
    fn twelve_months_are_counted_in_the_calendar() {
        for (checked, due) in [
            ((2027, 3, 10), (2028, 3, 10)),
            ((2027, 1, 31), (2028, 1, 31)),
            ((2028, 1, 31), (2029, 1, 31)),
            ((2028, 2, 29), (2029, 2, 28)),
            ((2027, 2, 28), (2028, 2, 28)),
        ] {
            let (y, m, d) = checked;
            let (due_y, due_m, due_d) = due;
            assert_eq!(check_by(day(y, m, d)), day(due_y, due_m, due_d));
        }
    }

    #[test]
    fn due_after_twelve_months_or_five_thousand_clicks() {
        let checked = Some(day(2025, 3, 10));
        assert_eq!(check_due(checked, 4_999, day(2026, 3, 9)), None);
        assert_eq!(
            check_due(checked, 0, day(2026, 3, 10)),
            Some(CheckDue::Day(day(2026, 3, 10)))
        );
        assert_eq!(
            check_due(checked, 5_000, day(2025, 4, 1)),
            Some(CheckDue::Clicks(5_000))
        );
        assert_eq!(check_due(None, 0, day(2025, 4, 1)), Some(CheckDue::Unknown));
    }
}
