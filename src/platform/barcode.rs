//! QR symbols in a picture, where the browser reads them itself; web-sys hides its `BarcodeDetector`.

use js_sys::{Array, Promise};
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{File, ImageBitmap};

use super::{js, photo};

#[wasm_bindgen]
extern "C" {
    type BarcodeDetector;
    #[wasm_bindgen(constructor, catch)]
    fn new() -> Result<BarcodeDetector, JsValue>;
    #[wasm_bindgen(method, catch)]
    fn detect(this: &BarcodeDetector, picture: &ImageBitmap) -> Result<Promise, JsValue>;
}

/// Whether this browser reads symbols.
pub fn is_here() -> bool {
    js::window().is_some_and(|window| js::property(&window, "BarcodeDetector").is_some())
}

/// The texts of every symbol in a picture; none where there is none or the browser cannot tell.
pub async fn texts(file: &File) -> Vec<String> {
    if !is_here() {
        return Vec::new();
    }
    let Some(bitmap) = photo::bitmap(file).await else {
        return Vec::new();
    };
    let found = detected(&bitmap).await;
    bitmap.close();
    let codes = found.map(|found| found.to_vec()).unwrap_or_default();
    let texts = codes.iter().filter_map(|code| js::text(code, "rawValue"));
    texts.collect()
}

async fn detected(bitmap: &ImageBitmap) -> Option<Array> {
    let promise = BarcodeDetector::new().ok()?.detect(bitmap).ok()?;
    JsFuture::from(promise).await.ok()?.dyn_into().ok()
}
