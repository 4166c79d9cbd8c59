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
    /// For the owner.
    ForOwner,
    /// The answer.
    TheAnswer,
    /// What you told us.
    YourWords,
    /// What we found.
    WhatWeFound,
    /// What we did.
    WhatWeDid,
    /// Before and after.
    BeforeAndAfter,
    /// Parts.
    Parts,
    /// What you declined.
    YouDeclined,
    /// We advised this work, and you said no.
    YouDeclinedSay,
    /// What can happen.
    WhatCanHappen,
    /// What you must do.
    YouMustDo,
    /// Have the wheel nuts tightened again.
    RetorqueHead,
    /// Wheels settle after they were off. Nuts that lose their hold are how most lost wheels begin.
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
    /// The car may be driven.
    MayDrive,
    /// The car is not finished and must not be driven or moved.
    LeftOnStands,
    /// Price.
    PriceHead,
    /// Inspection and putting it back.
    PriceRefit,
    /// The whole repair.
    PriceRepair,
    /// Signature.
    Signature,
    /// Would not sign.
    SignatureRefused,
    /// How to reach us.
    Contact,
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
    /// The earliest of the published figures: common practice.
    RetorqueDefault,
    /// The service information of the vehicle maker wins over everything on these pages.
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
    /// Base and tip.
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
    /// Loose list.
    LooseList,
    /// Nothing was left loose.
    NothingLoose,
    /// Yes and no, in order.
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
}
