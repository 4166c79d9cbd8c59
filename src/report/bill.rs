//! The price on paper: what it is and what came in for the customer, its lines after it.

use super::ReportContext;
use super::block::Block;
use super::money::money;
use super::time::day;
use super::{plain, standing};
use crate::job::account::{Account, Charge, ChargeState, Stage, account};
use crate::job::bill::wrong_part;
use crate::job::entry::{Ending, Money, Paid};
use crate::text::{self, Customer, Lang, Pay, ReportWord};
use crate::trade::money::{BilledFor, Estimate, Line, line_amount, totals};
use crate::trade::vehicle::Corner;

/// What the customer pays, with what is in it; nothing where no price was given.
pub(super) fn bill(told: &ReportContext) -> Vec<Block> {
    let account = account(told.sheet);
    let mut rows = due(told, &account);
    if !rows.is_empty() {
        rows.extend(included(told, &account));
    }
    rows.extend(came_in(told, &account));
    let says: Vec<String> = nothing_due(told, &account)
        .into_iter()
        .map(|say| told.customer(say))
        .chain(warnings(told.lang, &account).map(str::to_owned))
        .collect();
    if rows.is_empty() && says.is_empty() {
        return Vec::new();
    }
    let mut blocks = vec![told.heading_of(Customer::Total)];
    if !rows.is_empty() {
        blocks.push(Block::Rows(rows));
    }
    blocks.extend(says.into_iter().map(Block::Sentence));
    blocks
}

/// What must be known of an account before its sums are believed.
pub fn warnings(lang: Lang, account: &Account) -> impl Iterator<Item = &'static str> {
    let any = !account.charges.is_empty() || !account.documents.is_empty() || account.paid != 0;
    let all = [
        (account.is_unpriced(), Pay::NoAmount),
        (!account.foreign.is_empty(), Pay::OtherCurrency),
        (!account.complete && any, Pay::NotComplete),
    ];
    let all = all.into_iter().filter(|(is, _)| *is);
    all.map(move |(_, say)| text::pay(lang, say))
}

/// Why nothing is to pay, where that is so, and of which part.
fn nothing_due(told: &ReportContext, account: &Account) -> Vec<Customer<'static>> {
    let nothing = account.to_pay() == 0 && account.complete && !account.is_unpriced();
    let ending = match standing::ending(told.sheet) {
        Some(Ending::LeftUnfinished) => Some(Customer::NotDueYet),
        Some(Ending::NotSafeHere) => Some(Customer::NothingToPay),
        Some(Ending::Declined | Ending::NothingWrong) if nothing => Some(Customer::NothingToPay),
        Some(Ending::Declined | Ending::NothingWrong | Ending::Finished) => return Vec::new(),
        None => None,
    };
    let part = wrong_part(told.sheet).then_some(Customer::WrongPart);
    ending.into_iter().chain(part).collect()
}

/// The amount to pay by how the job ended; before its end what it would be. What was declined is
/// named as such and never as an amount to pay.
fn due(told: &ReportContext, account: &Account) -> Vec<(String, String)> {
    let amount = |minor| amount(told, account, minor);
    let row = |say, minor| (told.customer(say), amount(minor));
    let declined = Some(account.declined()).filter(|minor| *minor > 0);
    let mut rows = Vec::new();
    match account.stage {
        Stage::Open if account.charges.iter().any(is_agreed_work) => {
            rows.push(row(Customer::WhenFinished, account.agreed()));
            rows.extend(declined.map(|minor| row(Customer::NotCharged, minor)));
        }
        Stage::Open if declined.is_some() => {
            let inspection = Some(account.agreed()).filter(|minor| *minor > 0);
            rows.extend(inspection.map(|minor| row(Customer::AtTheEnd, minor)));
            rows.extend(declined.map(|minor| row(Customer::NotCharged, minor)));
        }
        Stage::Open => {
            let price = told.sheet.price();
            let refit = price.and_then(|price| price.refit.as_ref());
            rows.extend(price.map(|price| row(Customer::IfApproved, price.repair.minor)));
            rows.extend(refit.map(|refit| row(Customer::IfDeclined, refit.minor)));
        }
        Stage::Due => {
            rows.extend(parts(told, account));
            let to_pay = Some(account.to_pay()).filter(|_| account.done() > 0);
            rows.extend(to_pay.map(|minor| row(Customer::ToPay, minor)));
            rows.extend(declined.map(|minor| row(Customer::NotCharged, minor)));
        }
        Stage::NotDue => {}
    }
    rows
}

fn is_agreed_work(charge: &Charge) -> bool {
    charge.what != BilledFor::Inspection && charge.state != ChargeState::Declined
}

/// What the sum is made of, where it is more than one amount.
fn parts(told: &ReportContext, account: &Account) -> Vec<(String, String)> {
    let done = account.charges.iter();
    let done = done.filter(|charge| charge.state == ChargeState::Done);
    let mut rows: Vec<(String, String)> = done
        .filter_map(|charge| {
            let name = part_name(told.lang, charge.what, charge.corner, charge.text);
            Some((name, amount(told, account, charge.amount?)))
        })
        .collect();
    if account.discount() > 0 {
        let name = text::pay(told.lang, Pay::Discount).to_owned();
        rows.push((name, amount(told, account, -account.discount())));
    }
    if rows.len() < 2 {
        rows.clear();
    }
    rows
}

