//! The version of the rules, and every figure that they rest on.
//!
//! A decision records the version that made it. Whoever changes a figure, or a rule so that it
//! decides otherwise, counts the version up: `tests/verdict/rules.rs` keeps what each version says.

use super::budget::{ANGLE_BY_EYE_DEG, INDICATOR_FLOOR, REPEAT_FLOOR};
use super::conformity::CYCLES_TO_PROVE;
use super::dial::{QUARTER_TURN, UNSEEN};
use super::limit::Limit;
use super::road::HOTTER_BY_K;
use super::uncertainty::count;
use super::way::FORCE_SHARE;

/// Counts up when a rule or a figure of it changes; recorded with every decision.
pub const RULES_VERSION: u32 = 3;

/// The chance with which "proven" holds, one-sided.
pub const PROVEN: f64 = 0.95;

/// The chance with which the printed interval holds the truth, two-sided.
pub const INTERVAL: f64 = 0.95;

/// A needle that does not seem to move may still have moved this share of a division, which no eye
/// sees in a driveway (common practice, no source).
pub const UNSEEN_FLEX: f64 = 0.25;

/// Every figure of the rules by name: lengths in mm, the rest without a unit unless named.
pub fn figures() -> Vec<(&'static str, f64)> {
    vec![
        ("proven", PROVEN),
        ("interval", INTERVAL),
        ("cycles_to_prove", count(CYCLES_TO_PROVE)),
        ("repeat_floor_mm", REPEAT_FLOOR.mm()),
        ("indicator_floor_mm", INDICATOR_FLOOR.mm()),
        ("angle_by_eye_deg", ANGLE_BY_EYE_DEG),
        ("default_limit_mm", Limit::HOUSE.value.mm()),
        ("default_end_play_mm", Limit::HOUSE_END_PLAY.value.mm()),
        ("force_share", FORCE_SHARE),
        ("hotter_by_k", HOTTER_BY_K),
        ("unseen_turn_mm", UNSEEN.mm()),
        ("share_of_a_turn", QUARTER_TURN),
        ("unseen_flex", UNSEEN_FLEX),
    ]
}
