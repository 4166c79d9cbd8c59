//! The price on paper: what it is and what came in for the customer, its lines after it.

use super::ReportContext;
use super::block::Block;
use super::money::money;
use super::time::day;
use super::{plain, standing};
use crate::job::agreed::agreed;
use crate::job::bill::{still_to_pay, to_pay, wrong_part};
use crate::job::entry::{Ending, Money, Paid};
use crate::text::{self, Customer, ReportWord};
use crate::trade::money::{Estimate, Line, line_amount, totals};
use crate::trade::wheel_end::{Step, StepKey};

/// What the customer pays, with what is in it; nothing where no price was given.
pub(super) fn bill(told: &ReportContext) -> Vec<Block> {
    let mut rows = due(told);
    if !rows.is_empty() {
        rows.extend(included(told));
    }
    rows.extend(came_in(told));
    let nothing = nothing_due(told);
    if rows.is_empty() && nothing.is_empty() {
        return Vec::new();
    }
    let mut blocks = vec![told.heading_of(Customer::Total)];
    if !rows.is_empty() {
        blocks.push(Block::Rows(rows));
    }
    let nothing = nothing.into_iter();
    blocks.extend(nothing.map(|say| Block::Sentence(told.customer(say))));
    blocks
}

/// Why nothing is to pay, where that is so, and of which part.
fn nothing_due(told: &ReportContext) -> Vec<Customer<'static>> {
    let ending = match standing::ending(told.sheet) {
        Some(Ending::LeftUnfinished) => Some(Customer::NotDueYet),
        Some(Ending::NotSafeHere) => Some(Customer::NothingToPay),
        Some(Ending::Declined) if to_pay(told.sheet).is_none() => Some(Customer::NothingToPay),
        Some(Ending::Declined | Ending::NothingWrong | Ending::Finished) => return Vec::new(),
        None => None,
    };
    let part = wrong_part(told.sheet).then_some(Customer::WrongPart);
    ending.into_iter().chain(part).collect()
}

/// The amount to pay by how the job ended; before its end what it would be. What was declined is
/// named as such and never as an amount to pay.
fn due(told: &ReportContext) -> Vec<(String, String)> {
    let row = |say, amount: &Money| (told.customer(say), money(told.format, amount));
    let price = told.sheet.price();
    let mut rows = Vec::new();
    match standing::ending(told.sheet) {
        None if is_declined(told) => {
            let refit = price.and_then(|price| price.refit.as_ref());
            rows.extend(refit.map(|refit| row(Customer::AtTheEnd, refit)));
            let declined = declined_amount(told);
            rows.extend(declined.map(|amount| row(Customer::NotCharged, amount)));
        }
        None => {
            let say = match agreed(told.sheet) {
                Some(_) => Customer::WhenFinished,
                None => Customer::IfApproved,
            };
            rows.extend(price.map(|price| row(say, &price.repair)));
            let refit = price.and_then(|price| price.refit.as_ref());
            let refit = refit.filter(|_| say == Customer::IfApproved);
            rows.extend(refit.map(|refit| row(Customer::IfDeclined, refit)));
        }
        Some(Ending::Declined) => {
            rows.extend(to_pay(told.sheet).map(|amount| row(Customer::ToPay, amount)));
            let declined = declined_amount(told);
            rows.extend(declined.map(|amount| row(Customer::NotCharged, amount)));
        }
        Some(Ending::Finished | Ending::NothingWrong) => {
            rows.extend(to_pay(told.sheet).map(|amount| row(Customer::ToPay, amount)));
        }
        Some(Ending::NotSafeHere | Ending::LeftUnfinished) => {}
    }
    rows
}

/// Whether a repair was declined and none was agreed to.
fn is_declined(told: &ReportContext) -> bool {
    agreed(told.sheet).is_none() && declined_amount(told).is_some()
}

/// The repair that was declined, by the amount that was asked for.
fn declined_amount<'a>(told: &ReportContext<'a>) -> Option<&'a Money> {
    let mut corners = told.corners().iter();
    corners.find_map(|corner| {
        let consent = told.sheet.consent(StepKey::at(Step::Agree, *corner))?;
        consent.amount.as_ref().filter(|_| !consent.yes)
    })
}

/// What is in the amount: the inspection where the repair was done, and the tax as it was reckoned;
/// an amount that was typed as a whole is asked for with its tax.
fn included(told: &ReportContext) -> Option<(String, String)> {
    let label = told.customer(Customer::Included);
    let ending = standing::ending(told.sheet);
    if ending.is_none() && is_declined(told) {
        told.sheet.price()?.refit.as_ref()?;
        return Some((label, told.customer(Customer::TaxIncluded(""))));
    }
    if matches!(ending, Some(Ending::NothingWrong | Ending::Declined)) {
        to_pay(told.sheet)?;
        return Some((label, told.customer(Customer::TaxIncluded(""))));
    }
    let tax = match &told.sheet.price()?.estimate {
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

/// The invoice's number and the payments, and what is still open after them.
fn came_in(told: &ReportContext) -> Vec<(String, String)> {
    let mut rows = Vec::new();
    if let Some(number) = told.sheet.invoice() {
        rows.push((told.word(ReportWord::InvoiceHead), number.to_owned()));
    }
    for (entry, paid) in told.sheet.payments() {
        let on = day(&entry.at).map(|day| plain::day(told.lang, day));
        let line = format!("{}, {}", paid_line(told, paid), on.unwrap_or_default());
        rows.push((told.word(ReportWord::PaidHead), line));
    }
    // Before the end nothing is due, whatever came in.
    let due = standing::ending(told.sheet).is_some() && told.sheet.payments().next().is_some();
    let open = still_to_pay(told.sheet).filter(|_| due);
    rows.extend(open.map(|open| {
        (
            told.customer(Customer::StillToPay),
            money(told.format, &open),
        )
    }));
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
