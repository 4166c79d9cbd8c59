//! What a no holds, what is said then, and how it is lifted: on the screens themselves.

use super::phone::Phone;
use crate::ui::route::Route;

fn row_of(phone: &Phone, start: &str) -> usize {
    let rows = phone.rows();
    let row = rows.iter().position(|(what, _)| what.contains(start));
    row.unwrap_or_else(|| panic!("no row `{start}` in {rows:?}"))
}

/// The step on the screen is held: what is to be done is said, and its own key is not there.
#[track_caller]
fn held(phone: &Phone, label: &str, said: &str, key: &str) {
    phone.is_at(label);
    assert!(phone.alerts().contains(said), "{}", phone.alerts());
    assert!(!phone.has(key), "{key}");
}

#[test]
fn what_is_wrong_with_the_ground_keeps_the_site_open_until_it_is_put_right() {
    for (row, said) in [
        ("Slope", "Move the car to level ground first."),
        (
            "Firm ground",
            "Put a plate under the jack stand, or find firm ground first.",
        ),
        (
            "Clear of traffic",
            "Shield the place first, or do not work here.",
        ),
    ] {
        let phone = Phone::practice();
        assert_eq!(phone.primary().unwrap().label, "Yes to all 3");
        let row = row_of(&phone, row);
        phone.tap_row(row);
        phone.tap("Yes to the other 2");
        phone.is_at("Site: The ground");
        assert!(phone.alerts().contains(said), "{}", phone.alerts());
        // The row stands as it was answered, and no key lifts it but its own.
        assert_eq!(phone.rows()[row].1, "no");
        assert!(!phone.primary().unwrap().live);
        phone.tap_row(row);
        assert_eq!(phone.rows()[row].1, "yes");
        phone.tap("Save the answers");
        assert_ne!(phone.label(), "Site: The ground");
    }
}

#[test]
fn with_a_soft_pedal_or_a_damaged_tire_the_car_is_not_driven_and_both_come_again_before_it_moves() {
    let phone = Phone::practice();
    let soft = |it: &Phone| {
        it.tap_row(row_of(it, "brake pedal"));
        it.tap_row(row_of(it, "Tires"));
        it.tap("Yes to the other 2");
    };
    phone.walk("Road test: Test drive", &[("Pre-drive check", &soft)]);
    let said = "Do not drive: find and fix the brake fault first.";
    held(&phone, "Road test: Test drive", said, "Back and parked");
    phone.not_done("Not safe");
    phone.walk("Verify: Before it moves", &[]);
    row_of(&phone, "Tires");
    phone.tap_row(row_of(&phone, "brake pedal"));
    phone.tap("Yes to the other 3");
    // It is not handed over as it stands: the end says why.
    phone.end_here();
    assert!(phone.alerts().contains(said), "{}", phone.alerts());
    assert!(phone.words().contains("STOP"));
}

#[test]
fn a_car_that_stood_on_its_wheel_for_the_axle_nut_is_shoved_before_the_wheel_comes_off() {
    let phone = Phone::practice();
    let rough = |it: &Phone| it.tap("Rough and noisy");
    phone.walk("Remove: Loosen axle nut", &[("Spin by hand", &rough)]);
    assert!(phone.primary().unwrap().live);
    phone.tap("It moved");
    phone.is_at("Remove: Shove again");
    assert!(
        phone.alerts().contains("Keep clear. Back on the jack"),
        "{}",
        phone.alerts()
    );
    phone.go_to_step("Axle nut off");
    held(
        &phone,
        "Remove: Axle nut off",
        "Jack stand and shove first",
        "Brake is off",
    );
    phone.tap("Go to that step");
    phone.is_at("Remove: Shove again");
    phone.step(&[]);
    phone.is_at("Remove: Axle nut off");
    assert!(!phone.alerts().contains("Jack stand and shove first"));
}

#[test]
fn a_jack_stand_that_does_not_carry_the_car_keeps_everybody_out_from_under_it() {
    let phone = Phone::practice();
    let label = "Lift: Jack and jack stand";
    phone.walk(label, &[]);
    phone.tap_row(row_of(&phone, "Jack stand under"));
    // The photo of it stands on the same screen.
    phone.not_done("No time");
    phone.is_at(label);
    let said = "Put the jack stand under a rated point; keep clear until it carries the car.";
    assert!(phone.alerts().contains(said), "{}", phone.alerts());
    phone.step(&[]);
    assert_ne!(phone.label(), label);
}

#[test]
fn a_car_that_was_left_unfinished_stands_first_at_stop_and_with_what_is_loose() {
    let phone = Phone::practice();
    phone.walk("Measure: Caliper up", &[]);
    phone.end_here();
    phone.tap("We come back to finish");
    assert!(phone.words().contains("The job has ended."));
    let loose = phone.open().sheet.loose().len();
    assert!(loose > 0 && phone.words().contains(&format!("{loose} loose")));
    phone.go(&Route::Home);
    let lists = phone.each("jobs");
    assert!(lists[0].starts_with("Make safe first"), "{lists:?}");
    assert!(
        lists[0].contains(&format!("STOP · {loose} loose")),
        "{lists:?}"
    );
}

#[test]
fn the_axle_nut_waits_for_the_reading_or_for_the_reason_why_there_is_none() {
    let phone = Phone::practice();
    let rough = |it: &Phone| it.tap("Rough and noisy");
    let loosen = "Measure: Loosen lug nuts";
    phone.walk(loosen, &[("Spin by hand", &rough)]);
    // Roughness condemns without a reading: decision and yes may be told before it, the nut may not.
    phone.go_to_step("Decision");
    phone.tap("Show the customer");
    phone.is_at(loosen);
    phone.go_to_step("Customer's answer");
    phone.tap("Verbal approval");
    phone.is_at(loosen);
    phone.go_to_step("Loosen axle nut");
    held(
        &phone,
        "Remove: Loosen axle nut",
        "The reading first",
        "Nut is loose",
    );
    phone.tap("Go to that step");
    // The reading rests on an open wheel end, and says so.
    phone.is_at("Measure: Push, pull, read");
    assert!(
        phone.alerts().contains("Something comes before this"),
        "{}",
        phone.alerts()
    );
    // Opened from the list a step stands alone.
    phone.go_to_step("Loosen lug nuts");
    phone.tap("Loosened, on the stand");
    phone.is_at("Measure: Shove again");
    phone.walk("Measure: Push, pull, read", &[]);
    for round in 1..=3 {
        assert!(phone.words().contains(&format!("Cycle {round} of 3")));
        phone.not_done("Not safe");
    }
    phone.is_at("Remove: Loosen axle nut");
    let firm = phone
        .keys()
        .into_iter()
        .find(|key| key.label == "It stands firm");
    assert!(firm.unwrap().live);
}
