//! Tighten: everything back to its card, in the order that the axle nut asks for.

use super::tell;
use crate::text::step::StepText;

const CLICKED: &str = "It clicked";
const FIRST_CLICK: &str = "Stop at the first click. A second click only overtightens.";
const DEAD: &str =
    "The pedal is dead until it is pumped firm: nobody touches it. No twist in the hose.";
const FINAL_NUT: &str =
    "By wrench only, no impact tool. Stop at the first click. Never back the nut off.";
const FINAL_WHY: &str =
    "The torque sets the clamp of the bearing's rings. It cannot be felt or guessed.";

pub(super) const TURN_HUB_BOLTS: StepText = tell(
    "Hub bolts",
    "Crosswise, by wrench, to the card. One tap for each.",
    CLICKED,
    "Bolts that pull unevenly bend the outer ring, and a bent ring makes noise.",
)
.caution(FIRST_CLICK);
pub(super) const ROTOR_ON: StepText = tell(
    "Rotor on",
    "Rotor hat and flange bright. Rotor on its mark, held flat by two wheel nuts.",
    "Rotor sits flat",
    "A rotor that does not sit flat makes the brake pulse later.",
)
.caution("No grease on the faces, none on the rotor.");
pub(super) const BRACKET_ON: StepText = tell(
    "Bracket on",
    "Bracket onto the knuckle, both bolts in by hand. New bolts and threadlocker as the card says.",
    "Bolts in by hand",
    "A bolt started by hand is not cross-threaded.",
);
pub(super) const TURN_BRACKET_BOLTS: StepText = tell(
    "Bracket bolts",
    "Each bolt by wrench to its card. One tap for each.",
    CLICKED,
    "These bolts carry the whole braking force of the wheel.",
)
.caution(FIRST_CLICK);
pub(super) const CALIPER_ON: StepText = tell(
    "Caliper on",
    "Pads in, caliper over the rotor, both pin bolts in by hand, then snug.",
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
.caution(
    "Nobody sits in a lifted car. Electric parking brake: leave service mode as the maker says.",
);
pub(super) const NUT_ON: StepText = tell(
    "Axle nut on",
    "Clean, dry thread. Nut onto the shaft by hand until it seats.",
    "Seated by hand",
    "A nut that turns hard by hand is crooked, or the thread is hurt.",
)
.caution("A new nut where the maker says so. No impact tool.");
pub(super) const NUT_ON_BAR: StepText = NUT_ON.say(
    "Clean, dry thread. Nut on by hand until it seats. Wheel nuts onto two studs for the bar.",
);
pub(super) const NUT_ON_GROUND: StepText = NUT_ON
    .say("Clean, dry thread. Nut on by hand until it seats. Its last torque comes on the ground.");
pub(super) const NUT_FIRST: StepText = tell(
    "Nut: first stage",
    "In the air, brake held by the prop: the card's first stage by wrench.",
    "First stage is on",
    "Some makers want only the last torque on the ground. The first stage seats the rings before.",
)
.caution("Nobody sits in a lifted car. No impact tool.");
pub(super) const TURN_AXLE_NUT: StepText = tell(
    "Axle nut",
    "Brake held by the prop or from the open door. Snug, torque, angle.",
    "Nut is at its card",
    FINAL_WHY,
)
.caution(FINAL_NUT);
pub(super) const TURN_AXLE_NUT_BAR: StepText = TURN_AXLE_NUT.say(
    "Bar across two studs, wheel nuts on them to save the threads. Snug, torque, angle, as the card says.",
);
pub(super) const TURN_AXLE_NUT_GROUND: StepText = TURN_AXLE_NUT
    .say("On the ground, wheel nuts at their card, brake on. Last torque, then angle, as the card says.")
    .caution("By wrench only, no impact tool. Never back it off. The car must not be rolled before this.");
pub(super) const CALIPER_UP_AGAIN: StepText = tell(
    "Caliper up again",
    "Prop out. Lower pin bolt out, swing the caliper up, tie it, pads out. Fixed caliper: off, on a hook.",
    "Caliper is tied up",
    "Before and after are compared only when they were measured the same way.",
)
.caution("The pedal is dead again: nobody touches it. The hose never carries the caliper.");
pub(super) const WHEEL_OFF_AGAIN: StepText = tell(
    "Wheel off again",
    "Crack the wheel nuts, lift, stand, shove. Wheel off and under the sill.",
    "Off, on the stand",
    "The reading after needs the wheel and the pads off, as before.",
)
.caution("Never reach past a load that only the jack holds.");
pub(super) const CALIPER_DOWN: StepText = tell(
    "Caliper down",
    "Pads in, caliper onto its bracket, pin bolts in by hand, then snug.",
    "Caliper is on",
    "Pads the wrong way round or off their clips are seen now.",
)
.caution(DEAD);
pub(super) const TURN_CALIPER_PINS: StepText = tell(
    "Caliper pins",
    "Each pin bolt by wrench to its card. One tap for each.",
    CLICKED,
    "A pin bolt that works out lets the caliper swing into the wheel.",
)
.caution(FIRST_CLICK);
pub(super) const STAKE: StepText = tell(
    "Stake the nut",
    "The reading is taken. Stake the nut into its groove, or a new cotter, then the cap.",
    "Nut is staked",
    "Before the reading it is too soon: a staked nut that must come off is spent.",
)
.caution("Never turn the nut back to meet a slot.");
pub(super) const WHEEL_ON: StepText = tell(
    "Wheel on",
    "Faces clean, wheel on its mark. All nuts in by hand, then snug in star order.",
    "All nuts are snug",
    "The wheel must sit flat before it carries weight.",
)
.caution("No oil or grease on studs and seats unless the maker says so.");
pub(super) const LOWER: StepText = tell(
    "Lower",
    "Lift off the stand, stand and all else out from under the car, lower it onto its wheels.",
    "On its wheels",
    "No weight goes on a bearing whose nut is not at its torque.",
)
.caution(
    "Only with the axle nut at its card, or never loosened. Chocks stay until the pedal is firm.",
);
pub(super) const LOWER_FIRST_STAGE: StepText = LOWER.caution(
    "An axle nut that was loosened has only its first stage: chocks and brake on, the car must not be rolled.",
);
pub(super) const TURN_WHEEL_NUTS: StepText = tell(
    "Wheel nuts",
    "Star order, by wrench, each to its card. One tap for each, then a paint mark.",
    CLICKED,
    "Most wheels that come off do so because their nuts lost their clamp.",
)
.caution("Stop at the first click. An interrupted pass starts again at 1. One check round after it, no more.");
