//! Every ending but "finished", reached on the screens, and what its report then says.

use super::phone::Phone;
use crate::exchange::import::read;
use crate::job::entry::{Entry, Event, Reply, Side};
use crate::trade::wheel_end::When;
use crate::trade::wheel_end::{Choice, Step};

const MUST_NOT: &str = "Do not drive this car.";
const MAY: &str = "The car may be driven.";
const NEITHER: [&str; 2] = [MAY, "REPLACED, safe to drive"];

/// The sample of a replaced hub up to the first entry that `ends` holds for.
pub fn replaced_until(ends: impl Fn(&Event) -> bool) -> Vec<Entry> {
    let file = read(include_str!("../../../public/sample/replaced-hub.json")).unwrap();
    let mut entries = file.logs.into_iter().next().unwrap().entries;
    entries.sort_by_key(|entry| entry.n);
    let end = entries.iter().position(|entry| ends(&entry.what)).unwrap();
    entries.truncate(end);
    entries
}

pub fn answers(what: &Event, step: Step) -> bool {
    matches!(what, Event::Answered(key, _) if key.step == step)
}

#[test]
fn nothing_wrong_found_everything_is_put_back_and_the_car_may_be_driven() {
    let phone = Phone::practice();
    phone.walk(
        "Decide: Decision",
        &[("Rises with speed", &|it| it.signs(&[]))],
    );
    assert!(phone.words().contains("KEEP"));
    phone.finish("Nothing to repair today");
    for key in ["Undo", "Not done"] {
        assert!(!phone.has(key));
    }
    assert!(phone.has("Reopen the job"));
    let (customers, _) = phone.report();
    assert!(customers.contains("We found nothing that must be repaired today."));
    assert!(customers.contains(MAY));
    assert!(!customers.contains(MUST_NOT));
}

#[test]
fn a_stop_that_is_declined_is_put_back_and_its_consequence_is_said_and_printed() {
    let consequence =
        "The steering can fail, the wheel can come off, and people can be hurt or killed.";
    let phone = Phone::practice();
    let grinds: (&str, &dyn Fn(&Phone)) = ("Spin by hand", &|it| it.tap("Grinds, hot or smokes"));
    phone.walk("Decide: Decision", &[grinds]);
    assert!(phone.words().contains("STOP"));
    assert!(phone.alerts().contains(MUST_NOT));
    phone.walk("Approve: Customer's answer", &[]);
    phone.tap("No");
    let said = format!("You chose not to have it repaired. {consequence}");
    assert!(phone.alerts().contains(&said), "{}", phone.alerts());
    phone.tap("Refused to sign");
    phone.finish("Declined, put back");
    let (customers, _) = phone.report();
    for said in [
        MUST_NOT,
        "DO NOT DRIVE",
        "We advised this work, and you declined it.",
        "Refused to sign",
        consequence,
    ] {
        assert!(customers.contains(said), "`{said}` in {customers}");
    }
    for never in [MAY, "REPLACED, safe to drive", "lug-nut torque"] {
        assert!(!customers.contains(never), "{never}");
    }
    assert_eq!(phone.count_for_customer("report__signature"), 0);
}

#[test]
fn a_place_that_is_not_safe_ends_the_job_before_the_car_is_touched() {
    let phone = Phone::practice();
    phone.tap("Not safe here");
    phone.finish("Not safe here");
    let (customers, _) = phone.report();
    assert!(
        customers.contains("We did not open anything: the place was not safe for this work."),
        "{customers}"
    );
}

/// The screen at "before and after" with a new part that does not pass, and how the job can end.
#[track_caller]
fn is_blocked(phone: &Phone) {
    phone.is_at("Verify: Before and after");
    assert!(phone.words().contains("STOP"));
    let said = "The new part does not pass. The vehicle stays at STOP.";
    assert!(phone.alerts().contains(said), "{}", phone.alerts());
    assert!(
        phone
            .words()
            .contains("Check nut torque, hub bolts and seat, then the part.")
    );
    assert!(!phone.has("Continue"));
    phone.end_here();
    assert!(phone.words().contains("STOP"));
    assert!(phone.begins("Export and end: Finished").is_none());
    assert!(phone.begins("End the job here: Finished").is_none());
    phone.tap("Customer, on jack stands");
    assert!(phone.words().contains("The job has ended."));
    let (_, report) = phone.report();
    for said in [
        "Front left: replaced, but the new part fails its check.",
        "The work on this car is not finished. Do not drive or move it",
        "Customer, on jack stands",
    ] {
        assert!(report.contains(said), "`{said}` in {report}");
    }
    for never in NEITHER {
        assert!(!report.contains(never), "{never}");
    }
}

fn before_the_proof() -> Phone {
    Phone::with(&replaced_until(|what| {
        matches!(what, Event::Reading(reading)
            if reading.set.when == When::After && reading.side == Side::Push)
    }))
}

#[test]
fn a_new_part_that_measures_over_is_not_finished_work() {
    let phone = before_the_proof();
    phone.walk(
        "Verify: Before and after",
        &[("Push, pull, read", &|it| it.round("7"))],
    );
    is_blocked(&phone);
}

