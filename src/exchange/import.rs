//! Reading a file of another phone: it is taken whole or refused, and nothing is changed here.

use crate::exchange::belongs::conflict;
use crate::exchange::envelope::{Envelope, FORMAT, LEVELS, LogKind, SavedText, VERSION};
use crate::exchange::json::{Form, NotJson, parse_to};
use crate::exchange::pieces::{CalledOff, InOneGo, Pieces, Waits, in_one_go};
use crate::exchange::rescue::{self, Rescue};
use crate::exchange::wire::WireError;
use crate::job::book::PREFIX;
use crate::job::entry::{Entry, LogId};
use crate::text::Say;

mod log;
mod sliced;

pub(super) use log::record;
#[cfg(not(target_arch = "wasm32"))]
pub(super) use log::{Came, texts};
use log::{Sure, log};
pub use sliced::{Far, Sliced};

/// How many joins the entries of a log may have: at each entry that saw more than its own phone's
/// last one, the phones that it knows of. A hundred phones that meet daily need years for as many.
/// The sentence names the limit too.
pub const MAX_JOINS: usize = 10_000_000;

/// Why a file is refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ImportError {
    /// Not a file of this program.
    NotOurs,
    /// Made by a newer version.
    Newer {
        /// The version of its envelope.
        version: u64,
    },
    /// The end is missing.
    CutOff,
    /// A file of this program that is no whole JSON of this version any more.
    Damaged {
        /// The line where it breaks, from 1.
        line: usize,
    },
    /// A log of a kind or with an id that this version does not write.
    BadLog {
        /// Its id.
        id: String,
    },
    /// The entries of a log are not those it was exported with.
    Edited {
        /// The log.
        log: LogId,
    },
    /// The entries of a log branch and join so often that to put them in order takes more than
    /// [`MAX_JOINS`] steps.
    Tangled {
        /// The log.
        log: LogId,
    },
    /// The file has a log more than once, and an entry of it with two contents.
    Conflict {
        /// The log.
        log: LogId,
    },
    /// Somebody called the reading off.
    CalledOff,
    /// An entry that cannot be kept.
    BadEntry {
        /// Its log.
        log: LogId,
        /// Its place in the log, from 1.
        place: usize,
        /// What is wrong with it.
        fault: EntryError,
    },
}

/// What is wrong with an entry.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EntryError {
    /// It lacks what every entry has.
    NotAnEntry,
    /// Its id is no UUID in lower-case letters.
    BadId,
    /// It says that it belongs to another log.
    OtherLog,
    /// Another entry of the file has its id.
    Twice,
    /// It tells what a log of this kind does not hold.
    OtherKind,
}

/// What a file holds.
#[derive(Clone, Debug, PartialEq)]
pub struct Incoming {
    /// The program that made it, as it names itself.
    pub made_by: String,
    /// Its logs.
    pub logs: Vec<IncomingLog>,
    /// What else a rescue file holds; `None` for an ordinary file.
    pub rescue: Option<Rescue>,
}

/// One log of a file.
#[derive(Clone, Debug, PartialEq)]
pub struct IncomingLog {
    /// What it is.
    pub kind: LogKind,
    /// Its identity.
    pub id: LogId,
    /// The shop whose file it came in, if that has an identity.
    pub shop: Option<String>,
    /// Its entries byte for byte, unknown kinds among them.
    pub records: Vec<SavedText>,
    /// The same entries as they are understood, in the same order.
    pub entries: Vec<Entry>,
    /// Entries of a known kind with a body that does not fit it: set aside and named.
    pub unreadable: Vec<(SavedText, WireError)>,
    /// Another program laid the file out again; no value of it was changed.
    pub reformatted: bool,
}

impl ImportError {
    /// The sentence that a person reads.
    pub const fn say(&self) -> Say {
        match self {
            Self::NotOurs => Say::ImportNotOurs,
            Self::Newer { .. } => Say::ImportNewer,
            Self::CutOff => Say::ImportCutOff,
            Self::Tangled { .. } => Say::ImportTangled,
            Self::Conflict { .. } => Say::ImportConflict,
            Self::CalledOff => Say::ImportCalledOff,
            Self::BadLog { .. }
            | Self::BadEntry {
                fault: EntryError::OtherKind,
                ..
            } => Say::ImportOtherKind,
            Self::Damaged { .. } | Self::Edited { .. } | Self::BadEntry { .. } => Say::ImportEdited,
        }
    }
}

impl From<CalledOff> for ImportError {
    fn from(CalledOff: CalledOff) -> Self {
        Self::CalledOff
    }
}

