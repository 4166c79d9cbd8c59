//! Choosing a practice car, and the truth about it at the end.

use crate::job::practice::{Finding, Hidden, Outcome, is_practice, truth};
use crate::platform::chance;
use crate::report::scale;
use crate::text::{self, Say};
use crate::trade::practice::{Code, Named};
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::strip::banners;
use crate::ui::route::Route;
use crate::ui::state::{App, Open};
use crate::ui::view::prelude::*;
use crate::units::Format;

/// The named cars with what their customers say, and one that nobody has seen before.
pub fn choose(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let row = |label, said, start: Box<dyn Fn()>| {
        view! {
            <li>
                {key(Look::Plain, label, start)}
                <q>{said}</q>
            </li>
        }
    };
    let named = Named::ALL.iter().map(|named| {
        let named = *named;
        row(
            text::practice_name(lang, Some(named)),
            text::practice_said(lang, Some(named)),
            Box::new(move || app.start_practice(Code::Named(named))),
        )
    });
    let another = row(
        text::say(lang, Say::AnotherCar),
        text::practice_said(lang, None),
        Box::new(move || {
            if let Ok(seed) = chance::random() {
                app.start_practice(Code::Seed(u64::from_be_bytes(seed)));
            }
        }),
    );
    view! {
        <main class="desk">
            <h1>{text::say(lang, Say::ChoosePractice)}</h1>
            {banners(app)}
            <p>{text::say(lang, Say::PracticeSay)}</p>
            <ul class="practice__cars">{named.collect_view()} {another}</ul>
            {link(Look::Foot, text::say(lang, Say::Back), Route::New.to_hash())}
        </main>
    }
}

/// What the car of an ended practice job had, what was found and what was missed.
pub fn recorded(app: App) -> Node {
    let settings = app.settings.get_untracked();
    let (lang, fmt) = (settings.lang, settings.format());
    (move || {
        let open = app.open.get()?;
        if !is_recorded(&open) {
            return None;
        }
        let findings = truth(&open.sheet);
        let id = open.log.0.clone();
        let parts = Outcome::ALL.iter().filter_map(|outcome| {
            let of: Vec<&Finding> = findings.iter().filter(|(_, is)| is == outcome).collect();
            let rows = of.iter().map(|(hidden, _)| {
                let (truth, read) = plays(fmt, *hidden);
                let had = text::practice_had(lang, *hidden, &truth, read.as_deref());
                view! { <li>{had}</li> }
            });
            let rows = rows.collect_view();
            (!of.is_empty()).then(|| {
                view! {
                    <section class="practice__part" data-outcome={outcome.code()}>
                        <h2>{text::practice_outcome(lang, *outcome)}</h2>
                        <ul>{rows}</ul>
                    </section>
                }
            })
        });
        let parts = parts.collect_view();
        Some(view! {
            <main class="desk" aria-label={text::say(lang, Say::ShowTruth)}>
                <h1>{text::say(lang, Say::ShowTruth)}</h1>
                {banners(app)}
                <p>{text::say(lang, Say::Practice)}</p>
                {parts}
                {link(Look::Primary, text::say(lang, Say::ShopSheet), Route::Home.to_hash())}
                {link(Look::Plain, text::say(lang, Say::ShowReport), Route::Report(id).to_hash())}
            </main>
        })
    })
    .into_node()
}

/// The truth is told once the job has ended, and of practice alone.
fn is_recorded(open: &Open) -> bool {
    is_practice(&open.sheet) && open.sheet.ended().is_some()
}

/// The way to the truth, where there is one to be told.
pub fn way(open: &Open, look: Look, label: &'static str) -> Option<Node> {
    is_recorded(open).then(|| link(look, label, Route::Truth(open.log.0.clone()).to_hash()))
}

/// The true play and the play that was read with its ±, as they are shown.
fn plays(fmt: Format, hidden: Hidden) -> (String, Option<String>) {
    let Hidden::Play { truth, read } = hidden else {
        return (String::new(), None);
    };
    let shown = |play| scale::play(fmt, play).line();
    let read = read.map(|(mean, half)| format!("{} ± {}", shown(mean), shown(half)));
    (shown(truth), read)
}
