//! A run-out against its maker's limit, by the one rule of the house.

use super::series::Series;
use crate::trade::play::budget::{Budget, IndicatorError, REPEAT_FLOOR, RigFacts};
use crate::trade::play::conformity::{Judged, judged};
use crate::trade::play::limit::NegativeLimit;
use crate::trade::play::uncertainty::Contribution;
use crate::units::Length;
use crate::words;

words! {
    /// What turns under the tip.
    pub enum Surface {
        /// The hub's face near its edge, the rotor off.
        HubFace = "hub_face",
        /// The pilot that centres the wheel.
        Pilot = "pilot",
        /// The rotor on its hub, about 13 mm inside its edge, all nuts on.
        Rotor = "rotor",
    }
}

/// The most run-out that the vehicle's maker allows on one surface. There is no house limit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RunoutLimit {
    surface: Surface,
    value: Length,
}

/// A limit is of another surface, and says nothing of this one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OtherSurface {
    /// What the limit is of.
    pub limit: Surface,
}

impl RunoutLimit {
    /// The limit that a card of the maker gives.
    ///
    /// # Errors
    /// [`NegativeLimit`] below zero.
    pub fn maker(surface: Surface, value: Length) -> Result<Self, NegativeLimit> {
        if value < Length::ZERO {
            return Err(NegativeLimit { value });
        }
        Ok(Self { surface, value })
    }

    /// The most run-out.
    pub const fn value(&self) -> Length {
        self.value
    }

    /// Of what.
    pub const fn surface(&self) -> Surface {
        self.surface
    }
}

/// How sure a total indicator reading is.
///
/// It is the difference of two readings: the division twice, each as a hand repeats, the dial's
/// own error, and what the needle was off when it came back to its first place.
pub fn budget(series: &Series, indicator: IndicatorError) -> Budget {
    let rig = RigFacts {
        indicator,
        flex: series.closure().unwrap_or(Length::ZERO),
        temperature: None,
    };
    let repeat = Contribution {
        u: REPEAT_FLOOR.mm() * 2_f64.sqrt(),
        dof: None,
    };
    Budget::of_difference(repeat, series.dial().graduation(), &rig)
}

/// A total indicator reading against a limit of the same surface.
///
/// # Errors
/// [`OtherSurface`] if the limit is of another.
pub fn compare(
    surface: Surface,
    tir: Length,
    budget: &Budget,
    limit: &RunoutLimit,
) -> Result<Judged, OtherSurface> {
    if surface != limit.surface {
        let limit = limit.surface;
        return Err(OtherSurface { limit });
    }
    Ok(judged(tir, budget, limit.value))
}
