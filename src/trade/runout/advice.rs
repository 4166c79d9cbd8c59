//! What comes next: read more, clean, index, a corrected plate, or a new part.
//!
//! The order is common practice, no source: what costs nothing comes first, and a bent part
//! cannot be turned straight.

use super::index::Position;
use super::limit::Surface;
use super::shape::Form;
use crate::trade::play::conformity::Judged;
use crate::trade::play::uncertainty::Guarded;
use crate::units::Length;
use crate::words;

words! {
    /// The next step at a face that turns.
    pub enum Next {
        /// No limit was looked up: nothing can be said of it.
        LookUp = "look_up",
        /// The scatter of so few readings hides which side of the limit it is on.
        ReadMore = "read_more",
        /// Within its limit: go on.
        GoOn = "go_on",
        /// Clean both faces to bare metal and read again.
        Clean = "clean",
        /// Turn the rotor by about half the studs and read again, then every position is known.
        ReadTurned = "read_turned",
        /// Put the rotor on its best stud.
        Index = "index",
        /// A corrected plate, or the rotor machined on the hub: no stud takes enough away.
        Plate = "plate",
        /// The part itself is bent or worn.
        NewPart = "new_part",
    }
}

/// What is known when the next step is asked for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Known {
    /// What turns.
    pub surface: Surface,
    /// The shape it has.
    pub form: Form,
    /// What its limit says; `None` if none was looked up.
    pub judged: Option<Judged>,
    /// The limit itself, for what is to be expected after indexing.
    pub limit: Option<Length>,
    /// Whether reading more places would tell it better.
    pub more_would_tell: bool,
    /// Whether both faces were cleaned to bare metal before this was read.
    pub cleaned: bool,
    /// How far the needle would still move with the wobble gone.
    pub without_wobble: Length,
    /// The position that is best, and the stud the rotor sits on now, once both are known.
    pub best: Option<(Position, u8)>,
}

/// The next step.
///
/// Nothing is done to a part on the word of scatter: what is not proven and would be told better
/// by more readings is read again first, clean.
pub fn next(known: &Known) -> Next {
    let (Some(judged), Some(limit)) = (known.judged, known.limit) else {
        return Next::LookUp;
    };
    let is_proven = matches!(judged.result, Guarded::ProvenIn | Guarded::ProvenOut);
    let is_open = !is_proven && known.more_would_tell;
    if !judged.is_over() && !is_open {
        return Next::GoOn;
    }
    let of_the_face = matches!(known.form, Form::Bump | Form::Hollow | Form::Uneven);
    if !known.cleaned || (of_the_face && judged.is_over()) {
        return Next::Clean;
    }
    if is_open {
        return Next::ReadMore;
    }
    if known.surface != Surface::Rotor || known.form == Form::Warp {
        return Next::NewPart;
    }
    if known.without_wobble > limit {
        return Next::NewPart;
    }
    match known.best {
        None => Next::ReadTurned,
        Some((best, now))
            if best.expected().plus(known.without_wobble) <= limit && best.stud != now =>
        {
            Next::Index
        }
        Some(_) => Next::Plate,
    }
}
