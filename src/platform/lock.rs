//! A lock that the tabs of this phone have in common: whoever shares it keeps out whoever wants to
//! be alone.
//!
//! Without Web Locks it holds within this page.

use std::cell::Cell;

use js_sys::{Array, Function, Promise};
use wasm_bindgen::JsValue;
use wasm_bindgen::closure::Closure;
use wasm_bindgen_futures::JsFuture;

use super::js;

const NAME: &str = "hubslate:files";

thread_local! {
    /// How many share the lock in this page.
    static SHARING: Cell<usize> = const { Cell::new(0) };
    /// How many have ever begun to.
    static BEGUN: Cell<u64> = const { Cell::new(0) };
}

/// A share of the lock; given back when dropped.
#[derive(Debug)]
#[must_use = "the lock is given back when the guard is dropped"]
pub struct Shared {
    _held: Option<Held>,
}

/// The lock alone; given back when dropped.
#[derive(Debug)]
#[must_use = "the lock is given back when the guard is dropped"]
pub struct Alone {
    _held: Option<Held>,
    begun: u64,
}

impl Shared {
    /// Waits while another tab has the lock alone. Within this page nobody is waited for: see
    /// [`Alone::holds`].
    pub async fn wait() -> Self {
        SHARING.set(SHARING.get() + 1);
        BEGUN.set(BEGUN.get() + 1);
        // Made before the waiting, so that the count is right however that ends.
        let mut shared = Self { _held: None };
        shared._held = ask("shared", false).await.flatten();
        shared
    }
}

impl Drop for Shared {
    fn drop(&mut self) {
        SHARING.set(SHARING.get().saturating_sub(1));
    }
}

impl Alone {
    /// The lock, unless anybody has it or a part of it now.
    pub async fn now() -> Option<Self> {
        Self::asked(true).await
    }

    /// The lock as soon as nobody else has it; nothing where this page shares it again by then.
    pub async fn wait() -> Option<Self> {
        Self::asked(false).await
    }

    async fn asked(if_available: bool) -> Option<Self> {
        let begun = BEGUN.get();
        let held = match ask("exclusive", if_available).await {
            Some(None) => return None,
            held => held.flatten(),
        };
        let alone = Self { _held: held, begun };
        (SHARING.get() == 0 && alone.holds()).then_some(alone)
    }

    /// Whether nobody of this page has begun to share the lock since. Ask in the tick in which
    /// something is done that needs to be alone.
    pub fn holds(&self) -> bool {
        BEGUN.get() == self.begun
    }
}

/// A lock that the browser gave.
#[derive(Debug)]
struct Held(Function);

impl Drop for Held {
    fn drop(&mut self) {
        // To settle a promise throws nothing.
        let _ = self.0.call0(&JsValue::UNDEFINED);
    }
}

/// Asks the browser for the lock: `Some(None)` if it is not free, `None` where there are no Web
/// Locks for this page.
async fn ask(mode: &str, if_available: bool) -> Option<Option<Held>> {
    let locks = js::property(js::navigator()?.as_ref(), "locks")?;
    let request = js::method(&locks, "request")?;
    let (over, release) = promise();
    let (granted, grant) = promise();
    // The lock is held until the promise that this gives is settled.
    let hold = Closure::once_into_js(move |lock: JsValue| -> JsValue {
        // To settle a promise throws nothing.
        let _ = grant.map(|grant| grant.call1(&JsValue::UNDEFINED, &lock));
        if lock.is_null() {
            JsValue::UNDEFINED
        } else {
            over.into()
        }
    });
    let options = js::object(&[("mode", mode.into()), ("ifAvailable", if_available.into())]);
    let asked = request.call3(&locks, &NAME.into(), &options, &hold).ok()?;
    // What was asked ends before it is granted only where it is refused.
    let first = Promise::race(&Array::of2(&granted, &asked));
    let lock = JsFuture::from(first).await.ok()?;
    let held = release.filter(|_| !lock.is_null()).map(Held);
    Some(held)
}

/// A promise and what resolves it.
fn promise() -> (Promise, Option<Function>) {
    let mut resolver = None;
    let promise = Promise::new(&mut |resolve, _| resolver = Some(resolve));
    (promise, resolver)
}
