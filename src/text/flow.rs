//! What is said on the way between the shop and its vans.

use super::table::{phrases, sentences};

sentences! {
    /// A key label or a sentence about files between the shop and its vans.
    pub enum Flow, flow {
        DayTitle => "Day file",
        DaySay =>
            "Choose the jobs of one van and their times. The file has them in that order, with earlier visits of the same vehicles, the spec library and the shop's settings.",
        Day => "Day",
        Van => "Van (one to three letters; empty for any)",
        Time => "Time",
        DayNothing => "No open job to pack. Begin with New job.",
        MakeDay => "Make the day file",
        ChooseFirst => "Choose a job first.",
        OtherVanSay => "Planned for another van until now. This file moves them:",
        DaySlip => "A day is needed, and a van has one to three letters.",
        OutTitle => "Send to shop",
        CloseDay => "End-of-day file",
        CloseDayWith => "End-of-day file with photos",
        NothingNew => "Everything here is at the shop.",
        ChooseJobs => "Or choose jobs",
        ExportChosen => "Export the chosen jobs",
        ExportChosenWith => "The chosen jobs with photos",
        InShop => "At the shop: yes",
        NotInShop => "At the shop: no",
        GiveConfirmation => "At the shop: send confirmation",
        ShowConfirmation => "Show confirmation as codes",
        CodesOfConfirmation => "The van reads them one after the other, under Import, \"From paper\".",
        TooLongForCodes => "This confirmation is too long for codes. Give it as a file.",
        ConfirmationSay =>
            "The confirmation tells the van what has arrived. Opened there, each job shows that it is at the shop; the next file has only what is new.",
        Confirmation => "A shop confirmation",
        ConfirmationCame => "Shop confirmation imported.",
        EntryLetGo => "Personal data removed here; the shop has it",
        LetGo => "Customer data removed here; the shop has the job",
        GapsTitle => "Entries not received",
        GapsSay =>
            "Every phone numbers its entries. Ask its holder for the end-of-day file; a number can also be one that was not saved.",
        ShopTitle => "The shop's settings",
        ShopSay => "They go out with every day file, and each van is asked to use them.",
        ShopOffer => "The shop's settings are other than those here:",
        TakeShop => "Use the shop's settings",
        ShopTaken => "The shop's settings are in use.",
        NotSet => "not set",
        Labour => "An hour of labor",
        Warranty => "Warranty text",
        Share => "Share of a wrench's range",
        Retorque => "Re-torque",
        RetorqueAfter => "Re-torque after",
        RetorqueDays => "Re-torque within so many days",
        RetorqueSay =>
            "Empty for 50 mi or 80 km and 5 days (common practice). The manufacturer's own interval takes precedence.",
        KeepDays => "Days before customer data is removed",
        KeepDaysSay =>
            "Empty for never. After this many days name, address, telephone, e-mail, plate, complaint, notes and signatures of an ended job are removed from a phone that has a confirmation for it. The shop has the full job. 30 suits a van that can be stolen.",
        Templates => "Lines of an estimate",
        TemplatesSay =>
            "An estimate can begin with these lines. They are saved from an estimate, on its price screen.",
        KeepTemplate => "Save these lines for the next estimates",
        TakeTemplate => "Begin with the shop's lines",
        DropTemplate => "Remove the shop's lines",
        KeepShop => "Save the shop's settings",
        ShopSlip => "Whole numbers and amounts only, or nothing.",
        EraseTitle => "Erase the customer",
        EraseGoes =>
            "Gone for good, here and on every phone with its next file from here: name, telephone, address, e-mail, plate, and where a message came from. An old file does not bring them back.",
        EraseStays =>
            "Stays: the vehicle with its VIN, readings, decisions, specs, torques, answers and price. The report's digest still holds.",
        EraseMay => "May contain names too. Tap what to erase as well:",
        EraseNow => "Erase for good",
        EraseDone => "Erased. The job is saved under another name:",
        EraseHalf => "Only a part of it was erased. Do it again.",
        EraseFailed => "It could not be erased. Try again.",
        EraseNobody => "No one is named in this job.",
        EraseProposed => "names them",
        EraseOthers => "Other jobs of this customer. Tap one to leave it as it is:",
        Complaint => "Complaint",
        Notes => "Notes",
        Signatures => "Signatures",
        Photos => "Photos",
        Goes => "goes",
        Stays => "stays",
    }
}

phrases! {
    planned_for(job: &str, van: &str) => "{job}: van {van}",
    file_for_van(file: &str, here: &str) =>
        "This file is for van {file}, and this phone is van {here}. Check with the shop before you start.",
    change(what: &str, from: &str, to: &str) => "{what}: {from} \u{2192} {to}",
}
