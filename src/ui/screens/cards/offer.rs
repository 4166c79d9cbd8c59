//! A card of the book, shown large with its age: looked up again today, not looked up again, or
//! another value. What another phone kept beside it, and what does not fit this vehicle, is said.

use crate::job::book::{age, doubts_in, resourced, source_of};
use crate::report::cards::{card_value, source_line, torque_conditions};
use crate::text::{self, BookWord, Desk, Lang, Say};
use crate::trade::day::day_of;
use crate::trade::fastening::{CardBody, Doubt, SpecCard};
use crate::ui::at::StepContext;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::today;
use crate::ui::screens::cards::form::{CardForm, doubts_said, reasons};
use crate::ui::screens::cards::{Mode, keep_card};
use crate::ui::view::prelude::*;
use crate::units::Shown;

/// The card.
pub fn body(at: &StepContext, offered: RwSignal<Vec<SpecCard>>) -> Node {
    let cards = offered.get();
    let Some((card, others)) = cards.split_first() else {
        return ().into_node();
    };
    let (value, twin) = figures(at, card);
    let from = source_of(card).map(|source| {
        let date = source.looked_up.to_string();
        text::from_page(at.lang, &source.document, &source.page, &date)
    });
    let rest = rest(at, card).join(" · ");
    let stages = (card.stages().len() > 1).then(|| card_value(at.lang, at.fmt, card));
    let said = doubts_said(at, card).into_iter();
    let said = said.chain(others.iter().map(|other| told_beside(at, other)));
    let said = said.map(|said| view! { <p class="slip" role="alert">{said}</p> });
    view! {
        <section class="offer">
            <p class="hint">{at.say(Say::KnownFamily)}</p>
            <p class="offer__value">
                <b>{value.number}</b>
                <span>{value.unit}</span>
            </p>
            <p class="offer__twin">{text::also_value(at.lang, &twin)}</p>
            {stages.map(|stages| view! { <p>{stages}</p> })}
            {said.collect_view()}
            <p class="hint">{from} {" · "} <b>{aged(at.lang, card)}</b></p>
            <p>{rest}</p>
            {at.below.end()}
        </section>
    }
}

/// How long ago a card was looked up.
pub fn aged(lang: Lang, card: &SpecCard) -> Option<String> {
    let days = age(card, day_of(&today())?)?;
    Some(text::days_ago(lang, days))
}

/// What another phone kept, in a sentence.
fn told_beside(at: &StepContext, other: &SpecCard) -> String {
    let source = source_of(other).map(|source| source_line(at.lang, source));
    let value = card_value(at.lang, at.fmt, other);
    text::other_phone_says(at.lang, &value, &source.unwrap_or_default())
}

/// The value in its own unit, and in the other one.
fn figures(at: &StepContext, card: &SpecCard) -> (Shown, String) {
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
fn rest(at: &StepContext, card: &SpecCard) -> Vec<String> {
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

/// The same card, looked up again today by whoever holds the phone.
pub fn looked_up_today(card: &SpecCard, by: &str) -> Option<SpecCard> {
    let day = day_of(&today())?;
    Some(resourced(card, |source| {
        source.looked_up = day;
        if !by.is_empty() {
            by.clone_into(&mut source.who);
        }
    }))
}

/// The answers; a card that does not fit this vehicle is looked up and kept with its reason.
pub fn keys(
    at: &StepContext,
    offered: RwSignal<Vec<SpecCard>>,
    mode: RwSignal<Mode>,
    form: CardForm,
) -> Node {
    let cards = offered.get();
    let Some(card) = cards.first() else {
        return ().into_node();
    };
    let by = at.app.settings.with_untracked(|it| it.by.clone());
    let fresh = looked_up_today(card, &by).unwrap_or_else(|| card.clone());
    let settled = source_of(card).is_some_and(|source| source.kept_because.is_some())
        && doubts_in(at.sheet(), card).iter().all(is_of_the_figure);
    let answers = if doubts_in(at.sheet(), card).is_empty() || settled {
        usual(at, card, fresh, form)
    } else {
        reasons(at, form, &fresh)
    };
    let other = (cards.len() > 1).then(|| {
        let label = text::book(at.lang, BookWord::OtherCard);
        key(Look::Plain, label, move || {
            offered.update(|cards| cards.rotate_left(1));
        })
    });
    view! {
        {answers} {other}
        {key(Look::Plain, text::desk(at.lang, Desk::OtherValue), move || mode.set(Mode::Fields))}
    }
}

/// A doubted figure was settled with its reason when it came into the book.
const fn is_of_the_figure(doubt: &Doubt) -> bool {
    !matches!(doubt, Doubt::Count { .. })
}

fn usual(at: &StepContext, card: &SpecCard, fresh: SpecCard, form: CardForm) -> Node {
    let (again, as_it_was, card) = (at.clone(), at.clone(), card.clone());
    view! {
        {key(Look::Primary, at.say(Say::LookedUpAgain), move || {
            keep_card(&again, form, fresh.clone(), true);
        })}
        {key(Look::Plain, at.say(Say::NotLookedUpSince), move || {
            keep_card(&as_it_was, form, card.clone(), false);
        })}
    }
}
