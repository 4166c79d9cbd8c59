//! Keeping the screen on while gloves cannot wake it.
//!
//! The browser lets go whenever the page leaves the view, so it is asked again when the page
//! comes back. Refusal is normal: no such lock, low battery, a policy.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use js_sys::Promise;
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::EventTarget;

use super::event::Listener;
use super::js;

#[wasm_bindgen]
extern "C" {
    /// `navigator.wakeLock`, which web-sys hides.
    type Locks;
    #[wasm_bindgen(method, catch)]
    fn request(this: &Locks, kind: &str) -> Result<Promise, JsValue>;

    /// One lock that the browser gave.
    #[wasm_bindgen(extends = EventTarget)]
    #[derive(Clone, Debug)]
    type Sentinel;
    #[wasm_bindgen(method, catch)]
    fn release(this: &Sentinel) -> Result<Promise, JsValue>;
}

/// The wish to keep the screen on; given up when dropped.
#[derive(Debug)]
#[must_use = "the screen may go dark when the guard is dropped"]
pub struct WakeLock {
    wish: Rc<Wish>,
    _visible: Option<Listener>,
}

struct Wish {
    wanted: Cell<bool>,
    asking: Cell<bool>,
    held: Cell<bool>,
    given: RefCell<Option<(Sentinel, Listener)>>,
    changed: Box<dyn Fn(bool)>,
}

impl core::fmt::Debug for Wish {
    fn fmt(&self, out: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        out.debug_struct("Wish")
            .field("held", &self.held.get())
            .finish_non_exhaustive()
    }
}

impl WakeLock {
    /// Asks for the lock now and whenever the page comes back; `changed` hears held or not held.
    pub fn hold(changed: impl Fn(bool) + 'static) -> Self {
        let wish = Rc::new(Wish {
            wanted: Cell::new(true),
            asking: Cell::new(false),
            held: Cell::new(false),
            given: RefCell::new(None),
            changed: Box::new(changed),
        });
        ask(&wish);
        let again = Rc::downgrade(&wish);
        let visible = Listener::on_visibility(move |visible| {
            if let Some(wish) = again.upgrade().filter(|_| visible) {
                ask(&wish);
            }
        });
        Self {
            wish,
            _visible: visible,
        }
    }

    /// True while the browser keeps the screen on.
    pub fn held(&self) -> bool {
        self.wish.held.get()
    }
}

impl Drop for WakeLock {
    fn drop(&mut self) {
        self.wish.wanted.set(false);
        if let Some((sentinel, _)) = self.wish.given.take() {
            give_back(&sentinel);
        }
    }
}

impl Wish {
    fn set_held(&self, held: bool) {
        if self.held.replace(held) != held {
            (self.changed)(held);
        }
    }
}

fn ask(wish: &Rc<Wish>) {
    if wish.held.get() || wish.asking.replace(true) {
        return;
    }
    let wish = Rc::clone(wish);
    spawn_local(async move {
        let given = request_lock().await;
        wish.asking.set(false);
        match given {
            Some(sentinel) if wish.wanted.get() => keep(&wish, sentinel),
            Some(sentinel) => give_back(&sentinel),
            None => {}
        }
    });
}

async fn request_lock() -> Option<Sentinel> {
    let locks = js::property(js::navigator()?.as_ref(), "wakeLock")?;
    let promise = locks.unchecked_ref::<Locks>().request("screen").ok()?;
    JsFuture::from(promise)
        .await
        .ok()
        .map(JsCast::unchecked_into)
}

fn keep(wish: &Rc<Wish>, sentinel: Sentinel) {
    let lost = Rc::downgrade(wish);
    let released = Listener::new(&sentinel, "release", move |_| {
        if let Some(wish) = lost.upgrade() {
            wish.set_held(false);
        }
    });
    wish.given.replace(Some((sentinel, released)));
    wish.set_held(true);
}

fn give_back(sentinel: &Sentinel) {
    if let Ok(promise) = sentinel.release() {
        js::let_go(promise);
    }
}
