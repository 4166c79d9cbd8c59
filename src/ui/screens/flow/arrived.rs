//! What follows from the files that came in: settings to take over, a receipt taken or to give.

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::job::flow::{SHOP_LOG, YARD_LOG};
use crate::text::{self, Flow};
use crate::ui::files::Outcome;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::today;
use crate::ui::screens::flow::{save, shop};
use crate::ui::state::App;

/// Under the results of an import.
pub fn arrived(app: App, outcomes: &[(String, Outcome)]) -> AnyView {
    let logs: Vec<String> = outcomes
        .iter()
        .filter_map(|(_, outcome)| match outcome {
            Outcome::Taken { logs, .. } => Some(logs.clone()),
            Outcome::Refused(_) | Outcome::NotUnpacked => None,
        })
        .flatten()
        .collect();
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let has = |log: &str| logs.iter().any(|it| it == log);
    let receipt = has(YARD_LOG);
    let (from_yard, empty) = (receipt || has(SHOP_LOG), logs.is_empty());
    view! {
        {receipt.then(|| view! { <p role="status">{text::flow(lang, Flow::ReceiptCame)}</p> })}
        {has(SHOP_LOG).then(|| shop::offer(app))}
        {(!from_yard && !empty).then(|| give(app, logs))}
    }
    .into_any()
}

/// The key that answers a van.
fn give(app: App, logs: Vec<String>) -> AnyView {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let press = move || {
        let logs = logs.clone();
        spawn_local(async move {
            let log = app.receipt(&logs).await;
            let log: Vec<_> = log.into_iter().collect();
            save(app, &log, &text::receipt_file_stem(lang, &today()));
        });
    };
    view! {
        {key(Look::Plain, text::flow(lang, Flow::GiveReceipt), press)}
        <p class="hint">{text::flow(lang, Flow::ReceiptSay)}</p>
    }
    .into_any()
}
