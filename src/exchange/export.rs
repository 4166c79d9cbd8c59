//! One file a job, with the card book or the van kit beside it where that is asked for.

use serde::Deserialize;
use serde_json::value::RawValue;

use crate::exchange::canonical::canonical_sha;
use crate::exchange::envelope::{
    Envelope, FORMAT, LogKind, MADE_BY, StoredLog, VERSION, digest_of, entry_digest,
};
use crate::exchange::pieces::{CalledOff, InOneGo, Pieces, Waits, in_one_go};
use crate::job::entry::LogId;

/// Why a file cannot be made.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ExportError {
    /// A kept text is no entry; the log is named.
    NotAnEntry {
        /// The log it was kept under.
        log: LogId,
        /// The text.
        text: String,
    },
    /// Somebody called it off.
    CalledOff,
    /// The file could not be written down, which no text that is JSON causes.
    NotWritten,
}

impl From<CalledOff> for ExportError {
    fn from(CalledOff: CalledOff) -> Self {
        Self::CalledOff
    }
}

impl core::fmt::Display for ExportError {
    fn fmt(&self, out: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::NotAnEntry { log, .. } => write!(out, "a text of log {} is no entry", log.0),
            Self::CalledOff => write!(out, "called off"),
            Self::NotWritten => write!(out, "the file could not be written"),
        }
    }
}

/// A log with the texts of its entries.
pub type Log = (LogKind, LogId, Vec<String>);

/// The file of these logs. Each entry stands in it byte for byte as it was kept, in the order of
/// the ids, so that the same set of entries gives the same file.
///
/// # Errors
/// [`ExportError::NotAnEntry`] for a text without an id.
pub fn export(logs: &[Log]) -> Result<String, ExportError> {
    in_one_go(export_in_pieces(logs, &InOneGo))
}

/// The same in pieces, so that a long file can be called off.
///
/// # Errors
/// As [`export`], and [`ExportError::CalledOff`].
pub async fn export_in_pieces(logs: &[Log], waits: &impl Waits) -> Result<String, ExportError> {
    let entries = logs.iter().map(|(_, _, texts)| texts.len());
    let mut pieces = Pieces::of(entries.sum(), waits);
    let mut all = Vec::with_capacity(logs.len());
    for (kind, id, texts) in logs {
        all.push(stored(*kind, id, texts, &mut pieces).await?);
    }
    let envelope = Envelope {
        format: FORMAT.to_owned(),
        version: VERSION,
        made_by: MADE_BY.to_owned(),
        logs: all,
    };
    // Lines of one entry each, so that a person who opens the file can read it; a raw value is
    // written as it came.
    let mut text = serde_json::to_string_pretty(&envelope).map_err(|_| ExportError::NotWritten)?;
    text.push('\n');
    Ok(text)
}

/// A log as it stands in a file, its entries in the order of their ids.
///
/// # Errors
/// As [`export`].
pub(super) async fn stored(
    kind: LogKind,
    id: &LogId,
    texts: &[String],
    pieces: &mut Pieces<'_, impl Waits>,
) -> Result<StoredLog, ExportError> {
    let mut entries: Vec<(String, Box<RawValue>)> = texts
        .iter()
        .map(|text| raw(id, text))
        .collect::<Result<_, _>>()?;
    entries.sort_by(|(a, left), (b, right)| (a, left.get()).cmp(&(b, right.get())));
    entries.dedup_by(|(_, left), (_, right)| left.get() == right.get());
    let (mut digests, mut canonical) = (Vec::with_capacity(entries.len()), Some(Vec::new()));
    for (_, raw) in &entries {
        digests.push(entry_digest(raw.get()));
        canonical = canonical.zip(canonical_sha(raw)).map(|(mut all, one)| {
            all.push(one);
            all
        });
        pieces.one_more().await?;
    }
    Ok(StoredLog {
        kind: kind.code().to_owned(),
        id: id.0.clone(),
        digest: digest_of(digests),
        canonical: canonical.map(digest_of),
        entries: entries.into_iter().map(|(_, raw)| raw).collect(),
    })
}

fn raw(log: &LogId, text: &str) -> Result<(String, Box<RawValue>), ExportError> {
    #[derive(Deserialize)]
    struct Named {
        id: String,
    }
    let broken = |_| ExportError::NotAnEntry {
        log: log.clone(),
        text: text.to_owned(),
    };
    let named: Named = serde_json::from_str(text).map_err(broken)?;
    let raw = RawValue::from_string(text.to_owned()).map_err(broken)?;
    Ok((named.id, raw))
}
