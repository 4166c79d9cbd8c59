//! Files out and in: gathers the kept texts for an export, and takes what a file adds.

use std::collections::BTreeSet;

use web_sys::File;

use crate::exchange::book::kind_in_a_file;
use crate::exchange::bundle::{self, BundleError, Opened, Wanted};
use crate::exchange::wire::decode;
use crate::exchange::{self, ExportError, Incoming, IncomingLog, KeptText, LogKind};
use crate::job::entry::{Entry, LogId};
use crate::job::news::BookNews;
use crate::job::{flow, fold};
use crate::platform::files;
use crate::platform::record::{Photo, Record, StoreProblem};
use crate::slate::{self, Store};
use crate::text::Say;
use crate::trade::wheel_end::StepKey;
use crate::ui::shelf::Shelf;

/// What became of one file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// It was taken: so many entries were read, so many of them are new.
    Taken {
        /// The jobs it holds.
        jobs: Vec<String>,
        /// What its card books bring.
        book: BookNews,
        /// Entries read.
        entries: usize,
        /// Entries that were not here.
        new: usize,
        /// Entries that could not be read and were set aside.
        aside: usize,
        /// Entries that are here with another text; what was here is kept.
        edited: usize,
        /// Entries that were here and are erased now.
        emptied: usize,
        /// Every log it holds.
        logs: Vec<String>,
        /// The shop's settings that it brought, by their entry.
        shop: Option<String>,
        /// The steps whose pictures are named and not on this phone.
        no_picture: Vec<StepKey>,
        /// What became of the pictures and voice notes that came with it.
        bytes: Came,
    },
    /// It was refused, and nothing was changed.
    Refused(Say),
    /// It is a zip that is packed in a way that cannot be read here; nothing was changed.
    NotUnpacked,
}

/// What became of the pictures and voice notes of a zip.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Came {
    /// How many are kept.
    pub kept: usize,
    /// The names of those that are not what the record names; they were left out.
    pub wrong: Vec<String>,
    /// Whether some found no room.
    pub no_room: bool,
}

/// The file of these logs, as text.
///
/// # Errors
/// [`ExportError`] if a kept text is no entry.
pub async fn exported(shelf: &Shelf, logs: &[String]) -> Result<String, ExportError> {
    let mut whole = Vec::new();
    for log in logs {
        let Some(kind) = kind_in_a_file(log) else {
            continue;
        };
        let read = slate::read(shelf, log).await.unwrap_or_default();
        let texts = read.texts.into_values().collect();
        whole.push((kind, LogId(log.clone()), texts));
    }
    exchange::export(&whole)
}

/// The kept texts of a log, by id; nothing of a log that is not here.
pub async fn kept_texts(shelf: &Shelf, log: &str) -> Vec<KeptText> {
    here(shelf, log).await.unwrap_or_default()
}

/// The same with the pictures and voice notes that it names, as far as this phone has them, as a
/// zip; `name` is that of the job's file in it.
///
/// # Errors
/// [`ExportError`], also where there is no memory for the zip.
pub async fn bundled(shelf: &Shelf, logs: &[String], name: &str) -> Result<Vec<u8>, ExportError> {
    let text = exported(shelf, logs).await?;
    with_bytes(shelf, &text, name).await
}

/// A file's text as a zip with the pictures and voice notes that it names.
///
/// # Errors
/// [`ExportError::NotWritten`] where there is no memory for it.
pub async fn with_bytes(shelf: &Shelf, text: &str, name: &str) -> Result<Vec<u8>, ExportError> {
    let mut kept = Vec::new();
    for wanted in bundle::wanted_in(text) {
        if let Some(found) = shelf.photo(&wanted.sha256).await {
            kept.push((wanted, found.bytes));
        }
    }
    bundle::write(name, text, &kept).map_err(|_| ExportError::NotWritten)
}

/// The file of every card book of this phone.
///
/// # Errors
/// [`ExportError`] if a kept text is no entry.
pub async fn exported_book(shelf: &Shelf) -> Result<String, ExportError> {
    let mut logs = Vec::new();
    for log in shelf.logs().await {
        let read = slate::read(shelf, &log).await.unwrap_or_default();
        logs.push((LogId(log), read.texts.into_values().collect()));
    }
    exchange::export_book(&logs)
}

/// A job that was not here before, as it came: its line needs no second reading.
pub type Fresh = (LogId, Vec<Entry>);

/// Reads a file and takes what it adds; a file with a fault changes nothing. Of a zip each picture
/// is held against its digest: a wrong one is left out and named, the rest is kept.
pub async fn take(shelf: &Shelf, file: &File) -> (Outcome, Vec<Fresh>) {
    let refused = |say| (Outcome::Refused(say), Vec::new());
    let Ok(bytes) = files::read_bytes(file).await else {
        return refused(Say::ImportNotOurs);
    };
    if !bundle::is_zip(&bytes) {
        return match String::from_utf8(bytes) {
            Ok(text) => take_text(shelf, &text, &[]).await,
            Err(_) => refused(Say::ImportNotOurs),
        };
    }
    match bundle::open(&bytes) {
        Ok(Opened { text, pieces }) => take_text(shelf, &text, &pieces).await,
        Err(BundleError::Packed) => (Outcome::NotUnpacked, Vec::new()),
        Err(BundleError::NotZip) => refused(Say::ImportCutOff),
        Err(BundleError::Overlap) => refused(Say::ImportOverlap),
        Err(_) => refused(Say::ImportNotOurs),
    }
}

