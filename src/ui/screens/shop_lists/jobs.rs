//! The job list: chosen by day, van and state, sorted, with its totals, on paper and as a table.

use crate::ui::react::spawn_local;

use crate::exchange::job_list::{JobFilter, Listed, Query, SortBy, listed, table, totals};
use crate::exchange::summary::Summary;
use crate::exchange::vans::{VanName, Vans};
use crate::job::entry::Money;
use crate::platform::{clock, files};
use crate::report::money;
use crate::text::{self, Lang, Say, ShopWord};
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::picks::{picks, toggle};
use crate::ui::parts::strip::banners;
use crate::ui::parts::{month_begins, today};
use crate::ui::route::Route;
use crate::ui::screens::report_screen;
use crate::ui::screens::shop_lists::{books, rows};
use crate::ui::state::App;
use crate::ui::view::prelude::*;
use crate::units::Format;

/// So many rows are drawn unless all are asked for.
const MOST_ROWS: usize = 200;
/// After so long all rows were drawn, and the list can be printed.
const DRAWN_MS: i32 = 300;

/// What is asked of the list.
#[derive(Clone, Copy)]
struct Choice {
    app: App,
    lang: Lang,
    fmt: Format,
    from: RwSignal<String>,
    to: RwSignal<String>,
    van: RwSignal<String>,
    filter: RwSignal<JobFilter>,
    sort: RwSignal<SortBy>,
    all: RwSignal<bool>,
}

impl Choice {
    fn query(self) -> Query {
        Query {
            from: self.from.get(),
            to: self.to.get(),
            van: self.van.get(),
            filter: self.filter.get(),
            sort: self.sort.get(),
        }
    }

    fn word(self, word: ShopWord) -> &'static str {
        text::shop_word(self.lang, word)
    }
}

/// The screen of the job list; it begins with this month.
pub fn jobs(app: App) -> Node {
    let (lang, fmt) = app.settings.with_untracked(|it| (it.lang, it.format()));
    let choice = Choice {
        app,
        lang,
        fmt,
        from: RwSignal::new(month_begins()),
        to: RwSignal::new(today()),
        van: RwSignal::new(String::new()),
        filter: RwSignal::new(JobFilter::All),
        sort: RwSignal::new(SortBy::Day),
        all: RwSignal::new(false),
    };
    view! {
        <main class="desk desk--wide job-list">
            <header class="desk__head">
                <h1>{choice.word(ShopWord::JobsTitle)}</h1>
                <span data-print="no">
                    {link(Look::Foot, text::say(lang, Say::Back), Route::ShopLists.to_hash())}
                </span>
            </header>
            {banners(app)}
            {asked(choice)}
            {move || app.jobs.with(|jobs| list(choice, jobs))}
        </main>
    }
}

/// What is asked: days, van, which jobs, in which order.
fn asked(choice: Choice) -> Node {
    let filters = [
        (JobFilter::All, ShopWord::All),
        (JobFilter::Open, ShopWord::Open),
        (JobFilter::Ended, ShopWord::Ended),
        (JobFilter::Unpaid, ShopWord::Unpaid),
        (JobFilter::Declined, ShopWord::Declined),
    ];
    let orders = [
        (SortBy::Day, ShopWord::ByDay),
        (SortBy::Customer, ShopWord::ByCustomer),
        (SortBy::Van, ShopWord::ByVan),
        (SortBy::Amount, ShopWord::ByAmount),
    ];
    let filters = filters.map(|(it, word)| (it, choice.word(word).to_owned()));
    let orders = orders.map(|(it, word)| (it, choice.word(word).to_owned()));
    view! {
        <section class="job-list__asked" data-print="no">
            <label class="field">
                <span>{choice.word(ShopWord::FirstDay)}</span>
                <input type="date" id="first_day" bind:value={choice.from}/>
            </label>
            <label class="field">
                <span>{choice.word(ShopWord::LastDay)}</span>
                <input type="date" id="last_day" bind:value={choice.to}/>
            </label>
            {move || vans(choice)}
            {picks(choice.word(ShopWord::Show), filters.to_vec(), choice.filter, |_| {})}
            {picks(choice.word(ShopWord::Sort), orders.to_vec(), choice.sort, |_| {})}
        </section>
    }
}

/// A key for each van; nothing where no van has letters.
fn vans(choice: Choice) -> Option<Node> {
    let letters = choice.app.jobs.with(|jobs| Vans::of(jobs).letters(jobs));
    if letters.is_empty() {
        return None;
    }
    let name = choice.word(ShopWord::VanHead);
    let all = choice.word(ShopWord::AllVans).to_owned();
    let keys = [(String::new(), all)].into_iter();
    let keys = keys.chain(letters.into_iter().map(|it| (it.clone(), it)));
    let keys = keys.map(|(letters, label)| {
        let chosen = letters.clone();
        let is_on = move || choice.van.with(|van| *van == chosen);
        toggle(label, is_on, move || choice.van.set(letters.clone()))
    });
    let keys: Vec<Node> = keys.collect();
    Some(view! {
        <div class="picks" role="group" aria-label=name>
            <p class="picks__legend">{name}</p>
            <div class="picks__keys">{keys}</div>
        </div>
    })
}

