//! Camera and microphone as streams; each is let go of by whoever asked for it.

use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    HtmlVideoElement, MediaDevices, MediaStream, MediaStreamConstraints, MediaStreamTrack,
};

use super::js;

/// Why there is no stream.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MediaError {
    /// The person, or a policy, denies it.
    Denied,
    /// There is no such device, another program has it, or this browser offers none.
    Missing,
}

/// A stream of these constraints. The browser may ask the person first.
///
/// # Errors
/// [`MediaError`].
pub(super) async fn stream(of: &MediaStreamConstraints) -> Result<MediaStream, MediaError> {
    let navigator = js::navigator().ok_or(MediaError::Missing)?;
    let devices = js::property(&navigator, "mediaDevices").ok_or(MediaError::Missing)?;
    let devices: MediaDevices = devices.unchecked_into();
    let asked = devices
        .get_user_media_with_constraints(of)
        .map_err(|error| problem(&error))?;
    let stream = JsFuture::from(asked).await;
    Ok(stream.map_err(|error| problem(&error))?.unchecked_into())
}

/// # Source
/// Names of `DOMException` that `getUserMedia` raises (Media Capture and Streams, W3C).
fn problem(error: &JsValue) -> MediaError {
    match js::error_name(error).as_str() {
        "NotAllowedError" | "SecurityError" => MediaError::Denied,
        _ => MediaError::Missing,
    }
}

/// Closes the device.
pub(super) fn let_go(stream: &MediaStream) {
    for track in stream.get_tracks().iter() {
        track.unchecked_into::<MediaStreamTrack>().stop();
    }
}

/// The camera at the back of the phone, running; it closes when this is dropped.
#[derive(Debug)]
pub struct Camera {
    stream: MediaStream,
}

impl Camera {
    /// Opens it.
    ///
    /// # Errors
    /// [`MediaError`].
    pub async fn open() -> Result<Self, MediaError> {
        let constraints = MediaStreamConstraints::new();
        // Bars of a code lie close together: as fine a picture as the camera gives.
        let wide = js::object(&[("ideal", JsValue::from_f64(1920.0))]);
        let wanted = [
            ("facingMode", JsValue::from_str("environment")),
            ("width", wide.into()),
        ];
        constraints.set_video(&js::object(&wanted));
        let stream = stream(&constraints).await?;
        Ok(Self { stream })
    }

    /// Shows what it sees.
    pub fn show_in(&self, video: &HtmlVideoElement) {
        video.set_src_object(Some(&self.stream));
        if let Ok(playing) = video.play() {
            js::let_go(playing);
        }
    }
}

impl Drop for Camera {
    fn drop(&mut self) {
        let_go(&self.stream);
    }
}
