//! The backup journal: a file outside the database that says what the phone must have.
//!
//! It is a text of lines, each written whole and flushed: a check sum, a space, JSON. It holds the
//! entries of every log that is not closed, and of the closed ones how many entries they have and
//! their digest. A line that a power cut tore is no line, so that a tap is kept whole or not at all.
//!
//! Two files take turns: what counts is written again into the other one before the first is
//! emptied. A later line wins over an earlier one, so that both may be read.

use super::confirmation::numbered as device_number;
use super::envelope::{SavedText, digest, sha256_hex};
use super::json::{form, read, written};
use crate::map::OrderedMap;
use crate::sorted::Sorted;

/// What stands before the number of a file; the number has six digits, and zero is no file.
pub const HEADER: &str = "hubslate backup ";
/// The bytes of the first line: the header, the number and the end of the line.
pub const HEADER_BYTES: usize = HEADER.len() + 7;

/// Ends what a torn line left; no whole line ends so.
pub const TORN: char = '~';

/// Beyond this many bytes of lines that no longer count a file is written again.
const SLACK: usize = 500_000;

/// What the phone must have, as its backup journal says.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Backup {
    logs: OrderedMap<String, Copy>,
    /// The last running number of each device that writes here.
    numbers: OrderedMap<String, u64>,
    /// Lines that are no longer what was written.
    damaged: usize,
    /// Bytes that were read.
    read: usize,
    /// Bytes that counted when that was last looked at.
    counted: usize,
}

/// One log in the backup journal.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
struct Copy {
    texts: OrderedMap<String, String>,
    must: usize,
    digest: Option<String>,
    /// Whether it is known that entries are lost.
    doubted: bool,
}

/// Entries as (log, id, text), and how many entries each log has with them.
type Tap = (Vec<(String, String, String)>, Vec<(String, usize)>);

enum Line {
    /// What was tapped.
    Tap(Tap),
    /// Closed logs: how many entries each has, and their digest.
    Held(Vec<(String, usize, String)>),
    /// Logs of which entries are lost; nothing that comes in later makes them whole.
    Doubt(Vec<String>),
    /// Logs that were thrown away.
    Gone(Vec<String>),
    /// A text in the place of the one that was there: log, id, text.
    Body((String, String, String)),
    /// The last running numbers of this phone, by device. They stay when their log is closed.
    Counted(Vec<(String, u64)>),
}

form!(
    enum Line {
        Tap = "tap"(it),
        Held = "held"(it),
        Doubt = "doubt"(it),
        Gone = "gone"(it),
        Body = "body"(it),
        Counted = "counted"(it),
    }
);

impl Backup {
    /// What the files say. Their order does not matter; a file without a number is none.
    pub fn read(files: &[String]) -> Self {
        let mut in_order: Vec<(u32, &str)> =
            files.iter().filter_map(|file| numbered(file)).collect();
        in_order.order();
        let mut backup = Self::default();
        for (_, text) in in_order {
            backup.read = backup.read.saturating_add(text.len());
            // What follows the last end of a line was torn and never told of as kept.
            let whole = text.rfind('\n').and_then(|end| text.get(..end));
            for line in whole.unwrap_or_default().split('\n') {
                match checked(line) {
                    Some(line) => backup.take(line),
                    // What a torn line left is marked by whoever writes next.
                    None if line.is_empty() || line.ends_with(TORN) => {}
                    None => backup.damaged = backup.damaged.saturating_add(1),
                }
            }
        }
        backup
    }

    /// Takes lines that were just written.
    pub fn add(&mut self, lines: &str) {
        self.read = self.read.saturating_add(lines.len());
        for line in lines.split('\n').filter_map(checked) {
            self.take(line);
        }
    }

