//! Doubles in decimals: the fewest digits that give the number back.

use crate::units::double;

/// A finite double as the stored form has it: always with a point or an exponent, plain from
/// 0.00001 up to sixteen digits. What is no finite number is `null`.
pub(super) fn plain(number: f64) -> String {
    let Some((sign, digits, point)) = shortest(number) else {
        return "null".to_owned();
    };
    let body = match point {
        1..=16 => pointed(&digits, point),
        -4..=0 => format!("0.{}{digits}", zeros(-point)),
        _ => scientific(&digits, point),
    };
    format!("{sign}{body}")
}

/// A double as ECMAScript writes it; `None` for what is no finite number.
///
/// # Source
/// ECMA-262, `Number::toString`, as RFC 8785 3.2.2.3 names it.
pub fn ecmascript(number: f64) -> Option<String> {
    if number == 0.0 {
        return Some("0".to_owned());
    }
    let (sign, digits, point) = shortest(number)?;
    let body = match point {
        1..=21 => {
            let body = pointed(&digits, point);
            body.trim_end_matches(".0").to_owned()
        }
        -5..=0 => format!("0.{}{digits}", zeros(-point)),
        _ => scientific(&digits, point),
    };
    Some(format!("{sign}{body}"))
}

/// Sign, digits, and how many of the digits stand before the point.
///
/// Of two that are equally near the even one is taken, as ECMAScript does; the standard library
/// takes the upper one.
fn shortest(number: f64) -> Option<(&'static str, String, i32)> {
    if !number.is_finite() {
        return None;
    }
    let sign = if number.is_sign_negative() { "-" } else { "" };
    let (digits, exponent) = digits(&format!("{:e}", number.abs()))?;
    let digits = lower_of_two(number.abs(), &digits, exponent).unwrap_or(digits);
    Some((sign, digits, exponent + 1))
}

/// The digits of `d.ddde-5`, and its exponent.
fn digits(text: &str) -> Option<(String, i32)> {
    let (mantissa, exponent) = text.split_once('e')?;
    Some((mantissa.replace('.', ""), exponent.parse().ok()?))
}

/// The even digits just under a number that lies in the very middle between them and `upper`.
fn lower_of_two(number: f64, upper: &str, exponent: i32) -> Option<String> {
    // Numbers with fewer digits lie further apart than two doubles do.
    if upper.len() < 16 {
        return None;
    }
    // A double has at most 767 digits; nearly every one is settled by the first few.
    for places in [upper.len() + 2, 766] {
        let (exact, _) = digits(&format!("{number:.places$e}"))?;
        let (lower, rest) = exact.split_at_checked(upper.len())?;
        let is_middle = rest.strip_prefix('5')?.bytes().all(|digit| digit == b'0');
        let is_even = lower.ends_with(['0', '2', '4', '6', '8']);
        if !is_middle || !is_even {
            return None;
        }
        if places == 766 {
            let point = lower.len().checked_sub(1)?;
            let read = format!("{lower}e{}", exponent - i32::try_from(point).ok()?);
            return (double(&read) == Some(number)).then(|| lower.trim_end_matches('0').to_owned());
        }
    }
    None
}

fn zeros(count: i32) -> String {
    "0".repeat(usize::try_from(count).unwrap_or(0))
}

/// Digits with the point behind `point` of them, zeros where there are fewer.
fn pointed(digits: &str, point: i32) -> String {
    let missing = point - i32::try_from(digits.len()).unwrap_or(i32::MAX);
    let digits = format!("{digits}{}", zeros(missing));
    let split = digits.split_at_checked(usize::try_from(point).unwrap_or(0));
    match split.unwrap_or((&digits, "")) {
        (whole, "") => format!("{whole}.0"),
        (whole, rest) => format!("{whole}.{rest}"),
    }
}

fn scientific(digits: &str, point: i32) -> String {
    let (first, rest) = digits.split_at_checked(1).unwrap_or((digits, ""));
    let dot = if rest.is_empty() { "" } else { "." };
    format!("{first}{dot}{rest}e{:+}", point - 1)
}
