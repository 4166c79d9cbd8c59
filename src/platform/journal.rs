//! The strict journal: the record of every job, in IndexedDB.
//!
//! Records are only ever added. The two exceptions are [`Journal::delete_log`] for practice jobs
//! and [`Journal::replace_body`] for erasing a person.

use crate::map::OrderedSet;
use std::rc::Rc;

use js_sys::{Array, JSON};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{IdbCursor, IdbDatabase, IdbKeyRange, IdbObjectStore, IdbRequest, IdbTransaction};

use super::event::Listener;
use super::js;
use super::record::{Record, StoreError};
use super::transaction::{answer, completed, finished, object_store, problem, reading, strict};

mod beside;
mod drafts;
mod first;
mod opening;

pub use first::First;
pub use opening::Closed;

const ENTRIES: &str = "entries";
const SUMMARIES: &str = "summaries";
const PHOTOS: &str = "photos";
const ASIDE: &str = "aside";
const DRAFTS: &str = "drafts";

/// An open journal; clones share one connection, which closes with the last of them.
#[derive(Clone, Debug)]
pub struct Journal {
    open: Rc<Open>,
}

/// The connection and the listeners that close it.
#[derive(Debug)]
struct Open {
    database: IdbDatabase,
    _closing: [Listener; 2],
}

impl Drop for Open {
    fn drop(&mut self) {
        self.database.close();
    }
}

impl Journal {
    fn database(&self) -> &IdbDatabase {
        &self.open.database
    }

    /// Keeps all records or none, on the disk, in one transaction; an empty slice is kept at once.
    ///
    /// A record that is there already with the same text counts as kept, so that a tap may be
    /// tried again and a file imported twice.
    ///
    /// # Errors
    /// [`StoreError::Differs`] if one is there with another text, [`StoreError::Full`], or
    /// whatever else the browser refuses with. Nothing is kept then.
    pub async fn add(&self, records: &[Record]) -> Result<(), StoreError> {
        if records.is_empty() {
            return Ok(());
        }
        match self.add_new(records).await {
            Err(StoreError::Refused { name }) if name == "ConstraintError" => {
                self.add_missing(records).await
            }
            outcome => outcome,
        }
    }

    /// The quick way: nothing is asked first, the transaction aborts if one is there.
    async fn add_new(&self, records: &[Record]) -> Result<(), StoreError> {
        let transaction = strict(self.database(), &[ENTRIES])?;
        let asked = put_new(&transaction, records).await;
        finished(&transaction, asked).await
    }

    /// The careful way: each is looked up and added only if it is not there.
    async fn add_missing(&self, records: &[Record]) -> Result<(), StoreError> {
        let transaction = strict(self.database(), &[ENTRIES])?;
        let asked = put_missing(&transaction, records).await;
        finished(&transaction, asked).await
    }

    /// Every record of one log, by id.
    ///
    /// # Errors
    /// Whatever the browser refuses with.
    pub async fn read(&self, log: &str) -> Result<Vec<Record>, StoreError> {
        let store = reading(self.database(), ENTRIES)?;
        let range = log_range(log)?;
        let request = store
            .get_all_with_key(&range)
            .map_err(|error| problem(&error))?;
        Ok(records(&answer(&request).await?))
    }

    /// The ids of the records of each of these logs, all asked for at once.
    ///
    /// # Errors
    /// Whatever the browser refuses with.
    pub async fn ids(&self, logs: &[String]) -> Result<Vec<OrderedSet<String>>, StoreError> {
        if logs.is_empty() {
            return Ok(Vec::new());
        }
        let store = reading(self.database(), ENTRIES)?;
        let mut asked = Vec::new();
        for log in logs {
            let request = store.get_all_keys_with_key(&log_range(log)?.into());
            asked.push(request.map_err(|error| problem(&error))?);
        }
        // Answers come in order: whoever has the last one has all.
        if let Some(last) = asked.last() {
            answer(last).await?;
        }
        let id = |key: JsValue| Array::from(&key).get(1).as_string();
        let ids = |request: &IdbRequest| {
            let keys = request.result().map_err(|error| problem(&error))?;
            Ok(OrderedSet::from_iter(
                Array::from(&keys).iter().filter_map(id),
            ))
        };
        asked.iter().map(ids).collect()
    }

    /// The ids of all logs, each once; one step of a cursor a log, whatever its length.
    ///
    /// Measured 0.13 to 0.34 ms a log (2,006 logs, headless Chromium): for a quiet moment,
    /// while the start reads [`Journal::summaries`].
    ///
    /// # Errors
    /// Whatever the browser refuses with.
    pub async fn logs(&self) -> Result<Vec<String>, StoreError> {
        self.logs_in(&JsValue::UNDEFINED).await
    }

    /// The ids of the logs that begin so.
    ///
    /// # Errors
    /// Whatever the browser refuses with.
    pub async fn logs_named(&self, begin: &str) -> Result<Vec<String>, StoreError> {
        let first = Array::of1(&begin.into());
        let last = Array::of1(&format!("{begin}\u{ffff}").into());
        let range = IdbKeyRange::bound(&first, &last).map_err(|error| problem(&error))?;
        self.logs_in(&range).await
    }

