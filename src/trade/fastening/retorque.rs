//! When the wheel fasteners are to be checked again.

use chrono::{Days, NaiveDate};

use crate::trade::vehicle::odometer::Odometer;
use crate::units::{Distance, DistanceUnit};

/// After how far and how long.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RetorqueRule {
    /// Due after this distance.
    pub after: Distance,
    /// Not before so many days, when nobody knows the distance yet.
    pub first_day: u16,
    /// By so many days at the latest.
    pub last_day: u16,
}

/// When it is due.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RetorqueDue {
    /// The odometer at which it is due, if it was read.
    pub at: Option<Distance>,
    /// From this day on the customer can be called and asked for the odometer.
    pub from: NaiveDate,
    /// Overdue after this day, whatever the odometer says.
    pub by: NaiveDate,
}

impl RetorqueRule {
    /// The earliest of the published figures, 50 to 100 miles (80 to 160 km), in the unit of the
    /// odometer; two to five days, since a phone without signal does not know the distance.
    ///
    /// # Source
    /// Distance: fleet press on the re-torque of wheels, read. Days: common practice, no source.
    pub const fn published(unit: DistanceUnit) -> Self {
        let after = match unit {
            DistanceUnit::Mile => Distance::miles(50.0),
            DistanceUnit::Kilometre => Distance::kilometres(80.0),
        };
        Self {
            after,
            first_day: 2,
            last_day: 5,
        }
    }
}

/// When a wheel that was fastened on `day` is due again.
///
/// The end of the calendar is the latest day there is.
pub fn retorque_due(
    day: NaiveDate,
    odometer: Option<&Odometer>,
    rule: RetorqueRule,
) -> RetorqueDue {
    let later = |days: u16| {
        day.checked_add_days(Days::new(u64::from(days)))
            .unwrap_or(NaiveDate::MAX)
    };
    RetorqueDue {
        at: odometer.map(|read| read.distance().plus(rule.after)),
        from: later(rule.first_day),
        by: later(rule.last_day),
    }
}

impl RetorqueDue {
    /// Whether it is due now: the day has passed, or the odometer has reached it.
    pub fn is_due(&self, today: NaiveDate, odometer: Option<Distance>) -> bool {
        let reached = match (self.at, odometer) {
            (Some(at), Some(now)) => now >= at,
            _ => false,
        };
        reached || today >= self.by
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::TypedDistance;

    fn day(day: u32) -> NaiveDate {
        NaiveDate::from_ymd_opt(2025, 12, day).unwrap()
    }

    #[test]
    fn due_at_the_earliest_published_distance_in_the_odometers_unit() {
        for (unit, after, at) in [
            (DistanceUnit::Mile, 50.0, 81_250.0),
            (DistanceUnit::Kilometre, 80.0, 81_280.0),
        ] {
            let rule = RetorqueRule::published(unit);
            assert!((rule.after.in_unit(unit) - after).abs() < 1e-9);
            let read = TypedDistance::parse("81200", unit).unwrap();
            let due = retorque_due(day(30), Some(&Odometer { read }), rule);
            assert!((due.at.unwrap().in_unit(unit) - at).abs() < 1e-6);
            assert_eq!(due.from, NaiveDate::from_ymd_opt(2026, 1, 1).unwrap());
            assert_eq!(due.by, NaiveDate::from_ymd_opt(2026, 1, 4).unwrap());
        }
    }

    #[test]
    fn due_by_whichever_comes_first() {
        let rule = RetorqueRule::published(DistanceUnit::Mile);
        let read = TypedDistance::parse("100", DistanceUnit::Mile).unwrap();
        let due = retorque_due(day(1), Some(&Odometer { read }), rule);
        assert!(!due.is_due(day(3), Some(Distance::miles(149.0))));
        assert!(due.is_due(day(2), Some(Distance::miles(150.1))));
        assert!(due.is_due(day(6), Some(Distance::miles(101.0))));
        assert!(!due.is_due(day(5), None));
        assert!(due.is_due(day(6), None));
        assert_eq!(retorque_due(day(1), None, rule).at, None);
    }
}
