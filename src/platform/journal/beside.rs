//! What the journal keeps beside the entries: summaries, pictures, and what could not be read.

use js_sys::{Array, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};

use super::{ASIDE, Journal, PHOTOS, SUMMARIES};
use crate::map::OrderedSet;
use crate::platform::js;
use crate::platform::record::{Aside, Photo, StoreError};
use crate::platform::transaction::{
    answer, completed, finished, object_store, problem, reading, relaxed, strict,
};

impl Journal {
    /// Keeps the summary of a log; it is derived and may be lost.
    ///
    /// # Errors
    /// Whatever the browser refuses with.
    pub async fn put_summary(&self, log: &str, text: &str) -> Result<(), StoreError> {
        let transaction = relaxed(self.database(), &[SUMMARIES])?;
        let store = object_store(&transaction, SUMMARIES)?;
        let summary = js::object(&[("log", log.into()), ("text", text.into())]);
        store.put(&summary).map_err(|error| problem(&error))?;
        completed(&transaction).await
    }

    /// The texts of the summaries of all logs.
    ///
    /// # Errors
    /// Whatever the browser refuses with.
    pub async fn summaries(&self) -> Result<Vec<String>, StoreError> {
        Ok(texts(&self.all(SUMMARIES).await?))
    }

    /// Keeps a picture under its SHA-256 in hexadecimal, on the disk, before its entry is added.
    ///
    /// # Errors
    /// [`StoreError::Full`], or whatever else the browser refuses with.
    pub async fn put_photo(&self, sha: &str, mime: &str, bytes: &[u8]) -> Result<(), StoreError> {
        let transaction = strict(self.database(), &[PHOTOS])?;
        let store = object_store(&transaction, PHOTOS)?;
        // An array and not a blob: a blob's bytes are a second file, of whose durability nothing
        // is measured.
        let photo = js::object(&[
            ("bytes", Uint8Array::from(bytes).into()),
            ("mime", mime.into()),
        ]);
        store
            .put_with_key(&photo, &sha.into())
            .map_err(|error| problem(&error))?;
        completed(&transaction).await
    }

    /// The picture under this SHA-256; `None` if there is none.
    ///
    /// # Errors
    /// Whatever the browser refuses with.
    pub async fn photo(&self, sha: &str) -> Result<Option<Photo>, StoreError> {
        let store = reading(self.database(), PHOTOS)?;
        let request = store.get(&sha.into()).map_err(|error| problem(&error))?;
        Ok(photo(&answer(&request).await?))
    }

    /// The SHA-256 of every picture.
    ///
    /// # Errors
    /// Whatever the browser refuses with.
    pub async fn photo_keys(&self) -> Result<Vec<String>, StoreError> {
        let store = reading(self.database(), PHOTOS)?;
        let request = store.get_all_keys().map_err(|error| problem(&error))?;
        let keys = Array::from(&answer(&request).await?);
        Ok(keys.iter().filter_map(|key| key.as_string()).collect())
    }

    /// Deletes a picture that no entry names any more.
    ///
    /// # Errors
    /// Whatever the browser refuses with.
    pub async fn delete_photo(&self, sha: &str) -> Result<(), StoreError> {
        let transaction = strict(self.database(), &[PHOTOS])?;
        let store = object_store(&transaction, PHOTOS)?;
        store.delete(&sha.into()).map_err(|error| problem(&error))?;
        completed(&transaction).await
    }

    /// Keeps copies of texts that could not be read, each once, with the reason.
    ///
    /// # Errors
    /// Whatever the browser refuses with; none of them is kept then.
    pub async fn set_aside(&self, asides: &[Aside]) -> Result<(), StoreError> {
        if asides.is_empty() {
            return Ok(());
        }
        let here = self.asides().await?;
        let mut known: OrderedSet<&str> =
            OrderedSet::from_iter(here.iter().map(|aside| aside.text.as_str()));
        let transaction = strict(self.database(), &[ASIDE])?;
        let store = object_store(&transaction, ASIDE)?;
        let add = |Aside { why, text }: &Aside| {
            let aside = js::object(&[("why", why.into()), ("text", text.into())]);
            store.add(&aside).map_err(|error| problem(&error))?;
            Ok(())
        };
        let mut new = asides.iter().filter(|aside| known.insert(&aside.text));
        finished(&transaction, new.try_for_each(add)).await
    }

    /// Everything that was set aside, oldest first.
    ///
    /// # Errors
    /// Whatever the browser refuses with.
    pub async fn asides(&self) -> Result<Vec<Aside>, StoreError> {
        let all = Array::from(&self.all(ASIDE).await?);
        let aside = |one: JsValue| Aside {
            why: js::text(&one, "why").unwrap_or_default(),
            text: js::text(&one, "text").unwrap_or_default(),
        };
        Ok(all.iter().map(aside).collect())
    }
}

/// The texts of summaries as they were found.
pub(super) fn texts(found: &JsValue) -> Vec<String> {
    let all = Array::from(found);
    all.iter()
        .filter_map(|one| js::text(&one, "text"))
        .collect()
}

fn photo(found: &JsValue) -> Option<Photo> {
    let bytes = js::property(found, "bytes")?
        .dyn_into::<Uint8Array>()
        .ok()?;
    Some(Photo {
        mime: js::text(found, "mime")?,
        bytes: bytes.to_vec(),
    })
}
