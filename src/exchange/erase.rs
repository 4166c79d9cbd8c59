//! Letting go of a person: what the personal entries held is gone, what the work found stays.
//!
//! An erased entry keeps its id, its place in the order and the digest of its original, so that
//! every digest of the job still stands and an old file does not bring the person back.

use crate::exchange::envelope::{SavedText, entry_digest};
use crate::exchange::wire::{WireError, decode, encode};
use crate::job::entry::{Caption, Captioned, Entry, Event, LogId, PersonField};
use crate::letters::plain;
use crate::map::OrderedSet;
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

/// The shortest part of a name that is looked for by itself: shorter ones are words of many texts.
const SHORTEST_PART: usize = 3;

/// Of the complaint and the notes those in which a person of these records is named: by the name or a
/// part of it, the telephone number, the e-mail address or the plate. It is a proposal alone: a
/// person may be named in other words.
pub fn naming(records: &[SavedText]) -> Vec<Besides> {
    let entries: Vec<Entry> = records
        .iter()
        .filter_map(|kept| decode(&kept.text).ok())
        .collect();
    let (mut whole, mut parts) = (OrderedSet::new(), OrderedSet::new());
    for entry in &entries {
        if let Event::Person(field, text) = &entry.what {
            whole.insert(plain(text));
            if *field == PersonField::Name {
                parts.extend(words(text).filter(|it| SHORTEST_PART <= it.chars().count()));
            }
        }
    }
    whole = whole
        .into_iter()
        .filter(|it| SHORTEST_PART <= it.chars().count())
        .collect();
    let names = |text: &str| {
        let all = plain(text);
        whole.iter().any(|it| all.contains(it.as_str()))
            || words(text).any(|it| parts.contains(&it))
    };
    let left = left(records);
    let named = [
        (
            Besides::Complaint,
            left.complaint.iter().any(|it| names(it)),
        ),
        (Besides::Notes, left.notes.iter().any(|it| names(it))),
    ];
    let named = named.into_iter().filter(|(_, is)| *is);
    named.map(|(which, _)| which).collect()
}

/// The words of a text, in small letters.
fn words(text: &str) -> impl Iterator<Item = String> {
    text.split(|c: char| !c.is_alphanumeric()).map(plain)
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::entry::{EntryId, Timestamp};

    fn kept(whats: Vec<Event>) -> Vec<SavedText> {
        let entry = |(n, what): (u64, Event)| Entry {
            id: EntryId(format!("{n:04}")),
            log: LogId("job".to_owned()),
            at: Timestamp {
                utc_ms: 0,
                offset_min: 0,
                recorded: None,
            },
            by: String::new(),
            device: "shop".to_owned(),
            n,
            after: Vec::new(),
            what,
        };
        let entries = (1..).zip(whats).map(entry);
        entries
            .map(|entry| SavedText {
                log: entry.log.0.clone(),
                id: entry.id.0.clone(),
                text: encode(&entry).unwrap(),
            })
            .collect()
    }

    #[test]
    fn a_text_that_names_the_customer_is_proposed_and_no_other() {
        let person = |field, text: &str| Event::Person(field, text.to_owned());
        let named = |said: &str, note: &str| {
            naming(&kept(vec![
                person(PersonField::Name, "Ada Ng Nobody"),
                person(PersonField::Phone, "+1 (555) 010-0199"),
                person(PersonField::Plate, "PRC 001"),
                Event::Said(said.to_owned()),
                Event::Note(None, note.to_owned()),
            ]))
        };
        assert_eq!(named("It hums.", "Gate is open."), []);
        assert_eq!(named("Mrs. NOBODY says it hums.", ""), [Besides::Complaint]);
        assert_eq!(named("", "call 1 555 010 0199 first"), [Besides::Notes]);
        assert_eq!(named("", "prc-001 is in the garage"), [Besides::Notes]);
        assert_eq!(
            named("Ask Ada", "Ada is out"),
            [Besides::Complaint, Besides::Notes]
        );
        // A part of a longer word, and one of two letters, are no name.
        assert_eq!(named("Adaptive damper", "nothing wrong"), []);
        // An empty fact is in every text.
        let empty = kept(vec![
            person(PersonField::Name, ""),
            Event::Said("It hums.".to_owned()),
        ]);
        assert_eq!(naming(&empty), []);
    }
}
