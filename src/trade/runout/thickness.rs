//! A rotor's thickness at places round it: how much it varies, and how thin it is.

use super::series::{FEWEST_PLACES, MOST_PLACES};
use crate::trade::play::budget::{Budget, IndicatorError, RigFacts};
use crate::trade::play::conformity::{Judged, judged};
use crate::trade::play::uncertainty::{Contribution, Guarded};
use crate::units::{Length, LengthUnit};
use crate::words;

words! {
    /// The smallest step that a micrometer shows.
    pub enum Micrometer {
        /// 0.01 mm.
        HundredthMm = "hundredth_mm",
        /// 0.001 mm.
        ThousandthMm = "thousandth_mm",
        /// 0.001 in.
        Thou = "thou",
        /// 0.0001 in.
        TenthThou = "tenth_thou",
    }
}

words! {
    /// What a limit of the thickness is of.
    pub enum Bound {
        /// The least thickness, often cast into the rotor itself.
        Least = "least",
        /// The most by which it may vary round the rotor.
        Variation = "variation",
    }
}

words! {
    /// What comes next at a rotor that was measured (common practice, no source).
    pub enum RotorNext {
        /// A limit was not looked up: of that nothing can be said.
        LookUp = "look_up",
        /// Thick enough and even.
        GoOn = "go_on",
        /// Too near a limit to prove anything: clean, zero, measure again.
        MeasureAgain = "measure_again",
        /// It varies too much: machined where enough is left, or a new one.
        Machine = "machine",
        /// Too thin: a new one.
        NewRotor = "new_rotor",
    }
}

impl Micrometer {
    /// What it reads in.
    pub const fn unit(self) -> LengthUnit {
        match self {
            Self::HundredthMm | Self::ThousandthMm => LengthUnit::Millimetre,
            Self::Thou | Self::TenthThou => LengthUnit::Inch,
        }
    }

    /// Decimals of its reading.
    pub const fn decimals(self) -> usize {
        match self {
            Self::HundredthMm => 2,
            Self::ThousandthMm | Self::Thou => 3,
            Self::TenthThou => 4,
        }
    }

    /// One step of it.
    pub const fn division(self) -> Length {
        match self {
            Self::HundredthMm => Length::millimetres(0.01),
            Self::ThousandthMm => Length::millimetres(0.001),
            Self::Thou => Length::thou(1.0),
            Self::TenthThou => Length::thou(0.1),
        }
    }
}

/// The next step from what the two limits say; `None` for one that was not looked up.
///
/// Too thin outweighs all; "not proven" on the good side asks for another measurement, on the bad
/// side it stands, since a thin rotor can break.
pub fn next_of_rotor(least: Option<Judged>, variation: Option<Judged>) -> RotorNext {
    let over = |judged: &Judged| judged.is_over();
    let unproven = |judged: &Judged| judged.result == Guarded::InNotProven;
    if least.as_ref().is_some_and(over) {
        RotorNext::NewRotor
    } else if variation.as_ref().is_some_and(over) {
        RotorNext::Machine
    } else if least.is_none() || variation.is_none() {
        RotorNext::LookUp
    } else if least.iter().chain(&variation).any(unproven) {
        RotorNext::MeasureAgain
    } else {
        RotorNext::GoOn
    }
}

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

    /// The readings, in their order.
    pub fn readings(&self) -> &[Length] {
        &self.readings
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

    /// How sure that is which a limit is of.
    pub fn budget_of(&self, bound: Bound) -> Budget {
        match bound {
            Bound::Least => self.budget_of_thinnest(),
            Bound::Variation => self.budget_of_variation(),
        }
    }

    /// What the readings say against a limit; "over" is the bad side of either.
    pub fn against(&self, bound: Bound, limit: Length) -> Judged {
        match bound {
            Bound::Least => self.is_thin(limit),
            Bound::Variation => self.varies(limit),
        }
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
