//! What is said on the way between the yard and its vans.

use crate::job::entry::Slot;
use crate::text::Flow;

/// A key label or a sentence.
pub(in crate::text) const fn flow(say: Flow) -> &'static str {
    match say {
        Flow::DayTitle => "The day's file",
        Flow::DaySay => {
            "Choose the jobs of one van and their times. The file carries them in that order, with \
             earlier visits of the same vehicles, the card book and the shop's settings."
        }
        Flow::Day => "Day",
        Flow::Van => "Van (one to three letters; empty for any)",
        Flow::Time => "Time",
        Flow::DayNothing => "No open job to pack. Begin with New job.",
        Flow::MakeDay => "Make the day's file",
        Flow::ChooseFirst => "Choose a job first.",
        Flow::DaySlip => "A day is needed, and a van has one to three letters.",
        Flow::OutTitle => "Files for the yard",
        Flow::CloseDay => "Close the day",
        Flow::CloseDayWith => "Close the day with pictures",
        Flow::NothingNew => "Everything here is in the yard.",
        Flow::ChooseJobs => "Or choose jobs",
        Flow::ExportChosen => "Export the chosen jobs",
        Flow::ExportChosenWith => "The chosen jobs with pictures",
        Flow::InYard => "In the yard: yes",
        Flow::NotInYard => "In the yard: no",
        Flow::GiveReceipt => "In the yard: answer with a receipt",
        Flow::ShowReceipt => "Show the receipt as codes",
        Flow::CodesOfReceipt => {
            "The van reads them one after the other, under Import, \"From paper\"."
        }
        Flow::TooLongForCodes => "This receipt is too long for codes. Give it as a file.",
        Flow::ReceiptSay => {
            "The receipt tells the van what has come in. Opened there, each job shows that it is in \
             the yard, and the next file holds only what is new."
        }
        Flow::Receipt => "A receipt of the yard",
        Flow::ReceiptCame => "The yard's receipt was taken.",
        Flow::EntryLetGo => "A personal entry left this phone; the yard has it",
        Flow::LetGo => "The person left this phone; the yard has the job",
        Flow::GapsTitle => "Entries that have not come in",
        Flow::GapsSay => {
            "Every phone numbers its entries. Ask its holder to close the day; a number can also be \
             one that the phone could not keep."
        }
        Flow::ShopTitle => "The shop's settings",
        Flow::ShopSay => {
            "They go out with every day's file, and each van is asked to take them over."
        }
        Flow::ShopOffer => "The shop's settings are other than those here:",
        Flow::TakeShop => "Take the shop's settings",
        Flow::ShopTaken => "The shop's settings are taken over.",
        Flow::NotSet => "not set",
        Flow::Labour => "An hour of labor",
        Flow::Warranty => "Warranty text",
        Flow::Share => "Share of a wrench's range",
        Flow::Retorque => "Re-torque",
        Flow::RetorqueAfter => "Re-torque after",
        Flow::RetorqueDays => "Re-torque within so many days",
        Flow::RetorqueSay => {
            "Empty for 50 mi or 80 km and 5 days (common practice). The vehicle maker's own interval \
             wins over the shop's."
        }
        Flow::KeepDays => "Days until an owner leaves the phones",
        Flow::KeepDaysSay => {
            "Empty for never. After so many days name, address, telephone, plate, complaint, notes \
             and signatures of an ended job leave a phone that has a receipt for it. The yard keeps \
             the whole job. 30 is a good number for a van that can be stolen."
        }
        Flow::Templates => "Lines of an estimate",
        Flow::TemplatesSay => {
            "An estimate can begin with these lines. They are kept from an estimate, on its price \
             screen."
        }
        Flow::KeepTemplate => "Keep these lines for the next estimates",
        Flow::TakeTemplate => "Begin with the shop's lines",
        Flow::DropTemplate => "Remove the shop's lines",
        Flow::KeepShop => "Keep the shop's settings",
        Flow::ShopSlip => "Whole numbers and amounts only, or nothing.",
        Flow::EraseTitle => "Erase the customer",
        Flow::EraseGoes => {
            "Gone for good, here and wherever this job's file is opened: name, telephone, address, \
             plate, and where a message came from. An old file does not bring them back."
        }
        Flow::EraseStays => {
            "Stays: the vehicle with its VIN, readings, decisions, cards, torques, answers and \
             price. The report's digest still holds."
        }
        Flow::EraseMay => "May name somebody as well. Tap what shall go too:",
        Flow::EraseNow => "Erase for good",
        Flow::EraseDone => "Erased. The job is kept under another name:",
        Flow::EraseFailed => "It could not be erased. Nothing was changed.",
        Flow::EraseHalf => "Only a part of it was erased. Do it again.",
        Flow::EraseNobody => "Nobody is named in this job.",
        Flow::Complaint => "Complaint",
        Flow::Notes => "Notes",
        Flow::Signatures => "Signatures",
        Flow::Photos => "Pictures",
        Flow::Goes => "goes",
        Flow::Stays => "stays",
    }
}

