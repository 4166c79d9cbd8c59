//! A file with its pictures and voice notes: one zip with the job's file and the bytes beside it.
//!
//! The bytes are stored as they are: a JPEG and a voice note do not get smaller. Whatever comes in
//! is held against the digest that the record names; names in a zip are trusted for nothing.

use std::io::Write;
#[cfg(not(target_arch = "wasm32"))]
use std::io::{self, Read};

use rawzip::{CompressionMethod, DataDescriptorOutput, ZipArchive, ZipArchiveWriter};

use crate::exchange::envelope::sha256_hex;
use crate::exchange::import::open as open_file;
use crate::exchange::wire::decode;
use crate::job::entry::{Entry, Event};
use crate::map::{OrderedMap, OrderedSet};
use crate::trade::wheel_end::StepKey;

/// The media type of such a file.
pub const MIME: &str = "application/zip";

/// Why a zip is refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BundleError {
    /// No whole zip.
    NotZip,
    /// Something in it is packed otherwise than stored.
    Packed,
    /// There is no file of a job in it.
    NoJob,
    /// Its pieces come to more bytes than it has: some lie on one another, as in no zip that a
    /// program writes.
    Overlap,
    /// It could not be written, for want of memory.
    NotWritten,
}

/// Bytes that the record names.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Wanted {
    /// Their SHA-256, in hex.
    pub sha256: String,
    /// Their media type.
    pub mime: String,
    /// The step they belong to.
    pub step: StepKey,
}

/// What is in a zip.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Opened<'a> {
    /// The job's file.
    pub text: String,
    /// Everything else, by its name.
    pub pieces: Vec<(String, &'a [u8])>,
}

/// How the bytes of a zip stand to what the record names.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Held<'a> {
    /// Named and whole.
    pub there: Vec<(Wanted, &'a [u8])>,
    /// Under the name of one that is wanted, and not what its digest says; left out.
    pub changed: Vec<String>,
    /// Named and in this zip under no name.
    pub missing: Vec<Wanted>,
}

/// The pictures and voice notes that these entries name, each once, struck ones too: what was taken
/// back stays in the record.
pub fn wanted<'a>(entries: impl IntoIterator<Item = &'a Entry>) -> Vec<Wanted> {
    let mut all = OrderedMap::new();
    for wanted in entries.into_iter().filter_map(|entry| of(&entry.what)) {
        all.or_make(wanted.sha256.clone(), || wanted);
    }
    all.into_values().collect()
}

/// The same of a job's file, whether or not it holds; nothing for a text that is none.
pub fn wanted_in(text: &str) -> Vec<Wanted> {
    let logs = open_file(text).map(|(envelope, _)| envelope.logs);
    let logs = logs.unwrap_or_default();
    let texts = logs.iter().flat_map(|log| &log.entries);
    let entries: Vec<Entry> = texts.filter_map(|raw| decode(&raw.0).ok()).collect();
    wanted(&entries)
}

fn of(what: &Event) -> Option<Wanted> {
    let named = what.named()?;
    Some(Wanted {
        sha256: named.sha256.to_owned(),
        mime: named.mime.to_owned(),
        step: named.step,
    })
}

/// The name under which bytes stand in a zip: by kind, by digest, with the ending of their type.
pub fn name(wanted: &Wanted) -> String {
    let kind = wanted.mime.split(';').next().unwrap_or_default();
    let ending = match kind {
        "image/jpeg" => "jpg",
        "image/png" => "png",
        "audio/webm" => "webm",
        "audio/mp4" => "m4a",
        "audio/ogg" => "ogg",
        _ => "bin",
    };
    let folder = if kind.starts_with("audio/") {
        "voice"
    } else {
        "pictures"
    };
    format!("{folder}/{}.{ending}", wanted.sha256)
}

/// The zip of a job's file under its name, and of these bytes.
///
/// # Errors
/// [`BundleError::NotWritten`].
pub fn write(job: &str, text: &str, saved: &[(Wanted, Vec<u8>)]) -> Result<Vec<u8>, BundleError> {
    let mut zip = ZipArchiveWriter::new(Vec::new());
    store(&mut zip, job, text.as_bytes())?;
    for (wanted, bytes) in saved {
        store(&mut zip, &name(wanted), bytes)?;
    }
    zip.finish().map_err(|_| BundleError::NotWritten)
}

/// The same of a file of any length, with the bytes beside it one after the other.
///
/// # Errors
/// What the disk refused.
#[cfg(not(target_arch = "wasm32"))]
pub fn write_to(
    out: impl Write,
    job: &str,
    text: &mut impl Read,
    saved: impl Iterator<Item = io::Result<(Wanted, Vec<u8>)>>,
) -> io::Result<()> {
    let mut zip = ZipArchiveWriter::new(out);
    pour(&mut zip, job, text)?;
    for one in saved {
        let (wanted, bytes) = one?;
        pour(&mut zip, &name(&wanted), &mut bytes.as_slice())?;
    }
    zip.finish().map_err(io::Error::other)?.flush()
}

#[cfg(not(target_arch = "wasm32"))]
fn pour(
    zip: &mut ZipArchiveWriter<impl Write>,
    name: &str,
    from: &mut impl Read,
) -> io::Result<()> {
    const PIECE: usize = 64 << 10;
    let (mut entry, _) = zip.new_file(name).start().map_err(io::Error::other)?;
    let (mut sum, mut size, mut piece) = (u32::MAX, 0, vec![0; PIECE]);
    loop {
        let read = from.read(&mut piece)?;
        let bytes = piece.get(..read).unwrap_or_default();
        if bytes.is_empty() {
            break;
        }
        entry.write_all(bytes)?;
        sum = more_crc32(sum, bytes);
        size += read as u64;
    }
    let descriptor = DataDescriptorOutput::new(!sum, size);
    entry.finish(descriptor).map_err(io::Error::other)?;
    Ok(())
}

