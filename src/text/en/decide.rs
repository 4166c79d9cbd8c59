//! Decisions, their reasons, and what a no to them can lead to.

use super::words;
use crate::text::reason::ReasonWord;
use crate::trade::play::Decision;
use crate::trade::vehicle::Corner;

pub(in crate::text) fn decision(decision: Decision) -> &'static str {
    match decision {
        Decision::Keep => "KEEP",
        Decision::Watch => "WATCH",
        Decision::Replace => "REPLACE",
        Decision::Stop => "STOP",
    }
}

pub(in crate::text) fn decision_sentence_owner(decision: Decision) -> &'static str {
    match decision {
        Decision::Keep => {
            "We found nothing today that says this wheel bearing must be replaced. \
             That is not a promise that it will last."
        }
        Decision::Watch => {
            "This wheel bearing can stay for now, but it has to be checked again by the date on this page."
        }
        Decision::Replace => "This wheel bearing failed our check and should be replaced.",
        Decision::Stop => {
            "Do not drive this car. The steering can fail, the wheel can come off, \
             and people can be hurt or killed."
        }
    }
}

pub(in crate::text) fn decision_next(decision: Decision) -> &'static str {
    match decision {
        Decision::Keep => "Put it back. Say what was not checked.",
        Decision::Watch => "Put it back. Set a date to check it again.",
        Decision::Replace => "Ask the owner before anything is stripped.",
        Decision::Stop => "The car must not be driven. Ask the owner, or have it towed.",
    }
}

pub(in crate::text) fn declined_consequence(decision: Decision) -> &'static str {
    match decision {
        Decision::Keep => "No repair was advised, so none was declined.",
        Decision::Watch => {
            "You chose not to have it checked again. The wear can grow without a sound you would notice."
        }
        Decision::Replace => {
            "You chose not to have this bearing replaced. It will get worse, and it can become unsafe. \
             If it knocks, grinds or smells hot, stop driving."
        }
        Decision::Stop => {
            "You chose not to have it repaired. The steering can fail, the wheel can come off, \
             and people can be hurt or killed. The car must not be driven. Have it towed."
        }
    }
}

pub(in crate::text) fn corner_decision(corner: Corner, of: Decision) -> String {
    format!("{}: {}", words::corner_title(corner), decision(of))
}

pub(in crate::text) fn reason(reason: ReasonWord<'_>) -> String {
    let plain = match reason {
        ReasonWord::PlayOverProven {
            play,
            uncertainty,
            limit,
            source,
        } => {
            return format!(
                "Play of {play} exceeds the {limit} limit ({source}) by more than the measurement margin of {uncertainty}."
            );
        }
        ReasonWord::PlayOverNotProven {
            play,
            uncertainty,
            limit,
        } => {
            return format!(
                "Play {play} is over the limit of {limit}, but by less than the {uncertainty} it may be wrong by."
            );
        }
        ReasonWord::PlayWithinProven {
            play,
            uncertainty,
            limit,
            source,
        } => {
            return format!(
                "Play {play} is within the limit of {limit} ({source}) by more than the {uncertainty} it may be wrong by."
            );
        }
        ReasonWord::PlayWithinNotProven {
            play,
            uncertainty,
            limit,
        } => {
            return format!(
                "Play {play} is within the limit of {limit}, but not proven: it may be wrong by {uncertainty}."
            );
        }
        ReasonWord::HouseLimitOver { play, limit } => {
            return format!(
                "Play {play} is over the default limit of {limit} (common practice, no source). \
                 No manufacturer limit for this method."
            );
        }
        ReasonWord::HouseLimitUnder { play, limit } => {
            return format!(
                "No manufacturer limit for this method. Play {play} is under the default limit of {limit} \
                 (common practice, no source), which never clears a bearing."
            );
        }
        ReasonWord::ZeroLimitMoved { play, resolution } => {
            return format!(
                "The maker allows no play. Movement was seen: {play} at a division of {resolution}."
            );
        }
        ReasonWord::ZeroLimitStill { resolution } => {
            return format!(
                "The maker allows no play. No movement was seen at a division of {resolution}."
            );
        }
        ReasonWord::NoComparison { play, limit } => {
            return format!(
                "Play {play} was measured by another method than the limit of {limit}. The two are not compared."
            );
        }
        ReasonWord::NoLimit { play } => {
            return format!(
                "Play {play}. No limit was found for this method, so it proves nothing."
            );
        }
        ReasonWord::RoundsApart { spread } => {
            return format!("The rounds lie {spread} apart. Set the dial up again.");
        }
        ReasonWord::NotDone { what } => return format!("Not done: {what}."),
        ReasonWord::NewPartOver { play, limit } => {
            return format!(
                "The new part measures {play}, over the limit of {limit}. Check nut torque, seat and part."
            );
        }
        ReasonWord::NotCompared { why } => {
            return format!("The reading and the limit are not compared: {why}.");
        }
        ReasonWord::NotMeasured => "Play was not measured.",
        ReasonWord::BaseGave => {
            "The base moved by more than a division when the knuckle was pushed."
        }
        ReasonWord::SecondSetAgrees => "A second set with a fresh rig says the same.",
        ReasonWord::SecondSetDiffers => "A second set with a fresh rig does not say the same.",
        ReasonWord::NutRetorqued => {
            "The axle nut had been loosened and was brought to its card before the reading."
        }
        ReasonWord::Rough => "The hub runs rough by hand. That condemns it whatever the dial says.",
        ReasonWord::NoisyFromBearing => {
            "The noise comes from this bearing. That condemns it whatever the dial says."
        }
        ReasonWord::HeatSmokeGrinding => "It grinds, with heat or smoke.",
        ReasonWord::PlayFeltGoneWithBrake => {
            "Play felt by hand went away with the brake held: it is in the bearing."
        }
        ReasonWord::PlayFeltStaysWithBrake => {
            "Play felt by hand stayed with the brake held: look at the joints and the wheel's seat."
        }
        ReasonWord::PlayFelt => "Play was felt by hand.",
        ReasonWord::KnocksOrTilt => "It knocks, or the wheel visibly tilts.",
        ReasonWord::NutFoundSlack => "The axle nut was found slack.",
        ReasonWord::WheelNutsLoose => "Wheel nuts were found loose or missing.",
        ReasonWord::SomethingCracked => "A flange, a knuckle or a stud is cracked.",
        ReasonWord::BrakeFault => "The hub has caused a brake fault.",
        ReasonWord::LocksUp => "The wheel locks up.",
        ReasonWord::PedalNotFirm => "The brake pedal is not firm.",
        ReasonWord::RoadPointsHere => {
            "The noise rises with road speed and is louder when this side is loaded: \
             the road test points here."
        }
        ReasonWord::RoadNotLocated => {
            "There is a noise on the road, and nothing shows where it comes from: \
             this bearing is not ruled out."
        }
        ReasonWord::HotterThanOther => "This hub is clearly hotter than the one on the other side.",
        ReasonWord::RoadPointsElsewhere => {
            "The road test points to something other than this bearing."
        }
        ReasonWord::OtherSideTighter => "The other side is tighter.",
        ReasonWord::SameAsOtherSide => "Both sides feel the same.",
        ReasonWord::NothingFound => {
            "Nothing was found in the tests that were done. That alone does not prove a bearing good."
        }
        ReasonWord::NewPartRough => {
            "The new part runs rough or is noisy. Check nut torque, bolts, seat and part."
        }
        ReasonWord::MethodsDiffer => {
            "Before and after were measured by different methods and are not compared."
        }
    };
    plain.to_owned()
}
