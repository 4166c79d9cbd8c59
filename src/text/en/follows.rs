//! What to do now, in one sentence, where an answer holds something.

use super::checks::check_no;
use crate::trade::answer::Answer;
use crate::trade::wheel_end::{Given, Pick, Step};

/// Every sentence says what is put right before the question is answered again.
pub(in crate::text) fn follows(step: Step, given: Given) -> &'static str {
    match (given, step) {
        // What was not looked at is not told as if it was wrong.
        (Given::Row(check, answer), _) if answer != Answer::NotDone => check_no(check),
        (Given::Picked(Pick::FlexMore), _) => {
            "Set the base again, stiffer or closer, then push the knuckle again."
        }
        (Given::Picked(Pick::BrakeLamp), Step::ProveLamps) => {
            "The car must not move: find out why the brake warning light is on."
        }
        (Given::Picked(Pick::BrakeLamp), _) => {
            "Do not drive until you know why the brake warning light is on."
        }
        (Given::Picked(_), _) => "A new warning light: check plug, wire and sensor first.",
        (_, Step::SiteLook) => "Look at the ground before you raise the car.",
        (_, Step::RightCar) => "Specs and parts are for another car. Find the right car first.",
        (_, Step::Corners) => "Choose a corner first.",
        (_, Step::Lamps) => "Do not drive before the warning lights have been checked.",
        (_, Step::MeetLook) => "Check key and part before anything is loosened.",
        (_, Step::TeardownYes) => {
            "Nothing is loosened before the customer has approved the inspection."
        }
        (_, Step::BeforeDriving) => "Check all four before the car is driven.",
        (_, Step::NutsToCard) => {
            "Do not drive: bring every lug nut to spec first, or skip the road test."
        }
        (_, Step::LiftHold) => "Hold and chock the car before you raise it.",
        (_, Step::LiftStand) => "Keep clear until the car is on its jack stand.",
        (_, Step::Shove) => {
            "Keep clear. Lower the car, chock it again, set the jack stand again, then shove again."
        }
        (_, Step::RockNuts) => {
            "Tighten every lug nut to spec first. Any missing: do not drive. Two or more loose: STOP."
        }
        (_, Step::NutFound) => {
            "Look at the axle nut before you measure. With a slack nut the reading means nothing."
        }
        (_, Step::WheelOff | Step::WheelOffAgain) => {
            "Take the wheel off first. If the spec is read with the wheel on, say so at the dial setup."
        }
        (_, Step::CaliperUp | Step::CaliperUpAgain) => {
            "Caliper up and pads out before you read the dial, or record another setup at the dial."
        }
        (_, Step::Decide) => "Make the decision first, or end the job as left unfinished.",
        (_, Step::Agree) => "Ask the customer, or leave the car and wait for the answer.",
        (_, Step::CrackAxleNut | Step::StripNut | Step::StripBrake | Step::StripHub) => {
            "The next part cannot come off before this one. Stuck for good: end as left unfinished."
        }
        (_, Step::Compare) => "Compare the new part with the old one before it is installed.",
        (_, Step::Offer) => "The hub must be in its seat before the work goes on.",
        (_, Step::Pedal | Step::ProvePedal) => {
            "The car must not move. Pump again; still soft: look for a leak, then bleed the brake."
        }
        (_, Step::Lower) => "Lower the car before it is handed over.",
        (_, Step::ProveLamps) => "Check the warning lights before the car moves.",
        (_, Step::Clear) => "Look under the car before it moves.",
        (_, Step::Tools) => "Check that the wheel-lock key is back in the car.",
        _ => "Put this right, then answer again.",
    }
}

/// The heading over such a sentence.
pub(in crate::text) fn held_title() -> &'static str {
    "Not yet"
}

/// What one key answers of rows that were not touched.
pub(in crate::text) fn also_rows(rows: usize, done: bool) -> String {
    match (rows, done) {
        (1, true) => "Also: the row above is done.".to_owned(),
        (1, false) => "Also: yes to the row above.".to_owned(),
        (rows, true) => format!("Also: the {rows} rows above are done."),
        (rows, false) => format!("Also: yes to the {rows} rows above."),
    }
}

/// The key of a list: what it answers, of so many rows that were not touched.
pub(in crate::text) fn yes_to(open: usize, all: usize) -> String {
    match open {
        0 => "Save the answers".to_owned(),
        open if open == all => format!("Yes to all {all}"),
        1 => "Yes to the other one".to_owned(),
        open => format!("Yes to the other {open}"),
    }
}

/// The key that shows what lies below the edge.
pub(in crate::text) fn more_below() -> &'static str {
    "More below ↓"
}

/// Said of a job that had ended and was loosened again.
pub(in crate::text) fn open_again() -> &'static str {
    "This job had ended. Something was loosened again, so it is open again: do not drive the car."
}

/// The signs of the road that were there before the repair and after it.
pub(in crate::text) fn still_there(signs: &str) -> String {
    format!("Still there after the repair: {signs}. Perhaps another corner or another part.")
}

/// The signs of the road that were there before the repair and were not tried after it.
pub(in crate::text) fn not_tried(signs: &str) -> String {
    format!("Not tried after the repair: {signs}.")
}
