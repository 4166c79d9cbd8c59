//! The weights: how likely each cause is to begin with, and what each clue changes in it.
//!
//! All of it is common practice, no source: figures that two good technicians would argue over by
//! one step. A shop may put its own in their place.

use super::clue::{Cause, Clue, Complaint, Test};

/// The causes that clues weigh; [`Cause::Other`] is weighed by none.
pub const WEIGHED: usize = Cause::COUNT - 1;

/// What one clue says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Row {
    /// Which clue.
    pub clue: Clue,
    /// In how many of 1,000 cars it shows whose cause has nothing to do with it.
    pub anyway: u16,
    /// For each cause in the order of [`Cause::ALL`], in steps of two in the odds: 3 is eight times
    /// as likely, -2 a quarter, 0 says nothing.
    pub steps: [i8; WEIGHED],
}

/// All weights.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Table {
    /// For each complaint in the order of [`Complaint::ALL`], each cause in percent.
    pub starts: [[u8; Cause::COUNT]; Complaint::ALL.len()],
    /// A row for each clue, in the order of [`Clue::ALL`].
    pub rows: [Row; Clue::COUNT],
    /// How long each test takes in minutes, in the order of [`Test::ALL`].
    pub minutes: [u8; Test::ALL.len()],
}

/// What makes a table of one's own useless.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TableError {
    /// The percentages of this complaint are not 100 in all.
    Starts(Complaint),
    /// The row at this place is of another clue.
    Order(Clue),
    /// A weight of this clue is beyond [`MOST_STEPS`] either way.
    Weight(Clue),
    /// What this test can show would show in more than every car of this cause.
    Certain(Test, Cause),
    /// This test takes no time.
    Minutes(Test),
}

/// No single clue weighs more than this many steps either way.
pub const MOST_STEPS: i8 = 6;

/// A start of 0 % is counted as this share, so that clues can still raise it.
const LEAST_START: f64 = 0.005;

impl Table {
    /// How likely a cause is before anything was tried, as a share; they need not be 1 in all.
    pub fn start(&self, complaint: Complaint, cause: Cause) -> f64 {
        let row = self.starts.get(complaint as usize);
        let percent = row.and_then(|row| row.get(cause as usize));
        percent.map_or(LEAST_START, |percent| {
            (f64::from(*percent) / 100.0).max(LEAST_START)
        })
    }

    /// What a clue changes in a cause, in steps.
    pub fn steps(&self, clue: Clue, cause: Cause) -> i8 {
        let steps = self.row(clue).and_then(|row| row.steps.get(cause as usize));
        steps.copied().unwrap_or(0)
    }

    /// In which share of the cars a clue shows whose cause has nothing to do with it.
    pub fn anyway(&self, clue: Clue) -> f64 {
        self.row(clue)
            .map_or(0.0, |row| f64::from(row.anyway) / 1000.0)
    }

    /// How long a test takes, in whole minutes.
    pub fn whole_minutes(&self, test: Test) -> u8 {
        self.minutes.get(test as usize).copied().unwrap_or(1)
    }

    /// Whether it can be reckoned with.
    ///
    /// # Errors
    /// The first [`TableError`].
    pub fn check(&self) -> Result<(), TableError> {
        for (complaint, row) in Complaint::ALL.iter().zip(&self.starts) {
            if row.iter().map(|percent| u32::from(*percent)).sum::<u32>() != 100 {
                return Err(TableError::Starts(*complaint));
            }
        }
        for (clue, row) in Clue::ALL.iter().zip(&self.rows) {
            if row.clue != *clue {
                return Err(TableError::Order(*clue));
            }
            if row
                .steps
                .iter()
                .any(|steps| steps.unsigned_abs() > MOST_STEPS.unsigned_abs())
            {
                return Err(TableError::Weight(*clue));
            }
        }
        for (test, minutes) in Test::ALL.iter().zip(self.minutes) {
            if minutes == 0 {
                return Err(TableError::Minutes(*test));
            }
            for cause in Cause::ALL {
                let shows = |clue| self.anyway(clue) * f64::from(self.steps(clue, *cause)).exp2();
                if test.clues().map(shows).sum::<f64>() >= 1.0 {
                    return Err(TableError::Certain(*test, *cause));
                }
            }
        }
        Ok(())
    }

    fn row(&self, clue: Clue) -> Option<&Row> {
        self.rows.get(clue as usize)
    }
}

const fn row(clue: Clue, anyway: u16, steps: [i8; WEIGHED]) -> Row {
    Row {
        clue,
        anyway,
        steps,
    }
}

