//! An estimate in lines: what each comes to, the tax, and the sum to be agreed to.
//!
//! Everything is computed in whole numbers. A half rounds away from zero, as an invoice is
//! commonly rounded; where the tax is rounded, by line or on the sum of each rate, the shop says.

use crate::map::OrderedMap;
use crate::trade::vehicle::Corner;
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
        /// Once for each rate, on the sum of what is taxed at it.
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
    /// Another rate than the estimate's, in percent as typed.
    pub rate: Option<Decimal>,
    /// The wheel end it is for, where it is not for all of them.
    pub corner: Option<Corner>,
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

/// What is taxed at one rate, in minor units.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct TaxSum {
    /// The rate in percent, as typed.
    pub percent: Decimal,
    /// What is taxed, before tax.
    pub net: i64,
    /// The tax on it.
    pub tax: i64,
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
pub(super) struct Exact {
    figures: i128,
    places: u32,
}

impl Exact {
    pub(super) fn of(decimal: &Decimal) -> Self {
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
        let size = 10_i128.pow(self.places + further);
        rounded(amount, self.figures, size)
    }

    /// The tax within an amount that contains it: `amount · p / (100 + p)`.
    pub(super) fn contained(&self, amount: i64) -> Result<i64, EstimateError> {
        rounded(amount, self.figures, self.hundred() + self.figures)
    }

    /// A hundred percent, in these places.
    fn hundred(&self) -> i128 {
        100 * 10_i128.pow(self.places)
    }

    fn is_a_rate(&self) -> bool {
        0 <= self.figures && self.figures <= self.hundred()
    }

    /// The same for every way in which one number can be typed.
    fn key(&self) -> (i128, u32) {
        let (mut figures, mut places) = (self.figures, self.places);
        while 0 < places && figures % 10 == 0 {
            (figures, places) = (figures / 10, places - 1);
        }
        (figures, places)
    }
}

