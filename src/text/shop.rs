//! What the shop's job list, its day board and its page of a customer say.

use super::table::{phrases, sentences};

sentences! {
    /// A title, a head or a key of the shop's job list, its board and its page of a customer.
    pub enum ShopWord, shop_word {
        JobsTitle => "Job list",
        FirstDay => "From day",
        LastDay => "To day",
        Show => "Show",
        All => "All",
        Open => "Open",
        Ended => "Ended",
        Unpaid => "Not paid",
        Declined => "Declined",
        Sort => "Sort by",
        ByDay => "Day",
        ByCustomer => "Customer",
        ByVan => "Van",
        ByAmount => "Amount",
        VanHead => "Van",
        AllVans => "All vans",
        NoVan => "No van yet",
        JobHead => "Job",
        ToPay => "To pay",
        Balance => "Balance",
        TotalHead => "Total",
        Received => "Received",
        SaveTable => "Save as table (CSV)",
        SaveBooks => "Accountant's table (CSV)",
        ShowEach => "Show all",
        NoJobs => "No job matches these choices.",
        BoardTitle => "Day board",
        BoardNothing => "No job is planned for this day.",
        Late => "Late",
        NotBegun => "Not begun",
        AtTheCar => "At the car",
        Move => "Move",
        MoveTime => "Time, empty for any",
        MoveVan => "Van: one to three letters, empty for any",
        MoveJob => "Move the job",
        MoveSay =>
            "A phone that has the job already learns of the move with its next day file: send one to each van concerned.",
        MoveSlip => "A day is needed, and a van has one to three letters.",
        CustomerTitle => "Customer",
        SaveCustomer => "Save the customer",
        Visits => "All visits",
        Mail => "E-mail",
        Map => "Map",
        DeclinedTitle => "Declined repairs to follow up",
        ReorderTitle => "Parts to order, all vans",
        InAllVans => "In all vans",
        ToOrder => "To order",
    }
}

phrases! {
    file_saved(name: &str) => "Saved as {name}. Now send it.",
    rows_of(shown: usize, all: usize) => "{shown} of {all} jobs shown.",
    days_from_to(from: &str, to: &str) => "{from} to {to}",
    left_in_van(van: &str, left: i64) => "{van}: {left}",
}
