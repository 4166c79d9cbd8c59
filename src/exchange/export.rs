//! One file a job, with the spec library or the van kit beside it where that is asked for.

use crate::exchange::canonical::canonical_sha;
use crate::exchange::envelope::{
    FORMAT, LogKind, MADE_BY, Raw, StoredLog, VERSION, digest_of, entry_digest,
};
use crate::exchange::json::{parse, quoted};
use crate::exchange::pieces::{CalledOff, InOneGo, Pieces, Waits, in_one_go};
use crate::job::entry::LogId;
use crate::sorted::Sorted;
#[cfg(not(target_arch = "wasm32"))]
use std::io;

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
    export_of(None, logs)
}

/// The same by the device of a shop.
///
/// # Errors
/// As [`export`].
pub fn export_of(shop: Option<&str>, logs: &[Log]) -> Result<String, ExportError> {
    in_one_go(export_in_pieces(shop, logs, &InOneGo))
}

/// The same in pieces, so that a long file can be called off.
///
/// # Errors
/// As [`export`], and [`ExportError::CalledOff`].
pub async fn export_in_pieces(
    shop: Option<&str>,
    logs: &[Log],
    waits: &impl Waits,
) -> Result<String, ExportError> {
    let entries = logs.iter().map(|(_, _, texts)| texts.len());
    let mut pieces = Pieces::of(entries.sum(), waits);
    let mut all = Vec::with_capacity(logs.len());
    for (kind, id, texts) in logs {
        let log = stored(*kind, id, texts, &mut pieces).await?;
        let shop = shop.map(str::to_owned);
        all.push(StoredLog { shop, ..log });
    }
    Ok(text(&all))
}

/// The text of a file: lines of one entry each, so that a person who opens it can read it.
fn text(logs: &[StoredLog]) -> String {
    let mut text = head();
    for (place, log) in logs.iter().enumerate() {
        text.push_str(&next(place == 0, log));
    }
    text + tail(!logs.is_empty())
}

/// What stands before the logs.
fn head() -> String {
    format!(
        "{{\n  \"format\": {},\n  \"version\": {VERSION},\n  \"made_by\": {},\n  \"logs\": [",
        quoted(FORMAT),
        quoted(MADE_BY)
    )
}

/// What stands behind them.
const fn tail(any: bool) -> &'static str {
    if any { "\n  ]\n}\n" } else { "]\n}\n" }
}

/// One log on its lines, behind those before it.
fn next(is_first: bool, log: &StoredLog) -> String {
    let mut text = if is_first { "\n    {" } else { ",\n    {" }.to_owned();
    let fields = [
        ("kind", Some(&log.kind)),
        ("id", Some(&log.id)),
        ("shop", log.shop.as_ref()),
        ("digest", Some(&log.digest)),
        ("canonical", log.canonical.as_ref()),
    ];
    for (name, value) in fields {
        if let Some(value) = value {
            text.push_str(&format!("\n      \"{name}\": {},", quoted(value)));
        }
    }
    text.push_str("\n      \"entries\": ");
    lines(&mut text, "      ", &log.entries, |text, Raw(entry)| {
        text.push_str(entry);
    });
    text + "\n    }"
}

/// A file that is written log by log.
#[cfg(not(target_arch = "wasm32"))]
pub struct FileWriter<W> {
    out: W,
    any: bool,
}

#[cfg(not(target_arch = "wasm32"))]
impl<W: io::Write> FileWriter<W> {
    /// Writes what stands before the logs.
    ///
    /// # Errors
    /// What the disk refused.
    pub fn begin(mut out: W) -> io::Result<Self> {
        out.write_all(head().as_bytes())?;
        Ok(Self { out, any: false })
    }

    /// Writes one log, as [`export`] does; `shop` is that of its file.
    ///
    /// # Errors
    /// What the disk refused, or a text that is no entry.
    pub fn add(&mut self, (kind, id, texts): &Log, shop: Option<&str>) -> io::Result<()> {
        let log = in_one_go(stored(*kind, id, texts, &mut Pieces::of(0, &InOneGo)));
        let log = log.map_err(|error| io::Error::other(error.to_string()))?;
        let shop = shop.map(str::to_owned);
        let text = next(!self.any, &StoredLog { shop, ..log });
        self.any = true;
        self.out.write_all(text.as_bytes())
    }

    /// Writes what stands behind them, and gives the writer back.
    ///
    /// # Errors
    /// What the disk refused.
    pub fn end(mut self) -> io::Result<W> {
        self.out.write_all(tail(self.any).as_bytes())?;
        Ok(self.out)
    }
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
        shop: None,
        digest: digest_of(digests),
        canonical: canonical.map(digest_of),
        entries: entries
            .into_iter()
            .map(|(_, text)| Raw(text.to_owned()))
            .collect(),
    })
}
