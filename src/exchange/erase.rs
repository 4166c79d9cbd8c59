//! Letting go of a person: what the personal entries held is gone, what the work found stays.
//!
//! An erased entry keeps its id, its place in the order and the digest of its original, so that
//! every digest of the job still stands and an old file does not bring the person back.

use crate::exchange::envelope::{SavedText, entry_digest};
use crate::exchange::wire::{WireError, decode, encode};
use crate::job::entry::{Caption, Captioned, Event, LogId};
use crate::words;

words! {
    /// What may name a person beside the personal facts: only a reader can tell.
    pub enum Besides {
        /// The complaint, word for word.
        Complaint = "complaint",
        /// The notes, and the captions that were typed.
        Notes = "notes",
        /// The signatures.
        Signatures = "signatures",
        /// The pictures and the spoken notes.
        Photos = "photos",
    }
}

impl Besides {
    /// What of this an entry is; nothing for findings, which no erasing can empty.
    pub const fn of(what: &Event) -> Option<Self> {
        match what {
            Event::Said(_) => Some(Self::Complaint),
            Event::Note(..)
            | Event::Captioned(Captioned {
                caption: Caption::Words(_),
                ..
            }) => Some(Self::Notes),
            Event::Signed(_) => Some(Self::Signatures),
            Event::Photo(_) | Event::Voice(_) => Some(Self::Photos),
            _ => None,
        }
    }
}

/// Whether an entry can be emptied at all: a person's facts, and what may name a person.
pub(super) fn is_personal(what: &Event) -> bool {
    matches!(what, Event::Person(..)) || Besides::of(what).is_some()
}

/// The personal entries of a job with their bodies erased; nothing for the others.
///
/// # Errors
/// [`WireError`] if an erased entry cannot be written down, which no entry made here causes.
pub fn erased(records: &[SavedText]) -> Result<Vec<SavedText>, WireError> {
    erased_with(records, &[])
}

/// The same, with the entries of these kinds too.
///
/// # Errors
/// As [`erased`].
pub fn erased_with(
    records: &[SavedText],
    besides: &[Besides],
) -> Result<Vec<SavedText>, WireError> {
    let is = |what: &Event| match Besides::of(what) {
        Some(of) => besides.contains(&of),
        None => matches!(what, Event::Person(..)),
    };
    emptied(records, is, Event::Erased)
}

/// The entries that leave a van once the shop has them: all that may name a person but the
/// pictures and spoken notes, whose bytes a confirmation does not vouch for.
///
/// Such a body is no erasing: any file with the original brings it back, and it empties nothing.
///
/// # Errors
/// As [`erased`].
pub fn let_go(records: &[SavedText]) -> Result<Vec<SavedText>, WireError> {
    let is = |what: &Event| is_personal(what) && !matches!(what, Event::Photo(_) | Event::Voice(_));
    emptied(records, is, Event::LetGo)
}

fn emptied(
    records: &[SavedText],
    is: impl Fn(&Event) -> bool,
    gone: fn(String) -> Event,
) -> Result<Vec<SavedText>, WireError> {
    let personal = records.iter().filter_map(|record| {
        let entry = decode(&record.text).ok()?;
        is(&entry.what).then_some((record, entry))
    });
    personal
        .map(|(record, mut entry)| {
            entry.what = gone(entry_digest(&record.text));
            Ok(SavedText {
                text: encode(&entry)?,
                ..record.clone()
            })
        })
        .collect()
}

/// What stays when a person is let go of and may still name them: only a person can tell.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Left {
    /// The complaint, word for word, as often as it was told.
    pub complaint: Vec<String>,
    /// The notes and the captions that were typed, word for word.
    pub notes: Vec<String>,
    /// How many signatures.
    pub signatures: usize,
    /// The pictures and the spoken notes, by their digest.
    pub photos: Vec<String>,
}

/// What stays of a job beside its findings.
pub fn left(records: &[SavedText]) -> Left {
    let mut left = Left::default();
    for entry in records.iter().filter_map(|r| decode(&r.text).ok()) {
        match entry.what {
            Event::Said(text) if !text.is_empty() => left.complaint.push(text),
            Event::Note(_, text) if !text.is_empty() => left.notes.push(text),
            Event::Captioned(Captioned {
                caption: Caption::Words(text),
                ..
            }) => left.notes.push(text),
            Event::Signed(_) => left.signatures += 1,
            Event::Photo(photo) => left.photos.push(photo.sha256),
            Event::Voice(voice) => left.photos.push(voice.sha256),
            _ => {}
        }
    }
    left
}

/// The name under which a job is kept when its customer has none, or none any more.
pub fn pseudonym(job: &LogId) -> String {
    let plain = job.0.chars().filter(char::is_ascii_alphanumeric);
    // The first half of an id is its time and may be shared; the end of it is chance.
    let tail: Vec<char> = plain.collect();
    let from = tail.len().saturating_sub(8);
    let tail: String = tail.iter().skip(from).collect();
    format!("customer-{tail}")
}
