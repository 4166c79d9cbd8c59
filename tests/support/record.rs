//! Phones that tap and the entries they make, for tests of the record.

use std::collections::BTreeSet;

use hubslate::job::entry::{Entry, EntryId, Event, LogId, Moved, Opened, Reply};
use hubslate::job::{JobState, fold};
use hubslate::slate::{Pen, compose};
use hubslate::trade::answer::Answer;
use hubslate::trade::vehicle::Corner;
use hubslate::trade::wheel_end::{Item, ItemKind, ItemState, Start, Step, StepKey};

/// The corner that most tests work at.
pub const HERE: Corner = Corner::FrontLeft;

/// One phone: its clock can be set to anything.
#[derive(Clone, Debug)]
pub struct Phone {
    pub device: &'static str,
    pub clock: i64,
    pub n: u64,
}

impl Phone {
    pub fn new(device: &'static str, clock: i64) -> Self {
        Self {
            device,
            clock,
            n: 1,
        }
    }

    /// One tap that saw `heads`. The clock stands still unless the test moves it.
    pub fn tap(&mut self, heads: &[EntryId], whats: Vec<Event>) -> Vec<Entry> {
        let entries = compose(&log(), heads, &self.pen(), whats);
        self.n += entries.len() as u64;
        entries
    }

    /// The pen of the next tap; its chance differs from tap to tap and from phone to phone.
    pub fn pen(&self) -> Pen {
        let mut chance = [0; 10];
        for (place, byte) in self.device.bytes().chain(self.n.to_be_bytes()).enumerate() {
            chance[place % 9] ^= byte;
        }
        Pen {
            by: "T. Okafor-Lind".to_owned(),
            device: self.device.to_owned(),
            n: self.n,
            utc_ms: self.clock,
            offset_min: -300,
            recorded: None,
            chance,
        }
    }
}

/// A job as one phone has it.
#[derive(Clone, Debug)]
pub struct Job {
    pub phone: Phone,
    pub entries: Vec<Entry>,
}

impl Job {
    /// A job opened at home.
    pub fn opened() -> Self {
        let mut job = Self {
            phone: Phone::new("slate one", 1_780_000_000_000),
            entries: Vec::new(),
        };
        job.tap(vec![opened(Start::AtHome)]);
        job
    }

    /// The same job on another phone.
    pub fn on(&self, device: &'static str, clock: i64) -> Self {
        Self {
            phone: Phone::new(device, clock),
            entries: self.entries.clone(),
        }
    }

    /// One tap, after everything this phone has; a second later by its clock.
    pub fn tap(&mut self, whats: Vec<Event>) -> Vec<EntryId> {
        self.phone.clock += 1_000;
        let new = self.phone.tap(&self.heads(), whats);
        let ids = new.iter().map(|entry| entry.id.clone()).collect();
        self.entries.extend(new);
        ids
    }

    /// The entries that none has seen yet, found without the fold.
    pub fn heads(&self) -> Vec<EntryId> {
        let named: BTreeSet<&EntryId> = self.entries.iter().flat_map(|e| &e.after).collect();
        let ids: BTreeSet<&EntryId> = self.entries.iter().map(|e| &e.id).collect();
        ids.difference(&named).map(|id| (*id).clone()).collect()
    }

    /// Takes in what another phone has.
    pub fn take(&mut self, other: &Self) {
        self.entries.extend(other.entries.iter().cloned());
    }

    pub fn sheet(&self) -> JobState {
        fold(self.entries.iter().cloned())
    }
}

pub fn log() -> LogId {
    LogId("job one".to_owned())
}

pub fn opened(start: Start) -> Event {
    Event::Opened(Opened {
        start,
        practice: None,
    })
}

pub fn item(group: ItemKind, number: u8) -> Item {
    Item {
        corner: HERE,
        group,
        number,
    }
}

pub fn moved(step: Step, items: Vec<Item>, to: ItemState) -> Event {
    Event::Moved(Moved {
        step: StepKey::at(step, HERE),
        items,
        to,
        wrench: None,
    })
}

pub fn said(step: StepKey, answer: Answer) -> Event {
    Event::Answered(step, Reply::Said(answer))
}

pub fn note(text: &str) -> Event {
    Event::Note(None, text.to_owned())
}
