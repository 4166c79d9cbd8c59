//! Run-out as it is stored.

use serde::{Deserialize, Serialize};

use crate::exchange::wire::card::{
    Gauge, SourceText, TypedText, lower_dial, lower_source, raise_dial, raise_source, raise_typed,
    typed, word,
};
use crate::job::entry::{RunoutCard, RunoutReading, Setup};
use crate::trade::answer::Answer;
use crate::trade::runout::{LeftOut, Surface};
use crate::trade::vehicle::Corner;
use crate::units::Decimal;

/// One place of a run round a face.
#[derive(Serialize, Deserialize)]
pub(super) struct ReadingText {
    corner: String,
    run: u8,
    surface: String,
    places: u8,
    stud: u8,
    cleaned: String,
    place: u8,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    angle: Option<TypedText>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    radius: Option<TypedText>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    divisions: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    turns: Option<i32>,
    dial: Gauge,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    left_out: Option<String>,
}

/// A limit of run-out.
#[derive(Serialize, Deserialize)]
pub(super) struct CardText {
    surface: String,
    most: TypedText,
    source: SourceText,
}

/// The stored form of a reading.
pub(super) fn lower(reading: &RunoutReading) -> ReadingText {
    ReadingText {
        corner: reading.corner.code().to_owned(),
        run: reading.run,
        surface: reading.setup.surface.code().to_owned(),
        places: reading.setup.places,
        stud: reading.setup.stud,
        cleaned: reading.setup.cleaned.code().to_owned(),
        place: reading.place,
        angle: reading.angle.as_ref().map(typed),
        radius: reading.radius.as_ref().map(typed),
        divisions: reading.divisions.as_ref().map(|d| d.as_typed().to_owned()),
        turns: reading.turns,
        dial: lower_dial(&reading.dial),
        left_out: reading.left_out.map(|why| why.code().to_owned()),
    }
}

/// The reading of a stored form, if every word of it is known.
pub(super) fn raise(stored: ReadingText) -> Option<RunoutReading> {
    Some(RunoutReading {
        corner: Corner::from_code(&stored.corner)?,
        run: stored.run,
        setup: Setup {
            surface: Surface::from_code(&stored.surface)?,
            places: stored.places,
            stud: stored.stud,
            cleaned: Answer::from_code(&stored.cleaned)?,
        },
        place: stored.place,
        angle: match stored.angle {
            Some(angle) => Some(raise_typed(angle)?),
            None => None,
        },
        radius: match stored.radius {
            Some(radius) => Some(raise_typed(radius)?),
            None => None,
        },
        divisions: match stored.divisions {
            Some(text) => Some(Decimal::parse(&text).ok()?),
            None => None,
        },
        turns: stored.turns,
        dial: raise_dial(&stored.dial)?,
        left_out: word(stored.left_out, LeftOut::from_code)?,
    })
}

/// The stored form of a limit.
pub(super) fn lower_card(card: &RunoutCard) -> CardText {
    CardText {
        surface: card.surface.code().to_owned(),
        most: typed(&card.most),
        source: lower_source(&card.source),
    }
}

/// The limit of a stored form.
pub(super) fn raise_card(stored: CardText) -> Option<RunoutCard> {
    Some(RunoutCard {
        surface: Surface::from_code(&stored.surface)?,
        most: raise_typed(stored.most)?,
        source: raise_source(stored.source)?,
    })
}
