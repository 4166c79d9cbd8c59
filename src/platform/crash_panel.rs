//! What is seen when the app has crashed: a static panel of `index.html`.
//!
//! After a panic no code of the screens may run any more, so this uses plain calls on the page.

use std::panic::{self, PanicHookInfo};

use super::js;

/// Id of the panel, which is `hidden` until then.
pub const PANEL: &str = "crash";
/// Id of the element inside the panel that gets the message.
pub const DETAIL: &str = "crash-detail";
/// Id of the element that the app is mounted in.
pub const APP: &str = "app";

/// From now on a panic is logged and the panel shown; call it first.
pub fn install() {
    panic::set_hook(Box::new(|panic| {
        let message = message(panic);
        web_sys::console::error_1(&message.as_str().into());
        // If the panel is missing there is nothing left to show it in.
        let _ = reveal(&message);
    }));
}

fn message(panic: &PanicHookInfo<'_>) -> String {
    let payload = panic.payload();
    let owned = payload.downcast_ref::<String>().map(String::as_str);
    let what = owned
        .or_else(|| payload.downcast_ref::<&str>().copied())
        .unwrap_or("panic");
    match panic.location() {
        Some(place) => format!("{what} ({}:{})", place.file(), place.line()),
        None => what.to_owned(),
    }
}

fn reveal(message: &str) -> Option<()> {
    let document = js::document()?;
    if let Some(app) = document.get_element_by_id(APP) {
        let _ = app.set_attribute("hidden", "");
    }
    document
        .get_element_by_id(PANEL)?
        .remove_attribute("hidden")
        .ok()?;
    // The first panic is the cause; what panics after it only follows.
    let detail = document.get_element_by_id(DETAIL)?;
    if detail
        .text_content()
        .is_none_or(|text| text.trim().is_empty())
    {
        detail.set_text_content(Some(message));
    }
    Some(())
}
