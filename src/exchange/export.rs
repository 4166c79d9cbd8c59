//! One file a job, with the spec library or the van kit beside it where that is asked for.

use crate::exchange::canonical::canonical_sha;
use crate::exchange::envelope::{
    FORMAT, LogKind, MADE_BY, Raw, StoredLog, VERSION, digest_of, entry_digest,
};
use crate::exchange::json::{parse, quoted};
use crate::exchange::pieces::{CalledOff, InOneGo, Pieces, Waits, in_one_go};
use crate::job::entry::LogId;
use crate::sorted::Sorted;

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
    /// What goes beside it could not be read or packed.
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
    Ok(text(&all))
}

/// The text of a file: lines of one entry each, so that a person who opens it can read it.
fn text(logs: &[StoredLog]) -> String {
    let mut text = format!(
        "{{\n  \"format\": {},\n  \"version\": {VERSION},\n  \"made_by\": {},\n  \"logs\": ",
        quoted(FORMAT),
        quoted(MADE_BY)
    );
    lines(&mut text, "  ", logs, |text, log| {
        text.push('{');
        let canonical = log.canonical.as_ref().map(|it| ("canonical", it));
        let fields = [
            ("kind", &log.kind),
            ("id", &log.id),
            ("digest", &log.digest),
        ];
        for (name, value) in fields.into_iter().chain(canonical) {
            text.push_str(&format!("\n      \"{name}\": {},", quoted(value)));
        }
        text.push_str("\n      \"entries\": ");
        lines(text, "      ", &log.entries, |text, Raw(entry)| {
            text.push_str(entry);
        });
        text.push_str("\n    }");
    });
    text.push_str("\n}\n");
    text
}

/// A list, each of it on a line of its own.
fn lines<T>(text: &mut String, indent: &str, all: &[T], write: impl Fn(&mut String, &T)) {
    text.push('[');
    for (place, one) in all.iter().enumerate() {
        text.push_str(if place > 0 { ",\n" } else { "\n" });
        text.push_str(indent);
        text.push_str("  ");
        write(text, one);
    }
    if !all.is_empty() {
        text.push('\n');
        text.push_str(indent);
    }
    text.push(']');
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
    let mut entries: Vec<(String, &str)> = Vec::with_capacity(texts.len());
    for text in texts {
        let named = || {
            let json = parse(text).ok()?;
            Some((json.field("id")?, json.raw()))
        };
        entries.push(named().ok_or_else(|| ExportError::NotAnEntry {
            log: id.clone(),
            text: text.clone(),
        })?);
    }
    entries.order();
    entries.dedup_by(|(_, left), (_, right)| left == right);
    let (mut digests, mut canonical) = (Vec::with_capacity(entries.len()), Some(Vec::new()));
    for (_, text) in &entries {
        digests.push(entry_digest(text));
        canonical = canonical.zip(canonical_sha(text)).map(|(mut all, one)| {
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
        entries: entries
            .into_iter()
            .map(|(_, text)| Raw(text.to_owned()))
            .collect(),
    })
}
