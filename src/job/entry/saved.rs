//! What is kept as bytes beside the entries: pictures and voice notes, and what is said of them.

use crate::job::entry::Event;
use crate::trade::wheel_end::CaptionWord;
use crate::trade::wheel_end::StepKey;

/// A picture that was kept.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Photo {
    /// The step it was taken at; its caption, until another is picked.
    pub step: StepKey,
    /// SHA-256 of its bytes, in hex.
    pub sha256: String,
    /// Its media type.
    pub mime: String,
    /// Its size in pixels.
    pub width: u32,
    /// Its size in pixels.
    pub height: u32,
}

/// A spoken note that was kept.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Voice {
    /// The step it was spoken at.
    pub step: StepKey,
    /// SHA-256 of its bytes, in hex.
    pub sha256: String,
    /// Its media type.
    pub mime: String,
    /// How long it is in seconds, begun ones counted, 1 to [`Voice::LONGEST_S`].
    pub seconds: u8,
}

impl Voice {
    /// The longest voice note in seconds: our own limit, so that notes stay short and small.
    pub const LONGEST_S: u8 = 60;
}

/// What a picture shows.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub enum Caption {
    /// What its step is about.
    Step,
    /// A word that was offered.
    Word(CaptionWord),
    /// The technician's own words.
    Words(String),
}

/// The caption of one picture.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Captioned {
    /// SHA-256 of the picture's bytes, in hex.
    pub sha256: String,
    /// What it shows.
    pub caption: Caption,
}

/// Bytes that an entry names.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Named<'a> {
    /// The step they belong to.
    pub step: StepKey,
    /// Their SHA-256, in hex.
    pub sha256: &'a str,
    /// Their media type.
    pub mime: &'a str,
}

impl Event {
    /// The bytes that this entry names, if it is a picture or a voice note.
    pub fn named(&self) -> Option<Named<'_>> {
        let (step, sha256, mime) = match self {
            Self::Photo(photo) => (photo.step, &photo.sha256, &photo.mime),
            Self::Voice(voice) => (voice.step, &voice.sha256, &voice.mime),
            _ => return None,
        };
        Some(Named { step, sha256, mime })
    }
}
