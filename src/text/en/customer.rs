//! The customer's page: what is true now, why, and what it costs.

use crate::job::Repair;
use crate::job::reason::Rule;
use crate::text::customer::{Lit, Now};
use crate::trade::play::Against;
use crate::trade::wheel_end::Choice;

/// The large word.
pub(in crate::text) fn now(now: Now) -> &'static str {
    match now {
        Now::Unfinished
        | Now::Stop
        | Now::ProofFailed
        | Now::PedalSoft
        | Now::BrakeWarningLight => "DO NOT DRIVE",
        Now::ReplacedSafe => "REPLACED, safe to drive",
        Now::ReplacedOpen => "REPLACED, not released yet",
        Now::AdjustedSafe => "ADJUSTED, safe to drive",
        Now::AdjustedOpen => "ADJUSTED, not released yet",
        Now::NothingFound => "Nothing found",
        Now::WarningLightOn => "WARNING LIGHT ON",
        Now::Watch => "WATCH: check again",
        Now::Declined => "NOT REPAIRED: repair declined",
        Now::InspectionDeclined => "NOT INSPECTED: inspection declined",
        Now::NotSafeHere => "NOT INSPECTED: not safe to work here",
        Now::Incomplete => "RECORD INCOMPLETE",
        Now::Open => "IN PROGRESS: not finished",
    }
}

/// What it means, in one or two sentences.
pub(in crate::text) fn now_say(now: Now) -> &'static str {
    match now {
        Now::Unfinished => {
            "The work on this car is not finished. Do not drive or move it: a wheel can come off, \
             the brakes or the steering can fail, and people can be hurt or killed."
        }
        Now::Stop => {
            "This car is not safe to drive. The steering can fail, the wheel can come off, and \
             people can be hurt or killed."
        }
        Now::ProofFailed => {
            "The repaired wheel bearing does not pass its check. The work is not finished. If the car is driven, \
             a wheel can come off, and people can be hurt or killed."
        }
        Now::PedalSoft => {
            "The brake pedal is not firm. The brakes can fail, and people can be hurt or killed."
        }
        Now::BrakeWarningLight => {
            "The brake warning light was on when last seen. The brakes can fail, and people can be hurt or killed."
        }
        Now::ReplacedSafe => {
            "The repair is finished and road-tested: the new part passed its checks, nothing is \
             loose, and the brake pedal is firm."
        }
        Now::AdjustedSafe => {
            "The repair is finished and road-tested: the wheel bearing is set and passed its checks, \
             nothing is loose, and the brake pedal is firm."
        }
        Now::AdjustedOpen => {
            "The wheel bearing is set again. This record does not show everything that is needed to \
             call the car safe to drive:"
        }
        Now::ReplacedOpen => {
            "The wheel bearing is replaced. This record does not show everything that is needed to \
             call the car safe to drive:"
        }
        Now::NothingFound => {
            "We found nothing that must be repaired today. Everything is back in place. \
             The car may be driven. That is not a promise that the bearing will last."
        }
        Now::WarningLightOn => {
            "We found nothing at the wheel bearing that must be repaired today. Everything is back \
             in place. A warning light was on, and its cause is not known."
        }
        Now::Watch => {
            "The wheel bearing can stay for now. The car may be driven, but the bearing must be \
             checked again."
        }
        Now::Declined => {
            "You declined the repair. Everything was put back as we found it. The fault is still there."
        }
        Now::InspectionDeclined => {
            "You declined the inspection. Nothing was opened, so we cannot say whether the bearing is good."
        }
        Now::NotSafeHere => {
            "We did not open anything: the place was not safe for this work. We cannot say whether \
             the bearing is good."
        }
        Now::Incomplete => {
            "Entries of this job are missing from this copy. It cannot say what is loose or whether \
             the car may be driven."
        }
        Now::Open => "This job has not ended. These pages show how far it is.",
    }
}

/// One reason of a decision, in the customer's words; nothing where the test's own sentence says it.
pub(in crate::text) fn why(rule: Rule, of: &str) -> Option<&'static str> {
    Some(match rule {
        Rule::MustNotDrive => sign(of),
        Rule::LooseInBearing => {
            "The wheel could be rocked by hand. The looseness is in this bearing."
        }
        Rule::LooseElsewhere => {
            "The wheel could be rocked by hand, but the looseness is not in this bearing. It must be looked into."
        }
        Rule::LooseNotLocated => {
            "The wheel could be rocked by hand. Where the looseness is was not tested."
        }
        Rule::Rough => "The bearing feels rough when the wheel is turned by hand.",
        Rule::Noisy => "The bearing is noisy when the wheel is turned by hand.",
        Rule::OverProven => "The wheel hub moves more than the limit allows.",
        Rule::OverNotProven => {
            "The wheel hub moves more than the limit allows, but by less than our measurement margin."
        }
        Rule::TightProven => "The wheel bearing is set too tight: it would run hot.",
        Rule::TightNotProven => {
            "The wheel bearing may be set too tight; the difference is within our measurement margin."
        }
        Rule::SetsDisagree => "We measured twice, and the two measurements do not agree.",
        Rule::UnderNotProven => {
            "The wheel hub moves less than the limit allows, but too close to it to be sure."
        }
        Rule::UnderProven => "The wheel hub moves less than the limit allows.",
        Rule::NoManufacturerLimit => {
            "The wheel hub moves less than a default limit (common practice, no source). That alone clears nothing."
        }
        Rule::NoMovementSeen => "The wheel hub did not move when it was pushed and pulled.",
        Rule::NoComparison => {
            "How far the wheel hub moves was measured, but could not be compared with the limit."
        }
        Rule::SmoothAndQuiet => "It turns smoothly and quietly by hand, and nothing was loose.",
        Rule::RoadPointsHere => {
            "On the road there is a noise that gets louder when this wheel carries more load."
        }
        Rule::RoadNotLocated => {
            "On the road there is a noise, and nothing shows where it comes from. This bearing is not ruled out."
        }
        Rule::RoadPointsElsewhere => {
            "The noise on the road points to something other than this bearing."
        }
        Rule::Hotter => {
            "After the drive this wheel hub was clearly hotter than the one on the other side."
        }
        Rule::NotLookedAt => return None,
    })
}

