//! What is due and what waits, with a call or a message one tap away.

use crate::exchange::reach;
use crate::exchange::shop_lists::ShopLists;
use crate::exchange::summary::Summary;
use crate::job::entry::Money;
use crate::report::{money, plain};
use crate::text::{self, Desk, Lang, Say};
use crate::ui::parts::key::{Look, link};
use crate::ui::parts::today;
use crate::ui::route::Route;
use crate::ui::screens::conflicts;
use crate::ui::view::prelude::*;
use crate::units::Format;

/// How many rows of a list are shown; the rest is found by typing on the list of jobs.
const MOST_ROWS: usize = 100;

/// What a list says of a job beside its plate and name.
#[derive(Clone, Copy)]
enum About {
    /// Nuts to be tightened: the day, and a message ready for the customer.
    Nuts,
    /// A corner to be looked at again.
    Recheck,
    /// What is not paid.
    Unpaid,
    /// The list says it all.
    Nothing,
}

/// What is due and what waits; one sentence where nothing does.
pub(super) fn lists(lang: Lang, fmt: Format, jobs: &[Summary]) -> Node {
    let shop = ShopLists::of(jobs, &today());
    let all = [
        (Desk::ShopOverdue, &shop.overdue, About::Nuts),
        (Desk::ShopDue, &shop.due, About::Nuts),
        (Desk::ShopDeclined, &shop.declined_stop, About::Nothing),
        (Desk::ShopUnfinished, &shop.unfinished, About::Nothing),
        (Desk::ShopRecheck, &shop.rechecks, About::Recheck),
        (Desk::ShopWaiting, &shop.waiting, About::Nothing),
        (Desk::ShopUnpaid, &shop.unpaid, About::Unpaid),
        (Desk::ShopConflicts, &shop.conflicts, About::Nothing),
    ];
    let shown: Vec<Node> = all
        .into_iter()
        .filter(|(_, jobs, _)| !jobs.is_empty())
        .map(|(title, jobs, about)| list(lang, fmt, title, jobs, about))
        .collect();
    let numbers = conflicts::numbers(lang, jobs, true);
    let nothing = shown.is_empty() && numbers.is_none();
    view! {
        {nothing.then(|| view! { <p class="home__empty">{text::desk(lang, Desk::ShopNothing)}</p> })}
        <div class="shop-lists__lists">{shown} {numbers}</div>
    }
}

fn list(lang: Lang, fmt: Format, title: Desk, jobs: &[&Summary], about: About) -> Node {
    let rows = jobs
        .iter()
        .take(MOST_ROWS)
        .map(|job| row(lang, fmt, job, about));
    let title = text::counted(lang, text::desk(lang, title), jobs.len());
    view! {
        <section class="jobs">
            <h2>{title}</h2>
            <ul>{rows.collect_view()}</ul>
        </section>
    }
}

fn row(lang: Lang, fmt: Format, job: &Summary, about: About) -> Node {
    let or = |text: &str, say| match text {
        "" => text::say(lang, say).to_owned(),
        text => text.to_owned(),
    };
    let says = match about {
        About::Nuts => job.due.clone(),
        About::Recheck => job.recheck.clone(),
        About::Unpaid => job
            .unpaid
            .as_ref()
            .map_or_else(String::new, |(minor, code)| {
                let (minor, currency) = (*minor, code.clone());
                money(fmt, &Money { minor, currency })
            }),
        About::Nothing => job.family.clone(),
    };
    view! {
        <li class="shop-lists__row">
            <a class="job" href={Route::Job(job.log.clone()).to_hash()}>
                <b class="job__plate">{or(&job.plate, Say::NoPlate)}</b>
                <span class="job__who">{or(&job.name, Say::NoName)}</span>
                <span class="job__next">{says}</span>
            </a>
            {ways(lang, job, about)}
        </li>
    }
}

/// A call, and for the lug nuts a message with its text ready.
fn ways(lang: Lang, job: &Summary, about: About) -> Node {
    let call = reach::tel(&job.phone);
    let write = match about {
        About::Nuts => {
            let body = text::retorque_message(lang, &job.plate, &plain::date(lang, &job.due));
            reach::sms(&job.phone, &body)
        }
        About::Recheck | About::Unpaid | About::Nothing => None,
    };
    let way = |desk, address: Option<String>| {
        address.map(|address| link(Look::Foot, text::desk(lang, desk), address))
    };
    view! {
        <span class="shop-lists__ways">{way(Desk::Call, call)} {way(Desk::Write, write)}</span>
    }
}
