//! Words of the run-out: the bench on the screen and its part of the report.

/// Declares the words with a list of all of them.
macro_rules! face_words {
    ($($(#[$meta:meta])* $word:ident,)+) => {
        /// A word or a fixed sentence of the run-out.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum FaceWord { $($(#[$meta])* $word,)+ }

        impl FaceWord {
            /// Every one of them.
            pub const ALL: &'static [Self] = &[$(Self::$word),+];
        }
    };
}

face_words! {
    /// Run-out.
    Title,
    /// What the bench is for.
    Say,
    /// The caution of the bench.
    Caution,
    /// What turns under the tip?
    Surface,
    /// How many places?
    Places,
    /// How are the places found?
    Angles,
    /// At which angle does the tip stand?
    AngleSay,
    /// Go on to the needle.
    AngleKeep,
    /// Which stud is hole 1 of the rotor on?
    Stud,
    /// Are both faces cleaned to bare metal?
    Cleaned,
    /// Start reading.
    Start,
    /// Turn to the place and let the needle rest.
    TurnTo,
    /// Skip this place.
    Skip,
    /// Read place 1 again.
    ReadFirstAgain,
    /// The first place again.
    FirstAgain,
    /// Read this place again.
    ReadAgain,
    /// Let it count again.
    CountAgain,
    /// Another run.
    AnotherRun,
    /// The limit of the maker.
    LimitTitle,
    /// No limit looked up.
    NoLimit,
    /// The same, at the end of a sentence.
    NoLimitTail,
    /// Type the limit.
    TypeLimit,
    /// Keep the limit.
    KeepLimit,
    /// Place.
    Place,
    /// Angle.
    Angle,
    /// Needle, divisions.
    Needle,
    /// From the first place.
    FromFirst,
    /// Skipped.
    Skipped,
    /// Counts.
    Counts,
    /// The runout itself.
    Runout,
    /// The two ends of its interval.
    Interval,
    /// The part of the uncertainty that scatter makes.
    OfScatter,
    /// Total indicator reading.
    Tir,
    /// Mean.
    Mean,
    /// Wobble, once a turn.
    Wobble,
    /// Warp, twice a turn.
    Warp,
    /// What the waves do not explain.
    Rest,
    /// High spot.
    HighSpot,
    /// Stands out.
    StandsOut,
    /// Too small to say where.
    NoHighSpot,
    /// The needle came back off by.
    Closure,
    /// The first place was not read again.
    NotClosed,
    /// The rotor on each stud.
    Positions,
    /// How far the tip stands from the axle's middle.
    Radius,
    /// What that is for.
    RadiusSay,
    /// The tip stood at a slant.
    TipTitle,
    /// What that does.
    TipSay,
    /// Keep the slant.
    KeepTip,
    /// The needle crept.
    CreepTitle,
    /// What that is and does.
    CreepSay,
    /// Keep how far.
    KeepCreep,
    /// A rocked play seen at another place.
    SeenElsewhere,
    /// What that is, and is not.
    SeenSay,
    /// Keep the distances.
    KeepRadii,
    /// Position.
    Position,
    /// Wobble to be expected.
    Expected,
    /// It sits here now.
    Now,
    /// Best.
    Best,
    /// Studs are not known.
    StudsUnknown,
    /// Next step.
    Next,
    /// Common practice, no source.
    Common,
    /// Read and marked readings.
    Readings,
    /// Probability that it is within the limit.
    Probability,
    /// Begin at stud 1 with the dial at zero.
    Zero,
    /// The dial was set to zero at this place: keep 0.
    ZeroedHere,
    /// Where the needle stood last.
    Last,
}
