//! From decimals to the double nearest to them, without the standard library's table of powers of
//! five: it cannot be packed, and is a tenth of what a phone needs for all numbers.

use std::cmp::Ordering;

/// A double in the very middle between two others has no more digits than this (IEEE 754).
const MOST_DIGITS: usize = 770;
/// Ten to this is a double without rounding.
const EXACT_TEN: i32 = 22;
/// A whole number below this is a double without rounding.
const EXACT: u64 = 1 << 53;

/// The double nearest to a decimal text, of two the even one; `None` for what is no number.
///
/// Sign, digits, one point and one exponent, as JSON has them, and what a person types without a
/// digit before or behind the point. Too large gives infinity, too small zero, each with its sign.
///
/// # Source
/// IEEE 754, 4.3.1; held to the standard library's reader.
///
/// ```
/// use hubslate::units::double;
///
/// assert_eq!(double("-0.05"), Some(-0.05));
/// assert_eq!(double("9007199254740993"), Some(9_007_199_254_740_992.0)); // the even neighbor
/// assert_eq!(double("1e"), None);
/// ```
pub fn double(text: &str) -> Option<f64> {
    let (negative, text) = match text.strip_prefix(['-', '+']) {
        Some(rest) => (text.starts_with('-'), rest),
        None => (false, text),
    };
    let (digits, exponent) = match text.split_once(['e', 'E']) {
        Some((digits, exponent)) => (digits, whole(exponent)?),
        None => (text, 0),
    };
    let (before, behind) = digits.split_once('.').unwrap_or((digits, ""));
    let all = || before.bytes().chain(behind.bytes());
    if !all().all(|digit| digit.is_ascii_digit()) || all().next().is_none() {
        return None;
    }
    let behind = i32::try_from(behind.len()).ok()?;
    let mut digits: Vec<u8> = all().skip_while(|digit| *digit == b'0').collect();
    let mut exponent = exponent.saturating_sub(behind);
    if digits.len() > MOST_DIGITS {
        let cut = digits.split_off(MOST_DIGITS);
        exponent = exponent.saturating_add(i32::try_from(cut.len()).ok()?);
        // What is cut off can only tell a middle from what lies above it.
        if cut.iter().any(|digit| *digit != b'0') {
            digits.push(b'1');
            exponent = exponent.saturating_sub(1);
        }
    }
    let size = positive(&digits, exponent);
    Some(if negative { -size } else { size })
}

/// The exponent; one that no double has is cut short.
fn whole(text: &str) -> Option<i32> {
    let digits = text.strip_prefix(['-', '+']).unwrap_or(text);
    if digits.is_empty() || !digits.bytes().all(|digit| digit.is_ascii_digit()) {
        return None;
    }
    let size = digits.parse().unwrap_or(i32::MAX);
    Some(if text.starts_with('-') { -size } else { size })
}

fn positive(digits: &[u8], exponent: i32) -> f64 {
    let length = i32::try_from(digits.len()).unwrap_or(i32::MAX);
    let scale = exponent.saturating_add(length);
    if digits.is_empty() || scale < -330 {
        return 0.0;
    }
    if scale > 310 {
        return f64::INFINITY;
    }
    if let Some(number) = small(digits).filter(|_| exponent.abs() <= EXACT_TEN) {
        let ten = (0..exponent.abs()).fold(1.0, |ten, _| ten * 10.0);
        return if exponent < 0 {
            number / ten
        } else {
            number * ten
        };
    }
    let (mut over, mut under) = (Big::from_digits(digits), Big(vec![1]));
    if exponent < 0 {
        under.times_ten_to(exponent.unsigned_abs());
    } else {
        over.times_ten_to(exponent.unsigned_abs());
    }
    nearest(over, under)
}

/// Few digits as a double without rounding.
fn small(digits: &[u8]) -> Option<f64> {
    let number = digits.iter().try_fold(0_u64, |sum, digit| {
        sum.checked_mul(10)?.checked_add(u64::from(digit - b'0'))
    })?;
    (number < EXACT).then_some(number as f64)
}

