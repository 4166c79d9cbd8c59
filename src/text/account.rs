//! What the account of a job says: on the price screen, on page one and on an invoice.

use super::table::{phrases, sentences};

sentences! {
    /// A label, a key or a sentence of the account.
    pub enum Pay, pay {
        Approved => "Approved",
        Declined => "Declined, not charged",
        Included => "Approved, part of the repair",
        Discount => "Discount",
        DiscountWhy => "Reason for the discount",
        GiveDiscount => "Take it off",
        MoreChanges => "Discount, refund…",
        Refund => "Give back",
        GiveBack => "Give money back",
        Refunded => "Given back",
        Overpaid => "Overpaid, to give back",
        PaidInFull => "Paid in full.",
        PaidAhead => "Paid in advance",
        NoAmount => "Approved without an amount. Ask the customer again, with the amount.",
        OtherCurrency => "An amount in another currency is not counted here.",
        NotComplete => "Entries of this job are missing: these amounts are not final.",
        Invoice => "Invoice",
        CreditNote => "Credit note",
        Corrects => "Corrects invoice",
        CreditNumber => "Credit note number",
        Seller => "Seller",
        Buyer => "Billed to",
        TaxRate => "Tax rate",
        NotTaxed => "not taxed",
        Net => "Before tax",
        Total => "Total",
        PaidOnJob => "Paid on this job",
        Balance => "Balance of this job",
        GiveCredit => "Number the credit note",
        NumberAtEnd => "The invoice gets its number when the job has ended.",
        AllNumbered => "Everything that is to pay is on an invoice.",
        FirstNumber =>
            "This phone knows no number with these letters. If the van has given numbers, enter the last one, or take other letters in Settings. Leave it empty only for the very first invoice.",
        LastNumber => "Last number given",
        NotANumber => "That is no number with this van's letters.",
        OtherRate => "Another tax rate, percent",
        ForWhich => "For which wheel end",
        AllWheels => "All of them",
        ForThisOne => "The price is for several wheel ends. Enter what this one costs.",
        Ask => "Ask the customer",
        ToPayment => "Price and payment",
        NumbersTitle => "Invoice numbers to check",
        LinesFrozen => "What the customer approved stays as it was. A higher price needs another approval; take off a lower one as a discount.",
    }
}

phrases! {
    taxed_at(percent: &str, net: &str) => "Tax, {percent}\u{a0}% of {net}",
    number_twice(number: &str, jobs: &str) =>
        "Number {number} stands on more than one document ({jobs}). Take one back with a credit note and number it again.",
    number_gap(first: &str, last: &str) => "Numbers {first} to {last} are on no document here.",
    number_missing(number: &str) => "Number {number} is on no document here.",
}
