//! Fields of a line: what would be taken for something else is written as `%` and two hex digits.

use crate::units::{Typed, TypedAngle};
use crate::word::Word;

use crate::trade::fastening::Stage;

/// A line of these fields, empty ones at its end left out.
pub(super) fn line(kind: char, fields: &[String]) -> String {
    let mut line = kind.to_string();
    for field in fields {
        line.push('|');
        line.push_str(field);
    }
    line.truncate(line.trim_end_matches('|').len());
    line
}

/// A text as a field. A space at its end would be lost on the way through other programs.
pub(super) fn field(text: &str) -> String {
    let mut field = String::with_capacity(text.len());
    let last = text.chars().count().saturating_sub(1);
    for (place, c) in text.chars().enumerate() {
        let at_end = place == last && c.is_whitespace();
        if c.is_control() || matches!(c, '%' | '|') || at_end {
            let mut bytes = [0; 4];
            for byte in c.encode_utf8(&mut bytes).bytes() {
                field += &format!("%{byte:02x}");
            }
        } else {
            field.push(c);
        }
    }
    field
}

/// The text of a field; `None` if its escapes are none.
pub(super) fn text(field: &str) -> Option<String> {
    let mut bytes = Vec::with_capacity(field.len());
    let mut rest = field.bytes();
    while let Some(byte) = rest.next() {
        bytes.push(match byte {
            b'%' => {
                let (high, low) = (rest.next()?, rest.next()?);
                let digit = |byte: u8| char::from(byte).to_digit(16);
                u8::try_from(16 * digit(high)? + digit(low)?).ok()?
            }
            byte => byte,
        });
    }
    String::from_utf8(bytes).ok()
}

/// A typed number with the code of its unit behind it.
pub(super) fn number<U: Word>(typed: &Typed<U>) -> String {
    format!("{}{}", typed.number.as_typed(), typed.unit.word_code())
}

/// The typed number of a field.
pub(super) fn typed<U: Word>(field: &str) -> Option<Typed<U>> {
    let unit = field.find(|c: char| c.is_ascii_lowercase())?;
    let (number, unit) = field.split_at_checked(unit)?;
    Typed::parse(number, U::of_code(unit)?).ok()
}

/// A stage: `s`, `t200n_m`, `a45deg`, `b` or `b45deg`.
pub(super) fn stage(stage: &Stage) -> String {
    match stage {
        Stage::Snug => "s".to_owned(),
        Stage::Torque(torque) => format!("t{}", number(torque)),
        Stage::Angle(angle) => format!("a{}", number(angle)),
        Stage::Back(angle) => {
            let angle = angle.as_ref().map(number);
            format!("b{}", angle.unwrap_or_default())
        }
    }
}

/// The stage of a field.
pub(super) fn read_stage(field: &str) -> Option<Stage> {
    let (kind, rest) = field.split_at_checked(1)?;
    let angle = || typed(rest) as Option<TypedAngle>;
    Some(match (kind, rest) {
        ("s", "") => Stage::Snug,
        ("t", _) => Stage::Torque(typed(rest)?),
        ("a", _) => Stage::Angle(angle()?),
        ("b", "") => Stage::Back(None),
        ("b", _) => Stage::Back(Some(angle()?)),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn any_text_comes_back_from_its_field() {
        for words in [
            "",
            "a|b",
            "100 %",
            "two\nlines",
            "end ",
            "ä|Ö",
            "\u{85}",
            " ",
        ] {
            let field = field(words);
            assert!(
                !field.contains(['|', '\n']) && !field.ends_with(' '),
                "{field}"
            );
            assert_eq!(text(&field).as_deref(), Some(words));
        }
        assert_eq!(text("%"), None);
        assert_eq!(text("%g0"), None);
        assert_eq!(text("%ff"), None);
    }

    #[test]
    fn empty_fields_at_the_end_are_left_out() {
        let fields = ["a", "", "b", "", ""].map(str::to_owned);
        assert_eq!(line('C', &fields), "C|a||b");
    }
}
