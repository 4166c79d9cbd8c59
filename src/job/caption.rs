//! What a picture shows, in a few words: those that are offered at a step, and those that hold.

use crate::job::entry::{Caption, Event};
use crate::job::key::Key;
use crate::job::sheet::JobState;
use crate::trade::wheel_end::{Phase, Step};
use crate::words;

words! {
    /// What a picture of this work commonly shows.
    pub enum CaptionWord {
        AsFound = "as_found", Damage = "damage", Rust = "rust", Leak = "leak", Heat = "heat",
        Thread = "thread", OldPart = "old_part", NewPart = "new_part", PartLabel = "part_label",
        StandAndGround = "stand_and_ground", Chocks = "chocks", WireRoute = "wire_route",
        PlateSeat = "plate_seat", Seat = "seat", WarningLightsOn = "warning_lights_on", Odometer = "odometer",
        DialReading = "dial_reading", Finished = "finished", AsLeft = "as_left",
    }
}

/// What is offered for a picture taken at a step, the likeliest first; never more than six, so
/// that a glove finds them.
pub const fn offered(step: Step) -> &'static [CaptionWord] {
    use CaptionWord as W;
    match step {
        Step::LiftHold | Step::LiftStand | Step::StandPhoto | Step::Shove => {
            &[W::StandAndGround, W::Chocks, W::AsFound, W::Damage]
        }
        Step::StripSensor | Step::SensorPhoto | Step::RouteSensor => {
            &[W::WireRoute, W::PlateSeat, W::AsFound, W::Damage]
        }
        Step::Compare | Step::ComparePhoto => {
            &[W::OldPart, W::NewPart, W::PartLabel, W::Damage, W::Rust]
        }
        Step::Seat | Step::Offer | Step::StripHub => {
            &[W::Seat, W::Rust, W::Damage, W::OldPart, W::NewPart]
        }
        Step::MishapPhoto => &[W::Thread, W::Damage, W::Rust, W::OldPart],
        Step::DeclinedPhoto => &[W::AsFound, W::Damage, W::Heat, W::Leak],
        Step::LeftPhoto => &[W::AsLeft, W::StandAndGround, W::Chocks],
        Step::Odometer => &[W::Odometer, W::WarningLightsOn],
        Step::WarningLights | Step::ProveWarningLights => &[W::WarningLightsOn, W::Odometer],
        Step::Round => &[W::DialReading],
        Step::Tools | Step::Report | Step::End => &[W::Finished, W::AsLeft, W::OldPart],
        _ => &[
            W::AsFound,
            W::Damage,
            W::Rust,
            W::Leak,
            W::PartLabel,
            W::Finished,
        ],
    }
}

/// Whether hands are clean where the job stands, so that a caption may be typed: before the car
/// is touched, after it was handed over, and when nothing comes next.
pub const fn hands_are_clean(next: Option<Phase>) -> bool {
    matches!(
        next,
        None | Some(Phase::Pack | Phase::HandOver | Phase::LookBack)
    )
}

/// What a picture shows, as it was last said; its step's own caption where nothing was said.
pub fn caption<'a>(sheet: &'a JobState, sha256: &str) -> &'a Caption {
    let said = sheet.holds(&Key::Caption(sha256.to_owned()));
    match said.map(|entry| &entry.what) {
        Some(Event::Captioned(said)) => &said.caption,
        _ => &Caption::Step,
    }
}
