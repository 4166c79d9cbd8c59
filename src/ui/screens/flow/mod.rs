//! Files between the shop and its vans: the day out, the day back, the confirmation, and what the shop
//! lets go of.

mod arrived;
mod day;
mod erase;
mod missing;
mod out;
mod shop;

pub use arrived::arrived;
pub use day::day;
pub use erase::erase;
pub use missing::{missing, ways};
pub use out::out;
pub use shop::{keep_it as keep_shop, shop};

use crate::ui::react::spawn_local;

use crate::exchange::bundle;
use crate::exchange::confirmation::{is_named, not_held};
use crate::exchange::summary::Summary;
use crate::exchange::{self, SavedText};
use crate::job::practice::is_practice;
use crate::slate;
use crate::text::{self, Flow, Lang};
use crate::ui::files::with_bytes;
use crate::ui::screens::report_screen;
use crate::ui::state::{App, Open};
use crate::ui::view::prelude::*;

/// When a job is to be done, on its row.
pub fn slot_line(job: &Summary, lang: Lang) -> Option<Node> {
    let says = text::slot_words(lang, &job.day, &job.time, &job.van);
    let open = job.ending.is_empty() && !job.day.is_empty();
    open.then(|| view! { <span class="job__slot">{says}</span> })
}

/// Whether the shop has a job, on its row; nothing before the first confirmation.
pub fn in_shop_line(app: App, job: &Summary, lang: Lang) -> Option<Node> {
    let (log, runs, let_go) = (job.log.clone(), job.runs.clone(), job.let_go);
    let practice = job.practice;
    let says = move || {
        let word = app.held.with(|held| {
            let known = !held.is_empty() && !practice;
            known.then(|| word(is_named(&log, &runs, held)))
        })?;
        let word = if let_go { Flow::LetGo } else { word };
        Some(view! { <span class="job__next">{text::flow(lang, word)}</span> })
    };
    Some(says.into_node())
}

/// Whether the shop has the open job, by the digests of its confirmations.
pub fn in_shop(app: App, open: &Open) -> Option<Node> {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let held = app.held.get();
    if held.is_empty() || is_practice(&open.sheet) {
        return None;
    }
    let records = slate::records(open.sheet.entries()).unwrap_or_default();
    let saved: Vec<SavedText> = records
        .into_iter()
        .map(|it| SavedText {
            log: it.log,
            id: it.id,
            text: it.text,
        })
        .collect();
    let word = word(not_held(&open.log.0, &saved, &held).is_empty());
    Some(view! { <p class="hint">{text::flow(lang, word)}</p> })
}

const fn word(in_shop: bool) -> Flow {
    if in_shop {
        Flow::InShop
    } else {
        Flow::NotInShop
    }
}

/// Offers these logs as one file.
fn save(app: App, logs: &[exchange::export::Log], stem: &str) {
    let made = exchange::export(logs).ok().map(String::into_bytes);
    let name = format!("{stem}.json");
    spawn_local(report_screen::offer(app, name, "application/json", made));
}

/// Offers them as one zip with the pictures and voice notes that they name.
fn save_with(app: App, logs: &[exchange::export::Log], stem: &str) {
    let (text, stem) = (exchange::export(logs).ok(), stem.to_owned());
    spawn_local(async move {
        let made = match text {
            Some(text) => with_bytes(&app.shelf(), &text, &format!("{stem}.json"))
                .await
                .ok(),
            None => None,
        };
        report_screen::offer(app, format!("{stem}.zip"), bundle::MIME, made).await;
    });
}
