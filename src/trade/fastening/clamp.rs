//! What a torque does: the force with which it draws a bolt, by the nut factor.
//!
//! The factor scatters by a third and more; what follows from it may doubt a figure, never give
//! one.

use crate::units::{Force, Length, Torque};
use crate::words;

words! {
    /// What the thread's surface is like.
    pub enum Finish {
        /// Black, not plated.
        Black = "black",
        /// Zinc-plated.
        Zinc = "zinc",
        /// Lubricated.
        Lubricated = "lubricated",
        /// Cadmium-plated.
        Cadmium = "cadmium",
        /// With anti-seize.
        AntiSeize = "anti_seize",
    }
}

/// The nut factor `K`.
///
/// # Source
/// Shigley's Mechanical Engineering Design, Table 8-15; checked against
/// `tests/reference/04_fasteners.json`.
pub const fn nut_factor(finish: Finish) -> f64 {
    match finish {
        Finish::Black => 0.30,
        Finish::Zinc => 0.20,
        Finish::Lubricated => 0.18,
        Finish::Cadmium => 0.16,
        Finish::AntiSeize => 0.12,
    }
}

/// The torque that draws a bolt of `diameter` with `force`: `T = K · d · F`.
///
/// # Source
/// Shigley's Mechanical Engineering Design, 8-8; checked against
/// `tests/reference/04_fasteners.json`.
pub fn torque_for(factor: f64, diameter: Length, force: Force) -> Torque {
    force.at(diameter).times(factor)
}

/// The clamping force that tables commonly aim at: three quarters of the proof load.
pub fn common_clamp(proof_load: Force) -> Force {
    proof_load.times(0.75)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::ForceUnit;

    #[test]
    fn no_force_needs_no_torque_and_twice_the_force_twice_the_torque() {
        let at = |newtons: f64| {
            let force = Force::new(newtons, ForceUnit::Newton).unwrap_or(Force::ZERO);
            torque_for(0.2, Length::millimetres(12.0), force)
        };
        assert_eq!(at(0.0), Torque::ZERO);
        assert_eq!(at(20_000.0), at(10_000.0).times(2.0));
    }
}
