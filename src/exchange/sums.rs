//! What the account of a job comes to, as its line in the list keeps it.

use crate::exchange::json::form;
use crate::job::JobState;
use crate::job::account::account;

/// Amounts in minor units of one currency.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Sums {
    /// The currency; empty where no amount is known.
    pub currency: String,
    /// What there is to pay; nothing before the end.
    pub to_pay: i64,
    /// What came in and stayed.
    pub received: i64,
    /// What is still to pay.
    pub open: i64,
    /// What was declined; never to pay.
    pub declined: i64,
}

form!(Sums {
    currency,
    to_pay,
    received,
    open,
    declined
});

impl Sums {
    /// Those of a job.
    pub fn of(sheet: &JobState) -> Self {
        let account = account(sheet);
        Self {
            to_pay: account.to_pay(),
            received: account.received(),
            open: account.still_to_pay(),
            declined: account.declined(),
            currency: account.currency,
        }
    }

    /// What is still to pay with its currency, if anything is.
    pub fn unpaid(&self) -> Option<(i64, String)> {
        (self.open > 0).then(|| (self.open, self.currency.clone()))
    }
}
