//! An external sort: what finds no room is put down in sorted runs on the disk, and all runs are read
//! side by side.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::fs::{self, File};
use std::io::{self, BufReader, Read, Seek, SeekFrom, Write};
use std::path::PathBuf;
use std::rc::Rc;

/// A run is read in pieces of so many bytes: a thousand runs then take 32 MB.
const PIECE: usize = 32 << 10;

/// What is sorted by: bytes in their order.
type Key = Vec<u8>;

/// Parcels of bytes, each under a key.
pub(super) struct Runs {
    /// How many bytes are held before they are put down.
    room: usize,
    bytes: Vec<u8>,
    parcels: Vec<(Key, usize, usize)>,
    /// Where runs are put down.
    path: PathBuf,
    file: Option<Rc<RefCell<File>>>,
    /// From where to where each run goes.
    runs: Vec<(u64, u64)>,
}

impl Runs {
    /// No parcel; the file at `path` is made where `room` is not enough, and taken away at the end.
    pub(super) fn new(path: PathBuf, room: usize) -> Self {
        Self {
            room,
            bytes: Vec::new(),
            parcels: Vec::new(),
            path,
            file: None,
            runs: Vec::new(),
        }
    }

    /// Takes a parcel.
    ///
    /// # Errors
    /// What the disk refused.
    pub(super) fn take(&mut self, key: Key, parcel: &[u8]) -> io::Result<()> {
        if self.room < self.bytes.len() + parcel.len() {
            self.put_down()?;
        }
        let from = self.bytes.len();
        self.bytes.extend_from_slice(parcel);
        self.parcels.push((key, from, self.bytes.len()));
        Ok(())
    }

    /// How many runs lie on the disk.
    #[cfg(test)]
    pub(super) const fn on_disk(&self) -> usize {
        self.runs.len()
    }

    /// Writes what is held as one run.
    fn put_down(&mut self) -> io::Result<()> {
        if self.parcels.is_empty() {
            return Ok(());
        }
        let file = match &self.file {
            Some(file) => Rc::clone(file),
            None => {
                let mut open = fs::OpenOptions::new();
                let open = open.read(true).write(true).create(true).truncate(true);
                let file = Rc::new(RefCell::new(open.open(&self.path)?));
                self.file = Some(Rc::clone(&file));
                file
            }
        };
        self.parcels.sort();
        let mut file = file.borrow_mut();
        let from = file.seek(SeekFrom::End(0))?;
        let mut out = io::BufWriter::new(&mut *file);
        for (key, begin, end) in self.parcels.drain(..) {
            let parcel = self.bytes.get(begin..end).unwrap_or_default();
            put(&mut out, &key)?;
            put(&mut out, parcel)?;
        }
        out.flush()?;
        drop(out);
        self.bytes.clear();
        self.runs.push((from, file.stream_position()?));
        Ok(())
    }

    /// All parcels in the order of their keys; those of one key in no order that means anything.
    ///
    /// # Errors
    /// What the disk refused.
    pub(super) fn sorted(&mut self) -> io::Result<Sorted> {
        let mut readers: Vec<Box<dyn Read>> = Vec::new();
        if let Some(file) = self.file.clone() {
            self.put_down()?;
            for (at, end) in &self.runs {
                let run = Run {
                    file: Rc::clone(&file),
                    at: *at,
                    end: *end,
                };
                readers.push(Box::new(BufReader::with_capacity(PIECE, run)));
            }
        } else {
            self.parcels.sort();
            let mut all = Vec::new();
            for (key, begin, end) in self.parcels.drain(..) {
                put(&mut all, &key)?;
                put(&mut all, self.bytes.get(begin..end).unwrap_or_default())?;
            }
            self.bytes = Vec::new();
            readers.push(Box::new(io::Cursor::new(all)));
        }
        let mut sorted = Sorted {
            readers,
            next: BTreeMap::new(),
        };
        for run in 0..sorted.readers.len() {
            sorted.read(run)?;
        }
        Ok(sorted)
    }
}

impl Drop for Runs {
    fn drop(&mut self) {
        if self.file.take().is_some() {
            // What cannot be taken away is no more than a file too many.
            let _ = fs::remove_file(&self.path);
        }
    }
}

/// One run, read at its own place in the file that all share.
struct Run {
    file: Rc<RefCell<File>>,
    at: u64,
    end: u64,
}

impl Read for Run {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        let left = usize::try_from(self.end - self.at).unwrap_or(usize::MAX);
        let most = into.len().min(left);
        let mut file = self.file.borrow_mut();
        file.seek(SeekFrom::Start(self.at))?;
        let read = file.read(into.get_mut(..most).unwrap_or_default())?;
        self.at += read as u64;
        Ok(read)
    }
}

