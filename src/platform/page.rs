//! The page itself: its mark of readiness, its address, focus, theme and visibility.

use std::cell::RefCell;

use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement};

use super::clock::{self, Timer};
use super::event::Listener;
use super::js;

thread_local! {
    static SETTLING: RefCell<Option<Timer>> = const { RefCell::new(None) };
}

/// Marks the page as ready to be used: `data-ready` on `<html>`.
pub fn set_ready() {
    set_root("data-ready", "");
}

/// Chooses the theme: `data-theme` on `<html>`, for the style sheets.
pub fn set_theme(theme: &str) {
    set_root("data-theme", theme);
}

/// Tells screen readers which language the page speaks: `lang` on `<html>`.
pub fn set_language(language: &str) {
    set_root("lang", language);
}

/// Sets the title of the page, which is also the name of a printed file.
pub fn set_title(title: &str) {
    if let Some(document) = js::document() {
        document.set_title(title);
    }
}

fn set_root(name: &str, value: &str) {
    if let Some(root) = js::document().and_then(|document| document.document_element()) {
        // Refused only for a name that is no name.
        let _ = root.set_attribute(name, value);
    }
}

/// Whether the screen is so low that a screen has room for one step only. The screen's own height
/// is asked for: a keyboard that comes up takes nothing from it.
pub fn is_low() -> bool {
    const LOW: i32 = 700;
    let screen = js::window().and_then(|window| window.screen().ok());
    let height = screen.and_then(|screen| screen.avail_height().ok());
    height.is_some_and(|height| height < LOW)
}

/// The address after `#`, without it; empty at the start.
#[cfg(target_arch = "wasm32")]
pub fn hash() -> String {
    let hash = js::window()
        .and_then(|window| window.location().hash().ok())
        .unwrap_or_default();
    hash.strip_prefix('#').unwrap_or(&hash).to_owned()
}

/// Goes to another address after `#`; the way back stays open.
#[cfg(target_arch = "wasm32")]
pub fn set_hash(hash: &str) {
    if let Some(window) = js::window() {
        let _ = window.location().set_hash(hash);
    }
}

/// Goes to another address after `#` in place of this one, so that "back" skips this one.
#[cfg(target_arch = "wasm32")]
pub fn replace_hash(hash: &str) {
    if let Some(window) = js::window() {
        let _ = window.location().replace(&format!("#{hash}"));
    }
}

#[cfg(not(target_arch = "wasm32"))]
pub use address::{hash, replace_hash, set_hash};

/// Where a test is.
#[cfg(not(target_arch = "wasm32"))]
mod address {
    use std::cell::RefCell;

    thread_local! {
        static HASH: RefCell<String> = const { RefCell::new(String::new()) };
    }

    /// The address after `#`, without it.
    pub fn hash() -> String {
        HASH.with_borrow(Clone::clone)
    }

    /// Goes to another address.
    pub fn set_hash(hash: &str) {
        let hash = hash.trim_start_matches('#');
        HASH.with_borrow_mut(|it| hash.clone_into(it));
    }

    /// The same; nobody goes back.
    pub fn replace_hash(hash: &str) {
        set_hash(hash);
    }
}

/// Calls `changed` with the address after `#` whenever it changes.
pub fn on_hash(changed: impl Fn(String) + 'static) -> Option<Listener> {
    Listener::on_window("hashchange", move |_| changed(hash()))
}

/// Calls `left` when the page goes away.
pub fn on_leaving(left: impl Fn() + 'static) -> Option<Listener> {
    Listener::on_window("pagehide", move |_| left())
}

/// Calls `changed` with true when the page comes into view and with false when it leaves.
pub fn on_visibility(changed: impl Fn(bool) + 'static) -> Option<Listener> {
    Listener::on_visibility(changed)
}

/// True while the page can be seen.
pub fn visible() -> bool {
    js::document().is_some_and(|document| !document.hidden())
}

/// The element with this id, if the page has one.
pub fn element(id: &str) -> Option<web_sys::Element> {
    by_id(id)
}

/// Puts the focus on the element with this id; false if there is none.
pub fn focus(id: &str) -> bool {
    let element = by_id(id).and_then(|element| element.dyn_into::<HtmlElement>().ok());
    element.is_some_and(|element| element.focus().is_ok())
}

/// Whether the person wants things not to move on the screen.
pub fn wants_no_motion() -> bool {
    holds("(prefers-reduced-motion: reduce)")
}

/// Whether this is used with a finger: a phone or a tablet, whose share sheet is the way out.
pub fn is_touched() -> bool {
    holds("(pointer: coarse)")
}

fn holds(query: &str) -> bool {
    let asked = || {
        let window = js::window()?;
        let ask = js::method(&window, "matchMedia")?;
        let answer = ask.call1(&window, &query.into()).ok()?;
        js::property(&answer, "matches")?.as_bool()
    };
    asked().unwrap_or(false)
}

/// Scrolls to the top, as a new screen begins there.
pub fn scroll_top() {
    if let Some(window) = js::window() {
        window.scroll_to_with_x_and_y(0.0, 0.0);
    }
}

/// Disables the fieldset with this id for `ms` milliseconds after a step change.
///
/// The next step's key stands where the finger still is, and a bounce must not press it. On a
/// fieldset, because that disables every key in it without touching their own `disabled`.
/// Called again it begins again.
pub fn disable_for(id: &'static str, ms: i32) {
    let Some(keys) = by_id(id) else {
        return;
    };
    let _ = keys.set_attribute("disabled", "");
    let timer = clock::after(ms, move || {
        // Looked up again: the step may have been drawn again meanwhile.
        if let Some(keys) = by_id(id) {
            let _ = keys.remove_attribute("disabled");
        }
    });
    SETTLING.with_borrow_mut(|settling| *settling = Some(timer));
}

fn by_id(id: &str) -> Option<Element> {
    js::document()?.get_element_by_id(id)
}
