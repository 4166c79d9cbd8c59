//! The odometer as it was read, and whether it can follow an earlier one.

use crate::units::{Distance, DistanceUnit, TypedDistance};

/// An odometer reading: the digits as they stand, with their unit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Odometer {
    /// What was read.
    pub read: TypedDistance,
}

/// Why a reading should be looked at again. Nothing is refused.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum OdometerDoubt {
    /// Below zero.
    Negative,
    /// Less than at the earlier visit.
    WentBack {
        /// By how much.
        by: Distance,
    },
    /// More than 200 miles a day since then (common practice, no source).
    TooFast {
        /// Distance a day.
        a_day: Distance,
    },
    /// Told in another unit than before: miles taken for kilometres or the other way round.
    OtherUnit {
        /// The unit of the earlier visit.
        before: DistanceUnit,
    },
}

/// What nobody drives every day (common practice, no source).
const MOST_A_DAY: Distance = Distance::miles(200.0);

impl Odometer {
    /// The distance on it.
    pub fn distance(&self) -> Distance {
        self.read.distance()
    }

    /// What is odd about this reading, alone or after an `earlier` one of some days ago.
    pub fn doubts(&self, earlier: Option<(&Self, u32)>) -> Vec<OdometerDoubt> {
        let mut doubts = Vec::new();
        if self.distance() < Distance::ZERO {
            doubts.push(OdometerDoubt::Negative);
        }
        let Some((before, days)) = earlier else {
            return doubts;
        };
        if before.read.unit != self.read.unit {
            doubts.push(OdometerDoubt::OtherUnit {
                before: before.read.unit,
            });
        }
        let driven = self.distance().minus(before.distance());
        let a_day = driven.times(1.0 / f64::from(days.max(1)));
        if driven < Distance::ZERO {
            let by = driven.abs();
            doubts.push(OdometerDoubt::WentBack { by });
        } else if a_day > MOST_A_DAY {
            doubts.push(OdometerDoubt::TooFast { a_day });
        }
        doubts
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str, unit: DistanceUnit) -> Odometer {
        Odometer {
            read: TypedDistance::parse(text, unit).unwrap(),
        }
    }

    #[test]
    fn a_reading_follows_an_earlier_one_or_is_doubted() {
        let mi = DistanceUnit::Mile;
        let before = read("80000", mi);
        let after = |text, unit, days| read(text, unit).doubts(Some((&before, days)));
        assert_eq!(after("80900", mi, 30), []);
        assert!(matches!(
            after("79990", mi, 30)[..],
            [OdometerDoubt::WentBack { .. }]
        ));
        assert!(matches!(
            after("80500", mi, 2)[..],
            [OdometerDoubt::TooFast { .. }]
        ));
        assert_eq!(after("80400", mi, 2), []);
        assert!(matches!(
            after("129000", DistanceUnit::Kilometre, 3)[..],
            [OdometerDoubt::OtherUnit {
                before: DistanceUnit::Mile
            }]
        ));
        assert_eq!(read("-1", mi).doubts(None), [OdometerDoubt::Negative]);
    }
}
