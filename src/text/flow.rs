//! What is said on the way between the yard and its vans.

/// Declares the sayings with a list of them all.
macro_rules! flow_sayings {
    ($($(#[$meta:meta])* $word:ident,)+) => {
        /// A key label or a sentence about files between the yard and its vans.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum Flow { $($(#[$meta])* $word,)+ }

        impl Flow {
            /// Every one of them.
            pub const ALL: &'static [Self] = &[$(Self::$word),+];
        }
    };
}

flow_sayings! {
    /// The title of the screen that makes a day file.
    DayTitle,
    /// What is in a day file.
    DaySay,
    /// The day that is packed.
    Day,
    /// The van that it is packed for.
    Van,
    /// At what time.
    Time,
    /// There is nothing that could be packed.
    DayNothing,
    /// The key that makes the file.
    MakeDay,
    /// Nothing was chosen.
    ChooseFirst,
    /// The day is no day.
    DaySlip,
    /// The title of the screen of files that leave a van.
    OutTitle,
    /// The key that makes the file of everything since the last receipt.
    CloseDay,
    /// The same with pictures.
    CloseDayWith,
    /// Everything is in the yard.
    NothingNew,
    /// The heading of the jobs that can be chosen.
    ChooseJobs,
    /// The key that makes the file of the chosen jobs.
    ExportChosen,
    /// The same with pictures.
    ExportChosenWith,
    /// The yard has the job.
    InYard,
    /// The yard does not have all of the job.
    NotInYard,
    /// The key that answers with a receipt.
    GiveReceipt,
    /// The key that shows a receipt as codes.
    ShowReceipt,
    /// How they are read.
    CodesOfReceipt,
    /// It does not fit into codes.
    TooLongForCodes,
    /// What a receipt is for.
    ReceiptSay,
    /// A receipt, as an entry.
    Receipt,
    /// A receipt came in.
    ReceiptCame,
    /// A body that was let go of, as an entry.
    EntryLetGo,
    /// The person of a job left the phone.
    LetGo,
    /// Running numbers that are missing.
    GapsTitle,
    /// What such a number means.
    GapsSay,
    /// The title of the shop's settings.
    ShopTitle,
    /// What the shop's settings are for.
    ShopSay,
    /// The settings in the file differ from those here.
    ShopOffer,
    /// The key that takes them.
    TakeShop,
    /// They were taken.
    ShopTaken,
    /// Not set.
    NotSet,
    /// What an hour costs.
    Labour,
    /// The warranty, word for word.
    Warranty,
    /// The share of a wrench's range.
    Share,
    /// The re-torque rule.
    Retorque,
    /// After which distance.
    RetorqueAfter,
    /// By how many days.
    RetorqueDays,
    /// Who wins over the shop's rule.
    RetorqueSay,
    /// After how many days a person leaves a van.
    KeepDays,
    /// What that means, and why it is off at first.
    KeepDaysSay,
    /// The lines that an estimate begins with.
    Templates,
    /// What they are for.
    TemplatesSay,
    /// The key that makes them out of the open estimate.
    KeepTemplate,
    /// The key that takes the shop's lines.
    TakeTemplate,
    /// The key that removes the shop's lines.
    DropTemplate,
    /// The key that keeps the settings.
    KeepShop,
    /// A number is needed, or nothing.
    ShopSlip,
    /// The title of the screen that erases a customer.
    EraseTitle,
    /// What goes.
    EraseGoes,
    /// What stays.
    EraseStays,
    /// What may name the person besides.
    EraseMay,
    /// The key that is held.
    EraseNow,
    /// It is done.
    EraseDone,
    /// It could not be done.
    EraseFailed,
    /// Only a part of it was erased. Do it again.
    EraseHalf,
    /// There is nobody to erase.
    EraseNobody,
    /// The complaint.
    Complaint,
    /// The notes.
    Notes,
    /// The signatures.
    Signatures,
    /// The pictures.
    Photos,
    /// It goes.
    Goes,
    /// It stays.
    Stays,
}
