//! Listen: looks before driving, the road test, its questions, and the heat of both hubs.

use super::tell;
use crate::text::step::StepText;

const KEEP: &str = "Save the answer";

pub(super) const BEFORE_DRIVING: StepText = tell(
    "Pre-drive check",
    "Four checks before driving.",
    "All four checked",
    "A car that is not safe to drive is not road-tested.",
)
.caution("Not right: do not drive. Fix it, or skip the road test.");
pub(super) const NUTS_TO_CARD: StepText = tell(
    "Loose lug nuts to spec",
    "All four wheels on the ground: check seats and studs, then each lug nut to spec in star order.",
    "All at spec",
    "As found it is STOP. With every nut on the car at spec the decision is made again.",
)
.no("Not all of them")
.caution("A nut that ran loose wears its seat and stretches its stud. Worn or missing: do not drive.");
pub(super) const DRIVE: StepText = tell(
    "Test drive",
    "Tire pressures set. Town speed, open road, gentle swerves, coast, light brake, slow circles at full lock.",
    "Back and parked",
    "Most noisy bearings have no play yet. The road shows more than the hands do.",
)
.caution("Hands off the phone while the car moves. The questions come when it is parked.");
pub(super) const SIGN_SPEED: StepText = tell(
    "Rises with speed",
    "Did the noise rise with road speed, the same in every gear?",
    "Yes",
    "Then it comes from the wheels or what turns with them, not from the engine.",
);
pub(super) const SIGN_SWERVE: StepText = tell(
    "Gentle swerve",
    "In a gentle swerve, steering which way made it louder, each time again?",
    KEEP,
    "Steering right loads the left side. The loaded side is usually the loud one, not always.",
);
pub(super) const SIGN_COAST: StepText = tell(
    "Coasting",
    "Was it the same when coasting in neutral at the same speed?",
    "Yes",
    "Then not the engine. The final drive may be.",
);
pub(super) const SIGN_SURFACE: StepText = tell(
    "Road surface",
    "Did the note change with the road surface?",
    "Yes",
    "A note that changes with the road points to the tires.",
);
pub(super) const SIGN_BRAKE: StepText = tell(
    "Light brake",
    "Did a light brake at speed change the noise or quiet it?",
    "Yes",
    "Then a dragging brake is more likely.",
);
pub(super) const SIGN_FULL_LOCK: StepText = tell(
    "Full lock",
    "Did it click at full lock under power?",
    "Yes",
    "Clicking there points to the outer CV joint.",
);
pub(super) const SIGN_SHAKE: StepText = tell(
    "Shake",
    "On the open road, did it shake without braking and without a hum?",
    "Yes",
    "A shake without a hum points to tire or wheel.",
);
pub(super) const SIGN_PULSE: StepText = tell(
    "Pulse",
    "Did it pulse only while braking?",
    "Yes",
    "A pulse only under the brake points to the rotor.",
);
pub(super) const HEAT_HERE: StepText = tell(
    "Heat: this hub",
    "This hub, on a tape patch.",
    "Save temperature",
    "A hub clearly hotter than the other side is a clue. Sun, drag, shiny metal fool a reading.",
)
.caution("Hot: it can burn you.");
pub(super) const HEAT_OTHER: StepText = tell(
    "Heat: other side",
    "The same spot, other side.",
    "Save temperature",
    "Only the difference between the two sides counts.",
)
.caution("Hot: it can burn you.");
