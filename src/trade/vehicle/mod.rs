//! The vehicle: its number, its corners, its odometer, and what a booking message says of it.

pub mod booking;
pub mod corner;
pub mod equipment;
pub mod odometer;
pub mod scan;
pub mod tire;
pub mod vin;

pub use booking::{Booking, Found, read_booking};
pub use corner::{Axle, Corner, Side};
pub use equipment::{
    Encoder, Fixing, NutLock, ParkingBrake, Power, Pressing, SpeedSensor, WheelBrake,
};
pub use odometer::{Odometer, OdometerDoubt};
pub use tire::{TireError, TireSize};
pub use vin::{CheckDigit, Vin, VinError};
