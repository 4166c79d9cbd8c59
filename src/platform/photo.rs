//! A picture from the camera made small enough to keep, and shown again from its bytes.

use js_sys::Promise;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    Blob, CanvasRenderingContext2d, File, HtmlCanvasElement, ImageBitmap, ImageBitmapOptions,
    ImageOrientation, Url,
};

use super::fit::PhotoSize;
use super::js;

/// Longest side of a kept picture in pixels: a page of a manual is still readable.
const LONGEST_PX: u32 = 1600;
/// JPEG quality between 0 and 1.
const QUALITY: f64 = 0.8;
/// Media type of every kept picture.
pub const MIME: &str = "image/jpeg";

/// Why there is no picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PhotoError {
    /// The file is no picture that this browser can read.
    Unreadable,
    /// The browser could not draw or encode it, mostly for want of memory.
    NotDrawn,
}

/// A picture as it is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Photo {
    /// The bytes of the JPEG file, without the place and the time that the camera wrote into it.
    pub bytes: Vec<u8>,
    /// Its size after scaling.
    pub size: PhotoSize,
}

/// Reads a picture, turns it upright, scales it down and encodes it as JPEG.
///
/// # Errors
/// [`PictureError`].
pub async fn scaled(file: &File) -> Result<Photo, PhotoError> {
    let bitmap = bitmap(file).await.ok_or(PhotoError::Unreadable)?;
    let size = PhotoSize {
        width: bitmap.width(),
        height: bitmap.height(),
    }
    .fit(LONGEST_PX);
    let canvas = drawn(&bitmap, size);
    // A phone's picture is 50 MB unpacked; waiting for the collector can end the page.
    bitmap.close();
    let canvas = canvas.ok_or(PhotoError::NotDrawn)?;
    let blob = encoded(&canvas).await.ok_or(PhotoError::NotDrawn)?;
    let bytes = js::bytes_of(&blob)
        .await
        .map_err(|_| PhotoError::NotDrawn)?;
    Ok(Photo { bytes, size })
}

/// A picture file, unpacked and upright.
pub(super) async fn bitmap(file: &File) -> Option<ImageBitmap> {
    let options = ImageBitmapOptions::new();
    options.set_image_orientation(ImageOrientation::FromImage);
    let window = js::window()?;
    let promise = window
        .create_image_bitmap_with_blob_and_image_bitmap_options(file, &options)
        .ok()?;
    JsFuture::from(promise).await.ok()?.dyn_into().ok()
}

fn drawn(bitmap: &ImageBitmap, size: PhotoSize) -> Option<HtmlCanvasElement> {
    let canvas: HtmlCanvasElement = js::document()?
        .create_element("canvas")
        .ok()?
        .dyn_into()
        .ok()?;
    canvas.set_width(size.width);
    canvas.set_height(size.height);
    let pen: CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
    // JPEG has no transparency and would show it black.
    pen.set_fill_style_str("white");
    let (width, height) = (f64::from(size.width), f64::from(size.height));
    pen.fill_rect(0.0, 0.0, width, height);
    pen.draw_image_with_image_bitmap_and_dw_and_dh(bitmap, 0.0, 0.0, width, height)
        .ok()?;
    Some(canvas)
}

async fn encoded(canvas: &HtmlCanvasElement) -> Option<Blob> {
    let promise = Promise::new(&mut |resolve, reject| {
        if canvas
            .to_blob_with_type_and_encoder_options(&resolve, MIME, &QUALITY.into())
            .is_err()
        {
            let _ = reject.call0(&wasm_bindgen::JsValue::UNDEFINED);
        }
    });
    JsFuture::from(promise).await.ok()?.dyn_into().ok()
}

/// An address for bytes, for `src` and `href`; the browser lets go of them when it is dropped.
#[derive(Debug, PartialEq, Eq)]
pub struct ObjectUrl {
    url: String,
}

impl ObjectUrl {
    /// Makes an address for these bytes.
    ///
    /// # Errors
    /// [`PictureError::NotDrawn`] if the browser has no room for them.
    pub fn new(bytes: &[u8], mime: &str) -> Result<Self, PhotoError> {
        let blob = js::blob(bytes, mime).map_err(|_| PhotoError::NotDrawn)?;
        let url = Url::create_object_url_with_blob(&blob).map_err(|_| PhotoError::NotDrawn)?;
        Ok(Self { url })
    }

    /// The address, good for as long as this value lives.
    pub fn as_str(&self) -> &str {
        &self.url
    }
}

impl Drop for ObjectUrl {
    fn drop(&mut self) {
        let _ = Url::revoke_object_url(&self.url);
    }
}
