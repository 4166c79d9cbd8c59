//! Which pictures the record asks for, what answers it, and what a second one does to the first.
use super::*;
use crate::job::caption::{CaptionWord, hands_are_clean};
use crate::job::entry::{Consent, Decided, Ended, Ending, How, Inputs, Scope};
use crate::job::recorded::sheet;
use crate::job::turn::tests::{CORNER, planned};
use crate::trade::fastening::MishapKind;
use crate::trade::wheel_end::{Check, ItemKind, NotDoneReason, items};

fn photo(step: StepKey, sha256: &str) -> Photo {
    Photo {
        step,
        sha256: sha256.to_owned(),
        mime: "image/jpeg".to_owned(),
        width: 1600,
        height: 1200,
    }
}

fn at(step: Step, phase: Phase) -> PlannedStep {
    PlannedStep {
        phase,
        form: Form::Do,
        ..planned(step, ItemKind::LugNuts)
    }
}

/// What was owed is settled by a picture, and as well by a reason why there is none.
#[track_caller]
fn is_settled(whats: &[Event], planned: &PlannedStep, key: StepKey) {
    let with = |what: Event| sheet([whats, &[what]].concat());
    assert_eq!(owed(&sheet(whats), planned), Some(key));
    assert_eq!(owed(&with(Event::Photo(photo(key, "a"))), planned), None);
    let because = Event::Answered(key, Reply::NotDone(NotDoneReason::NoLight));
    assert_eq!(owed(&with(because), planned), None);
    let ended = Event::Ended(Ended {
        ending: Ending::LeftUnfinished,
        charge: None,
    });
    assert_eq!(
        owed(&with(ended), planned),
        None,
        "nothing is asked afterwards"
    );
}

fn looked(tires: Answer) -> Event {
    let looks = vec![(Check::NutsAsFound, Answer::Yes), (Check::Tires, tires)];
    let key = StepKey::once(Step::BeforeDriving);
    Event::Answered(key, Reply::Checked(looks))
}

#[test]
fn what_is_wrong_as_found_is_photographed_before_the_road() {
    let drive = at(Step::Drive, Phase::Listen);
    is_settled(
        &[looked(Answer::No)],
        &drive,
        StepKey::once(Step::FoundPhoto),
    );
    for fine in [Answer::Yes, Answer::NotDone] {
        assert_eq!(owed(&sheet([looked(fine)]), &drive), None, "{fine:?}");
    }
    let looks = at(Step::BeforeDriving, Phase::Listen);
    assert_eq!(owed(&sheet([looked(Answer::No)]), &looks), None);
}

fn broke(step: &PlannedStep, number: usize) -> Mishap {
    Mishap {
        step: step.key,
        item: items(CORNER, ItemKind::LugNuts, 5)[number - 1],
        kind: MishapKind::Sheared,
        part: "stud".to_owned(),
        minutes: 30,
    }
}

#[test]
fn what_broke_is_photographed_before_the_customer_is_asked() {
    let turn = planned(Step::TurnLugNuts, ItemKind::LugNuts);
    let (first, second) = (broke(&turn, 3), broke(&turn, 5));
    let key = mishap_key(&first);
    assert_eq!(key.code(), format!("mishap_photo@{}.3", CORNER.code()));
    is_settled(&[Event::Mishap(first.clone())], &turn, key);
    // The same stud once more: the picture of the first time says nothing of the second.
    let again = [
        Event::Mishap(first.clone()),
        Event::Photo(photo(key, "a")),
        Event::Mended(first.item),
        Event::Mishap(first),
    ];
    assert_eq!(owed(&sheet(&again), &turn), Some(key));
    assert_ne!(mishap_key(&second), key);
}

#[test]
fn what_the_customer_leaves_dangerous_is_photographed_before_it_is_put_back() {
    let said = |yes, decision| {
        let decided = Event::Decided(Decided {
            corner: CORNER,
            nth: 1,
            decision,
            again: false,
            reasons: Vec::new(),
            rules: 1,
            inputs: Inputs::none(),
        });
        let consent = Event::Consent(Consent {
            step: StepKey::at(Step::Agree, CORNER),
            scope: Scope::Repair,
            yes,
            how: How::Spoken,
            amount: None,
        });
        [decided, consent]
    };
    let down = at(Step::CaliperDown, Phase::Tighten);
    let key = StepKey::at(Step::DeclinedPhoto, CORNER);
    is_settled(&said(false, Decision::Stop), &down, key);
    is_settled(&said(false, Decision::Replace), &down, key);
    assert_eq!(owed(&sheet(said(true, Decision::Stop)), &down), None);
    assert_eq!(owed(&sheet(said(false, Decision::Watch)), &down), None);
}

#[test]
fn a_job_is_left_with_a_photo_or_a_reason() {
    let key = StepKey::once(Step::LeftPhoto);
    assert_eq!(owed_when_left(&sheet([])), Some(key));
    for answer in [
        Event::Photo(photo(key, "a")),
        Event::Answered(key, Reply::NotDone(NotDoneReason::NotSafe)),
    ] {
        assert_eq!(owed_when_left(&sheet([answer])), None);
    }
}

#[test]
fn a_second_photo_strikes_the_first_and_shows_what_it_showed() {
    let key = StepKey::at(Step::StandPhoto, CORNER);
    let shown = Caption::Word(CaptionWord::Chocks);
    let mut whats = vec![
        Event::Photo(photo(key, "a")),
        Event::Captioned(Captioned {
            sha256: "a".to_owned(),
            caption: shown.clone(),
        }),
    ];
    let before = sheet(&whats);
    let old = photos(&before).next().unwrap().0.clone();
    whats.extend(retaken(&before, &old, photo(key, "b")));
    let now = sheet(&whats);
    let there: Vec<&str> = photos(&now)
        .map(|(_, photo)| photo.sha256.as_str())
        .collect();
    assert_eq!(there, ["b"]);
    assert!(now.is_struck(&old), "it stays in the record");
    assert_eq!(*caption(&now, "b"), shown);
    // One without a caption needs none said of the next.
    let plain = sheet([Event::Photo(photo(key, "a"))]);
    let old = photos(&plain).next().unwrap().0.clone();
    assert_eq!(retaken(&plain, &old, photo(key, "b")).len(), 2);
}

#[test]
fn the_last_caption_holds_and_the_step_can_have_it_back() {
    let said = |caption| {
        Event::Captioned(Captioned {
            sha256: "a".to_owned(),
            caption,
        })
    };
    let own = Caption::Words("The stand on tar".to_owned());
    let now = sheet([said(Caption::Word(CaptionWord::Rust)), said(own.clone())]);
    assert_eq!(*caption(&now, "a"), own);
    assert_eq!(*caption(&now, "b"), Caption::Step);
    let back = sheet([said(own), said(Caption::Step)]);
    assert_eq!(*caption(&back, "a"), Caption::Step);
}

#[test]
fn a_glove_finds_what_is_offered_and_types_nothing() {
    for step in Step::ALL {
        let words = step.row().captions;
        assert!(
            (2..=6).contains(&words.len()) || *step == Step::Round,
            "{step:?}"
        );
        let mut once = words.to_vec();
        once.sort_unstable();
        once.dedup();
        assert_eq!(once.len(), words.len(), "{step:?}");
    }
    for phase in [Phase::Site, Phase::Lift, Phase::Strip, Phase::Prove] {
        assert!(!hands_are_clean(Some(phase)));
    }
    for next in [None, Some(Phase::Pack), Some(Phase::HandOver)] {
        assert!(hands_are_clean(next));
    }
}
