//! Files on the way to become one.

use std::collections::BTreeMap;
use std::fs::File;
use std::io::{self, Read, Seek, SeekFrom};
use std::path::{Path, PathBuf};

use hubslate::exchange::bundle::{self, Wanted};
use hubslate::exchange::gather::Gathered;
use hubslate::exchange::pieces::{InOneGo, in_one_go};
use hubslate::exchange::{ImportError, Sliced, read};
use hubslate::text::Verified;
use serde_json::json;

use super::{LANG, say, source, tell, why};

/// So many bytes of a file are looked at first; they hold all that stands before its logs.
const FIRST: usize = 4 << 10;
/// So many are read at a time.
const SLICE: usize = 1 << 20;

/// Files on the way to become one.
pub struct Gathering {
    pub all: Gathered,
    /// Whether one of them, or a part of one, was refused.
    pub refused: bool,
    /// Where photos and voice notes lie in the zips among them, by their digest.
    pub beside: BTreeMap<String, Beside>,
    /// What is to be known about those that are changed or missing, and about what of a rescue file
    /// cannot be read.
    pub left_out: Vec<String>,
}

/// A photo or a voice note in a zip.
pub struct Beside {
    pub wanted: Wanted,
    zip: PathBuf,
    from: usize,
    to: usize,
}

impl Beside {
    /// Its bytes.
    ///
    /// # Errors
    /// What the disk refused; that the zip was changed meanwhile is seen by the digest.
    pub fn bytes(&self) -> io::Result<Vec<u8>> {
        let mut zip = File::open(&self.zip)?;
        zip.seek(SeekFrom::Start(self.from as u64))?;
        let mut bytes = vec![0; self.to - self.from];
        zip.read_exact(&mut bytes)?;
        match hubslate::exchange::sha256_hex(&bytes) == self.wanted.sha256 {
            true => Ok(bytes),
            false => Err(io::ErrorKind::InvalidData.into()),
        }
    }
}

impl Gathering {
    /// Takes the files in, one after the other; what finds no room lies beside `out`.
    pub fn of(files: &[PathBuf], out: &Path, as_json: bool) -> Self {
        let mut gathering = Self {
            all: Gathered::beside(out),
            refused: false,
            beside: BTreeMap::new(),
            left_out: Vec::new(),
        };
        for path in files {
            let file = path.display().to_string();
            if let Err(why) = gathering.take(path) {
                gathering.all.refuse();
                gathering.refused = true;
                tell(&if as_json {
                    json!({ "file": file, "status": "refused", "why": why }).to_string()
                } else {
                    format!("{file}: {}: {why}", say(Verified::Refused))
                });
            }
        }
        gathering
    }

    /// Takes a file in; a photo that is not what the record names is left out and said, and so is
    /// what cannot be read of a rescue file.
    fn take(&mut self, path: &Path) -> Result<(), String> {
        let mut file = File::open(path).map_err(not_read)?;
        let mut first = Vec::new();
        let head = Read::by_ref(&mut file).take(FIRST as u64);
        { head }.read_to_end(&mut first).map_err(not_read)?;
        if bundle::is_zip(&first) {
            return self.take_zip(path);
        }
        if let Some(sliced) = Sliced::begin(&first)
            && self.take_slices(sliced, &mut file)?
        {
            self.all.keep();
            return Ok(());
        }
        let source = source::read(path)?;
        self.take_whole(path, &source.content()?.text)
    }

    /// Takes the logs of a file as they come; false where it must be read whole.
    fn take_slices(&mut self, mut sliced: Sliced, file: &mut File) -> Result<bool, String> {
        let refused = |error: ImportError| why(&error);
        let mut slice = vec![0; SLICE];
        loop {
            while let Some(log) = in_one_go(sliced.next(&InOneGo)).map_err(refused)? {
                self.all.take_log(&log).map_err(not_put_down)?;
            }
            let read = file.read(&mut slice).map_err(not_read)?;
            if read == 0 {
                break;
            }
            sliced.push(slice.get(..read).unwrap_or_default());
        }
        sliced.end().map_err(refused)?;
        if sliced.has_one_twice() {
            self.all.refuse();
        }
        Ok(!sliced.has_one_twice())
    }

    fn take_whole(&mut self, path: &Path, text: &str) -> Result<(), String> {
        let incoming = read(text).map_err(|error| why(&error))?;
        self.all.take(&incoming).map_err(not_put_down)?;
        let file = path.display();
        for recorded in incoming.rescue.iter().flat_map(|rescue| rescue.say(LANG)) {
            self.refused = true;
            self.left_out.push(format!("{file}: {recorded}"));
        }
        Ok(())
    }

    /// A zip is in memory while it is looked at; of its photos the places are noted.
    fn take_zip(&mut self, path: &Path) -> Result<(), String> {
        let source = source::read(path)?;
        let content = source.content()?;
        self.take_whole(path, &content.text)?;
        let Some(held) = content.held else {
            return Ok(());
        };
        self.refused |= !held.changed.is_empty();
        let file = path.display();
        let recorded = source::recorded(&held).into_iter().skip(1);
        self.left_out
            .extend(recorded.map(|recorded| format!("{file}: {recorded}")));
        for (wanted, bytes) in held.there {
            let from = source.place_of(bytes);
            let beside = Beside {
                zip: path.to_owned(),
                from,
                to: from + bytes.len(),
                wanted,
            };
            self.beside.insert(beside.wanted.sha256.clone(), beside);
        }
        Ok(())
    }
}

fn not_read(why: io::Error) -> String {
    say(Verified::NotRead(&why.to_string()))
}

fn not_put_down(why: io::Error) -> String {
    say(Verified::NotWritten(&why.to_string()))
}
