//! A message under the knife: what has been taken out of it, and what is left.

use std::ops::Range;

use super::Found;
use crate::letters::small;
use crate::sorted::Sorted;

/// A message and the stretches already taken out of it.
pub(super) struct Message<'a> {
    text: &'a str,
    taken: Vec<Range<usize>>,
}

/// Something that a rule found: the value itself, and all that goes out with it.
pub(super) struct Hit {
    /// The value.
    pub span: Range<usize>,
    /// The value with its label.
    pub cut: Range<usize>,
}

/// A run of characters without a space.
#[derive(Clone, Copy, Debug)]
pub(super) struct Token<'a> {
    /// Its text.
    pub text: &'a str,
    /// Where it begins.
    pub start: usize,
    /// What followed it is already taken out.
    pub before_cut: bool,
}

impl Hit {
    /// A value that goes out with the label before it, if there is one.
    pub fn labelled(label: Option<usize>, span: Range<usize>) -> Self {
        let cut = label.unwrap_or(span.start)..span.end;
        Self { span, cut }
    }
}

impl Token<'_> {
    /// Where it ends.
    pub const fn end(&self) -> usize {
        self.start + self.text.len()
    }

    /// Where it stands.
    pub const fn span(&self) -> Range<usize> {
        self.start..self.end()
    }

    /// The token without the punctuation around it.
    pub fn core(&self) -> Self {
        let left = self.text.trim_start_matches(is_punctuation);
        let start = self.start + (self.text.len() - left.len());
        Self {
            text: left.trim_end_matches(is_punctuation),
            start,
            before_cut: self.before_cut,
        }
    }

    /// Its core in small letters.
    pub fn word(&self) -> String {
        self.core().text.chars().map(small).collect()
    }

    /// Whether a sentence or a part of one ends with it, or the message is cut behind it.
    pub fn ends_clause(&self) -> bool {
        self.before_cut || self.text.ends_with([',', '.', ';', ':', '!', '?', ')'])
    }
}

const fn is_punctuation(c: char) -> bool {
    matches!(
        c,
        ',' | '.' | ';' | ':' | '!' | '?' | '(' | ')' | '"' | '\'' | '#' | '*' | '[' | ']'
    )
}

/// How many words before a value may belong to its label.
const LOOK_BACK: usize = 20;

impl<'a> Message<'a> {
    /// A message from which nothing is taken yet.
    pub const fn new(text: &'a str) -> Self {
        Self {
            text,
            taken: Vec::new(),
        }
    }

    /// Lets a rule look, and takes out what it found.
    pub fn take(&mut self, rule: impl Fn(&Self) -> Option<Hit>) -> Option<Found<String>> {
        let hit = rule(self).filter(|hit| self.is_free(&hit.span))?;
        let value = self.text.get(hit.span.clone())?.to_owned();
        self.taken.push(hit.cut);
        let span = hit.span;
        Some(Found { value, span })
    }

    /// The message as it was pasted.
    pub const fn text(&self) -> &'a str {
        self.text
    }

    /// Whether nothing of this stretch is taken.
    pub fn is_free(&self, span: &Range<usize>) -> bool {
        self.taken
            .iter()
            .all(|cut| span.end <= cut.start || cut.end <= span.start)
    }

    /// The tokens that are still there, in order.
    pub fn tokens(&self) -> Vec<Token<'a>> {
        self.tokens_of(&(0..self.text.len()))
    }

    /// The tokens of one stretch that are still there.
    pub fn tokens_of(&self, stretch: &Range<usize>) -> Vec<Token<'a>> {
        let base = stretch.start;
        let Some(text) = self.text.get(stretch.clone()) else {
            return Vec::new();
        };
        let mut tokens: Vec<Token<'a>> = Vec::new();
        for word in text.split_whitespace() {
            let start = base + offset_in(text, word);
            if self.is_free(&(start..start + word.len())) {
                let before_cut = false;
                tokens.push(Token {
                    text: word,
                    start,
                    before_cut,
                });
            } else if let Some(last) = tokens.last_mut() {
                last.before_cut = true;
            }
        }
        tokens
    }

    /// The lines, each with where it stands.
    pub fn lines(&self) -> Vec<Range<usize>> {
        self.text
            .lines()
            .map(|line| {
                let start = offset_in(self.text, line);
                start..start + line.len()
            })
            .collect()
    }

    /// Where the label of token `index` begins: the word before it, past "is", "no" and their
    /// like, if it is one of the labels; with it go other labels and customers before it, as in
    /// "my phone number is".
    pub fn label_before(
        &self,
        tokens: &[Token<'a>],
        index: usize,
        is_label: impl Fn(&str) -> bool,
    ) -> Option<usize> {
        let before = tokens.get(index.saturating_sub(LOOK_BACK)..index)?;
        let at = before.iter().rposition(|token| {
            let word = token.word();
            is_label(&word) || !is_filler(&word)
        })?;
        let label = before.get(at).filter(|token| is_label(&token.word()))?;
        let mut start = label.start;
        for token in before.iter().take(at).rev() {
            let bracketed = self.text.get(start..)?.starts_with(['(', '[']);
            let word = token.word();
            if bracketed || token.ends_clause() || !(is_label(&word) || is_customer(&word)) {
                break;
            }
            start = token.start;
        }
        Some(start)
    }

    /// What is left, cut by cut, the space and the dangling punctuation at each cut trimmed.
    pub fn rest(&self) -> String {
        let mut cuts = self.taken.clone();
        cuts.order_by_key(|cut| cut.start);
        let mut rest = String::new();
        let mut from = 0;
        for cut in cuts {
            join(
                &mut rest,
                self.text.get(from..cut.start).unwrap_or(""),
                from > 0,
            );
            from = from.max(cut.end);
        }
        join(&mut rest, self.text.get(from..).unwrap_or(""), from > 0);
        rest.trim().to_owned()
    }
}

/// Adds a kept piece behind a cut: one line break if a break stood at the cut, else one space.
fn join(rest: &mut String, piece: &str, after_cut: bool) {
    if !after_cut {
        rest.push_str(piece);
        return;
    }
    let body =
        piece.trim_start_matches(|c: char| c.is_whitespace() || matches!(c, ',' | '.' | ';' | ')'));
    let dropped = piece.len() - body.len();
    let lead = piece.get(..dropped).unwrap_or("");
    let saved_len = rest.trim_end().len();
    let tail_broke = rest.get(saved_len..).unwrap_or("").contains('\n');
    rest.truncate(saved_len);
    if body.is_empty() {
        if lead.contains('\n') || tail_broke {
            rest.push('\n');
        }
        return;
    }
    if !rest.is_empty() {
        rest.push(if lead.contains('\n') || tail_broke {
            '\n'
        } else {
            ' '
        });
    }
    rest.push_str(body);
}

fn is_filler(word: &str) -> bool {
    matches!(
        word,
        "" | "is" | "no" | "nr" | "number" | "num" | "at" | "=" | "-" | "–"
    )
}

fn is_customer(word: &str) -> bool {
    matches!(
        word,
        "my" | "the" | "our" | "its" | "her" | "his" | "car" | "vehicle"
    )
}

/// Where `part`, a slice of `whole`, begins in it.
fn offset_in(whole: &str, part: &str) -> usize {
    (part.as_ptr() as usize).saturating_sub(whole.as_ptr() as usize)
}
