//! Amounts as they are printed; whole minor units all the way, never a float.

use crate::job::entry::Money;
use crate::trade::money::{minor_digits, printed};
use crate::units::Format;

/// `420.00 USD`, with the reader's decimal mark.
pub fn money(format: Format, money: &Money) -> String {
    let number = printed(money.minor, minor_digits(&money.currency));
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
        let context = |minor, currency: &str| {
            let currency = currency.to_owned();
            money(format, &Money { minor, currency })
        };
        assert_eq!(context(42_005, "EUR"), "420,05\u{a0}EUR");
        assert_eq!(context(420, "JPY"), "420\u{a0}JPY");
        assert_eq!(context(1_234, "KWD"), "1,234\u{a0}KWD");
        assert_eq!(context(-5, "USD"), "\u{2212}0,05\u{a0}USD");
        assert_eq!(
            context(i64::MIN, "JPY"),
            "\u{2212}9223372036854775808\u{a0}JPY"
        );
    }
}
