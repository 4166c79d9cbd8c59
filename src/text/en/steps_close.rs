//! Prove, Hand over and Look back.

use super::tell;
use crate::text::step::StepText;

pub(super) const PROVE_SPIN: StepText = tell(
    "Spin the hub",
    "Turn the hub by hand and listen. It must be free, smooth and quiet.",
    "Save the answer",
    "If the new part is rough or noisy, the job is not done.",
);
pub(super) const PROVE_PEDAL: StepText = tell(
    "Pedal first",
    "Pump until the pedal is firm. Hold it: it must not sink.",
    "Pedal is firm",
    "The car moves only with a brake that holds.",
)
.no("Soft or sinks")
.caution("The car does not move before this is answered with yes.");
pub(super) const PROVE_WARNING_LIGHTS: StepText = tell(
    "Lights and sensor",
    "Key on: which lights stay on? Scan tool: all four wheel speeds at walking pace.",
    "Save the answer",
    "A light or a missing wheel speed now points to the wire, the plug or the new hub.",
)
.caution("Electric parking brake: out of service mode before the car moves.");
pub(super) const PROVE_ROAD: StepText = tell(
    "Road test again",
    "First stops gentle, then the test loop.",
    "All answered",
    "A noise that is still there points to another corner or another part.",
)
.caution("Phone away while the car moves. Answer when it is parked.");
pub(super) const PROVE_RESULT: StepText = tell(
    "Before and after",
    "Compare before and after: same method and place.",
    "Continue",
    "A new part out of spec: the job is not finished.",
);
pub(super) const CLEAR: StepText = tell(
    "Before it moves",
    "Pedal firm: chocks, jack stands and jack out. Count the tools and look under the car.",
    "All clear",
    "What is left under a car is driven over.",
)
.caution("The chocks stay until the pedal is firm.");
pub(super) const TOOLS: StepText = tell(
    "Nothing left behind",
    "Wheel-lock key back in the car; the old part shown or boxed.",
    "All there",
    "A key left in the van is missed at the roadside.",
);
pub(super) const RETORQUE: StepText = tell(
    "Re-torque due",
    "Set date and distance and tell the customer both. Whichever comes first counts.",
    "Save the date",
    "Wheels settle. A torque check after some miles is what likely prevents lost wheels.",
);
pub(super) const SIGN: StepText = tell(
    "Signature",
    "Explain page one in a minute, then hand over the phone to sign.",
    "Save the signature",
    "It shows the customer has seen the page.",
);
pub(super) const REPORT: StepText = tell(
    "Report and file",
    "Go through the report with the customer. Print or share it once the job has ended.",
    "Handed over",
    "The file holds every reading, so that another person can work it out again.",
);
pub(super) const END: StepText = tell(
    "End of the job",
    "Choose how the job ends. With anything still loose it ends as left unfinished.",
    "End the job",
    "The ending says whether the car may be driven.",
);
pub(super) const RETORQUE_DONE: StepText = tell(
    "Re-torque result",
    "All lug nuts to spec by wrench. Was one of them loose?",
    "Save the answer",
    "A loose nut requires a check of seat, stud and wheel.",
);
pub(super) const COMEBACK: StepText = tell(
    "Is it a comeback?",
    "Has this complaint come back? Which corner?",
    "Save the answer",
    "It shows whether the decision or the work was right.",
);
