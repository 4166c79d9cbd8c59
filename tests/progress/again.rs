//! What is measured or judged again: after a failed proof, after loose nuts, by a later set.

use super::*;

/// The new hub measures over its limit, as the old one did.
const STILL_PLAYS: Story = Story {
    still_plays: true,
    ..Story::REPLACED
};

/// A job whose new hub was measured and then spun rough.
fn rough_again() -> Job {
    let spin = at(Step::ProveSpin);
    let mut job = walk_to(STILL_PLAYS, spin);
    job.tap(vec![Event::Answered(spin, Reply::Picked(Choice::Rough))]);
    job
}

#[test]
fn a_proof_that_fails_is_reported_at_the_open_wheel_end_and_measured_again_from_its_base() {
    let mut job = rough_again();
    let recorded = at(Step::ProveResult);
    assert_eq!(next_key(&job.sheet()), Some(recorded));
    let (entries, loose) = (job.entries.len(), job.sheet().loose());
    let again = measure_again(&job.sheet(), &steps(&job.sheet()), HERE);
    job.tap(again);
    assert_eq!(job.entries.len(), entries + 1, "nothing leaves the record");
    assert_eq!(job.sheet().loose(), loose);
    let mut asked = Vec::new();
    while asked.last() != Some(&at(Step::ProveSpin)) {
        asked.push(next_key(&job.sheet()).unwrap());
        step(&mut job, STILL_PLAYS);
    }
    let rounds = [21, 22, 23].map(|nth| at(Step::Round).nth(nth));
    let rig = [Step::RigTip, Step::RigPush].map(|step| at(step).nth(2));
    assert_eq!(asked[..2], rig);
    assert_eq!(asked[2..5], rounds);
    assert_eq!(asked.len(), 6);
    // The walk's second spin is smooth, and its needle moves as far as before the work.
    assert!(is_blocked(&job.sheet(), HERE));
    let pulls = |what: &Event| match what {
        Event::Reading(Reading {
            set,
            round,
            side: Side::Pull,
            ..
        }) if set.when == hubslate::trade::wheel_end::When::After => Some(*round),
        _ => None,
    };
    let counting: Vec<u8> = job
        .sheet()
        .counting()
        .filter_map(|e| pulls(&e.what))
        .collect();
    assert_eq!(counting, [1, 2, 3]);
}

/// From the last look back to it, and the steps that were asked on the way.
fn measured_again(job: &mut Job, story: Story) -> Vec<StepKey> {
    let last = StepKey::once(Step::ProveResult);
    let again = measure_again(&job.sheet(), &steps(&job.sheet()), HERE);
    job.tap(again);
    let mut asked = Vec::new();
    while next_key(&job.sheet()) != Some(last) {
        let (sheet, key) = (job.sheet(), next_key(&job.sheet()).unwrap());
        let steps = steps(&sheet);
        let planned = steps.iter().find(|planned| planned.key == key).unwrap();
        assert_eq!(held(&sheet, &steps, planned), None, "{key:?}");
        asked.push(key);
        step(job, story);
    }
    asked
}

#[test]
fn measured_again_with_the_wheel_on_it_is_opened_first_and_closed_after_it() {
    for nut in NutPosition::ALL.iter().copied() {
        let story = Story { nut, ..STILL_PLAYS };
        let mut job = walk_to(story, StepKey::once(Step::ProveResult));
        assert_eq!(job.sheet().loose(), []);
        let asked = measured_again(&mut job, story);
        let opened = [
            Step::LoosenLugNuts,
            Step::Shove,
            Step::WheelOffAgain,
            Step::CaliperUpAgain,
        ];
        assert_eq!(asked[..4], opened.map(|step| at(step).nth(4)), "{nut:?}");
        let rig = [Step::RigTip, Step::RigPush].map(|step| at(step).nth(2));
        assert_eq!(asked[4..6], rig);
        let closed: Vec<Step> = asked[10..].iter().map(|key| key.step).collect();
        // The needle of this walk moves as far as before the work: that is told at once.
        let closes = [
            Step::ProveResult,
            Step::CaliperDown,
            Step::TurnCaliperPins,
            Step::Pedal,
            Step::WheelOn,
            Step::Lower,
            Step::TurnLugNuts,
            Step::ProvePedal,
            Step::Clear,
        ];
        assert_eq!(closed, closes, "{nut:?}");
        assert_eq!(job.sheet().loose(), []);
        // And once more: it is opened and closed once more.
        assert_eq!(measured_again(&mut job, story), asked);
    }
}

#[test]
fn measured_again_every_nut_is_loose_until_its_own_tap() {
    let story = Story::REPLACED;
    let mut job = walk_to(story, StepKey::once(Step::ProveResult));
    let again = measure_again(&job.sheet(), &steps(&job.sheet()), HERE);
    job.tap(again);
    while next_key(&job.sheet()) != Some(at(Step::RigPush).nth(2)) {
        step(&mut job, story);
    }
    let loose = job.sheet().loose().len();
    assert_eq!(loose, 5 + 1 + 2 + 2, "nuts, wheel, pins, caliper and pads");
    while next_key(&job.sheet()) != Some(at(Step::TurnLugNuts)) {
        step(&mut job, story);
    }
    assert_eq!(far(&job, at(Step::TurnLugNuts)), Status::Open);
    assert_eq!(job.sheet().loose().len(), 5);
}

