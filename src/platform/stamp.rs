//! A moment as a person and a file tell it: UTC and the offset that held at that place.

use chrono::{DateTime, NaiveDateTime};

/// One moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Stamp {
    /// Milliseconds since 1970-01-01T00:00:00Z.
    pub utc_ms: i64,
    /// Minutes that local time is ahead of UTC; east is positive.
    pub offset_min: i32,
}

impl Stamp {
    /// What the clock on the wall showed; `None` outside the years that chrono knows.
    pub fn local(self) -> Option<NaiveDateTime> {
        let ahead_ms = i64::from(self.offset_min).checked_mul(60_000)?;
        let shifted = self.utc_ms.checked_add(ahead_ms)?;
        DateTime::from_timestamp_millis(shifted).map(|moment| moment.naive_utc())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(utc_ms: i64, offset_min: i32, expected: &str) {
        let local = Stamp { utc_ms, offset_min }.local().unwrap();
        assert_eq!(local.to_string(), expected);
    }

    // Expected values from GNU date: `date -u -d @SECONDS` with the offset added by hand.
    #[test]
    fn local_time_is_utc_plus_the_offset() {
        check(1_700_000_000_000, 0, "2023-11-14 22:13:20");
        check(1_700_000_000_000, 120, "2023-11-15 00:13:20");
        check(1_700_000_000_000, -330, "2023-11-14 16:43:20");
        check(0, -1, "1969-12-31 23:59:00");
    }

    #[test]
    fn a_moment_beyond_all_calendars_has_no_local_time() {
        assert_eq!(
            Stamp {
                utc_ms: i64::MAX,
                offset_min: 1
            }
            .local(),
            None
        );
        assert_eq!(
            Stamp {
                utc_ms: i64::MAX,
                offset_min: 0
            }
            .local(),
            None
        );
    }
}
