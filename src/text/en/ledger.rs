//! The words of the yard's lists and counts.

use crate::job::tally::Measure;
use crate::text::ledger::Ledger;
use crate::trade::damage::{CameBackFor, Damage};

pub(in crate::text) fn ledger(word: Ledger) -> &'static str {
    match word {
        Ledger::OpenFiles => "Open files",
        Ledger::DropHere => "Drop the files of the vans here, or tap and choose them.",
        Ledger::FilesTitle => "File by file",
        Ledger::CameIn => "came in",
        Ledger::Asks => "asks first",
        Ledger::Stopped => "stopped",
        Ledger::NothingNew => "nothing new",
        Ledger::Refused => "refused",
        Ledger::GapsTitle => "Entries that are missing",
        Ledger::GapsSay => {
            "A phone counts all that it notes. What is missing may lie in a job that was not handed in, or in practice."
        }
        Ledger::FindJob => "Plate, VIN, name, part or lot",
        Ledger::NoneFound => "No job is found by that.",
        Ledger::ChecksTitle => "Wrenches and dials to check",
        Ledger::Dial => "Dial gauge",
        Ledger::StockTitle => "Parts on board",
        Ledger::StockSay => "Counted down by each part that was fitted since somebody counted.",
        Ledger::Van => "Van",
        Ledger::Part => "Part",
        Ledger::Left => "Left",
        Ledger::Today => "Today",
        Ledger::Cores => "Old ones back",
        Ledger::ToOrder => "Order",
        Ledger::NotCounted => "not counted",
        Ledger::CountsTitle => "Counts of the shop",
        Ledger::CountsSay => {
            "Each box reaches from the lower to the upper end at 95 percent, the line in it is what was counted. A long box says that few were counted: no row is better than another while their boxes overlap."
        }
        Ledger::CountsNothing => "Nothing to count yet.",
        Ledger::AllVans => "All vans",
        Ledger::Of => "Counted",
        Ledger::Between => "Between",
        Ledger::DamagesTitle => "Seen on old hubs",
        Ledger::DamagesSay => {
            "Of the hubs that somebody looked at, in the terms of ISO 15243. Suspected only: a sealed hub shows little."
        }
        Ledger::CausesTitle => "Why they came back",
        Ledger::CausesSay => "Of the jobs that came back with the same corner and told why.",
        Ledger::MinutesTitle => "Minutes sold and minutes taken",
        Ledger::MinutesSay => {
            "Taken: from the look at the site to the end, on one day by one phone, less the time that the car waited for an answer; other breaks are not known and count. Sold: the labor lines of the estimate, their quantity read as hours. Only finished jobs that tell both."
        }
        Ledger::Jobs => "Jobs",
        Ledger::Sold => "Sold",
        Ledger::Real => "Taken",
        Ledger::Over => "Over what was sold",
        Ledger::OneJob => "one job says nothing",
        Ledger::DamageAsk => "Seen on the old one, suspected",
        Ledger::CauseAsk => "Why did it come back?",
        Ledger::AddPart => "Count a part",
        Ledger::PartHave => "On board now",
        Ledger::PartLeast => "Order below",
        Ledger::PartCores => "Old ones to send back",
        Ledger::WholePieces => "Whole pieces, and a part number.",
        Ledger::SeenOnOld => "Seen on the old part, suspected",
    }
}

pub(in crate::text) fn damage(damage: Damage) -> &'static str {
    match damage {
        Damage::Fatigue => "Flaked, spalled",
        Damage::Wear => "Worn",
        Damage::Moisture => "Rust, water in it",
        Damage::FalseBrinelling => "Marks of shaking at rest",
        Damage::Overload => "Dented by a blow",
        Damage::Heat => "Blue, burnt",
        Damage::NoneSeen => "Nothing to be seen",
        Damage::NotLooked => "Not looked",
    }
}

pub(in crate::text) fn damage_term(damage: Damage) -> &'static str {
    match damage {
        Damage::Fatigue => "rolling contact fatigue",
        Damage::Wear => "wear",
        Damage::Moisture => "moisture corrosion",
        Damage::FalseBrinelling => "friction corrosion, false brinelling",
        Damage::Overload => "overload, indentation",
        Damage::Heat => "heat",
        Damage::NoneSeen => "none seen",
        Damage::NotLooked => "not looked at",
    }
}

pub(in crate::text) fn came_back_for(cause: CameBackFor) -> &'static str {
    match cause {
        CameBackFor::Part => "The new part failed",
        CameBackFor::Fitting => "Fitted wrongly",
        CameBackFor::Decision => "It was something else",
        CameBackFor::NotKnown => "Not known",
    }
}

pub(in crate::text) fn measure(measure: Measure) -> (&'static str, &'static str) {
    match measure {
        Measure::Mended => (
            "Replaced, and proved to be mended",
            "Of the hubs that were decided to be replaced: no play over the limit, smooth, quiet, and no sign of the road left.",
        ),
        Measure::CameBack => (
            "Came back",
            "Of the finished jobs that were asked: the same corner again.",
        ),
        Measure::NotedLater => (
            "Noted later",
            "Entries of which another time was told than that of the clock.",
        ),
        Measure::QuickNuts => (
            "Wheel nuts in a hurry",
            "Wheels with five nuts or more that all clicked in less than four seconds (our bound, no source).",
        ),
        Measure::Reasons => (
            "Hold points passed with a reason",
            "The shove, the readings before, the axle nut, the pedal: not done, because.",
        ),
    }
}

pub(in crate::text) fn van_name(name: &str) -> String {
    if name.is_empty() {
        ledger(Ledger::AllVans).to_owned()
    } else if name.starts_with("van") {
        name.to_owned()
    } else {
        format!("Van {name}")
    }
}

pub(in crate::text) fn files_of(done: usize, all: usize) -> String {
    format!("{done} of {all} files")
}

pub(in crate::text) fn files_sum(came: usize, nothing: usize, refused: usize) -> String {
    format!("{came} came in, {nothing} nothing new, {refused} refused")
}

pub(in crate::text) fn more_rows(more: usize) -> String {
    format!("and {more} more")
}

pub(in crate::text) fn check_by(day: &str) -> String {
    format!("by {day}")
}

pub(in crate::text) fn seen_damage(corner: &str, seen: &str, term: &str) -> String {
    format!("{corner}: {seen} (ISO 15243: {term})")
}

pub(in crate::text) fn stock_line(number: &str, have: u16, least: u16, cores: u16) -> String {
    format!("{number}: {have} on board, order below {least}, {cores} old ones to send back")
}

pub(in crate::text) fn span_alt(title: &str, rows: &str) -> String {
    format!("{title}: {rows}")
}

pub(in crate::text) fn work_on(kind: &str, corners: usize) -> String {
    if corners == 1 {
        kind.to_owned()
    } else {
        format!("{kind}, {corners}×")
    }
}
