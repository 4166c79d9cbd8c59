//! The table for whoever keeps the books, from the shop's own screen.

use crate::ui::react::spawn_local;

use crate::exchange::invoices::{rows, table};
use crate::exchange::pieces::Waits;
use crate::job::entry::LogId;
use crate::text::{self, Lang, ShopWord};
use crate::ui::files::saved_texts;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::today;
use crate::ui::screens::report_screen;
use crate::ui::state::App;
use crate::ui::view::prelude::*;

/// The key that makes it, of all jobs.
pub(super) fn books_key(app: App, lang: Lang) -> Node {
    key(
        Look::Plain,
        text::shop_word(lang, ShopWord::SaveBooks),
        move || spawn_local(save(app, lang)),
    )
}

/// Reads every job again: the account rests on its entries, not on its line.
async fn save(app: App, lang: Lang) {
    let logs: Vec<String> = app.jobs.with_untracked(|jobs| {
        let real = jobs.iter().filter(|job| !job.practice);
        real.map(|job| job.log.clone()).collect()
    });
    let (shelf, all) = (app.shelf(), logs.len());
    let mut found = Vec::new();
    app.work.begin();
    for (place, log) in (1..).zip(logs) {
        if app.work.between(place, all).await.is_err() {
            app.work.end();
            return;
        }
        let texts = saved_texts(&shelf, &log).await;
        found.extend(rows(&LogId(log), &texts));
    }
    app.work.end();
    let made = Some(table(found).into_bytes());
    report_screen::offer(app, text::books_file(lang, &today()), "text/csv", made).await;
}