fn store(zip: &mut ZipArchiveWriter<Vec<u8>>, name: &str, bytes: &[u8]) -> Result<(), BundleError> {
    let broken = |_| BundleError::NotWritten;
    let (mut entry, _) = zip.new_file(name).start().map_err(broken)?;
    entry
        .write_all(bytes)
        .map_err(|_| BundleError::NotWritten)?;
    let size = u64::try_from(bytes.len()).map_err(|_| BundleError::NotWritten)?;
    let descriptor = DataDescriptorOutput::new(crc32(bytes), size);
    entry.finish(descriptor).map_err(broken)?;
    Ok(())
}

/// The check sum of a zip's piece, half a byte at a time: the library's tables cannot be packed, and
/// are a fiftieth of what a phone loads.
///
/// # Source
/// CRC-32, APPNOTE.TXT of the format, 4.4.7.
fn crc32(bytes: &[u8]) -> u32 {
    !more_crc32(u32::MAX, bytes)
}

fn more_crc32(before: u32, bytes: &[u8]) -> u32 {
    let half = |sum: u32| (sum >> 4) ^ HALVES.get(sum as usize % 16).copied().unwrap_or(0);
    let sum = |sum, byte: &u8| half(half(sum ^ u32::from(*byte)));
    bytes.iter().fold(before, sum)
}

/// What each half of a byte leaves, after its four steps over the polynomial.
#[rustfmt::skip]
const HALVES: [u32; 16] = [
    0x0000_0000, 0x1db7_1064, 0x3b6e_20c8, 0x26d9_30ac, 0x76dc_4190, 0x6b6b_51f4, 0x4db2_6158,
    0x5005_713c, 0xedb8_8320, 0xf00f_9344, 0xd6d6_a3e8, 0xcb61_b38c, 0x9b64_c2b0, 0x86d3_d2d4,
    0xa00a_e278, 0xbdbd_f21c,
];

/// Whether a file begins as a zip does (APPNOTE.TXT of the format, 4.3.7).
pub fn is_zip(bytes: &[u8]) -> bool {
    bytes.starts_with(b"PK\x03\x04")
}

/// Opens a zip; nothing in it is believed yet.
///
/// # Errors
/// [`BundleError`] says why it is refused as a whole.
pub fn open(bytes: &[u8]) -> Result<Opened<'_>, BundleError> {
    let broken = |_| BundleError::NotZip;
    let zip = ZipArchive::from_slice(bytes).map_err(broken)?;
    let mut entries = zip.entries();
    let (mut text, mut pieces) = (None, Vec::new());
    let mut left = bytes.len();
    while let Some(entry) = entries.next_entry().map_err(broken)? {
        let name = String::from_utf8_lossy(entry.file_path().as_ref()).into_owned();
        if entry.is_dir() {
            continue;
        }
        if entry.compression_method() != CompressionMethod::STORE {
            return Err(BundleError::Packed);
        }
        let found = zip.get_entry(entry.wayfinder()).map_err(broken)?;
        let (from, to) = found.compressed_data_range();
        let piece = slice(bytes, from, to).ok_or(BundleError::NotZip)?;
        left = left.checked_sub(piece.len()).ok_or(BundleError::Overlap)?;
        if text.is_none() && name.ends_with(".json") {
            let job = std::str::from_utf8(piece).map_err(|_| BundleError::NoJob)?;
            text = Some(job.to_owned());
        } else {
            pieces.push((name, piece));
        }
    }
    let text = text.ok_or(BundleError::NoJob)?;
    Ok(Opened { text, pieces })
}

fn slice(bytes: &[u8], from: u64, to: u64) -> Option<&[u8]> {
    bytes.get(usize::try_from(from).ok()?..usize::try_from(to).ok()?)
}

/// Holds what came against what the record names. What it does not name is left alone.
pub fn held<'a>(wanted: &[Wanted], pieces: &[(String, &'a [u8])]) -> Held<'a> {
    let mut held = Held::default();
    let mut seen = OrderedSet::new();
    let mut named = OrderedSet::new();
    let by_digest: OrderedMap<&[u8], &Wanted> =
        OrderedMap::from_iter(wanted.iter().map(|one| (one.sha256.as_bytes(), one)));
    for (name, bytes) in pieces {
        let digest = sha256_hex(bytes);
        let mut digests_in_name = name.as_bytes().windows(digest.len());
        if let Some(one) = by_digest.get(digest.as_bytes()) {
            if seen.insert(digest) {
                held.there.push(((*one).clone(), *bytes));
            }
        } else if let Some(one) = digests_in_name.find_map(|part| by_digest.get(part)) {
            named.insert(one.sha256.clone());
            held.changed.push(name.clone());
        }
    }
    let gone = |one: &&Wanted| !seen.contains(&one.sha256) && !named.contains(&one.sha256);
    held.missing = wanted.iter().filter(gone).cloned().collect();
    held
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn the_check_sum_is_the_library_s(bytes in prop::collection::vec(any::<u8>(), 0..300)) {
            prop_assert_eq!(crc32(&bytes), rawzip::crc32(&bytes));
        }
    }

    #[test]
    fn the_check_sum_of_nine_digits_is_as_published() {
        // The check value of CRC-32 in catalogs of such sums; from memory.
        assert_eq!(crc32(b"123456789"), 0xcbf4_3926);
    }
}
