//! What is said on the way between the yard and its vans.

use super::table::{phrases, sentences};

sentences! {
    /// A key label or a sentence about files between the yard and its vans.
    pub enum Flow, flow {
        DayTitle => "The day's file",
        DaySay =>
            "Choose the jobs of one van and their times. The file carries them in that order, with earlier visits of the same vehicles, the card book and the shop's settings.",
        Day => "Day",
        Van => "Van (one to three letters; empty for any)",
        Time => "Time",
        DayNothing => "No open job to pack. Begin with New job.",
        MakeDay => "Make the day's file",
        ChooseFirst => "Choose a job first.",
        DaySlip => "A day is needed, and a van has one to three letters.",
        OutTitle => "Files for the yard",
        CloseDay => "Close the day",
        CloseDayWith => "Close the day with pictures",
        NothingNew => "Everything here is in the yard.",
        ChooseJobs => "Or choose jobs",
        ExportChosen => "Export the chosen jobs",
        ExportChosenWith => "The chosen jobs with pictures",
        InYard => "In the yard: yes",
        NotInYard => "In the yard: no",
        GiveReceipt => "In the yard: answer with a receipt",
        ShowReceipt => "Show the receipt as codes",
        CodesOfReceipt => "The van reads them one after the other, under Import, \"From paper\".",
        TooLongForCodes => "This receipt is too long for codes. Give it as a file.",
        ReceiptSay =>
            "The receipt tells the van what has come in. Opened there, each job shows that it is in the yard, and the next file holds only what is new.",
        Receipt => "A receipt of the yard",
        ReceiptCame => "The yard's receipt was taken.",
        EntryLetGo => "A personal entry left this phone; the yard has it",
        LetGo => "The person left this phone; the yard has the job",
        GapsTitle => "Entries that have not come in",
        GapsSay =>
            "Every phone numbers its entries. Ask its holder to close the day; a number can also be one that the phone could not keep.",
        ShopTitle => "The shop's settings",
        ShopSay => "They go out with every day's file, and each van is asked to take them over.",
        ShopOffer => "The shop's settings are other than those here:",
        TakeShop => "Take the shop's settings",
        ShopTaken => "The shop's settings are taken over.",
        NotSet => "not set",
        Labour => "An hour of labor",
        Warranty => "Warranty text",
        Share => "Share of a wrench's range",
        Retorque => "Re-torque",
        RetorqueAfter => "Re-torque after",
        RetorqueDays => "Re-torque within so many days",
        RetorqueSay =>
            "Empty for 50 mi or 80 km and 5 days (common practice). The vehicle maker's own interval wins over the shop's.",
        KeepDays => "Days until an owner leaves the phones",
        KeepDaysSay =>
            "Empty for never. After so many days name, address, telephone, plate, complaint, notes and signatures of an ended job leave a phone that has a receipt for it. The yard keeps the whole job. 30 is a good number for a van that can be stolen.",
        Templates => "Lines of an estimate",
        TemplatesSay =>
            "An estimate can begin with these lines. They are kept from an estimate, on its price screen.",
        KeepTemplate => "Keep these lines for the next estimates",
        TakeTemplate => "Begin with the shop's lines",
        DropTemplate => "Remove the shop's lines",
        KeepShop => "Keep the shop's settings",
        ShopSlip => "Whole numbers and amounts only, or nothing.",
        EraseTitle => "Erase the customer",
        EraseGoes =>
            "Gone for good, here and wherever this job's file is opened: name, telephone, address, plate, and where a message came from. An old file does not bring them back.",
        EraseStays =>
            "Stays: the vehicle with its VIN, readings, decisions, cards, torques, answers and price. The report's digest still holds.",
        EraseMay => "May name somebody as well. Tap what shall go too:",
        EraseNow => "Erase for good",
        EraseDone => "Erased. The job is kept under another name:",
        EraseFailed => "It could not be erased. Nothing was changed.",
        EraseNobody => "Nobody is named in this job.",
        Complaint => "Complaint",
        Notes => "Notes",
        Signatures => "Signatures",
        Photos => "Pictures",
        Goes => "goes",
        Stays => "stays",
    }
}

phrases! {
    change(what: &str, from: &str, to: &str) => "{what}: {from} \u{2192} {to}",
}