/// `over / under`, rounded once.
fn nearest(mut over: Big, mut under: Big) -> f64 {
    // The power of two at or below the quotient.
    let mut power = over.bits() - under.bits();
    over.double(u32::try_from(-power).unwrap_or(0));
    under.double(u32::try_from(power).unwrap_or(0));
    if over.cmp(&under) == Ordering::Less {
        over.double(1);
        power -= 1;
    }
    if power > 1023 {
        return f64::INFINITY;
    }
    // Below 2^-1022 doubles lie as far apart as just above it.
    let places = 53 - (-1022 - power).max(0);
    let mut mantissa = 0_u64;
    for _ in 0..places.max(0) {
        mantissa <<= 1;
        if over.cmp(&under) != Ordering::Less {
            over.minus(&under);
            mantissa |= 1;
        }
        over.double(1);
    }
    // What is left is `over` of `2 · under` below the last place.
    if places >= 0 {
        let rest = over.cmp(&under);
        let up = rest == Ordering::Greater || rest == Ordering::Equal && mantissa & 1 == 1;
        mantissa += u64::from(up);
    }
    let begins = u64::try_from(power.max(-1022) + 1022).unwrap_or(0);
    // One carried out of the mantissa counts the exponent up, as it should.
    f64::from_bits((begins << 52) + mantissa)
}

/// A whole number of any size, its lowest 32 bits first; its highest word is not zero.
struct Big(Vec<u32>);

impl Big {
    fn from_digits(digits: &[u8]) -> Self {
        let mut big = Self(Vec::new());
        for digits in digits.chunks(9) {
            let ten = digits.iter().fold(1_u32, |ten, _| ten * 10);
            let add = digits
                .iter()
                .fold(0, |sum, digit| sum * 10 + u32::from(digit - b'0'));
            big.times(ten, add);
        }
        big
    }

    fn times(&mut self, by: u32, add: u32) {
        let mut carried = u64::from(add);
        for word in &mut self.0 {
            carried += u64::from(*word) * u64::from(by);
            *word = carried as u32;
            carried >>= 32;
        }
        self.0
            .extend(u32::try_from(carried).ok().filter(|it| *it > 0));
    }

    fn times_ten_to(&mut self, power: u32) {
        for _ in 0..power / 9 {
            self.times(1_000_000_000, 0);
        }
        for _ in 0..power % 9 {
            self.times(10, 0);
        }
    }

    fn double(&mut self, times: u32) {
        let words = usize::try_from(times / 32).unwrap_or(0);
        self.0.splice(0..0, std::iter::repeat_n(0, words));
        self.times(1 << (times % 32), 0);
    }

    fn bits(&self) -> i32 {
        let bits = self.0.last().map_or(0, |word| 32 - word.leading_zeros());
        let below = 32 * self.0.len().saturating_sub(1);
        i32::try_from(below).unwrap_or(i32::MAX) + bits.cast_signed()
    }

    fn cmp(&self, other: &Self) -> Ordering {
        let words = self.0.len().cmp(&other.0.len());
        words.then_with(|| self.0.iter().rev().cmp(other.0.iter().rev()))
    }

