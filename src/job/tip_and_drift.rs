//! How the tip stands: off square, and how a rocked play would be seen at another place of it.
//!
//! The latter is an aid to the eye.
//! Never compared with a limit: another place is another method.

use crate::job::sheet::JobState;
use crate::trade::play::geometry::{cosine_factor, scaled_by_radius};
use crate::trade::play::{Dial, Divisions, Method, Place, Way};
use crate::units::{AngleUnit, Decimal, DecimalError, Length, TypedAngle};

/// The places at which a rock can be seen; at the pilot there is nothing of it.
pub const ROCKS_AT: [Place; 4] = [
    Place::FlangeRim,
    Place::RotorFace,
    Place::RotorEdge,
    Place::WheelStud,
];

/// Whether a play taken in this way is one that grows with the radius.
pub fn is_rock(way: &Way) -> bool {
    way.method == Method::Rock && ROCKS_AT.contains(&way.place)
}

/// About how far it moves at each other place whose radius was told, if it rocks about the
/// bearing's middle; empty where the way is no rock or its own radius was not told.
pub fn elsewhere(sheet: &JobState, way: &Way, play: Length) -> Vec<(Place, Length)> {
    let radius = |place| sheet.tip_radius(place).map(|typed| typed.length());
    let Some(here) = radius(way.place).filter(|_| is_rock(way)) else {
        return Vec::new();
    };
    let others = ROCKS_AT.into_iter().filter(|place| *place != way.place);
    others
        .filter_map(|place| {
            let seen = scaled_by_radius(play, here, radius(place)?).ok()?;
            Some((place, seen))
        })
        .collect()
}

/// Why a typed number is no angle of a tip.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TipError {
    /// It is no number.
    Number(DecimalError),
    /// So far off square that the reading says little: the tip is to be set again.
    TooSteep,
}

/// How far off square a tip stands, in degrees as typed.
///
/// # Errors
/// [`TipError`] where it is no number or cannot be corrected.
pub fn tip_typed(text: &str) -> Result<TypedAngle, TipError> {
    let typed = TypedAngle::parse(text, AngleUnit::Degree).map_err(TipError::Number)?;
    match cosine_factor(typed.angle()) {
        Ok(_) => Ok(typed),
        Err(_) => Err(TipError::TooSteep),
    }
}

/// Why a typed number is no creep of a needle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DriftError {
    /// It is no number.
    Number(DecimalError),
    /// So far that the rig has moved: the set is to be read again.
    TooFar,
}

/// A steel arm of 150 mm that warms by 10 K grows by 0.018 mm (12e-6 a kelvin); by more than twice
/// that no arm creeps (our bound).
const MOST_CREEP: Length = Length::millimetres(0.04);

/// By how many divisions of this dial a needle crept, as typed.
///
/// # Errors
/// [`DriftError`] where it is no number or too far for warming.
pub fn crept_typed(dial: &Dial, text: &str) -> Result<Decimal, DriftError> {
    let typed = Decimal::parse(text).map_err(DriftError::Number)?;
    let crept = dial.worth(Divisions::typed(&typed)).abs();
    if crept > MOST_CREEP {
        return Err(DriftError::TooFar);
    }
    Ok(typed)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::entry::Event;
    use crate::job::recorded::sheet;
    use crate::units::{LengthUnit, TypedLength};

    const ROCKED: Way = Way {
        method: Method::Rock,
        place: Place::RotorEdge,
        ..Way::DEFAULT
    };

    fn radius(place: Place, mm: &str) -> Event {
        let typed = TypedLength::parse(mm, LengthUnit::Millimetre);
        Event::TipRadius(place, typed.unwrap())
    }

    #[test]
    fn a_rock_is_seen_at_the_places_whose_radius_is_reported() {
        let both = [
            radius(Place::RotorEdge, "140"),
            radius(Place::FlangeRim, "70"),
        ];
        let play = Length::millimetres(0.20);
        let seen = elsewhere(&sheet(&both), &ROCKED, play);
        assert_eq!(seen.len(), 1);
        // Half as far out, half as much.
        assert_eq!(seen[0].0, Place::FlangeRim);
        assert!((seen[0].1.mm() - 0.10).abs() < 1e-12);
        let lacking = sheet(&both[1..]);
        assert_eq!(elsewhere(&lacking, &ROCKED, play), []);
    }

    #[test]
    fn a_slant_that_cannot_be_corrected_is_refused() {
        let angle = |text| tip_typed(text).map(|typed| typed.number.as_typed().to_owned());
        assert_eq!(angle("17.5"), Ok("17.5".to_owned()));
        assert_eq!(angle("61"), Err(TipError::TooSteep));
        assert_eq!(angle(""), Err(TipError::Number(DecimalError::Empty)));
    }

    // 12e-6 / K · 10 K · 150 mm = 0.018 mm: about two divisions of 0.01 mm, and never ten.
    #[test]
    fn a_needle_that_crept_too_far_was_moved() {
        let crept = |text| crept_typed(&Dial::HUNDREDTH_MM, text);
        assert_eq!(crept("1,8").unwrap().as_typed(), "1,8");
        assert!(crept("-2").is_ok());
        assert_eq!(crept("10"), Err(DriftError::TooFar));
        assert_eq!(crept(""), Err(DriftError::Number(DecimalError::Empty)));
    }

    #[test]
    fn a_push_along_the_axle_is_never_scaled() {
        let both = [
            radius(Place::RotorFace, "127"),
            radius(Place::FlangeRim, "70"),
        ];
        let axial = Way {
            method: Method::Axial,
            place: Place::RotorFace,
            ..Way::DEFAULT
        };
        let play = Length::millimetres(0.20);
        assert_eq!(elsewhere(&sheet(&both), &axial, play), []);
        let middle = Way {
            place: Place::Pilot,
            ..ROCKED
        };
        assert!(!is_rock(&middle) && !is_rock(&axial) && is_rock(&ROCKED));
    }
}
