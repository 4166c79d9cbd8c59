//! Whether a job has ended, and whether it is open again.

use crate::job::entry::{Ended, Ending, Event};
use crate::job::key::Key;
use crate::job::sheet::JobState;
use crate::trade::wheel_end::ItemState;

impl JobState {
    /// How the job ended; nothing where it was loosened again since.
    pub fn ended(&self) -> Option<&Ended> {
        self.once_ended().filter(|_| !self.is_open_again())
    }

    /// Whether the job had ended well and something was loosened since: it is open again, until it
    /// is ended again.
    pub fn is_open_again(&self) -> bool {
        let over = |ended: &Ended| ended.ending != Ending::LeftUnfinished;
        let ended = self.place(&Key::Ended).or(self.place(&Key::FromPaper));
        self.once_ended().is_some_and(over) && ended < self.last_loosened()
    }

    /// The place of the last entry that took something off or loosened it.
    pub(in crate::job) fn last_loosened(&self) -> Option<usize> {
        let loosens = |what: &Event| match what {
            Event::Moved(moved) => moved.to < ItemState::ByHand,
            Event::Also(_) | Event::Mishap(_) => true,
            _ => false,
        };
        let places = self.counting_places();
        places
            .filter(|(_, e)| loosens(&e.what))
            .map(|(place, _)| place)
            .last()
    }

    fn once_ended(&self) -> Option<&Ended> {
        match self.fact(&Key::Ended) {
            Some(Event::Ended(ended)) => Some(ended),
            _ => None,
        }
    }
}
