//! A rotor's thickness at places round it: how much it varies, and how thin it is.

use super::harmonics::Undetermined;
use super::heights::Heights;
use super::reach::Reach;
use super::series::{FEWEST_PLACES, MOST_PLACES};
use super::shape::shape_of;
use crate::trade::play::budget::{Budget, IndicatorError, RigFacts};
use crate::trade::play::conformity::{Judged, judged};
use crate::trade::play::uncertainty::{Contribution, Guarded, rectangle};
use crate::units::{Angle, Length, LengthUnit};
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
        /// Too near a limit or too few places to prove anything: clean, zero, measure again.
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

/// What the places say of one limit: judged, or too few of them to say anything.
pub type Said = Result<Judged, Undetermined>;

/// The next step from what the two limits say; `None` for one that was not looked up.
///
/// Too thin outweighs all, proven or not, since a thin rotor can break. A variation that is not
/// proven may be scatter, so that it is measured again before a rotor is machined.
pub fn next_of_rotor(least: Option<Judged>, variation: Option<Said>) -> RotorNext {
    let is = |result| move |said: &Said| said.is_ok_and(|judged| judged.result == result);
    if least.is_some_and(|judged| judged.is_over()) {
        RotorNext::NewRotor
    } else if variation.as_ref().is_some_and(is(Guarded::ProvenOut)) {
        RotorNext::Machine
    } else {
        match (least, variation) {
            (None, _) | (_, None) => RotorNext::LookUp,
            (Some(least), Some(variation)) => {
                let proven = is(Guarded::ProvenIn);
                if proven(&Ok(least)) && proven(&variation) {
                    RotorNext::GoOn
                } else {
                    RotorNext::MeasureAgain
                }
            }
        }
    }
}

/// Readings of one micrometer at places round a rotor, all at the same radius.
#[derive(Clone, Debug, PartialEq)]
pub struct Thickness {
    heights: Heights,
}

/// Why readings say nothing of a rotor's thickness.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ThicknessError {
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

/// No micrometer for rotors reads coarser.
pub(super) const LARGEST_DIVISION: Length = Length::millimetres(0.1);
/// With its ratchet a micrometer repeats no better than this (from memory, not read).
pub(super) const MICROMETER_FLOOR: Length = Length::millimetres(0.002);
/// A micrometer up to 50 mm is right within this either way (ISO 3611:1978, the maximum error of
/// measurement for 0 to 25 and 25 to 50 mm; from memory, not read. The later editions, of 2010 and
/// 2023, leave the value to the manufacturer).
pub(super) const MICROMETER_ERROR: Length = Length::millimetres(0.004);

impl Thickness {
    /// Readings at four to twenty-four places.
    ///
    /// # Errors
    /// [`ThicknessError`] for too few or too many, or one that is no thickness.
    pub fn read(division: Length, readings: Vec<(Angle, Length)>) -> Result<Self, ThicknessError> {
        let given = readings.len();
        if !(Length::ZERO < division && division <= LARGEST_DIVISION) {
            return Err(ThicknessError::Division { division });
        }
        if given < usize::from(FEWEST_PLACES) {
            return Err(ThicknessError::TooFew { given });
        }
        if given > usize::from(MOST_PLACES) {
            return Err(ThicknessError::TooMany { given });
        }
        if let Some(index) = readings.iter().position(|one| one.1 <= Length::ZERO) {
            return Err(ThicknessError::NoThickness { index });
        }
        let heights = Heights::new(readings, division);
        Ok(Self { heights })
    }

    /// The readings, in their order.
    pub fn readings(&self) -> impl Iterator<Item = Length> + '_ {
        self.heights.places().iter().map(|(_, reading)| *reading)
    }

    /// The thinnest reading: the lowest of several is low on average, which is the careful side.
    pub fn thinnest(&self) -> Length {
        self.readings().fold(self.thickest(), Length::min)
    }

    /// The thickest reading.
    pub fn thickest(&self) -> Length {
        self.readings().fold(Length::ZERO, Length::max)
    }

    /// Thickest less thinnest reading, scatter and all.
    pub fn range(&self) -> Length {
        self.heights.range()
    }

    /// The variation itself, told as a runout is: what goes round the rotor beyond scatter. It is
    /// a difference, in which the micrometer's own error drops out.
    ///
    /// # Errors
    /// [`Undetermined`] where too few places leave no reading to tell scatter by.
    pub fn variation(&self) -> Result<Reach, Undetermined> {
        let moves = shape_of(&self.heights)?.moves;
        let none = Undetermined::NoSpare { more: 1 };
        Reach::new(moves.by, moves.scatter, Length::ZERO).map_err(|_| none)
    }

    /// How sure the thinnest reading is. The division counts twice: once when zeroed.
    pub fn budget_of_thinnest(&self) -> Budget {
        let rig = RigFacts {
            indicator: IndicatorError::Certificate {
                u: Length::millimetres(rectangle(MICROMETER_ERROR.mm())),
            },
            flex: Length::ZERO,
            temperature: None,
        };
        let repeat = Contribution {
            u: MICROMETER_FLOOR.mm(),
            dof: None,
        };
        Budget::of_difference(repeat, self.heights.division(), &rig)
    }

    /// The variation against the most that the manufacturer allows.
    ///
    /// # Errors
    /// As [`Thickness::variation`].
    pub fn varies(&self, most: Length) -> Said {
        Ok(self.variation()?.against(most))
    }

    /// The thinnest reading against the least that is stamped on the rotor; "over" is "too thin".
    pub fn is_thin(&self, least: Length) -> Judged {
        let (thinnest, least) = (self.thinnest().times(-1.0), least.times(-1.0));
        judged(thinnest, &self.budget_of_thinnest(), least)
    }
}
