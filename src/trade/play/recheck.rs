//! When a bearing that is watched is to be looked at again.

use chrono::{Days, NaiveDate};

/// Within so many days.
const DAYS: u64 = 30;

/// By which day a bearing that was left to be watched on `day` is checked again.
///
/// The end of the calendar is the latest day there is.
///
/// # Source
/// Common practice, no source: a month of driving shows whether it gets worse.
pub fn recheck_by(day: NaiveDate) -> NaiveDate {
    day.checked_add_days(Days::new(DAYS))
        .unwrap_or(NaiveDate::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn thirty_days_on_by_the_calendar() {
        let day = |y, m, d| NaiveDate::from_ymd_opt(y, m, d).unwrap();
        // 2028 is a leap year.
        assert_eq!(recheck_by(day(2028, 2, 1)), day(2028, 3, 2));
        assert_eq!(recheck_by(day(2026, 12, 15)), day(2027, 1, 14));
        assert_eq!(recheck_by(NaiveDate::MAX), NaiveDate::MAX);
    }
}
