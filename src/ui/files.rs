//! Files out and in: gathers the kept texts for an export, and takes what a file adds.

use std::collections::BTreeSet;

use web_sys::File;

use crate::exchange::book::{fits_a_file, kind};
use crate::exchange::wire::decode;
use crate::exchange::{self, ExportError, Incoming, IncomingLog, KeptText, LogKind};
use crate::job::entry::{Entry, LogId};
use crate::job::fold;
use crate::job::news::BookNews;
use crate::platform::files;
use crate::platform::record::{Record, StoreProblem};
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
        /// The steps whose pictures are named and not on this phone.
        no_picture: Vec<StepKey>,
    },
    /// It was refused, and nothing was changed.
    Refused(Say),
}

/// The file of these logs, as text.
///
/// # Errors
/// [`ExportError`] if a kept text is no entry.
pub async fn exported(shelf: &Shelf, logs: &[String]) -> Result<String, ExportError> {
    let mut whole = Vec::new();
    for log in logs.iter().filter(|log| fits_a_file(log)) {
        let read = slate::read(shelf, log).await.unwrap_or_default();
        whole.push((
            kind(log),
            LogId(log.clone()),
            read.texts.into_values().collect(),
        ));
    }
    exchange::export(&whole)
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

/// Reads a file and takes what it adds; a file with a fault changes nothing.
pub async fn take(shelf: &Shelf, file: &File) -> (Outcome, Vec<Fresh>) {
    let refused = |say| (Outcome::Refused(say), Vec::new());
    let Ok(text) = files::read_text(file).await else {
        return refused(Say::ImportNotOurs);
    };
    match exchange::read(&text) {
        Err(error) => refused(error.say()),
        Ok(incoming) => match take_all(shelf, incoming).await {
            Ok(taken) => taken,
            Err(_) => refused(Say::ImportNotKept),
        },
    }
}

/// Everything new goes in with one transaction, so that a refusal leaves nothing half taken.
async fn take_all(
    shelf: &Shelf,
    incoming: Incoming,
) -> Result<(Outcome, Vec<Fresh>), StoreProblem> {
    let (mut add, mut replace) = (Vec::new(), Vec::new());
    let (mut entries, mut aside, mut edited) = (0, 0, 0);
    let mut jobs = BTreeSet::new();
    let (mut no_picture, mut fresh) = (Vec::new(), Vec::new());
    let mut book = BookNews::default();
    for log in incoming.logs {
        if log.kind == LogKind::CardBook {
            book = book.and(news(shelf, &log).await?);
        }
        let known = here(shelf, &log.id.0).await?;
        let merged = exchange::merge(&known, &log.records);
        entries += log.records.len();
        edited += merged.edited.len();
        aside += set_aside(shelf, &log).await;
        for photo in log.photos() {
            if shelf.photo(&photo.sha256).await.is_none() {
                no_picture.push(photo.step);
            }
        }
        add.extend(merged.add.into_iter().map(record));
        replace.extend(merged.replace.into_iter().map(record));
        if log.kind == LogKind::Job {
            jobs.insert(log.id.0.clone());
            if known.is_empty() && merged.edited.is_empty() {
                fresh.push((log.id, log.entries));
            }
        }
    }
    Store::journal(shelf, &add).await?;
    for record in &replace {
        shelf
            .journal()?
            .replace_body(&record.log, &record.id, &record.text)
            .await?;
    }
    let taken = Outcome::Taken {
        jobs: jobs.into_iter().collect(),
        book,
        entries,
        new: add.len(),
        aside,
        edited,
        no_picture,
    };
    Ok((taken, fresh))
}

/// What one book brings, beside the one that is here.
async fn news(shelf: &Shelf, log: &IncomingLog) -> Result<BookNews, StoreProblem> {
    let here = slate::read(shelf, &log.id.0).await?;
    Ok(BookNews::of(&fold(here.entries), &fold(log.entries.iter().cloned())))
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
