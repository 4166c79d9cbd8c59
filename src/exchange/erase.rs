//! Letting go of a person: what the personal entries held is gone, what the work found stays.
//!
//! An erased entry keeps its id, its place in the order and the digest of its original, so that
//! every digest of the job still stands and an old file does not bring the person back.

use crate::exchange::envelope::{KeptText, entry_digest};
use crate::exchange::wire::{WireError, decode, encode};
use crate::job::entry::{Caption, Captioned, LogId, What};

/// The personal entries of a job with their bodies erased; nothing for the others.
///
/// # Errors
/// [`WireError`] if an erased entry cannot be written down, which no entry made here causes.
pub fn erased(records: &[KeptText]) -> Result<Vec<KeptText>, WireError> {
    let personal = records.iter().filter_map(|record| {
        let entry = decode(&record.text).ok()?;
        matches!(entry.what, What::Person(..)).then_some((record, entry))
    });
    personal
        .map(|(record, mut entry)| {
            entry.what = What::Erased(entry_digest(&record.text));
            Ok(KeptText {
                text: encode(&entry)?,
                ..record.clone()
            })
        })
        .collect()
}

/// What stays when a person is let go of and may still name them: only a person can tell.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Left {
    /// The complaint, the notes and the captions that were typed, word for word.
    pub texts: Vec<String>,
    /// How many signatures.
    pub signatures: usize,
    /// How many pictures and voice notes.
    pub pictures: usize,
}

/// What stays of a job beside its findings.
pub fn left(records: &[KeptText]) -> Left {
    let mut left = Left::default();
    for entry in records.iter().filter_map(|r| decode(&r.text).ok()) {
        match entry.what {
            What::Said(text) | What::Note(_, text) if !text.is_empty() => left.texts.push(text),
            What::Captioned(Captioned {
                caption: Caption::Words(text),
                ..
            }) => left.texts.push(text),
            What::Signed(_) => left.signatures += 1,
            What::Photo(_) | What::Voice(_) => left.pictures += 1,
            _ => {}
        }
    }
    left
}

/// The name under which a job is kept when its owner has none, or none any more.
pub fn pseudonym(job: &LogId) -> String {
    let plain = job.0.chars().filter(char::is_ascii_alphanumeric);
    // The first half of an id is its time and may be shared; the end of it is chance.
    let tail: Vec<char> = plain.collect();
    let from = tail.len().saturating_sub(8);
    let tail: String = tail.iter().skip(from).collect();
    format!("owner-{tail}")
}
