//! A number off the car: the odometer, a hub's temperature.

use crate::job::entry::{Quantity, Reply};
use crate::text::Say;
use crate::trade::wheel_end::Measured;
use crate::ui::at::StepContext;
use crate::ui::parts::frame::frame;
use crate::ui::parts::pad::pad;
use crate::ui::view::prelude::*;
use crate::units::{DistanceUnit, System, TemperatureUnit, Typed, Unit};

/// The number of a step.
pub fn number(at: &StepContext, measured: Measured) -> Node {
    let metric = at.fmt.system == System::Metric;
    match measured {
        Measured::Odometer => {
            let unit = if metric {
                DistanceUnit::Kilometre
            } else {
                DistanceUnit::Mile
            };
            typed(at, unit, Quantity::Distance)
        }
        Measured::HubHeat => {
            let unit = if metric {
                TemperatureUnit::Celsius
            } else {
                TemperatureUnit::Fahrenheit
            };
            typed(at, unit, Quantity::Temperature)
        }
    }
}

fn typed<U>(at: &StepContext, first: U, wrap: fn(Typed<U>) -> Quantity) -> Node
where
    U: Unit + Send + Sync + 'static,
{
    let text = RwSignal::new(String::new());
    let unit = RwSignal::new(first);
    let other = move |_| unit.update(|unit| *unit = unit.twin());
    let change = at.say(Say::PadUnit);
    let name = move || format!("{change}: {}", unit.get().symbol());
    let unit_key = view! {
        <button type="button" class="pad__unit" aria-label=name on:click=other>
            {move || unit.get().symbol()}
        </button>
    };
    let here = at.clone();
    let keep = move || {
        if let Ok(typed) = Typed::parse(&text.get_untracked(), unit.get_untracked()) {
            here.answer(Reply::Number(wrap(typed)));
        }
    };
    frame(
        at,
        pad(at, text, unit_key, false),
        view! {
            <button
                type="button"
                class="key key--primary"
                prop:disabled={move || text.with(String::is_empty)}
                on:click={move |_| keep()}
            >
                {at.text().primary}
            </button>
        },
    )
}
