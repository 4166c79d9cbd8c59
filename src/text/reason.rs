//! The reasons of a decision, as far as their sentences need values.

/// One reason of a decision; every value in it is already formatted with its unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReasonWord<'a> {
    /// Over the maker's limit by more than the uncertainty.
    PlayOverProven {
        /// Play as measured.
        play: &'a str,
        /// The expanded uncertainty.
        uncertainty: &'a str,
        /// The limit.
        limit: &'a str,
        /// Where the limit was read.
        source: &'a str,
    },
    /// Over the maker's limit by less than the uncertainty.
    PlayOverNotProven {
        /// Play as measured.
        play: &'a str,
        /// The expanded uncertainty.
        uncertainty: &'a str,
        /// The limit.
        limit: &'a str,
    },
    /// Within the maker's limit by more than the uncertainty.
    PlayWithinProven {
        /// Play as measured.
        play: &'a str,
        /// The expanded uncertainty.
        uncertainty: &'a str,
        /// The limit.
        limit: &'a str,
        /// Where the limit was read.
        source: &'a str,
    },
    /// Within the maker's limit by less than the uncertainty.
    PlayWithinNotProven {
        /// Play as measured.
        play: &'a str,
        /// The expanded uncertainty.
        uncertainty: &'a str,
        /// The limit.
        limit: &'a str,
    },
    /// Over the house limit: it condemns.
    HouseLimitOver {
        /// Play as measured.
        play: &'a str,
        /// The house limit.
        limit: &'a str,
    },
    /// Under the house limit: it never clears.
    HouseLimitUnder {
        /// Play as measured.
        play: &'a str,
        /// The house limit.
        limit: &'a str,
    },
    /// The maker allows none, and the dial moved.
    ZeroLimitMoved {
        /// Play as measured.
        play: &'a str,
        /// The dial's division.
        resolution: &'a str,
    },
    /// The maker allows none, and the dial did not move.
    ZeroLimitStill {
        /// The dial's division.
        resolution: &'a str,
    },
    /// The limit belongs to another method or another place.
    NoComparison {
        /// Play as measured.
        play: &'a str,
        /// The limit.
        limit: &'a str,
    },
    /// No limit was found and no house limit fits the method.
    NoLimit {
        /// Play as measured.
        play: &'a str,
    },
    /// No reading was taken.
    NotMeasured,
    /// The rounds lie too far apart.
    RoundsApart {
        /// How far.
        spread: &'a str,
    },
    /// The base gave way by more than a division.
    BaseGave,
    /// The second set agrees with the first.
    SecondSetAgrees,
    /// The second set does not agree with the first.
    SecondSetDiffers,
    /// The nut was brought to its card before the reading.
    NutRetorqued,
    /// The hub runs rough.
    Rough,
    /// The hub is noisy, and the noise is the bearing's.
    NoisyFromBearing,
    /// Grinding, with heat or smoke.
    HeatSmokeGrinding,
    /// Play by hand went away with the brake held.
    PlayFeltGoneWithBrake,
    /// Play by hand stayed with the brake held.
    PlayFeltStaysWithBrake,
    /// Play by hand, the brake-held test not done.
    PlayFelt,
    /// It knocks, or the wheel tilts visibly.
    KnocksOrTilt,
    /// The axle nut was found slack.
    NutFoundSlack,
    /// Wheel nuts were found loose or missing.
    WheelNutsLoose,
    /// A flange, knuckle or stud is cracked.
    SomethingCracked,
    /// The brake pedal is not firm.
    PedalNotFirm,
    /// The road test speaks for this bearing.
    RoadPointsHere,
    /// The road test speaks for something else.
    RoadPointsElsewhere,
    /// A noise on the road, and nothing says where it sits.
    RoadNotLocated,
    /// The hub is clearly hotter than the one on the other side.
    HotterThanOther,
    /// The other side feels tighter.
    OtherSideTighter,
    /// Both sides feel the same.
    SameAsOtherSide,
    /// Nothing was found by hand, ear or dial.
    NothingFound,
    /// A test was not done.
    NotDone {
        /// Which.
        what: &'a str,
    },
    /// The new part measures over its limit.
    NewPartOver {
        /// Play as measured.
        play: &'a str,
        /// The limit.
        limit: &'a str,
    },
    /// The new part runs rough or is noisy.
    NewPartRough,
    /// Before and after were not measured by the same method.
    MethodsDiffer,
    /// Reading and limit cannot be compared.
    NotCompared {
        /// Why, in lower case.
        why: &'a str,
    },
    /// The hub has caused a fault of the brake.
    BrakeFault,
    /// The wheel locks up.
    LocksUp,
}
