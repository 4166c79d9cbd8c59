//! One of a few: keys beside each other, the chosen one black.

use crate::ui::view::prelude::*;

/// A group of keys of which one is chosen; `changed` is told which.
pub fn picks<T: Copy + PartialEq + Send + Sync + 'static>(
    legend: impl Into<String>,
    options: Vec<(T, String)>,
    chosen: RwSignal<T>,
    changed: impl Fn(T) + Clone + 'static,
) -> Node {
    let legend: String = legend.into();
    let name = legend.clone();
    let keys = options.into_iter().map(|(value, label)| {
        let changed = changed.clone();
        toggle(
            label,
            move || chosen.get() == value,
            move || {
                chosen.set(value);
                changed(value);
            },
        )
    });
    let keys = keys.collect_view();
    view! {
        <div class="picks" role="group" aria-label=name>
            <p class="picks__legend">{legend}</p>
            <div class="picks__keys">{keys}</div>
        </div>
    }
}

/// A key that is on or off.
pub fn toggle(
    label: impl Into<String>,
    on: impl Fn() -> bool + Send + Sync + 'static,
    press: impl Fn() + 'static,
) -> Node {
    let label: String = label.into();
    view! {
        <button
            type="button"
            class="key key--choice"
            aria-pressed={move || if on() { "true" } else { "false" }}
            on:click={move |_| press()}
        >
            {label}
        </button>
    }
}
