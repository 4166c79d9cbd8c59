//! Whether the end of what scrolls is on the screen.

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, IntersectionObserver, IntersectionObserverEntry};

use super::js;

/// Hears whether an element is on the screen; stops when it is dropped.
#[derive(Debug)]
#[must_use = "watching stops when the guard is dropped"]
pub struct Edge {
    observer: IntersectionObserver,
    _heard: Closure<dyn FnMut(js_sys::Array)>,
}

impl Edge {
    /// Calls `seen` at once and at each change with whether `end` is on the screen; `None` where the
    /// browser cannot tell.
    pub fn watch(end: &Element, seen: impl Fn(bool) + 'static) -> Option<Self> {
        let heard = Closure::<dyn FnMut(js_sys::Array)>::new(move |entries: js_sys::Array| {
            let on_screen = |entry: wasm_bindgen::JsValue| {
                entry
                    .unchecked_into::<IntersectionObserverEntry>()
                    .is_intersecting()
            };
            seen(entries.iter().any(on_screen));
        });
        let observer = IntersectionObserver::new(heard.as_ref().unchecked_ref()).ok()?;
        observer.observe(end);
        Some(Self {
            observer,
            _heard: heard,
        })
    }
}

impl Drop for Edge {
    fn drop(&mut self) {
        self.observer.disconnect();
    }
}

/// The part of a step, or of the customer's page, that scrolls.
pub(super) fn scroller() -> Option<Element> {
    const SCROLLER: &str = "section.step__thing, section.customer__say";
    js::document()?.query_selector(SCROLLER).ok().flatten()
}

/// Moves what scrolls on by what is on the screen, less a line, or less what was cut off where that
/// is more: it comes whole.
pub fn page_down() {
    const LINE: i32 = 24;
    if let Some(scroller) = scroller() {
        let again = LINE.max(super::whole::cut_off(&scroller));
        let by = (scroller.client_height() - again).max(LINE);
        scroller.set_scroll_top(scroller.scroll_top() + by);
    }
}

/// Moves what scrolls to its end.
pub fn page_end() {
    if let Some(scroller) = scroller() {
        scroller.set_scroll_top(scroller.scroll_height());
    }
}
