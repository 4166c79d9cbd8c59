//! The practice car on a step: what is met on it, and keys that are held to move its needle.

use crate::drawing::dial;
use crate::job::practice::{Met, met};
use crate::platform::clock::{self, Timer};
use crate::platform::page;
use crate::platform::tone::{self, Sound};
use crate::text::{self, Say};
use crate::trade::play::Divisions;
use crate::trade::practice::{Hands, Rig};
use crate::trade::wheel_end::Choice;
use crate::ui::at::StepContext;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::panel::Panel;
use crate::ui::parts::picture::drawn;
use crate::ui::parts::press::pressed;
use crate::ui::view::prelude::*;

/// A swing of the bearing while a key is held, and a movement of the needle, in ticks.
const TICK_MS: i32 = 20;
const TICKS_A_SWING: u8 = 20;

/// The needle of the practice car while a key is held; none while nobody touches it.
type Needle = RwSignal<Option<Divisions>>;

/// Whether this step has a practice car that shows something.
pub fn shows(at: &StepContext) -> bool {
    met(at.sheet(), &at.planned).is_some()
}

/// The way to the practice car of this step; nothing on a real job.
///
/// A thermometer is read at once; a round has the key among its own.
pub fn way(at: &StepContext) -> Option<Node> {
    match met(at.sheet(), &at.planned)?.1 {
        Met::Needle(..) | Met::Heat(_) => None,
        _ => Some(view! { <div class="practice__way">{try_it(at)}</div> }),
    }
}

/// What the thermometer reads at this step of a practice car, before it is typed.
pub fn reading(at: &StepContext) -> Option<Node> {
    let (_, met) = met(at.sheet(), &at.planned)?;
    match met {
        Met::Heat(heat) => {
            let heat = at.fmt.temperature(heat, 0).line();
            let words = text::practice_met(at.lang, met, &heat);
            Some(view! { <p class="practice__met" role="status">{words}</p> })
        }
        _ => None,
    }
}

/// The key that opens the practice car over the step.
pub fn try_it(at: &StepContext) -> Node {
    let here = at.clone();
    let sound = met(at.sheet(), &at.planned).and_then(|(_, met)| sound_of(met));
    key(Look::Plain, at.say(Say::TryIt), move || {
        tone::unlock();
        if let Some(sound) = sound {
            here.app.sound(sound);
        }
        here.panel.set(Panel::Practice);
    })
}

/// What the practice car shows: words, or a dial with keys that are held.
pub fn car(at: &StepContext) -> Option<Node> {
    let (car, met) = met(at.sheet(), &at.planned)?;
    let words = text::practice_met(at.lang, met, "");
    let needle = Needle::new(None);
    let (rig, keys) = match met {
        Met::Base(rig) => {
            let push = held(at.say(Say::HoldKnuckle), needle, move |_| {
                car.needle_of_base(&rig)
            });
            (Some(rig), push)
        }
        Met::Needle(rig, round) => {
            let way = |say, hands| {
                held(at.say(say), needle, move |swings| {
                    car.needle(&rig, hands, round, swings)
                })
            };
            let (push, pull) = (
                way(Say::HoldPush, Hands::Push),
                way(Say::HoldPull, Hands::Pull),
            );
            (Some(rig), view! { {push} {pull} })
        }
        _ => (None, ().into_node()),
    };
    let face = rig.map(|rig| face(at, rig, needle));
    Some(view! {
        <div class="practice">
            {face}
            <p class="practice__met" role="status">{words}</p>
            <div class="keys-grid">{keys}</div>
        </div>
    })
}

/// The dial of the practice car, with the needle where it stands.
fn face(at: &StepContext, rig: Rig, needle: Needle) -> Node {
    let here = at.clone();
    (move || {
        let stands = needle.get().unwrap_or(rig.rests_at);
        let face = dial::Dial {
            divisions: rig.dial.divisions_per_turn(),
            value: Some(stands.count()),
            last: None,
            swept: None,
        };
        let title = text::dial_alt(here.lang, &here.fmt.number(stands.count(), 0));
        drawn(&face.drawing(), &title, "round__dial")
    })
    .into_node()
}

/// A hub that is spun is heard as well; the words say the same.
const fn sound_of(met: Met) -> Option<Sound> {
    match met {
        Met::Found(Choice::SmoothQuiet) => Some(Sound::Smooth),
        Met::Found(Choice::Rough | Choice::Noisy | Choice::RoughNoisy) => Some(Sound::Grinds),
        _ => None,
    }
}

/// A key that is held by finger or by Enter or Space; while it is, `stands` says where the needle
/// goes after so many swings.
fn held(
    label: &'static str,
    needle: Needle,
    stands: impl Fn(u8) -> Divisions + Copy + 'static,
) -> Node {
    let timer = StoredValue::new_local(None::<Timer>);
    let ticks = StoredValue::new(0_u8);
    let begin = move || {
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
            // A needle that stands is not drawn again.
            if from != next {
                needle.set(next);
            }
        };
        tick();
        timer.set_value(Some(clock::every(TICK_MS, tick)));
    };
    let end = move || {
        let _ = timer.try_update_value(Option::take);
        let _ = needle.try_set(None);
    };
    pressed("key practice__hold", label, begin, end)
}
