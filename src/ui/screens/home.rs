//! The first screen: one large key for a new job, then the jobs by what must happen next; the rest
//! behind one key.

use crate::exchange::find::Finder;
use crate::exchange::summary::Summary;
use crate::job::entry::{Ending, Event, Opened};
use crate::job::errand::{Errand, Standing};
use crate::sorted::Sorted;
use crate::text::{self, BookWord, Desk, Flow, Lang, Say};
use crate::trade::play::Decision;
use crate::trade::practice::{Code, Named};
use crate::trade::wheel_end::{Phase, Start, StepKey};
use crate::ui::parts::hold::hold;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::picture::{drawn, mark};
use crate::ui::parts::strip::banners;
use crate::ui::parts::today;
use crate::ui::route::Route;
use crate::ui::screens::flow;
use crate::ui::state::App;
use crate::ui::view::prelude::*;

/// So many rows a list has at first, and as many more each time that more are asked for.
const ROWS: usize = 10;
/// From so many jobs on the way to the shop stands above the lists.
const MANY_JOBS: usize = 30;
/// How many jobs that are due on a later day stand among those that ask for something.
const SOON: usize = 3;

/// The list of jobs.
pub fn home(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let typed = RwSignal::new(String::new());
    let finder = Memo::new(move |_| app.jobs.with(|jobs| Finder::of(jobs)));
    // A list that is not read yet is no empty one.
    let some = Memo::new(move |_| !app.jobs.with(Vec::is_empty));
    let none = Memo::new(move |_| app.listed.get() && !some.get());
    // Of the ended jobs nothing is drawn before they are asked for, and of long lists the first
    // rows: however many jobs there are, the screen stays short.
    let more = RwSignal::new(false);
    let longer = RwSignal::new(Vec::new());
    let many = Memo::new(move |_| app.jobs.with(|jobs| MANY_JOBS <= jobs.len()));
    let label = move || {
        let say = if none.get() { Say::More } else { Say::HomeMore };
        text::say(lang, say)
    };
    view! {
        <main class="desk home">
            <h1>{text::say(lang, Say::AppName)}</h1>
            {banners(app)}
            {lost(app, lang)}
            {update(app, lang)}
            {offline(app, lang)}
            {move || none.get().then(|| view! { <p>{text::say(lang, Say::AppSay)}</p> })}
            {link(Look::Primary, text::say(lang, Say::NewJob), Route::New.to_hash())}
            {move || if none.get() { beginning(app, lang) } else { search(typed, lang) }}
            {move || many.get().then(|| {
                link(Look::Foot, text::desk(lang, Desk::ShopTitle), Route::ShopLists.to_hash())
            })}
            {move || {
                let reading = !app.listed.get() && !some.get();
                reading.then(|| being_read(lang))
            }}
            {move || app.jobs.with(|jobs| {
                let typed = typed.get();
                if typed.is_empty() {
                    return lists(app, jobs.iter().collect(), &typed, more.get(), longer);
                }
                let places = finder.with(|finder| finder.find(&typed).collect::<Vec<_>>());
                let found = places.into_iter().filter_map(|place| jobs.get(place));
                lists(app, found.collect(), &typed, true, longer)
            })}
            <button
                type="button"
                class="key"
                aria-expanded={move || if more.get() { "true" } else { "false" }}
                on:click={move |_| more.update(|more| *more = !*more)}
            >
                {label}
            </button>
            {move || more.get().then(|| ways(lang))}
        </main>
    }
}

/// What stands in the place of a list that is not read yet.
fn being_read(lang: Lang) -> Node {
    view! {
        <div class="loading" role="status">
            <p>{text::say(lang, Say::ListBeingRead)}</p>
            <progress></progress>
        </div>
    }
}

/// What a phone without a job offers.
fn beginning(app: App, lang: Lang) -> Node {
    view! {
        {try_practice(app, lang)}
        <p>{text::say(lang, Say::HomeEmpty)}</p>
    }
}

/// The key that starts on the practice car that newcomers get.
pub fn try_practice(app: App, lang: Lang) -> Node {
    key(Look::Plain, text::say(lang, Say::TryPractice), move || {
        app.start_practice(Code::Named(Named::Marten));
    })
}

fn search(typed: RwSignal<String>, lang: Lang) -> Node {
    view! {
        <label class="field">
            <span>{text::say(lang, Say::FindHint)}</span>
            <input type="search" autocapitalize="characters" bind:value=typed/>
        </label>
    }
}

/// The ways to what is no job.
fn ways(lang: Lang) -> Node {
    let ways = [
        (text::say(lang, Say::Settings), Route::Settings),
        (text::flow(lang, Flow::OutTitle), Route::Out),
        (text::say(lang, Say::Import), Route::Import),
        (text::desk(lang, Desk::ShopTitle), Route::ShopLists),
        (text::book(lang, BookWord::Title), Route::Book),
    ];
    let ways = ways.map(|(name, route)| link(Look::Foot, name, route.to_hash()));
    view! { <nav class="home__ways">{ways.into_iter().collect_view()}</nav> }
}

