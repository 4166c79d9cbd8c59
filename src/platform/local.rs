//! localStorage: settings, drafts of half-typed fields, and the second copy of open jobs.
//!
//! It reaches the disk late (a kill can lose a minute), so it is never the record while the
//! journal works. Each value is JSON, which the browser itself reads and writes.

use gloo_storage::{LocalStorage, Storage as _};
use js_sys::{Array, JSON};
use wasm_bindgen::{JsCast, JsValue};

use super::js;
use super::keys;
use super::record::{Aside, Record, StoreError};
use crate::sorted::Sorted;

/// Id and text of each record of a tap.
type Tap = Vec<(String, String)>;

/// The localStorage of this page, probed once.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Local {
    _probed: (),
}

impl Local {
    /// Opens the storage by writing, reading and removing a probe.
    ///
    /// # Errors
    /// [`StoreError::Denied`] where it cannot be used, `Full` if not even the probe fits.
    pub fn open() -> Result<Self, StoreError> {
        let local = Self { _probed: () };
        let key = keys::setting("probe");
        local.write(&key, "probe")?;
        let read = local.read(&key)?;
        local.remove(&key)?;
        read.map(|_| local).ok_or(StoreError::Denied)
    }

    /// The text of one setting; `None` if it was never set or could not be read.
    ///
    /// # Errors
    /// [`StoreError::Denied`], or `Full` if an unreadable value could not be moved aside.
    pub fn setting(&self, name: &str) -> Result<Option<String>, StoreError> {
        self.read(&keys::setting(name))
    }

    /// Sets one setting.
    ///
    /// # Errors
    /// [`StoreError::Full`] or `Denied`; the old value stays then.
    pub fn set_setting(&self, name: &str, text: &str) -> Result<(), StoreError> {
        self.write(&keys::setting(name), text)
    }

    /// The draft of one half-typed field.
    ///
    /// # Errors
    /// As [`Local::setting`].
    pub fn draft(&self, name: &str) -> Result<Option<String>, StoreError> {
        self.read(&keys::draft(name))
    }

    /// Keeps the draft of one half-typed field.
    ///
    /// # Errors
    /// As [`Local::set_setting`].
    pub fn set_draft(&self, name: &str, text: &str) -> Result<(), StoreError> {
        self.write(&keys::draft(name), text)
    }

    /// Removes a draft whose field became an entry.
    ///
    /// # Errors
    /// [`StoreError::Denied`].
    pub fn remove_draft(&self, name: &str) -> Result<(), StoreError> {
        self.remove(&keys::draft(name))
    }

    /// Writes the second copy of the records of one tap, whole or not at all: they are one item,
    /// under the log and the id of the first.
    ///
    /// # Errors
    /// As [`Local::set_setting`].
    pub fn write_tap(&self, records: &[Record]) -> Result<(), StoreError> {
        let Some(first) = records.first() else {
            return Ok(());
        };
        let tap: Tap = records
            .iter()
            .map(|record| (record.id.clone(), record.text.clone()))
            .collect();
        self.write_tap_as(&keys::entry(&first.log, &first.id), &tap)
    }

    /// Puts another text in the place of one record's, where it is here.
    ///
    /// # Errors
    /// As [`Local::set_setting`].
    pub fn replace_entry(&self, new: &Record) -> Result<(), StoreError> {
        for key in self.keys()? {
            if keys::entry_parts(&key).is_none_or(|(log, _)| log != new.log) {
                continue;
            }
            let mut tap = self.tap(&key)?;
            if let Some((_, text)) = tap.iter_mut().find(|(id, _)| *id == new.id) {
                text.clone_from(&new.text);
                return self.write_tap_as(&key, &tap);
            }
        }
        Ok(())
    }

    /// The second copies of all records of one log, by id; unreadable ones are moved aside.
    ///
    /// # Errors
    /// As [`Local::setting`].
    pub fn entries(&self, log: &str) -> Result<Vec<Record>, StoreError> {
        let mut found = Vec::new();
        for key in self.keys()? {
            if keys::entry_parts(&key).is_none_or(|(of, _)| of != log) {
                continue;
            }
            let log = || log.to_owned();
            let tap = self.tap(&key)?.into_iter();
            found.extend(tap.map(|(id, text)| Record {
                log: log(),
                id,
                text,
            }));
        }
        found.order();
        Ok(found)
    }

    /// Removes the second copies of a log that is closed and wholly in the journal.
    ///
    /// # Errors
    /// [`StoreError::Denied`].
    pub fn remove_log(&self, log: &str) -> Result<(), StoreError> {
        for key in self.keys()? {
            if keys::entry_parts(&key).is_some_and(|(of, _)| of == log) {
                self.remove(&key)?;
            }
        }
        Ok(())
    }

