//! Many files into one: the union of their entries, and what a shop must know about them. Of a
//! hundred thousand jobs one is in memory at a time; the rest waits in sorted runs on the disk.

mod runs;

use std::io::{self, Cursor};
use std::path::{Path, PathBuf};

use crate::exchange::envelope::{LogKind, SavedText};
use crate::exchange::erase::{Besides, Left, erased_with, left};
pub use crate::exchange::gaps::Gap;
use crate::exchange::gaps::{Run, gaps, joined, runs};
use crate::exchange::import::{Incoming, IncomingLog};
use crate::exchange::merge::merge;
use crate::exchange::wire::WireError;
use crate::job::entry::{EntryId, LogId};
use crate::map::{OrderedMap, OrderedSet};
use runs::{Runs, Sorted, get, put};

/// So many bytes of entries are held before they are put down on the disk.
const ROOM: usize = 16 << 20;
/// Running numbers are joined when so many more runs came than there were.
const LOOSE: usize = 1_000;

/// The logs of many files, of whatever names and in whatever order they came.
pub struct Gathered {
    runs: Runs,
    /// The number of the file on its way.
    file: u32,
    refused: OrderedSet<u32>,
    numbers: Numbers,
    /// Those of the file on its way.
    coming: Numbers,
    coming_unreadable: Vec<(EntryId, WireError)>,
    /// Entries that cannot be read; they are kept byte for byte all the same.
    pub unreadable: OrderedMap<EntryId, WireError>,
}

/// Running numbers, joined now and then.
#[derive(Default)]
struct Numbers {
    runs: Vec<Run>,
    joined: usize,
}

impl Numbers {
    fn extend(&mut self, runs: Vec<Run>) {
        self.runs.extend(runs);
        if 2 * self.joined + LOOSE < self.runs.len() {
            self.runs = joined(std::mem::take(&mut self.runs));
            self.joined = self.runs.len();
        }
    }
}

/// All that the files have of one log.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Together {
    /// What it is.
    pub kind: LogKind,
    /// Its identity.
    pub id: LogId,
    /// The shop whose file it came in: the first by name, where files of several have it.
    pub shop: Option<String>,
    /// Its entries in all their forms, sorted, each form once.
    pub records: Vec<SavedText>,
}

/// The union of one log.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Union {
    /// What it is.
    pub kind: LogKind,
    /// Its identity.
    pub id: LogId,
    /// The shop whose file it came in, as in [`Together`].
    pub shop: Option<String>,
    /// Its entries, one an id.
    pub records: Vec<SavedText>,
    /// Entries of which the files hold different contents; one of them is kept, by its bytes.
    pub edited: Vec<EntryId>,
}

impl Gathered {
    /// No file yet; what finds no room is put down beside `out`, and taken away at the end.
    pub fn beside(out: &Path) -> Self {
        let mut path = out.as_os_str().to_owned();
        path.push(".runs");
        Self::with_room(PathBuf::from(path), ROOM)
    }

    /// The same with the file to put down in, and after how many bytes.
    pub fn with_room(path: PathBuf, room: usize) -> Self {
        Self {
            runs: Runs::new(path, room),
            file: 0,
            refused: OrderedSet::new(),
            numbers: Numbers::default(),
            coming: Numbers::default(),
            coming_unreadable: Vec::new(),
            unreadable: OrderedMap::new(),
        }
    }

    /// Takes in what a file holds.
    ///
    /// # Errors
    /// What the disk refused.
    pub fn take(&mut self, incoming: &Incoming) -> io::Result<()> {
        for log in &incoming.logs {
            self.take_log(log)?;
        }
        self.keep();
        Ok(())
    }

    /// Takes in a log of the file on its way; it counts once that is kept.
    ///
    /// # Errors
    /// What the disk refused.
    pub fn take_log(&mut self, log: &IncomingLog) -> io::Result<()> {
        let mut parcel = self.file.to_le_bytes().to_vec();
        put(
            &mut parcel,
            log.shop.as_deref().unwrap_or_default().as_bytes(),
        )?;
        let unreadable = log.unreadable.iter().map(|(record, _)| record);
        for record in log.records.iter().chain(unreadable) {
            put(&mut parcel, record.id.as_bytes())?;
            put(&mut parcel, record.text.as_bytes())?;
        }
        let key = [&[log.kind as u8][..], log.id.0.as_bytes()].concat();
        self.runs.take(key, &parcel)?;
        self.coming.extend(runs(&log.entries));
        let unreadable = log.unreadable.iter();
        let named = unreadable.map(|(record, why)| (EntryId(record.id.clone()), why.clone()));
        self.coming_unreadable.extend(named);
        Ok(())
    }

