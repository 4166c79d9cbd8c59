//! The one canonical text of a JSON value (RFC 8785), and the digest that any program can check.
//!
//! The texts themselves are kept as they are; only a digest is taken of the canonical ones, so
//! that a file which another program has laid out again can still be told from an edited one.
//!
//! A text is read once and written as it is read: what a phone imports is mostly this.

use std::borrow::Cow;
use std::cmp::Ordering;

use serde_json::Value;
use serde_json::value::RawValue;

use crate::exchange::envelope::{digest_of, sha256_hex};

/// The canonical text of a value.
///
/// # Source
/// RFC 8785 3.2: no spaces, names in the order of their UTF-16 units, strings with the fewest
/// escapes, numbers as ECMAScript writes them.
pub fn canonical(value: &Value) -> String {
    canonical_entry(&value.to_string()).unwrap_or_default()
}

/// The digest of a log by its canonical texts: SHA-256 over the SHA-256 of each, sorted, each
/// once, one a line. `None` if one of them is no JSON.
pub fn canonical_digest<'a>(texts: impl IntoIterator<Item = &'a str>) -> Option<String> {
    let raws = texts
        .into_iter()
        .map(|text| serde_json::from_str(text).ok());
    digest_of_json(raws.collect::<Option<Vec<_>>>()?)
}

/// The same of what has been read as JSON already.
pub(super) fn digest_of_json<'a>(
    entries: impl IntoIterator<Item = &'a RawValue>,
) -> Option<String> {
    let digests: Option<Vec<String>> = entries.into_iter().map(canonical_sha).collect();
    digests.map(digest_of)
}

/// SHA-256 of the canonical text of one entry.
pub(super) fn canonical_sha(entry: &RawValue) -> Option<String> {
    Some(sha256_hex(canonical_json(entry)?.as_bytes()))
}

/// The canonical text of one entry, if it is JSON and names nothing twice in one object: of two
/// values under one name each reader would take another (RFC 8785 3.1).
pub(super) fn canonical_entry(text: &str) -> Option<String> {
    canonical_json(serde_json::from_str(text).ok()?)
}

/// The same of JSON, so that the reader meets whole values only.
fn canonical_json(entry: &RawValue) -> Option<String> {
    let text = entry.get();
    let mut out = String::with_capacity(text.len());
    Reader { text, at: 0 }.value(&mut out, DEEPEST)?;
    Some(out)
}

/// As deep as serde_json reads a value.
const DEEPEST: u8 = 127;

/// Reads a text that is JSON, and writes it as it goes.
struct Reader<'a> {
    text: &'a str,
    at: usize,
}

/// One member of an object: its name, and where it stands in what was written.
type Member<'a> = (Cow<'a, str>, usize, usize);

impl<'a> Reader<'a> {
    fn peek(&mut self) -> Option<u8> {
        let rest = self.text.as_bytes().get(self.at..)?;
        let spaces = rest.iter().position(|byte| !byte.is_ascii_whitespace())?;
        self.at += spaces;
        rest.get(spaces).copied()
    }

    /// Passes over a byte, if it comes next.
    fn pass(&mut self, byte: u8) -> bool {
        let comes = self.peek() == Some(byte);
        self.at += usize::from(comes);
        comes
    }

    fn value(&mut self, out: &mut String, deep: u8) -> Option<()> {
        match self.peek()? {
            b'{' => self.object(out, deep.checked_sub(1)?),
            b'[' => self.array(out, deep.checked_sub(1)?),
            b'"' => {
                let raw = self.string()?;
                write_string(out, raw)
            }
            _ => {
                let rest = self.text.get(self.at..)?;
                let end = |c: char| matches!(c, ',' | ']' | '}') || c.is_ascii_whitespace();
                let token = rest.get(..rest.find(end).unwrap_or(rest.len()))?;
                self.at += token.len();
                write_token(out, token)
            }
        }
    }

