//! Site and Meet: the ground first, then the right car.

use super::tell;
use crate::text::step::StepText;

pub(super) const SITE_LOOK: StepText = tell(
    "The ground",
    "The ground first: slope, surface, traffic.",
    "Safe to work here",
    "On a slope or on soft ground a stand can tip or sink.",
)
.no("Not safe here")
.caution("Over 3° do not raise the car (common practice, no source).");
pub(super) const RIGHT_CAR: StepText = tell(
    "The right car",
    "Compare the last four characters of the VIN with the car.",
    "Same car",
    "Cards and parts fit this one car.",
)
.no("Different car");
pub(super) const ODOMETER: StepText = tell(
    "Odometer",
    "The odometer, with its unit.",
    "Keep the odometer",
    "Re-torque and warranty are counted from this number.",
);
pub(super) const LAMPS: StepText = tell(
    "Warning lamps",
    "Ignition on, wait for the lamp check to end. Which lamps stay on?",
    "Keep the answer",
    "So that a lamp that was on before is not taken for one that came with the work.",
);
pub(super) const MEET_LOOK: StepText = tell(
    "Key, box and car",
    "Wheel-lock key in hand. Box open, part held against the car.",
    "All answered",
    "Find a missing key or wrong part now, not with the wheel half off.",
);
pub(super) const TEARDOWN_YES: StepText = tell(
    "Yes to inspection",
    "Show the owner the price of inspection with putting it back, and ask for a yes.",
    "Owner says yes",
    "Nothing is opened without it. The yes to the repair comes later, after the decision.",
)
.no("Owner says no");
