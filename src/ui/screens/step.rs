//! One step: the next one, or the one that was asked for; its form picks the screen.

use std::sync::Arc;

use crate::job::interruption::{TAKE_OVER, is_due};
use crate::job::mishap::in_the_way_of;
use crate::job::photo::owed;
use crate::job::{Held, combined_steps, held};
use crate::platform::page;
use crate::text::{self, Lang, Say};
use crate::trade::wheel_end::{Form, PlannedStep, StepKey, is_work};
use crate::ui::at::StepContext;
use crate::ui::parts::frame::instead;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::strip::banners;
use crate::ui::parts::today;
use crate::ui::route::Route;
use crate::ui::screens::{
    agree, answer, closing, decide, dial_setup, mishap, number, overview, pack, photo,
    report_screen, round, sign, signs, specs, swing, takeover, turn,
};
use crate::ui::state::{App, Open, Shut};
use crate::ui::view::prelude::*;

/// The step that comes next.
pub fn next(app: App) -> Node {
    (move || match app.open.get() {
        None => not_open(app),
        Some(open) if is_left_or_others(app, &open) => takeover::summary(app, open),
        Some(open) => match open.next().cloned() {
            Some(first) if page::is_low() => shown(app, open, Vec::new(), first),
            Some(first) => {
                let mut recorded: Vec<PlannedStep> =
                    combined_steps(&open.sheet, &open.steps, &first)
                        .into_iter()
                        .cloned()
                        .collect();
                let last = recorded.pop().unwrap_or(first);
                shown(app, open, recorded, last)
            }
            None => overview::wherever(app),
        },
    })
    .into_node()
}

/// Whether the state of the car is shown before its next step: it was left, or the last hands at it
/// were not those of this phone's technician.
fn is_left_or_others(app: App, open: &Open) -> bool {
    app.settings
        .with_untracked(|me| is_due(&open.sheet, &me.by))
}

/// One step by its key, wherever the job is.
pub fn one(app: App, key: StepKey) -> Node {
    (move || match app.open.get() {
        None => not_open(app),
        Some(open) if key == TAKE_OVER => takeover::summary(app, open),
        Some(open) => match open
            .steps
            .iter()
            .find(|planned| planned.key == key)
            .cloned()
        {
            Some(work) if is_work(&work) && is_left_or_others(app, &open) => {
                takeover::summary(app, open)
            }
            Some(planned) => shown(app, open, Vec::new(), planned),
            None => closing::end_from_anywhere(app, open, key),
        },
    })
    .into_node()
}

/// What a place of a job says that is not open, and why; it leads home.
pub fn not_open(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let say = move |say| text::say(lang, say);
    let why = move || match app.shut.get() {
        Shut::Reading => vec![],
        Shut::ReadingLong => vec![Say::BeingRead],
        Shut::NotHere => vec![Say::NotOnThisPhone],
        Shut::NotRead => vec![Say::JobNotRead, Say::LookAtTheCar],
        Shut::TooLong => vec![Say::JobTooLong, Say::LookAtTheCar],
    };
    view! {
        <main class="desk">
            {banners(app)}
            <div role="alert">
                {move || why().into_iter().map(|why| view! { <p>{say(why)}</p> }).collect_view()}
            </div>
            {move || (app.shut.get() == Shut::TooLong).then(|| too_long(app, lang))}
            {link(Look::Plain, say(Say::Back), Route::Home.to_hash())}
        </main>
    }
}

/// The ways on with a job that is too long: its file, or all of it at once.
fn too_long(app: App, lang: Lang) -> Option<Node> {
    let log = app.route.with(|route| route.job().map(str::to_owned))?;
    let stem = text::job_file_stem(lang, &today(), "");
    let again = log.clone();
    let export = move || report_screen::save(app, vec![log.clone()], format!("{stem}.json"));
    Some(view! {
        {key(Look::Plain, text::say(lang, Say::Export), export)}
        <p>{text::say(lang, Say::ReadTooLongSay)}</p>
        {key(Look::Plain, text::say(lang, Say::ReadTooLong), move || {
            app.read_long_job(again.clone());
        })}
    })
}

fn shown(app: App, open: Arc<Open>, rows: Vec<PlannedStep>, planned: PlannedStep) -> Node {
    app.lock();
    // What stands before the first of a screen stands before all of it.
    let held = held(&open.sheet, &open.steps, rows.first().unwrap_or(&planned));
    let at = StepContext::after(app, open, rows, planned);
    let wrong = in_the_way_of(at.sheet(), &at.screen_steps());
    // What stands on the same screen must not be told by a picture's key.
    let first = at.rows.steps.first().unwrap_or(&at.planned);
    let asks = wrong.map_or(first, |(planned, _)| planned);
    if let Some(key) = owed(at.sheet(), asks) {
        return photo::photo(&at.asked(key));
    }
    match held {
        Some(held) if !matches!(at.planned.form, Form::End) => hold_point(&at, held),
        _ => match wrong {
            Some((_, mishap)) => mishap::in_the_way(&at, mishap),
            None => form(&at),
        },
    }
}

fn form(at: &StepContext) -> Node {
    if at.asks_signs() {
        return signs::signs(at);
    }
    match &at.planned.form {
        Form::Booking => pack::booking(at),
        Form::Vehicle => pack::vehicle(at),
        Form::Corners => pack::corners(at),
        Form::Spec(item) => specs::spec(at, *item),
        Form::Price => pack::price(at),
        Form::Kit => pack::kit(at),
        Form::Ready => pack::ready(at),
        Form::Do => answer::act(at),
        Form::Ask => answer::ask(at),
        Form::Checks(checks) => answer::checks(at, checks),
        Form::Choice(picks) => answer::choice(at, picks),
        Form::Number(measured) => number::number(at, *measured),
        Form::Photo => photo::photo(at),
        Form::Swing => swing::swing(at),
        Form::DialSetup(set) => dial_setup::dial_setup(at, *set),
        Form::Round(set, nth) => round::round(at, *set, *nth),
        Form::Decide(nth) => decide::decide(at, *nth),
        Form::Consent => agree::consent(at),
        Form::Turn(group) => turn::turn(at, *group),
        Form::Result => decide::result(at),
        Form::Retorque => closing::retorque(at),
        Form::Sign => sign::sign(at),
        Form::Report => closing::report(at),
        Form::End => closing::end(at),
    }
}

/// A hold point that is not answered: what is missing, and the way to it.
fn hold_point(at: &StepContext, held: Held) -> Node {
    let (title, sentence) = text::hold_point(at.lang, held.point);
    let now = held.answer_at.zip(held.given);
    let sentence = now.map_or(sentence, |(question, given)| {
        text::follows(at.lang, question, given, at.open.plan.build())
    });
    let id = at.open.log.0.clone();
    let (route, label) = match held.answer_at {
        Some(key) => (Route::Step(id, key), Say::GoThere),
        None => (Route::Loose(id), Say::LooseList),
    };
    // What the step says must not be done now; it waits with it.
    instead(
        at,
        view! {
            <aside class="hold" role="alert">
                <h2>{title}</h2>
                <p>{sentence}</p>
            </aside>
        },
        link(Look::Primary, at.say(label), route.to_hash()),
    )
}
