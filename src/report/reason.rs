//! The sentence of each reason of a verdict, its figures formatted for the reader.

use crate::job::judge::Measured;
use crate::text::{self, Lang, ReasonWord};
use crate::trade::play::conformity::WhyNot;
use crate::trade::play::{Against, Comparison, Felt, Reason, StopSign};
use crate::units::{Format, Length};

/// Decimals of a play in millimetres; a hundredth dial read thrice has a third of a division.
const DECIMALS: usize = 3;

/// One reason in the reader's language.
pub fn sentence(lang: Lang, format: Format, reason: &Reason) -> String {
    let say = |word: ReasonWord| text::reason(lang, word);
    match *reason {
        Reason::MustNotDrive(sign) => say(stop_sign(sign)),
        Reason::LooseInBearing(felt) => loose(lang, felt, ReasonWord::PlayFeltGoneWithBrake),
        Reason::LooseElsewhere(felt) => loose(lang, felt, ReasonWord::PlayFeltStaysWithBrake),
        Reason::LooseNotLocated(felt) => loose(lang, felt, ReasonWord::PlayFelt),
        Reason::Rough => say(ReasonWord::Rough),
        Reason::Noisy => say(ReasonWord::NoisyFromBearing),
        Reason::OverProven(comparison) => over(lang, format, &comparison, true),
        Reason::OverNotProven { comparison, sets } => {
            let over = over(lang, format, &comparison, false);
            match sets {
                0 | 1 => over,
                _ => format!("{over} {}", say(ReasonWord::SecondSetAgrees)),
            }
        }
        Reason::TightProven(comparison) => tight(lang, format, &comparison, true),
        Reason::TightNotProven { comparison, sets } => {
            let tight = tight(lang, format, &comparison, false);
            match sets {
                0 | 1 => tight,
                _ => format!("{tight} {}", say(ReasonWord::SecondSetAgrees)),
            }
        }
        Reason::SetsDisagree => say(ReasonWord::SecondSetDiffers),
        Reason::UnderNotProven(comparison) => under(lang, format, &comparison, false),
        Reason::UnderProven(comparison) => under(lang, format, &comparison, true),
        Reason::NoManufacturerLimit(comparison) => say(ReasonWord::HouseLimitUnder {
            play: &length(format, comparison.play),
            limit: &length(format, comparison.limit.value),
        }),
        Reason::NoMovementSeen { resolution } => say(ReasonWord::ZeroLimitStill {
            resolution: &length(format, resolution),
        }),
        Reason::NoComparison(why) => say(ReasonWord::NotCompared {
            why: why_not(lang, why),
        }),
        Reason::NotLookedAt(test) => say(ReasonWord::NotDone {
            what: text::test(lang, test),
        }),
        Reason::SmoothAndQuiet => say(ReasonWord::NothingFound),
        Reason::RoadPointsHere => say(ReasonWord::RoadPointsHere),
        Reason::RoadNotLocated => say(ReasonWord::RoadNotLocated),
        Reason::RoadPointsElsewhere => say(ReasonWord::RoadPointsElsewhere),
        Reason::Hotter => say(ReasonWord::HotterThanOther),
    }
}

/// Why a new part does not pass, and what is checked first; `set` is its last set.
pub fn failed(
    lang: Lang,
    format: Format,
    against: &[Against],
    set: Option<&Measured>,
) -> Vec<String> {
    let over = set.filter(|_| against.contains(&Against::Over)).map(|set| {
        let play = &length(format, set.mean());
        let limit = &length(format, set.limit.value);
        text::reason(lang, ReasonWord::NewPartOver { play, limit })
    });
    let tight = set
        .filter(|_| against.contains(&Against::Tight))
        .map(|set| {
            let play = &length(format, set.mean());
            let least = &length(format, set.limit.least.unwrap_or(set.limit.value));
            text::reason(lang, ReasonWord::NewPartTight { play, least })
        });
    let rough = |it: &Against| matches!(it, Against::Rough | Against::Noisy);
    let rough = against.iter().any(rough);
    let rough = rough.then(|| text::reason(lang, ReasonWord::NewPartRough));
    over.into_iter().chain(tight).chain(rough).collect()
}

