//! A file log by log: each is checked as [`super::read`] checks it, and given before the next one is
//! read.

use super::log::{Sure, log};
use super::{ImportError, IncomingLog};
use crate::exchange::pieces::{CalledOff, Pieces, Waits};
use crate::exchange::slices::Slices;
use crate::map::OrderedSet;

/// A file on its way in, one log at a time.
pub struct Sliced {
    slices: Slices,
    seen: OrderedSet<String>,
    twice: bool,
    place: usize,
    /// The logs that another program laid out again, by their place.
    reformatted: OrderedSet<usize>,
    /// Whether the digests were looked at before.
    checked: bool,
}

impl Sliced {
    /// Begins with the first bytes of a file; nothing where it is to be read whole.
    pub fn begin(first: &[u8]) -> Option<Self> {
        Some(Self {
            slices: Slices::begin(first)?,
            seen: OrderedSet::new(),
            twice: false,
            place: 0,
            reformatted: OrderedSet::new(),
            checked: false,
        })
    }

    /// Begins the same file again, whose digests were all found to hold.
    pub fn again(self, first: &[u8]) -> Option<Self> {
        Some(Self {
            reformatted: self.reformatted,
            checked: true,
            ..Self::begin(first)?
        })
    }

    /// The bytes that follow.
    pub fn push(&mut self, slice: &[u8]) {
        self.slices.push(slice);
    }

    /// The next log, if all of it is here.
    ///
    /// # Errors
    /// As [`super::read_in_pieces`].
    pub async fn next(&mut self, waits: &impl Waits) -> Result<Option<IncomingLog>, ImportError> {
        let Some(stored) = self.slices.next()? else {
            return Ok(None);
        };
        self.twice |= !self.seen.insert(stored.id.clone());
        let sure = match (self.checked, self.reformatted.contains(&self.place)) {
            (true, false) => Sure::Holds,
            _ => Sure::No,
        };
        let mut pieces = Pieces::of(2 * stored.entries.len(), waits);
        let log = log(&stored, sure, &mut pieces).await?;
        if log.reformatted {
            self.reformatted.insert(self.place);
        }
        self.place += 1;
        Ok(Some(log))
    }

    /// How many logs were given.
    pub const fn logs(&self) -> usize {
        self.place
    }

    /// Whether the file has a log more than once: only whoever reads it whole can say whether the two
    /// fit.
    pub const fn has_one_twice(&self) -> bool {
        self.twice
    }

    /// Whether the file ended where it should.
    ///
    /// # Errors
    /// [`ImportError::CutOff`] and [`ImportError::Damaged`].
    pub fn end(&self) -> Result<(), ImportError> {
        self.slices.end()
    }
}

/// Work on a file, which may be measured in its bytes, whatever its parts count.
pub struct Far<'a, W> {
    /// Whoever waits.
    pub waits: &'a W,
    /// How far it is of how much; nothing where its parts are counted.
    pub at: Option<(usize, usize)>,
}

impl<W: Waits> Waits for Far<'_, W> {
    async fn between(&self, done: usize, all: usize) -> Result<(), CalledOff> {
        let (done, all) = self.at.unwrap_or((done, all));
        self.waits.between(done, all).await
    }
}
