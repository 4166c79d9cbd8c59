//! What the shop has not got: running numbers of its vans that are in none of their files.

use crate::ui::react::spawn_local;

use crate::exchange::gaps::{Run, gaps, holders, runs};
use crate::exchange::vans::Vans;
use crate::text::{self, Flow};
use crate::ui::parts::key::{Look, link};
use crate::ui::route::Route;
use crate::ui::screens::shop_lists::van_label;
use crate::ui::state::App;
use crate::ui::view::prelude::*;

/// The shop's ways to a day's file and to the shop's settings.
pub fn ways(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    view! {
        <nav class="where__ways">
            {link(Look::Plain, text::flow(lang, Flow::DayTitle), Route::Day.to_hash())}
            {link(Look::Plain, text::flow(lang, Flow::ShopTitle), Route::Shop.to_hash())}
        </nav>
    }
}

/// What is missing, by device and holder; nothing on a van, which never has all of the shop's.
pub fn missing(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let beside = RwSignal::new(None::<Vec<Run>>);
    spawn_local(async move {
        let mut all = Vec::new();
        for log in app.shelf().logs().await {
            if log.contains(':') {
                all.extend(runs(app.read_log(&log).await.entries()));
            }
        }
        let _ = beside.try_set(Some(all));
    });
    (move || {
        let mut all = beside.get()?;
        if app.held.with(|held| !held.is_empty()) {
            return None;
        }
        let jobs = app.jobs.get();
        let vans = Vans::of(&jobs);
        all.extend(jobs.into_iter().flat_map(|job| job.runs));
        let (gaps, holders) = (gaps(&all), holders(&all));
        let rows = gaps.iter().map(|gap| {
            let by = holders
                .get(gap.device.as_str())
                .copied()
                .unwrap_or_default();
            let van = van_label(lang, &vans.name(&gap.device));
            let says = text::gap(lang, &van, by, gap.from, gap.to);
            view! { <li>{says}</li> }
        });
        (!gaps.is_empty()).then(|| {
            view! {
                <section class="jobs">
                    <h2>{text::flow(lang, Flow::GapsTitle)}</h2>
                    <p class="hint">{text::flow(lang, Flow::GapsSay)}</p>
                    <ul>{rows.collect_view()}</ul>
                </section>
            }
        })
    })
    .into_node()
}
