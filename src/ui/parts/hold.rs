//! A key that is held for a second while its ring fills: for what cannot be brought back.

use crate::platform::clock::{self, Timer};
use crate::ui::parts::press::pressed;
use crate::ui::view::prelude::*;

/// How long the key is held.
const HOLD_MS: i32 = 1000;

/// A key that does its work only after it was held, by finger or by Enter or Space.
pub fn hold(label: impl Into<String>, hint: &'static str, then: impl Fn() + 'static) -> Node {
    let label: String = label.into();
    let timer = StoredValue::new_local(None::<Timer>);
    let then = StoredValue::new_local(then);
    let begin = move || {
        timer.set_value(Some(clock::after(HOLD_MS, move || {
            // The key may have gone away with its screen while it was held.
            let _ = then.try_with_value(|then| then());
        })));
    };
    let end = move || {
        let _ = timer.try_update_value(|timer| timer.take());
    };
    let inside = view! {
        <svg class="hold-key__ring" viewBox="0 0 36 36" aria-hidden="true">
            <circle class="hold-key__track" cx="18" cy="18" r="15" pathLength="100"></circle>
            <circle class="hold-key__fill" cx="18" cy="18" r="15" pathLength="100"></circle>
        </svg>
        <span>{label}</span>
        <small>{hint}</small>
    };
    pressed("key key--grave hold-key", inside, begin, end)
}
