//! Opening files of other phones: each file says what became of it, and a bad one changes nothing.

use leptos::prelude::*;
use leptos::task::spawn_local;
use web_sys::{File, FileList};

use crate::text::{self, Lang, Say};
use crate::ui::files::{Outcome, take};
use crate::ui::parts::key::{Look, link};
use crate::ui::parts::strip::banners;
use crate::ui::route::Route;
use crate::ui::screens::flow;
use crate::ui::state::App;

/// The screen that opens files.
pub fn import(app: App) -> AnyView {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let outcomes = RwSignal::new(Vec::<(String, Outcome)>::new());
    let input = NodeRef::<leptos::html::Input>::new();
    let chosen = move |_| {
        if let Some(files) = input.get_untracked().and_then(|input| input.files()) {
            take_each(app, outcomes, &files);
        }
    };
    view! {
        <main class="desk import">
            <h1>{text::say(lang, Say::Import)}</h1>
            {banners(app)}
            <label class="key key--primary key--file">
                {text::say(lang, Say::Import)}
                <input
                    node_ref=input
                    type="file"
                    accept=".json,application/json"
                    multiple
                    class="key__file"
                    on:change=chosen
                />
            </label>
            <ul class="import__outcomes" role="status">
                {move || outcomes.get().iter().map(|one| row(one, lang)).collect_view()}
            </ul>
            {move || outcomes.with(|all| flow::arrived(app, all))}
            {link(Look::Plain, text::say(lang, Say::Back), Route::Home.to_hash())}
        </main>
    }
    .into_any()
}

fn take_each(app: App, outcomes: RwSignal<Vec<(String, Outcome)>>, files: &FileList) {
    let files: Vec<File> = (0..files.length())
        .filter_map(|place| files.get(place))
        .collect();
    spawn_local(async move {
        for file in files {
            let outcome = take(&app.shelf(), &file).await;
            if let Outcome::Taken { jobs, shop, .. } = &outcome {
                app.reread(jobs).await;
                if let Some(shop) = shop {
                    app.offer_shop(shop);
                }
                app.read_flow().await;
            }
            outcomes.update(|all| all.push((file.name(), outcome)));
        }
        app.read_list_now().await;
        app.let_go_old().await;
    });
}

fn row((name, outcome): &(String, Outcome), lang: Lang) -> AnyView {
    let (sentences, jobs) = match outcome {
        Outcome::Refused(say) => (vec![text::say(lang, *say).to_owned()], Vec::new()),
        Outcome::Taken {
            jobs,
            entries,
            new,
            aside,
            edited,
            emptied,
            no_picture,
            ..
        } => {
            let mut sentences = vec![text::imported(lang, *entries, *new)];
            if *new == 0 {
                sentences.push(text::say(lang, Say::ImportNoNews).to_owned());
            }
            if *aside > 0 {
                sentences.push(text::set_aside(lang, *aside));
            }
            if *edited > 0 {
                sentences.push(text::say(lang, Say::ProblemEdited).to_owned());
            }
            if *emptied > 0 {
                sentences.push(text::emptied(lang, *emptied));
            }
            if !no_picture.is_empty() {
                let steps = no_picture.iter().map(|key| text::step(lang, key.step).name);
                let steps: Vec<&str> = steps.collect();
                let why = text::say(lang, Say::ImportPhotosMissing);
                sentences.push(format!("{why} ({})", steps.join(" · ")));
            }
            (sentences, jobs.clone())
        }
    };
    let links = jobs.into_iter().map(|job| {
        link(
            Look::Plain,
            text::say(lang, Say::OpenJob),
            Route::Where(job).to_hash(),
        )
    });
    let links = links.collect_view();
    view! {
        <li class="import__outcome">
            <b>{name.clone()}</b>
            {sentences.into_iter().map(|sentence| view! { <p>{sentence}</p> }).collect_view()}
            {links}
        </li>
    }
    .into_any()
}
