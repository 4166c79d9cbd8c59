//! What is due and what waits, with a call or a message one tap away.

use crate::exchange::reach;
use crate::exchange::shop_lists::ShopLists;
use crate::exchange::summary::Summary;
use crate::job::entry::Money;
use crate::report::{money, plain};
use crate::text::{self, Desk, Lang, ShopWord};
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::today;
use crate::ui::route::Route;
use crate::ui::screens::conflicts;
use crate::ui::screens::shop_lists::rows;
use crate::ui::view::prelude::*;
use crate::units::Format;

/// How many rows of a list are shown until all are asked for.
const MOST_ROWS: usize = 20;

/// What a list says of a job beside its plate and name.
#[derive(Clone, Copy)]
enum About {
    /// Nuts to be tightened: the day, and a message ready for the customer.
    Nuts,
    /// A corner to be looked at again.
    Recheck,
    /// What is not paid.
    Unpaid,
    /// What a declined repair would have come to.
    Declined,
    /// The list says it all.
    Nothing,
}

/// What is due and what waits; one sentence where nothing does.
pub(super) fn lists(
    (lang, fmt): (Lang, Format),
    jobs: &[Summary],
    whole: RwSignal<Vec<&'static str>>,
) -> Node {
    let desk = |desk| text::desk(lang, desk);
    let shop = ShopLists::of(jobs, &today());
    let declined = text::shop_word(lang, ShopWord::DeclinedTitle);
    let all = [
        (desk(Desk::ShopOverdue), &shop.overdue, About::Nuts),
        (desk(Desk::ShopDue), &shop.due, About::Nuts),
        (
            desk(Desk::ShopDeclined),
            &shop.declined_stop,
            About::Declined,
        ),
        (declined, &shop.declined, About::Declined),
        (desk(Desk::ShopUnfinished), &shop.unfinished, About::Nothing),
        (desk(Desk::ShopRecheck), &shop.rechecks, About::Recheck),
        (desk(Desk::ShopWaiting), &shop.waiting, About::Nothing),
        (desk(Desk::ShopUnpaid), &shop.unpaid, About::Unpaid),
        (desk(Desk::ShopConflicts), &shop.conflicts, About::Nothing),
    ];
    let shown: Vec<Node> = all
        .into_iter()
        .filter(|(_, jobs, _)| !jobs.is_empty())
        .map(|(title, jobs, about)| list((lang, fmt), title, jobs, about, whole))
        .collect();
    let numbers = conflicts::numbers(lang, jobs, true);
    let nothing = shown.is_empty() && numbers.is_none();
    view! {
        {nothing.then(|| view! { <p class="home__empty">{text::desk(lang, Desk::ShopNothing)}</p> })}
        <div class="shop-lists__lists">{shown} {numbers}</div>
    }
}

fn list(
    (lang, fmt): (Lang, Format),
    title: &'static str,
    jobs: &[&Summary],
    about: About,
    whole: RwSignal<Vec<&'static str>>,
) -> Node {
    let most = match whole.with(|whole| whole.contains(&title)) {
        true => jobs.len(),
        false => MOST_ROWS,
    };
    let rows = jobs.iter().take(most);
    let rows: Vec<Node> = rows.map(|job| row(lang, fmt, job, about)).collect();
    let cut = jobs.len() > most;
    let each = text::shop_word(lang, ShopWord::ShowEach);
    view! {
        <section class="jobs">
            <h2>{text::counted(lang, title, jobs.len())}</h2>
            <ul>{rows}</ul>
            {cut.then(|| key(Look::Foot, each, move || whole.update(|whole| whole.push(title))))}
        </section>
    }
}

fn row(lang: Lang, fmt: Format, job: &Summary, about: About) -> Node {
    let amount = |minor, code: &str| {
        let currency = code.to_owned();
        money(fmt, &Money { minor, currency })
    };
    let says = match about {
        About::Nuts => job.due.clone(),
        About::Recheck => job.recheck.clone(),
        About::Unpaid => job
            .unpaid
            .as_ref()
            .map_or_else(String::new, |(minor, code)| amount(*minor, code)),
        About::Declined if job.sums.declined != 0 => {
            let declined = amount(job.sums.declined, &job.sums.currency);
            [job.on.as_str(), declined.as_str()].join(" · ")
        }
        About::Declined | About::Nothing => job.on.clone(),
    };
    view! {
        <li class="shop-lists__row">
            <a class="job" href={Route::Job(job.log.clone()).to_hash()}>
                <b class="job__plate">{rows::plate(lang, job)}</b>
                <span class="job__who">{rows::who(lang, job)}</span>
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
        About::Recheck | About::Unpaid | About::Declined | About::Nothing => None,
    };
    let way = |desk, address: Option<String>| {
        address.map(|address| link(Look::Foot, text::desk(lang, desk), address))
    };
    view! {
        <span class="shop-lists__ways">{way(Desk::Call, call)} {way(Desk::Write, write)}</span>
    }
}