#[test]
fn with_the_caliper_closed_and_the_wheel_off_it_is_shoved_and_only_the_caliper_is_opened() {
    let mut job = walk_to(Story::REPLACED, at(Step::WheelOn));
    let again = measure_again(&job.sheet(), &steps(&job.sheet()), HERE);
    job.tap(again);
    let shove = at(Step::Shove).nth(4);
    assert_eq!(next_key(&job.sheet()), Some(shove));
    job.tap(vec![said(shove, Answer::Yes)]);
    let up = at(Step::CaliperUpAgain).nth(4);
    assert_eq!(next_key(&job.sheet()), Some(up));
}

/// A corner that is judged by its entries: nothing felt, smooth, nuts found loose or not.
fn judged(job: &Job, nth: u8) -> Event {
    Event::Decided(hubslate::job::evidence::decided(&job.sheet(), HERE, nth))
}

#[test]
fn a_stop_for_loose_lug_nuts_is_judged_anew_once_they_are_at_their_spec() {
    let look = StepKey::once(Step::BeforeDriving);
    let to_spec = StepKey::once(Step::NutsToSpec);
    let story = Story {
        decision: Decision::Stop,
        yes: false,
        ..Story::REPLACED
    };
    let mut job = walk_to(story, look);
    let loose = Reply::Checked(vec![(Check::NutsAsFound, Answer::No)]);
    job.tap(vec![Event::Answered(look, loose.clone())]);
    assert_eq!(next_key(&job.sheet()), Some(to_spec));
    job.tap(vec![said(to_spec, Answer::No)]);
    assert_eq!(next_key(&job.sheet()), Some(to_spec));
    job.tap(vec![said(to_spec, Answer::NotDone)]);
    while next_key(&job.sheet()) != Some(at(Step::Decide)) {
        step(&mut job, story);
    }
    let stop = judged(&job, 1);
    job.tap(vec![stop]);
    let decision = |job: &Job| job.sheet().decided(HERE).unwrap().decision;
    assert_eq!(decision(&job), Decision::Stop);
    step(&mut job, story);
    assert_eq!(next_key(&job.sheet()), Some(at(Step::CaliperDown)));
    // Brought to their spec, the corner is decided by what was found at it.
    job.tap(vec![said(to_spec, Answer::Yes)]);
    assert_eq!(next_key(&job.sheet()), Some(at(Step::Decide)));
    let anew = judged(&job, 1);
    job.tap(vec![anew]);
    assert_ne!(decision(&job), Decision::Stop);
    assert_eq!(next_key(&job.sheet()), Some(at(Step::CaliperDown)));
    // Found loose once more, the old yes does not count.
    job.tap(vec![Event::Answered(look, loose)]);
    assert!(hubslate::job::loose_lug_nuts::nuts_are_loose(&job.sheet()));
}

/// The new part does not move.
fn no_play_after(what: Event) -> Event {
    match what {
        Event::Reading(read) if read.set.when == When::After => Event::Reading(Reading {
            divisions: Decimal::parse("0").unwrap(),
            ..read
        }),
        other => other,
    }
}

#[test]
fn what_the_customer_agreed_to_is_not_judged_again() {
    let look = StepKey::once(Step::BeforeDriving);
    let mut job = walk_to(Story::REPLACED, look);
    let loose = Reply::Checked(vec![(Check::NutsAsFound, Answer::No)]);
    job.tap(vec![Event::Answered(look, loose)]);
    let to_spec = StepKey::once(Step::NutsToSpec);
    job.tap(vec![said(to_spec, Answer::NotDone)]);
    while next_key(&job.sheet()) != Some(at(Step::Decide)) {
        step(&mut job, Story::REPLACED);
    }
    let stop = judged(&job, 1);
    job.tap(vec![stop]);
    step(&mut job, Story::REPLACED);
    while next_key(&job.sheet()) != Some(StepKey::once(Step::End)) {
        let sheet = job.sheet();
        let steps = steps(&sheet);
        let planned = next(&sheet, &steps).unwrap();
        let whats = technician::answer(&sheet, planned, Story::REPLACED);
        job.tap(whats.into_iter().map(no_play_after).collect());
    }
    let ending = |job: &Job| {
        let sheet = job.sheet();
        hubslate::job::ending::proposed(&sheet, &hubslate::job::plan(&sheet))
    };
    // A new hub does not make good what was found loose elsewhere.
    assert_eq!(ending(&job), Ending::LeftUnfinished);
    job.tap(vec![said(to_spec, Answer::Yes)]);
    assert_eq!(next_key(&job.sheet()), Some(StepKey::once(Step::End)));
    assert_eq!(ending(&job), Ending::Finished);
}

#[test]
fn a_first_decision_made_anew_puts_the_second_aside() {
    let story = Story {
        decision: Decision::Keep,
        again: true,
        ..Story::REPLACED
    };
    let mut job = walk_to(story, at(Step::CaliperDown));
    assert_eq!(job.sheet().decided(HERE).unwrap().nth, 2);
    let anew = |again| {
        Event::Decided(Decided {
            again,
            ..match technician::decided(1, story) {
                Event::Decided(decided) => decided,
                other => panic!("{other:?}"),
            }
        })
    };
    let mut stands = job.clone();
    stands.tap(vec![anew(false)]);
    assert_eq!(stands.sheet().decided(HERE).unwrap().nth, 1);
    assert_eq!(next_key(&stands.sheet()), Some(at(Step::CaliperDown)));
    // Asked for once more, the second set is decided once more.
    job.tap(vec![anew(true)]);
    assert_eq!(next_key(&job.sheet()), Some(at(Step::Decide).nth(2)));
    job.tap(vec![technician::decided(2, story)]);
    assert_eq!(job.sheet().decided(HERE).unwrap().nth, 2);
    assert_eq!(next_key(&job.sheet()), Some(at(Step::CaliperDown)));
}
