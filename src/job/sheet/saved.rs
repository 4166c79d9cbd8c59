//! What was read from paper, what broke, and the dial on board.

use crate::job::entry::{Event, Mishap, Slip};
use crate::job::key::Key;
use crate::job::sheet::JobState;
use crate::trade::play::Dial;
use crate::trade::wheel_end::Item;

impl JobState {
    /// The slip that the sheet was taken from, if it came from paper.
    pub fn slip(&self) -> Option<&Slip> {
        match self.holds(&Key::FromPaper).map(|entry| &entry.what) {
            Some(Event::FromPaper(slip)) => Some(slip),
            _ => None,
        }
    }

    /// The open mishap of an item.
    pub fn open_mishap(&self, item: Item) -> Option<&Mishap> {
        match self.fact(&Key::Mishap(item)) {
            Some(Event::Mishap(mishap)) => Some(mishap),
            _ => None,
        }
    }

    /// The dial on board; the common one of its unit where none was named.
    pub fn dial(&self) -> Dial {
        self.carried()
            .map_or(Dial::HUNDREDTH_MM, |carried| carried.dial)
    }
}
