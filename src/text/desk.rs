//! What the desk screens say beside the shell: Pack, the cards and the settings.

/// Declares the sayings with a list of them all.
macro_rules! desk_sayings {
    ($($(#[$meta:meta])* $word:ident,)+) => {
        /// A key label or a sentence of the desk screens.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum Desk { $($(#[$meta])* $word,)+ }

        impl Desk {
            /// Every one of them.
            pub const ALL: &'static [Self] = &[$(Self::$word),+];
        }
    };
}

desk_sayings! {
    /// By which day the dial is to be checked again.
    DialDue,
    /// Keep the day.
    KeepDay,
    /// The largest error in the dial's certificate.
    DialError,
    /// Keep that error.
    KeepError,
    /// It is a number above zero.
    ErrorSlip,
    /// Nothing was found yet.
    BookingNothing,
    /// Families whose cards are kept.
    Families,
    /// An example of a family.
    FamilyHint,
    /// Other counts.
    OtherCount,
    /// The axle nut gets an angle after its torque.
    ThenAngle,
    /// No angle after the torque.
    NoAngle,
    /// Degrees after the torque.
    AngleDegrees,
    /// Conditions of a card.
    Conditions,
    /// Method, tip and setup.
    HowMeasured,
    /// From where.
    From,
    /// Change the source.
    ChangeSource,
    /// A reason to keep a doubted figure: it was read twice.
    ReadTwice,
    /// A reason to keep a doubted figure: another document says the same.
    SecondDocument,
    /// A reason to keep a doubted figure: the maker was asked.
    AskedMaker,
    /// What else a torque card can say.
    MoreStages,
    /// It is seated before the first figure.
    SeatedFirst,
    /// One more torque.
    AddTorque,
    /// One more angle.
    AddAngle,
    /// One more turn back.
    AddBack,
    /// The last further stage goes.
    TakeStageOut,
    /// The label of a further torque.
    FurtherTorque,
    /// The label of a further angle.
    FurtherAngle,
    /// The label of a further turn back.
    FurtherBack,
    /// How many fasteners.
    Count,
    /// Their thread.
    Thread,
    /// Their class.
    Class,
    /// The order on the page.
    PatternLegend,
    /// The page does not say it.
    NotSaid,
    /// The threadlocker's grade.
    ThreadlockerGrade,
    /// An adapter on the wrench.
    Adapter,
    /// The wrench's length.
    LeverWrench,
    /// The adapter's length.
    LeverAdapter,
    /// The angle between them.
    LeverAngle,
    /// The unit of the lengths.
    LeverUnit,
    /// A lever without length.
    LeverNoLength,
    /// A lever that folds back past the grip.
    LeverNotLonger,
    /// The setting is outside the wrench's range.
    LeverOutOfRange,
    /// Something else is off.
    AlsoOff,
    /// What it is.
    AlsoName,
    /// Its torque.
    AlsoTorque,
    /// At which corner.
    AtCorner,
    /// Put it on the list.
    PutOnList,
    /// It is back in place.
    BackInPlace,
    /// It is at its card.
    AtItsCard,
    /// A wrench's finest mark.
    WrenchMark,
    /// When it was last checked.
    WrenchChecked,
    /// Its clicks since then.
    WrenchClicks,
    /// Wrenches that are to be checked.
    WrenchChecks,
    /// The share of a wrench's range.
    ShareTitle,
    /// Its lower end.
    ShareLow,
    /// Its upper end.
    ShareHigh,
    /// The stands.
    Stands,
    /// One more stand.
    AddStand,
    /// Its name.
    StandName,
    /// Its rating.
    StandRating,
    /// The unit of the rating.
    StandUnit,
    /// A stand goes.
    RemoveStand,
    /// There is an angle gauge.
    AngleGauge,
    /// Dials beside the one in use.
    OtherDials,
    /// The dial in use is kept beside others.
    LayDialBy,
    /// The heading of the first start.
    FirstTitle,
    /// What it asks for and why.
    FirstSay,
    /// What is asked of the wrenches.
    FirstWrenches,
    /// The key that begins.
    FirstStart,
    /// The key that puts it off.
    FirstLater,
    /// The shop's name.
    ShopName,
    /// No wrench is known.
    NoWrenchKnown,
    /// The same at a fastener.
    NoWrenchKnownSay,
    /// The key that takes over the van's wrenches.
    TakeWrenches,
    /// The key that asks without an amount.
    AskWithoutPrice,
    /// The key that keeps an amount.
    SavePrice,
    /// A card has no wrench: nobody leaves.
    NoWrenchNoLeaving,
    /// Leave all the same.
    LeaveWithout,
    /// Another value than the one offered.
    OtherValue,
    /// Back to the value.
    BackToValue,
    /// It is not in the document.
    NotInDocument,
    /// There is no access to the document.
    NoAccess,
    /// The vehicle is not listed.
    NotListed,
    /// By hand.
    ByHand,
    /// The maker names no setup.
    NoRig,
    /// Setup.
    Setup,
    /// A picture of the page is kept.
    PagePictured,
    /// Pages without a picture.
    PagesNotPictured,
    /// Cards not found.
    CardsNotFound,
    /// Storage.
    Storage,
    /// Every wrench fits.
    WrenchesFit,
    /// The van kit has no wrench.
    NoWrenchOnBoard,
    /// The van kit is copied into the job.
    KitCarried,
    /// On board.
    OnBoard,
    /// Missing.
    Missing,
    /// English.
    English,
    /// 0.01 mm.
    DialHundredth,
    /// 0.001 in.
    DialThou,
    /// 0.0005 in.
    DialHalfThou,
    /// Another dial.
    DialOther,
    /// Keep the dial.
    KeepDial,
    /// The division's unit.
    DivisionUnit,
    /// Used torque range hint.
    WrenchRange,
    /// The wrench's name is missing.
    KitNoName,
    /// The range is turned round.
    KitRange,
    /// A share of a range is typed wrongly.
    KitShare,
    /// There is no such dial.
    KitDial,
    /// How much storage is used cannot be told.
    StorageUnknown,
    /// A date is written year, month, day.
    DateHint,
    /// Currency code hint.
    CurrencyHint,
    /// Price and payment.
    BillTitle,
    /// The repair in lines.
    BillLines,
    /// What lines are good for.
    BillHint,
    /// The lines of the job before this.
    LastLines,
    /// What the next line is for.
    NextLine,
    /// Tax is added.
    Taxed,
    /// Keep the line.
    KeepLine,
    /// Take a line away.
    RemoveLine,
    /// Write the price out in lines.
    InLines,
    /// Invoice and payment.
    BillPayment,
    /// What is not paid yet.
    StillToPay,
    /// Give the invoice its number.
    GiveInvoice,
    /// Numbers need the van's mark.
    VanMarkNeeded,
    /// The van's mark.
    VanMark,
    /// What the mark is for.
    VanMarkHint,
    /// The shop's tax.
    TaxPercent,
    /// What to type as tax.
    TaxHint,
    /// Where the tax is rounded.
    TaxRounded,
    /// A part's number.
    PartNumber,
    /// A part's lot.
    PartLot,
    /// Keep the part.
    KeepPart,
    /// The yard.
    YardTitle,
    /// Nothing to follow.
    YardNothing,
    /// Wheel nuts overdue.
    YardOverdue,
    /// Wheel nuts due.
    YardDue,
    /// A STOP was declined.
    YardDeclined,
    /// Left unfinished.
    YardUnfinished,
    /// To be looked at again.
    YardRecheck,
    /// Waiting for a yes.
    YardWaiting,
    /// Not paid.
    YardUnpaid,
    /// Parts and what came back.
    YardParts,
    /// What the table can say.
    YardPartsSay,
    /// Part and lot.
    PartAndLot,
    /// On how many jobs.
    FittedOn,
    /// How many came back.
    CameBack,
    /// Between which shares.
    ShareHead,
    /// Beyond chance.
    StandsOut,
    /// Call.
    Call,
    /// Write.
    Write,
    /// That it is printed on every report.
    OnTheReport,
}
