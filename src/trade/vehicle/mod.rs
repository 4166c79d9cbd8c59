//! The vehicle: its number, its corners, its odometer, and what a booking message says of it.
