//! The day board: the vans beside each other by the hour, and a job moved to another one.

use crate::ui::react::spawn_local;

use crate::exchange::board::{Column, Planned, board};
use crate::exchange::summary::Summary;
use crate::job::entry::{DayTime, Event, LogId, Slot};
use crate::text::{self, Lang, Say, ShopWord};
use crate::trade::day::day_of;
use crate::trade::money::is_van_mark;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::strip::banners;
use crate::ui::parts::{now_time, today};
use crate::ui::route::Route;
use crate::ui::screens::shop_lists::jobs::van_label;
use crate::ui::screens::shop_lists::rows;
use crate::ui::state::App;
use crate::ui::view::prelude::*;

/// The screen of the day board; it begins with today.
pub fn day_board(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let word = move |word| text::shop_word(lang, word);
    let day = RwSignal::new(today());
    view! {
        <main class="desk desk--wide board">
            <header class="desk__head">
                <h1>{word(ShopWord::BoardTitle)}</h1>
                <span data-print="no">
                    {link(Look::Foot, text::say(lang, Say::Back), Route::ShopLists.to_hash())}
                </span>
            </header>
            {banners(app)}
            <label class="field" data-print="no">
                <span>{word(ShopWord::ByDay)}</span>
                <input type="date" id="board_day" bind:value={day}/>
            </label>
            {move || {
                let day = day.get();
                app.jobs.with(|jobs| columns(app, lang, jobs, &day))
            }}
            <p class="hint" data-print="no">{word(ShopWord::MoveSay)}</p>
        </main>
    }
}

fn columns(app: App, lang: Lang, jobs: &[Summary], day: &str) -> Node {
    let (today, time) = (today(), now_time());
    let all = board(jobs, day, (&today, &time));
    if all.is_empty() {
        let nothing = text::shop_word(lang, ShopWord::BoardNothing);
        return view! { <p class="home__empty">{nothing}</p> };
    }
    let all: Vec<Node> = all.iter().map(|it| column(app, lang, it)).collect();
    view! { <div class="shop-lists__lists">{all}</div> }
}

fn column(app: App, lang: Lang, column: &Column) -> Node {
    let name = match &column.van {
        Some(van) => van_label(lang, van),
        None => text::shop_word(lang, ShopWord::NoVan).to_owned(),
    };
    let rows: Vec<Node> = column.jobs.iter().map(|it| row(app, lang, it)).collect();
    view! {
        <section class="jobs">
            <h2>{text::counted(lang, &name, column.jobs.len())}</h2>
            <ul>{rows}</ul>
        </section>
    }
}

fn row(app: App, lang: Lang, planned: &Planned) -> Node {
    let job = planned.job;
    let late = planned.is_late.then(|| {
        view! { <b class="shop-lists__out">{text::shop_word(lang, ShopWord::Late)}</b> }
    });
    // The day alone where it is another than the board's.
    let when = text::slot_words(lang, &job.day, &job.time, "");
    view! {
        <li>
            <a class="job" href={Route::Where(job.log.clone()).to_hash()}>
                <span class="job__slot">{when} {" "} {late}</span>
                <b class="job__plate">{rows::plate(lang, job)}</b>
                <span class="job__who">{rows::who(lang, job)}</span>
                <span class="job__next">{rows::state(lang, job)}</span>
            </a>
            {job.ending.is_empty().then(|| mover(app, lang, job))}
        </li>
    }
}

/// Moves a job to another day, time or van.
fn mover(app: App, lang: Lang, job: &Summary) -> Node {
    let word = move |word| text::shop_word(lang, word);
    let (day, time) = (
        RwSignal::new(job.day.clone()),
        RwSignal::new(job.time.clone()),
    );
    let van = RwSignal::new(job.van.clone());
    let slip = RwSignal::new(false);
    let log = StoredValue::new(job.log.clone());
    let press = move || {
        let letters = van.get_untracked().trim().to_ascii_uppercase();
        let is_van = letters.is_empty() || is_van_mark(&letters);
        let Some(day) = day_of(&day.get_untracked()).filter(|_| is_van) else {
            slip.set(true);
            return;
        };
        slip.set(false);
        let slot = Slot {
            day,
            time: DayTime::parse(&time.get_untracked()),
            van: letters,
        };
        spawn_local(moved(app, log.get_value(), slot));
    };
    view! {
        <details class="more" data-print="no">
            <summary class="key key--foot">{word(ShopWord::Move)}</summary>
            <label class="field">
                <span>{word(ShopWord::ByDay)}</span>
                <input type="date" bind:value={day}/>
            </label>
            <label class="field">
                <span>{word(ShopWord::MoveTime)}</span>
                <input type="time" bind:value={time}/>
            </label>
            <label class="field">
                <span>{word(ShopWord::MoveVan)}</span>
                <input type="text" autocapitalize="characters" bind:value={van}/>
            </label>
            <p class="slip" role="alert">{move || slip.get().then(|| word(ShopWord::MoveSlip))}</p>
            {key(Look::Plain, word(ShopWord::MoveJob), press)}
        </details>
    }
}

async fn moved(app: App, log: String, slot: Slot) {
    let kept = app
        .append_to(LogId(log.clone()), vec![Event::Slot(slot)])
        .await;
    if !kept {
        let lang = app.settings.with_untracked(|settings| settings.lang);
        app.recorded
            .set(Some(text::say(lang, Say::ImportNotSaved).to_owned()));
        return;
    }
    app.lines(&[log], Vec::new()).await;
    app.read_list_now().await;
}
