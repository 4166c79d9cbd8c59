//! Listening to browser events for as long as somebody holds the guard.

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Event, EventTarget};

use super::js;

/// Hears one kind of event on one target; stops when it is dropped.
#[derive(Debug)]
#[must_use = "listening stops when the guard is dropped"]
pub struct Listener {
    target: EventTarget,
    kind: &'static str,
    captures: bool,
    heard: Closure<dyn FnMut(Event)>,
}

impl Listener {
    /// Calls `heard` for every event of this kind on `target`.
    pub fn new(target: &EventTarget, kind: &'static str, heard: impl Fn(Event) + 'static) -> Self {
        Self::added(target, kind, false, heard)
    }

    fn added(
        target: &EventTarget,
        kind: &'static str,
        captures: bool,
        heard: impl Fn(Event) + 'static,
    ) -> Self {
        let heard = Closure::<dyn FnMut(Event)>::new(heard);
        let listen = heard.as_ref().unchecked_ref();
        // Adding a listener fails only for a value that is no function.
        let _ = target.add_event_listener_with_callback_and_bool(kind, listen, captures);
        Self {
            target: target.clone(),
            kind,
            captures,
            heard,
        }
    }

    /// Calls `heard` for every event of this kind on the window; `None` where there is none.
    pub fn on_window(kind: &'static str, heard: impl Fn(Event) + 'static) -> Option<Self> {
        Some(Self::new(&js::window()?.into(), kind, heard))
    }

    /// Calls `heard` for every event of this kind in the page, of those that do not bubble too.
    pub fn captured(kind: &'static str, heard: impl Fn(Event) + 'static) -> Option<Self> {
        let target: EventTarget = js::document()?.into();
        Some(Self::added(&target, kind, true, heard))
    }

    /// Calls `heard` with true when the page comes into view and with false when it leaves.
    pub fn on_visibility(heard: impl Fn(bool) + 'static) -> Option<Self> {
        let document = js::document()?;
        let target: EventTarget = document.clone().into();
        Some(Self::new(&target, "visibilitychange", move |_| {
            heard(!document.hidden())
        }))
    }
}

impl Drop for Listener {
    fn drop(&mut self) {
        let heard = self.heard.as_ref().unchecked_ref();
        let _ = self.target.remove_event_listener_with_callback_and_bool(
            self.kind,
            heard,
            self.captures,
        );
    }
}
