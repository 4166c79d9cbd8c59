//! The shop packs one van's day: which jobs, when, and the file.

use crate::ui::react::spawn_local;

use crate::exchange::summary::Summary;
use crate::job::entry::{DayTime, Event, LogId, Slot};
use crate::map::OrderedMap;
use crate::sorted::Sorted;
use crate::text::{self, Flow, Lang, Say};
use crate::trade::day::day_of;
use crate::trade::money::is_van_mark;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::strip::banners;
use crate::ui::parts::today;
use crate::ui::route::Route;
use crate::ui::screens::flow::save;
use crate::ui::state::App;
use crate::ui::view::prelude::*;

/// The day as it is packed: the time of each chosen job, as typed.
#[derive(Clone, Copy)]
struct Packing {
    app: App,
    lang: Lang,
    day: RwSignal<String>,
    van: RwSignal<String>,
    chosen: RwSignal<OrderedMap<String, String>>,
    slip: RwSignal<Option<Flow>>,
}

/// The screen of a day's file.
pub fn day(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let packing = Packing {
        app,
        lang,
        day: RwSignal::new(today()),
        van: RwSignal::new(String::new()),
        chosen: RwSignal::new(OrderedMap::new()),
        slip: RwSignal::new(None),
    };
    let flow = move |word| text::flow(lang, word);
    let none_chosen = move || packing.chosen.with(OrderedMap::is_empty);
    let open = |job: &Summary| job.ending.is_empty() && !job.practice;
    let to_choose = move || none_chosen() && app.jobs.with(|jobs| jobs.iter().any(open));
    view! {
        <main class="desk flow">
            <h1>{flow(Flow::DayTitle)}</h1>
            {banners(app)}
            <p>{flow(Flow::DaySay)}</p>
            <label class="field">
                <span>{flow(Flow::Day)}</span>
                <input type="date" id="day" bind:value={packing.day}/>
            </label>
            <label class="field">
                <span>{flow(Flow::Van)}</span>
                <input type="text" id="van_of_day" autocapitalize="characters" bind:value={packing.van}/>
            </label>
            <ul class="flow__jobs">{move || rows(packing)}</ul>
            {move || other_van(packing)}
            <p class="slip" role="alert">{move || packing.slip.get().map(flow)}</p>
            <fieldset class="flow__keys" prop:disabled=none_chosen>
                {key(Look::Primary, flow(Flow::MakeDay), move || make(packing))}
            </fieldset>
            <p class="hint">{move || to_choose().then(|| flow(Flow::ChooseFirst))}</p>
            {link(Look::Plain, text::say(lang, Say::NewJob), Route::New.to_hash())}
            {link(Look::Plain, flow(Flow::ShopTitle), Route::Shop.to_hash())}
            {link(Look::Foot, text::say(lang, Say::Back), Route::ShopLists.to_hash())}
        </main>
    }
}

/// The chosen jobs that are planned for another van: the file moves them.
fn other_van(packing: Packing) -> Option<Node> {
    let van = packing.van.get().trim().to_ascii_uppercase();
    let chosen = packing.chosen.get();
    let lang = packing.lang;
    let rows: Vec<Node> = packing.app.jobs.with(|jobs| {
        let is = |job: &&Summary| {
            chosen.get(&job.log).is_some() && !job.van.is_empty() && job.van != van
        };
        let said = jobs.iter().filter(is);
        let said = said.map(|job| text::planned_for(lang, &name(lang, job), &job.van));
        said.map(|line| view! { <li>{line}</li> }).collect()
    });
    (!rows.is_empty()).then(|| {
        view! {
            <section class="notice" role="alert">
                <p>{text::flow(lang, Flow::OtherVanSay)}</p>
                <ul>{rows}</ul>
            </section>
        }
    })
}

/// The open jobs, in the order of their slots.
fn rows(packing: Packing) -> Node {
    let jobs = packing.app.jobs.get();
    let open = jobs
        .iter()
        .filter(|job| job.ending.is_empty() && !job.practice);
    let mut open: Vec<&Summary> = open.collect();
    open.order_by(|a, b| (a.slot_order(), &a.log).cmp(&(b.slot_order(), &b.log)));
    if open.is_empty() {
        let nothing = text::flow(packing.lang, Flow::DayNothing);
        return view! { <li>{nothing}</li> };
    }
    let rows = open.into_iter().map(|job| row(packing, job));
    rows.collect_view()
}

fn row(packing: Packing, job: &Summary) -> Node {
    let (lang, chosen) = (packing.lang, packing.chosen);
    let name = name(lang, job);
    let label = format!("{}: {name}", text::flow(lang, Flow::Time));
    let slot = text::slot_words(lang, &job.day, &job.time, &job.van);
    let (log, known) = (StoredValue::new(job.log.clone()), job.time.clone());
    let time = move || log.with_value(|log| chosen.with(|all| all.get(log).cloned()));
    let turn = move |_| {
        let known = known.clone();
        chosen.update(|all| {
            if all.remove(&log.get_value()).is_none() {
                all.insert(log.get_value(), known);
            }
        });
    };
    let typed = move |event| {
        let text = event_target_value(&event);
        chosen.update(|all| {
            all.insert(log.get_value(), text);
        });
    };
    view! {
        <li>
            <button
                type="button"
                class="kit__row"
                aria-pressed={move || if time().is_some() { "true" } else { "false" }}
                on:click=turn
            >
                <span>{name}</span>
                <b>{slot}</b>
            </button>
            <input
                type="time"
                class="flow__time"
                aria-label=label
                prop:value={move || time().unwrap_or_default()}
                on:change=typed
            />
        </li>
    }
}

/// Plate and customer of a job, as far as they are known.
pub(super) fn name(lang: Lang, job: &Summary) -> String {
    let title = match job.title() {
        title if title.is_empty() => text::say(lang, Say::NoPlate).to_owned(),
        title => title,
    };
    let words = [title.as_str(), &job.name, &job.family];
    let words: Vec<&str> = words.into_iter().filter(|word| !word.is_empty()).collect();
    words.join(" · ")
}

/// Notes each slot that is new, and makes the file.
fn make(packing: Packing) {
    let (app, lang) = (packing.app, packing.lang);
    let chosen = packing.chosen.get_untracked();
    let van = packing.van.get_untracked().trim().to_ascii_uppercase();
    let day = day_of(&packing.day.get_untracked());
    let is_van = van.is_empty() || is_van_mark(&van);
    let Some(day) = day.filter(|_| is_van) else {
        packing.slip.set(Some(Flow::DaySlip));
        return;
    };
    packing.slip.set(None);
    spawn_local(async move {
        let logs: Vec<String> = chosen.keys().cloned().collect();
        for (log, time) in chosen {
            let slot = Slot {
                day,
                time: DayTime::parse(&time),
                van: van.clone(),
            };
            let known = app.read_log(&log).await;
            if crate::job::flow::slot(&known) != Some(&slot) {
                app.append_to(LogId(log), vec![Event::Slot(slot)]).await;
            }
        }
        app.lines(&logs, Vec::new()).await;
        app.read_list_now().await;
        let whole = app.day(&logs, &van).await;
        save(
            app,
            &whole,
            &text::day_file_stem(lang, &day.to_string(), &van),
        );
        // The next van's day is chosen anew.
        let _ = packing.chosen.try_set(OrderedMap::new());
    });
}
