//! What a file would make of an open job that then reads safer than it does: fewer things loose, a
//! milder decision, a STOP that is gone. Nobody is to find that out by the way.

use crate::job::sheet::JobState;
use crate::trade::play::Decision;
use crate::trade::vehicle::Corner;

/// How an open job would read safer.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Eased {
    /// How many items are loose now and how many would be, where that is fewer.
    pub loose: Option<(usize, usize)>,
    /// The corners whose decision would be milder: as it stands, and as it would; none where there
    /// would be no decision any more.
    pub decisions: Vec<(Corner, Decision, Option<Decision>)>,
}

/// In which ways `with` reads safer than the job `here`; nothing where it does not. A job that has
/// ended with nothing loose is settled and asks nobody.
pub fn eased(here: &JobState, with: &JobState) -> Option<Eased> {
    if here.ended().is_some() && here.loose().is_empty() {
        return None;
    }
    let (now, then) = (here.loose().len(), with.loose().len());
    let decided = |sheet: &JobState, at| sheet.decided(at).map(|decided| decided.decision);
    let milder = |corner: &Corner| {
        let (before, after) = (decided(here, *corner)?, decided(with, *corner));
        (after < Some(before)).then_some((*corner, before, after))
    };
    let eased = Eased {
        loose: (then < now).then_some((now, then)),
        decisions: Corner::ALL.iter().filter_map(milder).collect(),
    };
    (eased != Eased::default()).then_some(eased)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::entry::{Ended, Ending, Event, Moved};
    use crate::job::recorded::sheet;
    use crate::trade::wheel_end::{Item, ItemKind, ItemState, Step, StepKey};

    const AT: Corner = Corner::FrontLeft;

    fn moved(number: u8, to: ItemState) -> Event {
        let item = Item {
            corner: AT,
            group: ItemKind::LugNuts,
            number,
        };
        Event::Moved(Moved {
            items: vec![item],
            to,
            step: StepKey::at(Step::LoosenLugNuts, AT),
            wrench: None,
        })
    }

    #[test]
    fn fewer_loose_items_are_reported_and_more_are_not() {
        let two = sheet([moved(1, ItemState::Loosened), moved(2, ItemState::Loosened)]);
        let one = sheet([
            moved(1, ItemState::Loosened),
            moved(2, ItemState::Loosened),
            moved(1, ItemState::Done),
        ]);
        let recorded = eased(&two, &one).unwrap();
        assert_eq!(
            (recorded.loose, recorded.decisions),
            (Some((2, 1)), Vec::new())
        );
        assert_eq!(eased(&one, &two), None);
        assert_eq!(eased(&two, &two), None);
    }

    #[test]
    fn a_car_that_was_left_with_something_loose_asks_too() {
        let end = || {
            Event::Ended(Ended {
                ending: Ending::LeftUnfinished,
                charge: None,
            })
        };
        let left = sheet([moved(1, ItemState::Loosened), end()]);
        let tight = sheet([
            moved(1, ItemState::Loosened),
            end(),
            moved(1, ItemState::Done),
        ]);
        assert_eq!(eased(&left, &tight).unwrap().loose, Some((1, 0)));
        assert_eq!(eased(&tight, &sheet([end()])), None);
    }
}
