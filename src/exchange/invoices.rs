//! Invoices and credit notes as a table for whoever keeps the books: what stands under each number,
//! by rate of tax, and of each job what came in, what is open and, apart from it, what was declined.
//!
//! A row of kind `invoice` or `credit_note` is one rate of one document, so that `net`, `tax` and
//! `gross` can be summed; a credit note is below zero. A row of kind `account` is the account of one
//! job as it stands. Amounts are in whole currency units with every digit and a point.

use crate::exchange::csv::{BYTE_ORDER_MARK, harmless, written};
use crate::exchange::envelope::SavedText;
use crate::exchange::erase::pseudonym;
use crate::exchange::wire::decode;
use crate::job::account::{Account, account};
use crate::job::entry::{Entry, LogId, PersonField};
use crate::job::practice::is_practice;
use crate::job::{JobState, fold};
use crate::trade::money::{Invoice, minor_digits, printed};

/// The heads of the table.
pub const HEADS: [&str; 17] = [
    "kind", "number", "corrects", "date", "seller", "customer", "plate", "job", "currency", "rate",
    "net", "tax", "gross", "paid", "balance", "overpaid", "declined",
];

/// The rows of one job; practice has none.
pub fn rows(job: &LogId, records: &[SavedText]) -> Vec<Vec<String>> {
    let sheet = fold(records.iter().filter_map(|r| decode(&r.text).ok()));
    if is_practice(&sheet) {
        return Vec::new();
    }
    let account = account(&sheet);
    let documents = sheet.invoices();
    let mut rows: Vec<Vec<String>> = documents
        .flat_map(|(entry, invoice)| document(job, &sheet, entry, invoice))
        .collect();
    let any = account.agreed() != 0 || account.declined() != 0 || account.paid != 0;
    if any || !rows.is_empty() {
        rows.push(of_job(job, &sheet, &account));
    }
    rows
}

/// The numbers of a job's documents.
pub fn numbers(records: &[SavedText]) -> Vec<String> {
    let sheet = fold(records.iter().filter_map(|r| decode(&r.text).ok()));
    let numbers = sheet.invoices().map(|(_, invoice)| invoice.number.clone());
    numbers.filter(|_| !is_practice(&sheet)).collect()
}

/// A row for each rate of tax, and one for what is not taxed.
fn document(job: &LogId, sheet: &JobState, entry: &Entry, invoice: &Invoice) -> Vec<Vec<String>> {
    let amount = |minor| printed(minor, minor_digits(&invoice.currency));
    let taxed = invoice.taxes().into_iter().map(|it| {
        let percent = it.percent.as_typed().replace(',', ".");
        (percent, it.net, it.tax)
    });
    let mut rates: Vec<(String, i64, i64)> = taxed.collect();
    if invoice.untaxed() != 0 || rates.is_empty() {
        rates.push((String::new(), invoice.untaxed(), 0));
    }
    let kind = match invoice.credits {
        None => "invoice",
        Some(_) => "credit_note",
    };
    let row = |(rate, net, tax): (String, i64, i64)| {
        let date = entry.at.day().map(|day| day.to_string());
        let head = [
            kind.to_owned(),
            harmless(invoice.number.clone()),
            harmless(invoice.credits.clone().unwrap_or_default()),
            date.unwrap_or_default(),
            harmless(entry.by.clone()),
        ];
        let sums = [
            rate,
            amount(net),
            amount(tax),
            amount(net.saturating_add(tax)),
        ];
        let rest = [const { String::new() }; 4];
        let row = head.into_iter().chain(whose(job, sheet, &invoice.currency));
        row.chain(sums).chain(rest).collect()
    };
    rates.into_iter().map(row).collect()
}

/// What came in, what is open, what came in too much, and what was declined; sums of a record with
/// entries missing are not final and left empty.
fn of_job(job: &LogId, sheet: &JobState, account: &Account) -> Vec<String> {
    let amount = |minor| printed(minor, minor_digits(&account.currency));
    let sure = |minor| match account.complete {
        true => amount(minor),
        false => String::new(),
    };
    let head = ["account", "", "", "", ""].map(str::to_owned);
    let none = [const { String::new() }; 4];
    let sums = [
        amount(account.received()),
        sure(account.still_to_pay()),
        sure(account.overpaid()),
        amount(account.declined()),
    ];
    let row = head.into_iter().chain(whose(job, sheet, &account.currency));
    row.chain(none).chain(sums).collect()
}

fn whose(job: &LogId, sheet: &JobState, currency: &str) -> [String; 4] {
    let person = |field| sheet.person(field).map(str::to_owned);
    [
        harmless(person(PersonField::Name).unwrap_or_else(|| pseudonym(job))),
        harmless(person(PersonField::Plate).unwrap_or_default()),
        job.0.clone(),
        currency.to_owned(),
    ]
}

/// The table of these rows (RFC 4180), after a byte order mark.
pub fn table(rows: impl IntoIterator<Item = Vec<String>>) -> String {
    format!("{BYTE_ORDER_MARK}{}", written(&HEADS, rows))
}

/// The table of these jobs.
pub fn invoices<'a>(jobs: impl IntoIterator<Item = (&'a LogId, &'a [SavedText])>) -> String {
    let rows = jobs
        .into_iter()
        .flat_map(|(job, records)| rows(job, records));
    table(rows)
}
