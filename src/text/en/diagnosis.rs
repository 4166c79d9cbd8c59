//! Causes of a complaint, what speaks for them, and the tests that tell.

use crate::trade::diagnosis::{Cause, Clue, Complaint, Test};

pub(in crate::text) fn complaint(complaint: Complaint) -> &'static str {
    match complaint {
        Complaint::Hum => "Hum or growl with speed",
        Complaint::Click => "Clicking in turns",
        Complaint::Clunk => "Clunk or loose feel",
        Complaint::Shake => "Shake or pulse",
        Complaint::WarningLight => "ABS or stability warning light",
    }
}

pub(in crate::text) fn cause(cause: Cause) -> &'static str {
    match cause {
        Cause::Bearing => "Wheel bearing",
        Cause::Tire => "Tire",
        Cause::CvJoint => "Outer CV joint",
        Cause::BrakeDrag => "Brake drag or splash shield",
        Cause::BallJoint => "Ball joint",
        Cause::TieRod => "Tie rod or steering rack",
        Cause::Differential => "Differential or transaxle",
        Cause::Engine => "Engine speed source",
        Cause::Rotor => "Rotor thickness variation",
        Cause::Sensor => "Speed sensor, encoder or wiring",
        Cause::LooseWheel => "Loose wheel fasteners",
        Cause::Other => "Something else",
    }
}

pub(in crate::text) fn clue(clue: Clue) -> &'static str {
    match clue {
        Clue::RisesWithSpeed => "Rises with road speed, same in every gear",
        Clue::ChangesWithSurface => "Note changes with the road surface",
        Clue::SwerveOneWay => "Louder in a gentle swerve one way",
        Clue::SwerveNoChange => "No change in a swerve either way",
        Clue::SameInNeutral => "Same when coasting in neutral",
        Clue::DriveCoast => "Changes between drive and coast, in gear",
        Clue::WhenParked => "There when parked, follows engine speed",
        Clue::ClicksAtLock => "Clicks at full lock under power",
        Clue::BrakeChanges => "Light braking changes or quiets it",
        Clue::PulseBraking => "Pulse only while braking",
        Clue::ShakeAtSpeed => "Shakes at 45 to 65 mph without braking",
        Clue::PlayGone => "Play that is gone with the brake held",
        Clue::PlayUprightStays => "Play at 12-6 that stays with the brake held",
        Clue::PlayAcrossStays => "Play at 9-3 only that stays with the brake held",
        Clue::NoPlay => "No play in any direction",
        Clue::Grumble => "Rough or noisy when spun by hand",
        Clue::Scrape => "Scrapes once per turn when spun by hand",
        Clue::LoudestHub => "Clip-on pickups: this hub is clearly loudest",
        Clue::HotHub => "Hub 27 °F (15 °C) hotter than the other side",
        Clue::RotorHotter => "Rotor hotter than the hub",
        Clue::SealStreak => "Grease or rust streak at the bearing seal",
        Clue::TornBoot => "CV boot torn, grease on the rim",
        Clue::CuppedTread => "Tread cupped or feathered under the palm",
        Clue::MovedWithTire => "Noise moved when the tires were swapped",
        Clue::StayedAfterSwap => "Noise unchanged by the tire swap",
        Clue::SpeedDropsOut => "This wheel's speed drops out in live data",
        Clue::DialOver => "Dial indicator: proven over the limit",
        Clue::DialInside => "Dial indicator: proven within the limit",
        Clue::AfterImpact => "Began after a pothole, curb or flood",
        Clue::WheelWasOff => "Wheel was off in the last 100 mi, and it clunks or wobbles",
        Clue::RecentWork => "Bearing work on this corner in the last 12 months",
    }
}

pub(in crate::text) fn cause_test(test: Test) -> &'static str {
    match test {
        Test::Speed => "Drive: does it rise with road speed?",
        Test::Surface => "Drive on another surface",
        Test::Swerve => "Drive: swerve gently both ways",
        Test::Neutral => "Drive: coast in neutral",
        Test::DriveCoast => "Drive in gear: power on, power off",
        Test::Parked => "Park, rev the engine",
        Test::FullLock => "Drive slowly at full lock, under power",
        Test::LightBrake => "Drive: brake lightly at speed",
        Test::Braking => "Drive: brake, feel for a pulse",
        Test::Shake => "Drive at 45 to 65 mph, no braking",
        Test::Rock => "Rock the wheel, then with the brake held",
        Test::HandSpin => "Spin by hand, fingertips on the spring",
        Test::Scrape => "Spin by hand, listen for a scrape",
        Test::Pickups => "Clip-on pickups on the knuckles, drive",
        Test::HubHeat => "IR thermometer: both hubs of the axle",
        Test::RotorHeat => "IR thermometer: rotor and hub",
        Test::Seal => "Look at the bearing seal",
        Test::Boot => "Look at the CV boot",
        Test::Tread => "Run a palm over the tread, tire still",
        Test::TireSwap => "Swap the tires front to rear, drive",
        Test::LiveData => "Scan tool: four wheel speeds at walking pace",
        Test::Dial => "Dial indicator against the limit",
        Test::Impact => "Ask: pothole, curb or flood before it?",
        Test::WheelOff => "Ask: wheel off in the last 100 mi?",
        Test::Work => "Ask: bearing work here in 12 months?",
    }
}
