//! Transactions of IndexedDB as futures.
//!
//! The browser's own `resolve` and `reject` functions are the handlers, so no closure of ours has
//! to outlive an event. A write is kept when its transaction completes, never when a request
//! succeeds: near the quota requests succeed and the transaction aborts afterwards.

use js_sys::{Array, Promise};
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{IdbDatabase, IdbObjectStore, IdbRequest, IdbTransaction};

use super::js;
use super::record::StoreError;

#[wasm_bindgen]
extern "C" {
    /// A database seen through the call that takes `durability`, which web-sys hides.
    type Durable;

    #[wasm_bindgen(method, catch, js_name = transaction)]
    fn begin(
        this: &Durable,
        stores: &JsValue,
        mode: &str,
        options: &JsValue,
    ) -> Result<IdbTransaction, JsValue>;

    /// A transaction seen through `commit`, which web-sys calls deprecated; no browser does.
    type Committed;

    #[wasm_bindgen(method, catch)]
    fn commit(this: &Committed) -> Result<(), JsValue>;
}

/// The problem behind a thrown error.
pub(super) fn problem(error: &JsValue) -> StoreError {
    StoreError::from_error_name(&js::error_name(error))
}

/// Begins a transaction that only reads.
pub(super) fn reading(database: &IdbDatabase, store: &str) -> Result<IdbObjectStore, StoreError> {
    let transaction = database
        .transaction_with_str(store)
        .map_err(|error| problem(&error))?;
    object_store(&transaction, store)
}

/// Begins a transaction that is on the disk when it completes.
pub(super) fn strict(
    database: &IdbDatabase,
    stores: &[&str],
) -> Result<IdbTransaction, StoreError> {
    writing(database, stores, "strict")
}

/// Begins a transaction for what can be made again; it may be lost with the power.
pub(super) fn relaxed(
    database: &IdbDatabase,
    stores: &[&str],
) -> Result<IdbTransaction, StoreError> {
    writing(database, stores, "relaxed")
}

fn writing(
    database: &IdbDatabase,
    stores: &[&str],
    durability: &str,
) -> Result<IdbTransaction, StoreError> {
    let names: Array = stores.iter().map(|name| JsValue::from_str(name)).collect();
    let options = js::object(&[("durability", JsValue::from_str(durability))]);
    let database: &Durable = database.unchecked_ref();
    database
        .begin(&names, "readwrite", &options)
        .map_err(|error| problem(&error))
}

/// Sends what was asked for on its way: the page may be gone before it is answered.
pub(super) fn commit(transaction: &IdbTransaction) {
    // Where a browser cannot, the transaction completes by itself a little later.
    let _ = transaction.unchecked_ref::<Committed>().commit();
}

/// One store inside a transaction.
pub(super) fn object_store(
    transaction: &IdbTransaction,
    name: &str,
) -> Result<IdbObjectStore, StoreError> {
    transaction
        .object_store(name)
        .map_err(|error| problem(&error))
}

/// Waits until the transaction is complete or aborted.
pub(super) async fn completed(transaction: &IdbTransaction) -> Result<(), StoreError> {
    let promise = Promise::new(&mut |resolve, reject| {
        transaction.set_oncomplete(Some(&resolve));
        transaction.set_onabort(Some(&reject));
    });
    let outcome = JsFuture::from(promise).await;
    transaction.set_oncomplete(None);
    transaction.set_onabort(None);
    match outcome {
        Ok(_) => Ok(()),
        Err(_) => Err(transaction
            .error()
            .map_or_else(aborted, |error| problem(&error))),
    }
}

/// Waits for the transaction, or takes all of it back if something was refused while asking.
///
/// Without the abort, what was asked before the refusal would be kept alone.
pub(super) async fn finished(
    transaction: &IdbTransaction,
    asked: Result<(), StoreError>,
) -> Result<(), StoreError> {
    if asked.is_err() {
        // It may have aborted by itself already; either way nothing of it is kept.
        let _ = transaction.abort();
        return asked;
    }
    completed(transaction).await
}

/// Waits for the answer to a request inside a transaction that is still open.
pub(super) async fn answer(request: &IdbRequest) -> Result<JsValue, StoreError> {
    let promise = Promise::new(&mut |resolve, reject| {
        request.set_onsuccess(Some(&resolve));
        request.set_onerror(Some(&reject));
    });
    let outcome = JsFuture::from(promise).await;
    request.set_onsuccess(None);
    request.set_onerror(None);
    match outcome {
        Ok(_) => request.result().map_err(|error| problem(&error)),
        Err(_) => Err(request_problem(request)),
    }
}

/// Why a finished request failed; an unfinished one throws `InvalidStateError` when asked.
pub(super) fn request_problem(request: &IdbRequest) -> StoreError {
    match request.error() {
        Ok(error) => error.map_or_else(aborted, |error| problem(&error)),
        Err(error) => problem(&error),
    }
}

fn aborted() -> StoreError {
    StoreError::Refused {
        name: "AbortError".to_owned(),
    }
}