/// Why reading and limit cannot be compared, in lower case.
pub fn why_not(lang: Lang, why: WhyNot) -> &'static str {
    match why {
        WhyNot::Way(difference) => text::difference(lang, difference),
        WhyNot::ReadingFlag(mark) => text::mark(lang, mark),
    }
}

const fn stop_sign(sign: StopSign) -> ReasonWord<'static> {
    match sign {
        StopSign::VisibleTilt => ReasonWord::Tilts,
        StopSign::Knocks => ReasonWord::Knocks,
        StopSign::GrindingWithHeat => ReasonWord::HeatSmokeGrinding,
        StopSign::LooseAxleNut => ReasonWord::NutFoundSlack,
        StopSign::CrackedPart => ReasonWord::SomethingCracked,
        StopSign::LooseWheelFasteners => ReasonWord::LugNutsLoose,
        StopSign::BrakeFault => ReasonWord::BrakeFault,
        StopSign::LockUp => ReasonWord::LocksUp,
    }
}

/// Where the looseness is; seen or knocking is told too, since it alone means STOP.
fn loose(lang: Lang, felt: Felt, place: ReasonWord) -> String {
    let place = text::reason(lang, place);
    let seen = match felt {
        Felt::Nothing | Felt::JustFelt => return place,
        Felt::Seen => ReasonWord::Seen,
        Felt::Knocks => ReasonWord::Knocks,
    };
    format!("{} {place}", text::reason(lang, seen))
}

fn over(lang: Lang, format: Format, of: &Comparison, proven: bool) -> String {
    let (play, limit) = (length(format, of.play), length(format, of.limit.value));
    let (play, limit) = (play.as_str(), limit.as_str());
    let uncertainty = &band(format, of);
    let source = text::limit_source(lang, of.limit.source);
    let word = if !of.limit.is_manufacturers() {
        ReasonWord::HouseLimitOver { play, limit }
    } else if proven {
        ReasonWord::PlayOverProven {
            play,
            uncertainty,
            limit,
            source,
        }
    } else {
        ReasonWord::PlayOverNotProven {
            play,
            uncertainty,
            limit,
        }
    };
    text::reason(lang, word)
}

fn tight(lang: Lang, format: Format, of: &Comparison, proven: bool) -> String {
    let least = &length(format, of.limit.least.unwrap_or(of.limit.value));
    let (play, uncertainty) = (&length(format, of.play), &band(format, of));
    let source = text::limit_source(lang, of.limit.source);
    let word = if proven {
        ReasonWord::PlayTightProven {
            play,
            uncertainty,
            least,
            source,
        }
    } else {
        ReasonWord::PlayTightNotProven {
            play,
            uncertainty,
            least,
        }
    };
    text::reason(lang, word)
}

fn under(lang: Lang, format: Format, of: &Comparison, proven: bool) -> String {
    let (play, limit) = (&length(format, of.play), &length(format, of.limit.value));
    let uncertainty = &band(format, of);
    let source = text::limit_source(lang, of.limit.source);
    text::reason(
        lang,
        if proven {
            ReasonWord::PlayWithinProven {
                play,
                uncertainty,
                limit,
                source,
            }
        } else {
            ReasonWord::PlayWithinNotProven {
                play,
                uncertainty,
                limit,
            }
        },
    )
}

fn length(format: Format, length: Length) -> String {
    format.length(length, DECIMALS).line()
}

/// How far beyond the limit a play must be to be proven: the uncertainty that decides.
fn band(format: Format, of: &Comparison) -> String {
    length(format, of.u.times(of.g))
}
