//! Files that leave the phone and files that come in, and the printer.
//!
//! Nothing leaves unless a person tapped for it.

use js_sys::{Array, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{File, FilePropertyBag, HtmlAnchorElement, ShareData};

use super::clock;
use super::js;
use super::photo::ObjectUrl;

/// How long a download may take to begin before its bytes are let go.
const DOWNLOAD_BEGINS_MS: i32 = 60_000;

/// Why a file could not be written or read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FileError {
    /// The browser could not offer the file.
    NotSaved,
    /// The share sheet failed for a reason other than being closed.
    NotShared,
    /// The file could not be read: gone, or no longer allowed.
    NotRead,
    /// The browser does not print.
    NotPrinted,
}

/// What became of a file that was to be shared.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shared {
    /// It was handed to another app.
    Sent,
    /// The person closed the share sheet.
    Dismissed,
    /// This browser cannot share such a file; save it instead.
    NotPossible,
}

/// Offers bytes as a download.
///
/// # Errors
/// [`FileError::NotSaved`].
pub fn save_bytes(name: &str, mime: &str, bytes: &[u8]) -> Result<(), FileError> {
    let url = ObjectUrl::new(bytes, mime).map_err(|_| FileError::NotSaved)?;
    click_download(name, url.as_str()).ok_or(FileError::NotSaved)?;
    clock::later(DOWNLOAD_BEGINS_MS, move || drop(url));
    Ok(())
}

fn click_download(name: &str, url: &str) -> Option<()> {
    let document = js::document()?;
    let anchor: HtmlAnchorElement = document.create_element("a").ok()?.dyn_into().ok()?;
    anchor.set_href(url);
    anchor.set_download(name);
    anchor.set_hidden(true);
    // Some browsers follow only a link that stands in the page.
    document.body()?.append_child(&anchor).ok()?;
    anchor.click();
    anchor.remove();
    Some(())
}

/// Hands bytes as a file to another app; call it as soon after a tap as can be.
///
/// # Errors
/// [`FileError::NotShared`] if the browser began and failed, or refuses such a file.
pub async fn share(name: &str, mime: &str, bytes: &[u8]) -> Result<Shared, FileError> {
    let Some(navigator) = js::navigator() else {
        return Ok(Shared::NotPossible);
    };
    if js::method(&navigator, "canShare").is_none() || js::method(&navigator, "share").is_none() {
        return Ok(Shared::NotPossible);
    }
    let file = file(name, mime, bytes).map_err(|_| FileError::NotShared)?;
    let data = ShareData::new();
    data.set_files(&Array::of1(&file));
    if !navigator.can_share_with_data(&data) {
        return Ok(Shared::NotPossible);
    }
    match JsFuture::from(navigator.share_with_data(&data)).await {
        Ok(_) => Ok(Shared::Sent),
        Err(error) if js::error_name(&error) == "AbortError" => Ok(Shared::Dismissed),
        Err(_) => Err(FileError::NotShared),
    }
}

fn file(name: &str, mime: &str, bytes: &[u8]) -> Result<File, JsValue> {
    let options = FilePropertyBag::new();
    options.set_type(mime);
    let parts = Array::of1(&Uint8Array::from(bytes));
    File::new_with_u8_array_sequence_and_options(&parts, name, &options)
}

/// The bytes of a file that a person picked.
///
/// # Errors
/// [`FileError::NotRead`].
pub async fn read_bytes(file: &File) -> Result<Vec<u8>, FileError> {
    js::bytes_of(file).await.map_err(|_| FileError::NotRead)
}

/// How many bytes a file has.
pub fn size(file: &File) -> u64 {
    file.size() as u64
}

/// Its bytes from one place to another, as far as it has them.
///
/// # Errors
/// [`FileError::NotRead`], also where the file was changed since it was picked.
pub async fn read_slice(file: &File, from: u64, to: u64) -> Result<Vec<u8>, FileError> {
    let slice = file.slice_with_f64_and_f64(from as f64, to as f64);
    let slice = slice.map_err(|_| FileError::NotRead)?;
    js::bytes_of(&slice).await.map_err(|_| FileError::NotRead)
}

/// Opens the browser's print dialog.
///
/// # Errors
/// [`FileError::NotPrinted`] where the browser has none.
pub fn print() -> Result<(), FileError> {
    let window = js::window().ok_or(FileError::NotPrinted)?;
    window.print().map_err(|_| FileError::NotPrinted)
}
