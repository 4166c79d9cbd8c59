//! How a job ends.

use crate::words;

words! {
    /// How a job can end.
    pub enum Ending {
        Finished = "finished", NothingWrong = "nothing_wrong", Declined = "declined",
        NotSafeHere = "not_safe_here", LeftUnfinished = "left_unfinished",
    }
}

/// How the job ended.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Ended {
    /// How.
    pub ending: Ending,
    /// Who took charge of the vehicle, if it was left unfinished.
    pub charge: Option<Charge>,
}

words! {
    /// Who took charge of a vehicle that cannot be driven.
    pub enum Charge {
        CustomerOnStands = "customer_on_stands", Towed = "towed", WeComeBack = "we_come_back",
    }
}
