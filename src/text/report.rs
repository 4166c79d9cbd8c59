//! Headings and fixed sentences of the report.

/// Declares the report's words with a list of all of them.
macro_rules! report_words {
    ($($(#[$meta:meta])* $word:ident,)+) => {
        /// A heading or a fixed sentence of the report.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum ReportWord { $($(#[$meta])* $word,)+ }

        impl ReportWord {
            /// Every one of them.
            pub const ALL: &'static [Self] = &[$(Self::$word),+];
        }
    };
}

report_words! {
    // Page one, for the owner.
    /// Wheel bearing report.
    Title,
    /// For the customer.
    ForOwner,
    /// What you told us.
    YourWords,
    /// What we found.
    WhatWeFound,
    /// What we did.
    WhatWeDid,
    /// Parts.
    Parts,
    /// What you declined.
    YouDeclined,
    /// We advised this work, and you declined it.
    YouDeclinedSay,
    /// What can happen.
    WhatCanHappen,
    /// What to do.
    YouMustDo,
    /// Have the lug-nut torque checked.
    RetorqueHead,
    /// Why: a wheel that has been off can settle and its lug nuts lose clamp.
    RetorqueWhy,
    /// Stop the car in a safe place and call us if.
    StopFor,
    /// it knocks, grinds or hums more than before.
    StopForNoise,
    /// the wheel or the steering wobbles.
    StopForWobble,
    /// you smell heat or see smoke at a wheel.
    StopForSmell,
    /// the brake pedal is soft or goes down.
    StopForPedal,
    /// a brake or ABS lamp comes on.
    StopForLamp,
    /// Do not drive this car.
    DoNotDrive,
    /// Price.
    PriceHead,
    /// Inspection and reassembly.
    PriceRefit,
    /// The whole repair.
    PriceRepair,
    /// What a line is for.
    LineFor,
    /// How many.
    LineQuantity,
    /// Price of one.
    LineEach,
    /// Before tax.
    BeforeTax,
    /// Tax.
    Tax,
    /// Invoice number.
    InvoiceHead,
    /// Paid.
    PaidHead,
    /// Signature.
    Signature,
    /// Would not sign.
    SignatureRefused,
    /// How to reach us.
    Contact,
    /// Warranty.
    Warranty,
    /// Cut off here and keep in the car.
    TearOff,
    /// Practice, not a real job. The car is invented.
    Practice,
    // Limits, honestly named.
    /// No maker limit found.
    NoMakerLimit,
    /// House limit (common practice, no source).
    HouseLimit,
    /// It can show that a bearing is worn. It can never show that one is good.
    HouseLimitSay,
    /// Within the limit, but not proven: it lies closer to the limit than this gauge can tell.
    WithinNotProven,
    /// No play does not prove a bearing good. Noise and roughness often come first.
    NothingClears,
    /// Measured by different methods, so not compared.
    NotComparedSay,
    /// Not measured.
    NotMeasured,
    /// Common practice, no source.
    CommonPractice,
    /// These figures were taken from an earlier job and not looked up again.
    NotLookedUpSay,
    /// Beside how long a card was not looked up.
    CardAge,
    /// The earliest of the published figures: common practice.
    RetorqueDefault,
    /// The manufacturer's service information takes precedence.
    MakerWins,
    /// This report says what was seen and measured on the day. It is no promise of how long a part will last.
    Disclaimer,
    /// Cautions.
    Cautions,
    /// What was not checked.
    NotChecked,
    /// Not done, and why.
    NotDoneHead,
    /// Every step that was asked for was done.
    NothingNotDone,
    /// Noted later.
    NotedLater,
    /// These were done first and written down later.
    NotedLaterSay,
    // The technician's pages.
    /// The technician's pages.
    ForTechnician,
    /// Job.
    Job,
    /// Vehicle.
    Vehicle,
    /// Corners.
    Corners,
    /// Decisions.
    Decisions,
    /// It rests on.
    RestsOn,
    /// Rules, version.
    Rules,
    /// Spec cards.
    SpecCards,
    /// Source.
    Source,
    /// Method.
    Method,
    /// Place.
    Place,
    /// Condition.
    Condition,
    /// Readings.
    Readings,
    /// Round.
    Round,
    /// Pushed in.
    Push,
    /// Pulled out.
    Pull,
    /// Play.
    Play,
    /// Expanded uncertainty.
    Uncertainty,
    /// What the uncertainty is made of.
    Budget,
    /// Dial gauge.
    Dial,
    /// Setup: what is off the car.
    Rig,
    /// First set.
    SetOne,
    /// Second set.
    SetTwo,
    /// The axle nut had been loosened before this reading.
    NutLoosened,
    /// Hands and ears.
    HandTests,
    /// Road test.
    RoadSigns,
    /// Before.
    SignBefore,
    /// After.
    SignAfter,
    /// Hub temperatures.
    Heat,
    /// Fasteners.
    Fasteners,
    /// Wrench.
    Wrench,
    /// On the card.
    Target,
    /// Wrench set to.
    SetTo,
    /// New.
    NewFastener,
    /// What went wrong with a fastener, and adapters.
    WentWrong,
    /// Loose list.
    LooseList,
    /// Nothing was left loose.
    NothingLoose,
    /// Approvals and refusals, in order.
    Consents,
    /// Notes.
    Notes,
    /// Pictures.
    Pictures,
    /// No picture.
    NoPicture,
    /// Warning lamps.
    Lamps,
    /// Place of work.
    Site,
    /// Handed over.
    HandedOver,
    /// Afterwards.
    LookBack,
    /// To be settled.
    Problems,
    /// Told differently on two phones; the safer one counts here.
    TwoAnswers,
    /// Entries.
    Entries,
    /// Taken back.
    TakenBack,
    /// Digest.
    Digest,
    /// Every number here can be worked out again from the exported file.
    Recompute,
    // Labels and sentences of the pages themselves.
    /// No decision was recorded.
    NotDecided,
    /// Have it towed, or leave it where it stands.
    TowIt,
    /// Who took charge of the car.
    TookCharge,
    /// No date was set.
    RetorqueNoDate,
    /// Date.
    Date,
    /// Step.
    Step,
    /// Answer.
    Answer,
    /// When.
    When,
    /// By.
    By,
    /// What.
    What,
    /// Part or fastener.
    ItemHead,
    /// State.
    State,
    /// Value.
    Value,
    /// No card was filled in.
    NoCard,
    /// Limit.
    Limit,
    /// Mean of the rounds.
    Mean,
    /// Combined standard uncertainty.
    Combined,
    /// Standard uncertainty.
    Standard,
    /// Degrees of freedom.
    Freedom,
    /// Not limited.
    Unlimited,
    /// Proven from this far beyond the limit.
    GuardBand,
    /// Probability that the play is within the limit.
    Probability,
    /// Result.
    Result,
    /// One division.
    Division,
    /// Divisions in one turn.
    DivisionsTurn,
    /// Force.
    Force,
    /// By hand.
    ByHand,
    /// Marked.
    Marked,
    /// Dial set to zero while pushed in.
    DialZeroed,
    /// No reading was taken.
    NoSet,
    /// Instruments on board.
    Instruments,
    /// Missing from the kit.
    KitMissing,
    /// Not recorded.
    NotRecorded,
    /// Every answer.
    Answers,
    /// Answers to steps that the plan no longer asks.
    OtherAnswers,
    /// Never answered.
    Untouched,
    /// What was loosened and refitted.
    LooseMoves,
    /// The pass began.
    PassBegan,
    /// Started.
    Started,
    /// Ended.
    Ended,
    /// For.
    Scope,
    /// How it was given.
    HowGiven,
    /// Amount.
    Amount,
    /// Fewer than three cycles prove nothing.
    TooFewCycles,
    /// Reasons as recorded.
    RecordedReasons,
    /// A second set was asked for before it stands.
    AskedAgain,
    /// An entry that others name is not here.
    EntryMissing,
    /// The phone had more entries than it has now.
    EntriesLost,
    /// Two different entries carry one name.
    EntryEdited,
    /// An entry of a kind that this version does not know.
    EntryUnknown,
    /// An entry claims to have seen what came after it: forged or broken.
    EntryCircle,
    /// A personal entry was erased.
    EntryErased,
    /// Device.
    Device,
    /// Due.
    Due,
    /// Signed in the box.
    Signed,
    /// A picture.
    PictureKept,
    /// Where it was started.
    StartedFrom,
}
