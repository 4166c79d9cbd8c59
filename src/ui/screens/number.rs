//! A number off the car: the odometer, a hub's temperature.

use crate::ui::react::spawn_local;

use crate::exchange::find::earlier_visit;
use crate::job::ending::{odometer, went_back};
use crate::job::entry::{Quantity, Reply, VehicleField};
use crate::text::{self, Say};
use crate::trade::vehicle::odometer::Odometer;
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
            typed(at, unit, Quantity::Distance, lower(at))
        }
        Measured::HubHeat => {
            let unit = if metric {
                TemperatureUnit::Celsius
            } else {
                TemperatureUnit::Fahrenheit
            };
            typed(at, unit, Quantity::Temperature, |_| None)
        }
    }
}

/// What is said of an odometer that reads less than at the last visit that this phone knows of.
fn lower(at: &StepContext) -> impl Fn(&Quantity) -> Option<String> + Send + 'static {
    let last = RwSignal::new(None::<Odometer>);
    let (app, here) = (at.app, at.clone());
    spawn_local(async move {
        let vin = here.sheet().vehicle(VehicleField::Vin).unwrap_or_default();
        let log = app.jobs.with_untracked(|jobs| {
            earlier_visit(jobs, vin, &here.open.log.0).map(|job| job.log.clone())
        });
        if let Some(log) = log {
            let _ = last.try_set(odometer(&app.read_log(&log).await));
        }
    });
    let (lang, fmt) = (at.lang, at.fmt);
    move |now| {
        let (before, Quantity::Distance(now)) = (last.get()?, now) else {
            return None;
        };
        let now = Odometer { read: now.clone() };
        went_back(&now, &before)
            .then(|| text::odometer_lower(lang, &fmt.typed(&before.read).line()))
    }
}

fn typed<U>(
    at: &StepContext,
    first: U,
    wrap: fn(Typed<U>) -> Quantity,
    doubt: impl Fn(&Quantity) -> Option<String> + Send + 'static,
) -> Node
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
    let doubted = move || {
        let typed = Typed::parse(&text.get(), unit.get()).ok()?;
        let said = doubt(&wrap(typed))?;
        Some(view! { <p class="slip" role="alert">{said}</p> })
    };
    frame(
        at,
        view! { {pad(at, text, unit_key, false)} {doubted} },
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
