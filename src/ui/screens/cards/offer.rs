//! A card of the book, shown large: looked up again today, not looked up again, or another value.

use leptos::prelude::*;

use crate::job::book::{resourced, source_of};
use crate::report::cards::{card_value, torque_conditions};
use crate::text::{self, Desk, Say};
use crate::trade::fastening::{CardBody, SpecCard};
use crate::ui::at::At;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::today;
use crate::ui::screens::cards::form::CardForm;
use crate::ui::screens::cards::{Mode, keep_card};
use crate::units::Shown;

/// The card.
pub fn body(at: &At, offered: RwSignal<Option<SpecCard>>) -> AnyView {
    let Some(card) = offered.get() else {
        return ().into_any();
    };
    let (value, twin) = figures(at, &card);
    let from = source_of(&card).map(|source| {
        let date = source.looked_up.to_string();
        text::from_page(at.lang, &source.document, &source.page, &date)
    });
    let rest = rest(at, &card).join(" · ");
    let stages = (card.stages().len() > 1).then(|| card_value(at.lang, at.fmt, &card));
    view! {
        <section class="offer">
            <p class="hint">{at.say(Say::KnownFamily)}</p>
            <p class="offer__value">
                <b>{value.number}</b>
                <span>{value.unit}</span>
            </p>
            <p class="offer__twin">{text::also_value(at.lang, &twin)}</p>
            {stages.map(|stages| view! { <p>{stages}</p> })}
            <p class="hint">{from}</p>
            <p>{rest}</p>
        </section>
    }
    .into_any()
}

/// The value in its own unit, and in the other one.
fn figures(at: &At, card: &SpecCard) -> (Shown, String) {
    if let CardBody::Play { most, .. } = &card.body {
        return (at.fmt.typed(most), at.fmt.typed_twin(most).line());
    }
    match card.final_torque() {
        Some(torque) => (at.fmt.typed(torque), at.fmt.typed_twin(torque).line()),
        None => (
            Shown {
                number: "–".to_owned(),
                unit: "",
            },
            String::new(),
        ),
    }
}

/// How the hub is held, the conditions, or the way it is measured.
fn rest(at: &At, card: &SpecCard) -> Vec<String> {
    match &card.body {
        CardBody::Torque(body) => {
            let position = body.position.map(|it| text::nut_position(at.lang, it));
            let position = position.map(str::to_owned);
            let conditions = torque_conditions(at.lang, card.item, body);
            position.into_iter().chain(conditions).collect()
        }
        CardBody::Play { way, .. } => {
            let by_hand = way.force.is_none();
            let parts = [
                Some(text::method(at.lang, way.method)),
                Some(text::place(at.lang, way.place)),
                way.rig.map(|rig| text::rig(at.lang, rig)),
                by_hand.then(|| text::desk(at.lang, Desk::ByHand)),
            ];
            parts.into_iter().flatten().map(str::to_owned).collect()
        }
        CardBody::NotFound { .. } => Vec::new(),
    }
}

/// The three answers.
pub fn keys(
    at: &At,
    offered: RwSignal<Option<SpecCard>>,
    mode: RwSignal<Mode>,
    form: CardForm,
) -> AnyView {
    let (again, as_it_was) = (at.clone(), at.clone());
    let by = at.app.settings.with_untracked(|it| it.by.clone());
    let looked_up = move || {
        let (Some(card), Ok(day)) = (offered.get_untracked(), today().parse()) else {
            return;
        };
        let card = resourced(&card, |source| {
            source.looked_up = day;
            if !by.is_empty() {
                source.who.clone_from(&by);
            }
        });
        keep_card(&again, form, card, true);
    };
    let not_looked_up = move || {
        if let Some(card) = offered.get_untracked() {
            keep_card(&as_it_was, form, card, false);
        }
    };
    view! {
        {key(Look::Primary, at.say(Say::LookedUpAgain), looked_up)}
        {key(Look::Plain, at.say(Say::NotLookedUpSince), not_looked_up)}
        {key(Look::Plain, text::desk(at.lang, Desk::OtherValue), move || mode.set(Mode::Fields))}
    }
    .into_any()
}
