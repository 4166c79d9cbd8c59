//! Writing JSON: without spaces, fields in the order in which they are given.

use super::Form;
use super::number;

/// JSON as it is written.
#[derive(Default)]
pub(crate) struct Out(pub(in crate::exchange) String);

/// The text of a form.
pub(crate) fn written<T: Form>(form: &T) -> String {
    let mut out = Out::default();
    form.write(&mut out);
    out.0
}

/// A text in quotes.
pub(crate) fn quoted(text: &str) -> String {
    let mut out = Out::default();
    out.text(text);
    out.0
}

impl Out {
    /// A text in quotes, with the fewest escapes (RFC 8785, 3.2.2.2).
    pub(in crate::exchange) fn text(&mut self, text: &str) {
        const HEX: &[u8; 16] = b"0123456789abcdef";
        self.0.push('"');
        let mut rest = text;
        let is_escaped = |byte: u8| matches!(byte, b'"' | b'\\' | ..b' ');
        while let Some(at) = rest.bytes().position(is_escaped) {
            let (plain, from) = rest.split_at(at);
            self.0.push_str(plain);
            let mut letters = from.chars();
            match letters.next() {
                Some('\u{8}') => self.0.push_str("\\b"),
                Some('\t') => self.0.push_str("\\t"),
                Some('\n') => self.0.push_str("\\n"),
                Some('\u{c}') => self.0.push_str("\\f"),
                Some('\r') => self.0.push_str("\\r"),
                Some(low @ ..' ') => {
                    let code = low as usize;
                    let digit = |of: usize| HEX.get(of & 15).map_or('0', |it| char::from(*it));
                    self.0.push_str("\\u00");
                    self.0.extend([digit(code >> 4), digit(code)]);
                }
                Some(quote) => self.0.extend(['\\', quote]),
                None => {}
            }
            rest = letters.as_str();
        }
        self.0.push_str(rest);
        self.0.push('"');
    }

    pub(super) fn double(&mut self, number: f64) {
        self.0.push_str(&number::plain(number));
    }

    fn comma(&mut self) {
        if !self.0.ends_with(['{', '[']) && !self.0.is_empty() {
            self.0.push(',');
        }
    }

    pub(in crate::exchange) fn open(&mut self) {
        self.0.push('{');
    }

    pub(in crate::exchange) fn close(&mut self) {
        self.0.push('}');
    }

    /// The name of what is written next.
    pub(in crate::exchange) fn name(&mut self, name: &str) {
        self.comma();
        self.0.push('"');
        self.0.push_str(name);
        self.0.push_str("\":");
    }

    /// A field, unless it is left out.
    pub(in crate::exchange) fn field<T: Form>(&mut self, name: &str, value: &T) {
        if !value.is_absent() {
            self.name(name);
            value.write(self);
        }
    }

    /// A field with a text.
    pub(in crate::exchange) fn code(&mut self, name: &str, code: &str) {
        self.name(name);
        self.text(code);
    }

    /// Values in brackets.
    pub(in crate::exchange) fn list<T>(
        &mut self,
        all: impl IntoIterator<Item = T>,
        mut write: impl FnMut(&mut Self, T),
    ) {
        self.0.push('[');
        for one in all {
            self.comma();
            write(self, one);
        }
        self.0.push(']');
    }

    /// Two values as an object with these names.
    pub(in crate::exchange) fn pair<A: Form, B: Form>(&mut self, names: [&str; 2], of: (&A, &B)) {
        let [first, second] = names;
        self.open();
        self.field(first, of.0);
        self.field(second, of.1);
        self.close();
    }
}
