//! The booking message: pasted whole, read while it stands there.

use crate::job::entry::{Event, PersonField, Reply, VehicleField};
use crate::job::facts::booked;
use crate::text::{self, Desk, Lang, Say};
use crate::trade::vehicle::{Booking, read_booking};
use crate::ui::at::StepContext;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::focus;
use crate::ui::parts::frame::frame;
use crate::ui::parts::key::{Look, key};
use crate::ui::screens::pack::keep;
use crate::ui::view::prelude::*;

const MESSAGE: &str = "message";

/// The message, and what is found in it.
pub fn booking(at: &StepContext) -> Node {
    let drafts = Drafts::of(at);
    let message = drafts.text(MESSAGE, "");
    let found = Memo::new(move |_| message.with(|message| read_booking(message)));
    let (here, lang) = (at.clone(), at.lang);
    let keep_it = move || {
        let mut whats = booked(&found.get_untracked());
        whats.push(Event::Answered(here.planned.key, Reply::Done));
        keep(&here, drafts, whats, || {});
    };
    let typed = move |event| {
        let now = event_target_value(&event);
        drafts.set(MESSAGE, &now);
        message.set(now);
    };
    focus(MESSAGE);
    frame(
        at,
        view! {
            <label class="field">
                <span>{at.say(Say::BookingHint)}</span>
                <textarea
                    id=MESSAGE
                    rows="5"
                    autocomplete="off"
                    prop:value={move || message.get()}
                    on:input=typed
                ></textarea>
            </label>
            <section class="found" aria-live="polite">
                <h2>{at.say(Say::BookingFound)}</h2>
                {move || found.with(|found| shown(found, lang))}
            </section>
        },
        key(Look::Primary, at.text().primary, keep_it),
    )
}

fn shown(found: &Booking, lang: Lang) -> Node {
    let person = |field, found: &Option<crate::trade::vehicle::Found<String>>| {
        let label = text::person_field(lang, field);
        found
            .as_ref()
            .map(|found| row(label, found.value.clone(), None))
    };
    let vin = found.vin.as_ref().map(|found| {
        let label = text::vehicle_field(lang, VehicleField::Vin);
        let check = text::vin_check(lang, found.value.check());
        row(label, found.value.as_str().to_owned(), Some(check))
    });
    let said = (!found.complaint.is_empty()).then(|| {
        let label = text::say(lang, Say::Complaint);
        row(label, found.complaint.clone(), None)
    });
    let rows: Vec<Node> = [
        vin,
        person(PersonField::Plate, &found.plate),
        person(PersonField::Name, &found.name),
        person(PersonField::Phone, &found.phone),
        person(PersonField::Address, &found.address),
        said,
    ]
    .into_iter()
    .flatten()
    .collect();
    if rows.is_empty() {
        return view! { <p>{text::desk(lang, Desk::BookingNothing)}</p> };
    }
    view! { <dl class="found__rows">{rows}</dl> }
}

fn row(label: &'static str, value: String, remark: Option<String>) -> Node {
    view! {
        <div class="found__row">
            <dt>{label}</dt>
            <dd>
                <b>{value}</b>
                {remark.map(|remark| view! { <span>{remark}</span> })}
            </dd>
        </div>
    }
}
