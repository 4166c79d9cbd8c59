//! Amounts and estimates as they are stored: whole minor units, quantities as typed.

use serde::{Deserialize, Serialize};

use crate::job::entry::Money;
use crate::trade::money::{Estimate, Line, LineKind, TaxRounding, TaxRule};
use crate::units::Decimal;

/// An amount.
#[derive(Serialize, Deserialize)]
pub(super) struct MoneyText {
    minor: i64,
    currency: String,
}

/// The lines of an estimate; amounts are in minor units of the price's currency.
#[derive(Serialize, Deserialize)]
pub(super) struct EstimateText {
    lines: Vec<LineText>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    tax: Option<TaxText>,
}

/// One line of an estimate.
#[derive(Serialize, Deserialize)]
pub(super) struct LineText {
    kind: String,
    text: String,
    quantity: String,
    each: i64,
    taxed: bool,
}

/// The tax of an estimate.
#[derive(Serialize, Deserialize)]
pub(super) struct TaxText {
    percent: String,
    rounding: String,
}

pub(super) fn lower(money: &Money) -> MoneyText {
    MoneyText {
        minor: money.minor,
        currency: money.currency.clone(),
    }
}

pub(super) fn raise(stored: MoneyText) -> Money {
    Money {
        minor: stored.minor,
        currency: stored.currency,
    }
}

pub(super) fn lower_estimate(estimate: &Estimate) -> EstimateText {
    EstimateText {
        lines: estimate.lines.iter().map(lower_line).collect(),
        tax: estimate.tax.as_ref().map(lower_tax),
    }
}

pub(super) fn raise_estimate(stored: EstimateText) -> Option<Estimate> {
    let lines = stored.lines.into_iter().map(raise_line);
    Some(Estimate {
        lines: lines.collect::<Option<_>>()?,
        tax: match stored.tax {
            Some(tax) => Some(raise_tax(&tax)?),
            None => None,
        },
    })
}

pub(super) fn lower_line(line: &Line) -> LineText {
    LineText {
        kind: line.kind.code().to_owned(),
        text: line.text.clone(),
        quantity: line.quantity.as_typed().to_owned(),
        each: line.each,
        taxed: line.taxed,
    }
}

pub(super) fn raise_line(stored: LineText) -> Option<Line> {
    Some(Line {
        kind: LineKind::from_code(&stored.kind)?,
        text: stored.text,
        quantity: Decimal::parse(&stored.quantity).ok()?,
        each: stored.each,
        taxed: stored.taxed,
    })
}

pub(super) fn lower_tax(tax: &TaxRule) -> TaxText {
    TaxText {
        percent: tax.percent.as_typed().to_owned(),
        rounding: tax.rounding.code().to_owned(),
    }
}

pub(super) fn raise_tax(stored: &TaxText) -> Option<TaxRule> {
    Some(TaxRule {
        percent: Decimal::parse(&stored.percent).ok()?,
        rounding: TaxRounding::from_code(&stored.rounding)?,
    })
}
