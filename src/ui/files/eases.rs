//! Whether a file would make an open job read safer than it does.

use crate::exchange::SavedText;
use crate::exchange::wire::decode;
use crate::job::eased::{Eased, eased};
use crate::job::entry::{Entry, PersonField};
use crate::job::{JobState, fold};

/// An open job that a file would ease.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Eases {
    /// The plate, where it is known, else the job's id.
    pub job: String,
    /// In which ways.
    pub eased: Eased,
}

/// What `add` makes of the job that is `known` here; nothing where it reads no safer, nor where this
/// `device` never worked on it: who gathers the files of others is not at the car.
pub(super) fn eases(
    device: &str,
    log: &str,
    known: &[SavedText],
    add: &[SavedText],
) -> Option<Eases> {
    if known.is_empty() || add.is_empty() {
        return None;
    }
    let here = sheet(known.iter());
    let own = |entry: &Entry| !device.is_empty() && entry.device.starts_with(device);
    if !here.entries().iter().any(own) {
        return None;
    }
    let eased = eased(&here, &sheet(known.iter().chain(add)))?;
    let plate = here.person(PersonField::Plate);
    Some(Eases {
        job: plate.unwrap_or(log).to_owned(),
        eased,
    })
}

fn sheet<'a>(saved: impl Iterator<Item = &'a SavedText>) -> JobState {
    let entries: Vec<Entry> = saved.filter_map(|saved| decode(&saved.text).ok()).collect();
    fold(entries)
}
