//! The file that leaves the phone: its envelope, and the digests that show whether it was edited.
//!
//! The texts of the entries are carried byte for byte; nothing here interprets a body.

use sha2::{Digest, Sha256};

use crate::exchange::json::{Form, Json, Out, form, parse};
use crate::sorted::Sorted;
use crate::words;

/// The name of the format, in every file.
pub const FORMAT: &str = "hubslate";
/// The version of the envelope that this program writes.
pub const VERSION: u32 = 1;
/// What wrote the file.
pub const MADE_BY: &str = concat!("hubslate ", env!("CARGO_PKG_VERSION"));

words! {
    /// What a log is.
    pub enum LogKind {
        /// One visit to one vehicle.
        Job = "job",
        /// Spec specs that were looked up, by vehicle family.
        SpecLibrary = "spec_library",
        /// The technician's wrenches and gauges.
        VanKit = "van_kit",
        /// What a shop has set for its vans.
        Shop = "shop",
        /// What the shop has of its vans' entries.
        Confirmation = "confirmation",
    }
}

impl LogKind {
    /// What a log is, by its name: only jobs have plain identities.
    pub fn of(log: &str) -> Self {
        match log.split_once(':') {
            Some(("kit", _)) => Self::VanKit,
            Some(("shop", _)) => Self::Shop,
            Some(("confirmations", _)) => Self::Confirmation,
            Some(_) => Self::SpecLibrary,
            None => Self::Job,
        }
    }
}

/// One entry as it is kept, byte for byte.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct SavedText {
    /// Id of the log it belongs to.
    pub log: String,
    /// Its own id.
    pub id: String,
    /// Its text.
    pub text: String,
}

/// The file as it is exported.
pub(super) struct Envelope {
    pub(super) format: String,
    pub(super) version: u32,
    pub(super) made_by: String,
    pub(super) logs: Vec<StoredLog>,
}

/// One log of it.
pub(super) struct StoredLog {
    pub(super) kind: String,
    pub(super) id: String,
    /// The shop whose device made the file, so that those of a chain can be told apart.
    pub(super) shop: Option<String>,
    pub(super) digest: String,
    /// By RFC 8785, so that any program can check it; the first files of version 1 lack it.
    pub(super) canonical: Option<String>,
    pub(super) entries: Vec<Raw>,
}

/// How deep an envelope is taken apart: file, logs, log, entries.
pub(super) const LEVELS: u8 = 4;

form!(Envelope {
    format,
    version,
    made_by,
    logs
});
form!(StoredLog {
    kind,
    id,
    shop,
    digest,
    canonical,
    entries
});

/// JSON that is carried byte for byte.
pub(super) struct Raw(pub(super) String);

impl Form for Raw {
    fn read(json: &Json<'_>) -> Option<Self> {
        Some(Self(json.raw().to_owned()))
    }

    fn write(&self, out: &mut Out) {
        out.0.push_str(&self.0);
    }
}

/// The digest of one entry: SHA-256 of its text in lower-case hex.
///
/// An entry whose body is gone carries the digest of its original, and that stands for it, so that
/// erasing a person changes no digest.
pub fn entry_digest(text: &str) -> String {
    gone(text).map_or_else(|| sha256(text), |(_, original)| original)
}

/// The digest of a log: SHA-256 over the digests of its entries, sorted, each once, one a line.
///
/// It depends on the set of the entries alone, not on their order.
pub fn digest<T: AsRef<str>>(texts: impl IntoIterator<Item = T>) -> String {
    let texts = texts.into_iter();
    digest_of(texts.map(|text| entry_digest(text.as_ref())).collect())
}

/// The same of the digests of its entries.
pub(super) fn digest_of(mut digests: Vec<String>) -> String {
    digests.order();
    digests.dedup();
    sha256(&digests.join("\n"))
}

/// How a body can be gone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Gone {
    /// Erased: it stays gone, wherever the file comes to.
    Erased,
    /// Let go of on one device: whoever has the original keeps it.
    LetGo,
}

/// How the body of an entry is gone, with the digest of the original; nothing where it is there.
pub(super) fn gone(text: &str) -> Option<(Gone, String)> {
    // Nearly every entry is settled by a look; a name may also be written with escapes.
    if !["erased", "let_go", "\\u"]
        .iter()
        .any(|name| text.contains(name))
    {
        return None;
    }
    let json = parse(text).ok()?;
    let (tag, body) = json.find("what").ok()??.tagged()?;
    let gone = match &*tag {
        "erased" => Gone::Erased,
        "let_go" => Gone::LetGo,
        _ => return None,
    };
    let original: String = body.field("sha256")?;
    is_sha256(&original).then_some((gone, original))
}

fn is_sha256(text: &str) -> bool {
    text.len() == 64 && text.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'))
}

fn sha256(text: &str) -> String {
    sha256_hex(text.as_bytes())
}

/// SHA-256 (FIPS 180-4) of bytes, in lowercase hex.
pub fn sha256_hex(bytes: &[u8]) -> String {
    const DIGITS: [char; 16] = [
        '0', '1', '2', '3', '4', '5', '6', '7', '8', '9', 'a', 'b', 'c', 'd', 'e', 'f',
    ];
    let digit = |half: u8| DIGITS.get(usize::from(half)).copied().unwrap_or_default();
    let digest = Sha256::digest(bytes);
    let digits = digest
        .iter()
        .flat_map(|byte| [digit(byte >> 4), digit(byte & 15)]);
    digits.collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_digest_is_the_published_one() {
        // FIPS 180-2, appendix B.1, and the well-known digest of nothing.
        assert_eq!(
            entry_digest("abc"),
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
        );
        assert_eq!(
            digest(Vec::<String>::new()),
            "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"
        );
    }

    #[test]
    fn an_erased_entry_keeps_the_digest_of_its_original() {
        let original = r#"{"v":1,"id":"a","what":{"person":{"field":"name","text":"M. Bell"}}}"#;
        let sha = entry_digest(original);
        let erased = format!(r#"{{"v":1,"id":"a","what":{{"erased":{{"sha256":"{sha}"}}}}}}"#);
        assert_eq!(entry_digest(&erased), sha);
        let let_go = erased.replace("erased", "let_go");
        assert_eq!(gone(&let_go), Some((Gone::LetGo, sha.clone())));
        assert_eq!(entry_digest(&let_go), sha);
        assert_eq!(digest([original, "x"]), digest(["x", erased.as_str()]));
    }
}
