//! The card book: cards of one vehicle family, kept in a log of their own and offered again.
//!
//! A job copies what it uses, so that it stands by itself when the book changes.

use crate::job::entry::{LogId, VehicleField, What};
use crate::job::practice::is_practice;
use crate::job::sheet::Sheet;
use crate::trade::fastening::{CardBody, CardItem, CardSource, SpecCard, Stage};
use crate::units::{TorqueUnit, TypedAngle};

/// What the log of every card book begins with; job logs hold no colon.
pub const PREFIX: &str = "book:";

/// The log of a family's book: letters and digits in lower case, all else as one hyphen.
///
/// `None` for a family without a letter or digit.
pub fn log_of(family: &str) -> Option<LogId> {
    let plain: String = family
        .chars()
        .map(|c| if c.is_alphanumeric() { c } else { ' ' })
        .flat_map(char::to_lowercase)
        .collect();
    let parts: Vec<&str> = plain.split_whitespace().collect();
    (!parts.is_empty()).then(|| LogId(format!("{PREFIX}{}", parts.join("-"))))
}

/// The book of a job's family; none for practice, whose document is invented.
pub fn log_of_job(sheet: &Sheet) -> Option<LogId> {
    if is_practice(sheet) {
        return None;
    }
    log_of(sheet.vehicle(VehicleField::Family)?)
}

/// What a kept card adds to its family's book; "not found" is a matter of one job.
pub fn additions(sheet: &Sheet, card: &SpecCard) -> Vec<What> {
    let family = sheet.vehicle(VehicleField::Family).unwrap_or_default();
    if source_of(card).is_none() {
        return Vec::new();
    }
    vec![
        What::Vehicle(VehicleField::Family, family.to_owned()),
        What::Card(card.clone()),
    ]
}

/// Where a card was read.
pub const fn source_of(card: &SpecCard) -> Option<&CardSource> {
    match &card.body {
        CardBody::Torque(body) => Some(&body.source),
        CardBody::Play { source, .. } => Some(source),
        CardBody::NotFound { .. } => None,
    }
}

/// The same card with another source: looked up again, or by somebody else.
pub fn resourced(card: &SpecCard, change: impl FnOnce(&mut CardSource)) -> SpecCard {
    let mut card = card.clone();
    match &mut card.body {
        CardBody::Torque(body) => change(&mut body.source),
        CardBody::Play { source, .. } => change(source),
        CardBody::NotFound { .. } => {}
    }
    card
}

fn cards(sheet: &Sheet) -> impl DoubleEndedIterator<Item = &SpecCard> {
    let cards: Vec<&SpecCard> = sheet
        .counting()
        .filter_map(|entry| match &entry.what {
            What::Card(card) => Some(card),
            _ => None,
        })
        .collect();
    cards.into_iter()
}

/// The source of this job's last card, which the next one carries over.
pub fn last_source(sheet: &Sheet) -> Option<&CardSource> {
    cards(sheet).rev().find_map(source_of)
}

/// The unit of this job's last torque.
pub fn last_torque_unit(sheet: &Sheet) -> Option<TorqueUnit> {
    let torque = |card: &SpecCard| card.final_torque().map(|typed| typed.unit);
    cards(sheet).rev().find_map(torque)
}

/// Whether an angle may follow the torque on this card: it does on clamped bearings alone.
pub const fn may_have_angle(item: CardItem) -> bool {
    matches!(item, CardItem::AxleNut | CardItem::HubBolts)
}

/// The angle right behind the first torque, as typed.
pub fn angle_of(card: &SpecCard) -> Option<&TypedAngle> {
    let CardBody::Torque(body) = &card.body else {
        return None;
    };
    let first = |stage: &Stage| matches!(stage, Stage::Torque(_));
    let place = body.stages.iter().position(first)?;
    match body.stages.get(place.saturating_add(1))? {
        Stage::Angle(angle) => Some(angle),
        Stage::Snug | Stage::Torque(_) | Stage::Back(_) => None,
    }
}

#[cfg(test)]
mod tests {
    #![allow(
        clippy::unwrap_used,
        clippy::expect_used,
        clippy::panic,
        clippy::indexing_slicing
    )]
    use super::*;

    #[test]
    fn one_family_has_one_book_however_it_is_typed() {
        let log = |family: &str| log_of(family).map(|log| log.0);
        let book = Some("book:2016-compact-1-6-front-drive".to_owned());
        assert_eq!(log("2016 compact, 1.6 front drive"), book);
        assert_eq!(log("  2016 Compact 1,6 / FRONT drive "), book);
        assert_ne!(log("2016 compact, 1.4 front drive"), book);
        assert_eq!(log(" -- "), None);
    }

    #[test]
    fn a_book_is_never_taken_for_a_job() {
        assert!(log_of("Marten").is_some_and(|log| log.0.contains(':')));
    }
}
