//! A spec of the book, shown large with its age: looked up again today, not looked up again, or
//! another value. What another phone kept beside it, and what does not fit this vehicle, is said.

use crate::job::book::{age, doubts_in, resourced, source_of};
use crate::report::specs::{source_line, spec_value, torque_conditions};
use crate::text::{self, BookWord, Desk, Lang, Say};
use crate::trade::day::day_of;
use crate::trade::fastening::{Doubt, Spec, SpecBody};
use crate::ui::at::StepContext;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::today;
use crate::ui::screens::specs::form::{SpecForm, doubts_said, reasons};
use crate::ui::screens::specs::{Mode, save_spec};
use crate::ui::view::prelude::*;
use crate::units::Shown;

/// The spec.
pub fn body(at: &StepContext, offered: RwSignal<Vec<Spec>>) -> Node {
    let specs = offered.get();
    let Some((spec, others)) = specs.split_first() else {
        return ().into_node();
    };
    let (value, twin) = figures(at, spec);
    let from = source_of(spec).map(|source| {
        let date = source.looked_up.to_string();
        text::from_page(at.lang, &source.document, &source.page, &date)
    });
    let rest = rest(at, spec).join(" · ");
    let stages = (spec.stages().len() > 1).then(|| spec_value(at.lang, at.fmt, spec));
    let said = doubts_said(at, spec).into_iter();
    let said = said.chain(others.iter().map(|other| recorded_beside(at, other)));
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
            <p class="hint">{from} {" · "} <b>{aged(at.lang, spec)}</b></p>
            <p>{rest}</p>
            {at.below.end()}
        </section>
    }
}

/// How long ago a spec was looked up.
pub fn aged(lang: Lang, spec: &Spec) -> Option<String> {
    let days = age(spec, day_of(&today())?)?;
    Some(text::days_ago(lang, days))
}

/// What another phone kept, in a sentence.
fn recorded_beside(at: &StepContext, other: &Spec) -> String {
    let source = source_of(other).map(|source| source_line(at.lang, source));
    let value = spec_value(at.lang, at.fmt, other);
    text::other_phone_says(at.lang, &value, &source.unwrap_or_default())
}

/// The value in its own unit, and in the other one.
fn figures(at: &StepContext, spec: &Spec) -> (Shown, String) {
    if let SpecBody::Play { most, .. } = &spec.body {
        return (at.fmt.typed(most), at.fmt.typed_twin(most).line());
    }
    match spec.final_torque() {
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
fn rest(at: &StepContext, spec: &Spec) -> Vec<String> {
    match &spec.body {
        SpecBody::Torque(body) => {
            let position = body.position.map(|it| text::nut_position(at.lang, it));
            let position = position.map(str::to_owned);
            let conditions = torque_conditions(at.lang, spec.item, body);
            position.into_iter().chain(conditions).collect()
        }
        SpecBody::Play { way, .. } => {
            let by_hand = way.force.is_none();
            let parts = [
                Some(text::method(at.lang, way.method)),
                Some(text::place(at.lang, way.place)),
                way.rig.map(|rig| text::rig(at.lang, rig)),
                by_hand.then(|| text::desk(at.lang, Desk::ByHand)),
            ];
            parts.into_iter().flatten().map(str::to_owned).collect()
        }
        SpecBody::NotFound { .. } => Vec::new(),
    }
}

/// The same spec, looked up again today by whoever holds the phone.
pub fn looked_up_today(spec: &Spec, by: &str) -> Option<Spec> {
    let day = day_of(&today())?;
    Some(resourced(spec, |source| {
        source.looked_up = day;
        if !by.is_empty() {
            by.clone_into(&mut source.who);
        }
    }))
}

/// The answers; a spec that does not fit this vehicle is looked up and kept with its reason.
pub fn keys(
    at: &StepContext,
    offered: RwSignal<Vec<Spec>>,
    mode: RwSignal<Mode>,
    form: SpecForm,
) -> Node {
    let specs = offered.get();
    let Some(spec) = specs.first() else {
        return ().into_node();
    };
    let by = at.app.settings.with_untracked(|it| it.by.clone());
    let fresh = looked_up_today(spec, &by).unwrap_or_else(|| spec.clone());
    let settled = source_of(spec).is_some_and(|source| source.override_reason.is_some())
        && doubts_in(at.sheet(), spec).iter().all(is_of_the_figure);
    let answers = if doubts_in(at.sheet(), spec).is_empty() || settled {
        usual(at, spec, fresh, form)
    } else {
        reasons(at, form, &fresh)
    };
    let other = (specs.len() > 1).then(|| {
        let label = text::book(at.lang, BookWord::OtherSpec);
        key(Look::Plain, label, move || {
            offered.update(|specs| specs.rotate_left(1));
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

fn usual(at: &StepContext, spec: &Spec, fresh: Spec, form: SpecForm) -> Node {
    let (again, as_it_was, spec) = (at.clone(), at.clone(), spec.clone());
    view! {
        {key(Look::Primary, at.say(Say::LookedUpAgain), move || {
            save_spec(&again, form, fresh.clone(), true);
        })}
        {key(Look::Plain, at.say(Say::NotLookedUpSince), move || {
            save_spec(&as_it_was, form, spec.clone(), false);
        })}
    }
}
