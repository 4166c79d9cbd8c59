//! The samples in `public/sample/` are what the real procedure gives, and every course of the
//! procedure can be walked to its end with nothing left loose.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/keys.rs"]
mod keys;
#[path = "support/parts.rs"]
mod parts;
#[path = "support/stories.rs"]
mod stories;
#[path = "support/story.rs"]
mod story;
#[path = "support/walk.rs"]
mod walk;

use std::path::PathBuf;

use hubslate::exchange::read;
use hubslate::job::entry::{DueKind, Ending, Reply, VehicleField};
use hubslate::job::{JobState, proof};
use hubslate::trade::fastening::Position;
use hubslate::trade::play::{After, Decision, Felt};
use hubslate::trade::vehicle::{CheckDigit, Corner, Vin};
use hubslate::trade::wheel_end::{Choice, Start, When};
use hubslate::units::LengthUnit;
use story::Story;
use walk::Walk;

/// The committed file; it is written again when `HUBSLATE_WRITE_SAMPLES` is set.
#[track_caller]
fn is_committed(name: &str, walk: &Walk) {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("public/sample")
        .join(name);
    let made = walk.file();
    if std::env::var_os("HUBSLATE_WRITE_SAMPLES").is_some() {
        std::fs::write(&path, &made).unwrap();
    }
    let committed = std::fs::read_to_string(&path).unwrap();
    assert!(
        committed == made,
        "{name} differs from what the procedure gives; set HUBSLATE_WRITE_SAMPLES=1 to write it"
    );
    let incoming = read(&committed).unwrap();
    assert_eq!(incoming.logs.len(), 1);
    assert_eq!(incoming.logs[0].records.len(), walk.entries().len());
    assert!(incoming.logs[0].unreadable.is_empty());
}

/// What must hold of every job that ended otherwise than "left unfinished".
#[track_caller]
fn is_closed(story: &Story, walk: &Walk) -> JobState {
    let sheet = walk.sheet();
    assert_eq!(sheet.problems(), []);
    assert_eq!(sheet.loose(), []);
    assert_eq!(sheet.ended().map(|ended| ended.ending), Some(story.ending));
    // A car that must not be driven is not sent on the drive before its re-torque.
    let parked = story.ending == Ending::Declined;
    assert_eq!(sheet.due(DueKind::Retorque).is_some(), !parked);
    sheet
}

#[test]
fn the_replaced_hub_was_over_and_is_proven() {
    let story = stories::replaced_hub();
    let walk = Walk::of(&story);
    let sheet = is_closed(&story, &walk);
    let corner = Corner::FrontLeft;
    let decided = sheet.decided(corner).unwrap();
    assert_eq!(decided.decision, Decision::Replace);
    assert!(decided.reasons.contains(&"over_proven".to_owned()));
    assert!(
        decided
            .reasons
            .contains(&"loose_in_bearing.just_felt".to_owned())
    );
    assert!(!decided.again);
    assert!(matches!(proof::after(&sheet, corner), After::Pass { .. }));
    assert!(sheet.part(corner).is_some());
    let vin = Vin::parse(sheet.vehicle(VehicleField::Vin).unwrap()).unwrap();
    assert_eq!(vin.check(), CheckDigit::Passes);
    is_committed("replaced-hub.json", &walk);
}

#[test]
fn the_declined_stop_was_put_back() {
    let story = stories::declined_stop();
    let walk = Walk::of(&story);
    let sheet = is_closed(&story, &walk);
    let decided = sheet.decided(Corner::FrontRight).unwrap();
    assert_eq!(decided.decision, Decision::Stop);
    assert_eq!(decided.reasons[0], "loose_in_bearing.knocks");
    assert_eq!(sheet.ended().unwrap().ending, Ending::Declined);
    assert!(sheet.part(Corner::FrontRight).is_none());
    is_committed("declined-stop.json", &walk);
}

#[test]
fn nothing_was_wrong_with_the_bearing() {
    let story = stories::nothing_wrong();
    let walk = Walk::of(&story);
    let sheet = is_closed(&story, &walk);
    let decided = sheet.decided(Corner::FrontRight).unwrap();
    assert_eq!(decided.decision, Decision::Keep);
    assert_eq!(decided.reasons, ["road_points_elsewhere", "under_proven"]);
    is_committed("nothing-wrong.json", &walk);
}

/// A replaced hub with another nut, another start, other corners.
fn replaced(position: Position, start: Start, corners: &[Corner]) -> Story {
    let mut story = stories::replaced_hub();
    story.start = start;
    story.corners = corners.to_vec();
    story.specs = parts::specs(
        "Invented pages",
        "R. Okafor",
        parts::day(2026, 2, 16),
        position,
        parts::play("2.0", LengthUnit::Thou),
    );
    story
}

#[test]
fn a_replacement_is_walked_to_its_end_wherever_the_nut_is_tightened() {
    for position in Position::ALL {
        for start in Start::ALL {
            for corners in [
                &[Corner::RearLeft][..],
                &[Corner::FrontRight, Corner::FrontLeft],
            ] {
                let story = replaced(*position, *start, corners);
                let walk = Walk::of(&story);
                let sheet = is_closed(&story, &walk);
                for corner in corners {
                    let after = proof::after(&sheet, *corner);
                    assert!(matches!(after, After::Pass { .. }), "{after:?}");
                }
            }
        }
    }
}

#[test]
fn over_by_less_than_the_uncertainty_asks_for_a_second_set_and_is_then_replaced() {
    let mut story = replaced(Position::AirBar, Start::AtHome, &[Corner::FrontLeft]);
    story.replies.extend([
        ("rock_twelve_six", Reply::Felt(Felt::Nothing)),
        ("rock_nine_three", Reply::Felt(Felt::Nothing)),
        ("rock_axial", Reply::Felt(Felt::Nothing)),
        ("spin_hand", Reply::Picked(Choice::SmoothQuiet)),
        ("rig_again", Reply::Picked(Choice::FlexNone)),
    ]);
    let over = ["2.4", "2.2", "2.4"];
    story.readings.insert((When::Before, 1), over);
    story.readings.insert((When::Before, 2), over);
    let walk = Walk::of(&story);
    let sheet = is_closed(&story, &walk);
    let nth = |nth| sheet.decided_nth(Corner::FrontLeft, nth).unwrap();
    assert!(nth(1).again);
    assert!(!nth(2).again);
    assert_eq!(nth(2).decision, Decision::Replace);
    assert_eq!(nth(2).reasons, ["over_not_proven", "road_points_here"]);
    let again = "rig_again@front_left".to_owned();
    assert!(walk.passed.contains(&again));
    // The same without the second set is not walked twice over.
    assert!(!Walk::of(&stories::replaced_hub()).passed.contains(&again));
}

#[test]
fn under_by_less_than_the_uncertainty_is_watched_and_put_back() {
    let mut story = stories::nothing_wrong();
    story
        .readings
        .insert((When::Before, 1), ["9.5", "9", "9.5"]);
    let walk = Walk::of(&story);
    let sheet = is_closed(&story, &walk);
    let decided = sheet.decided(Corner::FrontRight).unwrap();
    assert_eq!(decided.decision, Decision::Watch);
    assert!(!walk.passed.iter().any(|step| step.starts_with("strip")));
}
