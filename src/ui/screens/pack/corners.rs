//! The corners: tapped on the drawing of the vehicle itself, in the order of work.

use crate::drawing::corner::large;
use crate::job::entry::Event;
use crate::text::{self, Lang, Say, TakeOver};
use crate::trade::vehicle::Corner;
use crate::ui::at::StepContext;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::frame::frame;
use crate::ui::parts::picture::{drawn, place};
use crate::ui::screens::pack::keep;
use crate::ui::view::prelude::*;

/// The vehicle with a key over each wheel.
pub fn corners(at: &StepContext) -> Node {
    let chosen = RwSignal::new(at.sheet().corners().to_vec());
    let (here, drafts) = (at.clone(), Drafts::of(at));
    let keep_them = move |_| {
        let corners = chosen.get_untracked();
        if !corners.is_empty() {
            keep(&here, drafts, vec![Event::Corners(corners)], || {});
        }
    };
    let title = at.say(Say::AriaCorner);
    let drawing = move || {
        let filled: Vec<_> = chosen.get().into_iter().map(place).collect();
        drawn(&large(&filled), title, "corners__drawing")
    };
    let keys = Corner::ALL
        .iter()
        .map(|corner| corner_key(at.lang, chosen, *corner));
    let keys = keys.collect_view();
    frame(
        at,
        view! {
            <p>{text::take_over(at.lang, TakeOver::OneAxle)}</p>
            <div class="corners">
                {drawing} <div class="corners__keys" role="group" aria-label=title>{keys}</div>
            </div>
        },
        view! {
            <button
                type="button"
                class="key key--primary"
                prop:disabled={move || chosen.with(Vec::is_empty)}
                on:click=keep_them
            >
                {at.text().primary}
            </button>
        },
    )
}

fn corner_key(lang: Lang, chosen: RwSignal<Vec<Corner>>, corner: Corner) -> Node {
    let place = move || chosen.with(|all| all.iter().position(|one| *one == corner));
    let turn = move |_| {
        chosen.update(|all| match all.iter().position(|one| *one == corner) {
            Some(at) => {
                all.remove(at);
            }
            None => all.push(corner),
        });
    };
    // Specs are looked up for one axle: what holds in front is never taken for the rear.
    let of_other_axle = move || {
        let axle = corner.axle();
        chosen.with(|all| all.first().is_some_and(|one| one.axle() != axle))
    };
    // With one corner there is no order to tell.
    let order = move || {
        let nth = place().filter(|_| chosen.with(Vec::len) > 1)?;
        Some(text::order_of_work(lang, nth.saturating_add(1)))
    };
    let class = match corner {
        Corner::FrontLeft => "corners__key corners__key--front-left",
        Corner::FrontRight => "corners__key corners__key--front-right",
        Corner::RearLeft => "corners__key corners__key--rear-left",
        Corner::RearRight => "corners__key corners__key--rear-right",
    };
    view! {
        <button
            type="button"
            class=class
            prop:disabled=of_other_axle
            aria-pressed={move || if place().is_some() { "true" } else { "false" }}
            on:click=turn
        >
            <b>{order}</b>
            <span>{text::corner_title(lang, corner)}</span>
        </button>
    }
}
