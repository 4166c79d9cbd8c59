//! What is made out of many files: log by log, written beside its place and renamed at the end, so
//! that a full disk leaves no half file under the name.

use std::collections::BTreeMap;
use std::ffi::OsString;
use std::fs::{self, File};
use std::io::{self, BufWriter, Write};
use std::path::{Path, PathBuf};

use hubslate::exchange::bundle::{self, Wanted};
use hubslate::exchange::calendar;
use hubslate::exchange::csv::BYTE_ORDER_MARK;
use hubslate::exchange::erase::{Besides, Left, pseudonym};
use hubslate::exchange::export::FileWriter;
use hubslate::exchange::gather::{Together, Union};
use hubslate::exchange::invoices;
#[cfg(feature = "parquet")]
use hubslate::exchange::parquet::Columns;
use hubslate::exchange::table::{self, Rows};
use hubslate::exchange::wire::decode;
use hubslate::exchange::{LogKind, SavedText};
use hubslate::job::entry::{Entry, LogId};
use hubslate::job::fold;
use hubslate::text::Verified;
use serde_json::json;

use super::gathering::Gathering;
use super::order::Make;
use super::{FORMAT, LANG, NOTHING_DONE, numbers, say, tell};

/// What is to be known about what was made.
#[derive(Default)]
pub struct Made {
    logs: usize,
    entries: usize,
    edited: Vec<String>,
    erased: Vec<String>,
    numbers: Vec<String>,
}

type Out = BufWriter<File>;

/// Where the logs go, one after the other.
enum Sink {
    File(FileWriter<Out>),
    Lines(Out),
    Table(Rows<Out>),
    Invoices(Rows<Out>, Vec<(String, String)>),
    Calendar(Out, Vec<String>),
    #[cfg(feature = "parquet")]
    Parquet(Box<Columns>),
}

/// Makes it; nothing where the files hold no log.
///
/// # Errors
/// Why it cannot be made or written.
pub fn make(gathering: &mut Gathering, make: &Make, out: &Path) -> Result<Option<Made>, String> {
    if *make == Make::Parquet && out.exists() {
        return Err(say(Verified::IsThere));
    }
    let part = part(out);
    let made = written(gathering, make, out, &part);
    if !matches!(made, Ok(Some(_))) {
        let _ = match part.is_dir() {
            true => fs::remove_dir_all(&part),
            false => fs::remove_file(&part),
        };
    }
    made
}

fn written(
    gathering: &mut Gathering,
    make: &Make,
    out: &Path,
    part: &Path,
) -> Result<Option<Made>, String> {
    let refused = |error: io::Error| say(Verified::NotWritten(&error.to_string()));
    let mut sink = Sink::new(make, part)?;
    let (mut made, mut wanted) = (Made::default(), BTreeMap::new());
    let mut logs = gathering.all.logs().map_err(refused)?;
    while let Some(mut log) = logs.next_log().map_err(refused)? {
        if let Make::Erased(begins, besides) = make {
            made.erase(&mut log, begins, besides)?;
        }
        let union = log.union();
        made.logs += 1;
        made.entries += union.records.len();
        made.edited
            .extend(union.edited.iter().map(|id| id.0.clone()));
        if !gathering.beside.is_empty() {
            let entries: Vec<Entry> = union.records.iter().filter_map(entry).collect();
            let named = bundle::wanted(&entries).into_iter();
            wanted.extend(named.map(|one| (one.sha256.clone(), one)));
        }
        sink.take(&union).map_err(refused)?;
    }
    if made.logs == 0 {
        return Ok(None);
    }
    if let Make::Erased(begins, _) = make
        && made.erased.is_empty()
    {
        return Err(say(Verified::NoSuchJob(begins)));
    }
    made.numbers = sink.end()?;
    if matches!(make, Make::Union | Make::Erased(..)) && is_zip(out) {
        packed(gathering, part, out, wanted).map_err(refused)?;
    }
    fs::rename(part, out).map_err(refused)?;
    Ok(Some(made))
}

