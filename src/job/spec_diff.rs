//! What the card books of a file bring to a phone.

use crate::job::book::{offers, says_the_same, source_of};
use crate::job::sheet::JobState;
use crate::trade::fastening::CardItem;

/// What the books of a file bring.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct BookNews {
    /// How many vehicle families.
    pub families: usize,
    /// How many cards.
    pub cards: usize,
    /// How many of these were not here.
    pub new: usize,
    /// How many were looked up later than the one that is here.
    pub newer: usize,
    /// How many say something else than the one that is here.
    pub other: usize,
}

impl BookNews {
    /// What one family's book brings; `here` is the book as it stands before it comes in.
    pub fn of(here: &JobState, came: &JobState) -> Self {
        let mut news = Self::default();
        for item in CardItem::ALL {
            let mine = offers(here, *item).into_iter().next();
            let Some(theirs) = offers(came, *item).into_iter().next() else {
                continue;
            };
            news.cards += 1;
            news.families = 1;
            let day = |card| source_of(card).map(|source| source.looked_up);
            match mine {
                None => news.new += 1,
                Some(mine) => {
                    news.newer += usize::from(day(&mine) < day(&theirs));
                    news.other += usize::from(!says_the_same(&mine, &theirs));
                }
            }
        }
        news
    }

    /// Both together.
    pub const fn and(self, other: Self) -> Self {
        Self {
            families: self.families.saturating_add(other.families),
            cards: self.cards.saturating_add(other.cards),
            new: self.new.saturating_add(other.new),
            newer: self.newer.saturating_add(other.newer),
            other: self.other.saturating_add(other.other),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::book::resourced;
    use crate::job::entry::Event;
    use crate::job::told::sheet;
    use crate::trade::fastening::card::tests::{card, torque};
    use crate::units::TorqueUnit;

    fn kept(item: CardItem, value: &str, day: &str) -> Event {
        let card = card(item, vec![torque(value, TorqueUnit::NewtonMetre)]);
        Event::Card(resourced(&card, |source| {
            source.looked_up = day.parse().unwrap();
        }))
    }

    #[test]
    fn what_came_in_is_told_against_what_is_here() {
        let here = sheet([
            kept(CardItem::LugNuts, "110", "2026-01-02"),
            kept(CardItem::HubBolts, "90", "2026-01-02"),
        ]);
        let came = sheet([
            kept(CardItem::LugNuts, "103", "2026-03-04"),
            kept(CardItem::HubBolts, "90", "2026-01-02"),
            kept(CardItem::AxleNut, "180", "2025-03-04"),
        ]);
        let expected = BookNews {
            families: 1,
            cards: 3,
            new: 1,
            newer: 1,
            other: 1,
        };
        assert_eq!(BookNews::of(&here, &came), expected);
        assert_eq!(expected.and(expected).families, 2);
        assert_eq!(BookNews::of(&came, &sheet([])), BookNews::default());
        let again = BookNews::of(&came, &came);
        assert_eq!((again.new, again.newer, again.other), (0, 0, 0));
    }
}
