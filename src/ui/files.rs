//! Files out and in: gathers the kept texts for an export, and takes what a file adds.

use std::collections::BTreeSet;

use web_sys::File;

use crate::exchange::wire::decode;
use crate::exchange::{self, ExportError, Incoming, IncomingLog, KeptText, LogKind};
use crate::job::entry::LogId;
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
    for log in logs {
        let read = slate::read(shelf, log).await.unwrap_or_default();
        whole.push((
            LogKind::of(log),
            LogId(log.clone()),
            read.texts.into_values().collect(),
        ));
    }
    exchange::export(&whole)
}

/// The kept texts of a log, by id; nothing of a log that is not here.
pub async fn kept_texts(shelf: &Shelf, log: &str) -> Vec<KeptText> {
    here(shelf, log).await.unwrap_or_default()
}

/// Reads a file and takes what it adds; a file with a fault changes nothing.
pub async fn take(shelf: &Shelf, file: &File) -> Outcome {
    let Ok(text) = files::read_text(file).await else {
        return Outcome::Refused(Say::ImportNotOurs);
    };
    match exchange::read(&text) {
        Err(error) => Outcome::Refused(error.say()),
        Ok(incoming) => match take_all(shelf, &incoming).await {
            Ok(taken) => taken,
            Err(_) => Outcome::Refused(Say::ImportNotKept),
        },
    }
}

/// Everything new goes in with one transaction, so that a refusal leaves nothing half taken.
async fn take_all(shelf: &Shelf, incoming: &Incoming) -> Result<Outcome, StoreProblem> {
    let (mut add, mut replace) = (Vec::new(), Vec::new());
    let (mut entries, mut aside, mut edited) = (0, 0, 0);
    let mut jobs = BTreeSet::new();
    let mut no_picture = Vec::new();
    for log in &incoming.logs {
        let merged = exchange::merge(&here(shelf, &log.id.0).await?, &log.records);
        entries += log.records.len();
        edited += merged.edited.len();
        aside += set_aside(shelf, log).await;
        for photo in log.photos() {
            if shelf.photo(&photo.sha256).await.is_none() {
                no_picture.push(photo.step);
            }
        }
        add.extend(merged.add.into_iter().map(record));
        replace.extend(merged.replace);
        if log.kind == LogKind::Job {
            jobs.insert(log.id.0.clone());
        }
    }
    Store::journal(shelf, &add).await?;
    shelf.replace(&replace).await?;
    let jobs = jobs.into_iter().collect();
    Ok(Outcome::Taken {
        jobs,
        entries,
        new: add.len(),
        aside,
        edited,
        emptied: replace.iter().filter(|kept| is_erased(kept)).count(),
        logs: incoming.logs.iter().map(|log| log.id.0.clone()).collect(),
        shop: shop(incoming),
        no_picture,
    })
}

fn is_erased(kept: &KeptText) -> bool {
    decode(&kept.text).is_ok_and(|entry| entry.what.is_gone())
}

/// The last of the shop's settings in a file.
fn shop(incoming: &Incoming) -> Option<String> {
    let mut logs = incoming.logs.iter();
    let log = logs.find(|log| log.kind == LogKind::Shop)?;
    log.records.last().map(|record| record.id.clone())
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
