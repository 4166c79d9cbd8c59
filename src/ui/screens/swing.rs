//! Paced swings with nothing to touch, then what the hands felt.
//!
//! Both hands are on the tire and the phone lies on the ground: one large number, a tone and a
//! vibration a swing; the answer is asked for afterwards. The count begins by itself.

use crate::job::entry::Reply;
use crate::job::pace::{Beat, Pace};
use crate::job::{Status, status};
use crate::platform::clock;
use crate::platform::tone::{self, Sound};
use crate::text::{self, Say};
use crate::trade::play::Felt;
use crate::ui::at::StepContext;
use crate::ui::parts::frame::frame;
use crate::ui::parts::key::{Look, key};
use crate::ui::state::App;
use crate::ui::view::prelude::*;

/// Beats to read the step, lay the phone down and take hold, before the first swing.
const LEAD: i32 = 6;
/// One swing a second, as hands do it.
const PACE_MS: i32 = 1000;

/// The counter of a rocking step, with the four grades under it.
pub fn swing(at: &StepContext) -> Node {
    let keys = Felt::ALL.iter().map(|felt| {
        let (here, felt) = (at.clone(), *felt);
        key(Look::Plain, text::felt(at.lang, felt), move || {
            here.answer(Reply::Felt(felt))
        })
    });
    let keys = view! { <div class="keys-grid">{keys.collect_view()}</div> };
    // Who comes back to an answered step has something else in mind.
    let begin = match status(at.sheet(), &at.planned) {
        Status::Open => Begin::ByItself,
        _ => Begin::ByKey,
    };
    let look = (Pace::Rock, Look::Primary);
    frame(at, pacer(at, look, begin, || {}), keys)
}

/// How the count begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Begin {
    /// Once the step is on the screen, after some beats.
    ByItself,
    /// When its key is pressed, at once.
    ByKey,
}

/// The paced counter: nothing is touched from its start to its end, which is told to `ended`.
pub fn pacer(
    at: &StepContext,
    (pace, look): (Pace, Look),
    begin: Begin,
    ended: impl Fn() + Copy + Send + Sync + 'static,
) -> Node {
    let beat = RwSignal::new(None::<i32>);
    let timer = StoredValue::new_local(None);
    let app = at.app;
    let lang = at.lang;
    let count_from = move |first: i32| {
        beat.set(Some(first));
        sound_of(app, pace, first);
        timer.set_value(Some(clock::every(PACE_MS, move || {
            let next = beat.get_untracked().unwrap_or(first).saturating_add(1);
            if next > 0 && pace.beat(next).is_none() {
                timer.set_value(None);
                beat.set(None);
                app.sound(Sound::Saved);
                ended();
                return;
            }
            sound_of(app, pace, next);
            beat.set(Some(next));
        })));
    };
    let start = move || {
        tone::unlock();
        count_from(0);
    };
    if begin == Begin::ByItself {
        count_from(-LEAD);
    }
    on_cleanup(move || {
        timer.try_set_value(None);
    });
    view! {
        <div class="pacer" aria-live="off">
            {move || match beat.get() {
                // What to do stands on the screen until the count takes its place.
                None | Some(..0) => view! {
                    {key(look, text::say(lang, Say::StartCount), start)}
                    // A closure of its own: the screen may be let go while this one is.
                    {move || (!app.awake.get()).then(|| {
                        view! { <p class="pacer__screen">{text::say(lang, Say::ScreenMayGoOff)}</p> }
                    })}
                },
                Some(beat) => pace.beat(beat).map_or_else(|| ().into_node(), |at| counted(at, lang)),
            }}
        </div>
    }
}

/// A tone where something else begins, a short one and a vibration a swing; the lead-in and the
/// time to read are silent.
fn sound_of(app: App, pace: Pace, beat: i32) {
    let Some((doing, _)) = pace.beat(beat).filter(|_| beat >= 0) else {
        return;
    };
    let begins = pace.turns_at(beat);
    let tone = match doing {
        Beat::Push if begins => Sound::Push,
        Beat::Pull if begins => Sound::Pull,
        Beat::Push | Beat::Pull => Sound::Count,
        Beat::ReadPush | Beat::ReadPull if begins => Sound::Read,
        Beat::ReadPush | Beat::ReadPull => return,
    };
    app.sound(tone);
    if beat > 0 {
        tone::vibrate(if tone == Sound::Read { &[400] } else { &[60] });
    }
}

fn counted((doing, count): (Beat, i32), lang: text::Lang) -> Node {
    let word = match doing {
        Beat::Push => Say::PushWord,
        Beat::ReadPush => Say::ReadPushWord,
        Beat::Pull => Say::PullWord,
        Beat::ReadPull => Say::ReadPullWord,
    };
    view! {
        <p class="pacer__count">{count.to_string()}</p>
        <p class="pacer__way">{text::say(lang, word)}</p>
    }
}
