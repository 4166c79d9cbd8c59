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
    /// Keep it as it is printed.
    KeepAsPrinted,
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
    /// There is no such dial.
    KitDial,
    /// How much storage is used cannot be told.
    StorageUnknown,
    /// A date is written year, month, day.
    DateHint,
    /// Currency code hint.
    CurrencyHint,
}
