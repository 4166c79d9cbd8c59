//! The keys that bring a needle to where it stands, and the unit of what is read.

use crate::job::round::{halved, stepped};
use crate::trade::play::Dial;
use crate::ui::view::prelude::*;
use crate::units::{Format, LengthUnit, Shown, Unit};

/// The unit of the number: thousandths where the dial has them, else its own division.
pub fn unit(dial: &Dial, fmt: Format) -> String {
    let graduation = dial.graduation();
    if graduation == Dial::THOU.graduation() {
        return LengthUnit::Thou.symbol().to_owned();
    }
    let one: Shown = if graduation == Dial::HALF_THOU.graduation() {
        fmt.length_in(graduation, LengthUnit::Thou, 1)
    } else {
        let fine = graduation < Dial::HUNDREDTH_MM.graduation();
        fmt.length_in(graduation, LengthUnit::Millimetre, if fine { 3 } else { 2 })
    };
    format!("× {}", one.line())
}

/// A key that moves the needle by so many half divisions from where it stands.
pub fn needle_key(
    from: impl Fn() -> String + 'static,
    dial: Dial,
    label: &'static str,
    name: &str,
    halves: i64,
    put: impl Fn(String) + 'static,
) -> Node {
    // The name holds what is seen, so that it can also be spoken to the phone.
    let name = format!("{name}, {label}");
    let press = move |_| put(stepped(&from(), halves, &dial));
    view! {
        <button type="button" class="key round__step" aria-label=name on:click=press>
            {label}
        </button>
    }
}

/// The half division, put on and taken off.
pub fn half(from: impl Fn() -> String + 'static, put: impl Fn(String) + 'static) -> Node {
    let press = move |_| put(halved(&from()));
    view! {
        <button type="button" class="key round__step" on:click=press>
            {"½"}
        </button>
    }
}
