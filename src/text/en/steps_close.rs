//! Prove, Hand over and Look back.

use super::tell;
use crate::text::step::StepText;

pub(super) const PROVE_SPIN: StepText = tell(
    "Spin the hub",
    "Turn the hub by hand and listen. It must be free, smooth and quiet.",
    "Keep the answer",
    "A new part that is rough or noisy is not finished work.",
);
pub(super) const PROVE_PEDAL: StepText = tell(
    "Pedal first",
    "Pump until the pedal is firm. Hold it: it must not sink.",
    "Pedal is firm",
    "The car moves only with a brake that holds.",
)
.no("Soft or sinks")
.caution("The car does not move before this is answered with yes.");
pub(super) const PROVE_LAMPS: StepText = tell(
    "Lamps and sensor",
    "Ignition on: which lamps stay on? At walking pace every wheel must show its speed.",
    "Keep the answer",
    "A lamp or a missing wheel speed now speaks for the wire, the plug or the new hub.",
)
.caution("Electric parking brake: out of service mode before the car moves.");
pub(super) const PROVE_ROAD: StepText = tell(
    "Road test again",
    "First stops gentle, then the test loop.",
    "All answered",
    "A noise that is still there says that it was another corner or another part.",
)
.caution("Phone away while the car moves. Answer when it is parked.");
pub(super) const PROVE_RESULT: StepText = tell(
    "Before and after",
    "Read before beside after: same method, same place.",
    "Go on",
    "A new part that measures out is not finished work.",
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
    "Set the date and the distance and tell the owner both. Whichever comes first counts.",
    "Keep the date",
    "Wheels settle. A second torque after some miles is the likely cure for lost wheels.",
);
pub(super) const SIGN: StepText = tell(
    "Signature",
    "Explain page one in a minute, then hand over the phone to sign.",
    "Keep the signature",
    "It says that the owner has seen the page.",
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
    "All wheel nuts to their card by wrench. Was one of them loose?",
    "Keep the answer",
    "A nut found loose asks for a look at seat, stud and wheel.",
);
pub(super) const COMEBACK: StepText = tell(
    "Did it come back?",
    "Has the owner come back with this complaint? Which corner?",
    "Keep the answer",
    "It shows whether the decision or the work was right.",
);
