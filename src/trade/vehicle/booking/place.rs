//! Addresses and names in a message.

use std::ops::Range;

use super::message::{Hit, Message, Token};
use crate::letters::small;

/// An address after its label, else a house number followed within five words by a street word.
pub(super) fn address_in(message: &Message) -> Option<Hit> {
    message.lines().into_iter().find_map(|line| {
        let tokens = message.tokens_of(&line);
        labelled_address(message, &tokens).or_else(|| street(&tokens))
    })
}

/// "address: …" or "address is …": all to the end of the sentence or the line.
fn labelled_address(message: &Message, tokens: &[Token]) -> Option<Hit> {
    let label = tokens
        .iter()
        .position(|token| matches!(token.word().as_str(), "address" | "addr" | "location"))?;
    let first = (label + 1..tokens.len()).find(|index| {
        tokens
            .get(*index)
            .is_some_and(|token| !matches!(token.word().as_str(), "" | "is" | "at"))
    })?;
    let after_label = message.label_before(tokens, first, |word| {
        matches!(word, "address" | "addr" | "location")
    });
    let stretch = tokens.get(first..)?;
    // "what is your address?" announces nothing.
    let has_number = stretch.iter().any(|token| starts_with_digit(token));
    let hit = Hit::labelled(after_label, until_sentence_end(stretch)?);
    (has_number && after_label.is_some()).then_some(hit)
}

/// House number, street, and what follows up to the end of the address.
fn street(tokens: &[Token]) -> Option<Hit> {
    (0..tokens.len()).find_map(|at| {
        let stretch = tokens.get(at..)?;
        let number = stretch.first()?;
        if !is_house_number(number.core().text) || number.ends_clause() {
            return None;
        }
        let street = stretch
            .iter()
            .skip(1)
            .take(5)
            .position(|token| is_street_word(&token.word()))?
            + 1;
        let between = stretch.get(1..street)?;
        let broken = between.iter().enumerate().any(|(at, token)| {
            let the_street = at == 0 && between.len() == 1 && token.core().text == "The";
            token.ends_clause() || (is_never_in_a_street(&token.word()) && !the_street)
        });
        if broken || between.is_empty() {
            return None;
        }
        let span = number.core().start..town_end(stretch, street)?;
        Some(Hit::labelled(label_of_street(tokens.get(..at)?), span))
    })
}

/// "I live at", "parked at", "address" in front of a street.
fn label_of_street(before: &[Token]) -> Option<usize> {
    let at = before
        .last()
        .filter(|token| matches!(token.word().as_str(), "at" | "address"))?;
    let lead = before.iter().rev().skip(1).take_while(|token| {
        let word = token.word();
        let leads = matches!(
            word.as_str(),
            "i" | "we" | "i'm" | "we're" | "am" | "are" | "live" | "located" | "parked"
        );
        leads && !token.ends_clause()
    });
    Some(lead.last().unwrap_or(at).start)
}

/// Past the street word: directions, then each part after a comma that is a town, a state or a
/// postcode, told by its capital or its digits.
fn town_end(stretch: &[Token], street: usize) -> Option<usize> {
    let mut last = stretch.get(street)?;
    for token in stretch.iter().skip(street + 1) {
        let core = token.core();
        let of_a_unit = is_unit(&last.word()) && starts_with_digit(token);
        let part_of_place = of_a_unit
            || core.text.starts_with(|c: char| c.is_ascii_uppercase())
            || (core.text.len() >= 4 && core.text.chars().all(|c| c.is_ascii_digit()));
        if !part_of_place
            || last.before_cut
            || last.text.ends_with(['.', ';', '!', '?', ':']) && !is_short(last)
        {
            break;
        }
        if is_never_in_a_street(&token.word()) {
            break;
        }
        last = token;
    }
    Some(last.core().end())
}

/// "St." and "Rd." do not end a sentence.
fn is_short(token: &Token) -> bool {
    token.core().text.len() <= 4 && token.text.ends_with('.')
}

fn until_sentence_end(stretch: &[Token]) -> Option<Range<usize>> {
    let first = stretch.first()?.core().start;
    let last = stretch
        .iter()
        .find(|token| {
            let ends = token.text.ends_with(['.', ';', '!', '?']) && !is_short(token);
            ends || token.before_cut
        })
        .or_else(|| stretch.last())?;
    Some(first..last.core().end())
}

fn is_unit(word: &str) -> bool {
    matches!(word, "apt" | "unit" | "flat" | "suite" | "no" | "apartment")
}

fn starts_with_digit(token: &Token) -> bool {
    token.core().text.starts_with(|c: char| c.is_ascii_digit())
}

/// 1 to 5 digits, perhaps with one letter.
fn is_house_number(text: &str) -> bool {
    let digits = text.chars().take_while(char::is_ascii_digit).count();
    let rest: Vec<char> = text.chars().skip(digits).collect();
    (1..=5).contains(&digits) && rest.len() <= 1 && rest.iter().all(char::is_ascii_alphabetic)
}

fn is_street_word(word: &str) -> bool {
    matches!(
        word,
        "st" | "street"
            | "rd"
            | "road"
            | "ave"
            | "avenue"
            | "ln"
            | "lane"
            | "dr"
            | "drive"
            | "blvd"
            | "boulevard"
            | "ct"
            | "court"
            | "pl"
            | "place"
            | "way"
            | "close"
            | "crescent"
            | "cres"
            | "terrace"
            | "ter"
            | "trail"
            | "hwy"
            | "highway"
            | "square"
            | "gardens"
            | "grove"
            | "hill"
            | "row"
            | "mews"
            | "pkwy"
            | "parkway"
            | "circle"
    )
}

