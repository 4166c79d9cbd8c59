//! A runout against its manufacturer's limit.

use super::moves::Moves;
use super::reach::{NoUncertainty, Reach};
use super::series::Series;
use crate::trade::play::budget::IndicatorError;
use crate::trade::play::conformity::Judged;
use crate::trade::play::limit::NegativeLimit;
use crate::trade::play::uncertainty::rectangle;
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

/// The most run-out that the vehicle's manufacturer allows on one surface. There is no house limit.
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
    /// The limit that a spec of the manufacturer gives.
    ///
    /// # Errors
    /// [`NegativeLimit`] below zero.
    pub fn manufacturer(surface: Surface, value: Length) -> Result<Self, NegativeLimit> {
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

/// The runout of a face: what it moves beyond scatter, and how sure that is.
///
/// Scatter comes from the readings themselves. Known beside it are the dial's own error and what
/// the needle was off when it came back to its first place, taken as a rectangle (GUM 4.3.7).
///
/// # Errors
/// [`NoUncertainty`] where the dial is said to have no error at all.
pub fn reach(
    series: &Series,
    moves: Moves,
    indicator: IndicatorError,
) -> Result<Reach, NoUncertainty> {
    let drift = rectangle(series.closure().unwrap_or(Length::ZERO).mm());
    let dial = indicator.u(series.dial().graduation());
    if dial <= Length::ZERO {
        return Err(NoUncertainty);
    }
    let known = Length::millimetres(dial.mm().hypot(drift));
    Reach::new(moves.by, moves.scatter, known)
}

/// A runout against a limit of the same surface.
///
/// # Errors
/// [`OtherSurface`] if the limit is of another.
pub fn compare(
    surface: Surface,
    reach: &Reach,
    limit: &RunoutLimit,
) -> Result<Judged, OtherSurface> {
    if surface != limit.surface {
        let limit = limit.surface;
        return Err(OtherSurface { limit });
    }
    Ok(reach.against(limit.value))
}

#[cfg(test)]
mod tests;
