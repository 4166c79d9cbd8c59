//! What the lists and counts of the yard say, and what is asked for them.

use super::table::{phrases, sentences};

sentences! {
    /// A title, a head or a sentence of the yard's lists.
    pub enum Ledger, ledger {
        OpenFiles => "Open files",
        DropHere => "Drop the files of the vans here, or tap and choose them.",
        CameIn => "came in",
        NothingNew => "nothing new",
        Asks => "asks first",
        Refused => "refused",
        FindJob => "Plate, VIN, name, part or lot",
        NoneFound => "No job is found by that.",
        ChecksTitle => "Wrenches and dials to check",
        Dial => "Dial gauge",
        StockTitle => "Parts on board",
        StockSay => "Counted down by each part that was fitted since somebody counted.",
        Part => "Part",
        Left => "Left",
        Today => "Today",
        Cores => "Old ones back",
        ToOrder => "Order",
        NotCounted => "not counted",
        CountsTitle => "Counts of the shop",
        CountsSay =>
            "Each box reaches from the lower to the upper end at 95 percent, the line in it is what was counted. A long box says that few were counted: no row is better than another while their boxes overlap.",
        CountsNothing => "Nothing to count yet.",
        Of => "Counted",
        Between => "Between",
        DamagesTitle => "Seen on old hubs",
        DamagesSay =>
            "Of the hubs that somebody looked at, in the terms of ISO 15243. Suspected only: a sealed hub shows little.",
        CausesTitle => "Why they came back",
        CausesSay => "Of the jobs that came back with the same corner and told why.",
        MinutesTitle => "Minutes sold and minutes taken",
        MinutesSay =>
            "Taken: from the look at the site to the end, on one day by one phone, less the time that the car waited for an answer; other breaks are not known and count. Sold: the labor lines of the estimate, their quantity read as hours. Only finished jobs that tell both.",
        Jobs => "Jobs",
        Sold => "Sold",
        Real => "Taken",
        Over => "Over what was sold",
        OneJob => "one job says nothing",
        DamageAsk => "Seen on the old one, suspected",
        CauseAsk => "Why did it come back?",
        AddPart => "Count a part",
        PartHave => "On board now",
        PartLeast => "Order below",
        PartCores => "Old ones to send back",
        WholePieces => "Whole pieces, and a part number.",
        SeenOnOld => "Seen on the old part, suspected",
    }
}

phrases! {
    files_of(done: usize, all: usize) => "{done} of {all} files",
    files_sum(came: usize, nothing: usize, refused: usize) =>
        "{came} came in, {nothing} nothing new, {refused} refused",
    more_rows(more: usize) => "and {more} more",
    check_by(day: &str) => "by {day}",
    seen_damage(corner: &str, seen: &str, term: &str) => "{corner}: {seen} (ISO 15243: {term})",
    stock_line(number: &str, have: u16, least: u16, cores: u16) =>
        "{number}: {have} on board, order below {least}, {cores} old ones to send back",
    span_alt(title: &str, rows: &str) => "{title}: {rows}",
}
