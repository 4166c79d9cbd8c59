//! What the work costs: typed amounts, an estimate in lines, and its tax, in whole minor units.
//!
//! No amount ever passes through a float.

pub mod amount;
pub mod document;
pub mod estimate;
pub mod invoice;

pub use amount::{AmountError, minor_digits, parse_minor, plain, printed};
pub use document::{
    Billed, BilledFor, BilledLine, Invoice, by_rate, discounted, whole, written_out,
};
pub use estimate::{
    Estimate, EstimateError, Line, LineKind, TaxRounding, TaxRule, TaxSum, Totals, contained_tax,
    line_amount, rate, taxes, totals,
};
pub use invoice::{NumberIssue, is_van_mark, next_invoice, number_issues};
