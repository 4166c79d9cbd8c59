//! The thickness of a rotor as it is stored.

use serde::{Deserialize, Serialize};

use crate::exchange::wire::card::{
    SourceText, TypedText, lower_source, raise_source, raise_typed, typed,
};
use crate::job::entry::{Gauging, ThicknessCard, ThicknessReading};
use crate::trade::runout::{Bound, Micrometer};
use crate::trade::vehicle::{Axle, Corner};

/// One place of a rotor under the micrometer.
#[derive(Serialize, Deserialize)]
pub(super) struct ReadingText {
    corner: String,
    run: u8,
    micrometer: String,
    places: u8,
    place: u8,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    thickness: Option<TypedText>,
}

/// A limit of the thickness.
#[derive(Serialize, Deserialize)]
pub(super) struct CardText {
    axle: String,
    bound: String,
    value: TypedText,
    source: SourceText,
}

/// The stored form of a reading.
pub(super) fn lower(reading: &ThicknessReading) -> ReadingText {
    ReadingText {
        corner: reading.corner.code().to_owned(),
        run: reading.run,
        micrometer: reading.gauging.micrometer.code().to_owned(),
        places: reading.gauging.places,
        place: reading.place,
        thickness: reading.thickness.as_ref().map(typed),
    }
}

/// The reading of a stored form, if every word of it is known.
pub(super) fn raise(stored: ReadingText) -> Option<ThicknessReading> {
    Some(ThicknessReading {
        corner: Corner::from_code(&stored.corner)?,
        run: stored.run,
        gauging: Gauging {
            micrometer: Micrometer::from_code(&stored.micrometer)?,
            places: stored.places,
        },
        place: stored.place,
        thickness: match stored.thickness {
            Some(text) => Some(raise_typed(text)?),
            None => None,
        },
    })
}

/// The stored form of a limit.
pub(super) fn lower_card(card: &ThicknessCard) -> CardText {
    CardText {
        axle: card.axle.code().to_owned(),
        bound: card.bound.code().to_owned(),
        value: typed(&card.value),
        source: lower_source(&card.source),
    }
}

/// The limit of a stored form.
pub(super) fn raise_card(stored: CardText) -> Option<ThicknessCard> {
    Some(ThicknessCard {
        axle: Axle::from_code(&stored.axle)?,
        bound: Bound::from_code(&stored.bound)?,
        value: raise_typed(stored.value)?,
        source: raise_source(stored.source)?,
    })
}
