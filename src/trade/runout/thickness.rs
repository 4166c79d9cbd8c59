//! A rotor's thickness at places round it: how much it varies, and how thin it is.

use super::series::{FEWEST_PLACES, MOST_PLACES};
use crate::trade::play::budget::{Budget, IndicatorError, RigFacts};
use crate::trade::play::conformity::{Judged, judged};
use crate::trade::play::uncertainty::Contribution;
use crate::units::Length;

/// Readings of one micrometer at places round a rotor, all at the same radius.
#[derive(Clone, Debug, PartialEq)]
pub struct Thickness {
    division: Length,
    readings: Vec<Length>,
}

/// Why readings say nothing of a rotor's thickness.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ThicknessFault {
    /// A variation is looked for at four places at least.
    TooFew {
        /// How many there are.
        given: usize,
    },
    /// Nobody measures at more than [`MOST_PLACES`].
    TooMany {
        /// How many there are.
        given: usize,
    },
    /// A thickness is above zero.
    NoThickness {
        /// Which one, from 0.
        index: usize,
    },
    /// A micrometer's division is above zero and no more than a tenth of a millimetre.
    Division {
        /// What was given.
        division: Length,
    },
}

/// With its ratchet a micrometer repeats no better than this (from memory, not read).
const MICROMETER_FLOOR: Length = Length::millimetres(0.002);
/// A micrometer up to 50 mm is right within this either way (ISO 3611, from memory, not read).
const MICROMETER_ERROR: Length = Length::millimetres(0.004);

impl Thickness {
    /// Readings at four to twenty-four places.
    ///
    /// # Errors
    /// [`ThicknessFault`] for too few or too many, or one that is no thickness.
    pub fn read(division: Length, readings: Vec<Length>) -> Result<Self, ThicknessFault> {
        let given = readings.len();
        if !(Length::ZERO < division && division <= Length::millimetres(0.1)) {
            return Err(ThicknessFault::Division { division });
        }
        if given < usize::from(FEWEST_PLACES) {
            return Err(ThicknessFault::TooFew { given });
        }
        if given > usize::from(MOST_PLACES) {
            return Err(ThicknessFault::TooMany { given });
        }
        if let Some(index) = readings.iter().position(|one| *one <= Length::ZERO) {
            return Err(ThicknessFault::NoThickness { index });
        }
        Ok(Self { division, readings })
    }

    /// The thinnest reading.
    pub fn thinnest(&self) -> Length {
        let first = self.thickest();
        self.readings.iter().copied().fold(first, Length::min)
    }

    /// The thickest reading.
    pub fn thickest(&self) -> Length {
        self.readings
            .iter()
            .copied()
            .fold(Length::ZERO, Length::max)
    }

    /// Thickest less thinnest.
    pub fn variation(&self) -> Length {
        self.thickest().minus(self.thinnest())
    }

    /// How sure the variation is: a difference, in which the micrometer's own error drops out.
    pub fn budget_of_variation(&self) -> Budget {
        let repeat = MICROMETER_FLOOR.mm() * 2_f64.sqrt();
        self.budget(repeat, Length::ZERO)
    }

    /// How sure the thinnest reading is. The division counts twice: once when zeroed.
    pub fn budget_of_thinnest(&self) -> Budget {
        self.budget(MICROMETER_FLOOR.mm(), MICROMETER_ERROR)
    }

    fn budget(&self, repeat: f64, error: Length) -> Budget {
        let rig = RigFacts {
            indicator: IndicatorError::Certificate { u: Length::ZERO },
            flex: error,
            temperature: None,
        };
        let repeat = Contribution {
            u: repeat,
            dof: None,
        };
        Budget::of_difference(repeat, self.division, &rig)
    }

    /// The variation against the most that the maker allows.
    pub fn varies(&self, most: Length) -> Judged {
        judged(self.variation(), &self.budget_of_variation(), most)
    }

    /// The thinnest reading against the least that is stamped on the rotor; "over" is "too thin".
    pub fn is_thin(&self, least: Length) -> Judged {
        let (thinnest, least) = (self.thinnest().times(-1.0), least.times(-1.0));
        judged(thinnest, &self.budget_of_thinnest(), least)
    }
}
