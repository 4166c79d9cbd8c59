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
pub(super) fn bill(context: &ReportContext) -> Vec<Block> {
    let account = account(context.sheet);
    let mut rows = due(context, &account);
    if !rows.is_empty() {
        rows.extend(included(context, &account));
    }
    rows.extend(came_in(context, &account));
    let says: Vec<String> = nothing_due(context, &account)
        .into_iter()
        .map(|say| context.customer(say))
        .chain(warnings(context.lang, &account).map(str::to_owned))
        .collect();
    if rows.is_empty() && says.is_empty() {
        return Vec::new();
    }
    let mut blocks = vec![context.heading_of(Customer::Total)];
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
fn nothing_due(context: &ReportContext, account: &Account) -> Vec<Customer<'static>> {
    let nothing = account.to_pay() == 0 && account.complete && !account.is_unpriced();
    let ending = match standing::ending(context.sheet) {
        Some(Ending::LeftUnfinished) => Some(Customer::NotDueYet),
        Some(Ending::NotSafeHere) => Some(Customer::NothingToPay),
        Some(Ending::Declined | Ending::NothingWrong) if nothing => Some(Customer::NothingToPay),
        Some(Ending::Declined | Ending::NothingWrong | Ending::Finished) => return Vec::new(),
        None => None,
    };
    let part = wrong_part(context.sheet).then_some(Customer::WrongPart);
    ending.into_iter().chain(part).collect()
}

/// The amount to pay by how the job ended; before its end what it would be. What was declined is
/// named as such and never as an amount to pay.
fn due(context: &ReportContext, account: &Account) -> Vec<(String, String)> {
    let amount = |minor| amount(context, account, minor);
    let row = |say, minor| (context.customer(say), amount(minor));
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
            let price = context.sheet.price();
            let refit = price.and_then(|price| price.refit.as_ref());
            rows.extend(price.map(|price| row(Customer::IfApproved, price.repair.minor)));
            rows.extend(refit.map(|refit| row(Customer::IfDeclined, refit.minor)));
        }
        Stage::Due => {
            rows.extend(parts(context, account));
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
fn parts(context: &ReportContext, account: &Account) -> Vec<(String, String)> {
    let done = account.charges.iter();
    let done = done.filter(|charge| charge.state == ChargeState::Done);
    let mut rows: Vec<(String, String)> = done
        .filter_map(|charge| {
            let name = part_name(context.lang, charge.what, charge.corner, charge.text);
            Some((name, amount(context, account, charge.amount?)))
        })
        .collect();
    if account.discount() > 0 {
        let name = text::pay(context.lang, Pay::Discount).to_owned();
        rows.push((name, amount(context, account, -account.discount())));
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

pub(super) fn amount(context: &ReportContext, account: &Account, minor: i64) -> String {
    let currency = account.currency.clone();
    money(context.format, &Money { minor, currency })
}

/// What is in the amount: the inspection where the repair was done, and the tax as it was computed;
/// an amount that was typed as a whole is asked for with its tax.
fn included(context: &ReportContext, account: &Account) -> Option<(String, String)> {
    let label = context.customer(Customer::Included);
    let work = account.charges.iter().filter(|it| is_agreed_work(it));
    let work: Vec<&Charge> = match account.stage {
        Stage::Due => work.filter(|it| it.state == ChargeState::Done).collect(),
        _ => work.collect(),
    };
    let asked = account.stage == Stage::Open && account.charges.is_empty();
    if work.is_empty() && !asked {
        let any = account.agreed() > 0;
        return any.then(|| (label, context.customer(Customer::TaxIncluded(""))));
    }
    let price = context
        .sheet
        .price()
        .and_then(|price| price.estimate.as_ref());
    let estimates = work.iter().filter_map(|charge| charge.lines.as_ref());
    let estimate = estimates.chain(price.filter(|_| asked)).next();
    let tax = match estimate {
        Some(Estimate { tax: Some(tax), .. }) => {
            let percent = context.numerals(tax.percent.as_typed());
            context.customer(Customer::TaxIncluded(&percent))
        }
        Some(Estimate { tax: None, .. }) => context.customer(Customer::NoTax),
        None => context.customer(Customer::TaxIncluded("")),
    };
    let inspection = context.customer(Customer::InspectionIncluded);
    Some((label, format!("{inspection}; {tax}")))
}

/// The numbers and the payments, and what is still open after them.
fn came_in(context: &ReportContext, account: &Account) -> Vec<(String, String)> {
    let mut rows = Vec::new();
    for document in &account.documents {
        let name = match document.credits {
            None => context.word(ReportWord::InvoiceHead),
            Some(_) => text::pay(context.lang, Pay::CreditNumber).to_owned(),
        };
        rows.push((name, document.number.clone()));
    }
    for (entry, paid) in context.sheet.payments() {
        let on = day(&entry.at).map(|day| plain::day(context.lang, day));
        let line = format!("{}, {}", paid_line(context, &paid), on.unwrap_or_default());
        rows.push((context.word(ReportWord::PaidHead), line));
    }
    // Before the end nothing is due, whatever came in.
    let any = account.stage == Stage::Due && context.sheet.payments().next().is_some();
    if any && (account.still_to_pay() > 0 || account.is_settled()) {
        let still = amount(context, account, account.still_to_pay());
        rows.push((context.customer(Customer::StillToPay), still));
    }
    if account.overpaid() > 0 {
        let over = text::pay(context.lang, Pay::Overpaid).to_owned();
        rows.push((over, amount(context, account, account.overpaid())));
    }
    rows
}

/// The repair in lines with their sums, where it was written out; page one has no room for it.
pub(super) fn reckoned(context: &ReportContext) -> Vec<Block> {
    let price = context.sheet.price();
    let Some((price, estimate)) = price.and_then(|it| Some((it, it.estimate.as_ref()?))) else {
        return Vec::new();
    };
    let mut blocks = vec![
        context.heading(ReportWord::PriceHead),
        lines(context, estimate, &price.repair.currency),
    ];
    if let Ok(sums) = totals(estimate) {
        let row = |word, minor| {
            let currency = price.repair.currency.clone();
            let amount = money(context.format, &Money { minor, currency });
            (context.word(word), amount)
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
pub(super) fn paid_line(context: &ReportContext, paid: &Paid) -> String {
    let how = text::paid_how(context.lang, paid.how);
    format!("{}, {how}", money(context.format, &paid.amount))
}

fn lines(context: &ReportContext, estimate: &Estimate, currency: &str) -> Block {
    let amount = |minor| {
        let currency = currency.to_owned();
        money(context.format, &Money { minor, currency })
    };
    let row = |line: &Line| {
        let kind = text::line_kind(context.lang, line.kind);
        let what = match line.text.as_str() {
            "" => kind.to_owned(),
            text => format!("{kind}: {text}"),
        };
        vec![
            what,
            context.numerals(line.quantity.as_typed()),
            amount(line.each),
            line_amount(line).map_or_else(|_| context.word(ReportWord::NotRecorded), amount),
        ]
    };
    Block::Table {
        head: [
            ReportWord::LineFor,
            ReportWord::LineQuantity,
            ReportWord::LineEach,
            ReportWord::Amount,
        ]
        .map(|word| context.word(word))
        .to_vec(),
        rows: estimate.lines.iter().map(row).collect(),
    }
}

#[cfg(test)]
mod tests;
