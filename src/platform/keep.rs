//! Asking the browser not to clear our storage, and how much of it is left.

use js_sys::Promise;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{StorageEstimate, StorageManager};

use super::js;
use super::room::Room;

/// Asks that our storage is never cleared by itself; call it after the first save.
///
/// False is normal until the app is installed or often used.
pub async fn persist() -> bool {
    says_yes(manager().and_then(|manager| manager.persist().ok())).await
}

/// True if our storage is never cleared by itself.
pub async fn persisted() -> bool {
    says_yes(manager().and_then(|manager| manager.persisted().ok())).await
}

/// How much room there is; `None` where the browser does not tell.
pub async fn estimate() -> Option<Room> {
    let promise = manager()?.estimate().ok()?;
    let estimate: StorageEstimate = JsFuture::from(promise).await.ok()?.unchecked_into();
    Some(Room {
        used: estimate.get_usage()?,
        quota: estimate.get_quota()?,
    })
}

fn manager() -> Option<StorageManager> {
    Some(js::property(js::navigator()?.as_ref(), "storage")?.unchecked_into())
}

async fn says_yes(promise: Option<Promise>) -> bool {
    match promise {
        Some(promise) => JsFuture::from(promise)
            .await
            .is_ok_and(|value: JsValue| value.is_truthy()),
        None => false,
    }
}
