//! What a picture shows, in a few words: those that hold.

use crate::job::entry::{Caption, Event};
use crate::job::key::Key;
use crate::job::sheet::JobState;
use crate::trade::wheel_end::Phase;

pub use crate::trade::wheel_end::CaptionWord;

/// Whether hands are clean where the job stands, so that a caption may be typed: before the car
/// is touched, after it was handed over, and when nothing comes next.
pub const fn hands_are_clean(next: Option<Phase>) -> bool {
    matches!(
        next,
        None | Some(Phase::Pack | Phase::HandOver | Phase::LookBack)
    )
}

/// What a picture shows, as it was last said; its step's own caption where nothing was said.
pub fn caption<'a>(sheet: &'a JobState, sha256: &str) -> &'a Caption {
    let said = sheet.holds(&Key::Caption(sha256.to_owned()));
    match said.map(|entry| &entry.what) {
        Some(Event::Captioned(said)) => &said.caption,
        _ => &Caption::Step,
    }
}