/// The parcels of all runs.
pub(super) struct Sorted {
    readers: Vec<Box<dyn Read>>,
    /// The next parcel of each run.
    next: BTreeMap<(Key, usize), Vec<u8>>,
}

impl Sorted {
    fn read(&mut self, run: usize) -> io::Result<()> {
        let Some(reader) = self.readers.get_mut(run) else {
            return Ok(());
        };
        if let Some(key) = get(reader)? {
            let parcel = get(reader)?.ok_or(io::ErrorKind::UnexpectedEof)?;
            self.next.insert((key, run), parcel);
        }
        Ok(())
    }

    /// The next key with all its parcels.
    ///
    /// # Errors
    /// What the disk refused.
    pub(super) fn next(&mut self) -> io::Result<Option<(Key, Vec<Vec<u8>>)>> {
        let Some(((key, _), _)) = self.next.first_key_value() else {
            return Ok(None);
        };
        let (key, mut parcels) = (key.clone(), Vec::new());
        while let Some(first) = self.next.first_entry().filter(|it| it.key().0 == key) {
            let ((_, run), parcel) = first.remove_entry();
            parcels.push(parcel);
            self.read(run)?;
        }
        Ok(Some((key, parcels)))
    }
}

/// Bytes with their length before them.
pub(super) fn put(out: &mut impl Write, bytes: &[u8]) -> io::Result<()> {
    let length = u32::try_from(bytes.len()).map_err(|_| io::ErrorKind::FileTooLarge)?;
    out.write_all(&length.to_le_bytes())?;
    out.write_all(bytes)
}

/// The same read back; nothing at the end.
pub(super) fn get(from: &mut impl Read) -> io::Result<Option<Vec<u8>>> {
    let mut length = [0; 4];
    let mut there = 0;
    while let Some(rest) = length.get_mut(there..).filter(|rest| !rest.is_empty()) {
        match from.read(rest)? {
            0 if there == 0 => return Ok(None),
            0 => return Err(io::ErrorKind::UnexpectedEof.into()),
            read => there += read,
        }
    }
    let mut bytes = vec![0; u32::from_le_bytes(length) as usize];
    from.read_exact(&mut bytes)?;
    Ok(Some(bytes))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn path(name: &str) -> PathBuf {
        let pid = std::process::id();
        std::env::temp_dir().join(format!("hubslate-runs-{name}-{pid}"))
    }

    /// Keys and parcels as a standard tree has them, those of one key sorted.
    type All = BTreeMap<Key, Vec<Vec<u8>>>;

    fn sorted(given: &[(Key, Vec<u8>)], room: usize, path: PathBuf) -> (All, Vec<Key>, usize) {
        let mut runs = Runs::new(path.clone(), room);
        for (key, parcel) in given {
            runs.take(key.clone(), parcel).unwrap();
        }
        let mut sorted = runs.sorted().unwrap();
        let (mut all, mut keys) = (All::new(), Vec::new());
        while let Some((key, mut parcels)) = sorted.next().unwrap() {
            parcels.sort();
            keys.push(key.clone());
            all.insert(key, parcels);
        }
        let on_disk = runs.on_disk();
        drop((sorted, runs));
        assert!(!path.exists());
        (all, keys, on_disk)
    }

    proptest! {
        #[test]
        fn whatever_the_room_all_comes_back_in_order(
            given in prop::collection::vec((prop::collection::vec(0_u8..4, 0..3), prop::collection::vec(any::<u8>(), 0..40)), 0..60),
            room in 0_usize..400,
        ) {
            let mut wanted = All::new();
            for (key, parcel) in &given {
                wanted.entry(key.clone()).or_default().push(parcel.clone());
            }
            wanted.values_mut().for_each(|parcels| parcels.sort());
            let (all, keys, _) = sorted(&given, room, path("any"));
            prop_assert_eq!(&all, &wanted);
            prop_assert!(keys.is_sorted());
            prop_assert_eq!(keys.len(), wanted.len());
        }
    }

    #[test]
    fn what_finds_room_stays_off_the_disk() {
        let given: Vec<(Key, Vec<u8>)> = (0..9).map(|it| (vec![9 - it], vec![it; 10])).collect();
        assert_eq!(sorted(&given, 90, path("all")).2, 0);
        assert_eq!(sorted(&given, 30, path("some")).2, 3);
        assert_eq!(sorted(&given, 5, path("none")).2, 9);
    }
}
