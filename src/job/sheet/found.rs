//! What the runs and measurements of a corner said, as it was recorded last.

use super::JobState;
use crate::job::entry::{Event, FaceFound, RotorFound};
use crate::job::key::Key;
use crate::trade::vehicle::Corner;

impl JobState {
    /// What a run round a face said as it was recorded last.
    pub fn face_found(&self, corner: Corner, run: u8) -> Option<&FaceFound> {
        match self.fact(&Key::FaceFound(corner, run)) {
            Some(Event::FaceFound(found)) => Some(found),
            _ => None,
        }
    }

    /// What a measurement of a rotor said as it was recorded last.
    pub fn rotor_found(&self, corner: Corner, run: u8) -> Option<&RotorFound> {
        match self.fact(&Key::RotorFound(corner, run)) {
            Some(Event::RotorFound(found)) => Some(found),
            _ => None,
        }
    }
}
