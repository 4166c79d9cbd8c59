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
use message::{Hit, Message};

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

/// A number with a check digit that agrees, else a well-formed one after the letters VIN.
fn vin_in(message: &Message) -> Option<Hit> {
    let tokens = message.tokens();
    let vins = || {
        tokens.iter().enumerate().filter_map(|(i, token)| {
            let core = token.core();
            let vin = Vin::parse(core.text).ok()?;
            (core.text.len() == 17).then_some((i, core, vin))
        })
    };
    let labelled =
        |i: usize| message.label_before(&tokens, i, |word| word == "vin" || word == "chassis");
    let agrees = |vin: &Vin| vin.check() == CheckDigit::Passes;
    vins()
        .find(|(_, _, vin)| agrees(vin))
        .or_else(|| vins().find(|(i, _, _)| labelled(*i).is_some()))
        .map(|(i, core, _)| Hit::labelled(labelled(i), core.span()))
}

#[cfg(test)]
mod tests;
