//! English for the run-out.

use super::desk::decimal_slip;
use crate::job::runout::{AngleSlip, Angles, Basis, RadiusSlip};
use crate::trade::play::uncertainty::Guarded;
use crate::trade::runout::{Form, LeftOut, Next, SeriesFault, Surface, Undetermined};

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

pub(in crate::text) fn angle_slip(slip: AngleSlip) -> String {
    match slip {
        AngleSlip::Number(slip) => decimal_slip(slip),
        AngleSlip::OffTheTurn => "A place stands from 0° to 360° on from stud 1.".to_owned(),
        AngleSlip::Taken { place } => {
            format!("Place {place} has this angle. Two places cannot stand at one.")
        }
    }
}

pub(in crate::text) fn radius_slip(slip: RadiusSlip) -> String {
    match slip {
        RadiusSlip::Number(slip) => decimal_slip(slip),
        RadiusSlip::NotAboveZero => "A distance from the axle's middle is above zero.".to_owned(),
    }
}

pub(in crate::text) fn basis(basis: Basis) -> &'static str {
    match basis {
        Basis::TwoPositions => {
            "Worked out from the rotor read in two positions. Only a new reading proves it."
        }
        Basis::HubAndRotor => {
            "Worked out from the hub's face, scaled to the rotor's distance from the middle, and the rotor on it; both read from outside. Only a new reading proves it."
        }
    }
}

pub(in crate::text) fn left_out(why: LeftOut) -> &'static str {
    match why {
        LeftOut::StudHole => "Stud hole",
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
        Form::Hollow => "one place lies low: a stud hole or a pit",
        Form::Uneven => "no one shape: scatter, or rust all round",
    }
}

pub(in crate::text) fn next_at_face(next: Next) -> &'static str {
    match next {
        Next::LookUp => "Look up the maker's limit.",
        Next::ReadMore => {
            "It cannot be told from these readings. Check dial and base, then read again at more places."
        }
        Next::GoOn => "Go on with the work.",
        Next::Clean => "Clean both faces to bare metal, then read again.",
        Next::ReadTurned => {
            "Put the rotor on by half the studs, all nuts on and torqued, and read again: then every position is known."
        }
        Next::Index => "Put the rotor on its best stud, all nuts on and torqued, and read again.",
        Next::Plate => {
            "No stud takes enough away: a corrected plate, or the rotor machined on the hub, where the maker allows it."
        }
        Next::NewPart => {
            "The part itself is out. Check that it is seated and its bolts are at torque; then a new part."
        }
    }
}

pub(in crate::text) fn series_fault(fault: SeriesFault) -> String {
    match fault {
        SeriesFault::TooFew { kept, needed } => {
            format!("{kept} of the readings count. A run-out needs {needed} at least.")
        }
        SeriesFault::TooMany { given } => {
            format!("{given} readings are more than go round a face.")
        }
        SeriesFault::OffTheDial { index } => {
            format!("Reading {} is not on the face of this dial.", index + 1)
        }
        SeriesFault::MixedDials => {
            "Not evaluated: the places were read on different dials. One run, one dial.".to_owned()
        }
        SeriesFault::AskTurns { index } => format!(
            "Not evaluated: the turns of the needle at reading {} were not recorded, and this dial turns once within 0.5 mm (0.020 in).",
            index + 1
        ),
    }
}

pub(in crate::text) fn undetermined(why: Undetermined) -> String {
    match why {
        Undetermined::Rank { rank, needed } => format!(
            "These places tell {rank} of {needed} unknowns. Read {} more, away from them.",
            needed - rank
        ),
        Undetermined::Bunched { .. } => {
            "The places stand too close together. Read more, spread round the face.".to_owned()
        }
        Undetermined::NoSpare { more } => format!(
            "Too few readings to tell runout from scatter. Measure more places: {more} more at least."
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
        Some((one, other)) if one == other => format!(", at stud {one}"),
        Some((one, other)) => format!(", between studs {one} and {other}"),
        None => String::new(),
    };
    let sure = sure.map_or_else(String::new, |sure| format!(" (± {sure})"));
    format!("High {angle} on from stud 1{sure}{where_it_is}.")
}

pub(in crate::text) fn polar_alt(runout: &str, of: Form) -> String {
    format!("Readings round the face, runout {runout}: {}", form(of))
}
