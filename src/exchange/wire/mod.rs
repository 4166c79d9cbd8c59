//! The stored and exported form of an entry: the tables of its field names.
//!
//! A stored text is kept byte for byte and raised to today's form in memory only. A type that is
//! stored can no longer be changed freely: add a version, keep the old one's fixture.

mod decided;
mod flow;
mod found;
mod spec;
mod what;

#[cfg(not(target_arch = "wasm32"))]
use crate::exchange::json::written;
use crate::exchange::json::{Form, Json, Out, Tagged, form, parse};
use crate::job::entry::{Entry, EntryId, Event, LogId, Timestamp};

/// The version that this program writes.
pub const VERSION: u32 = 1;

/// Why a text is not an entry.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum WireError {
    /// Not JSON, or cut off.
    NotJson,
    /// JSON without the fields of an entry.
    NotAnEntry,
    /// A kind that is known, with a body that does not fit it; the kind is named.
    Malformed(String),
}

/// What a decision rested on, as it is stored.
#[cfg(not(target_arch = "wasm32"))]
pub(super) fn inputs(inputs: &crate::job::entry::Inputs) -> serde_json::Value {
    serde_json::from_str(&written(inputs)).unwrap_or_default()
}

/// A proof after the work, as it is stored.
#[cfg(not(target_arch = "wasm32"))]
pub(super) fn proved(proved: &crate::job::entry::Proved) -> serde_json::Value {
    serde_json::from_str(&written(proved)).unwrap_or_default()
}

form!(Timestamp {
    utc_ms,
    offset_min,
    recorded
});

impl Form for EntryId {
    fn read(json: &Json<'_>) -> Option<Self> {
        Form::read(json).map(Self)
    }

    fn write(&self, out: &mut Out) {
        out.text(&self.0);
    }
}

impl Form for LogId {
    fn read(json: &Json<'_>) -> Option<Self> {
        Form::read(json).map(Self)
    }

    fn write(&self, out: &mut Out) {
        out.text(&self.0);
    }
}

/// The text of an entry.
///
/// # Errors
/// [`WireError::Malformed`] if a body cannot be written, which no entry made here causes.
pub fn encode(entry: &Entry) -> Result<String, WireError> {
    let mut out = Out::default();
    out.open();
    out.field("v", &VERSION);
    out.field("id", &entry.id);
    out.field("log", &entry.log);
    out.field("at", &entry.at);
    out.field("by", &entry.by);
    out.field("device", &entry.device);
    out.field("n", &entry.n);
    out.field("after", &entry.after);
    out.name("what");
    match &entry.what {
        Event::Unknown(text) => {
            let json = parse(text).map_err(|_| WireError::Malformed(entry.id.0.clone()))?;
            out.0.push_str(json.raw());
        }
        known => known.write(&mut out),
    }
    out.close();
    Ok(out.0)
}

/// The entry of a text. A kind that this version does not know, and any kind in another version, is
/// kept as [`Event::Unknown`].
///
/// # Errors
/// [`WireError`] says whether the text is not JSON, not an entry, or an entry with a bad body.
pub fn decode(text: &str) -> Result<Entry, WireError> {
    decode_json(&parse(text).map_err(|_| WireError::NotJson)?)
}

fn decode_json(json: &Json<'_>) -> Result<Entry, WireError> {
    let what = json.find("what").ok().flatten();
    let what = what.ok_or(WireError::NotAnEntry)?;
    let (v, mut entry) = frame(json).ok_or(WireError::NotAnEntry)?;
    entry.what = body(v, what)?;
    Ok(entry)
}

/// All of an entry but what happened, and its version.
fn frame(json: &Json<'_>) -> Option<(u32, Entry)> {
    let entry = Entry {
        id: json.field("id")?,
        log: json.field("log")?,
        at: json.field("at")?,
        by: json.field("by")?,
        device: json.field("device")?,
        n: json.field("n")?,
        after: json.field("after")?,
        what: Event::Unknown(String::new()),
    };
    Some((json.field("v")?, entry))
}

fn body(v: u32, what: &Json<'_>) -> Result<Event, WireError> {
    let unknown = || Event::Unknown(what.raw().to_owned());
    // Another version may mean something else by the same words.
    if !(1..=VERSION).contains(&v) {
        return Ok(unknown());
    }
    match Event::read(what) {
        // A wheel end that this version does not know has no procedure here: nothing is guessed.
        Some(Event::Vehicle(field, code)) if !field.knows(&code) => Ok(unknown()),
        Some(what) => Ok(what),
        None => match kind_of(what) {
            kind if Event::TAGS.contains(&kind.as_str()) => Err(WireError::Malformed(kind)),
            _ => Ok(unknown()),
        },
    }
}

/// The tag of an entry's body, as far as the text is an entry.
#[cfg(not(target_arch = "wasm32"))]
pub(super) fn kind(text: &str) -> String {
    let json = parse(text).ok();
    let what = json.as_ref().and_then(|json| json.find("what").ok()?);
    what.map(kind_of).unwrap_or_default()
}

/// The tag of a body, the first by name where it has several; an empty text if it has none.
fn kind_of(what: &Json<'_>) -> String {
    let members = what.map().unwrap_or_default().iter();
    let names = members.filter_map(|(name, _)| super::json::unquoted(name));
    names.min().unwrap_or_default().into_owned()
}
