//! From what happened to entries: stamps them, numbers them, and hangs them on what was seen.

use uuid::Builder;

use crate::exchange::digest;
use crate::exchange::wire::encode;
use crate::job::JobState;
use crate::job::entry::{Entry, EntryId, Event, HandedOver, LogId, Timestamp};

/// Everything about a tap that is not what happened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pen {
    /// Who holds the phone.
    pub by: String,
    /// Which phone.
    pub device: String,
    /// The device's next running number.
    pub n: u64,
    /// When, by the device's clock.
    pub utc_ms: i64,
    /// The device's offset from UTC, in minutes, east positive.
    pub offset_min: i32,
    /// When it was done, if another time was told.
    pub recorded: Option<i64>,
    /// Ten random bytes; the last two make way for the place within the tap.
    pub chance: [u8; 10],
}

/// The entries of one tap, each after the one before it, the first after the heads of the sheet.
///
/// Ids are UUIDs of version 7 (RFC 9562): 48 bits of milliseconds, then chance. The entries of one
/// tap share their time and their chance; the last two bytes are the place within the tap. Beyond
/// 65 535 entries an id would stand twice, which a store refuses.
pub fn compose(log: &LogId, heads: &[EntryId], pen: &Pen, whats: Vec<Event>) -> Vec<Entry> {
    let mut after = heads.to_vec();
    let mut entries = Vec::with_capacity(whats.len());
    for (place, what) in (0_u64..).zip(whats) {
        let id = id(pen, u16::try_from(place).unwrap_or(u16::MAX));
        entries.push(Entry {
            id: id.clone(),
            log: log.clone(),
            at: Timestamp {
                utc_ms: pen.utc_ms,
                offset_min: pen.offset_min,
                recorded: pen.recorded,
            },
            by: pen.by.clone(),
            device: pen.device.clone(),
            n: pen.n.saturating_add(place),
            after: std::mem::replace(&mut after, vec![id]),
            what,
        });
    }
    entries
}

/// The same entries, a handing over among them with the digest of everything that it has seen:
/// of the record as it stands and of what the tap wrote before it.
pub fn sealed(record: &[Entry], mut tap: Vec<Entry>) -> Vec<Entry> {
    let hands_over = |entry: &Entry| matches!(entry.what, Event::HandedOver(_));
    if let Some(place) = tap.iter().position(hands_over)
        && let (before, [over, ..]) = tap.split_at_mut(place)
    {
        let digest = digest_of(record.iter().chain(before.iter()));
        over.what = Event::HandedOver(HandedOver { digest });
    }
    tap
}

/// The digest of entries, as an export gives it.
pub fn digest_of<'a>(entries: impl IntoIterator<Item = &'a Entry>) -> String {
    // No entry that was made or read here cannot be written down.
    let texts = entries.into_iter().filter_map(|entry| encode(entry).ok());
    digest(texts)
}

/// The identity of a new log, made as an entry's is.
pub fn log_id(pen: &Pen) -> LogId {
    LogId(id(pen, u16::MAX).0)
}

fn id(pen: &Pen, place: u16) -> EntryId {
    let mut chance = pen.chance;
    if let Some(last) = chance.last_chunk_mut() {
        *last = place.to_be_bytes();
    }
    let ms = u64::try_from(pen.utc_ms).unwrap_or(0);
    EntryId(
        Builder::from_unix_timestamp_millis(ms, &chance)
            .into_uuid()
            .to_string(),
    )
}

/// What takes back the last tap of this device that still counts, if there is one.
///
/// A tap may have written several entries; they are struck together, and with them what the tap
/// itself had struck: a picture that another one replaced is there again. The tap that opened the
/// job stays: without it there is no job to go back to. A number that was given stays too: a credit
/// note takes it back.
pub fn undo(sheet: &JobState, device: &str) -> Option<Event> {
    let mine = |entry: &&Entry| entry.device == device;
    let strikes = |entry: &&Entry| matches!(entry.what, Event::Strike(_));
    let last = sheet
        .counting()
        .filter(mine)
        .filter(|e| !strikes(e))
        .last()?;
    let tap: Vec<&Entry> = sheet
        .counting()
        .filter(mine)
        .filter(|entry| tap_of(entry) == tap_of(last))
        .collect();
    if tap
        .iter()
        .any(|e| matches!(e.what, Event::Opened(_) | Event::Invoice(_)))
    {
        return None;
    }
    Some(Event::Strike(tap.iter().map(|e| e.id.clone()).collect()))
}

/// What the entries of one tap share: the time alone would join two taps under a clock that
/// stands still or was set back.
fn tap_of(entry: &Entry) -> (i64, &str) {
    (entry.at.utc_ms, tap_id(&entry.id.0))
}

/// What the ids of one tap begin with: the last four digits are the place within it.
fn tap_id(id: &str) -> &str {
    id.get(..id.len().saturating_sub(4)).unwrap_or(id)
}

/// Whether these are the ids of entries of one tap, or of none.
pub fn is_one_tap<'a>(mut ids: impl Iterator<Item = &'a str>) -> bool {
    let first = ids.next().map(tap_id);
    ids.all(|id| Some(tap_id(id)) == first)
}
