//! Price, part and payment: the repair in lines, what was fitted, the invoice's number, what came in.
//!
//! A desk screen: it is used at home, or beside the car when the gloves are off.

mod change;
mod inspection;
mod lines;
mod number;
mod parts;
mod payment;
mod template;

use crate::job::bill::above_what_was_agreed;
use crate::job::entry::Money;
use crate::report::money;
use crate::text::{self, Desk, Lang, ReportWord, Say};
use crate::trade::money::minor_digits;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::key::{Look, link};
use crate::ui::parts::strip::banners;
use crate::ui::route::Route;
use crate::ui::state::{App, Open};
use crate::ui::view::prelude::*;
use crate::units::Format;
use std::sync::Arc;

/// The open job's bill, as it stands.
#[derive(Clone)]
struct Bill {
    app: App,
    open: Arc<Open>,
    lang: Lang,
    fmt: Format,
    currency: String,
    drafts: Drafts,
}

impl Bill {
    fn of(app: App, open: Arc<Open>) -> Self {
        let settings = app.settings.get_untracked();
        let price = open.sheet.price();
        Self {
            app,
            lang: settings.lang,
            fmt: settings.format(),
            currency: price.map_or_else(
                || settings.currency.clone(),
                |price| price.repair.currency.clone(),
            ),
            drafts: Drafts::named(app, format!("{}:bill", open.log.0)),
            open,
        }
    }

    fn desk(&self, desk: Desk) -> &'static str {
        text::desk(self.lang, desk)
    }

    fn word(&self, word: ReportWord) -> &'static str {
        text::report(self.lang, word)
    }

    fn digits(&self) -> u8 {
        minor_digits(&self.currency)
    }

    fn money(&self, minor: i64) -> Money {
        Money {
            minor,
            currency: self.currency.clone(),
        }
    }

    fn amount(&self, minor: i64) -> String {
        money(self.fmt, &self.money(minor))
    }
}

/// Price and payment of the open job.
pub fn bill(app: App) -> Node {
    (move || {
        let Some(open) = app.open.get() else {
            return ().into_node();
        };
        let bill = Bill::of(app, open);
        let back = Route::Job(bill.open.log.0.clone()).to_hash();
        // Once the job has ended it is the payment that somebody comes for.
        let ended = bill.open.sheet.ended().is_some();
        let first = ended.then(|| payment::payment(&bill));
        let last = (!ended).then(|| payment::payment(&bill));
        view! {
            <main class="desk bill">
                <h1>{bill.desk(Desk::BillTitle)}</h1>
                {banners(app)}
                {warning(&bill)}
                {first}
                {lines::lines(&bill)}
                {inspection::inspection(&bill)}
                {parts::parts(&bill)}
                {last}
                {link(Look::Primary, text::say(bill.lang, Say::Resume), back)}
            </main>
        }
    })
    .into_node()
}

/// A price above what the customer said yes to.
fn warning(bill: &Bill) -> Option<Node> {
    let agreed = above_what_was_agreed(&bill.open.sheet)?;
    let say = text::above_agreed(bill.lang, &money(bill.fmt, &agreed));
    Some(view! { <p class="slip" role="alert">{say}</p> })
}
