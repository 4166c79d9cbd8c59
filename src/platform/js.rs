//! What the other modules need to look at JavaScript values without ever throwing.
//!
//! web-sys wraps what is missing (`navigator.share` on a desktop) as if it were there, and the
//! call then throws through wasm; so a thing is looked up here before it is used.

use js_sys::{Function, Object, Promise, Reflect, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{Blob, Document, Navigator, Window};

/// The window, if this runs in one.
#[cfg(target_arch = "wasm32")]
pub(super) fn window() -> Option<Window> {
    web_sys::window()
}

/// A computer has none: whatever asks for it hears that the browser grants nothing.
#[cfg(not(target_arch = "wasm32"))]
pub(super) const fn window() -> Option<Window> {
    None
}

/// The document of the window.
pub(super) fn document() -> Option<Document> {
    window()?.document()
}

/// The navigator of the window.
pub(super) fn navigator() -> Option<Navigator> {
    Some(window()?.navigator())
}

/// A property that is there and neither undefined nor null.
pub(super) fn property(of: &JsValue, name: &str) -> Option<JsValue> {
    let value = Reflect::get(of, &JsValue::from_str(name)).ok()?;
    (!value.is_undefined() && !value.is_null()).then_some(value)
}

/// A global value, if it is there.
#[cfg(target_arch = "wasm32")]
pub(super) fn global(name: &str) -> Option<JsValue> {
    property(&js_sys::global(), name)
}

/// A computer has none.
#[cfg(not(target_arch = "wasm32"))]
pub(super) const fn global(_: &str) -> Option<JsValue> {
    None
}

/// A global value that somebody left for the first who asks.
pub(super) fn taken(name: &str) -> Option<JsValue> {
    let value = Some(global(name)?);
    // Deleting what is not there is no fault.
    let _ = Reflect::delete_property(&js_sys::global(), &JsValue::from_str(name));
    value
}

/// A property that is a text.
pub(super) fn text(of: &JsValue, name: &str) -> Option<String> {
    property(of, name)?.as_string()
}

/// A method, if the browser has it.
pub(super) fn method(of: &JsValue, name: &str) -> Option<Function> {
    property(of, name)?.dyn_into().ok()
}

/// A fresh object with these properties.
pub(super) fn object(properties: &[(&str, JsValue)]) -> Object {
    let object = Object::new();
    for (name, value) in properties {
        // Setting a property of a fresh plain object cannot fail.
        let _ = Reflect::set(&object, &JsValue::from_str(name), value);
    }
    object
}

/// The name of a thrown error; `Error` if it has none.
pub(super) fn error_name(error: &JsValue) -> String {
    text(error, "name").unwrap_or_else(|| "Error".to_owned())
}

/// Waits for a promise whose outcome nobody needs, so that a refusal is not logged as unhandled.
pub(super) fn let_go(promise: Promise) {
    spawn_local(async move {
        let _ = JsFuture::from(promise).await;
    });
}

/// There is no blob without a browser.
#[cfg(not(target_arch = "wasm32"))]
pub(super) const fn blob(_: &[u8], _: &str) -> Result<Blob, JsValue> {
    Err(JsValue::UNDEFINED)
}

/// A blob of these bytes.
#[cfg(target_arch = "wasm32")]
pub(super) fn blob(bytes: &[u8], mime: &str) -> Result<Blob, JsValue> {
    let options = web_sys::BlobPropertyBag::new();
    options.set_type(mime);
    let parts = js_sys::Array::of1(&Uint8Array::from(bytes));
    Blob::new_with_u8_array_sequence_and_options(&parts, &options)
}

/// The bytes of a blob or file.
pub(super) async fn bytes_of(blob: &Blob) -> Result<Vec<u8>, JsValue> {
    let buffer = JsFuture::from(blob.array_buffer()).await?;
    Ok(Uint8Array::new(&buffer).to_vec())
}
