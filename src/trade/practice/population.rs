//! How the cars of a garage differ: what a seed draws from.

use super::car::{Code, NoiseCause, SpecTrap, Truth};
use super::chance::Chance;
use super::{Car, car::Finish};
use crate::units::Length;

/// Spreads and shares of the cars that seeds give. Deviations are those of normal distributions.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Population {
    /// Mean of the true plays.
    pub play: Length,
    /// Deviation of the true plays; a play below nothing is nothing.
    pub play_spread: Length,
    /// Deviation of the dial's own error.
    pub dial_spread: Length,
    /// Deviation of what the base gives, new with each place it is set at.
    pub flex_spread: Length,
    /// Deviation between two sets of one hub, by place and force.
    pub set_spread: Length,
    /// Deviation between two rounds of one set.
    pub round_spread: Length,
    /// Largest part of the play that is hidden before the bearing was swung.
    pub unseated: Length,
    /// Share of cars that have something wrong beside the play.
    pub troubled: f64,
}

impl Population {
    /// Where the cars of "another car" come from: half of them over the 0.05 mm of their spec.
    pub const GARAGE: Self = Self {
        play: Length::millimetres(0.05),
        play_spread: Length::millimetres(0.04),
        dial_spread: Length::millimetres(0.003),
        flex_spread: Length::millimetres(0.004),
        set_spread: Length::millimetres(0.002),
        round_spread: Length::millimetres(0.003),
        unseated: Length::millimetres(0.02),
        troubled: 0.4,
    };

    /// The car of a seed.
    pub fn car(&self, seed: u64) -> Car {
        let mut chance = Chance::at(seed, 0);
        let play = self
            .play
            .plus(self.play_spread.times(chance.normal()))
            .max(Length::ZERO);
        let dial_error = self.dial_spread.times(chance.normal());
        let unseated = self.unseated.times(chance.share());
        let trouble = chance.happens(self.troubled).then(|| chance.share());
        // One trouble a car, so that what was found can be told from what was not.
        let between = |low: f64, high: f64| trouble.is_some_and(|t| low <= t && t < high);
        let rough = between(0.0, 0.3);
        Car {
            code: Code::Seed(seed),
            truth: Truth {
                play,
                new_play: Length::millimetres(if between(0.85, 1.0) { 0.12 } else { 0.01 }),
                flex: between(0.5, 0.65).then(|| Length::millimetres(0.06)),
                dial_error,
                unseated,
                finish: if rough { Finish::Rough } else { Finish::Smooth },
                new_finish: if between(0.85, 1.0) {
                    Finish::Rough
                } else {
                    Finish::Smooth
                },
                noise: if rough {
                    NoiseCause::Bearing
                } else if between(0.3, 0.5) {
                    NoiseCause::Tires
                } else {
                    NoiseCause::Nothing
                },
                loose_nuts: if between(0.65, 0.75) { 3 } else { 0 },
                slip: between(0.75, 0.85).then_some(SpecTrap::LugNutsInPoundFeet),
            },
            population: *self,
            seed,
        }
    }
}
