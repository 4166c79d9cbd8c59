//! What was read from paper, what broke, and the dial on board.

use crate::job::entry::{Event, Mishap, Slip};
use crate::job::key::Key;
use crate::job::sheet::JobState;
use crate::trade::play::Dial;
use crate::trade::wheel_end::{Item, ItemState};

impl JobState {
    /// The slip that the sheet was taken from, if it came from paper.
    pub fn slip(&self) -> Option<&Slip> {
        match self.holds(&Key::FromPaper).map(|entry| &entry.what) {
            Some(Event::FromPaper(slip)) => Some(slip),
            _ => None,
        }
    }

    /// The open mishap of an item; what was stuck is over once the item was brought off.
    pub fn open_mishap(&self, item: Item) -> Option<&Mishap> {
        let open = match self.fact(&Key::Mishap(item)) {
            Some(Event::Mishap(mishap)) => mishap,
            _ => return None,
        };
        let seen = self.place(&Key::Mishap(item));
        let came_loose = open.kind.ends_when_loose()
            && seen < self.place(&Key::Item(item))
            && matches!(self.fact(&Key::Item(item)), Some(Event::Moved(moved)) if moved.to < ItemState::ByHand);
        (!came_loose).then_some(open)
    }

    /// The dial on board; the common one of its unit where none was named.
    pub fn dial(&self) -> Dial {
        self.carried()
            .map_or(Dial::HUNDREDTH_MM, |carried| carried.dial)
    }
}
