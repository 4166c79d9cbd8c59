//! What a file would change on this phone: a union of entries, decided by id and digest alone.
//!
//! Works on entries of every kind, unknown ones too, since it never looks into a body but for the
//! mark of an erasing.

use std::collections::BTreeMap;

use crate::exchange::canonical::canonical_entry;
use crate::exchange::envelope::{KeptText, entry_digest, erased};
use crate::exchange::wire::decode;
use crate::job::entry::{EntryId, What};

/// What is to be done so that this phone has all that came.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Merge {
    /// New here, by log and id.
    pub add: Vec<KeptText>,
    /// Here with their body, erased in what came: erasing a person wins.
    pub replace: Vec<KeptText>,
    /// How many came that are here already, or were erased here.
    pub same: usize,
    /// Two texts with one id that are not the same entry; what was here is kept, and it is said.
    pub edited: Vec<EntryId>,
}

/// What `incoming` would change in `existing`.
///
/// Merging twice changes nothing more; the order of what came does not matter.
pub fn merge(existing: &[KeptText], incoming: &[KeptText]) -> Merge {
    let here: BTreeMap<Key, &KeptText> = existing
        .iter()
        .map(|record| (key(record), record))
        .collect();
    let mut came: BTreeMap<Key, Vec<&KeptText>> = BTreeMap::new();
    for record in incoming {
        came.entry(key(record)).or_default().push(record);
    }
    let mut merge = Merge::default();
    for (key, records) in came {
        settle(&mut merge, here.get(&key).copied(), records);
    }
    merge
}

type Key<'a> = (&'a str, &'a str);

fn key(record: &KeptText) -> Key<'_> {
    (&record.log, &record.id)
}

fn is_personal(text: &str) -> bool {
    decode(text).is_ok_and(|entry| matches!(entry.what, What::Person(..)))
}

/// Whether two texts are one entry: one of them may be erased, or laid out anew.
fn is_same(kept: &str, other: &str) -> bool {
    if kept == other || entry_digest(kept) == entry_digest(other) {
        return true;
    }
    let canonical = canonical_entry(kept);
    canonical.is_some() && canonical == canonical_entry(other)
}

/// Settles all that came with one id.
fn settle(merge: &mut Merge, here: Option<&KeptText>, mut came: Vec<&KeptText>) {
    // Erased texts first, then by their bytes: the choice does not depend on the order they came.
    came.sort_by_key(|record| (erased(&record.text).is_none(), &record.text));
    let body = |record: &&&KeptText| erased(&record.text).is_none() && !is_personal(&record.text);
    let kept = here
        .or_else(|| came.iter().find(body).copied())
        .or_else(|| came.first().copied());
    let Some(kept) = kept else { return };
    if came.iter().any(|other| !is_same(&kept.text, &other.text)) {
        merge.edited.push(EntryId(kept.id.clone()));
    }
    let fits = came.iter().find(|r| is_same(&kept.text, &r.text));
    match (here, fits) {
        (None, _) => merge.add.push(kept.clone()),
        (Some(_), None) => {}
        (Some(here), Some(fits)) => {
            match (erased(&here.text), erased(&fits.text)) {
                (None, Some(_)) if is_personal(&here.text) => merge.replace.push((*fits).clone()),
                // Only a person's entries can be erased: a forged one must not empty a record.
                (None, Some(_)) => merge.edited.push(EntryId(here.id.clone())),
                _ => merge.same += 1,
            }
        }
    }
}
