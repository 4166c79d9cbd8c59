//! When an entry was noted, and the day on the wall then.

use chrono::NaiveDate;

/// When something was noted, and when it was done if that was told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Timestamp {
    /// When it was noted: milliseconds since 1970 in UTC, by the device's clock.
    pub utc_ms: i64,
    /// The device's offset from UTC then, in minutes, east positive.
    pub offset_min: i32,
    /// When it was done, if the technician told another time.
    pub recorded: Option<i64>,
}

impl Timestamp {
    /// The day on the wall where it was noted; `None` for a time that no calendar has.
    pub fn day(&self) -> Option<NaiveDate> {
        const DAY_MS: i64 = 86_400_000;
        /// Days from the first of January of the year 1 to the first of 1970, both counted.
        const BEFORE_1970: i64 = 719_163;
        let wall = self
            .utc_ms
            .checked_add(i64::from(self.offset_min) * 60_000)?;
        let days = wall.div_euclid(DAY_MS).checked_add(BEFORE_1970)?;
        NaiveDate::from_num_days_from_ce_opt(i32::try_from(days).ok()?)
    }
}
