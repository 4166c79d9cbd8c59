//! The invoice's number, and what came in.

use super::Bill;
use crate::job::bill::still_to_pay;
use crate::job::entry::{Event, Paid, PaidHow};
use crate::report::money;
use crate::text::{self, Desk, ReportWord};
use crate::trade::money::{AmountError, is_van_mark, next_invoice, parse_minor, plain};
use crate::ui::parts::field::Field;
use crate::ui::parts::key::{Look, key};
use crate::ui::view::prelude::*;

/// The setting that holds the last number given, for numbers whose job has left the phone.
const LAST: &str = "last_invoice";

/// Number and payments; nothing before there is a price.
pub(super) fn payment(bill: &Bill) -> Option<Node> {
    bill.open.sheet.price()?;
    let came_in = bill.open.sheet.payments().map(|(_, paid)| {
        let how = text::paid_how(bill.lang, paid.how);
        view! { <li><span>{how}</span><span>{money(bill.fmt, &paid.amount)}</span></li> }
    });
    let came_in = came_in.collect_view();
    let open = still_to_pay(&bill.open.sheet).filter(|open| open.minor > 0);
    let still = open.as_ref().map(|open| {
        view! {
            <dl class="bill__sums">
                <dt>{bill.desk(Desk::StillToPay)}</dt>
                <dd>{money(bill.fmt, open)}</dd>
            </dl>
        }
    });
    Some(view! {
        <section class="bill__part">
            <h2>{bill.desk(Desk::BillPayment)}</h2>
            {invoice(bill)}
            <ul class="bill__lines">{came_in}</ul>
            {still}
            {open.map(|open| pay(bill, open.minor))}
        </section>
    })
}

/// The number, or the key that gives it; practice never takes one.
fn invoice(bill: &Bill) -> Node {
    let opened = bill.open.sheet.opened();
    if opened.is_some_and(|it| it.practice.is_some()) {
        return ().into_node();
    }
    if let Some(number) = bill.open.sheet.invoice() {
        return view! {
            <dl class="bill__sums">
                <dt>{bill.word(ReportWord::InvoiceHead)}</dt>
                <dd>{number.to_owned()}</dd>
            </dl>
        };
    }
    let mark = bill
        .app
        .settings
        .with_untracked(|settings| settings.van.clone());
    if !is_van_mark(&mark) {
        return view! { <p class="hint">{bill.desk(Desk::VanMarkNeeded)}</p> };
    }
    let app = bill.app;
    let give = move || {
        let shelf = app.shelf();
        let kept = shelf.setting(LAST).unwrap_or_default();
        let number = app.jobs.with_untracked(|list| {
            let known = list.iter().map(|job| job.invoice.as_str());
            next_invoice(&mark, known.chain([kept.as_str()]))
        });
        shelf.set_setting(LAST, &number);
        app.append(vec![Event::Invoice(number)]);
    };
    key(Look::Plain, bill.desk(Desk::GiveInvoice), give)
}

/// How much came in, and a key for each way; a card's number is never asked for.
fn pay(bill: &Bill, open: i64) -> Node {
    let drafts = bill.drafts;
    let text = drafts.text("paid", bill.fmt.marked(&plain(open, bill.digits())));
    let slip = RwSignal::new(None::<AmountError>);
    let label = text::amount_in(bill.lang, bill.word(ReportWord::PaidHead), &bill.currency);
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
                    here.app.append(vec![Event::Paid(Paid { how, amount })]);
                }
            },
        )
    });
    let lang = bill.lang;
    view! {
        {Field::decimal("paid", text).show(label, "", drafts, || {})}
        <p class="slip" role="alert">{move || slip.get().map(|slip| text::amount_slip(lang, slip))}</p>
        <div class="keys-grid">{keys.collect_view()}</div>
    }
}
