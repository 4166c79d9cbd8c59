//! Words of the run-out: the bench on the screen and its part of the report.

use super::table::{phrases, sentences};

sentences! {
    /// A word or a fixed sentence of the run-out.
    pub enum FaceWord, face {
        Title => "Runout",
        Say =>
            "Base on the knuckle, tip square on the face, dial at zero at lug 1. Turn the hub by hand in the order of the lugs.",
        Caution =>
            "On its jack stand, engine off, fingers clear of the caliper while it turns. Service information takes precedence.",
        Surface => "What turns under the tip?",
        Places => "How many places?",
        Angles => "Where are the places?",
        AngleSay => "Degrees from lug 1, in the order of the lugs.",
        AngleKeep => "Read the needle here",
        Stud => "Hole 1 of the rotor sits on lug",
        Cleaned => "Both faces cleaned to bare metal?",
        Start => "Start reading",
        TurnTo => "Turn to this place, let the needle rest, read.",
        Skip => "Skip this place",
        ReadFirstAgain => "Read place 1 again",
        FirstAgain => "Place 1 again: did the needle come back?",
        ReadAgain => "Read it again",
        CountAgain => "Let it count",
        AnotherRun => "Another run",
        LimitTitle => "Manufacturer's limit",
        NoLimit => "No limit looked up.",
        NoLimitTail => "no limit looked up.",
        TypeLimit => "Type the limit",
        KeepLimit => "Save the limit",
        Place => "Place",
        Angle => "Angle",
        Needle => "Needle, divisions",
        FromFirst => "From the first place",
        Skipped => "skipped",
        Counts => "Counts",
        Runout => "Runout, scatter removed",
        Interval => "95 % interval",
        OfScatter => "Of this, scatter of the readings",
        Tir => "Total indicator reading, with scatter",
        Mean => "Mean",
        Wobble => "Wobble, once a turn",
        Warp => "Warp, twice a turn",
        Rest => "Not explained by either",
        HighSpot => "High spot",
        StandsOut => "Stands out by",
        NoHighSpot => "Where it is high is not known.",
        Closure => "Place 1 read again, off by",
        NotClosed => "not read again",
        Positions => "The rotor on each lug",
        Radius => "Tip's distance from the axle's center",
        RadiusSay =>
            "With it for hub face and rotor, the best lug is found without turning the rotor. May stay empty.",
        TipTitle => "The tip was tilted",
        TipSay =>
            "Degrees off square, plunger or lever. A tilted tip shows too much: the play is the reading times the cosine.",
        KeepTip => "Save the tilt",
        CreepTitle => "The needle crept untouched",
        CreepSay =>
            "Divisions, with the setup untouched: an arm in the sun or in a hand warms and grows. The play is less certain.",
        KeepCreep => "Save the creep",
        SeenElsewhere => "Seen at another place",
        SeenSay =>
            "How far each place is from the axle's center. A visual aid: another place is another method, and nothing is compared there.",
        KeepRadii => "Save the distances",
        Position => "Position",
        Expected => "Wobble to expect",
        Now => "it sits here now",
        Best => "best",
        StudsUnknown => "How many lugs the wheel has is not known.",
        Next => "Next",
        Common => "The order of the next steps is common practice, no source.",
        Readings => "Readings",
        Probability => "Probability that it is within the limit",
        Zero => "Dial to zero at lug 1.",
        ZeroedHere => "Save 0: zeroed here",
        Last => "Last",
    }
}

phrases! {
    seen_at(play: &str, place: &str) =>
        "About {play} at: {place}, if it rocks about the bearing's center. An aid, never compared with a limit.",
    tip_radius(place: &str, radius: &str) => "{place}: {radius} from the axle's center",
    place_of(place: u8, places: u8, angle: &str) =>
        "Place {place} of {places}, {angle} on from lug 1",
    place_where(place: u8, places: u8) => "Place {place} of {places}: at which angle?",
    from_to(low: &str, high: &str) => "{low} to {high}",
    with_interval(value: &str, low: &str, high: &str) => "{value} (95\u{a0}% from {low} to {high})",
    hole_on_stud(stud: u8) => "Hole 1 on lug {stud}",
}
