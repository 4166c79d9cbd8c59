//! Which corner: where the bearing sits that is suspected.

use super::clue::{Cause, Clue};
use super::rank::{Findings, SEPARATED_STEPS, total, weight};
use super::table::Table;
use crate::sorted::Sorted;
use crate::trade::vehicle::{Corner, Side};

/// What speaks for one corner or another.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CornerFindings {
    /// To which side the vehicle was steered when the noise was louder; `None` where it was not
    /// tried or did not change.
    pub louder_steering: Option<Side>,
    /// What was found at each corner.
    pub at: [(Corner, Findings); 4],
}

/// A swerve moves the odds of its two sides by this many steps each: the loaded side is the right
/// one in about 80 of 100 (common practice, no source).
const SWERVE_STEPS: f64 = 1.0;

/// What is found at one corner and says nothing of the others.
const LOCAL: [Clue; 10] = [
    Clue::PlayGone,
    Clue::NoPlay,
    Clue::Grumble,
    Clue::LoudestHub,
    Clue::HotHub,
    Clue::SealStreak,
    Clue::SpeedDropsOut,
    Clue::DialOver,
    Clue::DialInside,
    Clue::RecentWork,
];

/// Each corner with its chance, the likeliest first, if a bearing is the cause.
///
/// All four are alike to begin with. Steering right loads the left side, so a noise that is louder
/// steering right points left; it never tells front from rear. What is found at one corner weighs
/// there what it weighs for a bearing.
///
/// # Source
/// Which side a swerve loads is geometry; the weights are common practice, no source. A damaged
/// inboard row may be louder on the unloaded side.
pub fn corners(table: &Table, found: &CornerFindings) -> Vec<(Corner, f64)> {
    let odds = |(corner, findings): &(Corner, Findings)| {
        let swerve = match found.louder_steering {
            Some(side) if side == corner.side() => -SWERVE_STEPS,
            Some(_) => SWERVE_STEPS,
            None => 0.0,
        };
        let local = |clue| match LOCAL.contains(&clue) {
            true => weight(table, findings, clue, Cause::Bearing),
            false => 0.0,
        };
        (*corner, (swerve + total(local)).exp2())
    };
    let mut all: Vec<(Corner, f64)> = found.at.iter().map(odds).collect();
    let sum: f64 = all.iter().map(|(_, odds)| odds).sum();
    for (_, chance) in &mut all {
        *chance /= sum;
    }
    all.order_by(|(_, a), (_, b)| b.total_cmp(a));
    all
}

/// Whether anything separates the corners of a ranking at all.
pub fn is_separated(ranked: &[(Corner, f64)]) -> bool {
    match ranked {
        [(_, first), .., (_, last)] => (first / last).log2() >= SEPARATED_STEPS,
        _ => false,
    }
}

/// Whether front and rear are still alike: the two likeliest corners are less than a step apart and
/// stand on two axles.
pub fn is_axle_open(ranked: &[(Corner, f64)]) -> bool {
    match ranked {
        [(first, one), (second, other), ..] => {
            (one / other).log2() < SEPARATED_STEPS && first.axle() != second.axle()
        }
        _ => true,
    }
}
