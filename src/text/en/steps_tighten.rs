//! Tighten: everything back to its card, in the order that the axle nut asks for.

use super::tell;
use crate::text::step::StepText;

const CLICKED: &str = "It clicked";
const FIRST_CLICK: &str = "Stop at the first click. A second click only overtightens.";
const DEAD: &str = "The pedal is dead until it is pumped firm: keep off it. No twist in the hose.";
const FINAL_NUT: &str =
    "By wrench only, no impact tool. Stop at the first click. Never back the nut off.";
const FINAL_WHY: &str =
    "The torque sets the clamp of the bearing's rings. It cannot be felt or guessed.";

pub(super) const TURN_HUB_BOLTS: StepText = tell(
    "Hub bolts",
    "Crosswise, by wrench, to spec. One tap for each.",
    CLICKED,
    "Bolts that pull unevenly bend the outer ring, and a bent ring makes noise.",
)
.caution(FIRST_CLICK);
pub(super) const ROTOR_ON: StepText = tell(
    "Rotor on",
    "Hat and flange bright. Rotor on its mark, flat under two lug nuts, washers.",
    "Rotor sits flat",
    "A rotor that does not sit flat makes the brake pulse later.",
)
.caution("No grease on the faces, none on the rotor.");
pub(super) const BRACKET_ON: StepText = tell(
    "Bracket on",
    "Bracket onto the knuckle, both bolts in by hand. New bolts and threadlocker as the spec says.",
    "Bolts in by hand",
    "A bolt started by hand is not cross-threaded.",
);
pub(super) const TURN_BRACKET_BOLTS: StepText = tell(
    "Bracket bolts",
    "Each bolt by wrench to spec. One tap for each.",
    CLICKED,
    "These bolts carry the full braking force of the wheel.",
)
.caution(FIRST_CLICK);
pub(super) const CALIPER_ON: StepText = tell(
    "Caliper on",
    "Pads in, caliper over the rotor, guide pin bolts by hand, then snug.",
    "Caliper is on",
    "The brake has to hold the rotor while the axle nut is tightened.",
)
.caution(DEAD);
pub(super) const PEDAL: StepText = tell(
    "Pump the pedal",
    "From the open door, by hand, pump until the pedal is firm. Hold it: it must not sink.",
    "Pedal is firm",
    "With the pistons back, the first press of the pedal goes to the floor.",
)
.no("Soft or sinks")
.caution("No one inside a raised car. Electric parking brake: end service mode as the spec says.");
pub(super) const NUT_ON: StepText = tell(
    "Axle nut on",
    "Clean, dry thread. Nut onto the shaft by hand until it seats.",
    "Seated by hand",
    "A nut that turns hard by hand is cocked, or its thread is bad.",
)
.caution("A new nut where the spec says so. No impact tool.");
pub(super) const NUT_ON_BAR: StepText = NUT_ON
    .say("Clean, dry thread. Nut on by hand until it seats. Lug nuts onto two studs for the bar.");
pub(super) const NUT_ON_GROUND: StepText = NUT_ON
    .say("Clean, dry thread. Nut on by hand until it seats. Final torque comes on the ground.");
pub(super) const NUT_FIRST: StepText = tell(
    "Nut: first stage",
    "In the air, brake held by the depressor: first stage, by wrench.",
    "First stage is on",
    "Some specs want only the final torque on the ground. The first stage seats the rings before.",
)
.caution("No one inside a raised car. No impact tool.");
pub(super) const TURN_AXLE_NUT: StepText = tell(
    "Axle nut",
    "Brake held by depressor or from the door. Snug, torque, angle.",
    "Nut is at spec",
    FINAL_WHY,
)
.caution(FINAL_NUT);
pub(super) const TURN_AXLE_NUT_BAR: StepText = TURN_AXLE_NUT.say(
    "Bar across two studs, lug nuts on them to save the threads. Snug, torque, angle, as the spec says.",
);
pub(super) const TURN_AXLE_NUT_GROUND: StepText = TURN_AXLE_NUT
    .say("On the ground, lug nuts at spec, brake on. Final torque, then angle, as the spec says.")
    .caution("By wrench only, no impact tool. Never back it off. The car must not be rolled before this.");
pub(super) const CALIPER_UP_AGAIN: StepText = tell(
    "Caliper up again",
    "Depressor out. Lower guide pin bolt out, tie caliper up, pads out. Fixed caliper: off, on a hanger.",
    "Caliper is tied up",
    "Before and after are compared only when they were measured the same way.",
)
.caution("The pedal is dead again: keep off it. The hose never carries the caliper.");
pub(super) const WHEEL_OFF_AGAIN: StepText = tell(
    "Wheel off again",
    "Break lug nuts loose, raise, stand, shove. Wheel off, under the car.",
    "Off, on the stand",
    "The reading after needs the wheel and the pads off, as before.",
)
.caution("Never reach past a load that only the jack holds.");
pub(super) const CALIPER_DOWN: StepText = tell(
    "Caliper down",
    "Pads in, caliper on bracket, guide pin bolts by hand, then snug.",
    "Caliper is on",
    "Reversed pads and pads off their clips show now.",
)
.caution(DEAD);
pub(super) const TURN_CALIPER_PINS: StepText = tell(
    "Guide pin bolts",
    "Each bolt by wrench to spec. One tap for each.",
    CLICKED,
    "A guide pin bolt that backs out lets the caliper hit the wheel.",
)
.caution(FIRST_CLICK);
pub(super) const STAKE: StepText = tell(
    "Stake the nut",
    "The reading is taken. Stake the nut into its groove, or a new cotter, then the cap.",
    "Nut is staked",
    "Not before the reading: a staked nut that has to come off again is scrap.",
)
.caution("Never turn the nut back to meet a slot.");
pub(super) const WHEEL_ON: StepText = tell(
    "Wheel on",
    "Faces clean, wheel on its mark. All nuts in by hand, then snug in star order.",
    "All nuts are snug",
    "The wheel must sit flat before it carries weight.",
)
.caution("No oil or grease on studs and seats unless the spec says so.");
pub(super) const LOWER: StepText = tell(
    "Lower",
    "Raise off the stand; clear all from under the car; lower it onto its wheels.",
    "On its wheels",
    "No weight goes on a bearing whose nut is not at its torque.",
)
.caution("Only with the axle nut at spec, or never loosened. Chocks stay until the pedal is firm.");
pub(super) const LOWER_FIRST_STAGE: StepText = StepText {
    why: "The final torque comes on the ground: no rolling before it.",
    ..LOWER.caution(
        "An axle nut that was loosened has only its first stage: chocks and brake on, the car must not be rolled.",
    )
};
pub(super) const TURN_LUG_NUTS: StepText = tell(
    "Lug nuts",
    "Star order, by wrench, each to spec. One tap for each, then a paint mark.",
    CLICKED,
    "Most wheels that come off do so because their lug nuts lost clamp.",
)
.caution("Stop at the first click. An interrupted pass starts again at 1. One check pass after it, no more.");
