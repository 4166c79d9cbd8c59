//! Gauge, Decide and Agree: the reading, what it means, and the owner's answer.

use super::tell;
use crate::text::step::StepText;

const GIVES: &str = "A base that gives is the largest error of all.";

pub(super) const CRACK_WHEEL_NUTS: StepText = tell(
    "Crack the wheel nuts",
    "Lower until the tire bites. Center cap off, each wheel nut a quarter turn. Lift, back onto the stand.",
    "Cracked, on the stand",
    "Pulling on a tight nut in the air can pull the car off its stand.",
)
.caution("The axle nut stays tight. It is loosened only after the reading.");
pub(super) const SHOVE_AGAIN: StepText = tell(
    "Shove again",
    "It stood on its wheel since: stand clear and shove the car hard, along and across.",
    "It stands firm",
    "The stand was set anew, and nobody knows yet how it stands.",
)
.no("It moved")
.caution(
    "If it moved: back on the jack, chock again, set the stand again. No wheel comes off before this yes.",
);
pub(super) const WHEEL_OFF: StepText = tell(
    "Wheel off",
    "Mark the wheel to a stud. Nuts off, wheel off, lay it under the sill.",
    "Wheel is off",
    "The mark puts the wheel back as it was. Under the sill it is a last stop.",
)
.caution(
    "Brake dust is harmful: keep it wet, no dry brush, no compressed air. The rotor may be hot.",
);
pub(super) const CALIPER_UP: StepText = tell(
    "Caliper up",
    "Mark rotor to hub. Lower pin bolt out, caliper up and tied, pads out. Fixed caliper: off, on a hanger.",
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
    "Keep the answer",
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
    "Keep the answer",
    GIVES,
)
.caution("Never on strut, plate, stand or fender.");
pub(super) const RIG_PUSH_AFTER: StepText = RIG_PUSH.say(
    "Rotor flat with two nuts, base and tip where they were before. Push the knuckle: how far does the needle move?",
);
pub(super) const RIG_TIP: StepText = tell(
    "Dial setup",
    "Set up the dial. Preload the tip half a turn to one turn.",
    "Set up as shown",
    "A reading is compared only with a limit for the same method, place, setup and force.",
);
pub(super) const ROUND: StepText = tell(
    "Push, pull, read",
    "Push, swing five quarter turns, keep pushing: bezel to zero. Pull, swing five, keep pulling: read.",
    "Keep the reading",
    "Three rounds show how far the reading can be trusted.",
);
pub(super) const RIG_AGAIN: StepText = tell(
    "Set the base again",
    "Base off, wipe, set it on another spot of the knuckle. Push the knuckle: how far does the needle move?",
    "Keep the answer",
    "The first set lies too near the limit. A fresh rig tells the bearing from the base.",
)
.caution("Never on strut, plate, stand or fender.");
pub(super) const DECIDE: StepText = tell(
    "Decision",
    "Read the decision, what it rests on and what was not done.",
    "Keep the decision",
    "No play does not clear a bearing. Noise and roughness count whatever the dial says.",
);
pub(super) const AGREE: StepText = tell(
    "The owner's answer",
    "Show the owner this page: decision, reason, amount. One yes or no, and a signature.",
    "Owner says yes",
    "Nothing is stripped before this yes.",
)
.no("Owner says no");
pub(super) const WAIT: StepText = tell(
    "Waiting for a yes",
    "Nobody moves it. Wheel on, nuts at their card, down; or on its stand, chocked, wheel under the sill.",
    "Left like that",
    "An owner who was not told may drive off, and a car moves overnight on a stand that nobody watches.",
)
.caution("Pads out or caliper up: the brake pedal is dead. Tell the owner, and take the key where you may.");
pub(super) const HOLD_WAITED: StepText = tell(
    "Hold the car again",
    "It stood without you. In P or in gear, parking brake on, both chocks: look at each again.",
    "Held and chocked",
    "Nobody knows who moved what meanwhile.",
);
pub(super) const STAND_WAITED: StepText = tell(
    "Jack and stand again",
    "Jack at its point, stand under its point, wheel under the sill: set it as if for the first time.",
    "On its stand",
    "Ground sinks and jacks leak overnight.",
);
pub(super) const SHOVE_WAITED: StepText = tell(
    "Shove after waiting",
    "Stand clear and shove the car hard, along and across.",
    "It stands firm",
    "The stand was set anew, and nobody knows yet how it stands.",
)
.no("It moved")
.caution(
    "If it moved: lower it, chock again, set the stand again. No work goes on before this yes.",
);
