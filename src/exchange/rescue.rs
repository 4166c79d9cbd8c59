//! The file that the crash panel saves (`public/crash.js`): what a phone had when its app stopped.
//!
//! It is read as an ordinary file of its logs. What cannot be read is set aside and named; settings
//! and unfinished input belong to the phone that crashed and stay in the file.

use crate::exchange::backup::Backup;
use crate::exchange::belongs::belongs;
use crate::exchange::envelope::{self, Envelope, LogKind, SavedText, StoredLog};
use crate::exchange::export::stored;
use crate::exchange::import::{EntryError, ImportError, MAX_JOINS, is_log_id, looks_like, record};
use crate::exchange::json::{Form, Json, NotJson, parse_to, read, unquoted};
use crate::exchange::merge::merge;
use crate::exchange::pieces::{InOneGo, Pieces, in_one_go};
use crate::job::entry::{Entry, LogId};
use crate::job::is_tangled;
use crate::map::{OrderedMap, OrderedSet};
use crate::sorted::Sorted;
use crate::text::{self, Lang, Verified};

/// The name of the format, in every rescue file.
pub const FORMAT: &str = "hubslate-rescue";
/// The version that the crash panel writes.
const VERSION: u64 = 1;
/// What begins the key of a second copy in localStorage; the log and the entry's id follow.
const SECOND: &str = "hubslate:entry:";
/// What begins the key of a text that the phone itself could not read.
const UNREADABLE: &str = "hubslate:unreadable:";

/// What a rescue file holds besides logs.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Rescue {
    /// What the phone could not read when it saved the file: that much is missing from it.
    pub problems: Vec<String>,
    /// What cannot be read here.
    pub aside: Vec<SetAside>,
}

/// A text that is set aside, byte for byte.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SetAside {
    /// The log that its key names, if it names one.
    pub log: Option<String>,
    /// Where it stands in the file.
    pub key: String,
    /// Why it cannot be taken.
    pub error: RescueError,
    /// The text.
    pub text: String,
}

/// Why a text of a rescue file cannot be taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum RescueError {
    /// It has no log, id and text.
    NotARecord,
    /// Its log has an id that no log has.
    BadLogId,
    /// It is no entry of its log.
    BadEntry(EntryError),
    /// It was stored under another id than it has.
    OtherId,
    /// The entries of its log branch and join more than [`MAX_JOINS`] times.
    Tangled,
    /// The phone had set it aside already, for this reason.
    SetAsideBefore(String),
}

impl Rescue {
    /// A sentence for each part that is missing and each text that is set aside.
    pub fn say(&self, lang: Lang) -> impl Iterator<Item = String> {
        let missing = self.problems.iter();
        let missing =
            missing.map(move |problem| text::verified(lang, Verified::NotRescued(problem)));
        missing.chain(self.aside.iter().map(move |aside| aside.say(lang)))
    }
}

impl SetAside {
    /// The sentence that a person reads.
    pub fn say(&self, lang: Lang) -> String {
        let why = format!("{:?}", self.error);
        text::verified(
            lang,
            Verified::SetAside {
                key: &self.key,
                why: &why,
            },
        )
    }
}

/// How deep the file is taken apart: file, records, record.
const LEVELS: u8 = 3;

/// The logs of a rescue file as those of an ordinary one, and the rest of it. It is the file that
/// `public/crash.js` writes.
///
/// # Errors
/// [`ImportError`] for a text that is no rescue file, or no whole one.
pub(super) fn open(text: &str) -> Result<(Envelope, Rescue), ImportError> {
    let damaged = |NotJson { line, .. }| match looks_like(text, FORMAT) {
        true => ImportError::Damaged { line },
        false => ImportError::NotOurs,
    };
    let unfit = || damaged(NotJson::of_whole(text));
    let json = parse_to(text, LEVELS).map_err(damaged)?;
    let mut parts = parts(&json).ok_or_else(unfit)?;
    let (format, version): (Option<String>, _) = (json.field("format"), json.field("version"));
    let format = format.ok_or_else(unfit)?;
    match version.ok_or_else(unfit)? {
        _ if format != FORMAT => return Err(ImportError::NotOurs),
        0 => return Err(ImportError::NotOurs),
        version if version > VERSION => return Err(ImportError::Newer { version }),
        _ => {}
    }
    let mut logs = Vec::new();
    for (id, found) in parts.logs {
        logs.extend(log(&mut parts.rescue, &id, found)?);
    }
    let envelope = Envelope {
        format: envelope::FORMAT.to_owned(),
        version: envelope::VERSION,
        made_by: FORMAT.to_owned(),
        logs,
    };
    Ok((envelope, parts.rescue))
}

