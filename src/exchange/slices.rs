//! A file slice by slice: a log is given as soon as all of it is there, so that a file of any length
//! takes no more memory than its longest log.

use crate::exchange::envelope::{FORMAT, StoredLog, VERSION};
use crate::exchange::import::ImportError;
use crate::exchange::json::{Form, Json, NotJson, parse, parse_to};

/// How deep a log is taken apart: log, entries.
const LEVELS: u8 = 2;
/// A log that is longer than so many bytes has lost its end.
const LONGEST: usize = 256 << 20;
/// What an envelope names once.
const NAMES: [&str; 4] = ["format", "version", "made_by", "logs"];
/// The byte order mark that some programs put in front of what they pass on.
const MARK: &[u8] = b"\xef\xbb\xbf";

/// A file on its way in.
pub(super) struct Slices {
    bytes: Vec<u8>,
    /// What stands before this was given already.
    taken: usize,
    looked: usize,
    /// How many lines ended in what is not here any more.
    lines: usize,
    place: Place,
    nest: Nest,
}

/// Where in the file the reading stands.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Place {
    /// Before the first log.
    First,
    /// Behind a log.
    Behind,
    /// Behind the comma after a log.
    Comma,
    /// In a log.
    Log,
    /// Behind the last one.
    Tail,
}

/// How deep in lists and maps a byte stands, and whether in a text.
#[derive(Clone, Copy, Default)]
struct Nest {
    depth: usize,
    in_text: bool,
    escaped: bool,
}

impl Nest {
    /// How many of these bytes stand in the value that begins with the first of them, and whether it
    /// ends there.
    fn pass(&mut self, bytes: &[u8]) -> (usize, bool) {
        for (at, byte) in bytes.iter().enumerate() {
            if self.in_text {
                match byte {
                    _ if self.escaped => self.escaped = false,
                    b'\\' => self.escaped = true,
                    b'"' => self.in_text = false,
                    _ => {}
                }
                continue;
            }
            match byte {
                b'"' => self.in_text = true,
                b'{' | b'[' => self.depth += 1,
                b'}' | b']' => {
                    self.depth = self.depth.saturating_sub(1);
                    if self.depth == 0 {
                        return (at + 1, true);
                    }
                }
                _ => {}
            }
        }
        (bytes.len(), false)
    }
}

impl Slices {
    /// Begins with the first bytes of a file; nothing where they are not those of a file that this
    /// version writes: whoever reads such a file whole says what it is.
    pub(super) fn begin(first: &[u8]) -> Option<Self> {
        let logs = head(first)?;
        Some(Self {
            bytes: first.to_vec(),
            taken: logs,
            looked: logs,
            lines: 0,
            place: Place::First,
            nest: Nest::default(),
        })
    }

    /// The bytes that follow.
    pub(super) fn push(&mut self, slice: &[u8]) {
        self.lines += newlines(self.bytes.get(..self.taken).unwrap_or_default());
        self.bytes.drain(..self.taken.min(self.bytes.len()));
        self.looked -= self.taken;
        self.taken = 0;
        self.bytes.extend_from_slice(slice);
    }

    /// The next log, if all of it is here.
    ///
    /// # Errors
    /// [`ImportError::Damaged`], or [`ImportError::NotOurs`] for what is no text.
    pub(super) fn next(&mut self) -> Result<Option<StoredLog>, ImportError> {
        while let Some(byte) = self.bytes.get(self.looked).copied() {
            if self.place == Place::Log {
                return self.log();
            }
            if self.place == Place::Tail {
                break;
            }
            self.place = match (byte, self.place) {
                (b' ' | b'\n' | b'\r' | b'\t', place) => place,
                (b',', Place::Behind) => Place::Comma,
                (b'{', Place::First | Place::Comma) => {
                    self.taken = self.looked;
                    self.nest = Nest::default();
                    self.place = Place::Log;
                    continue;
                }
                (b']', Place::First | Place::Behind) => {
                    self.taken = self.looked;
                    Place::Tail
                }
                _ => {
                    self.taken = self.looked;
                    return Err(self.damaged(1));
                }
            };
            self.looked += 1;
        }
        Ok(None)
    }

    /// The log that begins at `taken`.
    fn log(&mut self) -> Result<Option<StoredLog>, ImportError> {
        let rest = self.bytes.get(self.looked..).unwrap_or_default();
        let (passed, ends) = self.nest.pass(rest);
        self.looked += passed;
        let log = self.bytes.get(self.taken..self.looked).unwrap_or_default();
        if !ends {
            return match log.len() > LONGEST {
                true => Err(self.damaged(1)),
                false => Ok(None),
            };
        }
        let text = std::str::from_utf8(log).map_err(|_| ImportError::NotOurs)?;
        let json = parse_to(text, LEVELS).map_err(|NotJson { line, .. }| self.damaged(line))?;
        let unfit = || self.damaged(NotJson::of_whole(text).line);
        let log = StoredLog::read(&json).ok_or_else(unfit)?;
        self.taken = self.looked;
        self.place = Place::Behind;
        Ok(Some(log))
    }

    /// Damaged at a line of what stands from `taken` on.
    fn damaged(&self, line: usize) -> ImportError {
        let before = newlines(self.bytes.get(..self.taken).unwrap_or_default());
        ImportError::Damaged {
            line: self.lines + before + line,
        }
    }

