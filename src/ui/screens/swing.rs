//! Paced swings with nothing to touch, then what the hands felt.
//!
//! Both hands are on the tyre and the phone lies on the ground: one large number, a tone and a
//! vibration a swing; the answer is asked for afterwards.

use leptos::prelude::*;

use crate::job::entry::Reply;
use crate::platform::clock;
use crate::platform::tone::{self, Sound};
use crate::text::{self, Say};
use crate::trade::play::Felt;
use crate::ui::at::At;
use crate::ui::parts::frame::frame;
use crate::ui::parts::key::{Look, key};

/// Swings each way: five pushing, then five pulling.
const SWINGS: u32 = 5;
/// One swing a second, as hands do it.
const PACE_MS: i32 = 1000;

/// The counter of a rocking step, with the four grades under it.
pub fn swing(at: &At) -> AnyView {
    let keys = Felt::ALL.iter().map(|felt| {
        let (here, felt) = (at.clone(), *felt);
        key(Look::Plain, text::felt(at.lang, felt), move || {
            here.answer(Reply::Felt(felt))
        })
    });
    let keys = view! { <div class="keys-grid">{keys.collect_view()}</div> };
    frame(at, pacer(at, Look::Primary), keys)
}

/// The paced counter: push and five swings, then pull and five swings.
pub fn pacer(at: &At, look: Look) -> AnyView {
    let beat = RwSignal::new(None::<u32>);
    let timer = StoredValue::new_local(None);
    let app = at.app;
    let lang = at.lang;
    let start = move || {
        tone::unlock();
        beat.set(Some(0));
        app.sound(Sound::Push);
        timer.set_value(Some(clock::every(PACE_MS, move || {
            let next = beat.get_untracked().unwrap_or(0).saturating_add(1);
            if next > 2 * SWINGS {
                timer.set_value(None);
                beat.set(None);
                app.sound(Sound::Kept);
                return;
            }
            app.sound(if next == SWINGS + 1 {
                Sound::Pull
            } else {
                Sound::Count
            });
            tone::vibrate(&[60]);
            beat.set(Some(next));
        })));
    };
    on_cleanup(move || {
        timer.try_set_value(None);
    });
    view! {
        <div class="pacer" aria-live="off">
            {move || match beat.get() {
                None => key(look, text::say(lang, Say::StartCount), start).into_any(),
                Some(beat) => counted(at_beat(beat), lang),
            }}
        </div>
    }
    .into_any()
}

/// Which way the hands go at a beat, and the count of that way.
const fn at_beat(beat: u32) -> (Say, u32) {
    if beat <= SWINGS {
        (Say::PushWord, beat)
    } else {
        (Say::PullWord, beat - SWINGS)
    }
}

fn counted((way, count): (Say, u32), lang: text::Lang) -> AnyView {
    view! {
        <p class="pacer__count">{count.to_string()}</p>
        <p class="pacer__way">{text::say(lang, way)}</p>
    }
    .into_any()
}
