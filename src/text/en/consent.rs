//! What is said round a yes and a no.

use crate::text::consent::Asking;

/// One sentence or label.
pub(in crate::text) fn asking(say: Asking) -> String {
    match say {
        Asking::WaitKey => "No answer yet: the car waits".to_owned(),
        Asking::Witness => "Who else saw it (name)".to_owned(),
        Asking::RefusedToSign("") => "Refused to sign; no witness is named.".to_owned(),
        Asking::RefusedToSign(who) => format!("Refused to sign, witnessed by {who}."),
        Asking::HowGiven => "How it was answered".to_owned(),
        Asking::Reason(why) => format!("Reason: {why}"),
        Asking::CostsMore(amount) => format!("{amount} more"),
        Asking::NewTotal(amount) => format!("new total {amount}"),
    }
}