/// `amount · part / of`, a half away from zero.
pub(super) fn rounded(amount: i64, part: i128, of: i128) -> Result<i64, EstimateError> {
    let product = i128::from(amount)
        .checked_mul(part)
        .ok_or(EstimateError::TooLarge)?;
    let size = product.abs();
    // Rounded without doubling, which could leave the range.
    let up = i128::from(of - size % of <= size % of);
    let whole = (size / of + up) * product.signum();
    i64::try_from(whole).map_err(|_| EstimateError::TooLarge)
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
/// `net = Σ round(quantity · each)`; for each rate `tax = Σ round(line · percent / 100)` by line, or
/// `round(Σ line · percent / 100)` on the total, over the lines that are taxed at it.
///
/// # Errors
/// The [`EstimateError`] for which there is no sum.
///
/// # Source
/// Commercial rounding, a half away from zero: common practice, no source; checked against
/// Python's `decimal` in `tests/reference/13_money.json` and over made jobs in `tests/money.rs`.
pub fn totals(estimate: &Estimate) -> Result<Totals, EstimateError> {
    if estimate.lines.is_empty() {
        return Err(EstimateError::Empty);
    }
    for (at, line) in estimate.lines.iter().enumerate() {
        if Exact::of(&line.quantity).figures <= 0 {
            return Err(EstimateError::Quantity { line: at + 1 });
        }
    }
    let amounts: Result<Vec<i64>, EstimateError> = estimate.lines.iter().map(line_amount).collect();
    let net = sum(amounts?.into_iter())?;
    let tax = sum(taxes(estimate)?.iter().map(|it| it.tax))?;
    let gross = sum([net, tax].into_iter())?;
    if gross < 0 {
        return Err(EstimateError::BelowNothing);
    }
    Ok(Totals { net, tax, gross })
}

/// What is taxed and its tax, added up by rate, in the order in which the rates come.
#[derive(Default)]
pub(super) struct ByRate {
    sums: Vec<TaxSum>,
    places: OrderedMap<(i128, u32), usize>,
}

impl ByRate {
    pub(super) fn add(&mut self, one: TaxSum) -> Result<(), EstimateError> {
        let key = Exact::of(&one.percent).key();
        let place = *self.places.or_make(key, || self.sums.len());
        match self.sums.get_mut(place) {
            Some(it) => {
                it.net = sum([it.net, one.net].into_iter())?;
                it.tax = sum([it.tax, one.tax].into_iter())?;
            }
            None => self.sums.push(one),
        }
        Ok(())
    }

    pub(super) fn into_sums(self) -> Vec<TaxSum> {
        self.sums
    }
}

/// The rate at which a line of an estimate is taxed, if it is.
pub fn rate<'a>(estimate: &'a Estimate, line: &'a Line) -> Option<&'a Decimal> {
    let usual = estimate.tax.as_ref().map(|rule| &rule.percent);
    line.rate.as_ref().or(usual).filter(|_| line.taxed)
}

/// What is taxed at each rate, and the tax on it, in the order in which the lines have them.
///
/// # Errors
/// [`EstimateError::Tax`] for a rate below zero or above a hundred percent, and
/// [`EstimateError::TooLarge`].
pub fn taxes(estimate: &Estimate) -> Result<Vec<TaxSum>, EstimateError> {
    let by_line = estimate.tax.as_ref().map(|rule| rule.rounding) == Some(TaxRounding::Line);
    let mut all = ByRate::default();
    for line in &estimate.lines {
        let Some(percent) = rate(estimate, line) else {
            continue;
        };
        let exact = Exact::of(percent);
        if !exact.is_a_rate() {
            return Err(EstimateError::Tax);
        }
        let net = line_amount(line)?;
        let tax = if by_line { exact.share(net, 2)? } else { 0 };
        let percent = percent.clone();
        all.add(TaxSum { percent, net, tax })?;
    }
    let mut all = all.into_sums();
    if !by_line {
        for it in &mut all {
            it.tax = Exact::of(&it.percent).share(it.net, 2)?;
        }
    }
    Ok(all)
}

/// The tax within an amount that contains it, rounded once: `gross · p / (100 + p)`.
///
/// # Errors
/// [`EstimateError::Tax`] for a rate below zero or above a hundred percent.
pub fn contained_tax(gross: i64, percent: &Decimal) -> Result<i64, EstimateError> {
    let exact = Exact::of(percent);
    if !exact.is_a_rate() {
        return Err(EstimateError::Tax);
    }
    exact.contained(gross)
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
            rate: None,
            corner: None,
        }
    }

    fn estimate(lines: Vec<Line>, percent: &str, rounding: TaxRounding) -> Estimate {
        let percent = decimal(percent);
        let tax = Some(TaxRule { percent, rounding });
        Estimate { lines, tax }
    }

    #[test]
    fn each_fault_is_reported_by_its_own_name() {
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
    fn each_rate_has_its_own_sum_whatever_zeros_it_was_typed_with() {
        let at = |rate: &str| Line {
            rate: Some(decimal(rate)),
            ..line("1", 1005)
        };
        let lines = vec![line("1", 1000), at("7.5"), at("7.50"), at("10.0")];
        let all = taxes(&estimate(lines, "10", TaxRounding::Total)).unwrap();
        let sums = all.iter().map(|it| (it.percent.as_typed(), it.net, it.tax));
        // 2005 at 10 % are 200.5; 2010 at 7.5 % are 150.75.
        assert_eq!(
            sums.collect::<Vec<_>>(),
            [("10", 2005, 201), ("7.5", 2010, 151)]
        );
        let wrong = estimate(vec![at("100.1")], "10", TaxRounding::Total);
        assert_eq!(totals(&wrong), Err(EstimateError::Tax));
    }

    #[test]
    fn a_contained_tax_is_rounded_once() {
        assert_eq!(contained_tax(11_900, &decimal("19")), Ok(1_900));
        // 1000 · 8.25 / 108.25 = 76.2…; 21 · 5 / 105 = 1.
        assert_eq!(contained_tax(1_000, &decimal("8.25")), Ok(76));
        assert_eq!(contained_tax(-21, &decimal("5")), Ok(-1));
        assert_eq!(contained_tax(0, &decimal("0")), Ok(0));
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
