//! Readings round a face: where each was taken, which of them count, and how far they reach.

use crate::trade::play::uncertainty::count;
use crate::trade::play::{Dial, Divisions};
use crate::units::{Angle, AngleUnit, Length};
use crate::words;

words! {
    /// Why a reading does not count.
    pub enum LeftOut {
        /// The tip fluttered over a stud hole: 0.03 to 0.05 mm there is normal.
        StudHole = "stud_hole",
        /// Rust or dirt was under the tip and cannot be cleaned off here.
        Dirt = "dirt",
        /// The tip slipped or the base was touched.
        Slip = "slip",
    }
}

/// One reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// Where, from the first place in the numbering direction of the studs.
    pub angle: Angle,
    /// Where the needle stood.
    pub needle: Divisions,
    /// Why it does not count, if it does not.
    pub left_out: Option<LeftOut>,
}

/// Readings once round a face, with one dial that was not touched in between.
#[derive(Clone, Debug, PartialEq)]
pub struct Series {
    dial: Dial,
    spots: Vec<Spot>,
}

/// Why readings are no series.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SeriesError {
    /// One reading has nothing to be compared with.
    TooFew {
        /// How many count.
        saved: usize,
        /// How many are needed.
        needed: usize,
    },
    /// Nobody reads a face at more places than [`MOST_PLACES`].
    TooMany {
        /// How many there are.
        given: usize,
    },
    /// A reading that is not on this dial's face.
    OffTheDial {
        /// Which one, from 0.
        index: usize,
    },
    /// The places were read on more than one dial.
    MixedDials,
    /// A dial with a short turn, on which the needle may have gone round unseen: ask the turns.
    AskTurns {
        /// Which one, from 0.
        index: usize,
    },
}

/// A run-out is a difference; what a wave needs beyond that, its fit says.
pub const FEWEST_READINGS: usize = 2;
/// The fewest places round a face that are asked for.
pub const FEWEST_PLACES: u8 = 4;
/// The most whole turns that a needle is told to have gone from the first place.
pub const MOST_TURNS: i32 = 2;
/// The most places round a face.
pub const MOST_PLACES: u8 = 24;

impl Series {
    /// Readings at their own angles, some places left free, the first perhaps read again at 360°.
    ///
    /// # Errors
    /// [`SeriesError`] for too few that count, too many, or one that is off the dial.
    pub fn read(dial: Dial, spots: Vec<Spot>) -> Result<Self, SeriesError> {
        let face = f64::from(dial.divisions_per_turn());
        let off = |spot: &Spot| spot.needle.count().abs() > face;
        if let Some(index) = spots.iter().position(off) {
            return Err(SeriesError::OffTheDial { index });
        }
        Self::continued_on(dial, spots)
    }

    /// The same for needles that are told on by whole turns from the first place.
    ///
    /// # Errors
    /// [`SeriesError`] for too few that count, or too many.
    pub fn continued_on(dial: Dial, spots: Vec<Spot>) -> Result<Self, SeriesError> {
        // One more than there are places: the first read again shows whether the rig held.
        if spots.len() > usize::from(MOST_PLACES) + 1 {
            let given = spots.len();
            return Err(SeriesError::TooMany { given });
        }
        let series = Self { dial, spots };
        let saved = series.saved().count();
        if saved < FEWEST_READINGS {
            let needed = FEWEST_READINGS;
            return Err(SeriesError::TooFew { saved, needed });
        }
        Ok(series)
    }

    /// Readings at equal steps from the first place on; `None` where a place was skipped.
    ///
    /// # Errors
    /// As [`Series::read`].
    pub fn equally_spaced(dial: Dial, needles: &[Option<Divisions>]) -> Result<Self, SeriesError> {
        let places = needles.len();
        let spots = needles.iter().enumerate().filter_map(|(place, needle)| {
            Some(Spot {
                angle: equal_step(place, places),
                needle: (*needle)?,
                left_out: None,
            })
        });
        Self::read(dial, spots.collect())
    }

    /// The dial it was read on.
    pub const fn dial(&self) -> &Dial {
        &self.dial
    }

    /// Every reading, those that do not count with their reason.
    pub fn spots(&self) -> &[Spot] {
        &self.spots
    }

    /// The readings that count, with their worth.
    pub fn saved(&self) -> impl Iterator<Item = (Angle, Length)> + '_ {
        self.spots
            .iter()
            .filter(|spot| spot.left_out.is_none())
            .map(|spot| (spot.angle, self.dial.worth(spot.needle)))
    }

    /// Total indicator reading: the largest less the smallest reading that counts.
    pub fn tir(&self) -> Length {
        let readings = || self.saved().map(|(_, reading)| reading);
        let first = readings().next().unwrap_or(Length::ZERO);
        let highest = readings().fold(first, Length::max);
        highest.minus(readings().fold(first, Length::min))
    }

    /// Arithmetic mean of the readings that count.
    pub fn mean(&self) -> Length {
        let sum = self.saved().fold(Length::ZERO, |sum, (_, r)| sum.plus(r));
        sum.times(1.0 / count(self.saved().count()))
    }

    /// How far the needle came back beside where it was, if a place was read again.
    pub fn closure(&self) -> Option<Length> {
        let saved: Vec<_> = self.saved().collect();
        let apart = saved.iter().enumerate().flat_map(|(index, one)| {
            let later = saved.iter().skip(index + 1);
            later
                .filter(|other| is_same_place(one.0, other.0))
                .map(|other| other.1.minus(one.1).abs())
        });
        apart.reduce(Length::max)
    }
}

/// The angle of one of `places` equal steps, the first at 0.
pub fn equal_step(place: usize, places: usize) -> Angle {
    let turn = count(place) / count(places.max(1));
    Angle::new(turn, AngleUnit::Turn).unwrap_or(Angle::ZERO)
}

/// Angles closer than this are one place.
pub(super) const SAME_PLACE_DEG: f64 = 0.01;

/// A hundredth of a degree apart is the same place.
pub fn is_same_place(one: Angle, other: Angle) -> bool {
    let apart = one
        .minus(other)
        .in_unit(AngleUnit::Degree)
        .rem_euclid(360.0);
    apart.min(360.0 - apart) < SAME_PLACE_DEG
}
