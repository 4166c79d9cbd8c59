//! One log of a file: whether its entries are those that were exported, and what they are.

use super::{EntryError, ImportError, IncomingLog, MAX_JOINS, is_log_id, is_uuid};
use crate::exchange::belongs::belongs;
use crate::exchange::canonical::{canonical_entry, canonical_sha};
use crate::exchange::envelope::{
    LogKind, Raw, SavedText, StoredLog, digest_of, entry_digest, gone,
};
use crate::exchange::json::parse;
use crate::exchange::pieces::{CalledOff, Pieces, Waits};
use crate::exchange::wire::{WireError, decode, encode};
use crate::job::entry::{Entry, LogId};
use crate::job::is_tangled;
use crate::map::OrderedMap;

/// How the entries of a log came.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::exchange) enum Came {
    /// Byte for byte as they were exported.
    Same,
    /// Laid out again by another program and, as far as this version wrote them, brought back.
    Reformatted,
    /// Not those that were exported.
    Edited,
}

/// The entries of a log, and how they came. A layout is undone by writing each entry as this
/// program does; where that does not give the digest, the canonical one tells layout from edit.
///
/// The canonical digest also covers what stands around an erased body, which the other does not.
pub(in crate::exchange) async fn texts(
    stored: &StoredLog,
    pieces: &mut Pieces<'_, impl Waits>,
) -> Result<(Vec<String>, Came), CalledOff> {
    let came: Vec<&str> = stored
        .entries
        .iter()
        .map(|Raw(text)| text.as_str())
        .collect();
    let plain = || came.iter().map(|text| (*text).to_owned()).collect();
    let (mut digests, mut canonical) = (Vec::with_capacity(came.len()), Some(Vec::new()));
    for text in &came {
        digests.push(entry_digest(text));
        canonical = canonical.zip(canonical_sha(text)).map(|(mut all, one)| {
            all.push(one);
            all
        });
        pieces.one_more().await?;
    }
    let canonical = canonical.map(digest_of);
    let holds = stored
        .canonical
        .as_ref()
        .map(|_| stored.canonical == canonical);
    if holds == Some(false) {
        return Ok((plain(), Came::Edited));
    }
    if digest_of(digests) == stored.digest {
        return Ok((as_written(stored), Came::Same));
    }
    let mut again = Vec::with_capacity(came.len());
    for text in &came {
        again.push(restored(text));
        pieces.one_more().await?;
    }
    let digests = again.iter().map(|text| entry_digest(text)).collect();
    Ok(
        if holds == Some(true) || digest_of(digests) == stored.digest {
            (again, Came::Reformatted)
        } else {
            (plain(), Came::Edited)
        },
    )
}

/// The texts of a log whose digests hold. That of an erased entry is not that of its text, which
/// another layout leaves alone.
fn as_written(stored: &StoredLog) -> Vec<String> {
    let text = |Raw(text): &Raw| match gone(text) {
        Some(_) => restored(text),
        None => text.clone(),
    };
    stored.entries.iter().map(text).collect()
}

/// An entry as this program writes it, if that says the very same.
fn restored(came: &str) -> String {
    let again = decode(came).and_then(|entry| encode(&entry));
    match again {
        Ok(again) if canonical_entry(&again) == canonical_entry(came) => again,
        _ => came.to_owned(),
    }
}

/// Whether the digests of a log were looked at before.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sure {
    /// They were not.
    No,
    /// They hold, byte for byte.
    Holds,
}

/// Reads one log.
pub(super) async fn log(
    stored: &StoredLog,
    sure: Sure,
    pieces: &mut Pieces<'_, impl Waits>,
) -> Result<IncomingLog, ImportError> {
    let id = LogId(stored.id.clone());
    let kind = LogKind::from_code(&stored.kind)
        .filter(|kind| is_log_id(*kind, &stored.id))
        // It becomes the name of a folder.
        .filter(|_| stored.shop.as_ref().is_none_or(|shop| is_uuid(shop)))
        .ok_or_else(|| ImportError::BadLog {
            id: stored.id.clone(),
        })?;
    let (texts, came) = match sure {
        Sure::No => texts(stored, pieces).await?,
        Sure::Holds => (as_written(stored), Came::Same),
    };
    if came == Came::Edited {
        return Err(ImportError::Edited { log: id });
    }
    let mut log = IncomingLog {
        kind,
        id,
        shop: stored.shop.clone(),
        records: Vec::with_capacity(texts.len()),
        entries: Vec::with_capacity(texts.len()),
        unreadable: Vec::new(),
        reformatted: came == Came::Reformatted,
    };
    let mut seen: OrderedMap<String, usize> = OrderedMap::new();
    for (at, text) in texts.iter().enumerate() {
        pieces.one_more().await?;
        let fault = |fault| ImportError::BadEntry {
            log: LogId(stored.id.clone()),
            place: at + 1,
            fault,
        };
        let (record, read) = record(&stored.id, text).map_err(fault)?;
        if let Some(before) = seen.get(&record.id).and_then(|at| texts.get(*at)) {
            if entry_digest(before) == entry_digest(text) {
                continue;
            }
            return Err(fault(EntryError::Twice));
        }
        seen.insert(record.id.clone(), at);
        match read {
            Ok(entry) if !belongs(kind, &entry.what) => return Err(fault(EntryError::OtherKind)),
            Ok(entry) => {
                log.records.push(record);
                log.entries.push(entry);
            }
            Err(why) => log.unreadable.push((record, why)),
        }
    }
    if is_tangled(&log.entries, MAX_JOINS) {
        return Err(ImportError::Tangled { log: log.id });
    }
    Ok(log)
}

/// A record, and the entry in it unless its body does not fit its kind.
type Recorded = (SavedText, Result<Entry, WireError>);

/// The record of a text that is an entry of this log.
pub(in crate::exchange) fn record(log: &str, text: &str) -> Result<Recorded, EntryError> {
    let read = decode(text);
    let named = match &read {
        Ok(entry) => Some((entry.id.0.clone(), entry.log.0.clone())),
        Err(_) => named(text),
    };
    let (id, of) = named.ok_or(EntryError::NotAnEntry)?;
    if !is_uuid(&id) {
        return Err(EntryError::BadId);
    }
    if of != log {
        return Err(EntryError::OtherLog);
    }
    if let Err(WireError::NotJson | WireError::NotAnEntry) = read {
        return Err(EntryError::NotAnEntry);
    }
    let record = SavedText {
        log: of,
        id,
        text: text.to_owned(),
    };
    Ok((record, read))
}

/// The id and the log that a text names.
fn named(text: &str) -> Option<(String, String)> {
    let json = parse(text).ok()?;
    Some((json.field("id")?, json.field("log")?))
}
