//! Bar codes in a picture or in front of the camera, where the browser reads them itself; web-sys
//! hides its `BarcodeDetector`.

use js_sys::{Array, Object, Promise};
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{File, HtmlVideoElement};

use super::{js, photo};

#[wasm_bindgen]
extern "C" {
    #[derive(Debug)]
    type BarcodeDetector;
    #[wasm_bindgen(constructor, catch)]
    fn new() -> Result<BarcodeDetector, JsValue>;
    #[wasm_bindgen(constructor, catch)]
    fn of(options: &Object) -> Result<BarcodeDetector, JsValue>;
    #[wasm_bindgen(method, catch)]
    fn detect(this: &BarcodeDetector, source: &JsValue) -> Result<Promise, JsValue>;
    #[wasm_bindgen(static_method_of = BarcodeDetector, js_name = getSupportedFormats, catch)]
    fn supported_formats() -> Result<Promise, JsValue>;
}

/// The codes in which a car may carry its number.
///
/// # Source
/// The names: Barcode Detection API (W3C). That cars carry these four: common practice, no source.
const VIN_FORMATS: [&str; 4] = ["code_39", "code_128", "data_matrix", "qr_code"];

/// Whether this browser reads symbols.
pub fn is_here() -> bool {
    js::window().is_some_and(|window| js::property(&window, "BarcodeDetector").is_some())
}

/// The texts of every symbol in a picture; none where there is none or the browser cannot tell.
pub async fn texts(file: &File) -> Vec<String> {
    if !is_here() {
        return Vec::new();
    }
    let (Ok(reader), Some(bitmap)) = (BarcodeDetector::new(), photo::bitmap(file).await) else {
        return Vec::new();
    };
    let texts = detected(&reader, &bitmap).await;
    bitmap.close();
    texts
}

/// What reads the number of a vehicle.
#[derive(Debug)]
pub struct VinReader(BarcodeDetector);

impl VinReader {
    /// The reader of this browser; none where it reads no code that a car may carry.
    pub async fn here() -> Option<Self> {
        if !is_here() {
            return None;
        }
        let offered = JsFuture::from(BarcodeDetector::supported_formats().ok()?).await;
        let offered: Array = offered.ok()?.dyn_into().ok()?;
        let known = |it: &JsValue| {
            it.as_string()
                .is_some_and(|it| VIN_FORMATS.contains(&it.as_str()))
        };
        let formats: Array = offered.iter().filter(known).collect();
        if formats.length() == 0 {
            return None;
        }
        let options = js::object(&[("formats", formats.into())]);
        Some(Self(BarcodeDetector::of(&options).ok()?))
    }

    /// The texts of every code that the camera shows; none before its first picture.
    pub async fn texts(&self, video: &HtmlVideoElement) -> Vec<String> {
        detected(&self.0, video).await
    }
}

/// The texts of what a reader finds; none where the browser cannot tell.
async fn detected(reader: &BarcodeDetector, source: &JsValue) -> Vec<String> {
    let Ok(promise) = reader.detect(source) else {
        return Vec::new();
    };
    let found = JsFuture::from(promise).await;
    let codes = found.ok().and_then(|found| found.dyn_into::<Array>().ok());
    let codes = codes.unwrap_or_default();
    let texts = codes.iter().filter_map(|code| js::text(&code, "rawValue"));
    texts.collect()
}