impl Sink {
    fn new(make: &Make, part: &Path) -> Result<Self, String> {
        let refused = |error: io::Error| say(Verified::NotWritten(&error.to_string()));
        #[cfg(feature = "parquet")]
        if *make == Make::Parquet {
            return Ok(Self::Parquet(Box::new(Columns::new(part))));
        }
        let mut out = BufWriter::new(File::create(part).map_err(refused)?);
        let unwritten = |error: csv::Error| say(Verified::NotWritten(&error.to_string()));
        Ok(match make {
            Make::Union | Make::Erased(..) => Self::File(FileWriter::begin(out).map_err(refused)?),
            // Without typed columns nobody comes here.
            Make::Lines | Make::Parquet => Self::Lines(out),
            Make::Table => Self::Table(Rows::under(&table::HEADS, out).map_err(unwritten)?),
            Make::Invoices => {
                write!(out, "{BYTE_ORDER_MARK}").map_err(refused)?;
                let rows = Rows::under(&invoices::HEADS, out).map_err(unwritten)?;
                Self::Invoices(rows, Vec::new())
            }
            Make::Calendar => Self::Calendar(out, Vec::new()),
        })
    }

    fn take(&mut self, union: &Union) -> io::Result<()> {
        let (id, records, shop) = (&union.id, union.records.as_slice(), union.shop.as_deref());
        match self {
            Self::File(out) => {
                let texts = records.iter().map(|record| record.text.clone()).collect();
                out.add(&(union.kind, id.clone(), texts), shop)?;
            }
            Self::Lines(out) => {
                let lines = table::lines(records);
                for line in lines.iter().filter_map(|line| line.to_text(shop)) {
                    writeln!(out, "{line}")?;
                }
            }
            #[cfg(feature = "parquet")]
            Self::Parquet(columns) => columns.add(shop, records)?,
            _ if union.kind != LogKind::Job => {}
            Self::Table(rows) => rows.add(&table::row(id, records))?,
            Self::Invoices(rows, numbers) => {
                for row in invoices::rows(id, records) {
                    rows.add(&row)?;
                }
                let of_job = invoices::numbers(records).into_iter();
                numbers.extend(of_job.map(|number| (number, id.0.clone())));
            }
            Self::Calendar(_, events) => {
                let sheet = fold(records.iter().filter_map(entry));
                events.extend(calendar::events(LANG, FORMAT, &sheet));
            }
        }
        Ok(())
    }

    /// All of it is written; gives what is to be known of invoice numbers.
    fn end(self) -> Result<Vec<String>, String> {
        let refused = |error: io::Error| say(Verified::NotWritten(&error.to_string()));
        let unwritten = |error: csv::Error| say(Verified::NotWritten(&error.to_string()));
        let (mut out, notes) = match self {
            #[cfg(feature = "parquet")]
            Self::Parquet(columns) => return columns.end().map(|()| Vec::new()).map_err(refused),
            Self::File(out) => (out.end().map_err(refused)?, Vec::new()),
            Self::Lines(out) => (out, Vec::new()),
            Self::Table(rows) => (rows.end().map_err(unwritten)?, Vec::new()),
            Self::Invoices(rows, all) => {
                let notes = numbers::notes(LANG, &all);
                (rows.end().map_err(unwritten)?, notes)
            }
            Self::Calendar(mut out, events) => {
                let text = calendar::of_events(LANG, events);
                let text = text.ok_or_else(|| say(Verified::NothingDue))?;
                out.write_all(text.as_bytes()).map_err(refused)?;
                (out, Vec::new())
            }
        };
        out.flush().map_err(refused)?;
        Ok(notes)
    }
}

/// Packs the file at `part` with the photos that it names and that came, in its own place.
fn packed(
    gathering: &Gathering,
    part: &Path,
    out: &Path,
    wanted: BTreeMap<String, Wanted>,
) -> io::Result<()> {
    let job = out.with_extension("json");
    let job = job.file_name().unwrap_or_default().to_string_lossy();
    let zip = with(part, ".zip");
    let beside = wanted.into_iter().filter_map(|(sha256, wanted)| {
        let beside = gathering.beside.get(&sha256)?;
        Some(beside.bytes().map(|bytes| (wanted, bytes)))
    });
    let to = BufWriter::new(File::create(&zip)?);
    let packed = bundle::write_to(to, &job, &mut File::open(part)?, beside);
    if packed.is_err() {
        let _ = fs::remove_file(&zip);
    }
    packed?;
    fs::rename(zip, part)
}

