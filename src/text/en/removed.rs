//! What is seen on a removed part, what it points to, and what to change.

use super::words::corner_title;
use crate::trade::damage::{FailureMode, Finding, Inspected, LikelyCause, PartReading};
use crate::trade::vehicle::Corner;

pub(in crate::text) fn inspected(inspected: Inspected) -> &'static str {
    match inspected {
        Inspected::NotInspected => "Not inspected",
        Inspected::Closed => "Closed, as it came off",
        Inspected::CameApart => "Came apart, races seen in part",
        Inspected::CutOpen => "Cut open, customer approved",
    }
}

pub(in crate::text) fn finding(finding: Finding) -> &'static str {
    match finding {
        Finding::RedGrease => "Red grease or water at the seal",
        Finding::HeatColors => "Blue or straw color, burnt grease",
        Finding::SeatBloom => "Rust bloom where it sat in the knuckle",
        Finding::RingsTurned => "Inner rings turned, marks at their gap",
        Finding::BruisedSpot => "Dents or gouges at one spot",
        Finding::BeachMarks => "Flange or stud broken, beach marks",
        Finding::CleanBreak => "Broken clean, no beach marks",
        Finding::SealCut => "Seal lip cut or out of place",
        Finding::EncoderScratched => "Encoder ring scratched",
        Finding::SpacedDents => "Dents spaced like the rolling elements, raised rim",
        Finding::DullDimples => "Dull dimples, rust-red powder, no raised rim",
        Finding::EtchedLines => "Brown lines spaced like the rolling elements",
        Finding::Flaked => "Flaked in the loaded zone",
        Finding::FlakedAtDent => "Flaked, starting at a dent",
        Finding::GritDents => "Many small dents, gritty grease",
        Finding::Washboard => "Washboard grooves across the race",
    }
}

/// What stands under a cause where it is counted.
pub(in crate::text) fn modes_and_cut(all: &[FailureMode], cut_open: usize) -> String {
    let modes = Some(modes(all)).filter(|modes| !modes.is_empty());
    let cut = (cut_open > 0).then(|| format!("{cut_open} cut open"));
    let notes: Vec<String> = modes.into_iter().chain(cut).collect();
    notes.join(", ")
}

/// The standard's own words; ISO 15243:2017.
const fn failure_mode(mode: FailureMode) -> &'static str {
    match mode {
        FailureMode::SubsurfaceFatigue => "subsurface initiated fatigue",
        FailureMode::SurfaceFatigue => "surface initiated fatigue",
        FailureMode::AdhesiveWear => "adhesive wear",
        FailureMode::MoistureCorrosion => "moisture corrosion",
        FailureMode::FrettingCorrosion => "fretting corrosion",
        FailureMode::FalseBrinelling => "false brinelling",
        FailureMode::CurrentLeakageErosion => "current leakage erosion",
        FailureMode::PlasticDeformation => "plastic deformation",
        FailureMode::OverloadDeformation => "overload deformation",
        FailureMode::ParticleIndentations => "indentations from particles",
        FailureMode::ForcedFracture => "forced fracture",
        FailureMode::FatigueFracture => "fatigue fracture",
    }
}

