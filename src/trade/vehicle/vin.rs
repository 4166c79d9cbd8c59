//! The vehicle identification number: its letters, its check digit, its model year.
//!
//! Outside North America a number may lawfully fail the check digit: it is a warning, never a
//! refusal. Source: 49 CFR 565.15.

/// A well-formed number of seventeen characters, in capitals.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Vin {
    text: String,
}

/// Why a text is no vehicle identification number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum VinError {
    /// It does not have seventeen characters.
    Length {
        /// How many it has, spaces and hyphens not counted.
        found: usize,
    },
    /// A character that is never used: I, O, Q, or neither letter nor digit.
    Character {
        /// Its place, from 1.
        at: usize,
        /// The character.
        found: char,
    },
}

/// What the ninth character says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CheckDigit {
    /// It agrees.
    Passes,
    /// It does not: a slip of reading, or a vehicle from outside North America.
    Differs {
        /// What it would be.
        expected: char,
    },
}

/// Weights of the seventeen places.
const WEIGHTS: [u32; 17] = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];
/// Model-year codes in order from 1980, repeating after thirty years.
const YEAR_CODES: &str = "ABCDEFGHJKLMNPRSTVWXY123456789";
/// The year of the first code.
const FIRST_YEAR: u16 = 1980;

impl Vin {
    /// Reads a number; small letters, spaces and hyphens do not matter.
    ///
    /// # Errors
    /// [`VinError`] for the first rule that it breaks.
    pub fn parse(typed: &str) -> Result<Self, VinError> {
        let text: String = typed
            .chars()
            .filter(|c| !c.is_whitespace() && *c != '-')
            .map(|c| c.to_ascii_uppercase())
            .collect();
        let found = text.chars().count();
        if found != WEIGHTS.len() {
            return Err(VinError::Length { found });
        }
        match text.chars().zip(1..).find(|(c, _)| value_of(*c).is_none()) {
            Some((found, at)) => Err(VinError::Character { at, found }),
            None => Ok(Self { text }),
        }
    }

    /// The seventeen characters.
    pub fn as_str(&self) -> &str {
        &self.text
    }

    /// The last four, which tell the right car from its like on the plate under the screen.
    pub fn last_four(&self) -> &str {
        self.text.get(13..).unwrap_or("")
    }

    /// Sum of value times weight over all places.
    pub fn weighted_sum(&self) -> u32 {
        self.text
            .chars()
            .zip(WEIGHTS)
            .map(|(c, weight)| value_of(c).unwrap_or(0) * weight)
            .sum()
    }

    /// The check digit that the other sixteen ask for.
    pub fn expected_check_digit(&self) -> char {
        match self.weighted_sum() % 11 {
            10 => 'X',
            rest => char::from_digit(rest, 10).unwrap_or('0'),
        }
    }

    /// Whether the ninth character is the check digit of the others.
    pub fn check(&self) -> CheckDigit {
        let expected = self.expected_check_digit();
        if self.place(9) == Some(expected) {
            CheckDigit::Passes
        } else {
            CheckDigit::Differs { expected }
        }
    }

    /// Model year of a car or light truck sold in North America.
    ///
    /// The seventh place tells the two rounds of the code apart: a letter is 2010 to 2039, a
    /// digit 1980 to 2009. `None` if the tenth place is no year code.
    pub fn light_vehicle_year(&self) -> Option<u16> {
        let (early, late) = model_years(self.place(10)?)?;
        let second_round = self.place(7)?.is_ascii_alphabetic();
        Some(if second_round { late } else { early })
    }

    fn place(&self, at: usize) -> Option<char> {
        self.text.chars().nth(at.checked_sub(1)?)
    }
}

/// The two model years that a code of the tenth place may mean; `None` if it is no year code.
///
/// # Source
/// 49 CFR 565.15, table VII, as transcribed elsewhere.
///
/// ```
/// use hubslate::trade::vehicle::vin::model_years;
///
/// assert_eq!(model_years('A'), Some((1980, 2010))); // 49 CFR 565.15, table VII
/// ```
pub fn model_years(code: char) -> Option<(u16, u16)> {
    let index = YEAR_CODES.chars().position(|c| c == code)?;
    let early = FIRST_YEAR + u16::try_from(index).ok()?;
    Some((early, early + 30))
}

fn value_of(c: char) -> Option<u32> {
    match c {
        '0'..='9' => c.to_digit(10),
        'A'..='H' => Some(u32::from(c) - u32::from('A') + 1),
        'J'..='N' => Some(u32::from(c) - u32::from('J') + 1),
        'P' => Some(7),
        'R' => Some(9),
        'S'..='Z' => Some(u32::from(c) - u32::from('S') + 2),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spaces_hyphens_and_small_letters_do_not_matter() {
        let vin = Vin::parse(" 1m8gdm9a-xkp0 42788 ").unwrap();
        assert_eq!(vin.as_str(), "1M8GDM9AXKP042788");
        assert_eq!(vin.last_four(), "2788");
        assert_eq!(vin.check(), CheckDigit::Passes);
    }

    #[test]
    fn letters_that_are_never_used_are_named_with_their_place() {
        for (found, text) in [
            ('I', "1M8GDM9AXKP04278I"),
            ('O', "1M8GDM9AXKP04278O"),
            ('Q', "1M8GDM9AXKP04278Q"),
            ('*', "1M8GDM9AXKP04278*"),
        ] {
            assert_eq!(Vin::parse(text), Err(VinError::Character { at: 17, found }));
        }
        assert_eq!(Vin::parse("123"), Err(VinError::Length { found: 3 }));
    }
}