/// How many logs the browser has lost for good.
fn lost(app: App, lang: Lang) -> Node {
    (move || {
        let count = app.lost.with(Vec::len);
        (count > 0).then(|| {
            view! {
                <section class="notice" role="alert">
                    <p>{text::lost_logs(lang, count)}</p>
                    {key(Look::Plain, text::say(lang, Say::ForgetLost), move || app.forget_lost())}
                </section>
            }
        })
    })
    .into_node()
}

/// On a first visit, whether the app works without a signal yet.
pub fn offline(app: App, lang: Lang) -> Node {
    (move || {
        app.offline.get().map(|ready| {
            let say = if ready {
                Say::OfflineReady
            } else {
                Say::OfflineNotYet
            };
            view! { <p class="hint">{text::say(lang, say)}</p> }
        })
    })
    .into_node()
}

/// A waiting version is offered here, where no step is in the middle.
fn update(app: App, lang: Lang) -> Node {
    (move || {
        app.update_waits.get().then(|| {
            view! {
                <section class="notice" role="status">
                    <p>{text::say(lang, Say::UpdateReady)}</p>
                    {key(Look::Plain, text::say(lang, Say::TakeUpdate), move || app.take_update())}
                </section>
            }
        })
    })
    .into_node()
}

/// The lists that were made longer, each as often as it was.
type Longer = RwSignal<Vec<Errand>>;

/// The lists of these jobs, the ended ones among them where they are asked for.
fn lists(app: App, jobs: Vec<&Summary>, typed: &str, ended: bool, longer: Longer) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    if jobs.is_empty() {
        // While the list is read what is looked for may still come.
        return if typed.is_empty() || !app.listed.get() {
            ().into_node()
        } else {
            view! { <p class="home__empty">{text::nothing_found_for(lang, typed)}</p> }
        };
    }
    let today = today();
    // Each job is looked at once: of thousands most are in one list alone, which is not drawn.
    let mut by_errand: Vec<(Errand, Vec<&Summary>)> =
        Errand::ALL.into_iter().map(|it| (it, Vec::new())).collect();
    for job in jobs {
        let errand = Errand::of(standing(job, &today));
        let of = by_errand.iter_mut().find(|(it, _)| *it == errand);
        of.into_iter().for_each(|(_, of)| of.push(job));
    }
    let lists = by_errand.into_iter().map(|(errand, mut of)| {
        if errand == Errand::Nothing && !ended {
            return None;
        }
        of.order_by_key(|job| std::cmp::Reverse(job.touched));
        let asked = longer.with(|longer| longer.iter().filter(|it| **it == errand).count());
        let most = match errand {
            Errand::Later if !ended && asked == 0 => SOON,
            _ => ROWS.saturating_mul(asked.saturating_add(1)),
        };
        if errand == Errand::Later {
            let day = |job: &Summary| job.dues().into_iter().map(|(_, day)| day.to_owned()).min();
            of.order_by_key(|job| day(job));
        } else if !matches!(errand, Errand::Due | Errand::Nothing) {
            // What is loose first, then the order of the day; what has no slot stays as it is, the
            // latest first.
            of.order_by(|a, b| (a.loose == 0, a.slot_order()).cmp(&(b.loose == 0, b.slot_order())));
        }
        list(app, errand, &of, most, longer)
    });
    lists.collect_view()
}

/// How a job stands, from its line.
fn standing(job: &Summary, today: &str) -> Standing {
    Standing {
        phase: Phase::from_code(&job.phase),
        has_ended: !job.ending.is_empty(),
        is_left: job.is_left(),
        may_be_loose: job.loose > 0 || job.incomplete,
        is_due: job.dues().into_iter().any(|(_, day)| day <= today),
        is_due_later: !job.dues().is_empty(),
    }
}

const fn heading(errand: Errand) -> Say {
    match errand {
        Errand::MakeSafe => Say::HomeMakeSafe,
        Errand::AtTheCar => Say::HomeAtCar,
        Errand::Customer => Say::HomeCustomer,
        Errand::Due => Say::HomeDue,
        Errand::Prepare => Say::HomePrepare,
        Errand::Later => Say::HomeLater,
        Errand::Nothing => Say::HomeEnded,
    }
}

fn list(app: App, errand: Errand, jobs: &[&Summary], most: usize, longer: Longer) -> Option<Node> {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let more = jobs.len().saturating_sub(most);
    let lengthen = move || longer.update(|longer| longer.push(errand));
    (!jobs.is_empty()).then(|| {
        view! {
            <section class="jobs">
                <h2>{text::say(lang, heading(errand))}</h2>
                <ul>{jobs.iter().take(most).map(|job| row(app, job, lang)).collect_view()}</ul>
                {(more > 0).then(|| key(Look::Foot, text::more_rows(lang, more), lengthen))}
            </section>
        }
    })
}