impl core::fmt::Display for ImportError {
    fn fmt(&self, out: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::NotOurs => write!(out, "not a file of this program"),
            Self::Newer { version } => write!(out, "made by a newer version ({version})"),
            Self::CutOff => write!(out, "the end of the file is missing"),
            Self::Damaged { line } => write!(out, "damaged at line {line}"),
            Self::BadLog { id } => write!(out, "log {id:?} is of no kind that fits its id"),
            Self::Conflict { log } => write!(out, "log {} is there twice and differs", log.0),
            Self::Edited { log } => write!(out, "log {} was edited", log.0),
            Self::CalledOff => write!(out, "called off"),
            Self::Tangled { log } => write!(out, "log {} is tangled", log.0),
            Self::BadEntry { log, place, fault } => {
                write!(out, "entry {place} of log {}: {fault:?}", log.0)
            }
        }
    }
}

/// Reads a file. Nothing is changed by it; see [`super::merge`] for what it would change.
///
/// # Errors
/// [`ImportError`] says what is wrong with the file as a whole, or with its first bad entry.
pub fn read(text: &str) -> Result<Incoming, ImportError> {
    in_one_go(read_in_pieces(text, &InOneGo))
}

/// The same in pieces, so that a long file can be called off.
///
/// # Errors
/// As [`read`], and [`ImportError::CalledOff`].
pub async fn read_in_pieces(text: &str, waits: &impl Waits) -> Result<Incoming, ImportError> {
    let (envelope, rescue) = open(text)?;
    let entries = envelope.logs.iter().map(|log| log.entries.len());
    // Each is looked at for the digests, and then read.
    let mut pieces = Pieces::of(2 * entries.sum::<usize>(), waits);
    let mut logs = Vec::with_capacity(envelope.logs.len());
    for stored in &envelope.logs {
        logs.push(log(stored, Sure::No, &mut pieces).await?);
    }
    if let Some(log) = conflict(&logs) {
        return Err(ImportError::Conflict { log });
    }
    Ok(Incoming {
        made_by: envelope.made_by,
        logs,
        rescue,
    })
}

/// The envelope of a file, no entry of it interpreted; that of a rescue file is made from what it
/// holds.
pub(super) fn open(text: &str) -> Result<(Envelope, Option<Rescue>), ImportError> {
    match envelope(plain(text)) {
        Err(ImportError::NotOurs) => {
            rescue::open(plain(text)).map(|(envelope, rescue)| (envelope, Some(rescue)))
        }
        envelope => envelope.map(|envelope| (envelope, None)),
    }
}

/// A text without the mark that some programs put in front of what they pass on.
fn plain(text: &str) -> &str {
    text.strip_prefix('\u{feff}').unwrap_or(text)
}

/// The envelope alone, nothing in it looked at.
fn envelope(text: &str) -> Result<Envelope, ImportError> {
    let json = parse_to(text, LEVELS).map_err(|error| refused(text, error))?;
    let unfit = || refused(text, NotJson::of_whole(text));
    // Format and version come first: a newer file may look otherwise in all else.
    let (format, version): (Option<String>, _) = (json.field("format"), json.field("version"));
    known(&format.ok_or_else(unfit)?, version.ok_or_else(unfit)?)?;
    Envelope::read(&json).ok_or_else(unfit)
}

/// Why a text with such a fault is no file.
fn refused(text: &str, error: NotJson) -> ImportError {
    match error {
        NotJson { cut_off: true, .. } => ImportError::CutOff,
        NotJson { line, .. } if looks_like(text, FORMAT) => ImportError::Damaged { line },
        NotJson { .. } => ImportError::NotOurs,
    }
}

fn known(format: &str, version: u64) -> Result<(), ImportError> {
    match version {
        _ if format != FORMAT => Err(ImportError::NotOurs),
        version if version > u64::from(VERSION) => Err(ImportError::Newer { version }),
        0 => Err(ImportError::NotOurs),
        _ => Ok(()),
    }
}

/// Whether the text begins as this program writes this format, spaces aside.
pub(super) fn looks_like(text: &str, format: &str) -> bool {
    let mut plain = text.chars().filter(|c| !c.is_whitespace());
    let begin = format!("{{\"format\":\"{format}\"");
    begin.chars().all(|c| plain.next() == Some(c))
}

/// Whether a log of this kind may have this id: a job has a UUID, every other log a plain name that
/// begins with its kind, so that none is taken for another. An id becomes part of a storage key, so
/// that nothing else may stand in it.
pub(super) fn is_log_id(kind: LogKind, id: &str) -> bool {
    let is_plain = |c: char| c.is_ascii_alphanumeric() || matches!(c, '-' | '_' | ':');
    let fits = match kind {
        LogKind::Job => return is_uuid(id),
        LogKind::SpecLibrary => id.starts_with(PREFIX),
        LogKind::VanKit | LogKind::Shop | LogKind::Confirmation => LogKind::of(id) == kind,
    };
    fits && id.len() <= 64 && id.chars().all(is_plain)
}

/// A UUID as it is written: 36 characters, in small letters.
pub(super) fn is_uuid(id: &str) -> bool {
    id.len() == 36
        && id.bytes().enumerate().all(|(place, byte)| match place {
            8 | 13 | 18 | 23 => byte == b'-',
            _ => matches!(byte, b'0'..=b'9' | b'a'..=b'f'),
        })
}
