//! The one canonical text of a JSON value (RFC 8785), and the digest that any program can check.
//!
//! The texts themselves are kept as they are; only a digest is taken of the canonical ones, so
//! that a file which another program has laid out anew can still be told from an edited one.

use serde_json::Value;

use crate::exchange::envelope::sha256_hex;

/// The canonical text of a value.
///
/// # Source
/// RFC 8785 3.2: no spaces, names in the order of their UTF-16 units, strings with the fewest
/// escapes, numbers as ECMAScript writes them.
pub fn canonical(value: &Value) -> String {
    let mut out = String::new();
    write(&mut out, value);
    out
}

/// The digest of a log by its canonical texts: SHA-256 over the SHA-256 of each, sorted, each
/// once, one a line. `None` if one of them is no JSON.
pub fn canonical_digest<'a>(texts: impl IntoIterator<Item = &'a str>) -> Option<String> {
    let mut digests: Vec<String> = texts
        .into_iter()
        .map(|text| canonical_entry(text).map(|text| sha256_hex(text.as_bytes())))
        .collect::<Option<_>>()?;
    digests.sort_unstable();
    digests.dedup();
    Some(sha256_hex(digests.join("\n").as_bytes()))
}

/// The canonical text of one entry, if it is JSON and names nothing twice in one object: of two
/// values under one name each reader would take another (RFC 8785 3.1).
pub(super) fn canonical_entry(text: &str) -> Option<String> {
    let value = serde_json::from_str(text).ok()?;
    let canonical = canonical(&value);
    // A name that stands twice is once in the value, so that the text has one more.
    (names(text) == names(&canonical)).then_some(canonical)
}

/// How many names a JSON text has: its colons that stand in no string.
fn names(text: &str) -> usize {
    let (mut count, mut in_string, mut escaped) = (0, false, false);
    for byte in text.bytes() {
        match byte {
            _ if escaped => escaped = false,
            b'\\' if in_string => escaped = true,
            b'"' => in_string = !in_string,
            b':' if !in_string => count += 1,
            _ => {}
        }
    }
    count
}

fn write(out: &mut String, value: &Value) {
    match value {
        // A number that a double cannot hold has no canonical form and is not in our files.
        Value::Number(number) => match number.as_f64().and_then(ecmascript) {
            Some(text) => out.push_str(&text),
            None => out.push_str("null"),
        },
        Value::Array(items) => {
            out.push('[');
            for (place, item) in items.iter().enumerate() {
                comma(out, place);
                write(out, item);
            }
            out.push(']');
        }
        Value::Object(fields) => {
            let mut fields: Vec<(&String, &Value)> = fields.iter().collect();
            fields.sort_by(|(a, _), (b, _)| a.encode_utf16().cmp(b.encode_utf16()));
            out.push('{');
            for (place, (name, value)) in fields.into_iter().enumerate() {
                comma(out, place);
                string(out, name);
                out.push(':');
                write(out, value);
            }
            out.push('}');
        }
        Value::String(text) => string(out, text),
        Value::Null => out.push_str("null"),
        Value::Bool(yes) => out.push_str(if *yes { "true" } else { "false" }),
    }
}

fn comma(out: &mut String, place: usize) {
    if place > 0 {
        out.push(',');
    }
}

/// serde_json escapes a string exactly as RFC 8785 3.2.2.2 asks.
fn string(out: &mut String, text: &str) {
    out.push_str(&serde_json::to_string(text).unwrap_or_default());
}

/// A double as ECMAScript writes it; `None` for what is no finite number.
///
/// # Source
/// ECMA-262, `Number::toString`, as RFC 8785 3.2.2.3 names it.
pub fn ecmascript(number: f64) -> Option<String> {
    if !number.is_finite() {
        return None;
    }
    if number == 0.0 {
        return Some("0".to_owned());
    }
    let (digits, point) = shortest(number.abs())?;
    let count = length(&digits)?;
    let sign = if number < 0.0 { "-" } else { "" };
    let body = match point {
        _ if count <= point && point <= 21 => digits.clone() + &zeros(point - count),
        1..=21 => pointed(&digits, point)?,
        -5..=0 => format!("0.{}{digits}", zeros(-point)),
        _ => {
            let mantissa = if count == 1 {
                digits
            } else {
                pointed(&digits, 1)?
            };
            format!("{mantissa}e{:+}", point - 1)
        }
    };
    Some(format!("{sign}{body}"))
}

/// The fewest digits that give the number back, and how many stand before the point.
///
/// They are serde_json's, which takes the even one of two that are equally near; the formatting
/// of the standard library takes the upper one.
fn shortest(number: f64) -> Option<(String, i32)> {
    let text = serde_json::to_string(&number).ok()?;
    let (mantissa, exponent) = text.split_once('e').unwrap_or((&text, "0"));
    let (whole, rest) = mantissa.split_once('.').unwrap_or((mantissa, ""));
    let all = format!("{whole}{rest}");
    let digits = all.trim_start_matches('0');
    let leading = length(&all)? - length(digits)?;
    let point = length(whole)? - leading + exponent.parse::<i32>().ok()?;
    Some((digits.trim_end_matches('0').to_owned(), point))
}

fn length(digits: &str) -> Option<i32> {
    i32::try_from(digits.len()).ok()
}

fn zeros(count: i32) -> String {
    "0".repeat(usize::try_from(count).unwrap_or(0))
}

fn pointed(digits: &str, point: i32) -> Option<String> {
    let (whole, rest) = digits.split_at_checked(usize::try_from(point).ok()?)?;
    Some(format!("{whole}.{rest}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_that_stands_twice_has_no_canonical_form() {
        let same = Some(r#"{"a":":","b":[{"a":"\\"}]}"#.to_owned());
        assert_eq!(canonical_entry(r#"{"b": [{"a":"\\"}], "a": ":"}"#), same);
        for twice in [r#"{"a":1,"a":1}"#, r#"[{"b":{"x":1,"\u0078":2}}]"#] {
            assert_eq!(canonical_entry(twice), None, "{twice}");
        }
        assert_eq!(canonical_entry("{\"a\""), None);
    }
}
