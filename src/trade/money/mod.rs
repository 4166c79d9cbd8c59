//! What the work costs: typed amounts, an estimate in lines, and its tax, in whole minor units.
//!
//! No amount ever passes through a float.

pub mod amount;
pub mod estimate;
pub mod invoice;

pub use amount::{AmountError, minor_digits, parse_minor, plain, printed};
pub use estimate::{
    Estimate, EstimateError, Line, LineKind, TaxRounding, TaxRule, Totals, line_amount, totals,
};
pub use invoice::{is_van_mark, next_invoice};
