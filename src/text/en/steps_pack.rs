//! Pack: what is asked at home, and the spec cards wherever they are asked.

use super::tell;
use crate::text::step::StepText;

pub(super) const BOOKING: StepText = tell(
    "Booking message",
    "Paste the message. VIN, phone, plate and address are found in it; the rest is the complaint, word for word.",
    "Save the message",
    "At the end the work is checked against the customer's own words.",
);
pub(super) const VEHICLE: StepText = tell(
    "Vehicle",
    "Check the facts: VIN, studs, hub bolts, power, parking brake, caliper.",
    "Facts are right",
    "The parking brake's axle and the number of studs change the steps.",
);
pub(super) const CORNERS: StepText = tell(
    "Corners",
    "Tap each corner of this job in the order of work. Left and right are seen from the driver's seat.",
    "These corners",
    "\"Driver's side\" changes with the country. Left and right from the driver's seat do not.",
);
pub(super) const CARD_AXLE_NUT: StepText = tell(
    "Spec: axle nut",
    "Manufacturer's service information: torque, angle, in the air or on the ground, new nut or not.",
    "Save the spec",
    "This nut clamps the bearing's rings. Too loose or too tight ruins a new bearing.",
)
.caution("No value from memory or from another car. \"Not found\" is an answer too.");
pub(super) const CARD_HUB_BOLTS: StepText = tell(
    "Spec: hub bolts",
    "Manufacturer's service information: torque, angle, new bolts or not, threadlocker or not.",
    "Save the spec",
    "Bolts that pull unevenly bend the outer ring, and a bent ring makes noise.",
);
pub(super) const CARD_BRACKET_BOLTS: StepText = tell(
    "Spec: bracket bolts",
    "Manufacturer's service information: torque of the caliper bracket, new bolts, threadlocker.",
    "Save the spec",
    "These bolts carry the full braking force of the wheel.",
);
pub(super) const CARD_CALIPER_PINS: StepText = tell(
    "Spec: guide pin bolts",
    "Manufacturer's service information: torque of guide pin bolts, new or not.",
    "Save the spec",
    "A guide pin bolt that backs out lets the caliper hit the wheel.",
);
pub(super) const CARD_LUG_NUTS: StepText = tell(
    "Spec: lug nuts",
    "Manufacturer's service information: torque for this wheel, threads dry unless it says otherwise.",
    "Save the spec",
    "Most wheels that come off do so because their lug nuts lost clamp.",
);
pub(super) const CARD_PLAY_LIMIT: StepText = tell(
    "Spec: play limit",
    "Manufacturer's service information: the limit, its method, tip position, how hard to pull.",
    "Save the spec",
    "\"Play\" is measured in different ways. A limit counts only for its own method and place.",
)
.caution("No manufacturer limit: the default limit can condemn, never clear (common practice, no source).");
pub(super) const PRICE: StepText = tell(
    "Price",
    "Enter two amounts: the full repair, and inspection with reassembly if it is declined.",
    "Save the price",
    "The customer must know both before disassembly.",
);
pub(super) const KIT: StepText = tell(
    "Kit",
    "Check the van. Tap only what is missing.",
    "The rest is in the van",
    "Find what is missing here, not with the wheel off.",
);
pub(super) const READY: StepText = tell(
    "Before leaving",
    "Read what is missing, which wrench does not fit, and what this dial can prove.",
    "Ready to leave",
    "All of it is easier to fix here than in a driveway.",
);
