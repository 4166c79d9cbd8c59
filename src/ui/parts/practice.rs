//! The practice car on a step: what is met on it, and keys that are held to move its needle.

use leptos::ev::KeyboardEvent;
use leptos::prelude::*;

use crate::drawing::dial;
use crate::job::practice::{Met, met};
use crate::platform::clock::{self, Timer};
use crate::platform::page;
use crate::platform::tone::{self, Sound};
use crate::text::{self, Say};
use crate::trade::play::Divisions;
use crate::trade::practice::{Car, Hands, Rig};
use crate::trade::wheel_end::Pick;
use crate::ui::at::At;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::picture::drawn;

/// A swing of the bearing while a key is held, and a movement of the needle, in ticks.
const TICK_MS: i32 = 20;
const TICKS_A_SWING: u8 = 20;

/// The needle of the practice car while a key is held; none while nobody touches it.
pub type Needle = RwSignal<Option<Divisions>>;

/// What the practice car of this job shows at this step, after "Try it"; nothing on a real job.
///
/// A round draws its own dial, so it asks for [`hands`] itself.
pub fn practice(at: &At) -> Option<AnyView> {
    let (car, met) = met(at.sheet(), &at.spec)?;
    match met {
        Met::Needle(..) => None,
        Met::Base(rig) => Some(base(at, car, rig)),
        _ => Some(tried(at, met)),
    }
}

fn tried(at: &At, met: Met) -> AnyView {
    let shown = RwSignal::new(false);
    let (here, at) = (at.clone(), at.clone());
    let words = move || {
        let heat = match met {
            Met::Heat(heat) => at.fmt.temperature(heat, 0).line(),
            _ => String::new(),
        };
        let words = text::practice_met(at.lang, met, &heat);
        shown
            .get()
            .then(|| view! { <p class="practice__met">{words}</p> })
    };
    let try_it = key(Look::Plain, here.say(Say::TryIt), move || {
        tone::unlock();
        if let Some(sound) = sound_of(met) {
            here.app.sound(sound);
        }
        shown.set(true);
    });
    view! { <aside class="practice" role="status">{try_it} {words}</aside> }.into_any()
}

/// A hub that is spun is heard as well; the words say the same.
const fn sound_of(met: Met) -> Option<Sound> {
    match met {
        Met::Found(Pick::SmoothQuiet) => Some(Sound::Smooth),
        Met::Found(Pick::Rough | Pick::Noisy | Pick::RoughNoisy) => Some(Sound::Grinds),
        _ => None,
    }
}

/// The dial while the knuckle is pushed.
fn base(at: &At, car: Car, rig: Rig) -> AnyView {
    let needle = Needle::new(None);
    let (here, lang) = (at.clone(), at.lang);
    let face = move || {
        let stands = needle.get().unwrap_or(rig.rests_at);
        let face = dial::Dial {
            divisions: rig.dial.divisions_per_turn(),
            value: stands.count(),
            last: None,
            swept: None,
        };
        let title = text::dial_alt(lang, &here.fmt.number(stands.count(), 0));
        drawn(&face.drawing(), &title, "round__dial")
    };
    let push = held(at.say(Say::HoldKnuckle), needle, move |_| {
        car.needle_of_base(&rig)
    });
    view! {
        <aside class="practice">
            {face}
            <p class="practice__met">{text::practice_met(lang, Met::Base(rig), "")}</p>
            <div class="keys-grid">{push}</div>
        </aside>
    }
    .into_any()
}

/// The keys that push and pull the hub in a round; they move `needle` while they are held.
pub fn hands(at: &At, needle: Needle) -> Option<AnyView> {
    let (car, Met::Needle(rig, round)) = met(at.sheet(), &at.spec)? else {
        return None;
    };
    let way = |say, hands| {
        held(at.say(say), needle, move |swings| {
            car.needle(&rig, hands, round, swings)
        })
    };
    let words = text::practice_met(at.lang, Met::Needle(rig, round), "");
    Some(
        view! {
            <aside class="practice">
                <p class="practice__met">{words}</p>
                <div class="keys-grid">
                    {way(Say::HoldPush, Hands::Push)} {way(Say::HoldPull, Hands::Pull)}
                </div>
            </aside>
        }
        .into_any(),
    )
}

/// A key that is held by finger or by Enter or Space; while it is, `stands` says where the needle
/// goes after so many swings.
fn held(
    label: &'static str,
    needle: Needle,
    stands: impl Fn(u8) -> Divisions + Copy + 'static,
) -> AnyView {
    let timer = StoredValue::new_local(None::<Timer>);
    let ticks = StoredValue::new(0_u8);
    let begin = move || {
        if timer.with_value(Option::is_some) {
            return;
        }
        ticks.set_value(0);
        // Who wants no motion sees the needle where it comes to stand.
        let still = page::wants_no_motion();
        needle.set(Some(Divisions::ZERO));
        let tick = move || {
            let now = ticks.with_value(|ticks| ticks.saturating_add(1));
            ticks.set_value(now);
            let to = stands(now / TICKS_A_SWING);
            // The screen may have gone while the key was held.
            let Some(from) = needle.try_get_untracked() else {
                return;
            };
            let next = Some(match from {
                Some(from) if !still => from.towards(to),
                _ => to,
            });
            // A needle that stands is not drawn anew.
            if from != next {
                needle.set(next);
            }
        };
        tick();
        timer.set_value(Some(clock::every(TICK_MS, tick)));
    };
    let end = move || {
        let held = timer.try_update_value(Option::take).flatten();
        if held.is_some() {
            let _ = needle.try_set(None);
        }
    };
    let is_press = |event: &KeyboardEvent| matches!(event.key().as_str(), "Enter" | " ");
    view! {
        <button
            type="button"
            class="key practice__hold"
            on:pointerdown=move |_| begin()
            on:pointerup=move |_| end()
            on:pointerleave=move |_| end()
            on:pointercancel=move |_| end()
            on:blur=move |_| end()
            on:contextmenu=move |event| event.prevent_default()
            on:keydown=move |event| {
                if is_press(&event) {
                    event.prevent_default();
                    begin();
                }
            }
            on:keyup=move |_| end()
        >
            {label}
        </button>
    }
    .into_any()
}