/// `Further work, front left: wheel stud`.
pub fn part_name(lang: Lang, what: BilledFor, corner: Option<Corner>, words: &str) -> String {
    let name = text::billed_for(lang, what);
    let name = corner.map_or_else(|| name.to_owned(), |at| text::step_at(lang, name, at));
    match words {
        "" => name,
        words => format!("{name}: {words}"),
    }
}

pub(super) fn amount(told: &ReportContext, account: &Account, minor: i64) -> String {
    let currency = account.currency.clone();
    money(told.format, &Money { minor, currency })
}

/// What is in the amount: the inspection where the repair was done, and the tax as it was computed;
/// an amount that was typed as a whole is asked for with its tax.
fn included(told: &ReportContext, account: &Account) -> Option<(String, String)> {
    let label = told.customer(Customer::Included);
    let work = account.charges.iter().filter(|it| is_agreed_work(it));
    let work: Vec<&Charge> = match account.stage {
        Stage::Due => work.filter(|it| it.state == ChargeState::Done).collect(),
        _ => work.collect(),
    };
    let asked = account.stage == Stage::Open && account.charges.is_empty();
    if work.is_empty() && !asked {
        let any = account.agreed() > 0;
        return any.then(|| (label, told.customer(Customer::TaxIncluded(""))));
    }
    let price = told.sheet.price().and_then(|price| price.estimate.as_ref());
    let estimates = work.iter().filter_map(|charge| charge.lines.as_ref());
    let estimate = estimates.chain(price.filter(|_| asked)).next();
    let tax = match estimate {
        Some(Estimate { tax: Some(tax), .. }) => {
            let percent = told.numerals(tax.percent.as_typed());
            told.customer(Customer::TaxIncluded(&percent))
        }
        Some(Estimate { tax: None, .. }) => told.customer(Customer::NoTax),
        None => told.customer(Customer::TaxIncluded("")),
    };
    let inspection = told.customer(Customer::InspectionIncluded);
    Some((label, format!("{inspection}; {tax}")))
}

/// The numbers and the payments, and what is still open after them.
fn came_in(told: &ReportContext, account: &Account) -> Vec<(String, String)> {
    let mut rows = Vec::new();
    for document in &account.documents {
        let name = match document.credits {
            None => told.word(ReportWord::InvoiceHead),
            Some(_) => text::pay(told.lang, Pay::CreditNumber).to_owned(),
        };
        rows.push((name, document.number.clone()));
    }
    for (entry, paid) in told.sheet.payments() {
        let on = day(&entry.at).map(|day| plain::day(told.lang, day));
        let line = format!("{}, {}", paid_line(told, &paid), on.unwrap_or_default());
        rows.push((told.word(ReportWord::PaidHead), line));
    }
    // Before the end nothing is due, whatever came in.
    let any = account.stage == Stage::Due && told.sheet.payments().next().is_some();
    if any && (account.still_to_pay() > 0 || account.is_settled()) {
        let still = amount(told, account, account.still_to_pay());
        rows.push((told.customer(Customer::StillToPay), still));
    }
    if account.overpaid() > 0 {
        let over = text::pay(told.lang, Pay::Overpaid).to_owned();
        rows.push((over, amount(told, account, account.overpaid())));
    }
    rows
}

/// The repair in lines with their sums, where it was written out; page one has no room for it.
pub(super) fn reckoned(told: &ReportContext) -> Vec<Block> {
    let price = told.sheet.price();
    let Some((price, estimate)) = price.and_then(|it| Some((it, it.estimate.as_ref()?))) else {
        return Vec::new();
    };
    let mut blocks = vec![
        told.heading(ReportWord::PriceHead),
        lines(told, estimate, &price.repair.currency),
    ];
    if let Ok(sums) = totals(estimate) {
        let row = |word, minor| {
            let currency = price.repair.currency.clone();
            let amount = money(told.format, &Money { minor, currency });
            (told.word(word), amount)
        };
        blocks.push(Block::Rows(vec![
            row(ReportWord::BeforeTax, sums.net),
            row(ReportWord::Tax, sums.tax),
            row(ReportWord::PriceRepair, sums.gross),
        ]));
    }
    blocks
}

/// `420.00 USD, cash`.
pub(super) fn paid_line(told: &ReportContext, paid: &Paid) -> String {
    let how = text::paid_how(told.lang, paid.how);
    format!("{}, {how}", money(told.format, &paid.amount))
}

fn lines(told: &ReportContext, estimate: &Estimate, currency: &str) -> Block {
    let amount = |minor| {
        let currency = currency.to_owned();
        money(told.format, &Money { minor, currency })
    };
    let row = |line: &Line| {
        let kind = text::line_kind(told.lang, line.kind);
        let what = match line.text.as_str() {
            "" => kind.to_owned(),
            text => format!("{kind}: {text}"),
        };
        vec![
            what,
            told.numerals(line.quantity.as_typed()),
            amount(line.each),
            line_amount(line).map_or_else(|_| told.word(ReportWord::NotRecorded), amount),
        ]
    };
    Block::Table {
        head: [
            ReportWord::LineFor,
            ReportWord::LineQuantity,
            ReportWord::LineEach,
            ReportWord::Amount,
        ]
        .map(|word| told.word(word))
        .to_vec(),
        rows: estimate.lines.iter().map(row).collect(),
    }
}

#[cfg(test)]
mod tests;