/// When, and by which van, a job is done.
pub(in crate::text) fn slot(slot: &Slot) -> String {
    let time = slot.time.map(|time| time.to_string()).unwrap_or_default();
    slot_words(&slot.day.to_string(), &time, &slot.van)
}

/// The same from texts that may be empty.
pub(in crate::text) fn slot_words(day: &str, time: &str, van: &str) -> String {
    let van = if van.is_empty() {
        String::new()
    } else {
        format!("van {van}")
    };
    let words = [day, time, van.as_str()];
    let told: Vec<&str> = words.into_iter().filter(|word| !word.is_empty()).collect();
    told.join(" · ")
}

/// How much is new since the last receipt.
pub(in crate::text) fn new_since(entries: usize, logs: usize) -> String {
    let entry = if entries == 1 { "entry" } else { "entries" };
    let log = if logs == 1 {
        "job or book"
    } else {
        "jobs and books"
    };
    format!("{entries} {entry} of {logs} {log} since the last receipt.")
}

/// Running numbers that are missing, with who held the phone.
pub(in crate::text) fn gap(device: &str, by: &str, from: u64, to: u64) -> String {
    let holder = if by.is_empty() {
        device.to_owned()
    } else {
        format!("{by} ({device})")
    };
    if from == to {
        format!("{holder}: entry {from} missing")
    } else {
        format!("{holder}: entries {from}\u{2013}{to} missing")
    }
}

/// Entries that were emptied by a file.
pub(in crate::text) fn emptied(n: usize) -> String {
    if n == 1 {
        "One entry was erased by this file.".to_owned()
    } else {
        format!("{n} entries were erased by this file.")
    }
}

/// A setting with what it is and what it would be.
pub(in crate::text) fn change(what: &str, from: &str, to: &str) -> String {
    format!("{what}: {from} \u{2192} {to}")
}

/// The re-torque rule.
pub(in crate::text) fn retorque_rule(after: &str, days: u16) -> String {
    let days_word = if days == 1 { "day" } else { "days" };
    format!("{after}, within {days} {days_word}")
}

/// So many days.
pub(in crate::text) fn days(n: u16) -> String {
    format!("{n} {}", if n == 1 { "day" } else { "days" })
}

/// So many lines.
pub(in crate::text) fn lines(n: usize) -> String {
    format!("{n} {}", if n == 1 { "line" } else { "lines" })
}

/// The name of a day file, without its ending.
pub(in crate::text) fn day_file_stem(day: &str, van: &str) -> String {
    named("hubslate-day", day, van)
}

/// The name of the file of a closed day, without its ending.
pub(in crate::text) fn closed_file_stem(day: &str, van: &str) -> String {
    named("hubslate-closed", day, van)
}

/// The name of a receipt, without its ending.
pub(in crate::text) fn receipt_file_stem(day: &str) -> String {
    named("hubslate-receipt", day, "")
}

fn named(what: &str, day: &str, van: &str) -> String {
    if van.is_empty() {
        format!("{what}-{day}")
    } else {
        format!("{what}-{day}-{van}")
    }
}
