//! The proof after the work, with everything that it rested on.
//!
//! It is kept for the same reason as a decision: a later version of the rules never changes what a
//! finished job says.

use super::decided::rounded;
use crate::trade::answer::Answer;
use crate::trade::play::decide::RULES_VERSION;
use crate::trade::play::{After, Figures};
use crate::trade::vehicle::Corner;

/// What the new part of a corner was judged to be.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct Proved {
    /// Which corner.
    pub corner: Corner,
    /// The version of the rules that judged it.
    pub rules: u32,
    /// What the readings after the work said, rounded as they are stored; nothing where there are
    /// none that make a set.
    pub set: Option<Box<Figures>>,
    /// Whether it runs rough.
    pub roughness: Answer,
    /// Whether it is noisy.
    pub noise: Answer,
    /// The outcome.
    pub outcome: After,
}

impl Proved {
    /// The outcome by today's rules, with what it rested on.
    pub fn today(
        corner: Corner,
        set: Option<Figures>,
        (roughness, noise): (Answer, Answer),
        outcome: After,
    ) -> Self {
        Self {
            corner,
            rules: RULES_VERSION,
            set: set.map(rounded).map(Box::new),
            roughness,
            noise,
            outcome,
        }
    }
}
