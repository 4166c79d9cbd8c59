//! A key that asks to be held, so that nobody presses it by reading.

use leptos::prelude::*;

use crate::platform::clock::{self, Timer};

/// How long it is held.
const HOLD_MS: i32 = 1000;

/// A key that does its work only after it was held for a second; `hint` says so.
///
/// A keyboard or a switch presses it as it presses any other key: it does not press by accident.
pub fn hold_key(label: &'static str, hint: &'static str, act: impl Fn() + 'static) -> AnyView {
    let timer = StoredValue::new_local(None::<Timer>);
    let act = StoredValue::new_local(act);
    let holding = RwSignal::new(false);
    let begin = move |_| {
        holding.set(true);
        let done = move || {
            holding.try_set(false);
            act.try_with_value(|act| act());
        };
        timer.set_value(Some(clock::after(HOLD_MS, done)));
    };
    let end = move || {
        holding.try_set(false);
        timer.try_set_value(None);
    };
    // A click without a pointer has no detail: a keyboard, or a reader of screens.
    let click = move |event: leptos::ev::MouseEvent| {
        if event.detail() == 0 {
            act.with_value(|act| act());
        }
    };
    view! {
        <button
            type="button"
            class="key key--hold"
            title=hint
            data-holding=move || holding.get().to_string()
            on:pointerdown=begin
            on:pointerup=move |_| end()
            on:pointerleave=move |_| end()
            on:pointercancel=move |_| end()
            on:contextmenu=move |event| event.prevent_default()
            on:click=click
        >
            {label}
        </button>
    }
    .into_any()
}
