//! Letting go of a customer: what goes, what stays, and what may name them besides.

use crate::ui::react::spawn_local;

use crate::exchange::SavedText;
use crate::exchange::customers::visits;
use crate::exchange::erase::{Besides, Left, erased_with, left, naming, pseudonym};
use crate::exchange::summary::Summary;
use crate::job::entry::PersonField;
use crate::map::OrderedSet;
use crate::text::{self, Flow, Say};
use crate::ui::files::{here, saved_texts};
use crate::ui::parts::hold::hold;
use crate::ui::parts::key::{Look, link};
use crate::ui::parts::strip::banners;
use crate::ui::route::Route;
use crate::ui::screens::flow::day::name;
use crate::ui::state::{App, Open};
use crate::ui::view::prelude::*;

/// What is to go besides the personal facts, of which other jobs of the customer, and how it went.
#[derive(Clone, Copy)]
struct Erasing {
    app: App,
    saved: RwSignal<Vec<SavedText>>,
    besides: RwSignal<OrderedSet<Besides>>,
    proposed: RwSignal<Vec<Besides>>,
    others: RwSignal<Vec<Summary>>,
    spared: RwSignal<OrderedSet<String>>,
    done: RwSignal<Option<Flow>>,
}

/// The screen that erases the customer of the open job.
pub fn erase(app: App) -> Node {
    let erasing = Erasing {
        app,
        saved: RwSignal::new(Vec::new()),
        besides: RwSignal::new(OrderedSet::new()),
        proposed: RwSignal::new(Vec::new()),
        others: RwSignal::new(Vec::new()),
        spared: RwSignal::new(OrderedSet::new()),
        done: RwSignal::new(None),
    };
    (move || {
        let Some(open) = app.open.get() else {
            return ().into_node();
        };
        spawn_local(look(erasing, open.log.0.clone()));
        shown(erasing, &open)
    })
    .into_node()
}

/// Looks which jobs are of the same customer, and which texts of all of them name one: these are
/// proposed.
async fn look(erasing: Erasing, log: String) {
    let app = erasing.app;
    let others: Vec<Summary> = app.jobs.with_untracked(|jobs| {
        let visits = visits(jobs, &log).into_iter();
        visits.filter(|job| job.log != log).cloned().collect()
    });
    let mut kept = saved_texts(&app.shelf(), &log).await;
    for other in &others {
        kept.extend(saved_texts(&app.shelf(), &other.log).await);
    }
    let proposed = naming(&kept);
    let _ = erasing.besides.try_set(proposed.iter().copied().collect());
    let _ = erasing.proposed.try_set(proposed);
    let _ = erasing.others.try_set(others);
    let _ = erasing.saved.try_set(kept);
}

fn shown(erasing: Erasing, open: &Open) -> Node {
    let app = erasing.app;
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let flow = move |word| text::flow(lang, word);
    let person = PersonField::ALL.iter().filter_map(|field| {
        let value = open.sheet.person(*field).filter(|text| !text.is_empty())?;
        Some(format!("{}: {value}", text::person_field(lang, *field)))
    });
    let person: Vec<String> = person.collect();
    let nobody = person.is_empty();
    let person = person.into_iter().map(|line| view! { <li>{line}</li> });
    let log = open.log.clone();
    let recorded = move || {
        let word = erasing.done.get()?;
        let name = (word == Flow::EraseDone).then(|| pseudonym(&log));
        Some(view! { {flow(word)} {" "} <b>{name}</b> })
    };
    let (log, hint) = (open.log.0.clone(), text::say(lang, Say::HoldToConfirm));
    view! {
        <main class="desk flow">
            <h1>{flow(Flow::EraseTitle)}</h1>
            {banners(app)}
            <p>{flow(Flow::EraseGoes)}</p>
            <ul>{person.collect_view()}</ul>
            {nobody.then(|| view! { <p>{flow(Flow::EraseNobody)}</p> })}
            <p>{flow(Flow::EraseStays)}</p>
            {move || erasing.others.with(|others| others_of(erasing, others))}
            {move || erasing.saved.with(|kept| rows(erasing, &left(kept)))}
            <p role="status">{recorded}</p>
            {hold(flow(Flow::EraseNow), hint, move || run(erasing, log.clone()))}
            {link(Look::Plain, text::say(lang, Say::Back), Route::Where(open.log.0.clone()).to_hash())}
        </main>
    }
}

