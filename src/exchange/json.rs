//! JSON as files and entries hold it (RFC 8259), with the text that each value was read from.
//!
//! One reader, one writer and one table of field names a type ([`form`]): no type has a reader of
//! its own, which is what a phone would pay for.

mod form;
mod number;
mod read;
mod write;

use std::borrow::Cow;

pub(crate) use form::Form;
pub(super) use form::{Tagged, arm, form, get, get_body, put, put_body};
pub use number::ecmascript;
pub(super) use read::unquoted;
pub(crate) use read::{NotJson, parse, parse_to};
pub(crate) use write::{Out, quoted, written};

/// A value, and the text that it stands in.
#[derive(Debug)]
pub(crate) struct Json<'a> {
    raw: &'a str,
    kind: Kind<'a>,
}

/// A name with its quotes, and what it holds.
pub(super) type Member<'a> = (&'a str, Json<'a>);

#[derive(Debug)]
enum Kind<'a> {
    /// Text, number, `true`, `false` or `null`: its first letter says which.
    Plain,
    List(Vec<Json<'a>>),
    Map(Vec<Member<'a>>),
    /// A list or a map that was not taken apart.
    Whole,
}

/// Reads a form from its text.
pub(crate) fn read<T: Form>(text: &str) -> Option<T> {
    T::read(&parse(text).ok()?)
}

/// A name that an object has twice, or no object at all.
#[derive(Clone, Copy, Debug)]
pub(super) struct NoSuchMap;

impl<'a> Json<'a> {
    /// Its text, byte for byte.
    pub(crate) const fn raw(&self) -> &'a str {
        self.raw
    }

    /// What a string says.
    pub(crate) fn text(&self) -> Option<Cow<'a, str>> {
        unquoted(self.raw)
    }

    /// A number as it is written.
    pub(super) fn number(&self) -> Option<&'a str> {
        let is_number = self
            .raw
            .starts_with(|c: char| c == '-' || c.is_ascii_digit());
        is_number.then_some(self.raw)
    }

    pub(super) fn list(&self) -> Option<&[Self]> {
        match &self.kind {
            Kind::List(all) => Some(all),
            _ => None,
        }
    }

    pub(super) fn map(&self) -> Option<&[Member<'a>]> {
        match &self.kind {
            Kind::Map(all) => Some(all),
            _ => None,
        }
    }

    /// What a name holds; of two values under one name none stands.
    pub(super) fn find(&self, name: &str) -> Result<Option<&Self>, NoSuchMap> {
        let members = self.map().ok_or(NoSuchMap)?;
        let mut found = members.iter().filter(|(raw, _)| is_name(raw, name));
        match (found.next(), found.next()) {
            (found, None) => Ok(found.map(|(_, json)| json)),
            _ => Err(NoSuchMap),
        }
    }

    /// What a name must hold, or what stands for it where it may be left out.
    pub(crate) fn field<T: Form>(&self, name: &str) -> Option<T> {
        match self.find(name) {
            Ok(Some(json)) => T::read(json),
            Ok(None) => T::absent(),
            Err(NoSuchMap) => None,
        }
    }

    /// The one name of a map, and what it holds.
    pub(super) fn tagged(&self) -> Option<(Cow<'a, str>, &Self)> {
        match self.map()? {
            [(name, body)] => Some((unquoted(name)?, body)),
            _ => None,
        }
    }
}

fn is_name(raw: &str, name: &str) -> bool {
    let plain = raw.get(1..raw.len().saturating_sub(1));
    // An escape is longer than what it stands for.
    let is_longer = raw.len() > name.len() + 2;
    plain == Some(name)
        || (is_longer && raw.contains('\\') && unquoted(raw).as_deref() == Some(name))
}

#[cfg(test)]
#[path = "json/tests.rs"]
mod tests;