    /// Takes away what is no larger.
    fn minus(&mut self, other: &Self) {
        let mut borrowed = false;
        let mut others = other.0.iter();
        for word in &mut self.0 {
            let (less, first) = word.overflowing_sub(others.next().copied().unwrap_or(0));
            let (less, second) = less.overflowing_sub(u32::from(borrowed));
            (*word, borrowed) = (less, first || second);
        }
        while self.0.last() == Some(&0) {
            self.0.pop();
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Held to the standard library's reader, bit by bit.
    fn same(text: &str) {
        let standard = text.parse::<f64>().ok().map(f64::to_bits);
        assert_eq!(double(text).map(f64::to_bits), standard, "{text}");
    }

    #[test]
    fn borders_are_read_as_the_standard_library_reads_them() {
        for text in [
            "0",
            "-0",
            "+1",
            ".5",
            "5.",
            "-0.0e9",
            "00012.500",
            "1e22",
            "1e23",
            "123456789012345678",
            "9007199254740993",
            "9007199254740995",
            "1.7976931348623157e308",
            "1.7976931348623158e308",
            "1.7976931348623159e308",
            "1e309",
            "-1e400",
            "2.2250738585072011e-308",
            "2.2250738585072014e-308",
            "4.9e-324",
            "2.4703282292062327e-324",
            "2.4703282292062328e-324",
            "2.5e-324",
            "1e-330",
            "1e-99999999999",
            "1e99999999999",
            "0e99999999999",
            "",
            ".",
            "-",
            "e5",
            "1e",
            "1e+",
            "1.2.3",
            "1 ",
            "1_0",
            "--1",
            "0x1",
            "٣",
        ] {
            same(text);
        }
    }

    #[test]
    fn long_texts_are_read_to_their_last_digit() {
        // Half of the smallest double, exactly, and a little above it.
        let middle = format!("{:.1074}", f64::from_bits(1));
        let half = format!("0.{}", "0".repeat(323)) + "24703282292062327208";
        same(&middle);
        same(&half);
        let one = format!("1{}", "0".repeat(400));
        same(&one);
        for last in ["", "0", "1"] {
            // 1 + 2^-53 lies in the middle between two doubles.
            let middle = "1.00000000000000011102230246251565404236316680908203125";
            same(&format!("{middle}{}{last}", "0".repeat(900)));
        }
    }

    proptest! {
        #[test]
        fn every_double_is_read_back(bits in any::<u64>()) {
            let number = f64::from_bits(bits);
            prop_assume!(number.is_finite());
            for text in [format!("{number:e}"), format!("{number:.30e}"), format!("{number}")] {
                prop_assert_eq!(double(&text).map(f64::to_bits), text.parse().ok().map(f64::to_bits));
            }
            prop_assert_eq!(double(&format!("{number:e}")).map(f64::to_bits), Some(bits));
        }

        #[test]
        fn middles_are_rounded_to_even(bits in 0_u64..0x7fe0_0000_0000_0000, nudge in 0_usize..3) {
            // A double has at most 767 digits, the middle to the next one a digit more.
            let (low, high) = (f64::from_bits(bits), f64::from_bits(bits + 1));
            let middle = middle_of(&format!("{low:.1100}"), &format!("{high:.1100}"));
            same(&format!("{middle}{}", ["", "0001", "0000"][nudge]));
        }

        #[test]
        fn any_text_of_digits_is_read_alike(
            text in "[-+]?[0-9]{0,25}\\.?[0-9]{0,25}([eE][-+]?[0-9]{0,3})?"
        ) {
            same(&text);
        }
    }

    /// Half the sum of two decimal texts with as many places.
    fn middle_of(low: &str, high: &str) -> String {
        let width = low.len().max(high.len());
        let (low, high) = (format!("{low:0>width$}"), format!("{high:0>width$}"));
        let mut sum = Vec::new();
        let mut carried = 0;
        for (low, high) in low.bytes().zip(high.bytes()).rev() {
            if low == b'.' {
                sum.push(b'.');
                continue;
            }
            let digit = low - b'0' + high - b'0' + carried;
            sum.push(digit % 10);
            carried = digit / 10;
        }
        sum.push(carried);
        let (mut half, mut rest) = (String::new(), 0);
        for digit in sum.into_iter().rev() {
            if digit == b'.' {
                half.push('.');
                continue;
            }
            let now = rest * 10 + digit;
            half.push(char::from(b'0' + now / 2));
            rest = now % 2;
        }
        half + if rest == 1 { "5" } else { "0" }
    }
}