/// What the file holds; what is not there or `null` is nothing.
fn parts(json: &Json<'_>) -> Option<Parts> {
    let mut parts = Parts::default();
    let problems: Option<Vec<String>> = json.field("problems")?;
    parts.rescue.problems = problems.unwrap_or_default();
    let given = |name| Some(json.find(name).ok()?.filter(|it| it.raw() != "null"));
    let list = |name| match given(name)? {
        Some(all) => all.list(),
        None => Some(&[][..]),
    };
    for (place, record) in (1..).zip(list("entries")?) {
        parts.entry(place, record);
    }
    for (place, aside) in (1..).zip(list("aside")?) {
        parts.set_aside_before(place, aside);
    }
    let local = given("local")?.map(|it| it.map().ok_or(())).transpose();
    let mut local: Vec<_> = local.ok()?.unwrap_or_default().iter().collect();
    local.order_by(|(a, _), (b, _)| a.cmp(b));
    for (key, value) in local {
        parts.local(&unquoted(key)?, value);
    }
    if let Some(backup) = given("backup")? {
        parts.backup(backup);
    }
    Some(parts)
}

/// A record with the place it was found at.
struct Found {
    key: String,
    saved: SavedText,
}

/// The texts of one log in both places.
#[derive(Default)]
struct Places {
    journal: Vec<Found>,
    second: Vec<Found>,
}

#[derive(Default)]
struct Parts {
    logs: OrderedMap<String, Places>,
    rescue: Rescue,
}

impl Parts {
    fn entry(&mut self, place: usize, json: &Json<'_>) {
        let key = format!("entries {place}");
        let saved = || {
            Some(SavedText {
                log: json.field("log")?,
                id: json.field("id")?,
                text: json.field("text")?,
            })
        };
        let Some(saved) = saved() else {
            return self.aside(None, key, RescueError::NotARecord, json.raw());
        };
        let places = self.logs.or_default(saved.log.clone());
        places.journal.push(Found { key, saved });
    }

    fn set_aside_before(&mut self, place: usize, json: &Json<'_>) {
        let key = format!("aside {place}");
        let (why, text): (Option<String>, Option<String>) = (json.field("why"), json.field("text"));
        match why.zip(text) {
            Some((why, text)) => {
                self.aside(None, key, RescueError::SetAsideBefore(why), &text);
            }
            None => self.aside(None, key, RescueError::NotARecord, json.raw()),
        }
    }

    /// A value of localStorage: the second copy of one tap, as (id, text), or of one entry alone.
    fn local(&mut self, key: &str, json: &Json<'_>) {
        let value = json.text().unwrap_or_else(|| json.raw().into());
        if let Some(before) = key.strip_prefix(UNREADABLE) {
            let error = RescueError::SetAsideBefore(before.to_owned());
            return self.aside(None, key.to_owned(), error, &value);
        }
        let Some(rest) = key.strip_prefix(SECOND) else {
            return;
        };
        let Some((log, id)) = rest.rsplit_once(':') else {
            return self.aside(None, key.to_owned(), RescueError::NotARecord, &value);
        };
        let one = |text| vec![(id.to_owned(), text)];
        let tap: Option<Vec<(String, String)>> = read(&value).or_else(|| read(&value).map(one));
        let Some(tap) = tap else {
            let log = Some(log.to_owned());
            return self.aside(log, key.to_owned(), RescueError::NotARecord, &value);
        };
        let found = tap.into_iter().map(|(id, text)| Found {
            key: key.to_owned(),
            saved: SavedText {
                log: log.to_owned(),
                id,
                text,
            },
        });
        let log = self.logs.or_default(log.to_owned());
        log.second.extend(found);
    }

