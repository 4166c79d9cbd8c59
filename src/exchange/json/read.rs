//! Reading JSON (RFC 8259): each value with the text that it stands in.

use std::borrow::Cow;

use super::{Json, Kind, Member};

/// As deep as a value is taken apart; what lies deeper is text alone.
const DEEPEST: u8 = 127;

/// A text that is no JSON.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct NotJson {
    /// The line at which it breaks, from 1.
    pub line: usize,
    /// Whether nothing but its end is missing.
    pub cut_off: bool,
}

impl NotJson {
    /// What is JSON and not what it should be breaks at its end.
    pub(crate) fn of_whole(text: &str) -> Self {
        Self {
            line: line_at(text, text.trim_end().len()),
            cut_off: false,
        }
    }
}

/// Reads a whole text.
///
/// # Errors
/// [`NotJson`] says where it is none.
pub(crate) fn parse(text: &str) -> Result<Json<'_>, NotJson> {
    parse_to(text, DEEPEST)
}

/// The same, lists and maps that lie deeper than `levels` kept as text.
///
/// # Errors
/// As [`parse`].
pub(crate) fn parse_to(text: &str, levels: u8) -> Result<Json<'_>, NotJson> {
    let mut reader = Reader { text, at: 0 };
    let json = reader.value(levels);
    let next = reader.peek();
    match json {
        Some(json) if next.is_none() && reader.at == text.len() => Ok(json),
        _ => Err(NotJson {
            line: line_at(text, reader.at),
            cut_off: reader.at == text.len(),
        }),
    }
}

fn line_at(text: &str, at: usize) -> usize {
    let before = text.as_bytes().get(..at).unwrap_or_default();
    1 + before.iter().filter(|byte| **byte == b'\n').count()
}

/// Whoever stops reading stands at the byte that does not fit, which is past the last one where
/// the text is cut off.
struct Reader<'a> {
    text: &'a str,
    at: usize,
}

impl<'a> Reader<'a> {
    // Called for each byte; out of line it takes a twentieth of an import.
    #[inline(always)]
    fn byte(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    /// The next byte that is no space.
    fn peek(&mut self) -> Option<u8> {
        while let Some(b' ' | b'\n' | b'\r' | b'\t') = self.byte() {
            self.at += 1;
        }
        self.byte()
    }

    /// Passes over a byte, if it comes next.
    fn pass(&mut self, byte: u8) -> bool {
        let comes = self.peek() == Some(byte);
        self.at += usize::from(comes);
        comes
    }

    fn value(&mut self, levels: u8) -> Option<Json<'a>> {
        let first = self.peek()?;
        let from = self.at;
        let kind = match (first, levels.checked_sub(1)) {
            (b'{', Some(levels)) => Kind::Map(self.map(levels)?),
            (b'[', Some(levels)) => Kind::List(self.list(levels)?),
            (b'{' | b'[', None) => {
                self.whole()?;
                Kind::Whole
            }
            _ => {
                self.plain()?;
                Kind::Plain
            }
        };
        let raw = self.text.get(from..self.at)?;
        Some(Json { raw, kind })
    }