    /// The ids of all logs that have second copies, each once.
    ///
    /// # Errors
    /// [`StoreError::Denied`].
    pub fn logs(&self) -> Result<Vec<String>, StoreError> {
        let keys = self.keys()?;
        let of = |key: &String| keys::entry_parts(key).map(|(log, _)| log.to_owned());
        let mut logs: Vec<String> = keys.iter().filter_map(of).collect();
        logs.order();
        logs.dedup();
        Ok(logs)
    }

    /// Everything that was moved aside: the key it had and the raw text.
    ///
    /// # Errors
    /// [`StoreError::Denied`].
    pub fn asides(&self) -> Result<Vec<Aside>, StoreError> {
        let storage = storage()?;
        let keys = self.keys()?;
        let aside = |key: &String| {
            let text = storage.get_item(key).ok().flatten()?;
            Some(Aside {
                why: key.clone(),
                text,
            })
        };
        Ok(keys
            .iter()
            .filter(|key| keys::is_unreadable(key))
            .filter_map(aside)
            .collect())
    }

    fn keys(&self) -> Result<Vec<String>, StoreError> {
        let storage = storage()?;
        let count = storage.length().map_err(|_| StoreError::Denied)?;
        let key = |at| storage.key(at).ok().flatten();
        Ok((0..count)
            .filter_map(key)
            .filter(|key| key.starts_with(keys::PREFIX))
            .collect())
    }

    fn read(&self, key: &str) -> Result<Option<String>, StoreError> {
        self.parsed(key, |value| value.as_string())
    }

    /// The ids and texts of one tap; none where it cannot be read.
    fn tap(&self, key: &str) -> Result<Tap, StoreError> {
        Ok(self.parsed(key, tap_of)?.unwrap_or_default())
    }

    /// What is kept under a key; what cannot be read is moved aside.
    fn parsed<T>(
        &self,
        key: &str,
        read: impl Fn(&JsValue) -> Option<T>,
    ) -> Result<Option<T>, StoreError> {
        let Some(raw) = storage()?.get_item(key).map_err(refused)? else {
            return Ok(None);
        };
        match JSON::parse(&raw).ok().and_then(|value| read(&value)) {
            Some(value) => Ok(Some(value)),
            None => self.move_aside(key).map(|()| None),
        }
    }

    fn write(&self, key: &str, text: &str) -> Result<(), StoreError> {
        self.put(key, &JsValue::from_str(text))
    }

    fn write_tap_as(&self, key: &str, tap: &Tap) -> Result<(), StoreError> {
        let pair = |(id, text): &(String, String)| {
            Array::of2(&JsValue::from_str(id), &JsValue::from_str(text))
        };
        self.put(key, &tap.iter().map(pair).collect::<Array>())
    }

    fn put(&self, key: &str, value: &JsValue) -> Result<(), StoreError> {
        let text = JSON::stringify(value).map_err(refused)?;
        let text = String::from(text);
        storage()?.set_item(key, &text).map_err(refused)
    }

    fn remove(&self, key: &str) -> Result<(), StoreError> {
        // What is not there need not be removed.
        let _ = storage()?.remove_item(key);
        Ok(())
    }

    /// Copies the raw value first and removes it after, so that it is lost in no case.
    fn move_aside(&self, key: &str) -> Result<(), StoreError> {
        let storage = storage()?;
        let Ok(Some(raw)) = storage.get_item(key) else {
            return Ok(());
        };
        storage
            .set_item(&free_aside(&storage, key), &raw)
            .map_err(refused)?;
        storage.remove_item(key).map_err(|_| StoreError::Denied)
    }
}

/// A key for an unreadable value under which nothing is kept yet: a second one never overwrites.
fn free_aside(storage: &web_sys::Storage, key: &str) -> String {
    let wanted = keys::unreadable(key);
    let taken = |name: &str| storage.get_item(name).is_ok_and(|value| value.is_some());
    let numbered = |n: u32| format!("{wanted}#{n}");
    if !taken(&wanted) {
        return wanted;
    }
    (2..)
        .map(numbered)
        .find(|name| !taken(name))
        .unwrap_or(wanted)
}

/// The storage, if the browser gives it to this page; asked first, since gloo-storage throws where
/// it does not.
fn storage() -> Result<web_sys::Storage, StoreError> {
    let window = js::window().ok_or(StoreError::Denied)?;
    match window.local_storage() {
        Ok(Some(_)) => Ok(LocalStorage::raw()),
        _ => Err(StoreError::Denied),
    }
}

fn refused(error: JsValue) -> StoreError {
    StoreError::from_error_name(&js::error_name(&error))
}

/// The ids and texts of a tap; nothing where it is another value.
fn tap_of(value: &JsValue) -> Option<Tap> {
    let pair = |pair: JsValue| {
        let pair: Array = pair.dyn_into().ok()?;
        let is_pair = pair.length() == 2;
        is_pair.then(|| Some((pair.get(0).as_string()?, pair.get(1).as_string()?)))?
    };
    let all: &Array = value.dyn_ref()?;
    all.iter().map(pair).collect()
}
