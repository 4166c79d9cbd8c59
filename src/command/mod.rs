//! The command on a computer: files looked at again, joined, or freed of a person.
//!
//! Nothing is judged here; `exchange` does it, and this reads, prints and writes.

mod again;
mod numbers;
mod order;
mod source;

use std::collections::BTreeMap;
use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use hubslate::exchange::bundle::{self, Wanted};
use hubslate::exchange::calendar::calendar;
use hubslate::exchange::erase::{Besides, pseudonym};
use hubslate::exchange::gather::{Gathered, Union};
use hubslate::exchange::invoices::invoices;
use hubslate::exchange::table::{lines, table};
use hubslate::exchange::wire::decode;
use hubslate::exchange::{ImportError, LogKind, SavedText, export, read};
use hubslate::job::entry::Entry;
use hubslate::job::{JobState, fold};
use hubslate::text::{self, Lang, Outside, Verified};
use hubslate::units::{DecimalMark, Format, System};
use serde_json::json;

use order::{Make, Order};

const LANG: Lang = Lang::English;
/// Typed numbers are shown as they were typed.
const FORMAT: Format = Format {
    system: System::Metric,
    decimal: DecimalMark::Dot,
};
/// Nothing was done.
const NOTHING_DONE: u8 = 2;

/// Reads the command line and carries it out; the help says what the endings mean.
pub fn main() -> ExitCode {
    match order::read(std::env::args_os().skip(1)) {
        Ok(order) => ExitCode::from(carry_out(&order)),
        Err(slip) => {
            eprintln!("{slip}.\n{}", help());
            ExitCode::from(NOTHING_DONE)
        }
    }
}

fn carry_out(order: &Order) -> u8 {
    match order {
        Order::Help => {
            tell(help());
            0
        }
        Order::Verify { files, json } => again::verify_all(files, *json),
        Order::Make {
            make,
            files,
            out,
            json,
        } => {
            let mut gathering = gather(files, *json);
            let made = gathering.make(make);
            let whole = matches!(make, Make::Union | Make::Erased(..));
            let bytes = made.and_then(|text| match whole && is_zip(out) {
                true => gathering.packed(&text, out),
                false => Ok(text.into_bytes()),
            });
            gathering.write(bytes, out, *json)
        }
    }
}

fn help() -> &'static str {
    text::outside(LANG, Outside::Help)
}

fn say(what: Verified) -> String {
    text::verified(LANG, what)
}

/// Prints a line; a reader that has gone away is no fault of ours.
fn tell(line: &str) {
    let _ = writeln!(std::io::stdout(), "{line}");
}

fn why(error: &ImportError) -> String {
    match error {
        ImportError::NotOurs => say(Verified::NotOurs),
        ImportError::Newer { version } => say(Verified::Newer { version: *version }),
        ImportError::CutOff => say(Verified::CutOff),
        ImportError::Damaged { line } => say(Verified::Damaged { line: *line }),
        ImportError::Edited { .. } => say(Verified::Edited),
        ImportError::BadLog { .. }
        | ImportError::Conflict { .. }
        | ImportError::CalledOff
        | ImportError::Tangled { .. } => text::say(LANG, error.say()).to_owned(),
        ImportError::BadEntry { place, fault, .. } => say(Verified::EntryBad {
            place: *place,
            why: &format!("{fault:?}"),
        }),
    }
}

fn entry(record: &SavedText) -> Option<Entry> {
    decode(&record.text).ok()
}

/// Files on the way to become one.
struct Gathering {
    all: Gathered,
    /// Whether one of them, or a part of one, was refused.
    refused: bool,
    /// What is to be known about an erasing.
    erased: Vec<String>,
    /// Invoice numbers that cannot be right.
    numbers: Vec<String>,
    /// Pictures and voice notes of the zips among them, by their digest.
    saved: BTreeMap<String, (Wanted, Vec<u8>)>,
    /// What is to be known about those that are changed or missing, and about what of a rescue file
    /// cannot be read.
    left_out: Vec<String>,
}

fn gather(files: &[PathBuf], as_json: bool) -> Gathering {
    let mut gathering = Gathering {
        all: Gathered::default(),
        refused: false,
        erased: Vec::new(),
        numbers: Vec::new(),
        saved: BTreeMap::new(),
        left_out: Vec::new(),
    };
    for path in files {
        let file = path.display().to_string();
        match gathering.take(path) {
            Ok(()) => {}
            Err(why) => {
                gathering.refused = true;
                tell(&if as_json {
                    json!({ "file": file, "status": "refused", "why": why }).to_string()
                } else {
                    format!("{file}: {}: {why}", say(Verified::Refused))
                });
            }
        }
    }
    gathering
}

impl Gathering {
    /// Takes a file in; a picture that is not what the record names is left out and said, and so is
    /// what cannot be read of a rescue file.
    fn take(&mut self, path: &Path) -> Result<(), String> {
        let source = source::read(path)?;
        let content = source.content()?;
        let incoming = read(&content.text).map_err(|error| why(&error))?;
        self.all.take(&incoming);
        let file = path.display();
        for recorded in incoming.rescue.iter().flat_map(|rescue| rescue.say(LANG)) {
            self.refused = true;
            self.left_out.push(format!("{file}: {recorded}"));
        }
        let Some(held) = content.held else {
            return Ok(());
        };
        self.refused |= !held.changed.is_empty();
        let recorded = source::recorded(&held).into_iter().skip(1);
        self.left_out
            .extend(recorded.map(|recorded| format!("{file}: {recorded}")));
        for (wanted, bytes) in held.there {
            self.saved
                .insert(wanted.sha256.clone(), (wanted, bytes.to_vec()));
        }
        Ok(())
    }

