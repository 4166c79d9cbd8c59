//! The customer of the open job: who it is, a call, a message and a map one tap away, and every visit.

use std::sync::Arc;

use crate::exchange::customers::visits;
use crate::exchange::reach;
use crate::exchange::summary::Summary;
use crate::exchange::vans::Vans;
use crate::job::JobState;
use crate::job::entry::{Event, Money, PersonField};
use crate::report::money;
use crate::text::{self, Desk, Flow, Lang, Say, ShopWord};
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::Field;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::strip::banners;
use crate::ui::route::Route;
use crate::ui::screens::shop_lists::{rows, van_label};
use crate::ui::state::{App, Open};
use crate::ui::view::prelude::*;
use crate::units::Format;

/// So many visits are shown; a customer with more of them is found in the job list.
const MOST_VISITS: usize = 100;

/// What is asked of a customer, each with the name of its field.
const FIELDS: [(PersonField, &str); 4] = [
    (PersonField::Name, "customer_name"),
    (PersonField::Phone, "customer_phone"),
    (PersonField::Address, "customer_address"),
    (PersonField::Email, "customer_email"),
];

/// The customer of the open job.
pub fn customer(app: App) -> Node {
    let (lang, fmt) = app.settings.with_untracked(|it| (it.lang, it.format()));
    (move || {
        let Some(open) = app.open.get() else {
            return ().into_node();
        };
        let id = || open.log.0.clone();
        let log = id();
        view! {
            <main class="desk customer">
                <h1>{text::shop_word(lang, ShopWord::CustomerTitle)}</h1>
                {banners(app)}
                {reach_keys(lang, &open.sheet)}
                {(!open.sheet.read_only()).then(|| fields(app, &open))}
                {move || app.jobs.with(|jobs| all_visits(lang, fmt, jobs, &log))}
                {link(Look::Primary, text::say(lang, Say::Resume), Route::Job(id()).to_hash())}
                {link(
                    Look::Plain,
                    text::flow(lang, Flow::EraseTitle),
                    Route::Erase(id()).to_hash(),
                )}
                {link(Look::Foot, text::say(lang, Say::Where), Route::Where(id()).to_hash())}
            </main>
        }
    })
    .into_node()
}

/// A call, a message and the way there, as far as the record knows how.
pub(super) fn reach_keys(lang: Lang, sheet: &JobState) -> Option<Node> {
    let of = |field| sheet.person(field).unwrap_or_default();
    let ways = [
        (
            text::desk(lang, Desk::Call),
            reach::tel(of(PersonField::Phone)),
        ),
        (
            text::shop_word(lang, ShopWord::Map),
            reach::geo(of(PersonField::Address)),
        ),
        (
            text::shop_word(lang, ShopWord::Mail),
            reach::mail(of(PersonField::Email)),
        ),
    ];
    let ways = ways
        .into_iter()
        .filter_map(|(label, address)| Some(link(Look::Plain, label, address?)));
    let ways: Vec<Node> = ways.collect();
    (!ways.is_empty()).then(|| view! { <nav class="customer__ways">{ways}</nav> })
}

fn fields(app: App, open: &Arc<Open>) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let drafts = Drafts::named(app, format!("{}:customer", open.log.0));
    let known = |field| open.sheet.person(field).unwrap_or_default().to_owned();
    let typed = FIELDS.map(|(field, name)| (field, name, drafts.text(name, known(field))));
    let (at, before) = (Arc::clone(open), FIELDS.map(|(field, _)| known(field)));
    let press = move || {
        let changed = typed
            .iter()
            .zip(&before)
            .filter_map(|((field, _, text), known)| {
                let text = text.get_untracked().trim().to_owned();
                (text != *known).then_some(Event::Person(*field, text))
            });
        let changed: Vec<Event> = changed.collect();
        if !changed.is_empty() && app.is_open(&at.log.0) {
            drafts.drop_with_tap();
            app.append(changed);
        }
    };
    let fields = typed.map(|(field, name, text)| {
        let label = text::person_field(lang, field);
        Field::words(name, text).show(label, "", drafts, press.clone())
    });
    view! {
        {fields.into_iter().collect_view()}
        {key(Look::Plain, text::shop_word(lang, ShopWord::SaveCustomer), press)}
    }
}

/// Every visit of the customer, the latest first.
fn all_visits(lang: Lang, fmt: Format, jobs: &[Summary], log: &str) -> Option<Node> {
    let all = visits(jobs, log);
    if all.is_empty() {
        return None;
    }
    let vans = Vans::of(jobs);
    let shown = all.iter().take(MOST_VISITS);
    let rows: Vec<Node> = shown.map(|job| visit(lang, fmt, job, &vans)).collect();
    let title = text::shop_word(lang, ShopWord::Visits);
    Some(view! {
        <section class="jobs">
            <h2>{text::counted(lang, title, all.len())}</h2>
            <ul>{rows}</ul>
        </section>
    })
}

fn visit(lang: Lang, fmt: Format, job: &Summary, vans: &Vans) -> Node {
    let amount = |label, minor: i64| {
        let currency = job.sums.currency.clone();
        (minor != 0).then(|| {
            let amount = money(fmt, &Money { minor, currency });
            format!("{} {amount}", text::shop_word(lang, label))
        })
    };
    let said = [
        vans.of_job(job).map(|van| van_label(lang, &van)),
        Some(rows::state(lang, job)),
        amount(ShopWord::ToPay, job.sums.to_pay),
        amount(ShopWord::Balance, job.sums.open),
        amount(ShopWord::Declined, job.sums.declined),
    ];
    let said: Vec<String> = said.into_iter().flatten().collect();
    view! {
        <li>
            <a class="job" href={Route::Where(job.log.clone()).to_hash()}>
                <span class="job__slot">{job.on.clone()}</span>
                <b class="job__plate">{rows::plate(lang, job)}</b>
                <span class="job__who">{rows::who(lang, job)}</span>
                <span class="job__next">{said.join(" · ")}</span>
            </a>
        </li>
    }
}
