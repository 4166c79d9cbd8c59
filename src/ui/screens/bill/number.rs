//! The numbers of invoices and credit notes: what stands under them, and the key that gives the next.

use super::{Bill, lines};
use crate::job::account::{Account, Stage};
use crate::job::entry::Event;
use crate::job::practice::is_practice;
use crate::text::{self, Desk, Pay, ReportWord};
use crate::trade::money::{Invoice, is_van_mark, next_invoice};
use crate::ui::parts::field::Field;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::route::Route;
use crate::ui::view::prelude::*;

/// The documents, and the key that numbers the next one; practice never takes a number.
pub(super) fn number(bill: &Bill, account: &Account) -> Node {
    if is_practice(&bill.open.sheet) {
        return ().into_node();
    }
    let given = account.documents.iter().map(|document| {
        let name = match document.credits {
            None => bill.word(ReportWord::InvoiceHead),
            Some(_) => text::pay(bill.lang, Pay::CreditNumber),
        };
        view! { <dt>{name}</dt> <dd>{document.number.clone()}</dd> }
    });
    let given = given.collect_view();
    let any = !account.documents.is_empty();
    let show = any.then(|| {
        let hash = Route::Report(bill.open.log.0.clone()).to_hash();
        link(
            Look::Plain,
            text::say(bill.lang, text::Say::ShowReport),
            hash,
        )
    });
    view! {
        <dl class="bill__sums">{given}</dl>
        {next(bill, account)}
        {show}
    }
}

fn next(bill: &Bill, account: &Account) -> Node {
    let hint = |words: &'static str| view! { <p class="hint">{words}</p> };
    if account.stage != Stage::Due {
        return hint(text::pay(bill.lang, Pay::NumberAtEnd));
    }
    let document = match account.next_document(lines::rule(bill).as_ref()) {
        Ok(Some(document)) => document,
        Ok(None) if account.documents.is_empty() => return ().into_node(),
        Ok(None) => return hint(text::pay(bill.lang, Pay::AllNumbered)),
        Err(fault) => {
            let say = text::estimate_fault(bill.lang, fault);
            return view! { <p class="slip" role="alert">{say}</p> };
        }
    };
    let mark = bill.app.settings.with_untracked(|it| it.van.clone());
    if !is_van_mark(&mark) {
        return hint(bill.desk(Desk::VanMarkNeeded));
    }
    give(bill, document, mark)
}

/// The setting with the last number given under these letters, for those whose job has left the
/// phone.
fn last(mark: &str) -> String {
    format!("last_invoice:{mark}")
}

/// The next number after all that this phone knows, and after what was typed.
fn after(bill: &Bill, mark: &str, typed: &str) -> String {
    let saved = bill.app.shelf().setting(&last(mark)).unwrap_or_default();
    bill.app.jobs.with_untracked(|list| {
        let known = list.iter().flat_map(|job| &job.invoices);
        let known = known.map(String::as_str).chain([saved.as_str(), typed]);
        next_invoice(mark, known)
    })
}

/// A phone that knows no number of these letters asks for the last one first: it may be new, or its
/// settings lost.
fn give(bill: &Bill, document: Invoice, mark: String) -> Node {
    let (lang, drafts) = (bill.lang, bill.drafts);
    let is_first = after(bill, &mark, "") == next_invoice(&mark, std::iter::empty());
    let typed = drafts.text("last_number", "");
    let wrong = RwSignal::new(false);
    let asks = is_first.then(|| {
        let label = text::pay(lang, Pay::LastNumber);
        view! {
            <p class="hint">{text::pay(lang, Pay::FirstNumber)}</p>
            {Field::capitals("last_number", typed).show(label, "", drafts, || {})}
            <p class="slip" role="alert">
                {move || wrong.get().then(|| text::pay(lang, Pay::NotANumber))}
            </p>
        }
    });
    let label = match document.credits {
        None => bill.desk(Desk::GiveInvoice),
        Some(_) => text::pay(lang, Pay::GiveCredit),
    };
    let here = bill.clone();
    let press = move || {
        let typed = typed.get_untracked().trim().to_uppercase();
        let number = after(&here, &mark, &typed);
        if !typed.is_empty() && number == after(&here, &mark, "") {
            wrong.set(true);
            return;
        }
        here.app.shelf().set_setting(&last(&mark), &number);
        drafts.drop_with_tap();
        let invoice = Invoice {
            number,
            ..document.clone()
        };
        here.app.append(vec![Event::Invoice(Box::new(invoice))]);
    };
    view! { {asks} {key(Look::Plain, label, press)} }
}
