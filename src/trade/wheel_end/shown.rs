//! What a step shows and what its photo shows, by name.

use crate::words;

words! {
    /// What a picture of this work commonly shows.
    pub enum CaptionWord {
        AsFound = "as_found", Damage = "damage", Rust = "rust", Leak = "leak", Heat = "heat",
        Thread = "thread", OldPart = "old_part", NewPart = "new_part", PartLabel = "part_label",
        StandAndGround = "stand_and_ground", Chocks = "chocks", WireRoute = "wire_route",
        PlateSeat = "plate_seat", Seat = "seat", WarningLightsOn = "warning_lights_on", Odometer = "odometer",
        DialReading = "dial_reading", Finished = "finished", AsLeft = "as_left",
    }
}

words! {
    /// A picture that a step can name.
    pub enum StepDrawing {
        /// Chocks at the wheel diagonally opposite.
        Chocks = "chocks",
        /// Stand under the rated point.
        Stand = "stand",
        /// The vehicle is shoved on its stand.
        Shove = "shove",
        /// Hands at 12 and 6.
        TwelveSix = "twelve_six",
        /// Hands at 9 and 3.
        NineThree = "nine_three",
        /// Push and pull while turning.
        PushPull = "push_pull",
        /// Base on the knuckle, tip on the pilot.
        DialRig = "dial_rig",
        /// The dial's face after a pull.
        DialFace = "dial_face",
        /// The caliper on its hook, the hose slack.
        Hook = "hook",
        /// The sensor's wire with its clips.
        SensorRoute = "sensor_route",
        /// The hub from behind with its bolts.
        HubBehind = "hub_behind",
        /// The puller draws the hub out.
        Puller = "puller",
        /// Splines aligned by hand.
        Splines = "splines",
        /// The axle nut and its stake.
        NutStake = "nut_stake",
        /// Lug nuts in star order.
        StarOrder = "star_order",
        /// The drum off its shoes.
        DrumOff = "drum_off",
        /// Cup, cone, washer, nut and cotter on their spindle.
        TaperStack = "taper_stack",
        /// The castle nut's slot and the hole of the cotter.
        CastleSlot = "castle_slot",
        /// The encoder's side toward the sensor.
        EncoderSide = "encoder_side",
        /// The force goes in through the outer ring.
        PressOuter = "press_outer",
        /// The inner ring rests on a tube while the hub goes in.
        PressInner = "press_inner",
    }
}
