//! The one canonical text of a JSON value (RFC 8785), and the digest that any program can check.
//!
//! The texts themselves are kept as they are; only a digest is taken of the canonical ones, so
//! that a file which another program has laid out again can still be told from an edited one.

use std::borrow::Cow;
use std::cmp::Ordering;

use crate::exchange::envelope::{digest_of, sha256_hex};
pub use crate::exchange::json::ecmascript;
use crate::exchange::json::{Json, Member, Out, parse, unquoted};
use crate::sorted::Sorted;
use crate::units::double;

/// The canonical text of a value.
///
/// # Source
/// RFC 8785 3.2: no spaces, names in the order of their UTF-16 units, strings with the fewest
/// escapes, numbers as ECMAScript writes them.
#[cfg(not(target_arch = "wasm32"))]
pub fn canonical(value: &serde_json::Value) -> String {
    canonical_entry(&value.to_string()).unwrap_or_default()
}

/// The digest of a log by its canonical texts: SHA-256 over the SHA-256 of each, sorted, each
/// once, one a line. `None` if one of them is no JSON.
pub fn canonical_digest<'a>(texts: impl IntoIterator<Item = &'a str>) -> Option<String> {
    let digests: Option<Vec<String>> = texts.into_iter().map(canonical_sha).collect();
    digests.map(digest_of)
}

/// SHA-256 of the canonical text of one entry.
pub(super) fn canonical_sha(entry: &str) -> Option<String> {
    Some(sha256_hex(canonical_entry(entry)?.as_bytes()))
}

/// The canonical text of one entry, if it is JSON and names nothing twice in one object: of two
/// values under one name each reader would take another (RFC 8785 3.1).
pub(super) fn canonical_entry(text: &str) -> Option<String> {
    let mut out = Out(String::with_capacity(text.len()));
    write(&mut out, &parse(text).ok()?)?;
    Some(out.0)
}

fn write(out: &mut Out, json: &Json<'_>) -> Option<()> {
    if let Some(members) = json.map() {
        return write_map(out, members);
    }
    match json.list() {
        Some(all) => {
            let mut whole = Some(());
            out.list(all, |out, one| {
                whole = whole.and_then(|()| write(out, one));
            });
            whole
        }
        None => write_plain(out, json.raw()),
    }
}

fn write_map(out: &mut Out, members: &[Member<'_>]) -> Option<()> {
    let mut named: Vec<(Cow<'_, str>, &Member<'_>)> = Vec::with_capacity(members.len());
    for member in members {
        named.push((unquoted(member.0)?, member));
    }
    named.order_by(|(a, _), (b, _)| by_units(a, b));
    let mut pairs = named.iter().zip(named.iter().skip(1));
    if pairs.any(|((a, _), (b, _))| a == b) {
        return None;
    }
    out.open();
    for (place, (_, (name, json))) in named.iter().enumerate() {
        if place > 0 {
            out.0.push(',');
        }
        write_plain(out, name)?;
        out.0.push(':');
        write(out, json)?;
    }
    out.close();
    Some(())
}

/// The order of two names by their UTF-16 units, which is that of their bytes in plain letters.
fn by_units(a: &str, b: &str) -> Ordering {
    if a.is_ascii() && b.is_ascii() {
        a.cmp(b)
    } else {
        a.encode_utf16().cmp(b.encode_utf16())
    }
}

/// A string without escapes stands as it is. A number that a double cannot hold has no canonical
/// form, nor has what lies too deep to be taken apart.
fn write_plain(out: &mut Out, raw: &str) -> Option<()> {
    let digits = raw.strip_prefix('-').unwrap_or(raw);
    let is_short = digits.len() <= 15 && digits.bytes().all(|byte| byte.is_ascii_digit());
    match raw.as_bytes().first()? {
        b'{' | b'[' => return None,
        b'"' if raw.contains('\\') => out.text(&unquoted(raw)?),
        b'"' | b't' | b'f' | b'n' => out.0.push_str(raw),
        _ if is_short && raw != "-0" => out.0.push_str(raw),
        _ => out.0.push_str(&ecmascript(double(raw)?)?),
    }
    Some(())
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
