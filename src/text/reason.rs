//! The reasons of a decision, as far as their sentences need values.

use super::table::templates;

templates! {
    /// One reason of a decision; every value in it is already formatted with its unit.
    pub enum ReasonWord<'a>, reason {
        PlayOverProven { play: &'a str, uncertainty: &'a str, limit: &'a str, source: &'a str } =>
            format!("Play of {play} exceeds the {limit} limit ({source}) by more than the margin of {uncertainty}."),
        PlayOverNotProven { play: &'a str, uncertainty: &'a str, limit: &'a str } =>
            format!("Play of {play} exceeds the {limit} limit, but by less than the measurement margin of {uncertainty}."),
        PlayWithinProven { play: &'a str, uncertainty: &'a str, limit: &'a str, source: &'a str } =>
            format!("Play of {play} is within the {limit} limit ({source}) by more than the measurement margin of {uncertainty}."),
        PlayWithinNotProven { play: &'a str, uncertainty: &'a str, limit: &'a str } =>
            format!("Play of {play} is within the {limit} limit, but not proven: the measurement margin is {uncertainty}."),
        PlayTightProven { play: &'a str, uncertainty: &'a str, least: &'a str, source: &'a str } =>
            format!("Play of {play} is under the least of {least} ({source}) by more than the margin of {uncertainty}: the rollers are too tight and run hot."),
        PlayTightNotProven { play: &'a str, uncertainty: &'a str, least: &'a str } =>
            format!("Play of {play} is under the least of {least}, but by less than the measurement margin of {uncertainty}: the rollers may be too tight."),
        HouseLimitOver { play: &'a str, limit: &'a str } =>
            format!("Play {play} is over the default limit of {limit} (common practice, no source). No manufacturer limit for this method."),
        HouseLimitUnder { play: &'a str, limit: &'a str } =>
            format!("No manufacturer limit for this method. Play {play} is under the default limit of {limit} (common practice, no source), which never clears a bearing."),
        ZeroLimitStill { resolution: &'a str } =>
            format!("The manufacturer allows no play. No movement was seen at a division of {resolution}."),
        SecondSetAgrees => "A second set with a new setup agrees.",
        SecondSetDiffers => "A second set with a new setup does not agree.",
        Rough => "The hub runs rough by hand: condemned whatever the dial says.",
        NoisyFromBearing =>
            "The noise comes from this bearing: condemned whatever the dial says.",
        HeatSmokeGrinding => "It grinds, with heat or smoke.",
        PlayFeltGoneWithBrake =>
            "Play felt by hand went away with the brake held: usually the bearing.",
        PlayFeltStaysWithBrake =>
            "Play felt by hand stayed with the brake held: look at the joints and the wheel's seat.",
        PlayFelt => "Play was felt by hand.",
        Knocks => "The wheel knocks when it is rocked.",
        Tilts => "The wheel visibly leans.",
        Seen => "The wheel visibly moves when it is rocked.",
        NutFoundSlack => "The nut that holds the hub was found slack or not locked.",
        LugNutsLoose => "Lugs were found loose or missing.",
        SomethingCracked => "A flange, a knuckle, a stud or a bolt is cracked.",
        RoadPointsHere =>
            "The noise rises with road speed and with load on this side: the road test points here.",
        RoadPointsElsewhere => "The road test points to something other than this bearing.",
        RoadNotLocated =>
            "There is a noise on the road, and nothing shows where it comes from: this bearing is not ruled out.",
        HotterThanOther => "This hub is clearly hotter than the one on the other side.",
        NothingFound =>
            "Nothing was found in the tests that were done. That alone does not prove a bearing good.",
        NotDone { what: &'a str } => format!("Not done: {what}."),
        NotCompared { why: &'a str } =>
            format!("The reading and the limit are not compared: {why}."),
        NewPartOver { play: &'a str, limit: &'a str } =>
            format!("The new part measures {play}, over the limit of {limit}. Check nut torque, hub bolts and seat, then the part."),
        NewPartTight { play: &'a str, least: &'a str } =>
            format!("After the repair it measures {play}, under the least of {least}: set too tight, it runs hot. Open it and set it again."),
        NewPartRough =>
            "The new part runs rough or is noisy. Check nut torque, hub bolts and seat, then the part.",
        BrakeFault => "The hub has caused a brake fault.",
        LocksUp => "The wheel locks up.",
    }
}
