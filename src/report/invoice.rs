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
pub(super) fn invoices(told: &ReportContext) -> Vec<Vec<Block>> {
    let account = account(told.sheet);
    let documents = told.sheet.invoices();
    documents
        .map(|(entry, invoice)| page(told, &account, entry, invoice))
        .collect()
}

/// An invoice in a line: what it is, its number and what it comes to.
pub(super) fn line(told: &ReportContext, invoice: &Invoice) -> String {
    let (minor, currency) = (invoice.gross(), invoice.currency.clone());
    let sum = money(told.format, &Money { minor, currency });
    format!("{} {}: {sum}", title(told, invoice), invoice.number)
}

fn title(told: &ReportContext, invoice: &Invoice) -> &'static str {
    let credit = invoice.credits.is_some();
    let say = if credit {
        Pay::CreditNote
    } else {
        Pay::Invoice
    };
    text::pay(told.lang, say)
}

fn page(told: &ReportContext, account: &Account, entry: &Entry, invoice: &Invoice) -> Vec<Block> {
    let mut blocks = vec![
        Block::Heading(format!("{} {}", title(told, invoice), invoice.number)),
        Block::Rows(head(told, entry, invoice)),
        lines(told, invoice),
        Block::Rows(sums(told, invoice)),
        Block::Rows(balance(told, account)),
    ];
    let says = warnings(told.lang, account);
    blocks.extend(says.map(|say| Block::Sentence(say.to_owned())));
    blocks
}

/// Who sells, who buys, when, and what a credit note corrects.
fn head(told: &ReportContext, entry: &Entry, invoice: &Invoice) -> Vec<(String, String)> {
    let pay = |say| text::pay(told.lang, say).to_owned();
    let person = |field| told.sheet.person(field).unwrap_or_default();
    let known = |parts: &[&str]| {
        let known = parts.iter().copied().filter(|part| !part.is_empty());
        known.collect::<Vec<_>>().join(", ")
    };
    let (name, address) = (person(PersonField::Name), person(PersonField::Address));
    let family = told.sheet.vehicle(VehicleField::Family).unwrap_or_default();
    let on = day(&entry.at).map(|day| plain::day(told.lang, day));
    let rows = [
        (
            pay(Pay::Seller),
            known(&[&told.reader.made_by, &told.reader.contact]),
        ),
        (pay(Pay::Buyer), known(&[name, address])),
        (
            told.word(ReportWord::Vehicle),
            known(&[family, person(PersonField::Plate)]),
        ),
        (told.word(ReportWord::Date), on.unwrap_or_default()),
        (
            pay(Pay::Corrects),
            invoice.credits.clone().unwrap_or_default(),
        ),
    ];
    let rows = rows.into_iter().filter(|(_, value)| !value.is_empty());
    rows.collect()
}

fn lines(told: &ReportContext, invoice: &Invoice) -> Block {
    let head = [
        told.word(ReportWord::LineFor),
        told.word(ReportWord::LineQuantity),
        told.word(ReportWord::LineEach),
        text::pay(told.lang, Pay::TaxRate).to_owned(),
        text::pay(told.lang, Pay::Net).to_owned(),
    ];
    let of_part = |part: &Billed| {
        let name = part_name(told.lang, part.what, part.corner, &part.text);
        let rows = part.lines.iter();
        let rows = rows.map(|line| row(told, invoice, &name, line));
        rows.collect::<Vec<_>>()
    };
    Block::Table {
        head: head.to_vec(),
        rows: invoice.parts.iter().flat_map(of_part).collect(),
    }
}

fn row(told: &ReportContext, invoice: &Invoice, part: &str, line: &BilledLine) -> Vec<String> {
    let kind = Some(line.kind).filter(|kind| *kind != LineKind::Other);
    let words = match line.text.as_str() {
        "" => kind.map(|kind| text::line_kind(told.lang, kind)),
        words => Some(words),
    };
    let what = words.map_or_else(|| part.to_owned(), |words| format!("{part}, {words}"));
    let percent = line.percent.as_ref().map(|it| told.numerals(it.as_typed()));
    let percent = percent.map(|it| format!("{it}\u{a0}%"));
    vec![
        what,
        told.numerals(line.quantity.as_typed()),
        sum(told, invoice, line.each),
        percent.unwrap_or_else(|| text::pay(told.lang, Pay::NotTaxed).to_owned()),
        sum(told, invoice, line.net),
    ]
}

fn sum(told: &ReportContext, invoice: &Invoice, minor: i64) -> String {
    let currency = invoice.currency.clone();
    money(told.format, &Money { minor, currency })
}

/// Before tax, the tax at each rate, and the total.
fn sums(told: &ReportContext, invoice: &Invoice) -> Vec<(String, String)> {
    let pay = |say| text::pay(told.lang, say).to_owned();
    let mut rows = vec![(pay(Pay::Net), sum(told, invoice, invoice.net()))];
    for tax in invoice.taxes() {
        let percent = told.numerals(tax.percent.as_typed());
        let of = sum(told, invoice, tax.net);
        rows.push((
            text::taxed_at(told.lang, &percent, &of),
            sum(told, invoice, tax.tax),
        ));
    }
    rows.push((pay(Pay::Total), sum(told, invoice, invoice.gross())));
    rows
}

/// What came in on the whole job, and what is open.
fn balance(told: &ReportContext, account: &Account) -> Vec<(String, String)> {
    let pay = |say| text::pay(told.lang, say).to_owned();
    let mut rows = vec![
        (
            pay(Pay::PaidOnJob),
            amount(told, account, account.received()),
        ),
        (
            pay(Pay::Balance),
            amount(told, account, account.still_to_pay()),
        ),
    ];
    if account.overpaid() > 0 {
        rows.push((
            pay(Pay::Overpaid),
            amount(told, account, account.overpaid()),
        ));
    }
    rows
}
