//! Rows of lists: a statement that is right when answered yes, and what a no means.

use crate::trade::wheel_end::Check;

pub(in crate::text) fn check(check: Check) -> &'static str {
    match check {
        Check::Slope => "Slope under 1.5°, or under 3° with the lifted end uphill",
        Check::Surface => "Firm ground: the stand cannot sink or slide",
        Check::Traffic => "Clear of traffic; people and animals kept away",
        Check::LockKey => "Wheel-lock key in your hand, or no lock fitted",
        Check::BoxStuds => "Studs or bolt holes in the box match the car",
        Check::BoxPlug => "Sensor plug in the box matches the car",
        Check::BoxBolts => "Hub bolts in the box match the car",
        Check::NutsAsFound => "Every wheel nut is there and tight",
        Check::WheelUpright => "The wheel stands upright",
        Check::PedalFirm => "The brake pedal is firm and stays up",
        Check::Tyres => "Tires whole and even, pressures set",
        Check::JackPoint => "The jack is at the maker's point",
        Check::StandUnder => "The stand is under a rated point and carries the car",
        Check::WheelUnderSill => "A spare wheel or block lies under the sill",
        Check::Pilot => "Wheel pilot the same size",
        Check::StudCircle => "Stud circle and studs the same",
        Check::Splines => "Same number of splines, they slide",
        Check::Plug => "Same plug, same length of wire",
        Check::Depth => "Same depth from flange to seat",
        Check::SpeedGone => "No more noise that rises with speed",
        Check::SwerveGone => "No more change in a gentle swerve",
        Check::CoastGone => "No more noise while coasting",
        Check::SurfaceGone => "No more change with the road surface",
        Check::BrakeGone => "No more change with a light brake",
        Check::FullLockGone => "No more clicking at full lock",
        Check::ShakeGone => "No more shake on the open road",
        Check::PulseGone => "No more pulse while braking",
        Check::ToolsCounted => "All tools counted and in the van",
        Check::KeyBack => "Wheel-lock key back in the car",
        Check::ChocksOut => "Chocks, stand and jack out from under the car",
        Check::OldPart => "Old part shown, or boxed for return",
    }
}

pub(in crate::text) fn check_no(check: Check) -> &'static str {
    match check {
        Check::Slope => "Over 3° is not safe here. Common practice, no source.",
        Check::Surface => "Use a plate under the stand, or find other ground.",
        Check::Traffic => "Shield the place first, or do not work here.",
        Check::LockKey => "Find the key before anything is loosened.",
        Check::BoxStuds | Check::BoxPlug | Check::BoxBolts => {
            "The wrong part: nothing comes apart for it."
        }
        Check::NutsAsFound => "Do not drive. More than one loose or missing is STOP.",
        Check::WheelUpright => "Do not drive. A wheel that leans is STOP.",
        Check::PedalFirm => "Do not drive. The brake comes first.",
        Check::Tyres => "Set pressures first. A damaged tire is not driven.",
        Check::JackPoint => "Lower the car and find the maker's point.",
        Check::StandUnder => "Nobody near the car until the stand carries it.",
        Check::WheelUnderSill => "The stand is then the only thing that holds.",
        Check::Pilot | Check::StudCircle | Check::Splines | Check::Plug | Check::Depth => {
            "Not the same part: do not fit it."
        }
        Check::SpeedGone
        | Check::SwerveGone
        | Check::CoastGone
        | Check::SurfaceGone
        | Check::BrakeGone
        | Check::FullLockGone
        | Check::ShakeGone
        | Check::PulseGone => "Still there: perhaps another corner or another part.",
        Check::ToolsCounted => "Look under the car and in the wheel.",
        Check::KeyBack => "Without its key the wheel cannot come off at the roadside.",
        Check::ChocksOut => "The car must not move yet.",
        Check::OldPart => "The owner may ask to see it.",
    }
}
