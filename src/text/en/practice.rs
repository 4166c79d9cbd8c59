//! Practice cars: what their customers say, what is met on them, and the truth at the end.

use crate::job::practice::{Hidden, Met, Outcome};
use crate::trade::answer::Answer;
use crate::trade::play::Felt;
use crate::trade::practice::{Named, SpecTrap};
use crate::trade::wheel_end::Choice;

/// The family of a practice car; a drawn one has no name of its own.
pub(in crate::text) fn practice_name(named: Option<Named>) -> &'static str {
    match named {
        Some(Named::Marten) => "Practice: Marten 1.4",
        Some(Named::Curlew) => "Practice: Curlew 1.2",
        Some(Named::Dormouse) => "Practice: Dormouse 2.0",
        Some(Named::Stoat) => "Practice: Stoat 1.6",
        Some(Named::Lapwing) => "Practice: Lapwing 1.5",
        Some(Named::Newt) => "Practice: Newt 1.3",
        None => "Practice: another car",
    }
}

pub(in crate::text) fn practice_said(named: Option<Named>) -> &'static str {
    match named {
        Some(Named::Marten) => {
            "It hums from about 60 on, louder when I steer right. Front left I think."
        }
        Some(Named::Curlew) => "It has hummed since winter. A friend says it is the bearing.",
        Some(Named::Dormouse) => "It's been shaking since I got tires. Front left feels loose.",
        Some(Named::Stoat) => "The last garage measured too much play, front left.",
        Some(Named::Lapwing) => "It growls all the time now, front left.",
        Some(Named::Newt) => "It clunks in corners. I want a new hub, front left.",
        None => "Something is wrong, front left. Please find out.",
    }
}

/// What is met on a practice car; `heat` is a temperature that is already formatted.
pub(in crate::text) fn practice_met(met: Met, heat: &str) -> String {
    match met {
        Met::Nuts(0) => "Every lug nut is tight.".to_owned(),
        Met::Nuts(loose) => {
            format!("Lug nuts loose: {loose}. The wrench seats them.")
        }
        Met::Felt(felt) => felt_on(felt).to_owned(),
        Met::Found(pick) => found_on(pick).to_owned(),
        Met::Sign(Answer::Yes) => "On the road: yes, clearly.".to_owned(),
        Met::Sign(_) => "On the road: no.".to_owned(),
        Met::SignsAfter { stayed: false } => "On the road: all signs are gone.".to_owned(),
        Met::SignsAfter { stayed: true } => {
            "On the road: the hum is the same as before.".to_owned()
        }
        Met::Heat(_) => format!("Thermometer: {heat}"),
        Met::Needle(..) => {
            "Hold a key: you push or pull and swing. Read the needle while you hold.".to_owned()
        }
        Met::Base(_) => "Hold the key: you push the knuckle. Watch the needle.".to_owned(),
    }
}

const fn felt_on(felt: Felt) -> &'static str {
    match felt {
        Felt::Nothing => "The wheel stands firm in your hands.",
        Felt::JustFelt => "There is a small give, just felt.",
        Felt::Seen => "The wheel moves; you can see it.",
        Felt::Knocks => "The wheel moves and knocks.",
    }
}

const fn found_on(pick: Choice) -> &'static str {
    match pick {
        Choice::SmoothQuiet => "It turns smooth and quiet.",
        Choice::Rough => "It catches once a turn; you feel it in the spring.",
        Choice::Noisy => "It hums while it turns.",
        Choice::RoughNoisy => "It grinds once a turn; you feel it and hear it.",
        Choice::GrindsHot => "It grinds, and the hub is hot.",
        Choice::PlayGone => "With the brake held the movement is gone.",
        Choice::PlayStays => "With the brake held the wheel moves as before.",
        Choice::LouderRight => "Steering right it is louder, each time.",
        Choice::LouderLeft => "Steering left it is louder, each time.",
        Choice::NoChange => "No swerve changes it.",
        Choice::SameAsOther => "The other side feels the same.",
        Choice::OtherTighter => "The other side is firm.",
        Choice::OtherLooser => "The other side is looser.",
        Choice::NutTight => "The axle nut is tight, its stake untouched.",
        _ => "There is nothing to see.",
    }
}

/// What a practice car had; plays come formatted: the true one, and the read one with its ±.
pub(in crate::text) fn practice_had(hidden: Hidden, truth: &str, read: Option<&str>) -> String {
    match hidden {
        Hidden::Hub { bad: true } => "The hub had to be replaced.".to_owned(),
        Hidden::Hub { bad: false } => "The hub was sound and could stay.".to_owned(),
        Hidden::Play { .. } => match read {
            Some(read) => format!("Its true play was {truth}; you read {read}."),
            None => format!("Its true play was {truth}."),
        },
        Hidden::Rough => "The bearing was rough and loud.".to_owned(),
        Hidden::Tires => "The hum came from the tires, not from a bearing.".to_owned(),
        Hidden::LooseNuts(loose) => {
            format!("Lug nuts loose: {loose}. The wheel rocked like a worn bearing.")
        }
        Hidden::Base => {
            "The first place of the base gave: it showed play that was not there.".to_owned()
        }
        Hidden::Spec(SpecTrap::LugNutsInPoundFeet) => {
            "The lug nuts' spec had lb-ft where its page has N·m.".to_owned()
        }
        Hidden::NewHub => "The new hub was bad out of its box.".to_owned(),
    }
}

pub(in crate::text) fn practice_outcome(outcome: Outcome) -> &'static str {
    match outcome {
        Outcome::Found => "You found it",
        Outcome::Missed => "You missed it",
        Outcome::NotLooked => "Not looked at",
    }
}
