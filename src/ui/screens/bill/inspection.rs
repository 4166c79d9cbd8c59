//! What inspection and reassembly cost if the repair is declined: asked beside the lines, which say
//! nothing of it.

use super::Bill;
use crate::job::entry::{Event, Price};
use crate::text::{self, Desk, ReportWord, Say};
use crate::trade::money::{AmountError, parse_minor};
use crate::ui::parts::field::Field;
use crate::ui::parts::key::{Look, key};
use crate::ui::view::prelude::*;

/// The amount, or the field for it; nothing before there is a price.
pub(super) fn inspection(bill: &Bill) -> Option<Node> {
    let price = bill.open.sheet.price()?.clone();
    if let Some(refit) = &price.refit {
        let amount = bill.amount(refit.minor);
        let shown = view! {
            <dl class="bill__sums">
                <dt>{bill.word(ReportWord::PriceRefit)}</dt>
                <dd>{amount}</dd>
            </dl>
        };
        return Some(shown);
    }
    let (lang, drafts) = (bill.lang, bill.drafts);
    let typed = drafts.text("refit", "");
    let slip = RwSignal::new(None::<AmountError>);
    let label = text::amount_in(lang, text::say(lang, Say::RefitPrice), &bill.currency);
    let here = bill.clone();
    let save = move || match parse_minor(&typed.get_untracked(), here.digits()) {
        Err(wrong) => slip.set(Some(wrong)),
        Ok(minor) => {
            let refit = Some(here.money(minor));
            drafts.drop_with_tap();
            let price = Price {
                refit,
                ..price.clone()
            };
            here.app.append(vec![Event::Price(price)]);
        }
    };
    let refused = move || slip.get().map(|slip| text::amount_slip(lang, slip));
    let form = view! {
        {Field::decimal("refit", typed).show(label, "", drafts, save.clone())}
        <p class="slip" role="alert">{refused}</p>
        {key(Look::Plain, bill.desk(Desk::SavePrice), save)}
    };
    Some(form)
}