/// Words that tell a figure of the complaint from a house number: "at 40 mph on the way".
fn is_never_in_a_street(word: &str) -> bool {
    matches!(
        word,
        "mph"
            | "km"
            | "kmh"
            | "km/h"
            | "miles"
            | "mile"
            | "kms"
            | "the"
            | "a"
            | "an"
            | "my"
            | "when"
            | "and"
            | "or"
            | "on"
            | "in"
            | "it"
            | "i"
            | "to"
            | "of"
            | "from"
            | "years"
            | "weeks"
            | "days"
            | "times"
            | "am"
            | "pm"
            | "minutes"
            | "front"
            | "rear"
    )
}

/// A name after "name", "this is", "from", "I am", a closing "thanks", or alone on its line.
pub(super) fn name_in(message: &Message) -> Option<Hit> {
    let lines = message.lines();
    lines
        .iter()
        .find_map(|line| announced_name(&message.tokens_of(line)))
        .or_else(|| signature(message, &lines))
        .or_else(|| closing(&message.tokens()))
}

/// "Thanks, Robin" at the very end.
fn closing(tokens: &[Token]) -> Option<Hit> {
    let at = tokens
        .iter()
        .rposition(|token| matches!(token.word().as_str(), "thanks" | "regards" | "cheers"))?;
    let names = tokens.get(at + 1..)?;
    let span = capitals_at(names)?;
    let is_last = span.end == names.last()?.core().end();
    is_last.then(|| Hit::labelled(tokens.get(at).map(|token| token.start), span))
}

fn announced_name(tokens: &[Token]) -> Option<Hit> {
    (0..tokens.len()).find_map(|at| {
        let word = |index: usize| tokens.get(index).map(Token::word).unwrap_or_default();
        let (label, first) = match (word(at).as_str(), word(at + 1).as_str()) {
            ("name", "is") | ("this", "is") | ("i", "am") => (at, at + 2),
            ("name" | "from" | "i'm" | "customer", _) => (at, at + 1),
            _ => return None,
        };
        let span = capitals_at(tokens.get(first..)?)?;
        // "from" also tells where a car comes from: a name there has two words.
        if word(at) == "from" && !is_two_words(tokens.get(first..)?, &span) {
            return None;
        }
        let customer = label.checked_sub(1).filter(|before| word(*before) == "my");
        let start = tokens.get(customer.unwrap_or(label))?.start;
        Some(Hit::labelled(Some(start), span))
    })
}

/// Whether the name at the front of `tokens` has two words.
fn is_two_words(tokens: &[Token], span: &Range<usize>) -> bool {
    tokens.get(1).is_some_and(|second| second.start < span.end)
}

/// One to three words that begin with a capital.
fn capitals_at(tokens: &[Token]) -> Option<Range<usize>> {
    let first = tokens.first().filter(|token| is_name_word(token))?;
    let mut last = first;
    for token in tokens.iter().skip(1).take(2) {
        if last.ends_clause() || !is_name_word(token) {
            break;
        }
        last = token;
    }
    Some(first.core().start..last.core().end())
}

fn is_name_word(token: &Token) -> bool {
    let text = token.core().text;
    let letters = text
        .chars()
        .all(|c| c.is_alphabetic() || matches!(c, '\'' | '-' | '’'));
    let is_small = |c: char| c.is_alphabetic() && small(c) == c;
    let lower_after = text.chars().skip(1).any(is_small) || text.chars().count() == 1;
    let title = text.starts_with(|c| small(c) != c) && lower_after;
    title && letters && !is_no_name(&token.word())
}

fn is_no_name(word: &str) -> bool {
    matches!(
        word,
        "i" | "a"
            | "the"
            | "my"
            | "front"
            | "rear"
            | "left"
            | "right"
            | "hi"
            | "hello"
            | "hey"
            | "thanks"
            | "thank"
            | "cheers"
            | "regards"
            | "please"
            | "wheel"
            | "noise"
            | "it"
    )
}

/// A line below the first that is nothing but names: the first with two or three words, else the
/// last line with one, unless that is the town under an address.
fn signature(message: &Message, lines: &[Range<usize>]) -> Option<Hit> {
    let left: Vec<Vec<Token>> = lines.iter().map(|line| message.tokens_of(line)).collect();
    let first = left.iter().position(|tokens| !tokens.is_empty())?;
    let names = |index: usize| names_alone(left.get(index)?);
    let below = || (first + 1)..left.len();
    let full = below().find_map(|index| names(index).filter(|(_, words)| *words >= 2));
    let last = left.iter().rposition(|tokens| !tokens.is_empty())?;
    let town = last.checked_sub(1).is_some_and(|above| {
        let line = lines
            .get(above)
            .and_then(|span| message.text().get(span.clone()));
        let taken = left.get(above).is_some_and(Vec::is_empty);
        taken && line.is_some_and(|line| line.starts_with(|c: char| c.is_ascii_digit()))
    });
    let single = || names(last).filter(|_| last > first && !town);
    full.or_else(single).map(|(hit, _)| hit)
}

/// A line that is nothing but one to three name words, and how many.
fn names_alone(tokens: &[Token]) -> Option<(Hit, usize)> {
    let words: Vec<_> = tokens
        .iter()
        .filter(|t| !t.core().text.is_empty())
        .collect();
    let split = tokens.iter().rev().skip(1).any(|token| token.before_cut);
    if split || words.len() > 3 || !words.iter().all(|token| is_name_word(token)) {
        return None;
    }
    let span = words.first()?.core().start..words.last()?.core().end();
    let hit = Hit::labelled(tokens.first().map(|token| token.start), span);
    Some((hit, words.len()))
}
