//! Two phones that did not see each other: the more careful word holds until somebody settles it.

use super::*;

#[test]
fn two_values_that_did_not_see_each_other_are_both_saved_and_said() {
    let joined = apart(&Job::opened(), (LONG_AGO, off()), (FAR_AHEAD, tight()));
    let sheet = joined.sheet();
    assert_eq!(sheet.stated(&Key::Item(pin())).count(), 2);
    assert_eq!(
        sheet.problems(),
        [Problem::Disagree(Key::Item(pin()))],
        "the step differs, so only the item disagrees"
    );
}

#[test]
fn the_same_value_twice_is_no_disagreement() {
    let joined = apart(&Job::opened(), (LONG_AGO, off()), (FAR_AHEAD, off()));
    assert_eq!(joined.sheet().stated(&Key::Item(pin())).count(), 2);
    assert_eq!(joined.sheet().problems(), []);
}

#[test]
fn loose_beats_tight_until_it_is_settled() {
    for joined in either_clock(&Job::opened(), &off(), &tight()) {
        assert_eq!(joined.sheet().item(pin()), Some(ItemState::Off));
    }
}

#[test]
fn stop_beats_watch_until_it_is_settled() {
    let order = [
        Decision::Stop,
        Decision::Replace,
        Decision::Watch,
        Decision::Keep,
    ];
    for (place, graver) in order.iter().enumerate() {
        for milder in &order[place + 1..] {
            for joined in either_clock(&Job::opened(), &decided(*graver), &decided(*milder)) {
                let sheet = joined.sheet();
                assert_eq!(sheet.decided(HERE).unwrap().decision, *graver);
            }
        }
    }
}

#[test]
fn no_beats_yes_until_it_is_settled() {
    let shove = StepKey::at(Step::Shove, HERE);
    let (no, yes) = (said(shove, Answer::No), said(shove, Answer::Yes));
    for joined in either_clock(&Job::opened(), &no, &yes) {
        let reply = joined.sheet().reply(shove).cloned();
        assert_eq!(reply, Some(Reply::Said(Answer::No)));
    }
    for joined in either_clock(&Job::opened(), &agreed(false), &agreed(true)) {
        let sheet = joined.sheet();
        assert!(!sheet.consent(StepKey::at(Step::Agree, HERE)).unwrap().yes);
    }
}

#[test]
fn a_sign_on_the_road_that_was_there_beats_one_that_was_not() {
    for sign in Sign::ALL.iter().filter(|sign| **sign != Sign::Swerve) {
        let step = StepKey::once(sign_step(*sign));
        let answers = [Answer::Yes, Answer::NotDone, Answer::No];
        for (place, graver) in answers.iter().enumerate() {
            for milder in &answers[place + 1..] {
                let (graver, milder) = (said(step, *graver), said(step, *milder));
                for joined in either_clock(&Job::opened(), &graver, &milder) {
                    let held = joined.sheet().answered(step).cloned().unwrap();
                    assert_eq!(held.what, graver);
                }
            }
        }
    }
    let swerve = StepKey::once(Step::SignSwerve);
    let picked = |pick| Event::Answered(swerve, Reply::Picked(pick));
    let louder = picked(Choice::LouderRight);
    for joined in either_clock(&Job::opened(), &louder, &picked(Choice::NoChange)) {
        assert_eq!(joined.sheet().answered(swerve).unwrap().what, louder);
    }
}

#[test]
fn a_row_that_means_stop_is_not_lost_to_another_phones_list() {
    let step = StepKey::once(Step::BeforeDriving);
    let list = |check| {
        let all = [
            Check::NutsAsFound,
            Check::WheelUpright,
            Check::PedalFirm,
            Check::Tires,
        ];
        let rows = all.map(|row| {
            (
                row,
                if row == check {
                    Answer::No
                } else {
                    Answer::Yes
                },
            )
        });
        Event::Answered(step, Reply::Checked(rows.to_vec()))
    };
    for stop in [Check::WheelUpright, Check::NutsAsFound] {
        for other in [Check::PedalFirm, Check::Tires] {
            for joined in either_clock(&Job::opened(), &list(stop), &list(other)) {
                let sheet = joined.sheet();
                assert_eq!(sheet.answered(step).unwrap().what, list(stop));
                assert_eq!(evidence::verdict(&sheet, HERE).decision, Decision::Stop);
            }
        }
    }
}

#[test]
fn not_done_beats_yes_until_it_is_settled() {
    let shove = StepKey::at(Step::Shove, HERE);
    let skipped = Event::Answered(shove, Reply::NotDone(NotDoneReason::NoTime));
    for joined in either_clock(&Job::opened(), &skipped, &said(shove, Answer::Yes)) {
        let reply = joined.sheet().reply(shove).cloned();
        assert_eq!(reply, Some(Reply::NotDone(NotDoneReason::NoTime)));
    }
}

#[test]
fn what_hands_and_ears_found_wrong_beats_what_they_found_well() {
    let spin = StepKey::at(Step::SpinHand, HERE);
    let rock = StepKey::at(Step::RockAxial, HERE);
    let cases = [
        (
            spin,
            Reply::Picked(Choice::GrindsHot),
            Reply::Picked(Choice::SmoothQuiet),
        ),
        (
            spin,
            Reply::Picked(Choice::Rough),
            Reply::NotDone(NotDoneReason::NoTime),
        ),
        (rock, Reply::Felt(Felt::Knocks), Reply::Felt(Felt::Nothing)),
    ];
    for (step, wrong, well) in cases {
        let safe = Event::Answered(step, wrong.clone());
        for joined in either_clock(&Job::opened(), &safe, &Event::Answered(step, well)) {
            assert_eq!(joined.sheet().reply(step), Some(&wrong));
        }
    }
}

#[test]
fn a_later_entry_that_saw_both_settles_it() {
    for mut joined in either_clock(&Job::opened(), &off(), &tight()) {
        joined.phone.clock = LONG_AGO;
        joined.tap(vec![tight()]);
        let sheet = joined.sheet();
        assert_eq!(sheet.item(pin()), Some(ItemState::Done));
        assert_eq!(sheet.stated(&Key::Item(pin())).count(), 1);
        assert_eq!(sheet.problems(), []);
    }
}

#[test]
fn a_later_entry_that_saw_only_one_settles_nothing() {
    let mut one = Job::opened();
    let mut two = one.on("slate two", LONG_AGO);
    one.tap(vec![off()]);
    two.tap(vec![off()]);
    two.tap(vec![tight()]);
    one.take(&two);
    assert_eq!(one.sheet().item(pin()), Some(ItemState::Off));
}
