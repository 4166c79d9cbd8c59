//! Gauge, Decide and Agree: the reading, what it means, and the customer's answer.

use super::tell;
use crate::text::step::StepText;

const GIVES: &str = "A base that gives is the largest error of all.";

pub(super) const LOOSEN_LUG_NUTS: StepText = tell(
    "Loosen lug nuts",
    "Lower until the tire grips. Center cap off, each lug nut a quarter turn. Raise, back onto the stand.",
    "Loosened, on the stand",
    "Pulling on a tight nut in the air can pull the car off its stand.",
)
.caution("The axle nut stays tight. It is loosened only after the reading.");
pub(super) const SHOVE_AGAIN: StepText = tell(
    "Shove again",
    "Was on its wheel: stand clear and shove the car hard, lengthwise and sideways.",
    "It stands firm",
    "The stand was set again, and how it stands is not known.",
)
.no("It moved")
.caution(
    "If it moved: back on the jack, chock again, set the stand again. No wheel comes off before this yes.",
);
pub(super) const WHEEL_OFF: StepText = tell(
    "Wheel off",
    "Mark the wheel to a stud. Wheel off; lay it under the rocker panel.",
    "Wheel is off",
    "The mark puts the wheel back as it was. Under the car it is a last stop.",
)
.caution(
    "Brake dust is harmful: keep it wet, no dry brush, no compressed air. The rotor may be hot.",
);
pub(super) const CALIPER_UP: StepText = tell(
    "Caliper up",
    "Mark rotor to hub. Lower guide pin bolt out, tie caliper up, pads out. Fixed caliper: off, on a hanger.",
    "Caliper is tied up",
    "Pads damp the movement that the dial must see, or fake one.",
)
.caution(
    "Pedal depressor out. Keep off the pedal: a piston can come out. \
     Never hang the caliper by its hose.",
);
pub(super) const NUT_FOUND: StepText = tell(
    "Axle nut as found",
    "Look at nut and stake. Loosen nothing.",
    "Save the answer",
    "The nut clamps the bearing's rings. With a slack nut the reading means nothing.",
)
.caution("Broken loose: torque it to spec first, then measure. Slack: do not drive the car.");
pub(super) const GAUGE_CLEAN: StepText = tell(
    "Clean for the dial",
    "Rotor clamped flat. Hub pilot and a spot on the knuckle clean, dry, no burrs.",
    "Clean and dry",
    "Dirt under the base can move the needle as much as a worn bearing does.",
)
.caution("Let a hot hub cool first.");
pub(super) const RIG_PUSH: StepText = tell(
    "Base on the knuckle",
    "Base tight on the knuckle. Push the knuckle, not the hub: how far does the needle move?",
    "Save the answer",
    GIVES,
)
.caution("Never on strut, shield, stand, fender.");
pub(super) const RIG_PUSH_AFTER: StepText = RIG_PUSH.say(
    "Rotor flat, two lug nuts; base and tip where they were. Push the knuckle: how far does the needle move?",
);
pub(super) const RIG_TIP: StepText = tell(
    "Dial setup",
    "Set up the dial. Preload the tip half a turn to one turn.",
    "Set up as shown",
    "A reading is compared only with a limit for the same method, place, setup and force.",
);
pub(super) const ROUND: StepText = tell(
    "Push, pull, read",
    "Push in, swing 5 times a quarter turn, hold: bezel to zero. Pull out, swing 5 times, hold: read.",
    "Save the reading",
    "Three cycles show how far to trust the reading.",
);
pub(super) const RIG_AGAIN: StepText = tell(
    "Set the base again",
    "Base off, wipe, set it on another spot of the knuckle. Push the knuckle: how far does the needle move?",
    "Save the answer",
    "The first set is too near the limit. A new setup tells the bearing from the base.",
)
.caution("Never on strut, shield, stand, fender.");
pub(super) const DECIDE: StepText = tell(
    "Decision",
    "Read the decision and what it rests on.",
    "Save the decision",
    "No play does not clear a bearing. Noise and roughness count whatever the dial says.",
);
pub(super) const AGREE: StepText = tell(
    "Customer's answer",
    "Show the customer this page: decision, reason, amount. Yes or no, and a signature.",
    "Customer approves",
    "Nothing is removed before this yes.",
)
.no("Customer declines");
pub(super) const WAIT: StepText = tell(
    "Waiting for approval",
    "Do not move it. Wheel on, lug nuts at spec, down; or on its jack stand, chocked, wheel under the car.",
    "Secured and left",
    "A customer not warned may drive off, and a car can move overnight on an unwatched jack stand.",
)
.caution("Pads out or caliper up: the brake pedal is dead. Tell the customer; take the key where you may.");
pub(super) const HOLD_WAITED: StepText = tell(
    "Hold the car again",
    "It was left alone. In P or in gear, parking brake on, both chocks: check each again.",
    "Held and chocked",
    "Anything may have been moved since.",
);
pub(super) const STAND_WAITED: StepText = tell(
    "Jack and stand again",
    "Jack and jack stand at their points, wheel under the car: set it as if for the first time.",
    "On its jack stand",
    "Ground sinks and jacks leak overnight.",
);
pub(super) const SHOVE_WAITED: StepText = tell(
    "Shove after waiting",
    "Stand clear, shove it hard, lengthwise and sideways.",
    "It stands firm",
    "The stand was set again, and how it stands is not known.",
)
.no("It moved")
.caution(
    "If it moved: lower it, chock again, set the stand again. No work goes on before this yes.",
);
