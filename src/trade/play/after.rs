//! The new part: it passes when it is not over, smooth and quiet.

use super::conformity::Conformity;
use super::evidence::Test;
use crate::trade::answer::Answer;
use crate::words;

words! {
    /// Why a new part cannot be handed over as finished.
    pub enum Against {
        /// It measures over its limit, proven or not.
        Over = "over",
        /// It measures under its least play, proven or not: the rollers are too tight.
        Tight = "tight",
        /// It runs rough.
        Rough = "rough",
        /// It is noisy.
        Noisy = "noisy",
    }
}

/// What the proof after the work says.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub enum After {
    /// Not over, smooth and quiet.
    Pass {
        /// Within its manufacturer's limit, proven; otherwise "within but not proven" is printed.
        proven: bool,
        /// The dial was not used or could not be compared, and that is printed.
        not_done: Vec<Test>,
    },
    /// It may not be called finished and the vehicle stays at STOP: re-check the rig, the nut at
    /// its torque, the bolts, the part.
    Blocked {
        /// Why, each once.
        against: Vec<Against>,
    },
    /// Hand or ear have not judged it yet.
    NotJudged {
        /// What is missing.
        not_done: Vec<Test>,
    },
}

impl After {
    /// The stable code of the outcome, without what it says.
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Pass { .. } => "pass",
            Self::Blocked { .. } => "blocked",
            Self::NotJudged { .. } => "not_judged",
        }
    }
}

/// Judges the new part by its last set, by hand and by ear.
pub fn pass_after(set: Option<&Conformity>, roughness: Answer, noise: Answer) -> After {
    let against: Vec<Against> = [
        (Against::Over, set.is_some_and(Conformity::is_over)),
        (Against::Tight, set.is_some_and(Conformity::is_tight)),
        (Against::Rough, roughness == Answer::Yes),
        (Against::Noisy, noise == Answer::Yes),
    ]
    .into_iter()
    .filter_map(|(against, stands)| stands.then_some(against))
    .collect();
    if !against.is_empty() {
        return After::Blocked { against };
    }
    let missing = [(Test::Hand, roughness), (Test::Ear, noise)];
    let not_done: Vec<Test> = missing
        .into_iter()
        .filter_map(|(test, answer)| (answer == Answer::NotDone).then_some(test))
        .collect();
    if !not_done.is_empty() {
        return After::NotJudged { not_done };
    }
    let compared = set.is_some_and(|set| !matches!(set, Conformity::NoComparison(_)));
    After::Pass {
        proven: matches!(set, Some(Conformity::ProvenIn(in_)) if in_.limit.is_manufacturers()),
        not_done: if compared { vec![] } else { vec![Test::Dial] },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trade::play::conformity::Comparison;
    use crate::trade::play::limit::Limit;
    use crate::trade::play::way::Way;
    use crate::units::Length;

    fn against(limit: Limit) -> Comparison {
        Comparison {
            play: Length::ZERO,
            limit,
            u: Length::millimetres(0.008),
            dof: None,
            g: 1.645,
            cycles: 3,
            beyond_rig: false,
            conformance: 0.5,
        }
    }

    fn manufacturer() -> Comparison {
        against(Limit::manufacturer(Length::millimetres(0.05), Way::DEFAULT).unwrap())
    }

    #[test]
    fn within_but_not_proven_passes_and_says_so() {
        let pass = |set| pass_after(Some(&set), Answer::No, Answer::No);
        let passed = |proven| After::Pass {
            proven,
            not_done: vec![],
        };
        assert_eq!(pass(Conformity::ProvenIn(manufacturer())), passed(true));
        assert_eq!(pass(Conformity::InNotProven(manufacturer())), passed(false));
        let house = Conformity::ProvenIn(against(Limit::HOUSE));
        assert_eq!(pass(house), passed(false));
        assert_eq!(
            pass_after(None, Answer::No, Answer::No),
            After::Pass {
                proven: false,
                not_done: vec![Test::Dial]
            }
        );
    }

    #[test]
    fn a_new_part_that_is_out_rough_or_noisy_is_blocked() {
        let over = Conformity::OutNotProven(manufacturer());
        let blocked = |against| After::Blocked { against };
        assert_eq!(
            pass_after(Some(&over), Answer::No, Answer::No),
            blocked(vec![Against::Over])
        );
        assert_eq!(
            pass_after(None, Answer::Yes, Answer::Yes),
            blocked(vec![Against::Rough, Against::Noisy])
        );
        assert_eq!(
            pass_after(None, Answer::Yes, Answer::NotDone),
            blocked(vec![Against::Rough])
        );
    }

    #[test]
    fn untouched_is_not_judged() {
        let within = Conformity::ProvenIn(manufacturer());
        assert_eq!(
            pass_after(Some(&within), Answer::NotDone, Answer::No),
            After::NotJudged {
                not_done: vec![Test::Hand]
            }
        );
    }
}
