//! Rows of lists: a statement that is right when answered yes, and what a no means.

use crate::trade::vehicle::Fixing;
use crate::trade::wheel_end::Check;

pub(in crate::text) fn check(check: Check, fixing: Fixing) -> &'static str {
    let bolts = fixing == Fixing::Bolts;
    match check {
        Check::Slope => "Slope under 1.5°, or under 3° with the raised end uphill",
        Check::Surface => "Firm ground: the jack stand cannot sink or slide",
        Check::Traffic => "Clear of traffic; people and animals kept away",
        Check::LockKey => "Wheel-lock key in your hand, or no wheel lock",
        Check::BoxStuds if bolts => "Bolt holes in the box match the car",
        Check::BoxStuds => "Studs or bolt holes in the box match the car",
        Check::BoxPlug => "Sensor plug in the box matches the car",
        Check::BoxBolts => "Hub bolts in the box match the car",
        Check::NutsAsFound if bolts => "Every lug bolt is there and tight",
        Check::NutsAsFound => "Every lug nut is there and tight",
        Check::WheelUpright => "The wheel stands upright",
        Check::PedalFirm => "The brake pedal is firm and stays up",
        Check::Tires => "Tires sound, pressures set",
        Check::JackPoint => "Jack at the manufacturer's point",
        Check::StandUnder => "Jack stand under a rated point; it carries the car",
        Check::WheelUnderRocker => "Spare wheel or block under the rocker panel",
        Check::Pilot => "Hub pilot the same size",
        Check::BoltCircle if bolts => "Bolt circle and threads match",
        Check::BoltCircle => "Bolt circle and studs match",
        Check::Splines => "Same spline count; slides onto the shaft",
        Check::Plug => "Same plug, same length of wire",
        Check::Depth => "Same depth from flange to seat",
        Check::SpindleBore => "Same bore; slides onto the spindle",
        Check::PairNumbers => "Cone and cup numbers belong together and match the old ones",
        Check::SealSize => "Seal the same size, new",
        Check::BearingSize => "Same outer size, bore and width; encoder on the same side",
        Check::ConesSound => "Cones: no pits, no blue, cage whole",
        Check::CupsSound => "Cups: no pits, no lines, tight in the hub",
        Check::SpindleSound => "Spindle: straight, no scores, thread clean",
        Check::SealLand => "Seal land smooth",
        Check::BoreRound => "Bore round within 0.001 in across four directions",
        Check::BoreClean => "Bore clean, no score that a nail feels",
        Check::BoreNotSpun => "No polish or step where a ring has spun",
        Check::SpeedGone => "No more noise that rises with speed",
        Check::SwerveGone => "No more change in a gentle swerve",
        Check::CoastGone => "No more noise while coasting",
        Check::SurfaceGone => "No more change with the road surface",
        Check::BrakeGone => "No more change with a light brake",
        Check::FullLockGone => "No more clicking at full lock",
        Check::ShakeGone => "No more shake on the open road",
        Check::PulseGone => "No more pulse while braking",
        Check::RoadClean => "Drives straight and quiet, nothing shakes",
        Check::ToolsCounted => "All tools counted and in the van",
        Check::KeyBack => "Wheel-lock key back in the car, or no wheel lock",
        Check::ChocksOut => "Chocks, jack stands and jack out from under the car",
        Check::OldPart => "Old part shown, or boxed for return",
    }
}

/// What to do where a row was not answered with yes.
pub(in crate::text) fn check_no(check: Check, fixing: Fixing) -> &'static str {
    match check {
        Check::Slope => {
            "Move the car to level ground first. Over 3° is never safe (common practice, no source)."
        }
        Check::Surface => "Put a plate under the jack stand, or find firm ground first.",
        Check::Traffic => "Shield the place first, or do not work here.",
        Check::LockKey => "Find the wheel-lock key before anything is loosened.",
        Check::BoxStuds | Check::BoxPlug | Check::BoxBolts => {
            "Wrong part: nothing is taken apart for it. Get the right part, then compare again."
        }
        Check::NutsAsFound if fixing == Fixing::Bolts => {
            "Tighten every lug bolt to spec before you drive. Two or more loose or missing: STOP."
        }
        Check::NutsAsFound => {
            "Tighten every lug nut to spec before you drive. Two or more loose or missing: STOP."
        }
        Check::WheelUpright => {
            "Do not drive: a wheel that leans is STOP. Raise it and find out what is loose or broken."
        }
        Check::PedalFirm => "Do not drive: find and fix the brake fault first.",
        Check::Tires => "Do not drive on a damaged tire. Set the pressures first.",
        Check::JackPoint => "Lower the car and find the manufacturer's jacking point.",
        Check::StandUnder => {
            "Put the jack stand under a rated point; keep clear until it carries the car."
        }
        Check::WheelUnderRocker => "Put a spare wheel or a block under the rocker panel first.",
        Check::Pilot | Check::BoltCircle | Check::Splines | Check::Plug | Check::Depth => {
            "Do not install it: leave the car on its jack stand, get the right part, then compare again."
        }
        Check::SpindleBore | Check::PairNumbers | Check::SealSize | Check::BearingSize => {
            "Do not install it: leave the car on its jack stand, get the right part, then compare again."
        }
        Check::ConesSound | Check::CupsSound => {
            "Get cone and cup as a new pair and put them in, then look again."
        }
        Check::SpindleSound => {
            "Do not put it back on the road: the car stays on its jack stand. Get the spindle or axle replaced."
        }
        Check::SealLand => {
            "Put the seal land right or take another spindle; a new seal leaks on it."
        }
        Check::BoreRound | Check::BoreClean | Check::BoreNotSpun => {
            "Do not press into it: leave the car on its jack stand and get another knuckle or hub."
        }
        Check::SpeedGone
        | Check::SwerveGone
        | Check::CoastGone
        | Check::SurfaceGone
        | Check::BrakeGone
        | Check::FullLockGone
        | Check::ShakeGone
        | Check::PulseGone => {
            "Still there: perhaps another corner or another part. The report says so."
        }
        Check::RoadClean => "Find out what it is. The report says that the car is not released.",
        Check::ToolsCounted => "Find it before the car moves: look under the car and in the wheel.",
        Check::KeyBack => {
            "Put the key back first. Without it the wheel cannot come off at the roadside."
        }
        Check::ChocksOut => "Take chocks, jack stands and jack out before the car moves.",
        Check::OldPart => "Save the old part: the customer may ask to see it.",
    }
}
