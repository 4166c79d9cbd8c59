//! A car that is left in the middle of the work, and whoever goes on with it: how the car stands,
//! corner by corner, before any step.

use std::sync::Arc;

use crate::drawing::corner::small;
use crate::job::car_state::{CarState, CornerState, car_state};
use crate::job::entry::{Event, Interrupted, Interruption, Reply};
use crate::job::interruption::{interruption, last_at_the_car, take_over};
use crate::report::{last_line, loose_lines, wrong_lines};
use crate::text::{self, TakeOver};
use crate::trade::answer::Answer;
use crate::trade::vehicle::Corner;
use crate::ui::at::StepContext;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::Field;
use crate::ui::parts::frame::frame;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::picks::picks;
use crate::ui::parts::picture::{drawn, place};
use crate::ui::route::Route;
use crate::ui::state::{App, Open};
use crate::ui::view::prelude::*;

/// How the car stands, and the question whether it does.
pub fn summary(app: App, open: Arc<Open>) -> Node {
    app.lock();
    let at = StepContext::new(app, open, take_over());
    let said = |answer| {
        let here = at.clone();
        move || here.answer(Reply::Said(answer))
    };
    let words = at.text();
    let keys = view! {
        {key(Look::Primary, words.primary, said(Answer::Yes))}
        {key(Look::Plain, words.no, said(Answer::No))}
    };
    let last = interruption(at.sheet()).or_else(|| last_at_the_car(at.sheet()));
    let last = last.map(|last| last_line(at.lang, last));
    let body = view! {
        {last.map(|last| view! { <p class="takeover__last">{last}</p> })}
        {state(&at)}
    };
    frame(&at, body, keys)
}

/// What is off, loose and answered no: each corner by itself, and the car as a whole.
fn state(at: &StepContext) -> Node {
    let open = &at.open;
    let car = car_state(&open.sheet, &open.plan, &open.steps);
    let corners = car.corners.iter().map(|it| corner_list(at, it));
    let corners = corners.collect_view();
    let whole = wrong_lines(at.lang, &open.plan, &car.wrong);
    let whole = (!whole.is_empty()).then(|| {
        view! {
            <h2 class="corner-title">{text::take_over(at.lang, TakeOver::WholeCar)}</h2>
            {list(whole)}
        }
    });
    view! { {corners} {whole} }
}

fn corner_list(at: &StepContext, corner: &CornerState<'_>) -> Node {
    let lang = at.lang;
    let loose = loose_lines(lang, at.sheet(), &corner.loose);
    let nothing = loose.is_empty() && !at.sheet().is_incomplete();
    let nothing = nothing.then(|| {
        view! { <p>{text::take_over(lang, TakeOver::NothingLoose)}</p> }
    });
    let wrong = wrong_lines(lang, &at.open.plan, &corner.wrong);
    let wrong = (!wrong.is_empty()).then(|| {
        view! {
            <p>{text::take_over(lang, TakeOver::AnsweredNo)}</p>
            {list(wrong)}
        }
    });
    view! {
        {corner_title(lang, corner.corner, Some(text::standing(lang, corner.standing)))}
        {nothing}
        {list(loose)}
        {wrong}
    }
}

/// A corner as a heading: drawn and said, with how it stands.
pub fn corner_title(lang: text::Lang, corner: Corner, standing: Option<&'static str>) -> Node {
    let title = text::corner_title(lang, corner);
    view! {
        <h2 class="corner-title">
            {drawn(&small(&[place(corner)]), "", "corner-title__drawing")}
            <span>{title}</span>
            {" "}
            {standing.map(|standing| view! { <small>{standing}</small> })}
        </h2>
    }
}

fn list(lines: Vec<String>) -> Node {
    let lines = lines.into_iter().map(|line| view! { <li>{line}</li> });
    view! { <ul class="takeover__list">{lines.collect_view()}</ul> }
}

/// Leaving the car as it stands: why, and who goes on with it.
pub fn leave(at: &StepContext) -> Node {
    let (lang, drafts) = (at.lang, Drafts::of(at));
    let say = move |word| text::take_over(lang, word);
    let why = drafts.word("leave-why", Interruption::Call);
    let to = drafts.text("leave-to", "");
    let reasons = Interruption::ALL.iter().copied();
    let reasons = reasons.map(|it| (it, text::interruption(lang, it).to_owned()));
    let reasons = picks(
        say(TakeOver::Why),
        reasons.collect(),
        why,
        move |it: Interruption| {
            drafts.set("leave-why", it.code());
        },
    );
    let safe = text::leaving(lang, how_it_stands(at).leaving());
    let (app, here) = (at.app, at.clone());
    let record = move || {
        let left = Interrupted {
            step: here.planned.key,
            why: why.get_untracked(),
            to: to.get_untracked().trim().to_owned(),
        };
        drafts.drop_with_tap();
        let on = app.going_on(Route::Job(here.open.log.0.clone()));
        app.append_then(vec![Event::Interrupted(left)], on);
    };
    view! {
        <section class="panel">
            <h2>{say(TakeOver::Leave)}</h2>
            <p class="step__caution">{safe}</p>
            {reasons}
            {Field::words("leave-to", to).show(say(TakeOver::To), "", drafts, || {})}
            <div class="panel__keys">
                {key(Look::Primary, say(TakeOver::Record), record)}
            </div>
        </section>
    }
}

/// How the car stands as the record has it.
pub fn how_it_stands(at: &StepContext) -> CarState<'_> {
    car_state(&at.open.sheet, &at.open.plan, &at.open.steps)
}
