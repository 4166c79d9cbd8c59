//! One screen that tells several steps: its rows can be turned, and no question is answered by one.

use super::endings::{answers, replaced_until};
use super::phone::Phone;
use crate::job::entry::Event;
use crate::trade::wheel_end::Step;

#[track_caller]
fn row(phone: &Phone, text: &str) -> usize {
    let rows = phone.rows();
    let row = rows.iter().position(|(what, _)| what.contains(text));
    row.unwrap_or_else(|| panic!("no row `{text}` in {rows:?}"))
}

#[test]
fn a_row_that_was_turned_stays_open_and_comes_next_alone() {
    let phone = Phone::with(&replaced_until(|what| answers(what, Step::GaugeClean)));
    phone.is_at("Measure: Clean for the dial");
    let clean = row(&phone, "Rotor flat");
    assert!(phone.rows()[clean].0.ends_with('–'));
    phone.tap_row(clean);
    assert!(phone.rows()[clean].0.contains("Not yet"));
    phone.tap("Set up as shown");
    phone.is_at("Measure: Clean for the dial");
    phone.tap("Clean and dry");
    // What rests on it was not answered with it.
    phone.is_at("Measure: Dial setup");
    phone.tap("Set up as shown");
    phone.is_at("Measure: Base on the knuckle");
}

#[test]
fn after_the_nuts_were_broken_loose_no_wheel_comes_off_before_the_car_was_shoved() {
    let phone = Phone::with(&replaced_until(|what| answers(what, Step::LoosenLugNuts)));
    phone.is_at("Measure: Loosen lug nuts");
    phone.tap("It moved");
    // The nuts are loose; only the shove is asked again.
    phone.is_at("Measure: Shove again");
    phone.go_to_step("Wheel off");
    assert!(!phone.alerts().is_empty());
    assert!(!phone.has("Wheel is off"));
    phone.tap("Go to that step");
    phone.tap("It stands firm");
    phone.is_at("Measure: Wheel off");
    let off = phone
        .keys()
        .into_iter()
        .find(|key| key.label == "Wheel is off");
    assert!(off.unwrap().live);
}

#[test]
fn a_sign_of_the_road_has_no_answer_before_it_is_tapped_or_said_no_to() {
    let phone = Phone::with(&replaced_until(|what| answers(what, Step::SignSpeed)));
    phone.is_at("Road test: Rises with speed");
    let (speed, swerve) = (
        row(&phone, "rise with road speed"),
        row(&phone, "gentle swerve"),
    );
    assert_eq!(phone.rows()[speed].1, "open");
    assert_eq!(phone.primary().unwrap().label, "No to all 5");
    assert!(phone.primary().unwrap().live);
    phone.tap_row(speed);
    assert!(phone.rows()[speed].0.contains("Yes"));
    phone.tap_row(swerve);
    phone.tap_row(swerve);
    assert!(phone.rows()[swerve].0.contains("Steering left"));
    phone.tap_row(speed);
    assert!(phone.rows()[speed].0.contains("Not done"));
    phone.tap("No to the other 3");
    let (_, report) = phone.report();
    assert!(report.contains("Steering left"));
}

#[test]
fn nothing_is_read_before_the_needle_was_set_or_was_said_to_stand_still() {
    let phone = Phone::with(&replaced_until(|what| matches!(what, Event::Reading(_))));
    phone.is_at("Measure: Push, pull, read");
    for round in 1..=2 {
        assert!(phone.words().contains(&format!("Cycle {round} of 3")));
        assert!(phone.begins("Save").is_none() && phone.begins("Same:").is_none());
        phone.tap("Needle still at 0");
        phone.tap("Save 0");
    }
}
