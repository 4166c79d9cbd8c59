//! An estimate in lines: what each comes to, the tax, and the sum to be agreed to.
//!
//! Everything is reckoned in whole numbers. A half rounds away from zero, as an invoice is
//! commonly rounded; where the tax is rounded, by line or on the sum, the shop says.

use crate::units::Decimal;
use crate::words;

words! {
    /// What a line is for.
    pub enum LineKind {
        Part = "part", Labour = "labour", Travel = "travel", Other = "other",
    }
}

words! {
    /// Where tax is rounded to the minor unit.
    pub enum TaxRounding {
        /// On each line, and the rounded amounts are added.
        Line = "line",
        /// Once, on the sum of what is taxed.
        Total = "total",
    }
}

/// One line of an estimate.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Line {
    /// What it is for.
    pub kind: LineKind,
    /// In words.
    pub text: String,
    /// Pieces, hours or whatever the price is for, as typed.
    pub quantity: Decimal,
    /// Price of one, before tax, in minor units; below zero for an allowance.
    pub each: i64,
    /// Whether tax is added.
    pub taxed: bool,
}

/// The tax of the shop.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct TaxRule {
    /// Percent, as typed.
    pub percent: Decimal,
    /// Where it is rounded.
    pub rounding: TaxRounding,
}

/// Lines, and the tax on them.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Estimate {
    /// The lines in their order.
    pub lines: Vec<Line>,
    /// The tax, if the shop adds one.
    pub tax: Option<TaxRule>,
}

/// What an estimate comes to, in minor units.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Totals {
    /// All lines, before tax.
    pub net: i64,
    /// The tax on those that are taxed.
    pub tax: i64,
    /// To be paid.
    pub gross: i64,
}

/// Why an estimate has no sum.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EstimateError {
    /// There is no line.
    Empty,
    /// A quantity is not above zero.
    Quantity {
        /// The line, counted from 1.
        line: usize,
    },
    /// The tax is below zero or above a hundred percent.
    Tax,
    /// The lines come to less than nothing.
    BelowNothing,
    /// More than an amount can be.
    TooLarge,
}

/// A decimal number as a whole number over a power of ten.
struct Exact {
    figures: i128,
    places: u32,
}

impl Exact {
    fn of(decimal: &Decimal) -> Self {
        let figures: String = decimal
            .as_typed()
            .chars()
            .filter(char::is_ascii_digit)
            .collect();
        // A decimal has at most fifteen digits: neither can be out of range.
        let size = figures.parse::<i128>().unwrap_or(0);
        Self {
            figures: if decimal.is_negative() { -size } else { size },
            places: u32::try_from(decimal.decimals()).unwrap_or(0),
        }
    }

    /// `amount` times this, over a further power of ten, a half away from zero.
    fn share(&self, amount: i64, further: u32) -> Result<i64, EstimateError> {
        let product = i128::from(amount)
            .checked_mul(self.figures)
            .ok_or(EstimateError::TooLarge)?;
        let size = 10_i128.pow(self.places + further);
        let rounded = (product.abs() + size / 2) / size * product.signum();
        i64::try_from(rounded).map_err(|_| EstimateError::TooLarge)
    }
}

/// What a line comes to before tax, in minor units: quantity times price.
///
/// # Errors
/// [`EstimateError::TooLarge`] for more than an amount can be.
pub fn line_amount(line: &Line) -> Result<i64, EstimateError> {
    Exact::of(&line.quantity).share(line.each, 0)
}

