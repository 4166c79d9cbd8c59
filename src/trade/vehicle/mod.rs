//! The vehicle: its number, its corners, its odometer, and what a booking message says of it.
use crate::words;
words! {
    /// A corner.
    pub enum Corner { FrontLeft = "front_left", FrontRight = "front_right", RearLeft = "rear_left", RearRight = "rear_right" }
}
