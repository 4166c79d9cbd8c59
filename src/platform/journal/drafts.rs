//! What is half typed or half set: a text a field, by its name.
//!
//! Each is sent to the browser's process in the tick of its key, committed there without waiting
//! for an answer, so that neither a reload nor the death of the page takes it back.

use js_sys::Array;
use wasm_bindgen::JsValue;

use super::{DRAFTS, Journal};
use crate::platform::record::StoreError;
use crate::platform::transaction::{answer, commit, object_store, problem, reading, relaxed};

impl Journal {
    /// Writes drafts, or removes those without a text; in one transaction, not waited for.
    ///
    /// # Errors
    /// Whatever the browser refuses with at once.
    pub fn put_drafts(&self, drafts: &[(&str, Option<&str>)]) -> Result<(), StoreError> {
        let transaction = relaxed(self.database(), &[DRAFTS])?;
        let store = object_store(&transaction, DRAFTS)?;
        for (name, text) in drafts {
            let name = JsValue::from_str(name);
            let asked = match text {
                Some(text) => store.put_with_key(&JsValue::from_str(text), &name),
                None => store.delete(&name),
            };
            asked.map_err(|error| problem(&error))?;
        }
        commit(&transaction);
        Ok(())
    }

    /// Every draft, as (name, text).
    ///
    /// # Errors
    /// Whatever the browser refuses with.
    pub async fn drafts(&self) -> Result<Vec<(String, String)>, StoreError> {
        let store = reading(self.database(), DRAFTS)?;
        let names = store.get_all_keys().map_err(|error| problem(&error))?;
        let texts = store.get_all().map_err(|error| problem(&error))?;
        Ok(pairs(&answer(&names).await?, &answer(&texts).await?))
    }
}

/// Names and texts as they were found, in the same order.
pub(super) fn pairs(names: &JsValue, texts: &JsValue) -> Vec<(String, String)> {
    let (names, texts) = (Array::from(names), Array::from(texts));
    let pair = |(at, name): (u32, JsValue)| Some((name.as_string()?, texts.get(at).as_string()?));
    (0..).zip(names.iter()).filter_map(pair).collect()
}
