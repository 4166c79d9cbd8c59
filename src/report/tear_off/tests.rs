//! What the customer tears off.
use crate::job::entry::{Quantity, Reply};
use crate::report::sample::{self, Job};
use crate::report::tests::report;
use crate::trade::wheel_end::{NotDoneReason, Step, StepKey};
use crate::units::{DistanceUnit, TypedDistance};

fn sentence(job: &Job) -> String {
    report(job).tear_off.unwrap().sentence.unwrap()
}

#[test]
fn the_tear_off_says_what_the_odometer_shows_then_in_its_own_unit() {
    let mut job = sample::finished(None);
    // 81200 km at the car and 80 km on: by hand.
    let km = "Have the lug-nut torque checked after 80\u{a0}km, when the odometer shows 81280\u{a0}km, no later than Mar 9, 2025.";
    assert_eq!(sentence(&job), km);
    // The same distance on an odometer in miles: 80 km are 49.7 miles (1 mi = 1609.344 m).
    let read = TypedDistance::parse("50455", DistanceUnit::Mile).unwrap();
    let read = Reply::Number(Quantity::Distance(read));
    job.answer(StepKey::once(Step::Odometer), read);
    assert!(sentence(&job).contains("when the odometer shows 50505\u{a0}mi, no later than"));
}

#[test]
fn where_nobody_read_the_odometer_it_names_distance_and_day_alone() {
    let mut job = sample::finished(None);
    job.answer(
        StepKey::once(Step::Odometer),
        Reply::NotDone(NotDoneReason::NoTime),
    );
    let said = "Have the lug-nut torque checked after 80\u{a0}km, no later than Mar 9, 2025.";
    assert_eq!(sentence(&job), said);
}