    async fn logs_in(&self, range: &JsValue) -> Result<Vec<String>, StoreError> {
        let store = reading(self.database(), ENTRIES)?;
        let request = store
            .open_key_cursor_with_range(range)
            .map_err(|error| problem(&error))?;
        let mut logs = Vec::new();
        while let Ok(cursor) = answer(&request).await?.dyn_into::<IdbCursor>() {
            let key = cursor.key().map_err(|error| problem(&error))?;
            let Some(log) = Array::from(&key).get(0).as_string() else {
                break;
            };
            let beyond = after_log(&log);
            logs.push(log);
            cursor
                .continue_with_key(&beyond)
                .map_err(|error| problem(&error))?;
        }
        Ok(logs)
    }

    /// Throws a log and its summary away; for practice jobs only.
    ///
    /// # Errors
    /// Whatever the browser refuses with; nothing is deleted then.
    pub async fn delete_log(&self, log: &str) -> Result<(), StoreError> {
        let range = log_range(log)?;
        let transaction = strict(self.database(), &[ENTRIES, SUMMARIES])?;
        let asked = delete_both(&transaction, &range, log);
        finished(&transaction, asked).await
    }

    /// Replaces the text of one record; the exception for erasing a person.
    ///
    /// # Errors
    /// [`StoreError::Missing`] if there is no such record, or what the browser refuses with.
    pub async fn replace_body(&self, log: &str, id: &str, text: &str) -> Result<(), StoreError> {
        let transaction = strict(self.database(), &[ENTRIES])?;
        let store = object_store(&transaction, ENTRIES)?;
        if saved_text(&store, log, id).await?.is_none() {
            return Err(StoreError::Missing {
                log: log.to_owned(),
                id: id.to_owned(),
            });
        }
        let record = Record {
            log: log.to_owned(),
            id: id.to_owned(),
            text: text.to_owned(),
        };
        store
            .put(&record_object(&record))
            .map_err(|error| problem(&error))?;
        completed(&transaction).await
    }

    async fn all(&self, store: &str) -> Result<JsValue, StoreError> {
        let store = reading(self.database(), store)?;
        let request = store.get_all().map_err(|error| problem(&error))?;
        answer(&request).await
    }
}

/// After so many the transaction is waited for, so that a long file does not hold the page up.
const PIECE: usize = 500;

async fn put_new(transaction: &IdbTransaction, records: &[Record]) -> Result<(), StoreError> {
    let store = object_store(transaction, ENTRIES)?;
    for (place, record) in (1..).zip(records) {
        let request = store
            .add(&record_object(record))
            .map_err(|error| problem(&error))?;
        if place % PIECE == 0 {
            // One that was refused before has ended them all; the transaction says why.
            let why = |other| transaction.error().map_or(other, |error| problem(&error));
            answer(&request).await.map_err(why)?;
        }
    }
    Ok(())
}

fn delete_both(
    transaction: &IdbTransaction,
    range: &IdbKeyRange,
    log: &str,
) -> Result<(), StoreError> {
    let entries = object_store(transaction, ENTRIES)?;
    let summaries = object_store(transaction, SUMMARIES)?;
    entries.delete(range).map_err(|error| problem(&error))?;
    summaries
        .delete(&log.into())
        .map_err(|error| problem(&error))?;
    Ok(())
}

async fn put_missing(transaction: &IdbTransaction, records: &[Record]) -> Result<(), StoreError> {
    let store = object_store(transaction, ENTRIES)?;
    for record in records {
        match saved_text(&store, &record.log, &record.id).await? {
            Some(text) if text == record.text => {}
            Some(_) => {
                return Err(StoreError::Differs {
                    log: record.log.clone(),
                    id: record.id.clone(),
                });
            }
            None => {
                store
                    .add(&record_object(record))
                    .map_err(|error| problem(&error))?;
            }
        }
    }
    Ok(())
}

async fn saved_text(
    store: &IdbObjectStore,
    log: &str,
    id: &str,
) -> Result<Option<String>, StoreError> {
    let key = Array::of2(&log.into(), &id.into());
    let request = store.get(&key).map_err(|error| problem(&error))?;
    let found = answer(&request).await?;
    Ok((!found.is_undefined()).then(|| record(&found).text))
}

fn record_object(record: &Record) -> JsValue {
    let Record { log, id, text } = record;
    js::object(&[
        ("log", log.into()),
        ("id", id.into()),
        ("text", text.into()),
    ])
    .into()
}

fn records(found: &JsValue) -> Vec<Record> {
    Array::from(found).iter().map(|one| record(&one)).collect()
}

/// A record as it was found; one that has no text gives itself as JSON, so that it is seen.
fn record(found: &JsValue) -> Record {
    let whole = || JSON::stringify(found).map(String::from).unwrap_or_default();
    Record {
        log: js::text(found, "log").unwrap_or_default(),
        id: js::text(found, "id").unwrap_or_default(),
        text: js::text(found, "text").unwrap_or_else(whole),
    }
}

/// Every key of one log: in IndexedDB an array sorts after every text.
fn log_range(log: &str) -> Result<IdbKeyRange, StoreError> {
    let first = Array::of1(&log.into());
    IdbKeyRange::bound(&first, &after_log(log)).map_err(|error| problem(&error))
}

fn after_log(log: &str) -> JsValue {
    Array::of2(&log.into(), &Array::new()).into()
}
