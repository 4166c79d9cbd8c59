//! The one canonical text of a JSON value (RFC 8785), and the digest that any program can check.
//!
//! The texts themselves are kept as they are; only a digest is taken of the canonical ones, so
//! that a file which another program has laid out anew can still be told from an edited one.

use std::fmt;

use serde::de::{Deserialize, Deserializer, Error, MapAccess, SeqAccess, Visitor};
use serde_json::{Map, Value};

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

/// The canonical text of one entry, if it is JSON and names nothing twice.
pub(super) fn canonical_entry(text: &str) -> Option<String> {
    let unique: Unique = serde_json::from_str(text).ok()?;
    Some(canonical(&unique.0))
}

/// A value in which no object has a name twice: the canonical form is of such values alone
/// (RFC 8785 3.1), and of two values under one name each reader would take another.
struct Unique(Value);

impl<'de> Deserialize<'de> for Unique {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_any(Values).map(Self)
    }
}

struct Values;

impl<'de> Visitor<'de> for Values {
    type Value = Value;

    fn expecting(&self, out: &mut fmt::Formatter) -> fmt::Result {
        out.write_str("a value without a name that stands twice")
    }

    fn visit_unit<E>(self) -> Result<Value, E> {
        Ok(Value::Null)
    }

    fn visit_bool<E>(self, yes: bool) -> Result<Value, E> {
        Ok(yes.into())
    }

    fn visit_i64<E>(self, number: i64) -> Result<Value, E> {
        Ok(number.into())
    }

    fn visit_u64<E>(self, number: u64) -> Result<Value, E> {
        Ok(number.into())
    }

    fn visit_f64<E>(self, number: f64) -> Result<Value, E> {
        Ok(number.into())
    }

    fn visit_str<E>(self, text: &str) -> Result<Value, E> {
        Ok(text.into())
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Value, A::Error> {
        let mut all = Vec::new();
        while let Some(Unique(item)) = items.next_element()? {
            all.push(item);
        }
        Ok(Value::Array(all))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut fields: A) -> Result<Value, A::Error> {
        let mut all = Map::new();
        while let Some((name, Unique(value))) = fields.next_entry::<String, _>()? {
            if all.insert(name, value).is_some() {
                return Err(A::Error::custom("a name that stands twice"));
            }
        }
        Ok(Value::Object(all))
    }
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
