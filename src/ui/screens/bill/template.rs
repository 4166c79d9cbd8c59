//! The shop's lines of an estimate, by kind of wheel end: taken into this one, or made out of it.

use super::Bill;
use super::lines::{taxed, write};
use crate::job::kind;
use crate::job::practice::is_practice;
use crate::text::{self, Flow};
use crate::trade::money::Estimate;
use crate::ui::parts::key::{Look, key};
use crate::ui::screens::flow::keep_shop;
use crate::ui::view::prelude::*;

/// The key that begins with the shop's lines; nothing where it has none for this kind.
pub(super) fn take(bill: &Bill) -> Option<Node> {
    let kind = kind(&bill.open.sheet);
    let lines = bill.app.shop.with(|shop| {
        let same = shop.currency.is_empty() || shop.currency == bill.currency;
        shop.template(kind).filter(|_| same).map(<[_]>::to_vec)
    })?;
    let here = bill.clone();
    let label = text::flow(bill.lang, Flow::TakeTemplate);
    Some(key(Look::Plain, label, move || {
        let _ = write(&here, taxed(&here, lines.clone()));
    }))
}

/// The key that keeps these lines for the next estimates; practice has no prices of its own.
pub(super) fn keep(bill: &Bill, estimate: &Estimate) -> Option<Node> {
    let (app, kind, lines) = (bill.app, kind(&bill.open.sheet), estimate.lines.clone());
    let known = app
        .shop
        .with(|shop| shop.template(kind) == Some(lines.as_slice()));
    if known || is_practice(&bill.open.sheet) {
        return None;
    }
    let label = text::flow(bill.lang, Flow::KeepTemplate);
    Some(key(Look::Foot, label, move || {
        let lines = lines.clone();
        keep_shop(app, move |shop| shop.set_template(kind, lines));
    }))
}
