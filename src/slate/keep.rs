//! Keeping a tap: the second copy in the same tick, journal and backup journal behind it, and what
//! that means.

use crate::exchange::import::MAX_JOINS;
use crate::exchange::json::parse;
use crate::exchange::wire::{WireError, decode, encode};
use crate::job::entry::Entry;
use crate::job::is_tangled;
use crate::map::{OrderedMap, OrderedSet};
use crate::platform::record::{Record, StoreError};

/// Where entries are kept. The browser's storage in the app; a faulty memory in tests.
pub trait Store {
    /// Writes the second copy of an open job, before the journal and in the same tick.
    ///
    /// # Errors
    /// What the storage refused.
    fn second(&self, records: &[Record]) -> Result<(), StoreError>;

    /// Writes the record; resolves only once it is durable.
    ///
    /// # Errors
    /// What the storage refused; nothing of it was kept then.
    fn journal(&self, records: &[Record]) -> impl Future<Output = Result<(), StoreError>>;

    /// Writes the backup journal; on its way when this returns, flushed when it resolves.
    ///
    /// # Errors
    /// What the storage refused; nothing of it was kept then.
    fn backup(&self, records: &[Record]) -> impl Future<Output = Result<(), StoreError>>;

    /// Everything the journal has of a log.
    ///
    /// # Errors
    /// What the storage refused.
    fn read_journal(&self, log: &str) -> impl Future<Output = Result<Vec<Record>, StoreError>>;

    /// Everything that backup journal and second copy have of a log; nothing if there is none.
    fn read_second(&self, log: &str) -> Vec<Record>;
}

/// How safe a kept tap is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Saved {
    /// In the journal, durable.
    Safe,
    /// Only in the second copy, with why: it reads as kept, not yet safe.
    NotYetSafe(StoreError),
}

/// Why a tap was not kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SaveError {
    /// Neither place took it.
    Storage(StoreError),
    /// It could not be written down.
    Wire(WireError),
}

/// Keeps the entries of one tap. A tap reads as done only after this returned `Ok`.
///
/// # Errors
/// [`NotKept`] if neither the journal nor the second copy took it.
pub async fn keep<S: Store>(store: &S, entries: &[Entry]) -> Result<Saved, SaveError> {
    let records = records(entries).map_err(SaveError::Wire)?;
    let second = store.second(&records);
    let backup = store.backup(&records);
    let journal = store.journal(&records).await;
    // What takes the backup's place is known before the tap reads as kept.
    let saved_twice = backup.await.or(second);
    match (journal, saved_twice) {
        (Ok(()), _) => Ok(Saved::Safe),
        (Err(problem), Ok(())) => Ok(Saved::NotYetSafe(problem)),
        (Err(problem), Err(_)) => Err(SaveError::Storage(problem)),
    }
}

/// The records of entries.
///
/// # Errors
/// [`WireError`] if an entry cannot be written down.
pub fn records(entries: &[Entry]) -> Result<Vec<Record>, WireError> {
    entries
        .iter()
        .map(|entry| {
            let (log, id) = (entry.log.0.clone(), entry.id.0.clone());
            Ok(Record {
                log,
                id,
                text: encode(entry)?,
            })
        })
        .collect()
}

/// A log as it was read: its entries, and what could not be read.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Read {
    /// The entries of both places.
    pub entries: Vec<Entry>,
    /// The texts, byte for byte, for an export.
    pub texts: OrderedMap<String, String>,
    /// What could not be read, with why; it is set aside and named, never overwritten.
    pub unreadable: Vec<(Record, WireError)>,
    /// What only the second copy had, to be written to the journal now.
    pub to_heal: Vec<Record>,
    /// How many entries the log has, where it is too long to be read by itself: then its texts are
    /// here and nothing else is.
    pub too_long: Option<usize>,
}

/// So many entries a log may have to be read by itself: a replaced hub has about 250, and what
/// follows from 20,000 keeps a slow phone busy for some seconds.
pub const MOST_ENTRIES: usize = 20_000;

/// Whether a log is too long, or so tangled, that it is not read by itself.
pub fn is_too_long(entries: &[Entry]) -> bool {
    MOST_ENTRIES < entries.len() || is_tangled(entries, MAX_JOINS)
}

/// Reads a log from both places, unless it is too long.
///
/// # Errors
/// What the storage refused, if the second copy has nothing either.
pub async fn read<S: Store>(store: &S, log: &str) -> Result<Read, StoreError> {
    read_up_to(store, log, Some(MOST_ENTRIES)).await
}

/// Reads a log however long it is.
///
/// # Errors
/// As [`read`].
pub async fn read_all<S: Store>(store: &S, log: &str) -> Result<Read, StoreError> {
    read_up_to(store, log, None).await
}

async fn read_up_to<S: Store>(
    store: &S,
    log: &str,
    most: Option<usize>,
) -> Result<Read, StoreError> {
    let second = store.read_second(log);
    let journal = match store.read_journal(log).await {
        Ok(records) => records,
        Err(problem) if second.is_empty() => return Err(problem),
        Err(_) => Vec::new(),
    };
    if most.is_some_and(|most| most < journal.len().max(second.len())) {
        // What the journal holds stands.
        return Ok(unread(second.into_iter().chain(journal)));
    }
    let there: OrderedSet<String> =
        OrderedSet::from_iter(journal.iter().map(|record| record.id.clone()));
    let mut read = Read::default();
    for record in journal {
        take(&mut read, record);
    }
    for record in second {
        let healthy = !read.texts.contains_key(&record.id) && take(&mut read, record.clone());
        // What the journal holds is never overwritten, and one refused record refuses its batch.
        if healthy && !there.contains(&record.id) {
            read.to_heal.push(record);
        }
    }
    if most.is_some() && is_too_long(&read.entries) {
        read.too_long = Some(read.entries.len());
        read.entries.clear();
        read.to_heal.clear();
    }
    Ok(read)
}

/// The texts of a log that is too long, as far as they are entries by their look.
fn unread(records: impl Iterator<Item = Record>) -> Read {
    let records = records.filter(|record| is_named(&record.text));
    let texts = records.map(|record| (record.id, record.text));
    let texts: OrderedMap<String, String> = OrderedMap::from_iter(texts);
    Read {
        too_long: Some(texts.len()),
        texts,
        ..Read::default()
    }
}

/// Whether a text is JSON with an id, which is all that a file asks of it.
fn is_named(text: &str) -> bool {
    let id = parse(text).ok().and_then(|json| json.field::<String>("id"));
    id.is_some()
}

fn take(read: &mut Read, record: Record) -> bool {
    match decode(&record.text) {
        Ok(entry) => {
            read.texts.insert(record.id, record.text);
            read.entries.push(entry);
            true
        }
        Err(error) => {
            if !read.unreadable.iter().any(|(named, _)| *named == record) {
                read.unreadable.push((record, error));
            }
            false
        }
    }
}
