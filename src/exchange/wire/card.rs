//! Spec cards, instruments and typed numbers as they are stored.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use crate::trade::fastening::{
    CardBody, CardItem, CardSource, Condition, Pattern, Position, Printed, PropertyClass, SpecCard,
    Stage, Thread, TorqueBody,
};
use crate::trade::play::{Dial, DialKind, Method, Place, Rig, Way};
use crate::units::{AngleUnit, Force, ForceUnit, Length, LengthUnit, TorqueUnit, Typed};
use crate::word::Word;

/// A number as typed, and the code of its unit.
#[derive(Clone, Serialize, Deserialize)]
pub(super) struct TypedText {
    number: String,
    unit: String,
}

/// A card.
#[derive(Serialize, Deserialize)]
pub(super) struct Card {
    item: String,
    #[serde(flatten)]
    body: Body,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
enum Body {
    Torque {
        stages: Vec<StageText>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        position: Option<String>,
        conditions: Vec<String>,
        #[serde(flatten)]
        printed: PrintedText,
        source: SourceText,
    },
    Play {
        most: TypedText,
        way: WayText,
        source: SourceText,
    },
    NotFound {
        reason: String,
    },
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
enum StageText {
    Snug {},
    Torque(TypedText),
    Angle(TypedText),
    Back {
        #[serde(default, skip_serializing_if = "Option::is_none")]
        angle: Option<TypedText>,
    },
}

/// What a page says of the fasteners; what is not there is not known.
#[derive(Serialize, Deserialize)]
struct PrintedText {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    count: Option<u8>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    thread: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    class: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pattern: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    threadlocker: Option<String>,
}

#[derive(Serialize, Deserialize)]
pub(super) struct SourceText {
    document: String,
    page: String,
    looked_up: String,
    who: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    kept_because: Option<String>,
}

/// A way.
#[derive(Serialize, Deserialize)]
pub(super) struct WayText {
    method: String,
    place: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    rig: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    force_n: Option<f64>,
}

/// A dial gauge: its graduation in millimetres.
#[derive(Serialize, Deserialize)]
pub(super) struct Gauge {
    graduation_mm: f64,
    divisions_per_turn: u32,
    kind: String,
}

/// The stored form of a typed number.
pub(super) fn typed<U: Word>(typed: &Typed<U>) -> TypedText {
    TypedText {
        number: typed.number.as_typed().to_owned(),
        unit: typed.unit.word_code().to_owned(),
    }
}

/// The typed number of a stored form, if it is a number in a unit of this kind.
pub(super) fn raise_typed<U: Word>(stored: TypedText) -> Option<Typed<U>> {
    Typed::parse(&stored.number, U::of_code(&stored.unit)?).ok()
}

/// The stored form of a card.
pub(super) fn lower(card: &SpecCard) -> Card {
    let body = match &card.body {
        CardBody::Torque(body) => Body::Torque {
            stages: body.stages.iter().map(lower_stage).collect(),
            position: body.position.map(|position| position.code().to_owned()),
            conditions: body
                .conditions
                .iter()
                .map(|c| c.code().to_owned())
                .collect(),
            printed: lower_printed(&body.printed),
            source: lower_source(&body.source),
        },
        CardBody::Play { most, way, source } => Body::Play {
            most: typed(most),
            way: lower_way(way),
            source: lower_source(source),
        },
        CardBody::NotFound { reason } => Body::NotFound {
            reason: reason.clone(),
        },
    };
    Card {
        item: card.item.code().to_owned(),
        body,
    }
}

/// The card of a stored form, if every word of it is known.
pub(super) fn raise(stored: Card) -> Option<SpecCard> {
    let body = match stored.body {
        Body::Torque {
            stages,
            position,
            conditions,
            printed,
            source,
        } => CardBody::Torque(TorqueBody {
            stages: stages.into_iter().map(raise_stage).collect::<Option<_>>()?,
            position: word(position, Position::from_code)?,
            conditions: conditions
                .iter()
                .map(|code| Condition::from_code(code))
                .collect::<Option<_>>()?,
            printed: raise_printed(printed)?,
            source: raise_source(source)?,
        }),
        Body::Play { most, way, source } => CardBody::Play {
            most: raise_typed::<LengthUnit>(most)?,
            way: raise_way(way)?,
            source: raise_source(source)?,
        },
        Body::NotFound { reason } => CardBody::NotFound { reason },
    };
    Some(SpecCard {
        item: CardItem::from_code(&stored.item)?,
        body,
    })
}

/// `Some(None)` for a word that is not given, `None` for one that is not known.
#[allow(clippy::option_option)]
pub(super) fn word<W>(
    code: Option<String>,
    from_code: impl Fn(&str) -> Option<W>,
) -> Option<Option<W>> {
    match code {
        None => Some(None),
        Some(code) => from_code(&code).map(Some),
    }
}

fn lower_stage(stage: &Stage) -> StageText {
    match stage {
        Stage::Snug => StageText::Snug {},
        Stage::Torque(torque) => StageText::Torque(typed(torque)),
        Stage::Angle(angle) => StageText::Angle(typed(angle)),
        Stage::Back(angle) => StageText::Back {
            angle: angle.as_ref().map(typed),
        },
    }
}

fn raise_stage(stored: StageText) -> Option<Stage> {
    Some(match stored {
        StageText::Snug {} => Stage::Snug,
        StageText::Torque(torque) => Stage::Torque(raise_typed::<TorqueUnit>(torque)?),
        StageText::Angle(angle) => Stage::Angle(raise_typed::<AngleUnit>(angle)?),
        StageText::Back { angle: None } => Stage::Back(None),
        StageText::Back { angle: Some(angle) } => {
            Stage::Back(Some(raise_typed::<AngleUnit>(angle)?))
        }
    })
}

fn lower_printed(printed: &Printed) -> PrintedText {
    let thread = printed.thread.as_ref();
    PrintedText {
        count: printed.count,
        thread: thread.map(|thread| thread.as_typed().to_owned()),
        class: printed.class.map(|class| class.code().to_owned()),
        pattern: printed.pattern.map(|pattern| pattern.code().to_owned()),
        threadlocker: printed.threadlocker.clone(),
    }
}

fn raise_printed(stored: PrintedText) -> Option<Printed> {
    let thread = match stored.thread {
        None => None,
        Some(text) => Some(Thread::parse(&text).ok()?),
    };
    Some(Printed {
        count: stored.count,
        thread,
        class: word(stored.class, PropertyClass::from_code)?,
        pattern: word(stored.pattern, Pattern::from_code)?,
        threadlocker: stored.threadlocker,
    })
}

pub(super) fn lower_source(source: &CardSource) -> SourceText {
    SourceText {
        document: source.document.clone(),
        page: source.page.clone(),
        looked_up: source.looked_up.to_string(),
        who: source.who.clone(),
        kept_because: source.kept_because.clone(),
    }
}

pub(super) fn raise_source(stored: SourceText) -> Option<CardSource> {
    Some(CardSource {
        document: stored.document,
        page: stored.page,
        looked_up: stored.looked_up.parse::<NaiveDate>().ok()?,
        who: stored.who,
        kept_because: stored.kept_because,
    })
}

/// The stored form of a way.
pub(super) fn lower_way(way: &Way) -> WayText {
    WayText {
        method: way.method.code().to_owned(),
        place: way.place.code().to_owned(),
        rig: way.rig.map(|rig| rig.code().to_owned()),
        force_n: way.force.map(|force| force.in_unit(ForceUnit::Newton)),
    }
}

/// The way of a stored form.
pub(super) fn raise_way(stored: WayText) -> Option<Way> {
    let force = match stored.force_n {
        None => None,
        Some(newtons) => Some(Force::new(newtons, ForceUnit::Newton).ok()?),
    };
    Some(Way {
        method: Method::from_code(&stored.method)?,
        place: Place::from_code(&stored.place)?,
        rig: word(stored.rig, Rig::from_code)?,
        force,
    })
}

/// The stored form of a dial.
pub(super) fn lower_dial(dial: &Dial) -> Gauge {
    Gauge {
        graduation_mm: dial.graduation().in_unit(LengthUnit::Millimetre),
        divisions_per_turn: dial.divisions_per_turn(),
        kind: dial.kind().code().to_owned(),
    }
}

/// The dial of a stored form.
pub(super) fn raise_dial(stored: &Gauge) -> Option<Dial> {
    let graduation = Length::new(stored.graduation_mm, LengthUnit::Millimetre).ok()?;
    Dial::new(
        graduation,
        stored.divisions_per_turn,
        DialKind::from_code(&stored.kind)?,
    )
    .ok()
}