    /// The texts of the backup journal's files.
    fn backup(&mut self, json: &Json<'_>) {
        let Some(files) = Vec::read(json) else {
            let key = "backup".to_owned();
            return self.aside(None, key, RescueError::NotARecord, json.raw());
        };
        let backup = Backup::read(&files);
        for log in backup.open_logs() {
            let found = backup.entries(log).into_iter().map(|saved| Found {
                key: format!("backup {}", saved.id),
                saved,
            });
            let places = self.logs.or_default(log.to_owned());
            places.second.extend(found);
        }
    }

    fn aside(&mut self, log: Option<String>, key: String, error: RescueError, text: &str) {
        let text = text.to_owned();
        self.rescue.aside.push(SetAside {
            log,
            key,
            error,
            text,
        });
    }
}

impl Rescue {
    fn found(&mut self, found: Found, error: RescueError) {
        self.aside.push(SetAside {
            log: Some(found.saved.log),
            key: found.key,
            error,
            text: found.saved.text,
        });
    }
}

/// The log of what was found of it; nothing where all of it is set aside.
fn log(rescue: &mut Rescue, id: &str, places: Places) -> Result<Option<StoredLog>, ImportError> {
    let kind = LogKind::of(id);
    if !is_log_id(kind, id) {
        let all = places.journal.into_iter().chain(places.second);
        all.for_each(|found| rescue.found(found, RescueError::BadLogId));
        return Ok(None);
    }
    let mut entries = Vec::new();
    let journal = readable(rescue, kind, places.journal, &mut entries);
    let second = readable(rescue, kind, places.second, &mut entries);
    if is_tangled(&entries, MAX_JOINS) {
        let all = journal.into_iter().chain(second);
        all.for_each(|found| rescue.found(found, RescueError::Tangled));
        return Ok(None);
    }
    let texts = union(rescue, journal, second);
    let texts: Vec<String> = texts.into_values().collect();
    if texts.is_empty() {
        return Ok(None);
    }
    let bad = |_| ImportError::BadLog { id: id.to_owned() };
    let id = LogId(id.to_owned());
    in_one_go(stored(kind, &id, &texts, &mut Pieces::of(0, &InOneGo)))
        .map(Some)
        .map_err(bad)
}

/// Those that are entries of their log; the entries as they are understood are added to `entries`.
fn readable(
    rescue: &mut Rescue,
    kind: LogKind,
    all: Vec<Found>,
    entries: &mut Vec<Entry>,
) -> Vec<Found> {
    let mut readable = Vec::with_capacity(all.len());
    for found in all {
        match record(&found.saved.log, &found.saved.text) {
            Ok((record, read)) if record.id == found.saved.id => {
                if read.as_ref().is_ok_and(|entry| !belongs(kind, &entry.what)) {
                    rescue.found(found, RescueError::BadEntry(EntryError::OtherKind));
                    continue;
                }
                entries.extend(read);
                readable.push(found);
            }
            Ok(_) => rescue.found(found, RescueError::OtherId),
            Err(fault) => rescue.found(found, RescueError::BadEntry(fault)),
        }
    }
    readable
}

/// The texts of both places by id; where they differ, the journal's stand and the other is set
/// aside.
fn union(
    rescue: &mut Rescue,
    journal: Vec<Found>,
    second: Vec<Found>,
) -> OrderedMap<String, String> {
    let saved =
        |all: &[Found]| -> Vec<SavedText> { all.iter().map(|it| it.saved.clone()).collect() };
    let first = merge(&[], &saved(&journal));
    let then = merge(&first.add, &saved(&second));
    let edited = first.edited.into_iter().chain(then.edited);
    let edited: OrderedSet<String> = OrderedSet::from_iter(edited.map(|id| id.0));
    let whole = first.add.into_iter().chain(then.add).chain(then.replace);
    let union: OrderedMap<String, String> =
        OrderedMap::from_iter(whole.map(|saved| (saved.id, saved.text)));
    for found in journal.into_iter().chain(second) {
        let id = &found.saved.id;
        if edited.contains(id) && union.get(id) != Some(&found.saved.text) {
            rescue.found(found, RescueError::BadEntry(EntryError::Twice));
        }
    }
    union
}
