//! What stands on an invoice or a credit note: frozen lines, the tax at each rate, and their sums.
//!
//! Nothing is computed from a price again: sums are sums of what is written here.

use super::estimate::{
    ByRate, Estimate, EstimateError, LineKind, TaxSum, contained_tax, line_amount, rate, rounded,
    taxes,
};
use crate::trade::vehicle::Corner;
use crate::units::Decimal;
use crate::words;

words! {
    /// What a part of an invoice is for.
    pub enum BilledFor {
        Repair = "repair", Inspection = "inspection", Further = "further", Discount = "discount",
    }
}

/// One line as it was written; below zero on a credit note and for a discount.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct BilledLine {
    /// What it is for.
    pub kind: LineKind,
    /// In words; empty for the words of its part.
    pub text: String,
    /// Pieces, hours or whatever the price is for, as typed.
    pub quantity: Decimal,
    /// Price of one, before tax, in minor units.
    pub each: i64,
    /// What it comes to before tax, in minor units.
    pub net: i64,
    /// At which rate it is taxed, in percent; nothing where it is not.
    pub percent: Option<Decimal>,
}

/// What one answer of the customer, or one discount, comes to.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Billed {
    /// The entry that it rests on.
    pub of: String,
    /// What it is for.
    pub what: BilledFor,
    /// The wheel end, if it has one.
    pub corner: Option<Corner>,
    /// In words, such as the part that broke; may be empty.
    pub text: String,
    /// Its lines.
    pub lines: Vec<BilledLine>,
    /// The tax on them, by rate.
    pub taxes: Vec<TaxSum>,
}

/// An invoice, or a credit note if it takes one back.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Invoice {
    /// Its own number.
    pub number: String,
    /// The number of the invoice that it corrects; an invoice has none.
    pub credits: Option<String>,
    /// The currency's ISO 4217 code.
    pub currency: String,
    /// What it is made up of.
    pub parts: Vec<Billed>,
}

impl Billed {
    /// All lines before tax, in minor units.
    pub fn net(&self) -> i64 {
        sum(self.lines.iter().map(|line| line.net))
    }

    /// The tax on them, in minor units.
    pub fn tax(&self) -> i64 {
        sum(self.taxes.iter().map(|it| it.tax))
    }

    /// What it comes to, in minor units.
    pub fn gross(&self) -> i64 {
        self.net().saturating_add(self.tax())
    }

    /// The same taken back.
    #[must_use]
    pub fn reversed(&self) -> Self {
        let mut back = self.clone();
        for line in &mut back.lines {
            line.each = line.each.saturating_neg();
            line.net = line.net.saturating_neg();
        }
        for it in &mut back.taxes {
            it.net = it.net.saturating_neg();
            it.tax = it.tax.saturating_neg();
        }
        back
    }
}

impl Invoice {
    /// Everything before tax, in minor units; below zero for a credit note.
    pub fn net(&self) -> i64 {
        sum(self.parts.iter().map(Billed::net))
    }

    /// All tax, in minor units.
    pub fn tax(&self) -> i64 {
        sum(self.parts.iter().map(Billed::tax))
    }

    /// What it comes to, in minor units.
    pub fn gross(&self) -> i64 {
        self.net().saturating_add(self.tax())
    }

    /// What is not taxed, in minor units.
    pub fn untaxed(&self) -> i64 {
        let taxed = sum(self.taxes().iter().map(|it| it.net));
        self.net().saturating_sub(taxed)
    }

    /// The tax by rate, each rate once.
    pub fn taxes(&self) -> Vec<TaxSum> {
        let mut all = ByRate::default();
        for one in self.parts.iter().flat_map(|part| &part.taxes) {
            // More than an amount can be stands in no file that was made here.
            let _ = all.add(one.clone());
        }
        all.into_sums()
    }
}

fn sum(mut amounts: impl Iterator<Item = i64>) -> i64 {
    amounts.by_ref().fold(0, i64::saturating_add)
}

/// The lines of an estimate as an invoice has them, with the tax by rate.
///
/// # Errors
/// The [`EstimateError`] for which there is no sum.
pub fn written_out(estimate: &Estimate) -> Result<(Vec<BilledLine>, Vec<TaxSum>), EstimateError> {
    let lines = estimate.lines.iter().map(|line| {
        Ok(BilledLine {
            kind: line.kind,
            text: line.text.clone(),
            quantity: line.quantity.clone(),
            each: line.each,
            net: line_amount(line)?,
            percent: rate(estimate, line).cloned(),
        })
    });
    let lines: Result<Vec<BilledLine>, EstimateError> = lines.collect();
    Ok((lines?, taxes(estimate)?))
}

