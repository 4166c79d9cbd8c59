//! The stored and exported form of an entry; the only types that serde knows.
//!
//! A stored text is kept byte for byte and raised to today's form in memory only. A type that is
//! stored can no longer be changed freely: add a version, keep the old one's fixture.

mod card;
mod decided;
mod flow;
mod found;
mod kit;
mod lower;
mod money;
mod proved;
mod raise;
mod runout;
mod thickness;
mod what;

use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;

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
    serde_json::to_value(decided::lower(inputs)).unwrap_or_default()
}

/// A proof after the work, as it is stored.
#[cfg(not(target_arch = "wasm32"))]
pub(super) fn proved(proved: &crate::job::entry::Proved) -> serde_json::Value {
    serde_json::to_value(proved::lower(proved)).unwrap_or_default()
}

#[derive(Serialize, Deserialize)]
struct Stored<'a> {
    v: u32,
    id: String,
    log: String,
    at: StoredAt,
    by: String,
    device: String,
    n: u64,
    after: Vec<String>,
    #[serde(borrow)]
    what: &'a RawValue,
}

#[derive(Serialize, Deserialize)]
struct StoredAt {
    utc_ms: i64,
    offset_min: i32,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    told: Option<i64>,
}

/// The text of an entry.
///
/// # Errors
/// [`WireError::Malformed`] if a body cannot be written, which no entry made here causes.
pub fn encode(entry: &Entry) -> Result<String, WireError> {
    let broken = |_| WireError::Malformed(entry.id.0.clone());
    let raw = match (&entry.what, lower::what(&entry.what)) {
        (Event::Unknown(text), _) => RawValue::from_string(text.clone()).map_err(broken)?,
        (_, known) => serde_json::value::to_raw_value(&known).map_err(broken)?,
    };
    let stored = Stored {
        v: VERSION,
        id: entry.id.0.clone(),
        log: entry.log.0.clone(),
        at: StoredAt {
            utc_ms: entry.at.utc_ms,
            offset_min: entry.at.offset_min,
            told: entry.at.told,
        },
        by: entry.by.clone(),
        device: entry.device.clone(),
        n: entry.n,
        after: entry.after.iter().map(|id| id.0.clone()).collect(),
        what: &raw,
    };
    serde_json::to_string(&stored).map_err(broken)
}

/// The entry of a text. A kind that this version does not know, and any kind in another version, is
/// kept as [`Event::Unknown`].
///
/// # Errors
/// [`WireError`] says whether the text is not JSON, not an entry, or an entry with a bad body.
pub fn decode(text: &str) -> Result<Entry, WireError> {
    let stored: Stored = serde_json::from_str(text).map_err(|error| {
        if error.is_data() {
            WireError::NotAnEntry
        } else {
            WireError::NotJson
        }
    })?;
    let what = body(stored.v, stored.what)?;
    Ok(Entry {
        id: EntryId(stored.id),
        log: LogId(stored.log),
        at: Timestamp {
            utc_ms: stored.at.utc_ms,
            offset_min: stored.at.offset_min,
            told: stored.at.told,
        },
        by: stored.by,
        device: stored.device,
        n: stored.n,
        after: stored.after.into_iter().map(EntryId).collect(),
        what,
    })
}

fn body(v: u32, raw: &RawValue) -> Result<Event, WireError> {
    // Another version may mean something else by the same words.
    if !(1..=VERSION).contains(&v) {
        return Ok(Event::Unknown(raw.get().to_owned()));
    }
    let known = serde_json::from_str::<what::Event>(raw.get())
        .ok()
        .and_then(raise::what);
    match known {
        Some(what) => Ok(what),
        None if !what::is_known_kind(raw.get()) => Ok(Event::Unknown(raw.get().to_owned())),
        None => Err(WireError::Malformed(what::kind_of(raw.get()))),
    }
}
