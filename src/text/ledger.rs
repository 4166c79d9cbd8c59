//! What the lists and counts of the shop say, and what is asked for them.

use super::table::{phrases, sentences};

sentences! {
    /// A title, a head or a sentence of the shop's lists.
    pub enum Ledger, ledger {
        OpenFiles => "Open files",
        DropHere => "Drop the files of the vans here, or tap and choose them.",
        CameIn => "came in",
        Stopped => "stopped",
        NothingNew => "nothing new",
        Asks => "asks first",
        Refused => "refused",
        FindJob => "Plate, VIN, name, phone, invoice, part or lot",
        NoneFound => "No job matches that.",
        ChecksTitle => "Wrenches and dials to check",
        Dial => "Dial indicator",
        StockTitle => "Parts in the van",
        StockSay => "Counted down by each part installed since the last count.",
        Part => "Part",
        Left => "Left",
        Today => "Today",
        Cores => "Cores",
        ToOrder => "Order",
        NotCounted => "not counted",
        CountsTitle => "Counts of the shop",
        CountsSay =>
            "Each box reaches from the lower to the upper end at 95 percent, the line in it is what was counted. A long box says that few were counted: no row is better than another while their boxes overlap.",
        CountsNothing => "Nothing to count yet.",
        Of => "Counted",
        Between => "Between",
        CausesTitle => "Causes of comebacks",
        CausesSay => "Of the comebacks at the same corner with a recorded cause.",
        MinutesTitle => "Minutes billed and actual",
        MinutesSay =>
            "Actual: from site check to job end, one day, one phone, minus time waiting for approval; other breaks are included. Billed: labor lines of the estimate, quantity in hours. Finished jobs with both values only.",
        Jobs => "Jobs",
        Sold => "Billed",
        Real => "Actual",
        Over => "Over billed",
        OneJob => "one job says nothing",
        CauseAsk => "Why did it come back?",
        AddPart => "Count a part",
        PartHave => "In the van now",
        PartLeast => "Order below",
        PartCores => "Cores to send back",
        WholePieces => "Whole pieces, and a part number.",
    }
}

phrases! {
    files_of(done: usize, all: usize) => "{done} of {all} files",
    files_sum(came: usize, nothing: usize, refused: usize) =>
        "{came} came in, {nothing} nothing new, {refused} refused",
    more_rows(more: usize) => "and {more} more",
    check_by(day: &str) => "by {day}",
    stock_line(number: &str, have: u16, least: u16, cores: u16) =>
        "{number}: {have} in the van, order below {least}, {cores} cores to send back",
    span_alt(title: &str, rows: &str) => "{title}: {rows}",
}
