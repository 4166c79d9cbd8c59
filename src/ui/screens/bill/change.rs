//! Less than was agreed, and money that goes back.

use super::{Bill, payment};
use crate::job::account::{Account, Stage};
use crate::job::entry::{Discount, Event};
use crate::text::{self, Pay};
use crate::trade::money::{AmountError, parse_minor, plain};
use crate::ui::parts::field::Field;
use crate::ui::parts::key::{Look, key};
use crate::ui::view::prelude::*;

/// The forms, folded away until they are needed; what came in too much is offered at once.
pub(super) fn changes(bill: &Bill, account: &Account) -> Option<Node> {
    let over = account.overpaid();
    let may = account.agreed() > 0 || account.received() > 0;
    may.then(|| {
        view! {
            <details class="more" open={over > 0}>
                <summary class="key key--foot">{text::pay(bill.lang, Pay::MoreChanges)}</summary>
                {(over == 0 && account.agreed() > 0).then(|| discount(bill))}
                {(account.received() > 0).then(|| refund(bill, account, over))}
            </details>
        }
    })
}

fn discount(bill: &Bill) -> Node {
    let (lang, drafts) = (bill.lang, bill.drafts);
    let [amount, reason] = ["discount", "discount_why"].map(|name| drafts.text(name, ""));
    let slip = RwSignal::new(None::<AmountError>);
    let here = bill.clone();
    let give = move || match parse_minor(&amount.get_untracked(), here.digits()) {
        Err(wrong) => slip.set(Some(wrong)),
        Ok(minor) => {
            let reason = reason.get_untracked().trim().to_owned();
            let amount = here.money(minor);
            drafts.drop_with_tap();
            here.app
                .append(vec![Event::Discount(Discount { amount, reason })]);
        }
    };
    let pay = |say| text::pay(lang, say);
    let label = text::amount_in(lang, pay(Pay::Discount), &bill.currency);
    view! {
        {Field::decimal("discount", amount).show(label, "", drafts, || {})}
        {Field::words("discount_why", reason).show(pay(Pay::DiscountWhy), "", drafts, || {})}
        <p class="slip" role="alert">{move || slip.get().map(|slip| text::amount_slip(lang, slip))}</p>
        {key(Look::Plain, pay(Pay::GiveDiscount), give)}
    }
}

fn refund(bill: &Bill, account: &Account, over: i64) -> Node {
    let known = match account.stage {
        Stage::Due if over > 0 => bill.fmt.marked(&plain(over, bill.digits())),
        _ => String::new(),
    };
    let text = bill.drafts.text("refund", known);
    let label = text::amount_in(bill.lang, text::pay(bill.lang, Pay::Refund), &bill.currency);
    view! {
        <h3>{text::pay(bill.lang, Pay::GiveBack)}</h3>
        {payment::by_way(bill, "refund", label, text, Event::Refunded)}
    }
}
