//! What the runs and measurements of a corner said, as it was recorded last.

use super::Sheet;
use crate::job::entry::{FaceFound, RotorFound, What};
use crate::job::key::Key;
use crate::trade::vehicle::Corner;

impl Sheet {
    /// What a run round a face said as it was recorded last.
    pub fn face_found(&self, corner: Corner, run: u8) -> Option<&FaceFound> {
        match self.fact(&Key::FaceFound(corner, run)) {
            Some(What::FaceFound(found)) => Some(found),
            _ => None,
        }
    }

    /// What a measurement of a rotor said as it was recorded last.
    pub fn rotor_found(&self, corner: Corner, run: u8) -> Option<&RotorFound> {
        match self.fact(&Key::RotorFound(corner, run)) {
            Some(What::RotorFound(found)) => Some(found),
            _ => None,
        }
    }
}