impl Made {
    /// Erases the customer of the job that begins so, if it is this one.
    fn erase(
        &mut self,
        log: &mut Together,
        begins: &str,
        besides: &[Besides],
    ) -> Result<(), String> {
        if !log.is_job(begins) {
            return Ok(());
        }
        if !self.erased.is_empty() {
            return Err(say(Verified::NoSuchJob(begins)));
        }
        let erased = log.erase(besides);
        let (entries, left) = erased.map_err(|error| format!("{error:?}"))?;
        self.erased = told(&log.id, entries, &left);
        Ok(())
    }
}

/// What is to be known about an erasing.
fn told(job: &LogId, entries: usize, left: &Left) -> Vec<String> {
    let pseudonym = &pseudonym(job);
    let mut told = vec![say(Verified::Erased { entries, pseudonym })];
    let texts = left.complaint.iter().chain(&left.notes);
    told.extend(texts.map(|text| say(Verified::FreeText(text))));
    if left.signatures > 0 {
        told.push(say(Verified::Signatures(left.signatures)));
    }
    if !left.photos.is_empty() {
        told.push(say(Verified::Photos(left.photos.len())));
    }
    told
}

/// Says what was made and what is to be known about it; gives the ending.
pub fn tell_of(
    gathering: &Gathering,
    made: Result<Option<Made>, String>,
    out: &Path,
    as_json: bool,
) -> u8 {
    let file = out.display().to_string();
    let made = match made {
        Err(why) => {
            eprintln!("{file}: {why}");
            return NOTHING_DONE;
        }
        Ok(None) => return 1,
        Ok(Some(made)) => made,
    };
    let notes = made.notes(gathering, out);
    let Made { logs, entries, .. } = made;
    if as_json {
        let status = json!({
            "file": file, "status": "written", "logs": logs, "entries": entries, "notes": notes,
        });
        tell(&status.to_string());
    } else {
        let head = say(Verified::Written { logs, entries });
        tell(&format!("{file}: {head}"));
        notes.iter().for_each(|note| tell(note));
    }
    let unread = !gathering.all.unreadable.is_empty();
    u8::from(gathering.refused || !made.edited.is_empty() || unread)
}

impl Made {
    fn notes(&self, gathering: &Gathering, out: &Path) -> Vec<String> {
        let gaps = gathering.all.gaps();
        let gaps = gaps.iter().map(|gap| Verified::Gap {
            device: &gap.device,
            from: gap.from,
            to: gap.to,
        });
        let edited = self.edited.iter().map(|id| Verified::EntryTwice(id));
        let unreadable = gathering.all.unreadable.keys();
        let unreadable = unreadable.map(|id| Verified::EntryUnreadable(&id.0));
        let mut notes = self.erased.clone();
        notes.extend(gaps.chain(edited).chain(unreadable).map(say));
        notes.extend(gathering.left_out.iter().cloned());
        notes.extend(self.numbers.iter().cloned());
        let photos = gathering.beside.len();
        if photos > 0 && !is_zip(out) {
            notes.push(say(Verified::PhotosLeftOut(photos)));
        }
        notes
    }
}

fn entry(record: &SavedText) -> Option<Entry> {
    decode(&record.text).ok()
}

/// Whether a file is to be a zip, by its ending.
fn is_zip(out: &Path) -> bool {
    out.extension()
        .is_some_and(|ending| ending.eq_ignore_ascii_case("zip"))
}

fn part(out: &Path) -> PathBuf {
    with(out, ".part")
}

fn with(path: &Path, ending: &str) -> PathBuf {
    let mut path: OsString = path.as_os_str().to_owned();
    path.push(ending);
    PathBuf::from(path)
}
