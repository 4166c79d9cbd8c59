//! The version of the rules for runout and rotor thickness, and every value that they rest on.
//!
//! A recorded result carries the version that gave it. Whoever changes a value, or a rule so that
//! it gives another result, counts the version up: `tests/verdict/runout_rules.rs` keeps what the
//! version in force says.

use super::arrow::{ROUNDING, RULE};
use super::harmonics::{
    CHANCE_OF_WARP, CHANCE_OF_WOBBLE, MOST_CONDITION, SPARE_FOR_WARP, SPARE_FOR_WOBBLE,
};
use super::moves::{CLOSER, STEPS};
use super::reach::{DOUBT, EVEN, TAIL};
use super::series::{FEWEST_PLACES, FEWEST_READINGS, MOST_PLACES, MOST_TURNS, SAME_PLACE_DEG};
use super::shape::{CHANCE, LARGEST_LEVERAGE, LARGEST_RANGE, SHARE_OF_ENERGY};
use super::thickness::{LARGEST_DIVISION, MICROMETER_ERROR, MICROMETER_FLOOR};
use crate::trade::play::uncertainty::count;

/// Counts up when a rule or a value of it changes; recorded with every result.
pub const RUNOUT_RULES_VERSION: u32 = 1;

/// Every value of the rules by name: lengths in mm, the rest without a unit unless named.
pub fn figures() -> Vec<(&'static str, f64)> {
    vec![
        ("fewest_readings", count(FEWEST_READINGS)),
        ("fewest_places", f64::from(FEWEST_PLACES)),
        ("most_places", f64::from(MOST_PLACES)),
        ("most_turns", f64::from(MOST_TURNS)),
        ("same_place_deg", SAME_PLACE_DEG),
        ("most_condition", MOST_CONDITION),
        ("spare_for_wobble", count(SPARE_FOR_WOBBLE)),
        ("spare_for_warp", count(SPARE_FOR_WARP)),
        ("chance_of_wobble", CHANCE_OF_WOBBLE),
        ("chance_of_warp", CHANCE_OF_WARP),
        ("chance_of_outlier", CHANCE),
        ("largest_leverage", LARGEST_LEVERAGE),
        ("largest_range", LARGEST_RANGE),
        ("share_of_energy", SHARE_OF_ENERGY),
        ("steps_to_end", f64::from(STEPS)),
        ("steps_closer", f64::from(CLOSER)),
        ("tail", TAIL),
        ("doubt", DOUBT),
        ("even", EVEN),
        ("rounding", ROUNDING),
        ("radius_rule_mm", RULE.mm()),
        ("micrometer_floor_mm", MICROMETER_FLOOR.mm()),
        ("micrometer_error_mm", MICROMETER_ERROR.mm()),
        ("largest_division_mm", LARGEST_DIVISION.mm()),
    ]
}
