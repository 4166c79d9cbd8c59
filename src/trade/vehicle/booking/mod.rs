//! Reading a booking message: who, where, which vehicle; the rest is the complaint, word for word.
//!
//! Each finding knows where it stood. What no rule knows stays in the complaint: it is better to
//! leave an address in it than to lose a word of it.

mod message;
mod phone;
mod place;
mod plate;

use std::ops::Range;

use super::vin::{CheckDigit, Vin};
use message::{Hit, Message, Token};

/// Something found in a message.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Found<T> {
    /// What it is.
    pub value: T,
    /// Where it stands, in bytes of the message.
    pub span: Range<usize>,
}

/// What a message says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Booking {
    /// The vehicle's number: one whose check digit agrees, or one that is announced as such.
    pub vin: Option<Found<Vin>>,
    /// A telephone number as written.
    pub phone: Option<Found<String>>,
    /// A number plate as written.
    pub plate: Option<Found<String>>,
    /// An address as written.
    pub address: Option<Found<String>>,
    /// A name as written.
    pub name: Option<Found<String>>,
    /// The rest, word for word; only the space at the cuts is trimmed.
    pub complaint: String,
}

/// Reads a pasted message.
pub fn read_booking(text: &str) -> Booking {
    let mut message = Message::new(text);
    let vin = message.take(vin_in);
    let phone = message.take(phone::phone_in);
    let address = message.take(place::address_in);
    let plate = message.take(plate::plate_in);
    let name = message.take(place::name_in);
    Booking {
        vin: vin.and_then(|found| {
            let value = Vin::parse(&found.value).ok()?;
            let span = found.span;
            Some(Found { value, span })
        }),
        phone,
        plate,
        address,
        name,
        complaint: message.rest(),
    }
}

/// A number with a check digit that agrees, else a well-formed one after the letters VIN; there
/// it may be written in groups.
fn vin_in(message: &Message) -> Option<Hit> {
    let tokens = message.tokens();
    let hits = |most: usize| {
        let tokens = &tokens;
        (0..tokens.len()).filter_map(move |first| {
            let (span, vin) = vin_at(message, tokens.get(first..)?, most)?;
            let label = message.label_before(tokens, first, |word| {
                matches!(word, "vin" | "chassis" | "number")
            });
            Some((label, span, vin))
        })
    };
    hits(1)
        .find(|(_, _, vin)| vin.check() == CheckDigit::Passes)
        .or_else(|| hits(4).find(|(label, _, _)| label.is_some()))
        .map(|(label, span, _)| Hit::labelled(label, span))
}

/// A number written in at most so many groups at the front of `tokens`.
fn vin_at(message: &Message, tokens: &[Token], most: usize) -> Option<(Range<usize>, Vin)> {
    let start = tokens.first()?.core().start;
    tokens.iter().take(most).find_map(|token| {
        let span = start..token.core().end();
        let written = message.text().get(span.clone())?;
        let vin = Vin::parse(written).ok()?;
        Some((span, vin))
    })
}

#[cfg(test)]
mod tests;