    /// Whether the file ended where it should.
    ///
    /// # Errors
    /// [`ImportError::CutOff`] and [`ImportError::Damaged`].
    pub(super) fn end(&self) -> Result<(), ImportError> {
        if self.place != Place::Tail {
            return Err(ImportError::CutOff);
        }
        let rest = self.bytes.get(self.taken..).unwrap_or_default();
        let rest = std::str::from_utf8(rest).map_err(|_| ImportError::NotOurs)?;
        // Under a name of its own, so that a second list of logs is seen.
        let tail = format!("{{\"\":[{rest}");
        let refused = |error: NotJson| match error.cut_off {
            true => ImportError::CutOff,
            false => self.damaged(error.line),
        };
        let json = parse(&tail).map_err(refused)?;
        match NAMES.iter().any(|name| is_named(&json, name)) {
            true => Err(self.damaged(1)),
            false => Ok(()),
        }
    }
}

/// Whether a map has a name, once or more often.
fn is_named(json: &Json<'_>, name: &str) -> bool {
    !matches!(json.find(name), Ok(None))
}

fn newlines(bytes: &[u8]) -> usize {
    bytes.iter().filter(|byte| **byte == b'\n').count()
}

/// Where the logs begin, if the bytes begin as this program begins a file: the list of logs last.
fn head(first: &[u8]) -> Option<usize> {
    let start = first.strip_prefix(MARK).map_or(0, |_| MARK.len());
    let begin = first.get(start..)?;
    let mut nest = Nest::default();
    let mut at = 0;
    while nest.depth < 2 {
        nest.pass(begin.get(at..=at)?);
        at += 1;
    }
    let text = std::str::from_utf8(begin.get(..at)?).ok()?;
    let whole = format!("{text}]}}");
    let json = parse(&whole).ok()?;
    let (last, _) = json.map()?.last()?;
    let known = json.field("format").is_some_and(|it: String| it == FORMAT)
        && json.field("version").is_some_and(|it: u32| it == VERSION)
        && json.field::<String>("made_by").is_some();
    (known && *last == "\"logs\"").then_some(start + at)
}

#[cfg(test)]
mod tests {
    use super::*;

    const HEAD: &str =
        "{\n  \"format\": \"hubslate\",\n  \"version\": 1,\n  \"made_by\": \"x\",\n  \"logs\": [";

    fn log(id: &str) -> String {
        format!(r#"{{"kind":"job","id":"{id}","digest":"d","entries":[{{"]":"}}\"{{"}}]}}"#)
    }

    /// The ids of the logs of a text that comes in slices of so many bytes.
    fn ids(text: &str, slice: usize) -> Result<Vec<String>, ImportError> {
        let (first, rest) = text.as_bytes().split_at(text.find('[').unwrap() + 1);
        let mut slices = Slices::begin(first).unwrap();
        let mut ids = Vec::new();
        for slice in rest.chunks(slice) {
            slices.push(slice);
            while let Some(log) = slices.next()? {
                ids.push(log.id);
            }
        }
        slices.end().map(|()| ids)
    }

    #[test]
    fn slices_of_any_length_give_the_same_logs() {
        let text = format!("{HEAD}\n{},\n  {}\n  ]\n}}\n", log("a"), log("b"));
        for slice in 1..text.len() {
            assert_eq!(ids(&text, slice), Ok(vec!["a".to_owned(), "b".to_owned()]));
        }
        assert_eq!(ids(&format!("{HEAD}]}}"), 3), Ok(Vec::new()));
        let more = format!("{HEAD}{}], \"more\": [1]}}", log("a"));
        assert_eq!(ids(&more, 7), Ok(vec!["a".to_owned()]));
    }

    #[test]
    fn what_is_cut_off_or_damaged_is_refused_with_its_line() {
        let whole = format!("{HEAD}\n{},\n{}\n]}}\n", log("a"), log("b"));
        let last = whole.rfind('}').unwrap();
        for end in HEAD.len()..=last {
            assert_eq!(ids(&whole[..end], 11), Err(ImportError::CutOff), "{end}");
        }
        let bad = |from: &str, to: &str, line| {
            let text = whole.replacen(from, to, 1);
            assert_ne!(text, whole);
            assert_eq!(ids(&text, 13), Err(ImportError::Damaged { line }), "{text}");
        };
        bad(",\n{", "\n{", 7);
        bad(",\n{", ",,\n{", 6);
        bad("\n]}", ",\n]}", 8);
        bad("\"entries\":", "\"entries\"", 6);
        bad("\n]}", "\n],\"logs\":[]}", 8);
        bad("\n]}", "\n],\"version\":2}", 8);
        bad("\n]}", "\n]}}", 8);
    }

    #[test]
    fn what_does_not_begin_as_we_write_is_left_to_whoever_reads_it_whole() {
        let marked = [MARK, HEAD.as_bytes()].concat();
        assert!(Slices::begin(&marked).is_some());
        for (from, to) in [
            ("hubslate", "another"),
            ("\"version\": 1", "\"version\": 2"),
            ("\"logs\": [", "\"logs\": "),
            ("\"logs\": [", "\"more\": ["),
            ("  \"made_by\": \"x\",\n", ""),
            ("{\n", "[\n"),
        ] {
            assert!(Slices::begin(HEAD.replacen(from, to, 1).as_bytes()).is_none());
        }
        assert!(Slices::begin(b"").is_none());
    }
}
