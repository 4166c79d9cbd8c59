//! What is said round a yes and a no.

use super::table::templates;

templates! {
    /// One sentence.
    pub enum Asking<'a>, asking {
        WaitKey => "No answer yet: the car waits",
        NoAnswerYet => "No answer yet",
        FurtherAsk => "May we do this too?",
        FurtherNo =>
            "Then the wheel end cannot be closed to spec. The car stays where it is, or is towed.",
        FurtherWaits => "No answer yet: the car waits as it is. Keep out from under it.",
        Further { more: &'a str, total: &'a str } => match total {
            "" => format!("This work: {more} more"),
            _ => format!("This work: {more} more, {total} in all"),
        },
        RepairAndFurther { repair: &'a str, further: &'a str, total: &'a str } => format!(
            "Full repair: {repair}. Further work already approved: {further}. In all: {total}",
        ),
        Witness => "Who else saw it (name)",
        RefusedToSign(who: &'a str) => match who {
            "" => "Refused to sign; no witness is named.".to_owned(),
            _ => format!("Refused to sign, witnessed by {who}."),
        },
        HowGiven => "How it was answered",
        Reason(why: &'a str) => format!("Reason: {why}"),
        CostsMore(amount: &'a str) => format!("{amount} more"),
        NewTotal(amount: &'a str) => format!("new total {amount}"),
    }
}