/// The same of a text that came otherwise than in a file.
pub async fn take_text(
    shelf: &Shelf,
    text: &str,
    pieces: &[(String, &[u8])],
) -> (Outcome, Vec<Fresh>) {
    let refused = |say| (Outcome::Refused(say), Vec::new());
    let incoming = match exchange::read(text) {
        Err(error) => return refused(error.say()),
        Ok(incoming) => incoming,
    };
    let wanted = bundle::wanted(incoming.logs.iter().flat_map(|log| &log.entries));
    let bytes = take_bytes(shelf, &wanted, pieces).await;
    match take_all(shelf, incoming, bytes).await {
        Ok(taken) => taken,
        Err(StoreProblem::Differs { .. }) => refused(Say::ImportDiffers),
        Err(_) => refused(Say::ImportNotKept),
    }
}

/// The bytes go first, as they do when a picture is taken; what finds no room is left out, and
/// what no entry comes to name is swept away later.
async fn take_bytes(shelf: &Shelf, wanted: &[Wanted], pieces: &[(String, &[u8])]) -> Came {
    let held = bundle::held(wanted, pieces);
    let mut came = Came {
        wrong: held.changed,
        ..Came::default()
    };
    for (wanted, bytes) in held.there {
        let (mime, bytes) = (wanted.mime, bytes.to_vec());
        match slate::keep_bytes(shelf, Photo { mime, bytes }).await {
            Ok(_) => came.kept += 1,
            Err(_) => came.no_room = true,
        }
    }
    came
}

/// Everything new goes in with one transaction, so that a refusal leaves nothing half taken.
async fn take_all(
    shelf: &Shelf,
    incoming: Incoming,
    bytes: Came,
) -> Result<(Outcome, Vec<Fresh>), StoreProblem> {
    let (mut add, mut replace) = (Vec::new(), Vec::new());
    let (mut entries, mut aside, mut edited) = (0, 0, 0);
    let mut jobs = BTreeSet::new();
    let (mut no_picture, mut fresh) = (Vec::new(), Vec::new());
    let mut book = BookNews::default();
    let logs = incoming.logs.iter().map(|log| log.id.0.clone()).collect();
    let shop = shop(&incoming);
    for log in incoming.logs {
        if log.kind == LogKind::CardBook {
            book = book.and(news(shelf, &log).await?);
        }
        let known = here(shelf, &log.id.0).await?;
        let merged = exchange::merge(&known, &log.records);
        entries += log.records.len();
        edited += merged.edited.len();
        aside += set_aside(shelf, &log).await;
        for wanted in bundle::wanted(&log.entries) {
            if shelf.photo(&wanted.sha256).await.is_none() {
                no_picture.push(wanted.step);
            }
        }
        add.extend(merged.add.into_iter().map(record));
        replace.extend(merged.replace);
        if log.kind == LogKind::Job {
            jobs.insert(log.id.0.clone());
            if known.is_empty() && merged.edited.is_empty() {
                fresh.push((log.id, log.entries));
            }
        }
    }
    Store::journal(shelf, &add).await?;
    shelf.replace(&replace).await?;
    let taken = Outcome::Taken {
        jobs: jobs.into_iter().collect(),
        book,
        entries,
        new: add.len(),
        aside,
        edited,
        emptied: replace.iter().filter(|kept| is_erased(kept)).count(),
        logs,
        shop,
        no_picture,
        bytes,
    };
    Ok((taken, fresh))
}

/// What one book brings, beside the one that is here.
async fn news(shelf: &Shelf, log: &IncomingLog) -> Result<BookNews, StoreProblem> {
    let here = slate::read(shelf, &log.id.0).await?;
    Ok(BookNews::of(
        &fold(here.entries),
        &fold(log.entries.iter().cloned()),
    ))
}

fn is_erased(kept: &KeptText) -> bool {
    decode(&kept.text).is_ok_and(|entry| entry.what.is_gone())
}

/// The last of the shop's settings in a file.
fn shop(incoming: &Incoming) -> Option<String> {
    let logs = incoming.logs.iter();
    let shops = logs.filter(|log| log.kind == LogKind::Shop);
    let sheet = fold(shops.flat_map(|log| log.entries.iter().cloned()));
    flow::shop_noted(&sheet).map(|entry| entry.id.0.clone())
}

async fn here(shelf: &Shelf, log: &str) -> Result<Vec<KeptText>, StoreProblem> {
    let read = slate::read(shelf, log).await?;
    let kept = |(id, text): (String, String)| KeptText {
        log: log.to_owned(),
        id,
        text,
    };
    Ok(read.texts.into_iter().map(kept).collect())
}

async fn set_aside(shelf: &Shelf, log: &IncomingLog) -> usize {
    for (kept, error) in &log.unreadable {
        if let Ok(journal) = shelf.journal() {
            // What could not be read is named on the screen whether or not this succeeds.
            let _ = journal.set_aside(&format!("{error:?}"), &kept.text).await;
        }
    }
    log.unreadable.len()
}

fn record(kept: KeptText) -> Record {
    Record {
        log: kept.log,
        id: kept.id,
        text: kept.text,
    }
}
