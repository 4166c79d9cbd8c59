//! Amounts: from what was typed to whole minor units and back, never through a float.

use crate::units::{Decimal, DecimalError};

/// Why a typed text is no amount.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AmountError {
    /// It is no decimal number.
    NoNumber(DecimalError),
    /// Less than nothing.
    Negative,
    /// More digits behind the separator than the currency has.
    TooFine {
        /// How many the currency has.
        digits: u8,
    },
    /// More than an amount can be.
    TooLarge,
}

/// How many digits the currency's minor unit has (ISO 4217, from memory); two for most.
///
/// ```
/// use hubslate::trade::money::minor_digits;
///
/// assert_eq!(["USD", "JPY", "KWD"].map(minor_digits), [2, 0, 3]); // ISO 4217
/// ```
pub fn minor_digits(currency: &str) -> u8 {
    match currency {
        "JPY" | "KRW" | "ISK" | "VND" | "CLP" | "PYG" | "UGX" | "XAF" | "XOF" => 0,
        "BHD" | "KWD" | "OMR" | "JOD" | "TND" => 3,
        _ => 2,
    }
}

/// A typed amount in minor units of a currency with so many digits.
///
/// # Errors
/// The [`AmountError`] that makes the text no amount.
///
/// ```
/// use hubslate::trade::money::parse_minor;
///
/// assert_eq!(parse_minor("12.5", 2), Ok(1250)); // dollars in cents
/// assert!(parse_minor("0.005", 2).is_err());
/// ```
pub fn parse_minor(typed: &str, digits: u8) -> Result<i64, AmountError> {
    let decimal = Decimal::parse(typed).map_err(AmountError::NoNumber)?;
    if decimal.is_negative() {
        return Err(AmountError::Negative);
    }
    let places = usize::from(digits);
    if decimal.decimals() > places {
        return Err(AmountError::TooFine { digits });
    }
    let figures: String = decimal
        .as_typed()
        .chars()
        .filter(char::is_ascii_digit)
        .chain(std::iter::repeat_n('0', places - decimal.decimals()))
        .collect();
    figures.parse().map_err(|_| AmountError::TooLarge)
}

/// Minor units as a plain decimal text with a point, as a field would hold it: no digits behind
/// the point where they are all nothing.
pub fn plain(minor: i64, digits: u8) -> String {
    let all = printed(minor, digits);
    match all.split_once('.') {
        Some((whole, rest)) if rest.bytes().all(|digit| digit == b'0') => whole.to_owned(),
        _ => all,
    }
}

/// Minor units as they are printed: with every digit of the currency, a point and its own sign.
///
/// ```
/// use hubslate::trade::money::printed;
///
/// assert_eq!(printed(-1250, 2), "-12.50");
/// ```
pub fn printed(minor: i64, digits: u8) -> String {
    let size = 10_u64.pow(u32::from(digits));
    let sign = if minor < 0 { "-" } else { "" };
    let (whole, rest) = (minor.unsigned_abs() / size, minor.unsigned_abs() % size);
    let width = usize::from(digits);
    match digits {
        0 => format!("{sign}{whole}"),
        _ => format!("{sign}{whole}.{rest:0width$}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn reads(typed: &str, digits: u8, minor: i64) {
        assert_eq!(parse_minor(typed, digits), Ok(minor), "{typed:?}");
    }

    #[test]
    fn whole_and_broken_amounts_are_read_with_either_mark() {
        reads("420", 2, 42_000);
        reads("420.5", 2, 42_050);
        reads("420,05", 2, 42_005);
        reads(" 0 ", 2, 0);
        reads("1.234", 3, 1_234);
        reads("420", 0, 420);
        reads("420.", 0, 420);
        reads("0.10", 2, 10);
    }

    #[test]
    fn each_slip_is_reported_by_its_own_name() {
        assert_eq!(
            parse_minor("", 2),
            Err(AmountError::NoNumber(DecimalError::Empty))
        );
        assert_eq!(parse_minor("-5", 2), Err(AmountError::Negative));
        assert_eq!(
            parse_minor("1.005", 2),
            Err(AmountError::TooFine { digits: 2 })
        );
        assert_eq!(
            parse_minor("1.5", 0),
            Err(AmountError::TooFine { digits: 0 })
        );
        assert_eq!(
            parse_minor("999999999999999", 9),
            Err(AmountError::TooLarge)
        );
    }

    #[test]
    fn a_field_gets_back_what_it_gave() {
        for (minor, digits, text) in [(42_005, 2, "420.05"), (42_000, 2, "420"), (7, 3, "0.007")] {
            assert_eq!(plain(minor, digits), text);
            assert_eq!(parse_minor(text, digits), Ok(minor));
        }
        assert_eq!(plain(-5, 2), "-0.05");
    }
}
