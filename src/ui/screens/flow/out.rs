//! What a van takes to the shop: everything since the last confirmation, or the jobs that are chosen.

use crate::ui::react::spawn_local;

use crate::exchange::export::Log;
use crate::map::OrderedSet;
use crate::sorted::Sorted;
use crate::text::{self, Flow, Lang, Say};
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::strip::banners;
use crate::ui::parts::today;
use crate::ui::route::Route;
use crate::ui::screens::flow::day::name;
use crate::ui::screens::flow::{save, save_with};
use crate::ui::screens::report_screen;
use crate::ui::state::App;
use crate::ui::view::prelude::*;

/// How many jobs are shown; an older one is exported from its own screen.
const MOST_ROWS: usize = 60;

/// The screen of files for the shop.
pub fn out(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let open = RwSignal::new(None::<Vec<Log>>);
    let chosen = RwSignal::new(OrderedSet::<String>::new());
    Effect::new(move |_| {
        // The list of jobs says which are practice, the confirmations what is new.
        app.jobs.track();
        app.held.track();
        spawn_local(async move {
            let _ = open.try_set(Some(app.since_confirmation().await));
        });
    });
    let flow = move |word| text::flow(lang, word);
    let says = move || {
        open.with(|open| match open.as_deref() {
            None => String::new(),
            Some([]) => flow(Flow::NothingNew).to_owned(),
            Some(logs) => {
                let entries = logs.iter().map(|(_, _, texts)| texts.len()).sum();
                text::new_since(lang, entries, logs.len())
            }
        })
    };
    let close = move |photos: bool| {
        let van = app.settings.with_untracked(|settings| settings.van.clone());
        let stem = text::closed_file_stem(lang, &today(), &van);
        let save = if photos { save_with } else { save };
        open.with_untracked(|open| save(app, open.as_deref().unwrap_or_default(), &stem));
    };
    let none_chosen = move || chosen.with(OrderedSet::is_empty);
    let nothing = move || open.with(|open| open.as_ref().is_none_or(Vec::is_empty));
    view! {
        <main class="desk flow">
            <h1>{flow(Flow::OutTitle)}</h1>
            {banners(app)}
            <p role="status">{says}</p>
            <fieldset class="flow__keys" prop:disabled=nothing>
                {key(Look::Primary, flow(Flow::CloseDay), move || close(false))}
                {key(Look::Plain, flow(Flow::CloseDayWith), move || close(true))}
            </fieldset>
            <h2>{flow(Flow::ChooseJobs)}</h2>
            <ul class="flow__jobs">{move || rows(app, lang, chosen)}</ul>
            <fieldset class="flow__keys" prop:disabled=none_chosen>
                {key(Look::Plain, flow(Flow::ExportChosen), move || export(app, chosen, false))}
                {key(Look::Plain, flow(Flow::ExportChosenWith), move || export(app, chosen, true))}
            </fieldset>
            {link(Look::Foot, text::say(lang, Say::Back), Route::Home.to_hash())}
        </main>
    }
}

fn rows(app: App, lang: Lang, chosen: RwSignal<OrderedSet<String>>) -> Node {
    let mut jobs = app.jobs.get();
    jobs.retain(|job| !job.practice);
    jobs.order_by_key(|job| std::cmp::Reverse(job.touched));
    let rows = jobs.into_iter().take(MOST_ROWS).map(|job| {
        let name = name(lang, &job);
        let log = StoredValue::new(job.log);
        let on = move || log.with_value(|log| chosen.with(|all| all.contains(log)));
        let turn = move |_| {
            chosen.update(|all| {
                if !all.remove(&log.get_value()) {
                    all.insert(log.get_value());
                }
            });
        };
        view! {
            <li>
                <button
                    type="button"
                    class="kit__row"
                    aria-pressed={move || if on() { "true" } else { "false" }}
                    on:click=turn
                >
                    <span>{name}</span>
                </button>
            </li>
        }
    });
    rows.collect_view()
}

fn export(app: App, chosen: RwSignal<OrderedSet<String>>, photos: bool) {
    let logs = chosen.get_untracked().into_iter().collect();
    report_screen::export_logs(app, logs, photos);
}