fn row(app: App, job: &Summary, lang: Lang) -> Node {
    let or = |text: &str, say| {
        if text.is_empty() {
            text::say(lang, say).to_owned()
        } else {
            text.to_owned()
        }
    };
    let (plate, who) = if job.too_long > 0 {
        // Whose car it is stands in what was not read.
        (text::say(lang, Say::JobTooLong).to_owned(), String::new())
    } else {
        let who = [or(&job.name, Say::NoName), job.family.clone()];
        let known: Vec<String> = who.into_iter().filter(|part| !part.is_empty()).collect();
        (or(&job.title(), Say::NoPlate), known.join(" · "))
    };
    view! {
        <li>
            <a class="job" href={Route::Job(job.log.clone()).to_hash()}>
                <b class="job__plate">{plate}</b>
                <span class="job__who">{who}</span>
                {flow::slot_line(job, lang)}
                <span class="job__next">{what_next(job, lang)}</span>
                {stands(job, lang)}
                {flow::in_shop_line(app, job, lang)}
                {job.practice.then(|| {
                    view! { <span class="job__practice">{text::say(lang, Say::Practice)}</span> }
                })}
            </a>
            {job.practice.then(|| throw_away(app, job, lang))}
        </li>
    }
}

/// What is loose, and the mark and word of STOP where the car must not be driven.
fn stands(job: &Summary, lang: Lang) -> Option<Node> {
    let any = job.loose > 0 || job.incomplete;
    let loose = any.then(|| text::loose_count(lang, job.loose, job.incomplete));
    let stop = job.is_left() || job.declined_stop;
    let word = stop.then(|| text::decision(lang, Decision::Stop).to_owned());
    let said: Vec<String> = word.into_iter().chain(loose).collect();
    let sign = stop.then(|| drawn(&mark(Decision::Stop).drawing(), "", "job__mark"));
    let differs = (job.conflicts > 0).then(|| text::values_differ(lang, job.conflicts));
    let said: Vec<String> = said.into_iter().chain(differs).collect();
    (!said.is_empty()).then(|| view! { <b class="job__loose">{sign} {said.join(" · ")}</b> })
}

/// Practice leaves the list by a key that is held.
fn throw_away(app: App, job: &Summary, lang: Lang) -> Node {
    let log = job.log.clone();
    hold(
        text::say(lang, Say::ThrowAway),
        text::say(lang, Say::HoldToConfirm),
        move || app.throw_away(log.clone()),
    )
}

/// What comes next on a job: its ending and what is due, or its step.
fn what_next(job: &Summary, lang: Lang) -> String {
    if let Some(ending) = Ending::from_code(&job.ending) {
        let (title, _) = text::ending(lang, ending);
        let today = today();
        let dues = job.dues().into_iter().map(|(kind, day)| {
            let what = text::due_kind(lang, kind);
            if day < today.as_str() {
                text::overdue_since(lang, what, day)
            } else {
                text::due_on(lang, what, day)
            }
        });
        return [title.to_owned()]
            .into_iter()
            .chain(dues)
            .collect::<Vec<_>>()
            .join(" · ");
    }
    let step = StepKey::from_code(&job.next);
    match (Phase::from_code(&job.phase), step) {
        (Some(phase), Some(key)) => {
            format!(
                "{} · {}",
                text::phase(lang, phase),
                text::step(lang, key.step).name
            )
        }
        _ => String::new(),
    }
}

/// What stands at a place that does not exist; it leads home.
pub fn unknown(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    view! {
        <main class="desk">
            {banners(app)}
            <p role="alert">{text::say(lang, Say::PageUnknown)}</p>
            {link(Look::Primary, text::say(lang, Say::Back), Route::Home.to_hash())}
        </main>
    }
}

/// How to start: at home, at the car, or on a practice car.
pub fn new(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let start = move |start, practice: Option<String>| {
        app.start_job(vec![Event::Opened(Opened { start, practice })]);
    };
    view! {
        <main class="desk">
            <h1>{text::say(lang, Say::NewJob)}</h1>
            {banners(app)}
            {key(Look::Primary, text::say(lang, Say::StartAtHome), move || {
                start(Start::AtHome, None);
            })}
            {key(Look::Plain, text::say(lang, Say::StartAtCar), move || start(Start::AtCar, None))}
            <p>{text::say(lang, Say::PracticeSay)}</p>
            {key(Look::Plain, text::say(lang, Say::PracticeJob), move || {
                app.start_practice(Code::Named(Named::Marten));
            })}
            {link(Look::Plain, text::say(lang, Say::ChoosePractice), Route::Practice.to_hash())}
            {link(Look::Foot, text::say(lang, Say::Back), Route::Home.to_hash())}
        </main>
    }
}
