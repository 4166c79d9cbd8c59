//! English for the run-out.

use super::desk::decimal_slip;
use crate::job::runout::{AngleError, Angles, Basis, RadiusError};
use crate::trade::play::uncertainty::Guarded;
use crate::trade::runout::{Form, LeftOut, Next, SeriesError, Surface, Undetermined};

pub(in crate::text) fn surface(surface: Surface) -> &'static str {
    match surface {
        Surface::HubFace => "Hub face",
        Surface::Pilot => "Pilot",
        Surface::Rotor => "Rotor on the hub",
    }
}

pub(in crate::text) fn angles(angles: Angles) -> &'static str {
    match angles {
        Angles::Equal => "Equal steps",
        Angles::Typed => "Typed angles",
    }
}

pub(in crate::text) fn angle_slip(slip: AngleError) -> String {
    match slip {
        AngleError::Number(slip) => decimal_slip(slip),
        AngleError::OffTheTurn => "A place stands from 0° to 360° on from lug 1.".to_owned(),
        AngleError::Taken { place } => {
            format!("Place {place} has this angle. Two places cannot stand at one.")
        }
    }
}

pub(in crate::text) fn radius_slip(slip: RadiusError) -> String {
    match slip {
        RadiusError::Number(slip) => decimal_slip(slip),
        RadiusError::NotAboveZero => "A distance from the axle's center is above zero.".to_owned(),
    }
}

pub(in crate::text) fn basis(basis: Basis) -> &'static str {
    match basis {
        Basis::TwoPositions => {
            "Computed from the rotor read in two positions. Only a new reading proves it."
        }
        Basis::HubAndRotor => {
            "Computed from the hub's face, scaled to the rotor's distance from the center, and the rotor on it; both read from outside. Only a new reading proves it."
        }
    }
}

pub(in crate::text) fn left_out(why: LeftOut) -> &'static str {
    match why {
        LeftOut::StudHole => "Bolt hole",
        LeftOut::Dirt => "Dirt",
        LeftOut::Slip => "The tip slipped",
    }
}

pub(in crate::text) fn form(form: Form) -> &'static str {
    match form {
        Form::True => "as true as this dial can show",
        Form::Wobble => "a wobble, high on one side",
        Form::Warp => "a warp, high twice a turn",
        Form::Bump => "one place stands up: dirt or a burr",
        Form::Hollow => "one place lies low: a bolt hole or a pit",
        Form::Uneven => "no one shape: scatter, or rust all around",
    }
}

pub(in crate::text) fn next_at_face(next: Next) -> &'static str {
    match next {
        Next::LookUp => "Look up the manufacturer's limit.",
        Next::ReadMore => {
            "These readings do not show it. Check dial and base, then read again at more places."
        }
        Next::GoOn => "Continue the work.",
        Next::Clean => "Clean both faces to bare metal, then read again.",
        Next::ReadTurned => {
            "Turn the rotor on by half the lugs, all of them torqued, read again: then every position is known."
        }
        Next::Index => "Set the rotor on its best lug, all of them torqued, and read again.",
        Next::Plate => {
            "No position is enough: a tapered correction plate or an on-car lathe, where the manufacturer allows it."
        }
        Next::NewPart => {
            "The part itself is out. Check that it is seated and its bolts are at torque; then a new part."
        }
    }
}

pub(in crate::text) fn series_fault(fault: SeriesError) -> String {
    match fault {
        SeriesError::TooFew { saved, needed } => {
            format!("{saved} of the readings count. Runout needs at least {needed}.")
        }
        SeriesError::TooMany { given } => {
            format!("{given} readings are more than go around a face.")
        }
        SeriesError::OffTheDial { index } => {
            format!("Reading {} is not on the face of this dial.", index + 1)
        }
        SeriesError::MixedDials => {
            "Not evaluated: the places were read on different dials. One run, one dial.".to_owned()
        }
        SeriesError::AskTurns { index } => format!(
            "Not evaluated: the turns of the needle at reading {} were not recorded, and this dial turns once within 0.5 mm (0.020 in).",
            index + 1
        ),
    }
}

pub(in crate::text) fn undetermined(why: Undetermined) -> String {
    match why {
        Undetermined::Rank { rank, needed } => format!(
            "These places show {rank} of {needed} unknowns. Read {} more, away from them.",
            needed - rank
        ),
        Undetermined::Bunched { .. } => {
            "The places are too close together. Read more, spread around the face.".to_owned()
        }
        Undetermined::NoSpare { more } => format!(
            "Too few readings to tell runout from scatter. Measure at least {more} more places."
        ),
    }
}

pub(in crate::text) fn run_title(nth: u8, of: Surface) -> String {
    format!("Run {nth}: {}", surface(of))
}

pub(in crate::text) fn run_answer(runout: &str, of: Form, against: &str) -> String {
    format!("Runout {runout}, {}: {against}", form(of))
}

pub(in crate::text) fn against_limit(result: Guarded, limit: &str) -> String {
    let (side, proof) = match result {
        Guarded::ProvenIn => ("within", "proven"),
        Guarded::InNotProven => ("within", "not proven"),
        Guarded::OutNotProven => ("over", "not proven"),
        Guarded::ProvenOut => ("over", "proven"),
    };
    format!("{side} its limit of {limit}, {proof}.")
}

pub(in crate::text) fn high_spot(
    angle: &str,
    sure: Option<&str>,
    studs: Option<(u8, u8)>,
) -> String {
    let where_it_is = match studs {
        Some((one, other)) if one == other => format!(", at lug {one}"),
        Some((one, other)) => format!(", between lugs {one} and {other}"),
        None => String::new(),
    };
    let sure = sure.map_or_else(String::new, |sure| format!(" (± {sure})"));
    format!("High {angle} on from lug 1{sure}{where_it_is}.")
}

pub(in crate::text) fn polar_alt(runout: &str, of: Form) -> String {
    format!("Readings around the face, runout {runout}: {}", form(of))
}
