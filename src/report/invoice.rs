//! An invoice and a credit note for the customer, from what was frozen under the number; only the
//! account below the sums is that of today.

use super::ReportContext;
use super::bill::{amount, part_name, warnings};
use super::block::Block;
use super::money::money;
use super::plain;
use super::time::day;
use crate::job::account::{Account, account};
use crate::job::entry::{Entry, Money, PersonField, VehicleField};
use crate::text::{self, Pay, ReportWord};
use crate::trade::money::{Billed, BilledLine, Invoice, LineKind};

/// A page for each number that was given, in order.
pub(super) fn invoices(context: &ReportContext) -> Vec<Vec<Block>> {
    let account = account(context.sheet);
    let documents = context.sheet.invoices();
    documents
        .map(|(entry, invoice)| page(context, &account, entry, invoice))
        .collect()
}

/// An invoice in a line: what it is, its number and what it comes to.
pub(super) fn line(context: &ReportContext, invoice: &Invoice) -> String {
    let (minor, currency) = (invoice.gross(), invoice.currency.clone());
    let sum = money(context.format, &Money { minor, currency });
    format!("{} {}: {sum}", title(context, invoice), invoice.number)
}

fn title(context: &ReportContext, invoice: &Invoice) -> &'static str {
    let credit = invoice.credits.is_some();
    let say = if credit {
        Pay::CreditNote
    } else {
        Pay::Invoice
    };
    text::pay(context.lang, say)
}

fn page(
    context: &ReportContext,
    account: &Account,
    entry: &Entry,
    invoice: &Invoice,
) -> Vec<Block> {
    let mut blocks = vec![
        Block::Heading(format!("{} {}", title(context, invoice), invoice.number)),
        Block::Rows(head(context, entry, invoice)),
        lines(context, invoice),
        Block::Rows(sums(context, invoice)),
        Block::Rows(balance(context, account)),
    ];
    let says = warnings(context.lang, account);
    blocks.extend(says.map(|say| Block::Sentence(say.to_owned())));
    blocks
}

/// Who sells, who buys, when, and what a credit note corrects.
fn head(context: &ReportContext, entry: &Entry, invoice: &Invoice) -> Vec<(String, String)> {
    let pay = |say| text::pay(context.lang, say).to_owned();
    let person = |field| context.sheet.person(field).unwrap_or_default();
    let known = |parts: &[&str]| {
        let known = parts.iter().copied().filter(|part| !part.is_empty());
        known.collect::<Vec<_>>().join(", ")
    };
    let (name, address) = (person(PersonField::Name), person(PersonField::Address));
    let family = context
        .sheet
        .vehicle(VehicleField::Family)
        .unwrap_or_default();
    let on = day(&entry.at).map(|day| plain::day(context.lang, day));
    let rows = [
        (
            pay(Pay::Seller),
            known(&[&context.reader.made_by, &context.reader.contact]),
        ),
        (pay(Pay::Buyer), known(&[name, address])),
        (
            context.word(ReportWord::Vehicle),
            known(&[family, person(PersonField::Plate)]),
        ),
        (context.word(ReportWord::Date), on.unwrap_or_default()),
        (
            pay(Pay::Corrects),
            invoice.credits.clone().unwrap_or_default(),
        ),
    ];
    let rows = rows.into_iter().filter(|(_, value)| !value.is_empty());
    rows.collect()
}

fn lines(context: &ReportContext, invoice: &Invoice) -> Block {
    let head = [
        context.word(ReportWord::LineFor),
        context.word(ReportWord::LineQuantity),
        context.word(ReportWord::LineEach),
        text::pay(context.lang, Pay::TaxRate).to_owned(),
        text::pay(context.lang, Pay::Net).to_owned(),
    ];
    let of_part = |part: &Billed| {
        let name = part_name(context.lang, part.what, part.corner, &part.text);
        let rows = part.lines.iter();
        let rows = rows.map(|line| row(context, invoice, &name, line));
        rows.collect::<Vec<_>>()
    };
    Block::Table {
        head: head.to_vec(),
        rows: invoice.parts.iter().flat_map(of_part).collect(),
    }
}

fn row(context: &ReportContext, invoice: &Invoice, part: &str, line: &BilledLine) -> Vec<String> {
    let kind = Some(line.kind).filter(|kind| *kind != LineKind::Other);
    let words = match line.text.as_str() {
        "" => kind.map(|kind| text::line_kind(context.lang, kind)),
        words => Some(words),
    };
    let what = words.map_or_else(|| part.to_owned(), |words| format!("{part}, {words}"));
    let percent = line
        .percent
        .as_ref()
        .map(|it| context.numerals(it.as_typed()));
    let percent = percent.map(|it| format!("{it}\u{a0}%"));
    vec![
        what,
        context.numerals(line.quantity.as_typed()),
        sum(context, invoice, line.each),
        percent.unwrap_or_else(|| text::pay(context.lang, Pay::NotTaxed).to_owned()),
        sum(context, invoice, line.net),
    ]
}

fn sum(context: &ReportContext, invoice: &Invoice, minor: i64) -> String {
    let currency = invoice.currency.clone();
    money(context.format, &Money { minor, currency })
}

/// Before tax, the tax at each rate, and the total.
fn sums(context: &ReportContext, invoice: &Invoice) -> Vec<(String, String)> {
    let pay = |say| text::pay(context.lang, say).to_owned();
    let mut rows = vec![(pay(Pay::Net), sum(context, invoice, invoice.net()))];
    for tax in invoice.taxes() {
        let percent = context.numerals(tax.percent.as_typed());
        let of = sum(context, invoice, tax.net);
        rows.push((
            text::taxed_at(context.lang, &percent, &of),
            sum(context, invoice, tax.tax),
        ));
    }
    rows.push((pay(Pay::Total), sum(context, invoice, invoice.gross())));
    rows
}

/// What came in on the whole job, and what is open.
fn balance(context: &ReportContext, account: &Account) -> Vec<(String, String)> {
    let pay = |say| text::pay(context.lang, say).to_owned();
    let mut rows = vec![
        (
            pay(Pay::PaidOnJob),
            amount(context, account, account.received()),
        ),
        (
            pay(Pay::Balance),
            amount(context, account, account.still_to_pay()),
        ),
    ];
    if account.overpaid() > 0 {
        rows.push((
            pay(Pay::Overpaid),
            amount(context, account, account.overpaid()),
        ));
    }
    rows
}
