//! What follows from the files that came in: settings to take over, a confirmation taken or to give.

use crate::ui::react::spawn_local;

use crate::drawing::code::code;
use crate::exchange::paper;
use crate::job::flow::{CONFIRMATIONS_LOG, SHOP_LOG};
use crate::map::OrderedSet;
use crate::text::{self, Flow, Lang, Paper};
use crate::ui::files::Outcome;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::picture::inserted;
use crate::ui::parts::today;
use crate::ui::screens::conflicts;
use crate::ui::screens::flow::{save, shop};
use crate::ui::state::App;
use crate::ui::view::prelude::*;

/// Under the results of an import.
pub fn arrived(app: App, outcomes: &[(String, Outcome)]) -> Node {
    let logs: Vec<String> = outcomes
        .iter()
        .filter_map(|(_, outcome)| match outcome {
            Outcome::Taken { logs, .. } => Some(logs.clone()),
            Outcome::Refused(_) | Outcome::NotUnpacked | Outcome::Eases(..) => None,
        })
        .flatten()
        .collect();
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let has = |log: &str| logs.iter().any(|it| it == log);
    let confirmation = has(CONFIRMATIONS_LOG);
    let (from_shop, empty) = (confirmation || has(SHOP_LOG), logs.is_empty());
    let jobs = logs.clone();
    let numbers = move || {
        let came = !jobs.is_empty();
        app.jobs
            .with(|jobs| conflicts::numbers(lang, jobs, false).filter(|_| came))
    };
    let differ = conflicts::in_files(app, logs.clone());
    let other_van = has(SHOP_LOG).then(|| other_van(app, logs.clone()));
    view! {
        {other_van}
        {differ}
        {numbers}
        {confirmation.then(|| view! { <p role="status">{text::flow(lang, Flow::ConfirmationCame)}</p> })}
        {has(SHOP_LOG).then(|| shop::offer(app))}
        {(!from_shop && !empty).then(|| give(app, logs))}
    }
}

/// That a day file is for another van than this phone's.
fn other_van(app: App, logs: Vec<String>) -> Node {
    let settings = app.settings.get_untracked();
    let (lang, here) = (settings.lang, settings.van);
    (move || {
        let vans: OrderedSet<String> = app.jobs.with(|jobs| {
            let came = jobs.iter().filter(|job| logs.contains(&job.log));
            let open = came.filter(|job| job.ending.is_empty() && !job.van.is_empty());
            open.map(|job| job.van.clone()).collect()
        });
        let own = here.is_empty() || vans.iter().all(|van| *van == here);
        (!own).then(|| {
            let vans = vans.into_iter().filter(|van| *van != here);
            let vans = vans.collect::<Vec<_>>().join(", ");
            view! { <p class="banner" role="alert">{text::file_for_van(lang, &vans, &here)}</p> }
        })
    })
    .into_node()
}

/// The keys that answer a van: a file, or codes on this screen.
fn give(app: App, logs: Vec<String>) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let codes = RwSignal::new(None::<Vec<String>>);
    let logs = StoredValue::new(logs);
    let file = move || {
        spawn_local(async move {
            let made = app.confirmation_with_news(&logs.get_value()).await;
            save(app, &made, &text::confirmation_file_stem(lang, &today()));
        });
    };
    let show = move || {
        spawn_local(async move {
            let log = app.confirmation(&logs.get_value()).await;
            let entry = log.and_then(|(_, _, mut texts)| texts.pop());
            let made = entry.and_then(|entry| paper::confirmation_symbols(&entry));
            let _ = codes.try_set(Some(made.unwrap_or_default()));
        });
    };
    view! {
        {key(Look::Plain, text::flow(lang, Flow::GiveConfirmation), file)}
        {key(Look::Plain, text::flow(lang, Flow::ShowConfirmation), show)}
        <p class="hint">{text::flow(lang, Flow::ConfirmationSay)}</p>
        {move || codes.with(|codes| codes.as_deref().map(|codes| shown(lang, codes)))}
    }
}

/// The codes of a confirmation, one under the other.
fn shown(lang: Lang, codes: &[String]) -> Node {
    let of = codes.len();
    let say = match of {
        0 => Flow::TooLongForCodes,
        _ => Flow::CodesOfConfirmation,
    };
    let drawn = (1..).zip(codes).filter_map(|(nth, text)| {
        let caption = text::paper(lang, Paper::CodeOf { nth, of });
        let svg = code(text)?.to_svg(&caption);
        Some(view! {
            <figure class="report__code">
                {inserted(svg, "report__symbol")}
                <figcaption>{caption}</figcaption>
            </figure>
        })
    });
    let drawn: Vec<_> = drawn.collect();
    view! {
        <p role="status">{text::flow(lang, say)}</p>
        {drawn}
    }
}
