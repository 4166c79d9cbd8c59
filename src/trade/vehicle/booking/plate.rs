//! Number plates in a message: those that are announced, and a few common patterns.

use std::ops::Range;

use super::message::{Hit, Message, Token};

/// A plate after its label, else a token that looks like one.
pub(super) fn plate_in(message: &Message) -> Option<Hit> {
    let tokens = message.tokens();
    let announced = (0..tokens.len()).find_map(|index| {
        let label = message.label_before(&tokens, index, is_label)?;
        let span = plate_at(tokens.get(index..)?, true)?;
        Some(Hit::labelled(Some(label), span))
    });
    announced.or_else(|| {
        (0..tokens.len()).find_map(|index| {
            let span = plate_at(tokens.get(index..)?, false)?;
            Some(Hit::labelled(None, span))
        })
    })
}

fn is_label(word: &str) -> bool {
    matches!(
        word,
        "plate"
            | "plates"
            | "reg"
            | "rego"
            | "registration"
            | "tag"
            | "tags"
            | "licence"
            | "license"
    )
}

/// A plate of one token or of two, at the front of `tokens`.
fn plate_at(tokens: &[Token], announced: bool) -> Option<Range<usize>> {
    let first = tokens.first()?.core();
    let second = tokens.get(1).map(Token::core);
    let open = !tokens.first()?.ends_clause();
    let pair = second.filter(|_| open).filter(|second| {
        let joined = format!("{}{}", first.text, second.text);
        both_are_capitals(first.text, second.text) && is_plate(&joined, announced)
    });
    match pair {
        Some(second) => Some(first.start..second.end()),
        None => is_plate(first.text, announced).then(|| first.span()),
    }
}

fn both_are_capitals(first: &str, second: &str) -> bool {
    let capital = |c: char| c.is_ascii_uppercase() || c.is_ascii_digit() || c == '-';
    !first.is_empty() && !second.is_empty() && first.chars().chain(second.chars()).all(capital)
}

/// Letters and digits, 4 to 8 of them. Unannounced it must have one of the common shapes, in
/// capitals, so that a size or a model is not taken for one.
fn is_plate(text: &str, announced: bool) -> bool {
    let bare: String = text.chars().filter(|c| *c != '-').collect();
    let alphanumeric = bare.chars().all(|c| c.is_ascii_alphanumeric());
    let digits = bare.chars().filter(char::is_ascii_digit).count();
    if !alphanumeric || digits == 0 || bare.len() > 8 {
        return false;
    }
    if announced {
        return bare.len() >= 2;
    }
    let capitals = !bare.chars().any(|c| c.is_ascii_lowercase());
    capitals && COMMON.contains(&shape(&bare).as_str())
}

/// Common shapes, A a letter and 9 a digit. From memory; a plate of another shape is found by
/// its label alone.
const COMMON: [&str; 9] = [
    "AAA9999", "9AAA999", "AAA999", "AA99AAA", "999AAA", "AAA99A", "AA999AA", "A999AAA", "AA99999",
];

fn shape(text: &str) -> String {
    text.chars()
        .map(|c| if c.is_ascii_digit() { '9' } else { 'A' })
        .collect()
}