/// The table of the house (common practice, no source).
#[rustfmt::skip]
pub static TABLE: Table = Table {
    // Bearing, tire, CV joint, brake drag, ball joint, tie rod, differential, engine, rotor,
    // sensor, loose wheel, other.
    starts: [
        [38, 40, 3, 6, 0, 0, 5, 3, 1, 0, 1, 3], // Hum
        [5, 0, 70, 3, 3, 2, 3, 1, 0, 0, 5, 8], // Click
        [8, 2, 5, 2, 30, 20, 3, 2, 0, 0, 8, 20], // Clunk
        [6, 45, 4, 8, 2, 3, 1, 3, 22, 0, 3, 3], // Shake
        [25, 1, 1, 1, 0, 0, 0, 1, 0, 60, 0, 11], // WarningLight
    ],
    // The same order without the last.
    rows: [
            row(Clue::RisesWithSpeed, 450, [1, 1, 0, 0, -2, -2, 1, -3, -2, 0, -1]),
            row(Clue::ChangesWithSurface, 88, [-2, 3, 0, -1, 0, 0, -1, -1, 0, 0, 0]),
            row(Clue::SwerveOneWay, 85, [3, -1, 0, -1, 0, 0, -1, -3, -2, 0, 0]),
            row(Clue::SwerveNoChange, 450, [-1, 1, 0, 0, 0, 0, 1, 1, 0, 0, 0]),
            row(Clue::SameInNeutral, 450, [1, 1, -1, 0, 0, 0, -2, -4, 0, 0, 0]),
            row(Clue::DriveCoast, 100, [-2, -2, 1, 0, 0, 0, 3, 1, 0, 0, 0]),
            row(Clue::WhenParked, 56, [-4, -4, -3, -2, 0, 0, -2, 4, -4, 0, 0]),
            row(Clue::ClicksAtLock, 50, [-1, -3, 4, -1, 0, 0, -1, -3, 0, 0, 0]),
            row(Clue::BrakeChanges, 100, [0, -2, -1, 3, 0, 0, -1, -2, 1, 0, 0]),
            row(Clue::PulseBraking, 50, [-1, -2, -1, 0, 0, 0, -2, -3, 4, -1, 0]),
            row(Clue::ShakeAtSpeed, 88, [-2, 3, 1, -1, 0, 1, -1, 0, -2, 0, 1]),
            row(Clue::PlayGone, 22, [4, 0, 0, 0, -3, -3, 0, 0, 0, 0, -1]),
            row(Clue::PlayUprightStays, 44, [-2, 0, 0, 0, 4, -1, 0, 0, 0, 0, 2]),
            row(Clue::PlayAcrossStays, 44, [-2, 0, 0, 0, 0, 4, 0, 0, 0, 0, 2]),
            row(Clue::NoPlay, 850, [-1, 0, 0, 0, -2, -2, 0, 0, 0, 0, -3]),
            row(Clue::Grumble, 34, [4, -1, 0, -1, 0, 0, 1, 0, 0, 0, 0]),
            row(Clue::Scrape, 62, [0, 0, 0, 3, 0, 0, 0, 0, 1, 1, 0]),
            row(Clue::LoudestHub, 56, [4, -2, -1, -1, 0, 0, -2, -3, 0, 0, 0]),
            row(Clue::HotHub, 75, [2, -1, 0, 3, 0, 0, 0, 0, 0, 0, 0]),
            row(Clue::RotorHotter, 88, [-1, 0, 0, 3, 0, 0, 0, 0, 0, 0, 0]),
            row(Clue::SealStreak, 38, [3, 0, 0, 0, 0, 0, 0, 0, 0, 1, 0]),
            row(Clue::TornBoot, 88, [0, 0, 3, 0, 0, 0, 0, 0, 0, 0, 0]),
            row(Clue::CuppedTread, 100, [-1, 3, 0, 0, 1, 1, 0, 0, 0, 0, 0]),
            row(Clue::MovedWithTire, 56, [-4, 4, 0, 0, 0, 0, 0, 0, 0, 0, 0]),
            row(Clue::StayedAfterSwap, 235, [2, -4, 0, 0, 0, 0, 1, 0, 0, 0, 0]),
            row(Clue::SpeedDropsOut, 75, [1, 0, 0, 0, 0, 0, 0, 0, 0, 3, 0]),
            row(Clue::DialOver, 12, [5, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]),
            row(Clue::DialInside, 900, [-1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]),
            row(Clue::AfterImpact, 150, [2, 1, 0, 0, 1, 1, 0, 0, 0, 1, 0]),
            row(Clue::WheelWasOff, 40, [0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 4]),
            row(Clue::RecentWork, 100, [1, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1]),
    ],
    minutes: [
        1, 2, 1, 1, 1, 1, 1, 1, 1, 2, 5, 3, 1, 20, 3, 1, 2, 1, 2, 30, 8, 25, 1, 1, 1,
    ],
};