fn list(choice: Choice, jobs: &[Summary]) -> Node {
    let query = choice.query();
    let found = listed(jobs, &query);
    if found.is_empty() {
        return view! { <p class="home__empty">{choice.word(ShopWord::NoJobs)}</p> };
    }
    let most = if choice.all.get() {
        found.len()
    } else {
        MOST_ROWS
    };
    let cut = found.len().saturating_sub(most);
    let drawn: Vec<Node> = found.iter().take(most).map(|it| row(choice, it)).collect();
    let heads = [
        ShopWord::ByDay,
        ShopWord::JobHead,
        ShopWord::VanHead,
        ShopWord::ToPay,
        ShopWord::Balance,
    ];
    let heads = heads.map(|head| view! { <th scope="col">{choice.word(head)}</th> });
    view! {
        <p role="status">{about(choice, &query, found.len())}</p>
        {sums(choice, &found)}
        <div class="job-list__keys" data-print="no">
            {key(Look::Plain, text::say(choice.lang, Say::Print), move || print(choice))}
            {key(Look::Plain, choice.word(ShopWord::SaveTable), move || save(choice))}
            {books::books_key(choice.app, choice.lang)}
        </div>
        <table class="shop-lists__parts job-list__table">
            <thead><tr>{heads.into_iter().collect_view()}</tr></thead>
            <tbody>{drawn}</tbody>
        </table>
        {(cut > 0).then(|| view! {
            <p data-print="no">{text::rows_of(choice.lang, most, most.saturating_add(cut))}</p>
            <div data-print="no">
                {key(Look::Plain, choice.word(ShopWord::ShowEach), move || choice.all.set(true))}
            </div>
        })}
    }
}

/// What the list is of, for the paper too.
fn about(choice: Choice, query: &Query, n: usize) -> String {
    let days = match (query.from.as_str(), query.to.as_str()) {
        ("", "") => String::new(),
        (from, to) => text::days_from_to(choice.lang, from, to),
    };
    let van = match query.van.as_str() {
        "" => choice.word(ShopWord::AllVans).to_owned(),
        van => text::van_name(choice.lang, van),
    };
    let said = [days, van, text::jobs(choice.lang, n)];
    let said = said.into_iter().filter(|it| !it.is_empty());
    said.collect::<Vec<_>>().join(" · ")
}

/// The totals, a row a currency.
fn sums(choice: Choice, found: &[Listed]) -> Option<Node> {
    let all = totals(found);
    if all.is_empty() {
        return None;
    }
    let one = |(currency, total): (String, crate::exchange::job_list::Total)| {
        let amount = |minor| {
            let currency = currency.clone();
            money(choice.fmt, &Money { minor, currency })
        };
        view! {
            <tr>
                <th scope="row">{text::jobs(choice.lang, total.jobs)}</th>
                {money_cell(choice, ShopWord::ToPay, amount(total.to_pay))}
                {money_cell(choice, ShopWord::Received, amount(total.received))}
                {money_cell(choice, ShopWord::Balance, amount(total.open))}
                {money_cell(choice, ShopWord::Declined, amount(total.declined))}
            </tr>
        }
    };
    let rows: Vec<Node> = all.into_iter().map(one).collect();
    let heads = [
        ShopWord::TotalHead,
        ShopWord::ToPay,
        ShopWord::Received,
        ShopWord::Balance,
        ShopWord::Declined,
    ];
    let heads = heads.map(|head| view! { <th scope="col">{choice.word(head)}</th> });
    Some(view! {
        <table class="shop-lists__parts job-list__sums">
            <thead><tr>{heads.into_iter().collect_view()}</tr></thead>
            <tbody>{rows}</tbody>
        </table>
    })
}

fn row(choice: Choice, it: &Listed) -> Node {
    let job = it.job;
    let amount = |minor| match job.sums.currency.as_str() {
        "" => String::new(),
        currency => {
            let currency = currency.to_owned();
            money(choice.fmt, &Money { minor, currency })
        }
    };
    let when = [job.on.as_str(), job.time.as_str()].join(" ");
    let van = it.van.as_ref().map(|van| van_label(choice.lang, van));
    view! {
        <tr>
            <th scope="row">{when}</th>
            <td>
                <a href={Route::Where(job.log.clone()).to_hash()}><b>{rows::plate(choice.lang, job)}</b></a>
                {" "} {rows::who(choice.lang, job)} {" "} <small>{rows::state(choice.lang, job)}</small>
            </td>
            <td>{van}</td>
            {money_cell(choice, ShopWord::ToPay, amount(job.sums.to_pay))}
            {money_cell(choice, ShopWord::Balance, amount(job.sums.open))}
        </tr>
    }
}

/// An amount with its name, which a phone shows beside it.
fn money_cell(choice: Choice, label: ShopWord, amount: String) -> Node {
    let label = choice.word(label);
    if amount.is_empty() {
        return view! { <td></td> };
    }
    view! { <td class="job-list__money" data-label=label>{amount}</td> }
}

/// The name of a van on a row.
pub(in crate::ui::screens) fn van_label(lang: Lang, van: &VanName) -> String {
    text::van_label(lang, &van.letters, van.number)
}

/// Prints the list with all its rows.
fn print(choice: Choice) {
    choice.all.set(true);
    clock::later(DRAWN_MS, || {
        // A browser that cannot print says so itself; nothing is lost.
        let _ = files::print();
    });
}

/// Saves the whole list as a table.
fn save(choice: Choice) {
    let (app, lang) = (choice.app, choice.lang);
    let made = app.jobs.with_untracked(|jobs| {
        let query = untrack(|| choice.query());
        table(&listed(jobs, &query), &|van| van_label(lang, van))
    });
    let name = text::job_list_file(lang, &today());
    spawn_local(report_screen::offer(
        app,
        name,
        "text/csv",
        Some(made.into_bytes()),
    ));
}