fn sign(code: &str) -> &'static str {
    match code {
        "visible_tilt" => "The wheel visibly tilts.",
        "knocks" => "The wheel knocks when it is rocked.",
        "grinding_with_heat" => "The bearing grinds and gets hot.",
        "loose_axle_nut" => "The nut that holds the wheel hub was loose.",
        "cracked_part" => "A part that holds the wheel is cracked.",
        "loose_wheel_fasteners" => "Lugs of the wheel were loose or missing.",
        "brake_fault" => "The hub has caused a brake fault.",
        "lock_up" => "The wheel locks up.",
        _ => "A sign was found for which this car must not be driven.",
    }
}

/// What was done to a bearing, in a few words.
pub(in crate::text) const fn corner_repaired(repair: Repair) -> &'static str {
    match repair {
        Repair::NewPart | Repair::Set(Some(Choice::RenewedBoth)) => "wheel bearing replaced",
        Repair::Set(Some(Choice::RenewedOuter)) => "outer wheel bearing replaced, both set",
        Repair::Set(Some(Choice::RenewedInner)) => "inner wheel bearing replaced, both set",
        Repair::Set(Some(Choice::RenewedNone)) => "wheel bearing cleaned, packed and set",
        Repair::Set(_) => "wheel bearing opened and set",
    }
}

/// The same of one that fails its check after it.
pub(in crate::text) const fn corner_fails(repair: Repair) -> &'static str {
    match repair {
        Repair::NewPart => "replaced, but the new part fails its check",
        Repair::Set(_) => "opened and set, but it fails its check",
    }
}

/// Why a new part does not pass.
pub(in crate::text) fn against(against: Against) -> &'static str {
    match against {
        Against::Over => "After the repair the wheel hub moves more than the limit allows.",
        Against::Tight => "The wheel bearing is set too tight and would run hot.",
        Against::Rough => {
            "After the repair the wheel bearing feels rough when it is turned by hand."
        }
        Against::Noisy => "After the repair the wheel bearing is noisy when it is turned by hand.",
    }
}

pub(in crate::text) const fn warning_light_name(warning_light: Choice) -> &'static str {
    match warning_light {
        Choice::BrakeWarningLight => "the brake warning light",
        Choice::AbsWarningLight => "the ABS or stability warning light",
        _ => "a warning light other than brake and ABS",
    }
}

/// A warning light that is or was on, and what to do about one that may be on still.
pub(in crate::text) fn warning_light(warning_light: Choice, lit: Lit) -> String {
    let name = match warning_light {
        Choice::BrakeWarningLight => "The brake warning light",
        Choice::AbsWarningLight => "The ABS or stability warning light",
        _ => "A warning light other than brake and ABS",
    };
    let is = match lit {
        Lit::OnArrival => "was on when we arrived, and nothing shows that it went out",
        Lit::OutSince => {
            return format!("{name} was on when we arrived and is out after the work.");
        }
        Lit::Before => return format!("{name} was on when we arrived."),
        Lit::AsBefore => "is on, as it was before the work",
        Lit::SinceTheWork => "is on. It was off before the work",
        Lit::After => "is on",
    };
    let todo = match warning_light {
        Choice::BrakeWarningLight => "Have the brakes checked before the car is driven.",
        Choice::AbsWarningLight => {
            "Have the cause found. Until then ABS and stability control may not work."
        }
        _ => "Look it up in the owner's manual and have the cause found.",
    };
    format!("{name} {is}. {todo}")
}

/// A day in words: "Nov 29, 2026". `month` counts from 1.
pub(in crate::text) fn day(year: i32, month: u32, day: u32) -> String {
    const MONTHS: [&str; 12] = [
        "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec",
    ];
    let place = usize::try_from(month).unwrap_or(0).saturating_sub(1);
    let month = MONTHS.get(place).copied().unwrap_or_default();
    format!("{month} {day}, {year}")
}
