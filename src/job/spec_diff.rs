//! What the spec books of a file bring to a phone.

use crate::job::book::{offers, says_the_same, source_of};
use crate::job::sheet::JobState;
use crate::trade::fastening::SpecItem;

/// What the books of a file bring.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct BookNews {
    /// How many vehicle families.
    pub families: usize,
    /// How many specs.
    pub specs: usize,
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
        for item in SpecItem::ALL {
            let mine = offers(here, *item).into_iter().next();
            let Some(theirs) = offers(came, *item).into_iter().next() else {
                continue;
            };
            news.specs += 1;
            news.families = 1;
            let day = |spec| source_of(spec).map(|source| source.looked_up);
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
            specs: self.specs.saturating_add(other.specs),
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
    use crate::job::recorded::sheet;
    use crate::trade::fastening::spec::tests::{spec, torque};
    use crate::units::TorqueUnit;

    fn saved(item: SpecItem, value: &str, day: &str) -> Event {
        let spec = spec(item, vec![torque(value, TorqueUnit::NewtonMetre)]);
        Event::Spec(resourced(&spec, |source| {
            source.looked_up = day.parse().unwrap();
        }))
    }

    #[test]
    fn what_came_in_is_reported_against_what_is_here() {
        let here = sheet([
            saved(SpecItem::LugNuts, "110", "2026-01-02"),
            saved(SpecItem::HubBolts, "90", "2026-01-02"),
        ]);
        let came = sheet([
            saved(SpecItem::LugNuts, "103", "2026-03-04"),
            saved(SpecItem::HubBolts, "90", "2026-01-02"),
            saved(SpecItem::AxleNut, "180", "2025-03-04"),
        ]);
        let expected = BookNews {
            families: 1,
            specs: 3,
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
