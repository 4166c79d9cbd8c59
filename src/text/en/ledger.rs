//! The words of the shop's lists and counts.

use super::words::corner_title;
use crate::job::tally::Measure;
use crate::trade::damage::{CameBackFor, Damage};
use crate::trade::vehicle::Corner;

pub(in crate::text) fn damage(damage: Damage) -> &'static str {
    match damage {
        Damage::Fatigue => "Flaked, spalled",
        Damage::Wear => "Worn",
        Damage::Moisture => "Rust, water in it",
        Damage::FalseBrinelling => "Vibration marks at rest",
        Damage::Overload => "Dented by a blow",
        Damage::Electrical => "Fluted, pitted by current",
        Damage::Heat => "Blue, burnt",
        Damage::NoneSeen => "Nothing visible",
        Damage::NotLooked => "Not inspected",
    }
}

pub(in crate::text) fn damage_term(damage: Damage) -> Option<&'static str> {
    Some(match damage {
        Damage::Fatigue => "rolling contact fatigue",
        Damage::Wear => "wear",
        Damage::Moisture => "moisture corrosion",
        Damage::FalseBrinelling => "frictional corrosion, false brinelling",
        Damage::Overload => "plastic deformation, overload",
        Damage::Electrical => "electrical erosion",
        // The standard has no heading for these.
        Damage::Heat | Damage::NoneSeen | Damage::NotLooked => return None,
    })
}

pub(in crate::text) fn seen_damage(corner: Corner, damage: Damage) -> String {
    let (corner, seen) = (corner_title(corner), self::damage(damage));
    match damage_term(damage) {
        Some(term) => format!("{corner}: {seen} (ISO 15243: {term})"),
        None => format!("{corner}: {seen}"),
    }
}

pub(in crate::text) fn came_back_for(cause: CameBackFor) -> &'static str {
    match cause {
        CameBackFor::Part => "The new part failed",
        CameBackFor::Fitting => "Installed wrong",
        CameBackFor::Decision => "It was something else",
        CameBackFor::NotKnown => "Not known",
    }
}

pub(in crate::text) fn measure(measure: Measure) -> (&'static str, &'static str) {
    match measure {
        Measure::Mended => (
            "Replaced, repair proved",
            "Of the hubs decided REPLACE: no play over the limit, smooth, quiet, and no road sign left.",
        ),
        Measure::CameBack => (
            "Comebacks",
            "Of the finished jobs that were asked: the same corner again.",
        ),
        Measure::NotedLater => (
            "Noted later",
            "Entries recorded with another time than the clock's.",
        ),
        Measure::QuickNuts => (
            "Lugs in a hurry",
            "Wheels with five lugs or more that all clicked in less than four seconds (our bound, no source).",
        ),
        Measure::Reasons => (
            "Hold points passed with a reason",
            "Shove, before-readings, axle nut or pedal marked not done, with a reason.",
        ),
    }
}

pub(in crate::text) fn van_name(name: &str) -> String {
    if name.is_empty() {
        "All vans".to_owned()
    } else if name.starts_with("van") {
        name.to_owned()
    } else {
        format!("Van {name}")
    }
}

pub(in crate::text) fn work_on(kind: &str, corners: usize) -> String {
    if corners == 1 {
        kind.to_owned()
    } else {
        format!("{kind}, {corners}×")
    }
}