    fn take(&mut self, line: Line) {
        match line {
            Line::Tap((entries, must)) => {
                for (log, id, text) in entries {
                    self.log(log).texts.insert(id, text);
                }
                for (log, must) in must {
                    let copy = self.log(log);
                    copy.must = copy.must.max(must);
                    if copy.must <= copy.texts.len() {
                        copy.digest = None;
                    }
                }
            }
            Line::Held(logs) => {
                for (log, must, digest) in logs {
                    let copy = self.log(log);
                    copy.texts = OrderedMap::new();
                    copy.must = must;
                    copy.digest = Some(digest);
                }
            }
            Line::Doubt(logs) => {
                for log in logs {
                    self.log(log).doubted = true;
                }
            }
            Line::Gone(logs) => {
                for log in logs {
                    self.logs.remove(&log);
                }
            }
            Line::Body((log, id, text)) => {
                if let Some(saved) = self.log(log).texts.get_mut(&id) {
                    *saved = text;
                }
            }
            Line::Counted(numbers) => {
                for (device, number) in numbers {
                    let last = self.numbers.or_default(device);
                    *last = number.max(*last);
                }
            }
        }
    }

    /// The devices that write here, each with its last running number: no entry takes one of these
    /// again, whatever the database has lost.
    pub fn numbers(&self) -> impl Iterator<Item = (&str, u64)> {
        let numbers = self.numbers.iter();
        numbers.map(|(device, number)| (device.as_str(), *number))
    }

    fn log(&mut self, log: String) -> &mut Copy {
        self.logs.or_default(log)
    }

    /// The logs whose entries are here.
    pub fn open_logs(&self) -> impl Iterator<Item = &str> {
        let open = self.logs.iter().filter(|(_, copy)| !copy.texts.is_empty());
        open.map(|(log, _)| log.as_str())
    }

    /// Every log that the phone must have.
    pub fn logs(&self) -> impl Iterator<Item = &str> {
        self.logs.keys().map(String::as_str)
    }

    /// The entries of a log that are here, by id.
    pub fn entries(&self, log: &str) -> Vec<SavedText> {
        let copy = self.logs.get(log);
        let texts = copy.into_iter().flat_map(|copy| &copy.texts);
        texts
            .map(|(id, text)| SavedText {
                log: log.to_owned(),
                id: id.clone(),
                text: text.clone(),
            })
            .collect()
    }

    /// Whether an entry of a log is here.
    pub fn has(&self, log: &str, id: &str) -> bool {
        let copy = self.logs.get(log);
        copy.is_some_and(|copy| copy.texts.contains_key(id))
    }

    /// Whether anything was written of a log.
    pub fn knows(&self, log: &str) -> bool {
        self.logs.contains_key(log)
    }

    /// How many entries a log must have; 0 where nothing is known of it.
    pub fn must(&self, log: &str) -> usize {
        self.logs.get(log).map_or(0, |copy| copy.must)
    }

    /// Whether these texts are all that a log must have. A closed log of as many entries as it was
    /// closed with has their digest too.
    pub fn has_all<T: AsRef<str>>(&self, log: &str, texts: &[T]) -> bool {
        let Some(copy) = self.logs.get(log) else {
            return true;
        };
        let closed = copy.digest.as_ref().filter(|_| copy.texts.is_empty());
        match closed {
            _ if copy.doubted => false,
            Some(saved) if texts.len() == copy.must => *saved == digest(texts),
            _ => copy.must <= texts.len(),
        }
    }

    /// Whether a log is held here by number and digest alone.
    pub fn is_closed(&self, log: &str) -> bool {
        let copy = self.logs.get(log);
        copy.is_some_and(|copy| copy.digest.is_some() && copy.texts.is_empty())
    }

    /// Whether a log that was closed has new entries, and its older ones are not here.
    pub fn is_reopened(&self, log: &str) -> bool {
        let copy = self.logs.get(log);
        copy.is_some_and(|copy| copy.digest.is_some() && !copy.texts.is_empty())
    }

    /// Whether it is known that entries of a log are lost.
    pub fn is_doubted(&self, log: &str) -> bool {
        self.logs.get(log).is_some_and(|copy| copy.doubted)
    }

    /// Lines that are no longer what was written.
    pub const fn damaged(&self) -> usize {
        self.damaged
    }

    /// Everything that counts, where the files hold much that does not.
    pub fn anew(&mut self) -> Option<String> {
        if self.read <= self.counted.saturating_add(SLACK) {
            return None;
        }
        let whole = self.whole();
        self.counted = whole.len();
        (self.read > self.counted.saturating_add(SLACK)).then_some(whole)
    }

    /// Whether the files hold nothing but what counts.
    pub const fn is_lean(&self) -> bool {
        self.read == self.counted
    }