    /// A zip of the file and of every picture that it names and that came.
    fn packed(&self, text: &str, out: &Path) -> Result<Vec<u8>, String> {
        let wanted = bundle::wanted_in(text);
        let saved = wanted.iter().filter_map(|one| self.saved.get(&one.sha256));
        let saved: Vec<(Wanted, Vec<u8>)> = saved.cloned().collect();
        let job = out.with_extension("json");
        let job = job.file_name().unwrap_or_default().to_string_lossy();
        bundle::write(&job, text, &saved).map_err(|error| format!("{error:?}"))
    }

    /// The text of what is made, or why it cannot be.
    fn make(&mut self, make: &Make) -> Result<String, String> {
        if let Make::Erased(begins, besides) = make {
            self.erase(begins, besides)?;
        }
        let unions = self.all.unions();
        let jobs = || unions.iter().filter(|union| union.kind == LogKind::Job);
        match make {
            Make::Union | Make::Erased(..) => {
                let texts = |union: &Union| union.records.iter().map(|r| r.text.clone()).collect();
                let logs = unions.iter().map(|u| (u.kind, u.id.clone(), texts(u)));
                export(&logs.collect::<Vec<_>>()).map_err(|error| error.to_string())
            }
            Make::Calendar => {
                let entries = |union: &Union| fold(union.records.iter().filter_map(entry));
                let sheets: Vec<JobState> = jobs().map(entries).collect();
                calendar(LANG, FORMAT, &sheets).ok_or_else(|| say(Verified::NothingDue))
            }
            Make::Table => {
                let jobs = jobs().map(|union| (&union.id, union.records.as_slice()));
                table(jobs).map_err(|error| error.to_string())
            }
            Make::Invoices => {
                self.numbers = numbers::notes(LANG, &unions);
                let jobs = jobs().map(|union| (&union.id, union.records.as_slice()));
                Ok(invoices(jobs))
            }
            Make::Lines => Ok(lines(unions.iter().flat_map(|union| &union.records))),
        }
    }

    fn erase(&mut self, begins: &str, besides: &[Besides]) -> Result<(), String> {
        let jobs = self.all.jobs(begins);
        let [job] = jobs.as_slice() else {
            return Err(say(Verified::NoSuchJob(begins)));
        };
        let erased = self.all.erase(job, besides);
        let (entries, left) = erased.map_err(|error| format!("{error:?}"))?;
        self.erased.push(say(Verified::Erased {
            entries,
            pseudonym: &pseudonym(job),
        }));
        let texts = left.complaint.iter().chain(&left.notes);
        let texts = texts.map(|text| say(Verified::FreeText(text)));
        self.erased.extend(texts);
        if left.signatures > 0 {
            self.erased.push(say(Verified::Signatures(left.signatures)));
        }
        if !left.photos.is_empty() {
            self.erased.push(say(Verified::Photos(left.photos.len())));
        }
        Ok(())
    }

    /// Writes what was made and says what is to be known about it.
    fn write(&self, made: Result<Vec<u8>, String>, out: &Path, as_json: bool) -> u8 {
        let unions = self.all.unions();
        if unions.is_empty() {
            return 1;
        }
        let written = made.and_then(|bytes| {
            put(out, &bytes).map_err(|why| say(Verified::NotWritten(&why.to_string())))
        });
        if let Err(why) = written {
            eprintln!("{}: {why}", out.display());
            return NOTHING_DONE;
        }
        let entries = unions.iter().map(|union| union.records.len()).sum();
        let mut notes = self.notes(&unions);
        notes.extend(self.left_out.iter().cloned());
        notes.extend(self.numbers.iter().cloned());
        if !self.saved.is_empty() && !is_zip(out) {
            notes.push(say(Verified::PhotosLeftOut(self.saved.len())));
        }
        let logs = unions.len();
        if as_json {
            let file = out.display().to_string();
            let recorded = json!({
                "file": file, "status": "written", "logs": logs, "entries": entries, "notes": notes,
            });
            tell(&recorded.to_string());
        } else {
            let head = say(Verified::Written { logs, entries });
            tell(&format!("{}: {head}", out.display()));
            notes.iter().for_each(|note| tell(note));
        }
        let edited = unions.iter().any(|union| !union.edited.is_empty());
        u8::from(self.refused || edited || !self.all.unreadable.is_empty())
    }

    /// What is to be known about the unions and the erasing.
    fn notes(&self, unions: &[Union]) -> Vec<String> {
        let gaps = self.all.gaps();
        let gaps = gaps.iter().map(|gap| Verified::Gap {
            device: &gap.device,
            from: gap.from,
            to: gap.to,
        });
        let edited = unions.iter().flat_map(|union| &union.edited);
        let edited = edited.map(|id| Verified::EntryTwice(&id.0));
        let unreadable = self.all.unreadable.keys();
        let unreadable = unreadable.map(|id| Verified::EntryUnreadable(&id.0));
        let notes = gaps.chain(edited).chain(unreadable).map(say);
        self.erased.iter().cloned().chain(notes).collect()
    }
}

/// Whether a file is to be a zip, by its ending.
fn is_zip(out: &Path) -> bool {
    out.extension()
        .is_some_and(|ending| ending.eq_ignore_ascii_case("zip"))
}

/// Writes beside and renames, so that a full disk leaves no half file under the name.
fn put(out: &Path, bytes: &[u8]) -> std::io::Result<()> {
    let mut beside = out.as_os_str().to_owned();
    beside.push(".part");
    let beside = PathBuf::from(beside);
    fs::write(&beside, bytes)?;
    fs::rename(&beside, out)
}
