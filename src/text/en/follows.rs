//! What to do now, in one sentence, where an answer holds something.

use super::{checks::check_no, steps};
use crate::job::caution::Caution;
use crate::trade::answer::Answer;
use crate::trade::wheel_end::{Build, Choice, Given, Step, StepKey};

/// Every sentence says what is put right before the question is answered again.
pub(in crate::text) fn follows(key: StepKey, given: Given, build: Build) -> &'static str {
    match (given, key.step) {
        // What was not looked at is not told as if it was wrong.
        (Given::Row(check, answer), _) if answer != Answer::NotDone => {
            check_no(check, build.fitted.fixing)
        }
        (Given::Picked(Choice::FlexMore), _) => {
            "Set the base again, stiffer or closer, then push the knuckle again."
        }
        (Given::Picked(Choice::SlotTighter), _) => {
            "Set the nut back to the looser slot, then answer again."
        }
        (Given::Picked(Choice::BrakeWarningLight), Step::ProveWarningLights) => {
            "The car must not move: find out why the brake warning light is on."
        }
        (Given::Picked(Choice::BrakeWarningLight), _) => {
            "Do not drive: find out why the brake warning light is on."
        }
        (Given::Picked(_), _) => "A new warning light: check plug, wire and sensor first.",
        _ => steps::step_for(key, build).now,
    }
}

/// A caution that only some jobs need.
pub(in crate::text) const fn caution(of: Caution) -> &'static str {
    match of {
        Caution::ElectricJack => {
            "Electric car: jack only at the manufacturer's pads, never on the battery case."
        }
        Caution::NewNut => "Use a new nut, as the spec says.",
        Caution::NewLugNuts => "Use new lug nuts, as the spec says.",
        Caution::NewBolts => "Use new bolts, as the spec says.",
        Caution::ChockBoth => {
            "Two corners of this axle: chock both wheels of the other axle, both sides. The car is held once for both."
        }
        Caution::StillChocked => {
            "Look first: both wheels of the other axle still chocked, parking brake on or in P as it was."
        }
        Caution::NutWasLoosened => {
            "The axle nut had been loosened before this reading: the report says so."
        }
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{fold, plan};
    use crate::trade::vehicle::Corner;
    use crate::trade::wheel_end::{Check, hold};

    /// What a sentence may tell somebody to do; to keep clear or not to drive is what not to do.
    const VERBS: [&str; 26] = [
        "ask", "bring", "check", "choose", "compare", "end", "find", "fix", "get", "hold", "leave",
        "look", "lower", "make", "move", "pump", "put", "raise", "say", "seat", "set", "shield",
        "swing", "take", "tighten", "wait",
    ];

    fn says_what_to_do(sentence: &str) -> bool {
        let clauses = sentence.split(['.', ',', ':', ';']);
        let clauses = clauses.flat_map(|clause| clause.split(" and "));
        let mut first = clauses.filter_map(|clause| clause.split_whitespace().next());
        first.any(|word| VERBS.contains(&word.to_lowercase().as_str()))
    }

    #[test]
    fn every_answer_that_holds_says_what_to_do_now() {
        let plan = plan(&fold(Vec::new()));
        let mut answers = vec![Given::NotDone, Given::Said(Answer::No)];
        answers.extend(Choice::ALL.iter().map(|pick| Given::Picked(*pick)));
        let rows = Check::ALL.iter().map(|row| Given::Row(*row, Answer::No));
        answers.extend(rows);
        let mut held = 0;
        let first = Step::ALL
            .iter()
            .map(|step| StepKey::at(*step, Corner::FrontLeft));
        let each = first.flat_map(|key| (1..=9).map(move |nth| StepKey { nth, ..key }));
        for key in each {
            let step = key.step;
            for given in &answers {
                if hold(key, *given, &plan).is_none() {
                    continue;
                }
                held += 1;
                let now = follows(key, *given, plan.build());
                assert!(says_what_to_do(now), "{step:?} {given:?}: {now}");
                let unnamed = now.starts_with("Put this right");
                assert!(!unnamed, "{step:?} {given:?}");
            }
        }
        assert!(held > 100, "{held}");
        // A list that was not looked at is told by its step.
        for list in [
            Step::SiteLook,
            Step::MeetLook,
            Step::BeforeDriving,
            Step::LiftStand,
        ]
        .into_iter()
        .chain([Step::Compare, Step::Clear, Step::Tools])
        {
            let now = follows(StepKey::once(list), Given::NotDone, plan.build());
            assert!(says_what_to_do(now), "{list:?}: {now}");
        }
        assert!(!says_what_to_do("Not the same part: do not install it."));
    }

    #[test]
    fn a_part_that_does_not_match_is_sent_for_and_the_corner_waits_on_its_stand() {
        for check in [Check::Pilot, Check::BoltCircle, Check::Splines] {
            let key = StepKey::at(Step::Compare, Corner::FrontLeft);
            let build = plan(&fold(Vec::new())).build();
            let now = follows(key, Given::Row(check, Answer::No), build);
            for word in ["Do not install", "on its jack stand", "get the right part"] {
                assert!(now.contains(word), "{check:?}: {now}");
            }
        }
    }
}
