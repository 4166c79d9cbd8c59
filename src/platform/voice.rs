//! The microphone: open while somebody talks, and closed with the last clone of a recording.

use std::cell::RefCell;
use std::rc::Rc;

use js_sys::{Array, Promise};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    Blob, BlobEvent, BlobPropertyBag, MediaRecorder, MediaRecorderOptions, MediaStream,
    MediaStreamConstraints, RecordingState,
};

use super::clock;
use super::event::Listener;
use super::js;
use super::media::{self, MediaError, let_go};
use super::record::Photo;
use super::spoken;

/// Enough for a voice beside a road, and a minute stays below 200 kB.
const BITS_A_SECOND: u32 = 24_000;

/// Why there is no voice note.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum VoiceError {
    /// The person, or a policy, denies the microphone.
    Denied,
    /// There is no microphone, another program has it, or this browser records nothing.
    NoMicrophone,
    /// The finger left the key at once.
    TooShort,
    /// The recording broke off.
    Failed,
}

/// A recording that is going on; the microphone is let go of when it is dropped.
#[derive(Debug)]
pub struct Recording {
    recorder: MediaRecorder,
    stream: MediaStream,
    heard: Rc<RefCell<Vec<Blob>>>,
    began_ms: f64,
    _hears: Listener,
}

/// Opens the microphone and begins. The browser may ask the person first.
///
/// # Errors
/// [`VoiceError`].
pub async fn begin() -> Result<Recording, VoiceError> {
    let stream = microphone().await?;
    let recorder = recorder(&stream).inspect_err(|_| let_go(&stream))?;
    let heard = Rc::new(RefCell::new(Vec::new()));
    let into = Rc::clone(&heard);
    let hears = Listener::new(&recorder, "dataavailable", move |event| {
        let blob = event.dyn_into::<BlobEvent>().ok();
        into.borrow_mut()
            .extend(blob.and_then(|event| event.data()));
    });
    let recording = Recording {
        recorder,
        stream,
        heard,
        began_ms: clock::monotonic_ms(),
        _hears: hears,
    };
    recording.recorder.start().map_err(|_| VoiceError::Failed)?;
    Ok(recording)
}

async fn microphone() -> Result<MediaStream, VoiceError> {
    let missing = VoiceError::NoMicrophone;
    let window = js::window().ok_or(missing)?;
    js::property(&window, "MediaRecorder").ok_or(missing)?;
    let constraints = MediaStreamConstraints::new();
    constraints.set_audio(&JsValue::TRUE);
    let stream = media::stream(&constraints).await;
    stream.map_err(|error| match error {
        MediaError::Denied => VoiceError::Denied,
        MediaError::Missing => missing,
    })
}

fn recorder(stream: &MediaStream) -> Result<MediaRecorder, VoiceError> {
    let options = MediaRecorderOptions::new();
    options.set_audio_bits_per_second(BITS_A_SECOND);
    MediaRecorder::new_with_media_stream_and_media_recorder_options(stream, &options)
        .map_err(|_| VoiceError::Failed)
}

impl Recording {
    /// Stops; gives the sound with its media type, and its length in seconds.
    ///
    /// # Errors
    /// [`VoiceError::TooShort`] or [`VoiceError::Failed`].
    pub async fn end(self) -> Result<(Photo, u8), VoiceError> {
        let failed = VoiceError::Failed;
        let ms = clock::monotonic_ms() - self.began_ms;
        // A microphone that was pulled out has stopped it already.
        if self.recorder.state() != RecordingState::Inactive {
            let stopped = Promise::new(&mut |resolve, _| self.recorder.set_onstop(Some(&resolve)));
            self.recorder.stop().map_err(|_| failed)?;
            JsFuture::from(stopped).await.map_err(|_| failed)?;
            self.recorder.set_onstop(None);
        }
        let seconds = spoken::seconds(ms).ok_or(VoiceError::TooShort)?;
        let mime = self.recorder.mime_type();
        let parts: Array = self.heard.borrow().iter().collect();
        let options = BlobPropertyBag::new();
        options.set_type(&mime);
        let whole = Blob::new_with_blob_sequence_and_options(&parts, &options);
        let bytes = js::bytes_of(&whole.map_err(|_| failed)?).await;
        let bytes = bytes.map_err(|_| failed)?;
        if bytes.is_empty() {
            return Err(failed);
        }
        Ok((Photo { mime, bytes }, seconds))
    }
}

impl Drop for Recording {
    fn drop(&mut self) {
        let_go(&self.stream);
    }
}
