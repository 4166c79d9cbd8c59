//! The shop: what a shop follows over the jobs of all its vans.
//!
//! A desk screen, on a phone or on a large screen; everything is made from the summaries.

mod board;
mod books;
mod counts;
mod jobs;
mod lists;
pub(super) mod rows;
mod vans;

use crate::exchange::find::Finder;
use crate::exchange::summary::Summary;
use crate::text::{self, Desk, Lang, Ledger, Say, ShopWord};
use crate::ui::parts::intake::intake;
use crate::ui::parts::key::{Look, link};
use crate::ui::parts::strip::banners;
use crate::ui::route::Route;
use crate::ui::screens::flow;
use crate::ui::state::App;
use crate::ui::view::prelude::*;

pub use board::day_board;
pub use counts::counts;
pub use jobs::jobs;
pub(super) use jobs::van_label;

/// So many jobs are shown of those that are found.
const MOST_FOUND: usize = 20;

/// The shop.
pub fn shop_lists(app: App) -> Node {
    let (lang, fmt) = app.settings.with_untracked(|it| (it.lang, it.format()));
    let counts = text::ledger(lang, Ledger::CountsTitle);
    let whole = RwSignal::new(Vec::new());
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
            <nav class="where__ways">
                {link(
                    Look::Plain,
                    text::shop_word(lang, ShopWord::BoardTitle),
                    Route::Board.to_hash(),
                )}
                {link(
                    Look::Plain,
                    text::shop_word(lang, ShopWord::JobsTitle),
                    Route::JobList.to_hash(),
                )}
                {link(Look::Plain, counts, Route::Counts.to_hash())}
            </nav>
            {flow::ways(app)}
            {move || app.jobs.with(|jobs| lists::lists((lang, fmt), jobs, whole))}
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
        app.jobs.with(|jobs| found_rows(lang, jobs, &places))
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

fn found_rows(lang: Lang, jobs: &[Summary], places: &[usize]) -> Node {
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
    let what = [&job.on, &job.vin, &job.phone].into_iter();
    let what = what.chain(&job.invoices).filter(|part| !part.is_empty());
    let what: Vec<&str> = what.map(String::as_str).collect();
    view! {
        <li>
            <a class="job" href={Route::Where(job.log.clone()).to_hash()}>
                <b class="job__plate">{rows::plate(lang, job)}</b>
                <span class="job__who">{rows::who(lang, job)}</span>
                <span class="job__next">{what.join(" · ")}</span>
            </a>
        </li>
    }
}
