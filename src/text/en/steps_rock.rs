//! Lift and Rock: how the car is held, and what hands and ears find.

use super::tell;
use crate::text::step::StepText;

const COUNT: &str = "Start the count";
const HANDS: &str = "Hands on the tire only, nothing under the car.";

pub(super) const LIFT_HOLD: StepText = tell(
    "Hold the car",
    "In P or in gear, parking brake on. Chock both sides of the wheel diagonally opposite.",
    "Held and chocked",
    "A raised car rolls on the wheels still down. Brake and chocks must act on those.",
)
.caution(
    "To turn a driven wheel: neutral only with the other axle's parking brake, chocks both ways; shove again; then P. Parking brake on the raised axle: chocks alone hold.",
);
pub(super) const LIFT_STAND: StepText = tell(
    "Jack and jack stand",
    "Raise the car, set the jack stand, lower it onto the stand.",
    "On the jack stand",
    "A jack raises. A stand holds.",
)
.caution("Never under or past a car that only the jack holds. Hot asphalt: plate under the stand.");
pub(super) const STAND_PHOTO: StepText = tell(
    "Photo: jack stand",
    "One photo: jack stand, chocks, ground.",
    "Take the photo",
    "It shows later how the car was held.",
);
pub(super) const SHOVE: StepText = tell(
    "Shove",
    "Stand clear and shove the car hard, lengthwise and sideways. It must not move.",
    "It stands firm",
    "Better that it falls now, with no one near, than later.",
)
.no("It moved")
.caution("If it moved: lower it, chock again, set the stand again.");
pub(super) const ROCK_NUTS: StepText = tell(
    "Lug nuts tight",
    "Try each lug nut with the wrench. Loosen none yet.",
    "All tight",
    "A loose wheel rocks just like a worn bearing.",
)
.no("Not all tight")
.caution("Any loose or missing: do not drive until every nut is at spec. Two or more: STOP.");
pub(super) const ROCK_TWELVE_SIX: StepText = tell(
    "Rock: 12 and 6",
    "Hands at 12 and 6. Push, then pull, swinging the wheel with the count.",
    COUNT,
    "Play here comes from the bearing or from a ball joint.",
)
.caution(HANDS);
pub(super) const ROCK_NINE_THREE: StepText = tell(
    "Rock: 9 and 3",
    "Hands at 9 and 3. Push, then pull, swinging the wheel with the count.",
    COUNT,
    "Only here: usually tie rod, or toe link (rear).",
)
.caution(HANDS);
pub(super) const ROCK_AXIAL: StepText = tell(
    "Push and pull",
    "Both hands on the tire. Swing it; push straight in, then pull straight out.",
    COUNT,
    "Swinging seats the rolling elements, so that the real movement can be felt.",
)
.caution(HANDS);
pub(super) const BRAKE_HELD: StepText = tell(
    "Brake held",
    "Brake held by the pedal depressor. Rock the same way again.",
    "Save the answer",
    "Play that goes away was usually in the bearing. Play that stays: a joint, or a loose wheel.",
)
.caution("No one inside a raised car. Take the depressor out after.");
pub(super) const SPIN_HAND: StepText = tell(
    "Spin by hand",
    "Turn the wheel, fingertips on the coil spring. Feel and listen at the knuckle.",
    "Save the answer",
    "A grumble through the spring condemns a bearing without play. A quiet spin proves little.",
)
.caution("Driven wheel: neutral only with the other axle's brake on and chocks both ways. Back to P afterwards.");
pub(super) const OTHER_SIDE: StepText = tell(
    "Compare other side",
    "Rock and spin the wheel across this axle the same way. Which is tighter?",
    "Save the answer",
    "The other side shows what is usual for this car.",
)
.caution("The other side needs its own jack stand and shove.");
