//! Times as they stand in the entries; nobody asks a clock here.

use chrono::{DateTime, Datelike, NaiveDate, NaiveDateTime, TimeDelta, Timelike};

use crate::job::entry::Timestamp;
use crate::text::{self, Lang};

/// A told time closer than this to the clock's is the same moment.
const SAME_MS: u64 = 60_000;

fn local(utc_ms: i64, offset_min: i32) -> Option<NaiveDateTime> {
    let utc = DateTime::from_timestamp_millis(utc_ms)?.naive_utc();
    utc.checked_add_signed(TimeDelta::minutes(i64::from(offset_min)))
}

/// The local day on which something was done.
pub(super) fn day(at: &Timestamp) -> Option<NaiveDate> {
    local(at.recorded.unwrap_or(at.utc_ms), at.offset_min).map(|time| time.date())
}

/// `2025-03-04 09:30` in the time of the device; empty for a time that no calendar has.
///
/// `utc_ms` are milliseconds since 1970 in UTC, `offset_min` minutes east of it.
pub fn stamp(utc_ms: i64, offset_min: i32) -> String {
    local(utc_ms, offset_min).map_or_else(String::new, |t| {
        format!(
            "{:04}-{:02}-{:02} {:02}:{:02}",
            t.year(),
            t.month(),
            t.day(),
            t.hour(),
            t.minute()
        )
    })
}

/// Whether another time was told than the one at which it was noted.
fn is_noted_later(at: &Timestamp) -> bool {
    at.recorded
        .is_some_and(|context| context.abs_diff(at.utc_ms) >= SAME_MS)
}

/// When it was done, and that it was noted later if it was.
pub fn when(lang: Lang, at: &Timestamp) -> String {
    when_in(lang, at, str::to_owned)
}

/// The same, each stamp in words of the caller's.
pub(super) fn when_in(lang: Lang, at: &Timestamp, words: impl Fn(&str) -> String) -> String {
    let noted = words(&stamp(at.utc_ms, at.offset_min));
    match at.recorded {
        Some(context) if is_noted_later(at) => {
            text::noted_later(lang, &words(&stamp(context, at.offset_min)), &noted)
        }
        _ => noted,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_offset_is_added_and_crosses_midnight() {
        // 2025-03-04 23:30 UTC, from the calendar: 20151 days and 84600 s after 1970.
        let utc_ms = (20_151 * 86_400 + 84_600) * 1000;
        assert_eq!(stamp(utc_ms, 0), "2025-03-04 23:30");
        assert_eq!(stamp(utc_ms, 60), "2025-03-05 00:30");
        assert_eq!(stamp(utc_ms, -480), "2025-03-04 15:30");
        assert_eq!(stamp(i64::MAX, 0), "");
    }

    #[test]
    fn noted_later_only_when_another_time_was_reported() {
        let at = |recorded| Timestamp {
            utc_ms: 3_600_000,
            offset_min: 0,
            recorded,
        };
        assert_eq!(when(Lang::English, &at(None)), "1970-01-01 01:00");
        assert_eq!(
            when(Lang::English, &at(Some(3_590_000))),
            "1970-01-01 01:00"
        );
        let later = when(Lang::English, &at(Some(0)));
        assert!(
            later.contains("1970-01-01 00:00") && later.contains("noted later"),
            "{later}"
        );
    }
}