/// A name that fits a row, what it stands for, and what to change.
const fn told(cause: LikelyCause) -> (&'static str, &'static str, &'static str) {
    match cause {
        LikelyCause::Water => (
            "Water past a seal",
            "water past a seal: cut seal, pressure washer, dented cap or flood",
            "New seal and cap. No pressure washer at the seals.",
        ),
        LikelyCause::Overheated => (
            "Ran hot",
            "too much torque or preload, no grease, or a dragging brake",
            "Prove the torque. Check both calipers for drag.",
        ),
        LikelyCause::Seat => (
            "Poor seat in knuckle",
            "knuckle bore worn or dirty, or bolts uneven or reused",
            "Clean and measure the bore. Torque the bolts crosswise.",
        ),
        LikelyCause::LooseNut => (
            "Axle nut loose",
            "axle nut loose, or the car rolled before the nut was at spec",
            "New axle nut, torque wrench, no weight on the wheel before it is at spec.",
        ),
        LikelyCause::Handling => (
            "Dropped or pried",
            "dropped, pried, slide hammer, or pulled crooked",
            "Use a bench mat. Pull it straight.",
        ),
        LikelyCause::WheelClamp => (
            "Loose wheel or stud",
            "loose wheel, or a stud that was overtightened",
            "Lug nuts to spec, and proof of the re-torque.",
        ),
        LikelyCause::Impact => (
            "Impact tool or crash",
            "impact tool on the last turns, or a crash",
            "No impact tool for the final torque.",
        ),
        LikelyCause::ToolSlip => (
            "Tool slip, wrong side",
            "a tool that slipped, or pressed from the wrong side",
            "Use a guide sleeve. Check the encoder side with the viewing card.",
        ),
        LikelyCause::Blow => (
            "Blow or press force",
            "curb or pothole, hammer, or press force through the rolling elements",
            "Use the right tube and support, no hammer. Ask about impacts.",
        ),
        LikelyCause::Vibration => (
            "Vibration at rest",
            "vibration while shipped or parked, or a car carried on a tied axle",
            "Better packaging. Rotate the stock.",
        ),
        LikelyCause::AgeOrLoad => (
            "Age or load",
            "normal age, heavy load or wheel offset",
            "Nothing at the shop. Ask about wheel spacers.",
        ),
        LikelyCause::EarlierDamage => (
            "Earlier dent or dirt",
            "an earlier dent, dirt or low grease",
            "Find what made the dent.",
        ),
        LikelyCause::Dirt => (
            "Dirt inside",
            "dirt past a seal or at assembly",
            "Clean the seat, tools and gloves before assembly. New seal.",
        ),
        LikelyCause::Current => (
            "Electric current",
            "welding ground through the bearing, or shaft current of an electric motor",
            "Ground next to the weld. Report the pattern.",
        ),
    }
}

pub(in crate::text) fn likely_cause(cause: LikelyCause) -> &'static str {
    told(cause).0
}

/// Several of them; nothing for none.
fn modes(modes: &[FailureMode]) -> String {
    let all: Vec<&str> = modes.iter().map(|mode| failure_mode(*mode)).collect();
    all.join(" and ")
}

pub(in crate::text) fn points_to(found: Finding, suspected: bool) -> String {
    let modes = modes(found.modes());
    match (modes.is_empty(), suspected) {
        (true, _) => "No failure mode of the bearing itself.".to_owned(),
        (false, true) => format!("Suspected: {modes} (ISO 15243:2017)."),
        (false, false) => format!("Failure mode: {modes} (ISO 15243:2017)."),
    }
}

pub(in crate::text) fn cause_and_change(found: Finding) -> String {
    let (_, what, change) = told(found.cause());
    format!("Likely cause: {what}. Change: {change}")
}

pub(in crate::text) fn finding_line(found: Finding, suspected: bool) -> String {
    let (seen, points) = (finding(found), points_to(found, suspected));
    format!("{seen}. {points} {}", cause_and_change(found))
}

pub(in crate::text) fn part_inspected(corner: Corner, reading: &PartReading) -> String {
    let (corner, how) = (corner_title(corner), inspected(reading.inspected));
    let nothing = reading.findings().next().is_none();
    if nothing && reading.inspected != Inspected::NotInspected {
        format!("{corner}: {how}. Nothing visible.")
    } else {
        format!("{corner}: {how}")
    }
}

pub(in crate::text) fn removed_part_line(corner: Corner, reading: &PartReading) -> String {
    let seen: Vec<&str> = reading.findings().map(finding).collect();
    let head = part_inspected(corner, reading);
    match seen.is_empty() {
        true => head,
        false => format!("{head}. {}", seen.join("; ")),
    }
}
