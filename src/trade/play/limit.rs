//! A limit of play: never without its source and its way.

use super::way::{Method, Place, Way};
use crate::units::Length;
use crate::words;

words! {
    /// Who set the limit.
    pub enum LimitSource {
        /// The vehicle manufacturer's service information.
        Manufacturer = "manufacturer",
        /// Common practice, no source: it can condemn and never clears.
        House = "house",
    }
}

/// The most play that is allowed, the way it is measured, and who says so.
#[derive(Clone, Copy, Debug, PartialEq, Hash)]
pub struct Limit {
    /// The most play; zero means "no movement".
    pub value: Length,
    /// The least, of a bearing that is set with play: under it the rollers are too tight.
    pub least: Option<Length>,
    /// How it is to be measured.
    pub way: Way,
    /// Who says so.
    pub source: LimitSource,
}

/// A limit below zero is a slip.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NegativeLimit {
    /// What was given.
    pub value: Length,
}

impl Limit {
    /// The house limit: 0.004 in (0.1016 mm) total movement, axial, at the pilot, by hand.
    ///
    /// # Source
    /// Common practice; no published source was found.
    pub const HOUSE: Self = Self {
        value: Length::thou(4.0),
        least: None,
        way: Way {
            method: Method::Axial,
            place: Place::Pilot,
            rig: None,
            force: None,
        },
        source: LimitSource::House,
    };

    /// The house limit of tapered rollers that are set with end play: 0.010 in, no least.
    ///
    /// # Source
    /// Common practice, no source: the widest window that is often quoted for light trailers (from
    /// memory). Published windows are narrower, and a few designs want preload, so that nothing
    /// looser than this is wanted anywhere and nothing tighter is condemned without a spec.
    pub const HOUSE_END_PLAY: Self = Self {
        value: Length::thou(10.0),
        ..Self::HOUSE
    };

    /// The limit that a spec of the manufacturer gives.
    ///
    /// # Errors
    /// [`NegativeLimit`] below zero.
    pub fn manufacturer(value: Length, way: Way) -> Result<Self, NegativeLimit> {
        if value < Length::ZERO {
            return Err(NegativeLimit { value });
        }
        Ok(Self {
            value,
            least: None,
            way,
            source: LimitSource::Manufacturer,
        })
    }

    /// The same with a least play; one that is not below the most is none.
    #[must_use]
    pub fn with_least(self, least: Option<Length>) -> Self {
        let least = least.filter(|least| Length::ZERO < *least && *least < self.value);
        Self { least, ..self }
    }

    /// Whether the vehicle's manufacturer says so.
    pub fn is_manufacturers(&self) -> bool {
        self.source == LimitSource::Manufacturer
    }

    /// Whether the limit is "no movement at all", which arithmetic can never prove.
    pub fn is_zero(&self) -> bool {
        self.value <= Length::ZERO
    }
}
