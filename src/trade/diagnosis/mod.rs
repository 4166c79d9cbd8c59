//! From a complaint to the test that settles it: what could make it, how likely each cause is, and
//! which test would say most. It never decides; a decision rests on hands and dial.

mod clue;
mod corner;
mod firm;
mod next;
mod rank;
mod table;
#[cfg(test)]
mod tests;
mod tones;

pub use clue::{Cause, Clue, Complaint, Test};
pub use corner::{CornerFindings, corners, is_axle_open, is_separated};
pub use firm::{FIRM_PERCENT, SHAKES, Standing, firm_percent, standing};
pub use next::{LeadsTo, Worth, next_tests};
pub use rank::{Findings, MOST_CERTAIN, Ranked, SEPARATED_STEPS, lead, rank, weight};
pub use table::{MOST_STEPS, Row, TABLE, Table, TableError, WEIGHED};
pub use tones::{
    Bearing, BearingError, TIRE_SHARE, Tones, Turning, WheelSpeed, coil_at_20, pulses_per_second,
    wheel_speeds,
};