    fn list(&mut self, levels: u8) -> Option<Vec<Json<'a>>> {
        self.at += 1;
        let mut all = Vec::new();
        if self.pass(b']') {
            return Some(all);
        }
        loop {
            all.push(self.value(levels)?);
            if !self.pass(b',') {
                return self.pass(b']').then_some(all);
            }
        }
    }

    fn map(&mut self, levels: u8) -> Option<Vec<Member<'a>>> {
        self.at += 1;
        let mut all = Vec::new();
        if self.pass(b'}') {
            return Some(all);
        }
        loop {
            all.push((self.name()?, self.value(levels)?));
            if !self.pass(b',') {
                return self.pass(b'}').then_some(all);
            }
        }
    }

    /// A name and the colon behind it.
    fn name(&mut self) -> Option<&'a str> {
        self.peek()?;
        let from = self.at;
        self.string()?;
        let name = self.text.get(from..self.at);
        self.pass(b':').then_some(name)?
    }

    /// Passes over a list or a map, however deep it is.
    fn whole(&mut self) -> Option<()> {
        let mut open = Vec::new();
        loop {
            let ends = match self.peek()? {
                b'{' => Some(b'}'),
                b'[' => Some(b']'),
                _ => {
                    self.plain()?;
                    None
                }
            };
            if let Some(end) = ends {
                self.at += 1;
                if !self.pass(end) {
                    open.push(end);
                    if end == b'}' {
                        self.name()?;
                    }
                    continue;
                }
            }
            loop {
                let Some(end) = open.last().copied() else {
                    return Some(());
                };
                if self.pass(b',') {
                    if end == b'}' {
                        self.name()?;
                    }
                    break;
                }
                self.pass(end).then_some(())?;
                open.pop();
            }
        }
    }

    fn plain(&mut self) -> Option<()> {
        match self.byte()? {
            b'"' => self.string(),
            b't' => self.word("true"),
            b'f' => self.word("false"),
            b'n' => self.word("null"),
            _ => self.number(),
        }
    }

    fn word(&mut self, word: &str) -> Option<()> {
        for letter in word.bytes() {
            self.exactly(letter)?;
        }
        Some(())
    }

    fn exactly(&mut self, byte: u8) -> Option<()> {
        let comes = self.byte() == Some(byte);
        self.at += usize::from(comes);
        comes.then_some(())
    }

    fn digits(&mut self) -> Option<()> {
        self.byte().filter(u8::is_ascii_digit)?;
        while self.byte().is_some_and(|byte| byte.is_ascii_digit()) {
            self.at += 1;
        }
        Some(())
    }

    fn number(&mut self) -> Option<()> {
        let _ = self.exactly(b'-');
        if self.exactly(b'0').is_none() {
            self.digits()?;
        }
        if self.exactly(b'.').is_some() {
            self.digits()?;
        }
        if let Some(b'e' | b'E') = self.byte() {
            self.at += 1;
            if let Some(b'+' | b'-') = self.byte() {
                self.at += 1;
            }
            self.digits()?;
        }
        Some(())
    }

    /// A string; whether its `\u` are letters is seen when it is read.
    fn string(&mut self) -> Option<()> {
        self.exactly(b'"')?;
        loop {
            let rest = self.text.as_bytes().get(self.at..)?;
            let is_plain = |byte: &u8| !matches!(byte, b'"' | b'\\' | ..b' ');
            self.at += rest.iter().take_while(|byte| is_plain(byte)).count();
            match self.byte()? {
                b'"' => return self.exactly(b'"'),
                b'\\' => {
                    self.at += 1;
                    let hex = match self.byte()? {
                        b'u' => 4,
                        b'"' | b'\\' | b'/' | b'b' | b'f' | b'n' | b'r' | b't' => 0,
                        _ => return None,
                    };
                    self.at += 1;
                    for _ in 0..hex {
                        self.byte().filter(u8::is_ascii_hexdigit)?;
                        self.at += 1;
                    }
                }
                _ => return None,
            }
        }
    }
}

/// A string without its quotes and escapes; `None` where half a pair stands for no letter.
pub(in crate::exchange) fn unquoted(raw: &str) -> Option<Cow<'_, str>> {
    let inner = raw.strip_prefix('"')?.strip_suffix('"')?;
    if !inner.contains('\\') {
        return Some(Cow::Borrowed(inner));
    }
    let mut text = String::with_capacity(inner.len());
    let mut rest = inner;
    while let Some((plain, escape)) = rest.split_once('\\') {
        text.push_str(plain);
        let mut letters = escape.chars();
        text.push(match letters.next()? {
            'b' => '\u{8}',
            'f' => '\u{c}',
            'n' => '\n',
            'r' => '\r',
            't' => '\t',
            'u' => letter(&mut letters)?,
            same => same,
        });
        rest = letters.as_str();
    }
    text.push_str(rest);
    Some(Cow::Owned(text))
}

/// The letter of `\u`, which may be written as a pair (RFC 8259, 7).
fn letter(letters: &mut std::str::Chars<'_>) -> Option<char> {
    let high = unit(letters)?;
    let Some(Err(_)) = char::decode_utf16([high]).next() else {
        return char::from_u32(high.into());
    };
    let follows = letters.next() == Some('\\') && letters.next() == Some('u');
    let low = follows.then(|| unit(letters))??;
    char::decode_utf16([high, low]).next()?.ok()
}

fn unit(letters: &mut std::str::Chars<'_>) -> Option<u16> {
    let digits = letters.as_str().get(..4)?;
    *letters = letters.as_str().get(4..)?.chars();
    u16::from_str_radix(digits, 16).ok()
}
