//! Amounts as they are printed; whole minor units all the way, never a float.

use crate::job::entry::Money;
use crate::units::Format;

/// Currencies without a minor unit (ISO 4217, from memory).
const NO_MINOR: [&str; 9] = [
    "JPY", "KRW", "ISK", "VND", "CLP", "PYG", "UGX", "XAF", "XOF",
];
/// Currencies with thousandths (ISO 4217, from memory).
const THOUSANDTHS: [&str; 5] = ["BHD", "KWD", "OMR", "JOD", "TND"];

/// `420.00 USD`, with the reader's decimal mark.
pub fn money(format: Format, money: &Money) -> String {
    let digits = match money.currency.as_str() {
        code if NO_MINOR.contains(&code) => 0,
        code if THOUSANDTHS.contains(&code) => 3,
        _ => 2,
    };
    let size = 10_u64.pow(digits);
    let (whole, rest) = (
        money.minor.unsigned_abs() / size,
        money.minor.unsigned_abs() % size,
    );
    let sign = if money.minor < 0 { "-" } else { "" };
    let width = digits as usize;
    let number = match digits {
        0 => format!("{sign}{whole}"),
        _ => format!("{sign}{whole}.{rest:0width$}"),
    };
    format!("{}\u{a0}{}", format.marked(&number), money.currency)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{DecimalMark, System};

    #[test]
    fn minor_units_are_those_of_the_currency() {
        let format = Format {
            system: System::Metric,
            decimal: DecimalMark::Comma,
        };
        let told = |minor, currency: &str| {
            let currency = currency.to_owned();
            money(format, &Money { minor, currency })
        };
        assert_eq!(told(42_005, "EUR"), "420,05\u{a0}EUR");
        assert_eq!(told(420, "JPY"), "420\u{a0}JPY");
        assert_eq!(told(1_234, "KWD"), "1,234\u{a0}KWD");
        assert_eq!(told(-5, "USD"), "\u{2212}0,05\u{a0}USD");
        assert_eq!(
            told(i64::MIN, "JPY"),
            "\u{2212}9223372036854775808\u{a0}JPY"
        );
    }
}
