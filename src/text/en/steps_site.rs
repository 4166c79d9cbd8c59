//! Site and Meet: the ground first, then the right car.

use super::tell;
use crate::text::step::StepText;

pub(super) const SITE_LOOK: StepText = tell(
    "The ground",
    "The ground first: slope, surface, traffic.",
    "Safe to work here",
    "On a slope or soft ground a jack stand tips or sinks.",
)
.no("Not safe here")
.caution("Over 3° do not raise the car (common practice, no source).");
pub(super) const RIGHT_CAR: StepText = tell(
    "The right car",
    "Compare the last four characters of the VIN with the car.",
    "Same car",
    "Specs and parts fit this one car.",
)
.no("Different car");
pub(super) const ODOMETER: StepText = tell(
    "Odometer",
    "The odometer, with its unit.",
    "Save the odometer",
    "Re-torque and warranty are counted from this number.",
);
pub(super) const WARNING_LIGHTS: StepText = tell(
    "Warning lights",
    "Key on, wait for the bulb check to end. Which lights stay on?",
    "Save the answer",
    "So that a light that was on before is not blamed on the work.",
);
pub(super) const MEET_LOOK: StepText = tell(
    "Key, box and car",
    "Wheel-lock key in hand. Box open, part held against the car.",
    "All answered",
    "Find a missing key or wrong part now, not with the wheel half off.",
);
pub(super) const TEARDOWN_YES: StepText = tell(
    "Inspection approval",
    "Show the customer the price of inspection with reassembly. Ask for approval.",
    "Customer approves",
    "Nothing is opened without it. The repair is approved later, after the decision.",
)
.no("Customer declines");
