//! The shop: what a shop follows over the jobs of all its vans.
//!
//! A desk screen, on a phone or on a large screen; everything is made from the summaries.

mod counts;
mod lists;
mod vans;

use crate::exchange::find::Finder;
use crate::exchange::summary::Summary;
use crate::text::{self, Desk, Lang, Ledger, Say};
use crate::ui::parts::intake::intake;
use crate::ui::parts::key::{Look, link};
use crate::ui::parts::strip::banners;
use crate::ui::route::Route;
use crate::ui::screens::flow;
use crate::ui::state::App;
use crate::ui::view::prelude::*;

pub use counts::counts;

/// So many jobs are shown of those that are found.
const MOST_FOUND: usize = 20;

/// The shop.
pub fn shop_lists(app: App) -> Node {
    let (lang, fmt) = app.settings.with_untracked(|it| (it.lang, it.format()));
    let counts = text::ledger(lang, Ledger::CountsTitle);
    view! {
        <main class="desk desk--wide shop-lists">
            <header class="desk__head">
                <h1>{text::desk(lang, Desk::ShopTitle)}</h1>
                {link(Look::Foot, text::say(lang, Say::Back), Route::Home.to_hash())}
            </header>
            {banners(app)}
            <div class="shop-lists__top">
                {find(app, lang)}
                {intake(app, text::ledger(lang, Ledger::OpenFiles))}
            </div>
            {link(Look::Plain, counts, Route::Counts.to_hash())}
            {flow::ways(app)}
            {move || app.jobs.with(|jobs| lists::lists(lang, fmt, jobs))}
            {vans::vans(app, lang)}
            {flow::missing(app)}
        </main>
    }
}

/// Finds a job among all by what is typed.
fn find(app: App, lang: Lang) -> Node {
    let typed = RwSignal::new(String::new());
    let finder = Memo::new(move |_| app.jobs.with(|jobs| Finder::of(jobs)));
    let found = move || {
        let typed = typed.get();
        if typed.trim().is_empty() {
            return ().into_node();
        }
        let places: Vec<usize> = finder.with(|finder| finder.find(&typed).collect());
        app.jobs.with(|jobs| rows(lang, jobs, &places))
    };
    view! {
        <section class="shop-lists__find jobs">
            <label class="field">
                <span>{text::ledger(lang, Ledger::FindJob)}</span>
                <input type="search" autocapitalize="characters" bind:value=typed/>
            </label>
            <div role="status">{found}</div>
        </section>
    }
}

fn rows(lang: Lang, jobs: &[Summary], places: &[usize]) -> Node {
    if places.is_empty() {
        return view! { <p>{text::ledger(lang, Ledger::NoneFound)}</p> };
    }
    let shown = places.iter().take(MOST_FOUND);
    let shown = shown
        .filter_map(|place| jobs.get(*place))
        .map(|job| row(lang, job));
    let more = places.len().saturating_sub(MOST_FOUND);
    let more = (more > 0).then(|| view! { <p>{text::more_rows(lang, more)}</p> });
    view! {
        <ul>{shown.collect_view()}</ul>
        {more}
    }
}

fn row(lang: Lang, job: &Summary) -> Node {
    let or = |text: &str, say| match text {
        "" => text::say(lang, say).to_owned(),
        text => text.to_owned(),
    };
    let what = [job.family.as_str(), job.vin.as_str()];
    let what = what.into_iter().filter(|part| !part.is_empty());
    view! {
        <li>
            <a class="job" href={Route::Where(job.log.clone()).to_hash()}>
                <b class="job__plate">{or(&job.plate, Say::NoPlate)}</b>
                <span class="job__who">{or(&job.name, Say::NoName)}</span>
                <span class="job__next">{what.collect::<Vec<_>>().join(" · ")}</span>
            </a>
        </li>
    }
}
