//! The decimal text that a person typed, and the slips that make it no number.

/// A decimal number as it was typed: sign, digits and at most one separator, nothing changed.
///
/// Both `.` and `,` are the decimal separator; there is no exponent and no thousands separator.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Decimal {
    text: String,
}

/// Why a typed text is not a decimal number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DecimalError {
    /// Nothing was typed, or only spaces.
    Empty,
    /// A sign or a separator without any digit.
    NoDigit,
    /// More than one separator: a thousands separator, or a slip of the finger.
    TwoSeparators,
    /// An exponent such as `1e3`.
    Exponent,
    /// A space between the digits.
    SpaceInside,
    /// A sign that is not in front.
    SignInside,
    /// Another character.
    NotADigit {
        /// The first such character.
        found: char,
    },
    /// More digits than any gauge or wrench gives.
    TooLong {
        /// How many digits were typed.
        digits: usize,
    },
}

/// A double carries fifteen decimal digits; what is longer could not be told apart.
const MOST_DIGITS: usize = 15;

impl Decimal {
    /// Reads a typed text; spaces around it do not count.
    ///
    /// # Errors
    /// One [`DecimalError`] for each way in which it is no decimal number.
    pub fn parse(typed: &str) -> Result<Self, DecimalError> {
        let text = typed.trim();
        if text.is_empty() {
            return Err(DecimalError::Empty);
        }
        let unsigned = text.strip_prefix(is_sign).unwrap_or(text);
        if let Some(slip) = unsigned.chars().find_map(slip_of) {
            return Err(slip);
        }
        if unsigned.chars().filter(|c| is_separator(*c)).count() > 1 {
            return Err(DecimalError::TwoSeparators);
        }
        match unsigned.chars().filter(char::is_ascii_digit).count() {
            0 => Err(DecimalError::NoDigit),
            digits if digits > MOST_DIGITS => Err(DecimalError::TooLong { digits }),
            _ => Ok(Self {
                text: text.to_owned(),
            }),
        }
    }

    /// The text as it was typed, without the spaces around it.
    pub fn as_typed(&self) -> &str {
        &self.text
    }

    /// How many digits stand behind the separator.
    pub fn decimals(&self) -> usize {
        let behind = self.text.split(is_separator).nth(1);
        behind.map_or(0, |digits| digits.chars().count())
    }

    /// Whether it is below zero as typed; a typed `-0` counts as its sign.
    pub fn is_negative(&self) -> bool {
        self.text.starts_with(['-', '\u{2212}'])
    }

    /// The number it stands for; always finite.
    pub fn value(&self) -> f64 {
        let plain: String = self
            .text
            .chars()
            .map(|c| match c {
                ',' => '.',
                '\u{2212}' => '-',
                other => other,
            })
            .collect();
        super::double(&plain).unwrap_or(0.0)
    }
}

fn is_sign(c: char) -> bool {
    matches!(c, '+' | '-' | '\u{2212}')
}

fn is_separator(c: char) -> bool {
    matches!(c, '.' | ',')
}

fn slip_of(c: char) -> Option<DecimalError> {
    match c {
        '0'..='9' | '.' | ',' => None,
        'e' | 'E' => Some(DecimalError::Exponent),
        c if c.is_whitespace() => Some(DecimalError::SpaceInside),
        c if is_sign(c) => Some(DecimalError::SignInside),
        found => Some(DecimalError::NotADigit { found }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn reads(typed: &str, value: f64, decimals: usize) {
        let decimal = Decimal::parse(typed).unwrap();
        assert_eq!((decimal.value(), decimal.decimals()), (value, decimals));
    }

    #[test]
    fn both_separators_signs_and_outer_spaces_are_read() {
        reads("0.05", 0.05, 2);
        reads("0,050", 0.05, 3);
        reads("  -3.5 ", -3.5, 1);
        reads("\u{2212}3,5", -3.5, 1);
        reads("+12", 12.0, 0);
        reads(".5", 0.5, 1);
        reads("5.", 5.0, 0);
        reads("0", 0.0, 0);
    }

    #[test]
    fn each_slip_is_reported_by_its_own_name() {
        let slips = [
            ("", DecimalError::Empty),
            ("   ", DecimalError::Empty),
            ("-", DecimalError::NoDigit),
            (",", DecimalError::NoDigit),
            ("1,234.5", DecimalError::TwoSeparators),
            ("1.2.3", DecimalError::TwoSeparators),
            ("1e3", DecimalError::Exponent),
            ("1 234", DecimalError::SpaceInside),
            ("3-5", DecimalError::SignInside),
            ("--5", DecimalError::SignInside),
            ("0.05mm", DecimalError::NotADigit { found: 'm' }),
            ("nan", DecimalError::NotADigit { found: 'n' }),
            ("inf", DecimalError::NotADigit { found: 'i' }),
            ("1234567890123456", DecimalError::TooLong { digits: 16 }),
        ];
        for (typed, slip) in slips {
            assert_eq!(Decimal::parse(typed), Err(slip), "{typed:?}");
        }
    }

    #[test]
    fn the_text_is_saved_as_typed() {
        assert_eq!(Decimal::parse(" 0,050 ").unwrap().as_typed(), "0,050");
    }
}
