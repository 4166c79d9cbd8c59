//! A number: the pad for gloves, the text as typed. Nothing is computed here.

use crate::text::Say;
use crate::ui::at::StepContext;
use crate::ui::view::prelude::*;
use crate::units::DecimalMark;

/// A number pad of three columns under the number it types.
///
/// The typed text always has a point; it is shown with the chosen mark.
pub fn pad(
    at: &StepContext,
    text: RwSignal<String>,
    unit: impl IntoNode + 'static,
    decimal: bool,
) -> Node {
    let fmt = at.fmt;
    let digits = (1..=9).map(|digit| digit_key(text, digit)).collect_view();
    let mark = match fmt.decimal {
        DecimalMark::Comma => ",",
        DecimalMark::Dot => ".",
    };
    let mark_key = decimal.then(|| {
        let press = move |_| {
            text.update(|text| {
                if !text.contains('.') {
                    text.push('.');
                }
            });
        };
        view! {
            <button type="button" class="pad__key" aria-label={at.say(Say::PadMark)} on:click=press>
                {mark}
            </button>
        }
    });
    let delete = move |_| {
        text.update(|text| {
            text.pop();
        });
    };
    // Where no decimal mark is needed, the unit stands in its place on the pad.
    let (beside, below) = match mark_key {
        Some(mark_key) => (Some(unit.into_node()), mark_key.into_node()),
        None => (None, unit.into_node()),
    };
    view! {
        <div class="pad__number">
            <output>{move || shown(&fmt.marked(&text.get()))}</output>
            {beside}
        </div>
        <div class="pad">
            {digits}
            {below}
            {digit_key(text, 0)}
            <button type="button" class="pad__key" aria-label={at.say(Say::PadDelete)} on:click=delete>
                {"⌫"}
            </button>
        </div>
    }
}

fn shown(text: &str) -> String {
    if text.is_empty() {
        "–".to_owned()
    } else {
        text.to_owned()
    }
}

fn digit_key(text: RwSignal<String>, digit: u8) -> Node {
    let press = move |_| text.update(|text| text.push_str(&digit.to_string()));
    view! {
        <button type="button" class="pad__key" on:click=press>
            {digit.to_string()}
        </button>
    }
}
