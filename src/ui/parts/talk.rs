//! A key that records a note while it is held: no typing with gloves on.

use crate::ui::react::spawn_local;
use web_sys::KeyboardEvent;

use crate::job::entry::{Event, Voice};
use crate::platform::clock::{self, Timer};
use crate::platform::voice::{self, Recording, VoiceError};
use crate::text::{self, Saved};
use crate::ui::at::StepContext;
use crate::ui::view::prelude::*;

/// How far the talking is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Talk {
    /// Nobody talks; what became of the last time, if there was one.
    Quiet(Option<Saved>),
    /// The browser is asked for the microphone.
    Asking,
    /// Somebody has talked for so many seconds.
    Talking(u8),
    /// It is on its way to the disk.
    Keeping,
}

/// The key with what it needs while it is held.
#[derive(Clone, Copy)]
struct Key {
    at: StoredValue<StepContext, LocalStorage>,
    talk: RwSignal<Talk>,
    /// Whether the finger is on it.
    held: StoredValue<bool>,
    recording: StoredValue<Option<(Recording, Timer)>, LocalStorage>,
}

/// The key; typed notes stay beside it, whatever the microphone says.
pub fn talk(at: &StepContext) -> Node {
    let key = Key {
        at: StoredValue::new_local(at.clone()),
        talk: RwSignal::new(Talk::Quiet(None)),
        held: StoredValue::new(false),
        recording: StoredValue::new_local(None),
    };
    let lang = at.lang;
    let hint = move || match key.talk.get() {
        Talk::Talking(said) => text::talking(lang, said, Voice::LONGEST_S),
        Talk::Asking => text::saved(lang, Saved::MicAsking).to_owned(),
        Talk::Quiet(_) | Talk::Keeping => text::saved(lang, Saved::HoldHint).to_owned(),
    };
    let recorded = move || match key.talk.get() {
        Talk::Quiet(Some(word)) => Some(text::saved(lang, word)),
        _ => None,
    };
    let is_press = |event: &KeyboardEvent| matches!(event.key().as_str(), "Enter" | " ");
    view! {
        <button
            type="button"
            class="key talk"
            data-talking={move || matches!(key.talk.get(), Talk::Talking(_)).to_string()}
            on:pointerdown={move |_| key.begin()}
            on:pointerup={move |_| key.end()}
            on:pointerleave={move |_| key.end()}
            on:pointercancel={move |_| key.end()}
            on:blur={move |_| key.end()}
            on:contextmenu={move |event| event.prevent_default()}
            on:keydown={move |event| {
                if is_press(&event) {
                    event.prevent_default();
                    key.begin();
                }
            }}
            on:keyup={move |_| key.end()}
        >
            <span>{text::saved(lang, Saved::HoldToTalk)}</span>
            <small>{hint}</small>
        </button>
        <p class="talk__told" role="alert">{recorded}</p>
    }
}

impl Key {
    fn tell(self, talk: Talk) {
        // The key may have gone away with its screen.
        let _ = self.talk.try_set(talk);
    }

    fn begin(self) {
        if !matches!(self.talk.get_untracked(), Talk::Quiet(_)) {
            return;
        }
        self.held.set_value(true);
        self.tell(Talk::Asking);
        spawn_local(async move {
            match voice::begin().await {
                Err(problem) => self.tell(Talk::Quiet(Some(word(problem)))),
                Ok(recording) if self.held.try_get_value() == Some(true) => self.talking(recording),
                // The finger left while the browser asked: nothing was recorded.
                Ok(_) => self.tell(Talk::Quiet(Some(Saved::MicAllowed))),
            }
        });
    }

    fn talking(self, recording: Recording) {
        self.tell(Talk::Talking(0));
        let second = clock::every(1000, move || {
            let said = match self.talk.try_get_untracked() {
                Some(Talk::Talking(said)) => said.saturating_add(1),
                _ => return,
            };
            if said < Voice::LONGEST_S {
                self.tell(Talk::Talking(said));
            } else {
                // Not from within its own timer, which goes away with the recording.
                clock::later(0, move || self.end());
            }
        });
        let _ = self.recording.try_set_value(Some((recording, second)));
    }

    fn end(self) {
        let _ = self.held.try_set_value(false);
        let taken = self.recording.try_update_value(Option::take).flatten();
        let Some((recording, second)) = taken else {
            return;
        };
        drop(second);
        self.tell(Talk::Keeping);
        let at = self.at.get_value();
        spawn_local(async move {
            let saved = match recording.end().await {
                Err(problem) => Err(word(problem)),
                Ok(sound) => keep(&at, sound).await,
            };
            self.tell(Talk::Quiet(saved.err()));
        });
    }
}

async fn keep(
    at: &StepContext,
    (sound, seconds): (crate::platform::record::Photo, u8),
) -> Result<(), Saved> {
    let (step, mime) = (at.planned.key, sound.mime.clone());
    let whats = move |sha256| {
        vec![Event::Voice(Voice {
            step,
            sha256,
            mime,
            seconds,
        })]
    };
    let saved = at.app.keep_bytes(&at.open.log, sound, whats, || {}).await;
    saved.map_err(|_| Saved::VoiceFull)
}

const fn word(problem: VoiceError) -> Saved {
    match problem {
        VoiceError::Denied => Saved::MicDenied,
        VoiceError::NoMicrophone => Saved::MicNone,
        VoiceError::TooShort => Saved::VoiceShort,
        VoiceError::Failed => Saved::VoiceFailed,
    }
}
