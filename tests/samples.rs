//! The samples in `public/sample/` are what the real procedure gives, and every course of the
//! procedure can be walked to its end with nothing left loose.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/stories.rs"]
mod stories;
#[path = "support/walk.rs"]
mod walk;

use std::path::PathBuf;

use hubslate::exchange::read;
use hubslate::job::entry::VehicleField;
use hubslate::job::entry::{DueKind, Ending};
use hubslate::job::{Sheet, judge};
use hubslate::trade::play::{After, Decision};
use hubslate::trade::vehicle::{CheckDigit, Corner, Vin};
use walk::{Story, Walk};

/// The committed file; it is written anew when `HUBSLATE_WRITE_SAMPLES` is set.
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
fn is_closed(story: &Story, walk: &Walk) -> Sheet {
    let sheet = walk.sheet();
    assert_eq!(sheet.problems(), []);
    assert_eq!(sheet.loose(), []);
    assert_eq!(sheet.ended().map(|ended| ended.ending), Some(story.ending));
    assert!(sheet.due(DueKind::Retorque).is_some());
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
    assert!(matches!(judge::after(&sheet, corner), After::Pass { .. }));
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
    assert_eq!(decided.reasons, ["under_proven", "smooth_and_quiet"]);
    is_committed("nothing-wrong.json", &walk);
}