#[test]
fn a_proof_that_fails_is_told_at_the_open_wheel_end_and_can_be_measured_again() {
    let phone = before_the_proof();
    phone.walk(
        "Verify: Before and after",
        &[("Push, pull, read", &|it| it.round("7"))],
    );
    assert!(phone.alerts().contains("The new part does not pass."));
    phone.tap("Measure again");
    phone.is_at("Verify: Dial setup");
    phone.tap("Set up as shown");
    phone.is_at("Verify: Base on the knuckle");
    phone.tap("It does not move");
    assert!(phone.words().contains("Cycle 1 of 3"));
    phone.walk(
        "Torque: Caliper down",
        &[("Push, pull, read", &|it| it.round("0.5"))],
    );
    let (_, report) = phone.report();
    assert!(report.contains("Undone"));
}

/// The sample up to its last look, its new hub spun with another result.
fn spun(pick: Choice) -> Phone {
    let mut entries = replaced_until(|what| answers(what, Step::ProveResult));
    for entry in &mut entries {
        if let Event::Answered(key, reply) = &mut entry.what
            && key.step == Step::ProveSpin
        {
            *reply = Reply::Picked(pick);
        }
    }
    Phone::with(&entries)
}

#[test]
fn a_new_part_that_runs_rough_is_not_finished_work() {
    is_blocked(&spun(Choice::Rough));
}

#[test]
fn measured_again_with_the_wheel_on_it_is_opened_first_and_closed_to_spec_after() {
    let phone = spun(Choice::Rough);
    assert!(phone.words().contains("The wheel end is closed"));
    phone.tap("Measure again");
    phone.is_at("Verify: Loosen lug nuts");
    phone.walk("Verify: Caliper up again", &[]);
    assert_eq!(phone.open().sheet.loose().len(), 6);
    phone.walk(
        "Verify: Pedal first",
        &[("Push, pull, read", &|it| it.round("0.5"))],
    );
    assert!(phone.open().sheet.loose().is_empty());
    phone.walk("Verify: Before and after", &[]);
    assert!(!phone.alerts().contains("The new part does not pass."));
    assert!(phone.has("Continue"));
}

#[test]
fn a_replace_that_is_declined_names_what_can_follow_from_it() {
    let phone = Phone::with(&replaced_until(
        |what| matches!(what, Event::Consent(consent) if consent.step.step == Step::Agree),
    ));
    phone.is_at("Approve: Customer's answer");
    assert!(phone.words().contains("REPLACE"));
    phone.tap("No");
    let consequence = "You chose not to have this bearing repaired. \
        It will get worse, and it can become unsafe.";
    assert!(phone.alerts().contains(consequence), "{}", phone.alerts());
    phone.tap("Refused to sign");
    phone.finish("Declined, put back");
    let (customers, _) = phone.report();
    assert!(customers.contains(consequence), "{customers}");
}

#[test]
fn left_unfinished_what_is_loose_is_named_the_car_is_at_stop_and_who_took_charge_is_said() {
    let phone = Phone::with(&replaced_until(|what| answers(what, Step::StripBrake)));
    phone.walk("Remove: Free sensor wire", &[]);
    phone.end_here();
    let words = phone.words();
    assert!(
        words.contains("STOP") && words.contains("Left unfinished"),
        "{words}"
    );
    let loose: Vec<String> = phone.list_items();
    let named = |name: &str| loose.iter().filter(|row| row.starts_with(name)).count();
    assert_eq!(named("Lug nut "), 5, "{loose:?}");
    assert_eq!(named("Bracket bolt "), 2);
    assert_eq!(named("Guide pin bolt, "), 2);
    for one in [
        "Axle nut, front left",
        "Caliper, front left",
        "Caliper bracket, front left",
        "Rotor, front left",
        "Wheel, front left",
    ] {
        assert_eq!(named(one), 1, "{one}");
    }
    assert_eq!(named("Hub bolt "), 0);
    phone.tap("Towed away");
    assert!(phone.words().contains("The job has ended."));
    let (_, report) = phone.report();
    for said in [
        "Do not drive or move it",
        "Towed away",
        "Axle nut, front left",
    ] {
        assert!(report.contains(said), "`{said}` in {report}");
    }
    for never in NEITHER {
        assert!(!report.contains(never), "{never}");
    }
}

#[test]
fn a_bearing_that_is_noisy_without_play_is_told_so_with_no_dots_at_zero_beside_replace() {
    let phone = Phone::practice();
    phone.walk(
        "Decide: Decision",
        &[("Spin by hand", &|it| it.tap("Rough and noisy"))],
    );
    assert!(phone.words().contains("REPLACE"));
    assert!(phone.words().contains("Movement was not the reason"));
    phone.walk("Approve: Customer's answer", &[]);
    assert!(
        phone
            .words()
            .contains("The bearing is noisy when the wheel is turned by hand.")
    );
    assert_eq!(phone.count("verdict__bar"), 0);
    phone.tap("No");
    phone.tap("Refused to sign");
    phone.finish("Declined, put back");
    let (customers, _) = phone.report();
    for said in [
        "NOT REPAIRED: repair declined",
        "The bearing feels rough when the wheel is turned by hand.",
        "Refused to sign",
    ] {
        assert!(customers.contains(said), "`{said}` in {customers}");
    }
    assert_eq!(phone.count_for_customer("report__drawing--wide"), 0);
    assert_eq!(phone.count_for_customer("report__signature"), 0);
}
