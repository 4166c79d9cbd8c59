//! What goes between the shop and its vans: when a job is done, and what the shop has of it.

use core::fmt;

use chrono::NaiveDate;

use crate::job::entry::LogId;

/// When, and by which van, a job is done.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Slot {
    /// The day.
    pub day: NaiveDate,
    /// When on that day, by the clock on the wall; nothing where any time will do.
    pub time: Option<DayTime>,
    /// The van's mark; empty if any van may.
    pub van: String,
}

/// A time of day in whole minutes, by the clock on the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct DayTime {
    minutes: u16,
}

impl DayTime {
    /// The time of `HH:MM`, 24 hours a day; `None` for any other text.
    pub fn parse(text: &str) -> Option<Self> {
        let (hours, minutes) = text.split_once(':')?;
        let two = |text: &str, below: u16| {
            let plain = text.len() == 2 && text.bytes().all(|byte| byte.is_ascii_digit());
            let value = text.parse::<u16>().ok()?;
            (plain && value < below).then_some(value)
        };
        let (hours, minutes) = (two(hours, 24)?, two(minutes, 60)?);
        Some(Self {
            minutes: hours * 60 + minutes,
        })
    }
}

/// `HH:MM`.
impl fmt::Display for DayTime {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{:02}:{:02}", self.minutes / 60, self.minutes % 60)
    }
}

/// What the shop has, as it answers a van.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Confirmation {
    /// One line a log and device.
    pub held: Vec<Held>,
}

/// The entries of one device in one log that the shop has.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Held {
    /// The log.
    pub log: LogId,
    /// The device that noted them.
    pub device: String,
    /// The last of its running numbers.
    pub through: u64,
    /// How many entries that are.
    pub count: u64,
    /// The digest of these entries, as that of a log.
    pub digest: String,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_time_of_day_is_two_digits_and_two() {
        let shown = |text| DayTime::parse(text).map(|time| time.to_string());
        for text in ["00:00", "09:05", "23:59"] {
            assert_eq!(shown(text).as_deref(), Some(text));
        }
        for text in [
            "", "9:05", "24:00", "12:60", "12:5", "+1:00", "12:00:00", "ab:cd",
        ] {
            assert_eq!(shown(text), None, "{text}");
        }
        assert!(DayTime::parse("09:59") < DayTime::parse("10:00"));
    }
}