/// An amount that was agreed to as a whole, its tax contained in it.
///
/// # Errors
/// [`EstimateError::Tax`] for a rate that is none.
pub fn whole(
    gross: i64,
    percent: Option<&Decimal>,
) -> Result<(Vec<BilledLine>, Vec<TaxSum>), EstimateError> {
    let tax = percent.map_or(Ok(0), |percent| contained_tax(gross, percent))?;
    let net = gross.saturating_sub(tax);
    let line = BilledLine {
        kind: LineKind::Other,
        text: String::new(),
        quantity: Decimal::parse("1").map_err(|_| EstimateError::Empty)?,
        each: net,
        net,
        percent: percent.cloned(),
    };
    let percent = percent.cloned().into_iter();
    let taxes = percent.map(|percent| TaxSum { percent, net, tax });
    Ok((vec![line], taxes.collect()))
}

/// A discount of so much off what comes to this at each rate, tax contained: shared out over the
/// rates by what each comes to, the last taking what rounding leaves.
///
/// # Errors
/// The [`EstimateError`] for which there is no share.
///
/// # Source
/// A discount lowers what is taxed, in proportion: common practice, no source.
pub fn discounted(
    amount: i64,
    rates: &[(Option<Decimal>, i64)],
) -> Result<(Vec<BilledLine>, Vec<TaxSum>), EstimateError> {
    let all = sum(rates.iter().map(|(_, gross)| *gross));
    let (mut lines, mut taxes, mut left) = (Vec::new(), Vec::new(), amount);
    for (at, (percent, gross)) in rates.iter().enumerate() {
        let last = at + 1 == rates.len();
        let share = match last || all <= 0 {
            true => left,
            false => rounded(amount, i128::from(*gross), i128::from(all))?,
        };
        left = left.saturating_sub(share);
        let (line, tax) = whole(share.saturating_neg(), percent.as_ref())?;
        lines.extend(line);
        taxes.extend(tax);
        if all <= 0 {
            break;
        }
    }
    Ok((lines, taxes))
}

/// What parts come to with their tax at each rate, and what is not taxed.
pub fn by_rate(parts: &[Billed]) -> Vec<(Option<Decimal>, i64)> {
    let one = Invoice {
        number: String::new(),
        credits: None,
        currency: String::new(),
        parts: parts.to_vec(),
    };
    let taxed = one.taxes().into_iter();
    let mut all: Vec<(Option<Decimal>, i64)> = taxed
        .map(|it| (Some(it.percent), it.net.saturating_add(it.tax)))
        .collect();
    let free = one.untaxed();
    if free != 0 || all.is_empty() {
        all.push((None, free));
    }
    all
}

#[cfg(test)]
mod tests {
    #![allow(
        clippy::unwrap_used,
        clippy::expect_used,
        clippy::panic,
        clippy::indexing_slicing
    )]
    use super::*;

    fn decimal(text: &str) -> Decimal {
        Decimal::parse(text).unwrap()
    }

    fn part((lines, taxes): (Vec<BilledLine>, Vec<TaxSum>)) -> Billed {
        Billed {
            of: "a".to_owned(),
            what: BilledFor::Repair,
            corner: None,
            text: String::new(),
            lines,
            taxes,
        }
    }

    #[test]
    fn an_amount_as_a_whole_contains_its_tax() {
        let taxed = part(whole(11_900, Some(&decimal("19"))).unwrap());
        assert_eq!(
            (taxed.net(), taxed.tax(), taxed.gross()),
            (10_000, 1_900, 11_900)
        );
        let free = part(whole(11_900, None).unwrap());
        assert_eq!((free.net(), free.tax(), free.gross()), (11_900, 0, 11_900));
    }

    #[test]
    fn a_discount_is_shared_over_the_rates_to_the_last_cent() {
        let parts = [
            part(whole(10_000, Some(&decimal("19"))).unwrap()),
            part(whole(5_000, Some(&decimal("7"))).unwrap()),
            part(whole(3, None).unwrap()),
        ];
        let off = part(discounted(1_001, &by_rate(&parts)).unwrap());
        assert_eq!(off.gross(), -1_001);
        assert_eq!(off.lines.len(), 3);
        let nothing = part(discounted(500, &by_rate(&[])).unwrap());
        assert_eq!(nothing.gross(), -500);
    }

    #[test]
    fn what_is_taken_back_leaves_nothing() {
        let bill = part(whole(11_900, Some(&decimal("19"))).unwrap());
        let both = Invoice {
            number: String::new(),
            credits: None,
            currency: String::new(),
            parts: vec![bill.clone(), bill.reversed()],
        };
        assert_eq!((both.net(), both.tax(), both.gross()), (0, 0, 0));
        assert_eq!(both.taxes().len(), 1);
    }
}
