//! What the page's first script read while the program was loading.

use js_sys::{Array, Promise};
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::BroadcastChannel;

use super::beside::texts;
use super::drafts::pairs;
use crate::platform::js;

/// What the first screen shows, as the database had it. No other tab has told of anything since.
#[derive(Clone, Debug)]
pub struct First {
    /// Every draft and setting, as (name, text).
    pub drafts: Vec<(String, String)>,
    /// The summaries of all logs, where the script read them.
    pub summaries: Option<Vec<String>>,
    /// Whether the journal has no entry at all, as far as that was asked.
    pub is_empty: bool,
}

impl First {
    /// Takes it, once; `None` where it was not read, or may be stale.
    ///
    /// From here on nobody listens to the other tabs, until the app does: in the same task.
    pub async fn take() -> Option<Self> {
        const NAME: &str = "hubslateFirst";
        let reading: Promise = js::global(NAME)?.dyn_into().ok()?;
        let read = JsFuture::from(reading).await.ok()?;
        if let Some(tabs) = js::property(&read, "tabs") {
            tabs.unchecked_ref::<BroadcastChannel>().close();
        }
        // Asked again: it may have been taken back meanwhile.
        js::taken(NAME)?;
        let found = Array::from(&js::property(&read, "found")?);
        let (summaries, one) = (found.get(2), found.get(3));
        Some(Self {
            drafts: pairs(&found.get(0), &found.get(1)),
            summaries: (!summaries.is_undefined()).then(|| texts(&summaries)),
            is_empty: !one.is_undefined() && Array::from(&one).length() == 0,
        })
    }
}