/// What an estimate comes to.
///
/// `net = Σ round(quantity · each)`; `tax = Σ round(line · percent / 100)` by line, or
/// `round(Σ line · percent / 100)` on the total, over the lines that are taxed.
///
/// # Errors
/// The [`EstimateError`] for which there is no sum.
///
/// # Source
/// Commercial rounding, a half away from zero: common practice, no source; checked against
/// Python's `decimal` in `tests/reference/13_money.json`.
pub fn totals(estimate: &Estimate) -> Result<Totals, EstimateError> {
    if estimate.lines.is_empty() {
        return Err(EstimateError::Empty);
    }
    let mut amounts = Vec::new();
    for (at, line) in estimate.lines.iter().enumerate() {
        if Exact::of(&line.quantity).figures <= 0 {
            return Err(EstimateError::Quantity { line: at + 1 });
        }
        amounts.push((line_amount(line)?, line.taxed));
    }
    let net = sum(amounts.iter().map(|(amount, _)| *amount))?;
    let taxed = amounts
        .iter()
        .filter(|(_, t)| *t)
        .map(|(amount, _)| *amount);
    let tax = match &estimate.tax {
        Some(rule) => tax(rule, taxed)?,
        None => 0,
    };
    let gross = sum([net, tax].into_iter())?;
    if gross < 0 {
        return Err(EstimateError::BelowNothing);
    }
    Ok(Totals { net, tax, gross })
}

fn tax(rule: &TaxRule, taxed: impl Iterator<Item = i64>) -> Result<i64, EstimateError> {
    let percent = Exact::of(&rule.percent);
    if percent.figures < 0 || percent.figures > 100 * 10_i128.pow(percent.places) {
        return Err(EstimateError::Tax);
    }
    match rule.rounding {
        TaxRounding::Line => {
            let each: Result<Vec<i64>, EstimateError> =
                taxed.map(|amount| percent.share(amount, 2)).collect();
            sum(each?.into_iter())
        }
        TaxRounding::Total => percent.share(sum(taxed)?, 2),
    }
}

fn sum(mut amounts: impl Iterator<Item = i64>) -> Result<i64, EstimateError> {
    amounts
        .try_fold(0_i64, i64::checked_add)
        .ok_or(EstimateError::TooLarge)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn decimal(text: &str) -> Decimal {
        Decimal::parse(text).unwrap()
    }

    fn line(quantity: &str, each: i64) -> Line {
        Line {
            kind: LineKind::Part,
            text: "Hub".to_owned(),
            quantity: decimal(quantity),
            each,
            taxed: true,
        }
    }

    fn estimate(lines: Vec<Line>, percent: &str, rounding: TaxRounding) -> Estimate {
        let percent = decimal(percent);
        let tax = Some(TaxRule { percent, rounding });
        Estimate { lines, tax }
    }

    #[test]
    fn each_fault_is_told_by_its_own_name() {
        let of = |lines, percent| totals(&estimate(lines, percent, TaxRounding::Total));
        assert_eq!(of(vec![], "0"), Err(EstimateError::Empty));
        let second = vec![line("1", 5), line("0", 5)];
        assert_eq!(of(second, "0"), Err(EstimateError::Quantity { line: 2 }));
        let below = vec![line("-1", 5)];
        assert_eq!(of(below, "0"), Err(EstimateError::Quantity { line: 1 }));
        assert_eq!(of(vec![line("1", 5)], "-1"), Err(EstimateError::Tax));
        assert_eq!(of(vec![line("1", 5)], "100.01"), Err(EstimateError::Tax));
        assert_eq!(
            of(vec![line("1", -5)], "0"),
            Err(EstimateError::BelowNothing)
        );
        let most = vec![line("1", i64::MAX), line("1", 1)];
        assert_eq!(of(most, "0"), Err(EstimateError::TooLarge));
        let many = vec![line("999999999999999", i64::MAX)];
        assert_eq!(of(many, "0"), Err(EstimateError::TooLarge));
    }

    #[test]
    fn an_untaxed_line_bears_no_tax() {
        let mut free = line("1", 1000);
        free.taxed = false;
        let both = estimate(vec![line("1", 1000), free], "10", TaxRounding::Total);
        let (net, tax, gross) = (2000, 100, 2100);
        assert_eq!(totals(&both), Ok(Totals { net, tax, gross }));
        let untaxed = Estimate { tax: None, ..both };
        assert_eq!(totals(&untaxed).map(|it| it.tax), Ok(0));
    }

    #[test]
    fn an_allowance_takes_its_own_tax_away() {
        let lines = vec![line("1", 1000), line("1", -1000)];
        for rounding in TaxRounding::ALL {
            let all = estimate(lines.clone(), "19", *rounding);
            assert_eq!(totals(&all).map(|it| it.gross), Ok(0));
        }
    }
}
