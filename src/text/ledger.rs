//! What the lists and counts of the yard say, and what is asked for them.

/// Declares the sayings with a list of them all.
macro_rules! ledger_sayings {
    ($($(#[$meta:meta])* $word:ident,)+) => {
        /// A title, a head or a sentence of the yard's lists.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum Ledger { $($(#[$meta])* $word,)+ }

        impl Ledger {
            /// Every one of them.
            pub const ALL: &'static [Self] = &[$(Self::$word),+];
        }
    };
}

ledger_sayings! {
    /// Files are opened by a drop or a tap.
    OpenFiles,
    /// Where they are dropped.
    DropHere,
    /// The list of what became of each file.
    FilesTitle,
    /// A file that came in.
    CameIn,
    /// stopped
    Stopped,
    /// A file that brought nothing new.
    NothingNew,
    /// A file that asks before it is taken.
    Asks,
    /// A file that was refused.
    Refused,
    /// Missing running numbers.
    GapsTitle,
    /// Where they may be.
    GapsSay,
    /// Find a job.
    FindJob,
    /// Nothing is found.
    NoneFound,
    /// Wrenches and dials.
    ChecksTitle,
    /// The dial.
    Dial,
    /// Parts on board.
    StockTitle,
    /// How it is counted.
    StockSay,
    /// A van.
    Van,
    /// A part.
    Part,
    /// How many are left.
    Left,
    /// How many were fitted today.
    Today,
    /// Old parts to be sent back.
    Cores,
    /// It is to be ordered.
    ToOrder,
    /// It was never counted.
    NotCounted,
    /// The counts of the shop.
    CountsTitle,
    /// What the ends mean.
    CountsSay,
    /// Nothing is counted yet.
    CountsNothing,
    /// All vans together.
    AllVans,
    /// So many of so many.
    Of,
    /// Between which ends.
    Between,
    /// What is seen on old parts.
    DamagesTitle,
    /// How it is told.
    DamagesSay,
    /// Why jobs came back.
    CausesTitle,
    /// Out of what it is counted.
    CausesSay,
    /// Minutes sold and taken.
    MinutesTitle,
    /// How they are counted.
    MinutesSay,
    /// Jobs.
    Jobs,
    /// Minutes sold.
    Sold,
    /// Minutes taken.
    Real,
    /// Minutes over what was sold.
    Over,
    /// One job has no ends.
    OneJob,
    /// What is seen on the old hub.
    DamageAsk,
    /// Why it came back.
    CauseAsk,
    /// One more part on board.
    AddPart,
    /// So many are on board.
    PartHave,
    /// Below so many it is ordered.
    PartLeast,
    /// So many old ones are on board.
    PartCores,
    /// A number of pieces is a whole one.
    WholePieces,
    /// In the report.
    SeenOnOld,
}
