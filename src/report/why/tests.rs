//! That the reasons on page one are those of the part that is in the car, and of what was compared.
use crate::job::dial_setup::recorded;
use crate::job::entry::{Charge, Ending, Event, Reply};
use crate::report::sample::{self, AT, Job};
use crate::report::tests::{context, never_says, report, says};
use crate::trade::fastening::SpecBody;
use crate::trade::play::{Decision, Felt, Method, Way};
use crate::trade::wheel_end::{Choice, SetName, Step, StepKey, When};

fn page(job: &Job) -> String {
    context(&report(job).page_one)
}

#[track_caller]
fn in_order(page: &str, wanted: &[&str]) {
    let places: Vec<usize> = wanted
        .iter()
        .map(|want| {
            page.find(want)
                .unwrap_or_else(|| panic!("{want:?} is not in:\n{page}"))
        })
        .collect();
    assert!(places.is_sorted(), "{places:?} of {wanted:?} in:\n{page}");
}

#[test]
fn a_rough_new_part_is_reported_before_the_old_parts_reasons() {
    let spin = StepKey::at(Step::ProveSpin, AT);
    let rough = "After the repair the wheel bearing feels rough when it is turned by hand.";
    let noisy = "After the repair the wheel bearing is noisy when it is turned by hand.";
    let old = "The bearing feels rough when the wheel is turned by hand.";
    for (pick, new) in [
        (Choice::Rough, vec![rough]),
        (Choice::Noisy, vec![noisy]),
        (Choice::RoughNoisy, vec![rough, noisy]),
        (Choice::GrindsHot, vec![rough, noisy]),
    ] {
        let mut job = sample::finished(None);
        job.answer(spin, Reply::Picked(pick));
        let before = "Before the work, this wheel bearing failed our check.";
        let next = "The repair is not proved. The cause must be found";
        let all = [&["DO NOT DRIVE"][..], &new, &[next, "Why", before, old]].concat();
        in_order(&page(&job), &all);
        if pick == Choice::Rough {
            never_says(&page(&job), &[noisy]);
        }
        // Left as it stands, it is told all the same.
        job.ended(Ending::LeftUnfinished, Some(Charge::Towed));
        in_order(&page(&job), &all);
    }
    let smooth = page(&sample::finished(None));
    never_says(
        &smooth,
        &["After the repair the wheel bearing", "is not proved"],
    );
}

#[test]
fn a_new_part_that_moves_too_far_says_so() {
    let mut job = sample::finished(None);
    job.rounds(When::After, ["12", "12", "12"]);
    in_order(
        &page(&job),
        &[
            "After the repair the wheel hub moves more than the limit allows.",
            "The repair is not proved.",
            "Before the work",
        ],
    );
}

/// The manufacturer's limit for this method.
fn spec(method: Method) -> Event {
    let mut spec = sample::play_spec("0.05");
    if let Event::Spec(spec) = &mut spec
        && let SpecBody::Play { way, .. } = &mut spec.body
    {
        way.method = method;
    }
    spec
}

/// A noisy bearing without play, measured this way beside this limit.
fn noisy(way: Way, spec: Event) -> Job {
    let mut job = sample::packed(None, spec);
    let still = ["0", "0", "0"];
    sample::measured(&mut job, Felt::Nothing, Choice::RoughNoisy, still);
    let set = SetName {
        when: When::Before,
        nth: 1,
    };
    job.tap(vec![recorded(AT, set, way)]);
    job.decided(Decision::Replace);
    job
}

#[test]
fn movement_is_called_no_reason_only_where_it_was_compared() {
    let not_the_reason = "Movement was not the reason";
    let not_compared = "That could not be compared with the limit";
    let compared = page(&noisy(Way::DEFAULT, spec(Method::Axial)));
    says(&compared, &[not_the_reason]);
    never_says(&compared, &[not_compared]);
    let rocked = Way {
        method: Method::Rock,
        ..Way::DEFAULT
    };
    // The reading is of another method than the limit, or the limit than the reading; what the
    // default limit then says clears nothing.
    // With a slack axle nut it is no reading of the bearing at all.
    let mut slack = noisy(Way::DEFAULT, spec(Method::Axial));
    let nut = StepKey::at(Step::NutFound, AT);
    slack.answer(nut, Reply::Picked(Choice::NutSlack));
    slack.decided(Decision::Stop);
    for job in [
        slack,
        noisy(rocked, spec(Method::Axial)),
        noisy(Way::DEFAULT, spec(Method::Rock)),
    ] {
        let page = page(&job);
        says(&page, &["The hub moved 0.00\u{a0}mm", not_compared]);
        never_says(&page, &[not_the_reason]);
    }
}
