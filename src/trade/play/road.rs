//! What the road and the heat of a hub say of one corner.
//!
//! The signs of the road are those of the whole vehicle, asked once; a swerve tells the side that
//! it loads, and never front from rear.

use crate::trade::answer::Answer;
use crate::units::{Temperature, TemperatureUnit};
use crate::words;

words! {
    /// What a gentle swerve does to a noise, as seen from one corner.
    pub enum Swerve {
        /// Louder when it loads this side.
        LoadsHere = "loads_here",
        /// Louder when it loads the other side.
        LoadsOther = "loads_other",
        /// No change either way.
        NoChange = "no_change",
        /// Nobody tried.
        NotDone = "not_done",
    }
}

/// The signs of the road that speak of bearings.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RoadSigns {
    /// The noise rises with road speed, the same in every gear.
    pub speed: Answer,
    /// What a gentle swerve does.
    pub swerve: Swerve,
    /// It is the same when coasting.
    pub coast: Answer,
    /// Its note changes with the road surface.
    pub surface: Answer,
}

words! {
    /// What the road says of one corner.
    pub enum Road {
        /// No noise that rises with road speed.
        Quiet = "quiet",
        /// A noise that has another cause, or sits on the other side.
        Elsewhere = "elsewhere",
        /// Nobody listened for it.
        NotDone = "not_done",
        /// A noise, and nothing says where it sits.
        NotLocated = "not_located",
        /// A noise that is louder when this side is loaded.
        Here = "here",
    }
}

words! {
    /// What the heat of this hub says beside that of the other side.
    pub enum Heat {
        /// Not clearly hotter.
        Alike = "alike",
        /// One of the two was not measured.
        NotDone = "not_done",
        /// Clearly hotter.
        Hotter = "hotter",
    }
}

/// What the road says of a corner.
///
/// A noise is heard where it rises with road speed or where a swerve changes it. It sits here if
/// it rises with road speed and is louder when this side is loaded; it sits elsewhere if the other
/// side is the loud one, or if coasting changes it (engine and gears), or if its note changes with
/// the surface (tires). Signs for and against this corner together leave it open, and so does a
/// noise without any of them.
///
/// # Source
/// Common practice, no source; which side a swerve loads is geometry.
pub fn road(signs: &RoadSigns) -> Road {
    let swings = matches!(signs.swerve, Swerve::LoadsHere | Swerve::LoadsOther);
    if signs.speed != Answer::Yes && !swings {
        return match signs.speed {
            Answer::No => Road::Quiet,
            _ => Road::NotDone,
        };
    }
    let other_cause = signs.coast == Answer::No || signs.surface == Answer::Yes;
    match (signs.swerve, other_cause) {
        (Swerve::LoadsHere, false) if signs.speed == Answer::Yes => Road::Here,
        (Swerve::LoadsHere, _) => Road::NotLocated,
        (Swerve::LoadsOther, _) | (_, true) => Road::Elsewhere,
        _ => Road::NotLocated,
    }
}

/// By so much a hub is clearly hotter than the same hub of the other side, in kelvins (common
/// practice, no source). A dragging brake does the same.
pub const HOTTER_BY_K: f64 = 15.0;

/// What two temperatures at the same spot say; `None` for one that was not measured.
pub fn heat(here: Option<Temperature>, other: Option<Temperature>) -> Heat {
    let celsius = |heat: Temperature| heat.in_unit(TemperatureUnit::Celsius);
    match (here.map(celsius), other.map(celsius)) {
        (Some(here), Some(other)) if here - other >= HOTTER_BY_K => Heat::Hotter,
        (Some(_), Some(_)) => Heat::Alike,
        _ => Heat::NotDone,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use Answer::{No, NotDone, Yes};

    #[track_caller]
    fn says(speed: Answer, swerve: Swerve, coast: Answer, surface: Answer, expected: Road) {
        let signs = RoadSigns {
            speed,
            swerve,
            coast,
            surface,
        };
        assert_eq!(road(&signs), expected, "{signs:?}");
    }

    #[test]
    fn a_noise_sits_where_its_load_makes_it_louder() {
        says(Yes, Swerve::LoadsHere, Yes, No, Road::Here);
        says(Yes, Swerve::LoadsHere, NotDone, NotDone, Road::Here);
        says(Yes, Swerve::LoadsOther, Yes, No, Road::Elsewhere);
        says(Yes, Swerve::NoChange, Yes, No, Road::NotLocated);
        says(Yes, Swerve::NotDone, NotDone, NotDone, Road::NotLocated);
        says(No, Swerve::NoChange, No, No, Road::Quiet);
        says(No, Swerve::LoadsHere, Yes, No, Road::NotLocated);
        says(NotDone, Swerve::NotDone, Yes, Yes, Road::NotDone);
    }

    #[test]
    fn another_cause_leaves_a_located_noise_open_and_takes_an_open_one_away() {
        says(Yes, Swerve::LoadsHere, No, No, Road::NotLocated);
        says(Yes, Swerve::LoadsHere, Yes, Yes, Road::NotLocated);
        says(Yes, Swerve::NoChange, No, No, Road::Elsewhere);
        says(Yes, Swerve::NotDone, Yes, Yes, Road::Elsewhere);
    }

    #[test]
    fn fifteen_kelvins_are_clearly_hotter_on_either_scale() {
        let at = |value, unit| Some(Temperature::new(value, unit).unwrap());
        let (c, f) = (TemperatureUnit::Celsius, TemperatureUnit::Fahrenheit);
        assert_eq!(heat(at(55.0, c), at(40.0, c)), Heat::Hotter);
        assert_eq!(heat(at(54.0, c), at(40.0, c)), Heat::Alike);
        // 27 °F are 15 K; a hair more, since the scales do not meet in binary.
        assert_eq!(heat(at(131.1, f), at(104.0, f)), Heat::Hotter);
        assert_eq!(heat(at(130.0, f), at(104.0, f)), Heat::Alike);
        assert_eq!(heat(at(40.0, c), at(70.0, c)), Heat::Alike);
        assert_eq!(heat(at(90.0, c), None), Heat::NotDone);
        assert_eq!(heat(None, at(40.0, c)), Heat::NotDone);
    }
}
