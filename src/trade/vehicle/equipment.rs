//! What this vehicle has, as far as the steps and their cautions depend on it.

use crate::words;

words! {
    /// How its wheels are fixed.
    pub enum Fixing {
        /// Nuts on studs.
        Nuts = "nuts",
        /// Bolts into the hub.
        Bolts = "bolts",
    }
}

words! {
    /// What drives it.
    pub enum Power {
        /// An engine alone.
        Combustion = "combustion",
        /// An engine and a motor.
        Hybrid = "hybrid",
        /// A motor alone.
        Electric = "electric",
    }
}

words! {
    /// What its parking brake acts on.
    pub enum ParkingBrake {
        /// The front wheels.
        Front = "front",
        /// The rear wheels, by a cable.
        Rear = "rear",
        /// The rear wheels, by motors.
        Electric = "electric",
    }
}
