//! A key that is something while it is held, by finger or by Enter or Space.

use crate::ui::view::prelude::*;

use web_sys::KeyboardEvent;

/// A key that calls `begin` once when it is pressed and `end` when it is let go, however that
/// happens.
pub fn pressed(
    class: &'static str,
    inside: impl IntoNode + 'static,
    begin: impl Fn() + 'static,
    end: impl Fn() + 'static,
) -> Node {
    let holding = RwSignal::new(false);
    let (begin, end) = (StoredValue::new_local(begin), StoredValue::new_local(end));
    let press = move || {
        if !holding.get_untracked() {
            holding.set(true);
            begin.with_value(|begin| begin());
        }
    };
    // The key may have gone away with its screen while it was held.
    let release = move || {
        if holding.try_get_untracked() == Some(true) {
            let _ = holding.try_set(false);
            let _ = end.try_with_value(|end| end());
        }
    };
    let is_press = |event: &KeyboardEvent| matches!(event.key().as_str(), "Enter" | " ");
    view! {
        <button
            type="button"
            class=class
            data-holding={move || if holding.get() { "yes" } else { "no" }}
            on:pointerdown={move |_| press()}
            on:pointerup={move |_| release()}
            on:pointerleave={move |_| release()}
            on:pointercancel={move |_| release()}
            on:blur={move |_| release()}
            on:contextmenu={move |event| event.prevent_default()}
            on:keydown={move |event| {
                if is_press(&event) {
                    event.prevent_default();
                    press();
                }
            }}
            on:keyup={move |_| release()}
        >
            {inside}
        </button>
    }
}
