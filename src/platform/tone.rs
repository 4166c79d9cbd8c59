//! What the technician hears and feels without looking: kept, not kept, the counter's pace.
//!
//! Silent where the browser has no sound or no motor; nothing may depend on being heard.

use std::cell::RefCell;

use js_sys::{Array, Function};
use wasm_bindgen::JsValue;
use web_sys::{AudioContext, AudioContextState, OscillatorType};

use super::js;

/// What is told by sound.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sound {
    /// A tap is on the disk: two notes up.
    Saved,
    /// A tap is not kept: two low notes.
    SaveError,
    /// One turn counted: one short note.
    Count,
    /// The paced counter says push: two notes up.
    Push,
    /// The paced counter says pull: two notes down.
    Pull,
    /// The paced counter says read: one long note, and silence to look at the needle.
    Read,
    /// A practice hub that turns smooth: one low, even note.
    Smooth,
    /// A practice hub that grinds once a turn: a growl that comes again.
    Grinds,
}

/// One note: pitch in hertz, beginning and length in seconds.
struct Note {
    hz: f32,
    begins_s: f64,
    lasts_s: f64,
}

const fn note(hz: f32, begins_s: f64, lasts_s: f64) -> Note {
    Note {
        hz,
        begins_s,
        lasts_s,
    }
}

const KEPT: &[Note] = &[note(660.0, 0.0, 0.09), note(880.0, 0.10, 0.14)];
const NOT_KEPT: &[Note] = &[note(220.0, 0.0, 0.22), note(196.0, 0.26, 0.34)];
const COUNT: &[Note] = &[note(988.0, 0.0, 0.06)];
// As long as the words would be, and each of another shape: up, down, level.
const PUSH: &[Note] = &[note(523.0, 0.0, 0.16), note(784.0, 0.16, 0.24)];
const PULL: &[Note] = &[note(784.0, 0.0, 0.16), note(523.0, 0.16, 0.24)];
const READ: &[Note] = &[note(659.0, 0.0, 0.7)];
const SMOOTH: &[Note] = &[note(130.0, 0.0, 1.2)];
const GRINDS: &[Note] = &[
    note(92.0, 0.0, 0.18),
    note(98.0, 0.06, 0.18),
    note(92.0, 0.5, 0.18),
    note(98.0, 0.56, 0.18),
    note(92.0, 1.0, 0.18),
    note(98.0, 1.06, 0.18),
];

/// An exponential ramp can neither begin nor end at zero.
const NEARLY_SILENT: f32 = 0.0001;
const LOUD: f32 = 0.4;
/// Long enough that the loudspeaker does not click.
const RISE_S: f64 = 0.01;

thread_local! {
    static CONTEXT: RefCell<Option<AudioContext>> = const { RefCell::new(None) };
}

/// Makes sound possible; call it in the handler of a tap, browsers refuse it elsewhere.
pub fn unlock() {
    CONTEXT.with_borrow_mut(|context| {
        if context.is_none() {
            *context = AudioContext::new().ok();
        }
        if let Some(context) = context
            .as_ref()
            .filter(|one| one.state() != AudioContextState::Running)
            && let Ok(promise) = context.resume()
        {
            js::let_go(promise);
        }
    });
}

/// Plays a sound, if sound was unlocked.
pub fn play(sound: Sound) {
    let notes = match sound {
        Sound::Saved => KEPT,
        Sound::SaveError => NOT_KEPT,
        Sound::Count => COUNT,
        Sound::Push => PUSH,
        Sound::Pull => PULL,
        Sound::Read => READ,
        Sound::Smooth => SMOOTH,
        Sound::Grinds => GRINDS,
    };
    CONTEXT.with_borrow(|context| {
        // Notes given to a sleeping context would all sound at once when it wakes.
        let Some(context) = context
            .as_ref()
            .filter(|one| one.state() == AudioContextState::Running)
        else {
            return;
        };
        for note in notes {
            // A note that cannot be made is not heard, which is allowed.
            let _ = sound_note(context, note);
        }
    });
}

fn sound_note(context: &AudioContext, note: &Note) -> Result<(), JsValue> {
    let begins = context.current_time() + note.begins_s;
    let ends = begins + note.lasts_s;
    let voice = context.create_oscillator()?;
    let volume = context.create_gain()?;
    voice.set_type(OscillatorType::Triangle);
    voice.frequency().set_value(note.hz);
    volume.gain().set_value_at_time(NEARLY_SILENT, begins)?;
    volume
        .gain()
        .exponential_ramp_to_value_at_time(LOUD, begins + RISE_S)?;
    volume
        .gain()
        .exponential_ramp_to_value_at_time(NEARLY_SILENT, ends)?;
    voice.connect_with_audio_node(&volume)?;
    volume.connect_with_audio_node(&context.destination())?;
    voice.start_with_when(begins)?;
    voice.stop_with_when(ends)
}

/// Vibrates: milliseconds on, off, on, and so on. True if the browser took it.
pub fn vibrate(pattern_ms: &[u32]) -> bool {
    let Some(navigator) = js::navigator() else {
        return false;
    };
    let Some(vibrate): Option<Function> = js::method(&navigator, "vibrate") else {
        return false;
    };
    let pattern: Array = pattern_ms.iter().map(|ms| JsValue::from(*ms)).collect();
    vibrate
        .call1(&navigator, &pattern)
        .is_ok_and(|taken| taken.is_truthy())
}
