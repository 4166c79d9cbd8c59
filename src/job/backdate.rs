//! What was done a while ago and is noted now, because the hands were not free.

use crate::words;

words! {
    /// How long ago, about: nobody looks at a watch in gloves.
    pub enum Ago {
        /// A quarter of an hour.
        Quarter = "quarter",
        /// Half an hour.
        Half = "half",
        /// An hour.
        Hour = "hour",
        /// Two hours.
        TwoHours = "two_hours",
        /// A day.
        Yesterday = "yesterday",
    }
}

impl Ago {
    /// In minutes.
    pub const fn minutes(self) -> u16 {
        match self {
            Self::Quarter => 15,
            Self::Half => 30,
            Self::Hour => 60,
            Self::TwoHours => 120,
            Self::Yesterday => 1440,
        }
    }

    /// The time so long before another; both in milliseconds since 1970 in UTC.
    pub fn before(self, utc_ms: i64) -> i64 {
        utc_ms.saturating_sub(i64::from(self.minutes()) * 60_000)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // 90 000 000 ms after 1970 is 1970-01-02 01:00; an hour before is midnight (the calendar).
    #[test]
    fn an_hour_ago_is_an_hour_before_and_never_later() {
        assert_eq!(Ago::Hour.before(90_000_000), 86_400_000);
        assert!(Ago::ALL.iter().all(|ago| ago.before(0) < 0));
    }
}
