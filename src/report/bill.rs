//! The price on paper: what it is and what came in for the owner, its lines after it.

use super::Told;
use super::block::Block;
use super::money::money;
use super::time::day;
use super::{plain, standing};
use crate::job::agreed::agreed;
use crate::job::bill::{still_to_pay, to_pay};
use crate::job::entry::{Ending, Money, Paid};
use crate::text::{self, Customer, ReportWord};
use crate::trade::money::{Estimate, Line, line_amount, totals};
use crate::trade::wheel_end::{Step, StepKey};

/// What the customer pays, with what is in it; nothing where no price was given.
pub(super) fn bill(told: &Told) -> Vec<Block> {
    let mut rows = due(told);
    if !rows.is_empty() {
        rows.extend(included(told));
    }
    rows.extend(came_in(told));
    let nothing = nothing_due(told);
    if rows.is_empty() && nothing.is_none() {
        return Vec::new();
    }
    let mut blocks = vec![told.heading_of(Customer::Total)];
    if !rows.is_empty() {
        blocks.push(Block::Rows(rows));
    }
    blocks.extend(nothing.map(|say| Block::Sentence(told.customer(say))));
    blocks
}

/// Why nothing is to pay, where that is so.
fn nothing_due(told: &Told) -> Option<Customer<'static>> {
    match standing::ending(told.sheet)? {
        Ending::LeftUnfinished => Some(Customer::NotDueYet),
        Ending::NotSafeHere => Some(Customer::NothingToPay),
        Ending::Declined if to_pay(told.sheet).is_none() => Some(Customer::NothingToPay),
        Ending::Declined | Ending::NothingWrong | Ending::Finished => None,
    }
}

/// The amount to pay by how the job ended; before its end what it would be. What was declined is
/// named as such and never as an amount to pay.
fn due(told: &Told) -> Vec<(String, String)> {
    let row = |say, amount: &Money| (told.customer(say), money(told.format, amount));
    let price = told.sheet.price();
    let mut rows = Vec::new();
    match standing::ending(told.sheet) {
        None => {
            let say = match agreed(told.sheet) {
                Some(_) => Customer::ToPay,
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

/// The repair that was declined, by the amount that was asked for.
fn declined_amount<'a>(told: &Told<'a>) -> Option<&'a Money> {
    let mut corners = told.corners().iter();
    corners.find_map(|corner| {
        let consent = told.sheet.consent(StepKey::at(Step::Agree, *corner))?;
        consent.amount.as_ref().filter(|_| !consent.yes)
    })
}

/// What is in the amount: the inspection where the repair was done, and the tax as it was reckoned;
/// an amount that was typed as a whole is asked for with its tax.
fn included(told: &Told) -> Option<(String, String)> {
    let label = told.customer(Customer::Included);
    let ending = standing::ending(told.sheet);
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
fn came_in(told: &Told) -> Vec<(String, String)> {
    let mut rows = Vec::new();
    if let Some(number) = told.sheet.invoice() {
        rows.push((told.word(ReportWord::InvoiceHead), number.to_owned()));
    }
    for (entry, paid) in told.sheet.payments() {
        let on = day(&entry.at).map(|day| plain::day(told.lang, day));
        let line = format!("{}, {}", paid_line(told, paid), on.unwrap_or_default());
        rows.push((told.word(ReportWord::PaidHead), line));
    }
    let open = still_to_pay(told.sheet).filter(|_| told.sheet.payments().next().is_some());
    rows.extend(open.map(|open| {
        (
            told.customer(Customer::StillToPay),
            money(told.format, &open),
        )
    }));
    rows
}

/// The repair in lines with their sums, where it was written out; page one has no room for it.
pub(super) fn reckoned(told: &Told) -> Vec<Block> {
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
pub(super) fn paid_line(told: &Told, paid: &Paid) -> String {
    let how = text::paid_how(told.lang, paid.how);
    format!("{}, {how}", money(told.format, &paid.amount))
}

fn lines(told: &Told, estimate: &Estimate, currency: &str) -> Block {
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
mod tests {
    #![allow(
        clippy::unwrap_used,
        clippy::expect_used,
        clippy::panic,
        clippy::indexing_slicing
    )]
    use super::super::sample;
    use super::super::{Reader, Report};
    use super::*;
    use crate::job::entry::{PaidHow, Price, What};
    use crate::text::Lang;
    use crate::trade::money::{LineKind, TaxRounding, TaxRule};
    use crate::units::{Decimal, DecimalMark, Format, System};

    const COMMA: Format = Format {
        system: System::Metric,
        decimal: DecimalMark::Comma,
    };

    fn decimal(text: &str) -> Decimal {
        Decimal::parse(text).unwrap()
    }

    fn euro(minor: i64) -> Money {
        let currency = "EUR".to_owned();
        Money { minor, currency }
    }

    fn line(kind: LineKind, text: &str, quantity: &str, each: i64) -> Line {
        Line {
            kind,
            text: text.to_owned(),
            quantity: decimal(quantity),
            each,
            taxed: true,
        }
    }

    /// 170 and 1.5 times 90 are 305; 19 % of it are 57.95.
    fn price() -> Price {
        let tax = TaxRule {
            percent: decimal("19"),
            rounding: TaxRounding::Total,
        };
        Price {
            repair: euro(36_295),
            refit: Some(euro(9_000)),
            estimate: Some(Estimate {
                lines: vec![
                    line(LineKind::Part, "Hub", "1", 17_000),
                    line(LineKind::Labour, "", "1.5", 9_000),
                ],
                tax: Some(tax),
            }),
        }
    }

    #[test]
    fn a_price_in_lines_is_told_line_by_line_with_what_came_in() {
        let mut job = sample::finished(None);
        job.tap(vec![
            What::Price(price()),
            What::Invoice("N0042".to_owned()),
            What::Paid(Paid {
                how: PaidHow::Cash,
                amount: euro(36_295),
            }),
        ]);
        let reader = Reader {
            job: "0195-log-77aa31bc".to_owned(),
            digest: "9f".repeat(32),
            made_by: String::new(),
            contact: String::new(),
            warranty: String::new(),
            codes: None,
        };
        let report = Report::of(&job.sheet(), Lang::English, COMMA, &reader);
        let texts = |blocks: &[Block]| -> Vec<String> {
            let texts = blocks.iter().flat_map(Block::texts);
            texts.map(str::to_owned).collect()
        };
        let (page, after) = (texts(&report.page_one), texts(&report.technician));
        for text in [
            "Part: Hub",
            "Labor",
            "1,5",
            "135,00\u{a0}EUR",
            "305,00\u{a0}EUR",
            "57,95\u{a0}EUR",
        ] {
            assert!(after.iter().any(|it| it == text), "{text}: {after:?}");
        }
        for text in ["362,95\u{a0}EUR", "N0042"] {
            assert!(page.iter().any(|it| it == text), "{text}: {page:?}");
        }
        assert!(
            page.iter()
                .any(|text| text.starts_with("362,95\u{a0}EUR, Cash, "))
        );
    }
}
