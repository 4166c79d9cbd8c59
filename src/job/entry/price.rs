//! What the work costs, and what came in.

use crate::trade::money::Estimate;
use crate::words;

/// Money in the smallest unit of its currency.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Money {
    /// Cents, pence or the like.
    pub minor: i64,
    /// The currency's ISO 4217 code.
    pub currency: String,
}

/// What the work costs.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Price {
    /// The whole repair.
    pub repair: Money,
    /// Inspection and reassembly, if the repair is declined; nothing where nobody has given it.
    pub refit: Option<Money>,
    /// The repair in lines, in its currency; they come to the amount above.
    pub estimate: Option<Estimate>,
}

words! {
    /// How money came in. A card's number is never asked for.
    pub enum PaidHow {
        Cash = "cash", Card = "card", Transfer = "transfer", Other = "other",
    }
}

/// Less than was agreed, without another answer of the customer.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Discount {
    /// How much less, tax contained.
    pub amount: Money,
    /// Why, in words; may be empty.
    pub reason: String,
}

/// Money that came in, or went back.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Paid {
    /// How.
    pub how: PaidHow,
    /// How much.
    pub amount: Money,
}
