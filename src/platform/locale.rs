//! What the browser knows about the person's language: its tag, decimal mark and plurals.

use js_sys::Array;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

use super::js;

#[wasm_bindgen]
extern "C" {
    // Declared here because js-sys does not catch what an unknown language throws.
    #[wasm_bindgen(js_namespace = Intl)]
    type PluralRules;
    #[wasm_bindgen(constructor, catch, js_namespace = Intl)]
    fn new(language: &str) -> Result<PluralRules, JsValue>;
    #[wasm_bindgen(method)]
    fn select(this: &PluralRules, count: f64) -> String;

    #[wasm_bindgen(js_namespace = Intl)]
    type NumberFormat;
    #[wasm_bindgen(constructor, catch, js_namespace = Intl)]
    fn new(language: &str) -> Result<NumberFormat, JsValue>;
    #[wasm_bindgen(method, js_name = formatToParts)]
    fn format_to_parts(this: &NumberFormat, number: f64) -> Array;
}

/// The person's language as a tag such as `en-GB`; `en` where the browser does not tell.
pub fn language() -> String {
    js::navigator()
        .and_then(|navigator| navigator.language())
        .unwrap_or_else(|| "en".to_owned())
}

/// What stands between whole and parts in this language; a point if the language is unknown.
pub fn decimal_mark(language: &str) -> char {
    mark_of(language).unwrap_or('.')
}

/// Nobody knows it without a browser.
#[cfg(not(target_arch = "wasm32"))]
const fn mark_of(_: &str) -> Option<char> {
    None
}

#[cfg(target_arch = "wasm32")]
fn mark_of(language: &str) -> Option<char> {
    let parts = NumberFormat::new(language).ok()?.format_to_parts(1.5);
    let mark = parts
        .iter()
        .find(|part| js::text(part, "type").as_deref() == Some("decimal"))?;
    js::text(&mark, "value")?.chars().next()
}

/// Which plural a count takes in this language: `zero`, `one`, `two`, `few`, `many` or `other`.
pub fn plural(language: &str, count: f64) -> String {
    PluralRules::new(language).map_or_else(|_| "other".to_owned(), |rules| rules.select(count))
}
