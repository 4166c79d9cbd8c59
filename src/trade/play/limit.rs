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
        way: Way {
            method: Method::Axial,
            place: Place::Pilot,
            rig: None,
            force: None,
        },
        source: LimitSource::House,
    };

    /// The limit that a card of the manufacturer gives.
    ///
    /// # Errors
    /// [`NegativeLimit`] below zero.
    pub fn manufacturer(value: Length, way: Way) -> Result<Self, NegativeLimit> {
        if value < Length::ZERO {
            return Err(NegativeLimit { value });
        }
        Ok(Self {
            value,
            way,
            source: LimitSource::Manufacturer,
        })
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