    /// The files were written again with these lines.
    pub fn turned(&mut self, lines: &str) {
        (self.read, self.counted) = (lines.len(), lines.len());
    }

    /// Everything that counts.
    pub fn whole(&self) -> String {
        let mut lines = String::new();
        let closed = self.logs.iter().filter_map(|(log, copy)| {
            let digest = copy.digest.clone()?;
            Some((log.clone(), copy.must, digest))
        });
        lines.push_str(&line(&Line::Held(closed.collect())));
        let numbers = self.numbers.clone().into_iter().collect();
        lines.push_str(&line(&Line::Counted(numbers)));
        for (log, copy) in self.logs.iter().filter(|(_, copy)| !copy.texts.is_empty()) {
            let entry = |(id, text): (&String, &String)| (log.clone(), id.clone(), text.clone());
            let entries = copy.texts.iter().map(entry).collect();
            let must = vec![(log.clone(), copy.must)];
            lines.push_str(&line(&Line::Tap((entries, must))));
        }
        let doubted = self.logs.iter().filter(|(_, copy)| copy.doubted);
        let doubted = doubted.map(|(log, _)| log.clone()).collect();
        lines.push_str(&line(&Line::Doubt(doubted)));
        lines
    }
}

/// The line of a tap: its entries, and how many entries their log has with them.
pub fn tap(entries: &[SavedText], must: usize) -> String {
    let entry = |saved: &SavedText| (saved.log.clone(), saved.id.clone(), saved.text.clone());
    let mut logs: Vec<(String, usize)> = Vec::new();
    for saved in entries {
        if logs.iter().all(|(log, _)| *log != saved.log) {
            logs.push((saved.log.clone(), must));
        }
    }
    line(&Line::Tap((entries.iter().map(entry).collect(), logs)))
}

/// The line of the running numbers that a tap of this phone takes; nothing where it has none.
pub fn counted<'a>(texts: impl IntoIterator<Item = &'a str>) -> String {
    let mut numbers: OrderedMap<String, u64> = OrderedMap::new();
    for text in texts {
        if let Some((device, n)) = device_number(text) {
            let last = numbers.or_default(device);
            *last = n.max(*last);
        }
    }
    if numbers.is_empty() {
        return String::new();
    }
    line(&Line::Counted(numbers.into_iter().collect()))
}

/// The line that says that entries of a log are lost.
pub fn doubted(log: &str) -> String {
    line(&Line::Doubt(vec![log.to_owned()]))
}

/// How many bytes the file has that counts.
pub fn size(files: &[String]) -> usize {
    let numbers = files
        .iter()
        .filter_map(|file| Some((numbered(file)?.0, file.len())));
    numbers.max().map_or(0, |(_, size)| size)
}

/// The line of a log that is closed with these texts: they need not be here any more.
pub fn closed<T: AsRef<str>>(log: &str, texts: &[T]) -> String {
    line(&Line::Held(vec![(
        log.to_owned(),
        texts.len(),
        digest(texts),
    )]))
}

/// The line of a log that was thrown away.
pub fn gone(log: &str) -> String {
    line(&Line::Gone(vec![log.to_owned()]))
}

/// The line of a text that took the place of another.
pub fn body(saved: &SavedText) -> String {
    let SavedText { log, id, text } = saved.clone();
    line(&Line::Body((log, id, text)))
}

fn line(line: &Line) -> String {
    let json = written(line);
    format!("{} {json}\n", sum(&json))
}

fn sum(json: &str) -> String {
    let mut sum = sha256_hex(json.as_bytes());
    sum.truncate(16);
    sum
}

fn checked(text: &str) -> Option<Line> {
    let (saved, json) = text.split_once(' ')?;
    let same = saved == sum(json);
    read(json).filter(|_| same)
}

/// The number of a file and what stands after its first line. A first line that a disk made
/// unreadable is that of a file all the same; one with the number 0 is being written.
fn numbered(file: &str) -> Option<(u32, &str)> {
    let (first, text) = file.split_once('\n')?;
    let number = first.strip_prefix(HEADER).and_then(|it| it.parse().ok());
    let number = number.unwrap_or(1);
    (number > 0).then_some((number, text))
}
