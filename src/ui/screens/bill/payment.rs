//! What is to pay and what came in: the account as it stands, and the keys that change it.

use super::{Bill, change, number};
use crate::job::account::{Account, ChargeState, Stage, account};
use crate::job::entry::{Event, Paid, PaidHow};
use crate::report::{money, part_name, warnings};
use crate::text::{self, Customer, Desk, Pay, ReportWord};
use crate::trade::money::{AmountError, BilledFor, parse_minor, plain};
use crate::ui::parts::field::Field;
use crate::ui::parts::key::{Look, key};
use crate::ui::view::prelude::*;

/// The account, the numbers and the payments; nothing before anything was asked or paid.
pub(super) fn payment(bill: &Bill) -> Option<Node> {
    let account = account(&bill.open.sheet);
    let any = bill.open.sheet.price().is_some() || !account.charges.is_empty();
    if !any && account.paid == 0 {
        return None;
    }
    let came_in = bill.open.sheet.payments().map(|(_, paid)| {
        let how = text::paid_how(bill.lang, paid.how);
        let how = match paid.amount.minor < 0 {
            true => format!("{}, {how}", text::pay(bill.lang, Pay::Refunded)),
            false => how.to_owned(),
        };
        view! { <li><span>{how}</span><span>{money(bill.fmt, &paid.amount)}</span></li> }
    });
    let came_in = came_in.collect_view();
    let says = warnings(bill.lang, &account);
    let says = says.map(|say| view! { <p class="slip" role="alert">{say}</p> });
    let open = account.stage != Stage::Due || account.still_to_pay() > 0;
    Some(view! {
        <section class="bill__part">
            <h2>{bill.desk(Desk::BillPayment)}</h2>
            {charges(bill, &account)}
            {says.collect_view()}
            {number::number(bill, &account)}
            <ul class="bill__lines">{came_in}</ul>
            {balance(bill, &account)}
            {open.then(|| pay(bill, account.still_to_pay()))}
            {change::changes(bill, &account)}
        </section>
    })
}

/// What the customer was asked for, each with its answer.
fn charges(bill: &Bill, account: &Account) -> Node {
    let repaired = account
        .charges
        .iter()
        .any(|charge| charge.what == BilledFor::Repair && charge.state != ChargeState::Declined);
    let rows = account.charges.iter().map(|charge| {
        let name = part_name(bill.lang, charge.what, charge.corner, charge.text);
        let answer = match charge.state {
            ChargeState::Declined => Pay::Declined,
            ChargeState::Agreed if charge.what == BilledFor::Inspection && repaired => {
                Pay::Included
            }
            ChargeState::Agreed | ChargeState::Done => Pay::Approved,
        };
        let amount = charge.amount.map(|minor| bill.amount(minor));
        view! {
            <li>
                <span><b>{name}</b> {" "} {text::pay(bill.lang, answer)}</span>
                <span>{amount}</span>
            </li>
        }
    });
    let off = account.discounts.iter().map(|(_, discount)| {
        let name = text::pay(bill.lang, Pay::Discount);
        view! {
            <li>
                <span><b>{name}</b> {" "} {discount.reason.clone()}</span>
                <span>{bill.amount(-discount.amount.minor)}</span>
            </li>
        }
    });
    view! { <ul class="bill__lines">{rows.collect_view()} {off.collect_view()}</ul> }
}

/// What there is to pay, what is still to pay, and what came in too much.
fn balance(bill: &Bill, account: &Account) -> Node {
    let due = account.stage == Stage::Due;
    let pay = |say| text::pay(bill.lang, say);
    let rows = [
        (
            due,
            text::customer(bill.lang, Customer::ToPay),
            account.to_pay(),
        ),
        (
            !due && account.agreed() > 0,
            text::customer(bill.lang, Customer::WhenFinished),
            account.agreed(),
        ),
        (
            !due && account.received() > 0,
            pay(Pay::PaidAhead).to_owned(),
            account.received(),
        ),
        (
            account.still_to_pay() > 0,
            bill.desk(Desk::StillToPay).to_owned(),
            account.still_to_pay(),
        ),
        (
            account.overpaid() > 0,
            pay(Pay::Overpaid).to_owned(),
            account.overpaid(),
        ),
    ];
    let rows = rows.into_iter().filter(|(is, ..)| *is);
    let rows = rows.map(|(_, name, minor)| {
        view! { <dt>{name}</dt> <dd>{bill.amount(minor)}</dd> }
    });
    let settled = account.is_settled() && account.to_pay() > 0;
    view! {
        <dl class="bill__sums">{rows.collect_view()}</dl>
        {settled.then(|| view! { <p role="status">{pay(Pay::PaidInFull)}</p> })}
    }
}

/// How much came in, and a key for each way; a card's number is never asked for.
fn pay(bill: &Bill, open: i64) -> Node {
    let known = match open {
        0 => String::new(),
        open => bill.fmt.marked(&plain(open, bill.digits())),
    };
    let text = bill.drafts.text("paid", known);
    let label = text::amount_in(bill.lang, bill.word(ReportWord::PaidHead), &bill.currency);
    by_way(bill, "paid", label, text, Event::Paid)
}

/// A field for an amount, and a key for each way in which it was paid.
pub(super) fn by_way(
    bill: &Bill,
    name: &'static str,
    label: String,
    text: RwSignal<String>,
    event: fn(Paid) -> Event,
) -> Node {
    let drafts = bill.drafts;
    let slip = RwSignal::new(None::<AmountError>);
    let keys = PaidHow::ALL.iter().map(|how| {
        let (here, how) = (bill.clone(), *how);
        key(
            Look::Plain,
            text::paid_how(bill.lang, how),
            move || match parse_minor(&text.get_untracked(), here.digits()) {
                Err(wrong) => slip.set(Some(wrong)),
                Ok(minor) => {
                    let amount = here.money(minor);
                    drafts.drop_with_tap();
                    here.app.append(vec![event(Paid { how, amount })]);
                }
            },
        )
    });
    let lang = bill.lang;
    view! {
        {Field::decimal(name, text).show(label, "", drafts, || {})}
        <p class="slip" role="alert">{move || slip.get().map(|slip| text::amount_slip(lang, slip))}</p>
        <div class="keys-grid">{keys.collect_view()}</div>
    }
}