    /// A string with its quotes, as it stands.
    fn string(&mut self) -> Option<&'a str> {
        let rest = self.text.get(self.at..)?;
        let mut escaped = false;
        let end = rest.bytes().skip(1).position(|byte| match byte {
            _ if escaped => {
                escaped = false;
                false
            }
            b'\\' => {
                escaped = true;
                false
            }
            byte => byte == b'"',
        })?;
        self.at += end + 2;
        rest.get(..end + 2)
    }

    fn array(&mut self, out: &mut String, deep: u8) -> Option<()> {
        self.at += 1;
        out.push('[');
        if !self.pass(b']') {
            loop {
                self.value(out, deep)?;
                if !self.pass(b',') {
                    break;
                }
                out.push(',');
            }
            self.pass(b']').then_some(())?;
        }
        out.push(']');
        Some(())
    }

    fn object(&mut self, out: &mut String, deep: u8) -> Option<()> {
        self.at += 1;
        let begin = out.len();
        let mut members: Vec<Member> = Vec::new();
        if !self.pass(b'}') {
            loop {
                let from = out.len();
                self.peek()?;
                let raw = self.string()?;
                write_string(out, raw)?;
                self.pass(b':').then_some(())?;
                out.push(':');
                self.value(out, deep)?;
                members.push((name(raw)?, from, out.len()));
                if !self.pass(b',') {
                    break;
                }
            }
            self.pass(b'}').then_some(())?;
        }
        members.sort_by(|(a, ..), (b, ..)| by_units(a, b));
        let mut pairs = members.iter().zip(members.iter().skip(1));
        if pairs.any(|((a, ..), (b, ..))| a == b) {
            return None;
        }
        let mut sorted = String::with_capacity(out.len() - begin + members.len() + 1);
        for (place, (_, from, to)) in members.iter().enumerate() {
            if place > 0 {
                sorted.push(',');
            }
            sorted.push_str(out.get(*from..*to)?);
        }
        out.truncate(begin);
        out.push('{');
        out.push_str(&sorted);
        out.push('}');
        Some(())
    }
}

/// A name without its quotes and escapes.
fn name(raw: &str) -> Option<Cow<'_, str>> {
    if raw.contains('\\') {
        return serde_json::from_str::<String>(raw).ok().map(Cow::Owned);
    }
    raw.get(1..raw.len() - 1).map(Cow::Borrowed)
}

/// The order of two names by their UTF-16 units, which is that of their bytes in plain letters.
fn by_units(a: &str, b: &str) -> Ordering {
    if a.is_ascii() && b.is_ascii() {
        a.cmp(b)
    } else {
        a.encode_utf16().cmp(b.encode_utf16())
    }
}

/// A string without escapes stands as it is; serde_json escapes one exactly as RFC 8785 3.2.2.2
/// asks.
fn write_string(out: &mut String, raw: &str) -> Option<()> {
    if raw.contains('\\') {
        let text: String = serde_json::from_str(raw).ok()?;
        out.push_str(&serde_json::to_string(&text).ok()?);
    } else {
        out.push_str(raw);
    }
    Some(())
}

/// A number, `true`, `false` or `null`. A number that a double cannot hold has no canonical form.
fn write_token(out: &mut String, token: &str) -> Option<()> {
    let digits = token.strip_prefix('-').unwrap_or(token);
    let is_short = digits.len() <= 15 && digits.bytes().all(|byte| byte.is_ascii_digit());
    let is_word = token.starts_with(['t', 'f', 'n']);
    if is_word || (is_short && token != "-0") {
        out.push_str(token);
    } else {
        let number: f64 = serde_json::from_str(token).ok()?;
        out.push_str(&ecmascript(number)?);
    }
    Some(())
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
        assert_eq!(canonical_entry("1e400"), None);
        assert_eq!(canonical_entry(r#""\ud800""#), None);
        assert_eq!(canonical_entry(&"[".repeat(100_000)), None);
        let deep = |n: usize| format!("{}{}", "[".repeat(n), "]".repeat(n));
        assert_eq!(canonical_entry(&deep(127)), Some(deep(127)));
        assert_eq!(canonical_entry(&deep(128)), None);
    }
}
