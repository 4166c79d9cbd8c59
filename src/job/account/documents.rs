//! What should stand on invoices and credit notes, beside what does.

use super::{Account, Charge, ChargeState, Stage};
use crate::map::OrderedMap;
use crate::trade::money::{
    Billed, BilledFor, EstimateError, Invoice, TaxRule, by_rate, discounted, whole, written_out,
};
use crate::units::Decimal;

impl Account<'_> {
    /// What stands on invoices less what stands on credit notes, in minor units.
    pub fn documented(&self) -> i64 {
        let all = self.documents.iter().map(|document| document.gross());
        all.fold(0, i64::saturating_add)
    }

    /// What no document has yet, and what one has that is no longer to pay, below zero; `rule` is
    /// the tax that amounts agreed to as a whole contain.
    ///
    /// # Errors
    /// The [`EstimateError`] for which an amount has no tax.
    pub fn undocumented(&self, rule: Option<&TaxRule>) -> Result<Vec<Billed>, EstimateError> {
        // While the work is not done, or goes on again, nothing is put on paper or taken back.
        if self.stage != Stage::Due {
            return Ok(Vec::new());
        }
        let wanted = self.wanted(rule.map(|rule| &rule.percent))?;
        let now: OrderedMap<&str, &Billed> =
            OrderedMap::from_iter(wanted.iter().map(|it| (it.of.as_str(), it)));
        let mut has: OrderedMap<&str, Vec<&Billed>> = OrderedMap::new();
        for part in self.documents.iter().flat_map(|document| &document.parts) {
            has.or_default(part.of.as_str()).push(part);
        }
        let mut rest = Vec::new();
        for (of, has) in &has {
            let now = now.get(of).copied();
            let is = has.iter().map(|part| part.gross());
            let is = is.fold(0, i64::saturating_add);
            if is != now.map_or(0, Billed::gross) {
                // What was taken back already stands beside what it took back.
                rest.extend(has.iter().map(|part| part.reversed()));
                rest.extend(now.cloned());
            }
        }
        let new = wanted.iter();
        rest.extend(
            new.filter(|part| !has.contains_key(part.of.as_str()))
                .cloned(),
        );
        Ok(rest)
    }

    /// What should stand on documents now.
    fn wanted(&self, percent: Option<&Decimal>) -> Result<Vec<Billed>, EstimateError> {
        let mut all = Vec::new();
        for charge in &self.charges {
            if charge.state == ChargeState::Done
                && let Some(amount) = charge.amount
            {
                all.push(charge.billed(amount, percent)?);
            }
        }
        let rates = by_rate(&all);
        let (mut off, mut left) = (Vec::new(), self.discount());
        for (id, discount) in &self.discounts {
            let amount = discount.amount.minor.clamp(0, left);
            left = left.saturating_sub(amount);
            let (lines, taxes) = discounted(amount, &rates)?;
            off.push(Billed {
                of: id.0.clone(),
                what: BilledFor::Discount,
                corner: None,
                text: discount.reason.clone(),
                lines,
                taxes,
            });
        }
        all.extend(off);
        Ok(all)
    }

    /// The next document: an invoice of what none has yet, or a credit note of what is no longer to
    /// pay. Nothing where every document is right, or entries are missing.
    ///
    /// # Errors
    /// The [`EstimateError`] for which an amount has no tax.
    pub fn next_document(&self, rule: Option<&TaxRule>) -> Result<Option<Invoice>, EstimateError> {
        let parts = self.undocumented(rule)?;
        if parts.is_empty() || !self.complete {
            return Ok(None);
        }
        let sum = parts.iter().map(Billed::gross).fold(0, i64::saturating_add);
        let invoices = self.documents.iter().rev();
        let mut invoices = invoices.filter(|document| document.credits.is_none());
        Ok(Some(Invoice {
            number: String::new(),
            credits: invoices
                .next()
                .filter(|_| sum < 0)
                .map(|invoice| invoice.number.clone()),
            currency: self.currency.clone(),
            parts,
        }))
    }
}

impl Charge<'_> {
    fn billed(&self, amount: i64, percent: Option<&Decimal>) -> Result<Billed, EstimateError> {
        let (lines, taxes) = match &self.lines {
            Some(estimate) => written_out(estimate)?,
            None => whole(amount, percent)?,
        };
        Ok(Billed {
            of: self.of.0.clone(),
            what: self.what,
            corner: self.corner,
            text: self.text.to_owned(),
            lines,
            taxes,
        })
    }
}
