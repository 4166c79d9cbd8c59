//! What a file would change on this phone: a union of entries, decided by id and digest alone.
//!
//! Works on entries of every kind, unknown ones too, since it never looks into a body but for the
//! mark of an erasing.

use crate::exchange::canonical::canonical_entry;
use crate::exchange::envelope::{Gone, SavedText, entry_digest, gone};
use crate::exchange::erase;
use crate::exchange::wire::decode;
use crate::job::entry::EntryId;
use crate::map::OrderedMap;
use crate::sorted::Sorted;

/// What is to be done so that this phone has all that came.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Merge {
    /// New here, by log and id.
    pub add: Vec<SavedText>,
    /// Here with their body, erased in what came: erasing a person wins. Or let go of here, and
    /// there with their body.
    pub replace: Vec<SavedText>,
    /// How many came that are here already, or were erased here.
    pub same: usize,
    /// Two texts with one id that are not the same entry; what was here is kept, and it is said.
    pub edited: Vec<EntryId>,
}

/// What `incoming` would change in `existing`.
///
/// Merging twice changes nothing more; the order of what came does not matter.
pub fn merge(existing: &[SavedText], incoming: &[SavedText]) -> Merge {
    let here: OrderedMap<Key, &SavedText> =
        OrderedMap::from_iter(existing.iter().map(|record| (key(record), record)));
    let mut came: OrderedMap<Key, Vec<&SavedText>> = OrderedMap::new();
    for record in incoming {
        came.or_default(key(record)).push(record);
    }
    let mut merge = Merge::default();
    for (key, records) in came {
        settle(&mut merge, here.get(&key).copied(), records);
    }
    merge
}

type Key<'a> = (&'a str, &'a str);

fn key(record: &SavedText) -> Key<'_> {
    (&record.log, &record.id)
}

/// Whether an entry may be emptied by what another device did to it.
fn is_personal(text: &str) -> bool {
    decode(text).is_ok_and(|entry| erase::is_personal(&entry.what))
}

/// Whether two texts are one entry: one of them may be emptied, or laid out again.
fn is_same(saved: &str, other: &str) -> bool {
    if saved == other || entry_digest(saved) == entry_digest(other) {
        return true;
    }
    let canonical = canonical_entry(saved);
    canonical.is_some() && canonical == canonical_entry(other)
}

/// Of several forms of one entry the lowest stands: erased, then the original, then what a device
/// let go of.
fn rank(record: &SavedText) -> u8 {
    match gone(&record.text) {
        Some((Gone::Erased, _)) => 0,
        None => 1,
        Some((Gone::LetGo, _)) => 2,
    }
}

/// Settles all that came with one id.
fn settle(merge: &mut Merge, here: Option<&SavedText>, mut came: Vec<&SavedText>) {
    // Nearly every entry of a file is new here or here already; then nothing is to be settled.
    match (here, came.as_slice()) {
        (None, [new]) => return merge.add.push((*new).clone()),
        (Some(here), came) if came.iter().all(|one| one.text == here.text) => {
            merge.same += 1;
            return;
        }
        _ => {}
    }
    // By rank, then by their bytes: the choice does not depend on the order they came.
    came.order_by(|a, b| (rank(a), &a.text).cmp(&(rank(b), &b.text)));
    // Only what may name a person can be erased: a forged file must not empty a finding.
    let body = |record: &&&SavedText| rank(record) == 1 && !is_personal(&record.text);
    let first = came.iter().find(body).or(came.first()).copied();
    let Some(saved) = here.or(first) else { return };
    if came.iter().any(|other| !is_same(&saved.text, &other.text)) {
        merge.edited.push(EntryId(saved.id.clone()));
    }
    let same = || came.iter().filter(|r| is_same(&saved.text, &r.text));
    let fits = same().find(body).or(same().next()).copied();
    match (here, fits) {
        (None, _) => merge.add.push(saved.clone()),
        (Some(_), None) => {}
        (Some(here), Some(fits)) => {
            // A finding that is here with its body is not settled by another copy of it: an
            // emptied one that came as well is named.
            let emptied = rank(here) == 1 && same().any(|r| rank(r) == 0);
            match (rank(here), rank(fits)) {
                (1, 0) if is_personal(&here.text) => merge.replace.push(fits.clone()),
                _ if emptied => merge.edited.push(EntryId(here.id.clone())),
                (2, 0 | 1) => merge.replace.push(fits.clone()),
                _ => merge.same += 1,
            }
        }
    }
}
