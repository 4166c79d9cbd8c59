//! Decisions, their reasons, and what a no to them can lead to.

use super::words;
use crate::trade::play::Decision;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::Kind;

pub(in crate::text) fn decision(decision: Decision) -> &'static str {
    match decision {
        Decision::Keep => "KEEP",
        Decision::Watch => "WATCH",
        Decision::Replace => "REPLACE",
        Decision::Stop => "STOP",
    }
}

pub(in crate::text) fn decision_sentence_customer(decision: Decision, kind: Kind) -> &'static str {
    match decision {
        Decision::Keep => {
            "We found nothing today that says this wheel bearing must be replaced. \
             That is not a promise that it will last."
        }
        Decision::Watch => {
            "This wheel bearing can stay for now, but it has to be checked again by the date on this page."
        }
        Decision::Replace if kind == Kind::Tapered => {
            "This wheel bearing failed our check. It should be opened and set again; what is worn in it is replaced."
        }
        Decision::Replace => "This wheel bearing failed our check and should be replaced.",
        Decision::Stop => {
            "Do not drive this car. The steering can fail, the wheel can come off, \
             and people can be hurt or killed."
        }
    }
}

pub(in crate::text) fn decision_next(decision: Decision) -> &'static str {
    match decision {
        Decision::Keep => "Put it back. Say what was not checked.",
        Decision::Watch => "Put it back. Set a date to check it again.",
        Decision::Replace => "Ask the customer before removing anything.",
        Decision::Stop => "Do not drive the car. Ask the customer, or have it towed.",
    }
}

pub(in crate::text) fn declined_consequence(decision: Decision) -> &'static str {
    match decision {
        Decision::Keep => "No repair was advised, so none was declined.",
        Decision::Watch => {
            "You chose not to have it checked again. The wear can grow without a sound you would notice."
        }
        Decision::Replace => {
            "You chose not to have this bearing repaired. It will get worse, and it can become unsafe. \
             If it knocks, grinds or smells hot, stop driving."
        }
        Decision::Stop => {
            "You chose not to have it repaired. The steering can fail, the wheel can come off, \
             and people can be hurt or killed. The car must not be driven. Have it towed."
        }
    }
}

pub(in crate::text) fn corner_decision(corner: Corner, of: Decision) -> String {
    format!("{}: {}", words::corner_title(corner), decision(of))
}
