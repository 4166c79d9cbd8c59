//! What is said round a yes and a no.

use crate::text::consent::Asking;

/// One sentence or label.
pub(in crate::text) fn asking(say: Asking) -> String {
    match say {
        Asking::WaitKey => "No answer yet: the car waits".to_owned(),
        Asking::NoAnswerYet => "No answer yet".to_owned(),
        Asking::FurtherAsk => "May we do this too?".to_owned(),
        Asking::FurtherNo => {
            "Then the wheel cannot be closed as its maker asks. The car stays where it stands, or is towed.".to_owned()
        }
        Asking::FurtherWaits => {
            "No answer yet: the car waits as it stands. Nobody reaches under it.".to_owned()
        }
        Asking::Further { more, total: "" } => format!("This work: {more} more"),
        Asking::Further { more, total } => format!("This work: {more} more, {total} in all"),
        Asking::Witness => "Who else saw it (name)".to_owned(),
        Asking::RefusedToSign("") => "Refused to sign; no witness is named.".to_owned(),
        Asking::RefusedToSign(who) => format!("Refused to sign, witnessed by {who}."),
        Asking::HowGiven => "How it was answered".to_owned(),
        Asking::Reason(why) => format!("Reason: {why}"),
        Asking::CostsMore(amount) => format!("{amount} more"),
        Asking::NewTotal(amount) => format!("new total {amount}"),
    }
}
