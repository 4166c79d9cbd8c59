//! Earlier visits of the same vehicle: when, at which corner, what was found and done.

use crate::exchange::find::{Visit, earlier_visits};
use crate::exchange::summary::Visited;
use crate::job::entry::Ending;
use crate::text::{self, Lang, VehicleWord};
use crate::trade::play::Decision;
use crate::trade::vehicle::Corner;
use crate::ui::route::Route;
use crate::ui::state::App;
use crate::ui::view::prelude::*;

/// So many visits are shown; the rest is found by the plate on home.
const SHOWN: usize = 3;

/// The visits before this job, of a vehicle with this VIN or this plate as they are typed.
pub fn visits(
    app: App,
    log: String,
    vin: impl Fn() -> String + 'static,
    plate: impl Fn() -> String + 'static,
) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    (move || {
        let (vin, plate) = (vin(), plate());
        app.jobs
            .with(|jobs| shown(lang, &earlier_visits(jobs, &vin, &plate, &log)))
    })
    .into_node()
}

fn shown(lang: Lang, all: &[Visit<'_>]) -> Option<Node> {
    let rows: Vec<Node> = all
        .iter()
        .take(SHOWN)
        .map(|visit| row(lang, visit))
        .collect();
    let more = all.len().saturating_sub(SHOWN);
    let more = (more > 0).then(|| view! { <p>{text::more_rows(lang, more)}</p> });
    (!all.is_empty()).then(|| {
        view! {
            <section class="visits">
                <h2>{text::earlier_visits(lang, all.len())}</h2>
                <ul>{rows}</ul>
                {more}
            </section>
        }
    })
}

fn row(lang: Lang, visit: &Visit<'_>) -> Node {
    let job = visit.job;
    let ending = Ending::from_code(&job.ending).filter(|_| !job.is_open());
    let ending = ending.map_or_else(
        || text::vehicle_word(lang, VehicleWord::StillOpen),
        |ending| text::ending(lang, ending).0,
    );
    let corners = job.visited.iter().filter_map(|at| corner(lang, at));
    let corners = corners.map(|line| view! { <span>{line}</span> });
    let other = visit.other_vin.then(|| {
        view! { <span>{text::vehicle_word(lang, VehicleWord::OtherVin)}</span> }
    });
    view! {
        <li>
            <a class="key visit" href={Route::Where(job.log.clone()).to_hash()}>
                <b>{job.on.clone()} {" · "} {ending}</b>
                {corners.collect_view()}
                {other}
            </a>
        </li>
    }
}

fn corner(lang: Lang, at: &Visited) -> Option<String> {
    let corner = Corner::from_code(&at.corner)?;
    let found = Decision::from_code(&at.found).map_or_else(
        || text::vehicle_word(lang, VehicleWord::NoDecision),
        |decision| text::decision(lang, decision),
    );
    let done = match at.replaced {
        true => VehicleWord::HubReplaced,
        false => VehicleWord::NothingReplaced,
    };
    let done = text::vehicle_word(lang, done);
    Some(text::visit_corner(
        lang,
        text::corner_title(lang, corner),
        found,
        done,
    ))
}