/// The other jobs of the customer: each goes too, unless it is tapped.
fn others_of(erasing: Erasing, others: &[Summary]) -> Option<Node> {
    let app = erasing.app;
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let row = |job: &Summary| {
        let label = [job.on.clone(), name(lang, job)].join(" · ");
        let log = StoredValue::new(job.log.clone());
        let goes = move || log.with_value(|log| erasing.spared.with(|all| !all.contains(log)));
        row_of(erasing, label, goes, move || {
            let log = log.get_value();
            erasing.spared.update(|all| {
                if !all.remove(&log) {
                    all.insert(log);
                }
            });
        })
    };
    let rows: Vec<Node> = others.iter().map(row).collect();
    (!rows.is_empty()).then(|| {
        view! {
            <p>{text::flow(lang, Flow::EraseOthers)}</p>
            <ul class="flow__jobs">{rows}</ul>
        }
    })
}

/// A row that says whether it goes, and turns that.
fn row_of(
    erasing: Erasing,
    label: String,
    goes: impl Fn() -> bool + Copy + Send + Sync + 'static,
    turn: impl Fn() + 'static,
) -> Node {
    let app = erasing.app;
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let word = move || text::flow(lang, if goes() { Flow::Goes } else { Flow::Stays });
    view! {
        <li>
            <button
                type="button"
                class="kit__row"
                aria-pressed={move || if goes() { "true" } else { "false" }}
                on:click={move |_| turn()}
            >
                <span>{label}</span>
                <b>{word}</b>
            </button>
        </li>
    }
}

/// What may name somebody, each with its words or its count, and whether it goes.
fn rows(erasing: Erasing, left: &Left) -> Node {
    let lang = erasing
        .app
        .settings
        .with_untracked(|settings| settings.lang);
    let all = [
        (Besides::Complaint, Flow::Complaint, left.complaint.clone()),
        (Besides::Notes, Flow::Notes, left.notes.clone()),
        (
            Besides::Signatures,
            Flow::Signatures,
            count(left.signatures),
        ),
        (Besides::Photos, Flow::Photos, count(left.photos.len())),
    ];
    let there = all.into_iter().filter(|(_, _, says)| !says.is_empty());
    let rows = there.map(|(which, title, says)| {
        let goes = move || erasing.besides.with(|all| all.contains(&which));
        let turn = move || {
            erasing.besides.update(|all| {
                if !all.remove(&which) {
                    all.insert(which);
                }
            });
        };
        let names = erasing.proposed.with(|all| all.contains(&which));
        let says = says.join(" / ");
        let title = text::flow(lang, title);
        let label = match names {
            true => format!(
                "{title} ({}): {says}",
                text::flow(lang, Flow::EraseProposed)
            ),
            false => format!("{title}: {says}"),
        };
        row_of(erasing, label, goes, turn)
    });
    let rows: Vec<_> = rows.collect();
    if rows.is_empty() {
        return ().into_node();
    }
    view! {
        <p>{text::flow(lang, Flow::EraseMay)}</p>
        <ul class="flow__jobs">{rows}</ul>
    }
}

fn count(n: usize) -> Vec<String> {
    (n > 0).then(|| n.to_string()).into_iter().collect()
}

fn run(erasing: Erasing, log: String) {
    let app = erasing.app;
    let besides: Vec<Besides> = erasing.besides.get_untracked().into_iter().collect();
    spawn_local(async move {
        let spared = erasing.spared.get_untracked();
        let others = erasing.others.get_untracked().into_iter();
        let others = others
            .map(|job| job.log)
            .filter(|log| !spared.contains(log));
        let logs: Vec<String> = [log].into_iter().chain(others).collect();
        let mut words = Vec::new();
        for log in &logs {
            words.push(erased_one(app, log, &besides).await);
        }
        // What went worst is said.
        let worst = [Flow::EraseHalf, Flow::EraseFailed, Flow::EraseDone];
        let failed = words.contains(&Flow::EraseFailed) && words.contains(&Flow::EraseDone);
        let word = match worst.into_iter().find(|word| words.contains(word)) {
            Some(Flow::EraseFailed) if failed => Flow::EraseHalf,
            Some(word) => word,
            None => Flow::EraseNobody,
        };
        app.lines(&logs, Vec::new()).await;
        app.read_list();
        let _ = erasing.done.try_set(Some(word));
    });
}

/// Erases the customer of one job; says how it went.
async fn erased_one(app: App, log: &str, besides: &[Besides]) -> Flow {
    let shelf = app.shelf();
    let read = here(&shelf, log).await.unwrap_or_default();
    let gone = erased_with(&read, besides).ok();
    let Some(gone) = gone.filter(|_| !read.is_empty()) else {
        return Flow::EraseFailed;
    };
    let word = match shelf.replace(&gone).await {
        Ok(()) if gone.is_empty() => Flow::EraseNobody,
        Ok(()) => Flow::EraseDone,
        Err(0) => Flow::EraseFailed,
        Err(_) => Flow::EraseHalf,
    };
    // The record names them until it is erased.
    if besides.contains(&Besides::Photos) && word == Flow::EraseDone {
        shelf.drop_photos(&left(&read).photos).await;
    }
    word
}
