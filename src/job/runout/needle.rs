//! The needle from place to place: told on from the first one, past zero and by whole turns.

use super::{Run, angle};
use crate::job::entry::RunoutReading;
use crate::job::sheet::JobState;
use crate::sorted::Sorted;
use crate::trade::play::{Dial, Divisions};
use crate::trade::runout::series::MOST_TURNS;
use crate::trade::runout::{Series, SeriesError, Spot};
use crate::units::{Decimal, Length};

impl Run<'_> {
    /// Whether its places were read on another dial than the one on board: a run is read on one.
    pub fn is_on_other_dial(&self, sheet: &JobState) -> bool {
        let here = sheet.dial();
        let mut read = self.readings.iter().filter(|r| r.divisions.is_some());
        read.any(|reading| reading.dial != here)
    }

    /// The first place that was read: every other needle is told on from it.
    fn first_read(&self) -> Option<(u8, Divisions)> {
        let mut read = self.readings.iter().copied();
        read.find_map(|reading| {
            let needle = reading.divisions.as_ref()?;
            Some((reading.place, Divisions::typed(needle)))
        })
    }

    /// Where the needle stood last: at this place if it was read already, else at the one before.
    pub fn stood_last(&self, place: u8) -> Option<&Decimal> {
        let up_to = self.readings.iter().rev().copied();
        let mut up_to = up_to.filter(|reading| reading.place <= place);
        up_to.find_map(|reading| reading.divisions.as_ref())
    }

    /// Whether it is the first place that is read, where the dial is set to zero.
    pub fn is_first(&self, place: u8) -> bool {
        self.first_read().is_none_or(|(first, _)| first == place)
    }

    /// What can be repeated at a place: where the needle stood last, once an earlier one was read.
    pub fn same(&self, place: u8) -> Option<&Decimal> {
        let is_begun = self.first_read().is_some_and(|(first, _)| first < place);
        self.stood_last(place).filter(|_| is_begun)
    }

    /// How far a needle stands from the first place's, while the number is one and it is known
    /// how often the needle went round.
    pub fn from_first(&self, text: &str, turns: Option<i32>) -> Option<Length> {
        let (_, first) = self.first_read()?;
        let here = Divisions::typed(&Decimal::parse(text).ok()?);
        let here = continued_on(&self.dial, first, (here, turns))?;
        Some(self.dial.worth(here).minus(self.dial.worth(first)))
    }

    /// The ways that the needle may have gone from the first place to this one, the shortest three
    /// first: how many whole turns beside the readings, and how far that is. Empty where the
    /// turns need not be told.
    pub fn ways(&self, place: u8, text: &str) -> Vec<(i32, Length)> {
        let first = self.first_read();
        if !self.dial.has_short_turn() || first.is_none_or(|(first, _)| first == place) {
            return Vec::new();
        }
        let recorded = |turns| Some((turns, self.from_first(text, Some(turns))?));
        let mut ways: Vec<_> = (-MOST_TURNS..=MOST_TURNS).filter_map(recorded).collect();
        ways.order_by(|a, b| a.1.mm().abs().total_cmp(&b.1.mm().abs()));
        ways.truncate(3);
        ways
    }

    /// The readings as a series; a needle past zero is told on from the first.
    ///
    /// # Errors
    /// [`SeriesError`] where they are none: several dials, a short turn without its turns.
    pub fn series(&self) -> Result<Series, SeriesError> {
        let read: Vec<(&RunoutReading, Divisions)> = self
            .readings
            .iter()
            .filter_map(|r| Some((*r, Divisions::typed(r.divisions.as_ref()?))))
            .collect();
        if !read.is_empty() && Dial::shared(read.iter().map(|(r, _)| r.dial)).is_none() {
            return Err(SeriesError::MixedDials);
        }
        let face = f64::from(self.dial.divisions_per_turn());
        let off = |(_, needle): &(_, Divisions)| needle.count().abs() > face;
        if let Some(index) = read.iter().position(off) {
            return Err(SeriesError::OffTheDial { index });
        }
        // Within half a turn of zero, so that no place is told beyond the face.
        let zero = Divisions::ZERO;
        let first = read.first().map_or(zero, |(_, first)| *first);
        let start = self.dial.nearest(first, zero);
        let spot = |(index, (reading, needle)): (usize, &(&RunoutReading, Divisions))| {
            let turns = if index == 0 { Some(0) } else { reading.turns };
            let gone = continued_on(&self.dial, first, (*needle, turns));
            let gone = gone.ok_or(SeriesError::AskTurns { index })?;
            let needle = Divisions::new(start.count() + gone.count() - first.count());
            Ok(Spot {
                angle: angle(reading),
                needle: needle.ok_or(SeriesError::OffTheDial { index })?,
                left_out: reading.left_out,
            })
        };
        let spots: Result<Vec<Spot>, SeriesError> = read.iter().enumerate().map(spot).collect();
        Series::continued_on(self.dial, spots?)
    }
}

/// Where a needle stands, told on from the first place: with its whole turns where they were
/// told, else the short way round. `None` on a dial whose turns must be told and were not.
fn continued_on(
    dial: &Dial,
    first: Divisions,
    (here, turns): (Divisions, Option<i32>),
) -> Option<Divisions> {
    let face = f64::from(dial.divisions_per_turn());
    match turns {
        Some(turns) => Divisions::new(here.count() + f64::from(turns) * face),
        None if dial.has_short_turn() => None,
        None => Some(dial.nearest(here, first)),
    }
}
