//! Telephone numbers in a message.

use std::ops::Range;

use super::message::{Hit, Message, Token};

/// The first run of seven to fifteen digits that is written like a telephone number.
pub(super) fn phone_in(message: &Message) -> Option<Hit> {
    let tokens = message.tokens();
    let mut hits = runs(message.text())
        .into_iter()
        .filter(|span| message.is_free(span))
        .filter_map(|span| {
            let label = label_of(message, &tokens, &span);
            let written = message.text().get(span.clone())?;
            looks_like_phone(written, label.is_some()).then_some((label, span))
        });
    let first = hits.next()?;
    // A number that is announced is better than one that merely looks like it.
    let announced = hits.find(|(label, _)| label.is_some());
    let (label, span) = match (&first.0, announced) {
        (None, Some(better)) => better,
        _ => first,
    };
    Some(Hit::labelled(label, span))
}

/// Runs of digits with the marks between them that people use in telephone numbers.
fn runs(text: &str) -> Vec<Range<usize>> {
    let mut runs = Vec::new();
    let mut start = None;
    for (at, c) in text.char_indices().chain([(text.len(), '\n')]) {
        let belongs = match c {
            // A dot before a space ends a sentence.
            '.' => text
                .get(at + 1..)
                .is_some_and(|next| next.starts_with(|c: char| c.is_ascii_digit())),
            c => c.is_ascii_digit() || matches!(c, ' ' | '-' | '(' | ')' | '/'),
        };
        match start {
            None if c.is_ascii_digit() || matches!(c, '+' | '(') => start = Some(at),
            Some(from) if !belongs => {
                runs.extend(trimmed(text, from..at));
                start = (c == '+').then_some(at);
            }
            _ => {}
        }
    }
    runs
}

/// The run up to its last digit, unless it is glued to a word.
fn trimmed(text: &str, span: Range<usize>) -> Option<Range<usize>> {
    let run = text.get(span.clone())?;
    let end = span.start + run.rfind(|c: char| c.is_ascii_digit())? + 1;
    let glued = |c: Option<char>| c.is_some_and(char::is_alphanumeric);
    let before = text.get(..span.start)?.chars().next_back();
    let after = text.get(end..)?.chars().next();
    (!glued(before) && !glued(after)).then_some(span.start..end)
}

fn looks_like_phone(written: &str, announced: bool) -> bool {
    let digits = written.chars().filter(char::is_ascii_digit).count();
    let grouped =
        written.starts_with('+') || written.chars().any(|c| matches!(c, '-' | '.' | '(' | ' '));
    let plain = announced || written.starts_with('0') || digits >= 10;
    let possible = if announced { 5..=15 } else { 7..=15 };
    possible.contains(&digits) && (grouped || plain) && !is_measure(written)
}

/// "8.5" is a figure; a telephone number has no group of a single digit behind a dot.
fn is_measure(written: &str) -> bool {
    written.matches('.').count() == 1 && !written.contains([' ', '-', '('])
}

fn label_of(message: &Message, tokens: &[Token], span: &Range<usize>) -> Option<usize> {
    let index = tokens.partition_point(|token| token.end() <= span.start);
    message.label_before(tokens, index, |word| {
        matches!(
            word,
            "phone"
                | "tel"
                | "telephone"
                | "call"
                | "cell"
                | "mobile"
                | "mob"
                | "text"
                | "number"
                | "ph"
                | "on"
                | "whatsapp"
        )
    })
}
