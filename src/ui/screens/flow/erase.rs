//! Letting go of a customer: what goes, what stays, and what may name them besides.

use crate::ui::react::spawn_local;

use crate::exchange::SavedText;
use crate::exchange::erase::{Besides, Left, erased_with, left, pseudonym};
use crate::job::entry::PersonField;
use crate::map::OrderedSet;
use crate::text::{self, Flow, Say};
use crate::ui::files::{here, saved_texts};
use crate::ui::parts::hold::hold;
use crate::ui::parts::key::{Look, link};
use crate::ui::parts::strip::banners;
use crate::ui::route::Route;
use crate::ui::state::{App, Open};
use crate::ui::view::prelude::*;

/// What is to go besides the personal facts, and how it went.
#[derive(Clone, Copy)]
struct Erasing {
    app: App,
    saved: RwSignal<Vec<SavedText>>,
    besides: RwSignal<OrderedSet<Besides>>,
    done: RwSignal<Option<Flow>>,
}

/// The screen that erases the customer of the open job.
pub fn erase(app: App) -> Node {
    let erasing = Erasing {
        app,
        saved: RwSignal::new(Vec::new()),
        besides: RwSignal::new(OrderedSet::new()),
        done: RwSignal::new(None),
    };
    (move || {
        let Some(open) = app.open.get() else {
            return ().into_node();
        };
        let log = open.log.0.clone();
        spawn_local(async move {
            let saved = saved_texts(&app.shelf(), &log).await;
            let _ = erasing.saved.try_set(saved);
        });
        shown(erasing, &open)
    })
    .into_node()
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
            {move || erasing.saved.with(|saved| rows(erasing, &left(saved)))}
            <p role="status">{recorded}</p>
            {hold(flow(Flow::EraseNow), hint, move || run(erasing, log.clone()))}
            {link(Look::Plain, text::say(lang, Say::Back), Route::Where(open.log.0.clone()).to_hash())}
        </main>
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
        let turn = move |_| {
            erasing.besides.update(|all| {
                if !all.remove(&which) {
                    all.insert(which);
                }
            });
        };
        let word = move || text::flow(lang, if goes() { Flow::Goes } else { Flow::Stays });
        view! {
            <li>
                <button
                    type="button"
                    class="kit__row"
                    aria-pressed={move || if goes() { "true" } else { "false" }}
                    on:click=turn
                >
                    <span>{text::flow(lang, title)} {": "} {says.join(" / ")}</span>
                    <b>{word}</b>
                </button>
            </li>
        }
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
        let shelf = app.shelf();
        let read = here(&shelf, &log).await.unwrap_or_default();
        let gone = erased_with(&read, &besides).ok();
        let Some(gone) = gone.filter(|_| !read.is_empty()) else {
            erasing.done.set(Some(Flow::EraseFailed));
            return;
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
        app.lines(std::slice::from_ref(&log), Vec::new()).await;
        app.read_list();
        let _ = erasing.done.try_set(Some(word));
    });
}
