//! Values that two phones recorded differently, each with a key that settles it, and invoice numbers
//! that cannot be right.

use std::sync::Arc;

use crate::exchange::summary::Summary;
use crate::job::conflict::{conflicts, settle};
use crate::job::entry::EntryId;
use crate::map::OrderedMap;
use crate::report::{conflict_texts, value_line};
use crate::text::{self, ConflictWord, Lang, Pay, Say};
use crate::trade::money::{NumberIssue, number_issues};
use crate::ui::parts::key::{Look, key, link};
use crate::ui::route::Route;
use crate::ui::state::{App, Open};
use crate::ui::view::prelude::*;

/// So many values of one fact are shown; a file with more of them is forged.
const MOST_VALUES: usize = 20;

/// Every fact of the open job that is recorded differently: both values with who and when, and a key
/// for each that settles it.
pub fn open_conflicts(app: App, open: &Arc<Open>) -> Option<Node> {
    let settings = app.settings.get_untracked();
    let (lang, format) = (settings.lang, settings.format());
    let recorded = conflict_texts(&open.sheet, lang, format);
    if recorded.is_empty() {
        return None;
    }
    let locked = open.sheet.read_only();
    let all = recorded.into_iter().enumerate().map(|(place, recorded)| {
        let shown = || recorded.values.iter().take(MOST_VALUES);
        let values = shown().map(|(id, _, full)| {
            view! { <li>{value_line(lang, full, *id == recorded.winner)}</li> }
        });
        let keys = shown().map(|(id, line, full)| {
            // Two values may read alike: then the key says whose it is, too.
            let alike = shown().filter(|it| it.1 == *line).count() > 1;
            let label = text::take_value(lang, if alike { full } else { line });
            let (open, id) = (Arc::clone(open), id.clone());
            key(Look::Plain, label, move || choose(app, &open, place, &id))
        });
        view! {
            <section class="conflict">
                <p>{text::conflict(lang, ConflictWord::Say)}</p>
                <ul class="notes__list">{values.collect_view()}</ul>
                {(!locked).then(|| keys.collect_view())}
            </section>
        }
    });
    let all = all.collect_view();
    Some(view! {
        <h2>{text::conflict(lang, ConflictWord::Title)}</h2>
        {all}
    })
}

/// Settles the fact at a place for one of its values.
fn choose(app: App, open: &Open, place: usize, id: &EntryId) {
    let all = conflicts(&open.sheet);
    let Some(conflict) = all.get(place) else {
        return;
    };
    let mut candidates = conflict.candidates.iter();
    if let Some(chosen) = candidates.find(|it| it.id == *id) {
        app.append(vec![settle(conflict, chosen)]);
    }
}

/// That values differ, with the way to choose; nothing where none do.
pub fn way(open: &Open, lang: Lang) -> Option<Node> {
    let n = conflicts(&open.sheet).len();
    let hash = Route::Notes(open.log.0.clone()).to_hash();
    (n > 0).then(|| {
        view! {
            <p class="banner" role="alert">
                {text::values_differ(lang, n)} {" "}
                {link(Look::Foot, text::conflict(lang, ConflictWord::Settle), hash)}
            </p>
        }
    })
}

/// The jobs among these in which values differ, each with the way to choose.
pub fn in_files(app: App, logs: Vec<String>) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    (move || {
        app.jobs.with(|jobs| {
            let of = |job: &&Summary| job.conflicts > 0 && logs.contains(&job.log);
            let found = jobs.iter().filter(of).map(|job| row(lang, job));
            let found: Vec<Node> = found.collect();
            (!found.is_empty()).then(|| {
                view! {
                    <section class="notice" role="alert">
                        <p>{text::conflict(lang, ConflictWord::InFiles)}</p>
                        {found}
                    </section>
                }
            })
        })
    })
    .into_node()
}

fn row(lang: Lang, job: &Summary) -> Node {
    let label = text::counted(lang, &title(lang, job), job.conflicts);
    link(Look::Plain, label, Route::Notes(job.log.clone()).to_hash())
}

fn title(lang: Lang, job: &Summary) -> String {
    match job.title() {
        plate if plate.is_empty() => text::say(lang, Say::NoPlate).to_owned(),
        plate => plate,
    }
}

/// Invoice numbers that stand on more than one document, and with `gaps` those that are on none.
pub fn numbers(lang: Lang, jobs: &[Summary], gaps: bool) -> Option<Node> {
    let real = || jobs.iter().filter(|job| !job.practice);
    let all = real().flat_map(|job| {
        let numbers = job.invoices.iter();
        numbers.map(|number| (number.as_str(), job.log.as_str()))
    });
    let by_log: OrderedMap<&str, &Summary> =
        OrderedMap::from_iter(real().map(|job| (job.log.as_str(), job)));
    let named = |log: &String| {
        let job = by_log.get(log.as_str());
        job.map(|job| title(lang, job)).unwrap_or_default()
    };
    let said = number_issues(all)
        .into_iter()
        .filter_map(|issue| match issue {
            NumberIssue::Twice { number, jobs } => {
                let jobs = jobs.iter().map(named).collect::<Vec<_>>().join(", ");
                Some(text::number_twice(lang, &number, &jobs))
            }
            NumberIssue::Gap { .. } if !gaps => None,
            NumberIssue::Gap { first, last } if first == last => {
                Some(text::number_missing(lang, &first))
            }
            NumberIssue::Gap { first, last } => Some(text::number_gap(lang, &first, &last)),
        });
    let said: Vec<Node> = said.map(|line| view! { <li>{line}</li> }).collect();
    (!said.is_empty()).then(|| {
        view! {
            <section class="jobs">
                <h2>{text::pay(lang, Pay::NumbersTitle)}</h2>
                <ul class="notes__list">{said}</ul>
            </section>
        }
    })
}
