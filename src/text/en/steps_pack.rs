//! Pack: what is asked at home, and the spec cards wherever they are asked.

use super::tell;
use crate::text::step::StepText;

pub(super) const BOOKING: StepText = tell(
    "Booking message",
    "Paste the message. VIN, phone, plate and address are found in it; the rest is the complaint, word for word.",
    "Keep the message",
    "The owner's own words are what the work is checked against at the end.",
);
pub(super) const VEHICLE: StepText = tell(
    "Vehicle",
    "Check the facts: number, studs, hub bolts, power, parking brake, caliper.",
    "Facts are right",
    "Which axle the parking brake holds and how many studs there are change the steps.",
);
pub(super) const CORNERS: StepText = tell(
    "Corners",
    "Tap each corner of this job in the order of work. Left and right are seen from the driver's seat.",
    "These corners",
    "\"Driver's side\" changes with the country. Left and right from the driver's seat do not.",
);
pub(super) const CARD_AXLE_NUT: StepText = tell(
    "Card: axle nut",
    "From the maker's service information: torque, angle, in the air or on the ground, new nut or not.",
    "Keep the card",
    "This nut clamps the bearing's rings. Too loose or too tight ruins a new bearing.",
)
.caution("No figure from memory or from another car. \"Not found\" is an answer too.");
pub(super) const CARD_HUB_BOLTS: StepText = tell(
    "Card: hub bolts",
    "From the maker's service information: torque, angle, new bolts or not, threadlocker or not.",
    "Keep the card",
    "Bolts that pull unevenly bend the outer ring, and a bent ring makes noise.",
);
pub(super) const CARD_BRACKET_BOLTS: StepText = tell(
    "Card: bracket bolts",
    "From the maker's service information: torque of the caliper bracket, new bolts, threadlocker.",
    "Keep the card",
    "These bolts carry the whole braking force of the wheel.",
);
pub(super) const CARD_CALIPER_PINS: StepText = tell(
    "Card: caliper pins",
    "From the maker's service information: torque of the pin bolts, new or not.",
    "Keep the card",
    "A pin bolt that works out lets the caliper swing into the wheel.",
);
pub(super) const CARD_WHEEL_NUTS: StepText = tell(
    "Card: wheel nuts",
    "From the maker's service information: torque for this wheel, threads dry unless the maker says otherwise.",
    "Keep the card",
    "Most wheels that come off do so because their nuts lost their clamp.",
);
pub(super) const CARD_PLAY_LIMIT: StepText = tell(
    "Card: play limit",
    "From the maker's service information: the limit, its method, where the tip stands, how hard to pull.",
    "Keep the card",
    "\"Play\" is measured in different ways. A limit counts only for its own method and place.",
)
.caution("With no maker limit the house limit can condemn and never clears: common practice, no source.");
pub(super) const PRICE: StepText = tell(
    "Price",
    "Type two amounts: the whole repair, and inspection with putting it back if the owner says no.",
    "Keep the price",
    "The owner must know both before anything comes apart.",
);
pub(super) const KIT: StepText = tell(
    "Kit",
    "Look into the van. Tap only what is missing.",
    "The rest is on board",
    "What is missing is found here, not with the wheel off.",
);
pub(super) const READY: StepText = tell(
    "Before leaving",
    "Read what is missing, which wrench does not fit, and what this gauge can prove.",
    "Ready to leave",
    "All of it is easier to mend here than in a driveway.",
);
