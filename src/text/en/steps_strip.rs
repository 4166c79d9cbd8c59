//! Strip and Fit: the old hub out, the new one into its seat.

use super::tell;
use crate::text::step::StepText;

const NUT_WHY: &str =
    "With the nut loose the rings are no longer clamped. Weight or rolling ruins the bearing.";

pub(super) const LOOSEN_NUT: StepText = tell(
    "Loosen axle nut",
    "Unstake. Wheel on, lug nuts snug, down until the tire grips. Break nut loose, raise, set the stand.",
    "Nut is loose",
    NUT_WHY,
)
.caution("Caliper clear of the wheel. Never full weight on this wheel. The car must not be rolled now.");
pub(super) const NUT: StepText = tell(
    "Axle nut off",
    "Wheel off, under the rocker panel. Axle nut off.",
    "Nut is off",
    NUT_WHY,
);
pub(super) const NUT_BAR: StepText = tell(
    "Axle nut off",
    "Unstake. Run lug nuts onto two studs to save the threads, a bar across, break the nut loose, nut off.",
    "Nut is off",
    NUT_WHY,
)
.caution("The car stays on its jack stand: keep out from under it. Once loose, it must not be rolled.");
pub(super) const BRAKE: StepText = tell(
    "Brake off",
    "Caliper off, on a hanger. Bracket off, rotor off (jackscrew holes).",
    "Brake is off",
    "A hose that has carried a caliper can fail later, from the inside.",
)
.caution("The hose never carries the caliper. No hammer on the hub face. The pedal is dead: keep off it.");
pub(super) const SENSOR_PHOTO: StepText = tell(
    "Photo: sensor wire",
    "One photo: the wire from hub to plug, its clips, the shield.",
    "Take the photo",
    "The wire goes back the way it was, clear of tire and rotor.",
);
pub(super) const SENSOR: StepText = tell(
    "Free sensor wire",
    "Key off. Unplug the wire at its plug, open every clip.",
    "Wire is free",
    "A wire that is still clipped tears when the hub moves.",
)
.caution("Free it before the hub moves. Pull the plug, never the wire.");
pub(super) const HUB: StepText = tell(
    "Hub out",
    "Push the shaft out of the hub. Clean bolt threads, bolts out, hub off.",
    "Hub is out",
    "Blows on the axle shaft ruin its joint and thread.",
)
.caution(
    "No hammer on the shaft end. Support the shaft: hanging or pulled far, its joint comes apart. \
     Heat only well clear of sensor and boots.",
);
pub(super) const COMPARE: StepText = tell(
    "New next to old",
    "Lay the new hub next to the old one. Compare and answer each.",
    "All compared",
    "What is not alike here does not fit, or does not read, in the car.",
);
pub(super) const COMPARE_PHOTO: StepText = tell(
    "Photo: old and new",
    "One photo of the old and the new hub side by side.",
    "Take the photo",
    "It shows what came out and what went in.",
);
pub(super) const SEAT: StepText = tell(
    "Clean the seat",
    "Bore, seat, flange bright and dry. Rust film only as the manufacturer says.",
    "Seat is bright",
    "A speck of rust at the hub grows to several times that at the rotor.",
)
.caution("No grease on the faces.");
pub(super) const OFFER: StepText = tell(
    "Install the hub",
    "Shield on. Turn until splines mesh. Hub and bolts in by hand.",
    "In, bolts by hand",
    "A hub that needs force is cocked.",
)
.caution("No force on the splines: never pull it in. New bolts, threadlocker as the spec says.");
pub(super) const ROUTE_SENSOR: StepText = tell(
    "Sensor wire back",
    "Wire into every clip, plug in until it clicks. At both locks it touches nothing.",
    "Wire is clipped in",
    "A wire that touches tire or rotor is soon worn through.",
);