    /// The file on its way is whole.
    pub fn keep(&mut self) {
        let coming = std::mem::take(&mut self.coming);
        self.numbers.extend(coming.runs);
        self.unreadable.extend(self.coming_unreadable.drain(..));
        self.file += 1;
    }

    /// The file on its way is refused: nothing of it counts.
    pub fn refuse(&mut self) {
        self.coming = Numbers::default();
        self.coming_unreadable.clear();
        self.refused.insert(self.file);
        self.file += 1;
    }

    /// All that came of each log, by kind and id; once.
    ///
    /// # Errors
    /// What the disk refused.
    pub fn logs(&mut self) -> io::Result<Logs> {
        Ok(Logs {
            sorted: self.runs.sorted()?,
            refused: std::mem::take(&mut self.refused),
        })
    }

    /// The running numbers that are missing, as in [`gaps`].
    pub fn gaps(&self) -> Vec<Gap> {
        gaps(&self.numbers.runs)
    }
}

/// Log after log.
pub struct Logs {
    sorted: Sorted,
    refused: OrderedSet<u32>,
}

impl Logs {
    /// The next log that a file has which was kept.
    ///
    /// # Errors
    /// What the disk refused.
    pub fn next_log(&mut self) -> io::Result<Option<Together>> {
        while let Some((key, parcels)) = self.sorted.next()? {
            let Some((together, any)) = self.together(&key, &parcels)? else {
                return Err(io::ErrorKind::InvalidData.into());
            };
            if any {
                return Ok(Some(together));
            }
        }
        Ok(None)
    }

    /// What the parcels of one key hold, and whether any of them counts.
    fn together(&self, key: &[u8], parcels: &[Vec<u8>]) -> io::Result<Option<(Together, bool)>> {
        let named = key.split_first().and_then(|(kind, id)| {
            let mut kinds = LogKind::ALL.iter().copied();
            let kind = kinds.find(|it| *it as u8 == *kind)?;
            Some((kind, String::from_utf8(id.to_vec()).ok()?))
        });
        let Some((kind, id)) = named else {
            return Ok(None);
        };
        let mut together = Together {
            kind,
            id: LogId(id.clone()),
            shop: None,
            records: Vec::new(),
        };
        let mut any = false;
        for parcel in parcels {
            let Some((file, rest)) = parcel.split_first_chunk() else {
                return Ok(None);
            };
            if self.refused.contains(&u32::from_le_bytes(*file)) {
                continue;
            }
            any = true;
            let mut rest = Cursor::new(rest);
            let shop = text(&mut rest)?.filter(|shop| !shop.is_empty());
            together.shop = match (together.shop.take(), shop) {
                (Some(one), Some(other)) => Some(one.min(other)),
                (one, other) => one.or(other),
            };
            while let Some((entry, text)) = text(&mut rest)?.zip(text(&mut rest)?) {
                together.records.push(SavedText {
                    log: id.clone(),
                    id: entry,
                    text,
                });
            }
        }
        together.records.sort();
        together.records.dedup();
        Ok(Some((together, any)))
    }
}

/// A text that was put down; nothing at the end.
fn text(from: &mut Cursor<&[u8]>) -> io::Result<Option<String>> {
    let text = get(from)?.map(String::from_utf8).transpose();
    text.map_err(|_| io::ErrorKind::InvalidData.into())
}

impl Together {
    /// Its union.
    pub fn union(self) -> Union {
        let union = merge(&[], &self.records);
        Union {
            kind: self.kind,
            id: self.id,
            shop: self.shop,
            records: union.add,
            edited: union.edited,
        }
    }

    /// Erases its customer, and what is named besides; gives how many entries that were, and what
    /// stays.
    ///
    /// # Errors
    /// [`WireError`] as in [`erased_with`].
    pub fn erase(&mut self, besides: &[Besides]) -> Result<(usize, Left), WireError> {
        let gone = erased_with(&self.records, besides)?;
        let is_gone = |record: &&SavedText| gone.iter().any(|gone| gone.id == record.id);
        let stay: Vec<SavedText> = self
            .records
            .iter()
            .filter(|r| !is_gone(r))
            .cloned()
            .collect();
        let count = gone.len();
        self.records.extend(gone);
        self.records.sort();
        self.records.dedup();
        Ok((count, left(&stay)))
    }

    /// Whether it is a job whose id begins so.
    pub fn is_job(&self, begins: &str) -> bool {
        self.kind == LogKind::Job && !begins.is_empty() && self.id.0.starts_with(begins)
    }
}
