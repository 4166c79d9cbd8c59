//! The yard: what a shop follows over all its jobs, with a call or a message one tap away.
//!
//! A desk screen, on a phone or on a large glass; the lists are made from the summaries.

use leptos::prelude::*;

use crate::exchange::reach;
use crate::exchange::summary::Summary;
use crate::exchange::yard::{Lot, Yard, lots};
use crate::job::entry::Money;
use crate::report::money;
use crate::text::{self, Desk, Lang, Say};
use crate::ui::parts::key::{Look, link};
use crate::ui::parts::strip::banners;
use crate::ui::parts::today;
use crate::ui::route::Route;
use crate::ui::screens::flow;
use crate::ui::state::App;
use crate::units::Format;

/// How many rows of a list are shown; the rest is found by typing on the list of jobs.
const MOST_ROWS: usize = 100;

/// What a list says of a job beside its plate and name.
#[derive(Clone, Copy)]
enum About {
    /// Nuts to be tightened: the day, and a message ready for the owner.
    Nuts,
    /// A corner to be looked at again.
    Recheck,
    /// What is not paid.
    Unpaid,
    /// The list says it all.
    Nothing,
}

/// The yard.
pub fn yard(app: App) -> AnyView {
    let settings = app.settings.read_untracked();
    let (lang, fmt) = (settings.lang, settings.format());
    drop(settings);
    let lists = move || {
        let jobs = app.jobs.get();
        let yard = Yard::of(&jobs, &today());
        let all = [
            (Desk::YardOverdue, &yard.overdue, About::Nuts),
            (Desk::YardDue, &yard.due, About::Nuts),
            (Desk::YardDeclined, &yard.declined_stop, About::Nothing),
            (Desk::YardUnfinished, &yard.unfinished, About::Nothing),
            (Desk::YardRecheck, &yard.rechecks, About::Recheck),
            (Desk::YardWaiting, &yard.waiting, About::Nothing),
            (Desk::YardUnpaid, &yard.unpaid, About::Unpaid),
        ];
        let shown: Vec<AnyView> = all
            .into_iter()
            .filter(|(_, jobs, _)| !jobs.is_empty())
            .map(|(title, jobs, about)| list(lang, fmt, title, jobs, about))
            .collect();
        let nothing = shown.is_empty();
        view! {
            {nothing.then(|| view! { <p class="home__empty">{text::desk(lang, Desk::YardNothing)}</p> })}
            <div class="yard__lists">{shown}</div>
            {parts(lang, fmt, &lots(&jobs))}
        }
        .into_any()
    };
    view! {
        <main class="desk desk--wide yard">
            <h1>{text::desk(lang, Desk::YardTitle)}</h1>
            {banners(app)}
            {flow::ways(app)}
            {lists}
            {flow::missing(app)}
            {link(Look::Plain, text::say(lang, Say::Back), Route::Home.to_hash())}
        </main>
    }
    .into_any()
}

fn list(lang: Lang, fmt: Format, title: Desk, jobs: &[&Summary], about: About) -> AnyView {
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
    .into_any()
}

fn row(lang: Lang, fmt: Format, job: &Summary, about: About) -> AnyView {
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
        <li class="yard__row">
            <a class="job" href=Route::Job(job.log.clone()).to_hash()>
                <b class="job__plate">{or(&job.plate, Say::NoPlate)}</b>
                <span class="job__who">{or(&job.name, Say::NoName)}</span>
                <span class="job__next">{says}</span>
            </a>
            {ways(lang, job, about)}
        </li>
    }
    .into_any()
}

/// A call, and for the wheel nuts a message with its text ready.
fn ways(lang: Lang, job: &Summary, about: About) -> AnyView {
    let call = reach::tel(&job.phone);
    let write = match about {
        About::Nuts => {
            let body = text::retorque_message(lang, &job.plate, &job.due);
            reach::sms(&job.phone, &body)
        }
        About::Recheck | About::Unpaid | About::Nothing => None,
    };
    let way = |desk, address: Option<String>| {
        address.map(|address| link(Look::Foot, text::desk(lang, desk), address))
    };
    view! {
        <span class="yard__ways">{way(Desk::Call, call)} {way(Desk::Write, write)}</span>
    }
    .into_any()
}

/// Parts and lots with how many came back; nothing where none was told.
fn parts(lang: Lang, fmt: Format, lots: &[Lot]) -> Option<AnyView> {
    let row = |lot: &Lot| {
        let share = lot.share.map_or_else(String::new, |share| {
            text::share_between(lang, &fmt.percent(share.low), &fmt.percent(share.high))
        });
        let mark = lot.stands_out.then(|| {
            view! { <b class="yard__out">{text::desk(lang, Desk::StandsOut)}</b> }
        });
        view! {
            <tr>
                <th scope="row">{lot.part.number.clone()} " " <small>{lot.part.lot.clone()}</small></th>
                <td>{lot.fitted}</td>
                <td>{text::of_asked(lang, lot.came_back, lot.asked)}</td>
                <td>{share} " " {mark}</td>
            </tr>
        }
    };
    (!lots.is_empty()).then(|| {
        view! {
            <section class="jobs">
                <h2>{text::desk(lang, Desk::YardParts)}</h2>
                <p class="hint">{text::desk(lang, Desk::YardPartsSay)}</p>
                <table class="yard__parts">
                    <thead>
                        <tr>
                            <th scope="col">{text::desk(lang, Desk::PartAndLot)}</th>
                            <th scope="col">{text::desk(lang, Desk::FittedOn)}</th>
                            <th scope="col">{text::desk(lang, Desk::CameBack)}</th>
                            <th scope="col">{text::desk(lang, Desk::ShareHead)}</th>
                        </tr>
                    </thead>
                    <tbody>{lots.iter().map(row).collect_view()}</tbody>
                </table>
            </section>
        }
        .into_any()
    })
}
