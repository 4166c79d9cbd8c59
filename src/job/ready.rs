//! What stands between a packed job and leaving: cards, wrenches, pictures of pages.

use crate::job::entry::{Carried, Event, KitItem};
use crate::job::key::Key;
use crate::job::plan::plan;
use crate::job::sheet::JobState;
use crate::job::wheel_end::wheel_end;
use crate::trade::fastening::{CardBody, CardItem, Fit, SpecCard, UsableShare, Wrench, fit};
use crate::trade::wheel_end::{Step, StepKey};

/// How far one card is before leaving.
#[derive(Clone, Debug, PartialEq)]
pub struct ReadyCard {
    /// What it is for.
    pub item: CardItem,
    /// Where it is asked.
    pub step: StepKey,
    /// The card, if it is there; "not found" counts as one.
    pub card: Option<SpecCard>,
    /// Which wrench is for it.
    pub fit: Fit,
    /// Whether a picture of its page was kept.
    pub pictured: bool,
}

impl ReadyCard {
    /// Whether it was looked for and not found.
    pub fn is_not_found(&self) -> bool {
        let body = self.card.as_ref().map(|card| &card.body);
        matches!(body, Some(CardBody::NotFound { .. }))
    }

    /// Whether it gives a figure.
    pub fn is_given(&self) -> bool {
        self.card.is_some() && !self.is_not_found()
    }
}

/// What the kit lacks, as it was last told.
pub fn missing(sheet: &JobState) -> &[KitItem] {
    match sheet.holds(&Key::Missing).map(|entry| &entry.what) {
        Some(Event::Missing(items)) => items,
        _ => &[],
    }
}

/// The specs that the work needs, each with the step that asks for it.
pub fn cards(sheet: &JobState) -> Vec<(Step, CardItem)> {
    wheel_end(sheet).cards(&plan(sheet))
}

/// Every card that the work needs, in the order in which they are looked up.
pub fn ready_cards(sheet: &JobState) -> Vec<ReadyCard> {
    let kit: &[Wrench] = sheet
        .carried()
        .map_or(&[], |carried| carried.wrenches.as_slice());
    let share = sheet.carried().map_or(UsableShare::DEFAULT, Carried::share);
    cards(sheet)
        .into_iter()
        .map(|(step, item)| {
            let step = StepKey::once(step);
            let card = sheet.card(item).cloned();
            ReadyCard {
                item,
                step,
                fit: card
                    .as_ref()
                    .map_or(Fit::NothingToSet, |card| fit(card, kit, share)),
                pictured: sheet.photos(step).next().is_some(),
                card,
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::fold;

    #[test]
    fn before_any_card_all_six_are_open() {
        let cards = ready_cards(&fold([]));
        assert_eq!(cards.len(), 6);
        assert!(cards.iter().all(|card| !card.is_given() && !card.pictured));
        assert!(!cards.iter().any(ReadyCard::is_not_found));
    }
}
