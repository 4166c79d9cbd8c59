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

words! {
    /// What brakes a wheel.
    pub enum WheelBrake {
        /// A caliper on a rotor.
        Disc = "disc",
        /// Shoes in a drum.
        Drum = "drum",
        /// Nothing, as on many trailers.
        None = "none",
    }
}

words! {
    /// What reads a wheel's speed.
    pub enum SpeedSensor {
        /// One that is fed: two wires, never tested by ohms.
        Active = "active",
        /// A coil.
        Passive = "passive",
        /// Nothing.
        None = "none",
        /// Nobody has looked: handled as an active one.
        NotKnown = "not_known",
    }
}

words! {
    /// What the sensor reads.
    pub enum Encoder {
        /// A ring with teeth or windows.
        Ring = "ring",
        /// Magnets in a seal of the bearing.
        Magnetic = "magnetic",
        /// Nobody has looked: handled as a magnetic one.
        NotKnown = "not_known",
    }
}

words! {
    /// What keeps the nut of tapered rollers where it was set.
    pub enum NutLock {
        /// A castle nut and a cotter pin.
        Cotter = "cotter",
        /// A lock nut or a tabbed washer over the setting nut.
        LockNut = "lock_nut",
    }
}

words! {
    /// How a bearing is pressed.
    pub enum Pressing {
        /// The knuckle on a press.
        KnuckleOff = "knuckle_off",
        /// At the car, with a kit of plates and tubes.
        OnCar = "on_car",
        /// Nobody has looked it up: handled as with the knuckle off.
        NotKnown = "not_known",
    }
}
