//! What page one says first, and that it says no more than the record does.
use crate::job::entry::{Consent, Ending, Event, How, Reply, Scope};
use crate::report::sample::{self, AT, Job};
use crate::report::tests::{context, never_says, report, says};
use crate::report::{Block, Size};
use crate::text::{Now, now, now_say};
use crate::trade::answer::Answer;
use crate::trade::play::{Decision, Felt};
use crate::trade::wheel_end::{Choice, ItemKind, ItemState, NotDoneReason, Step, StepKey};

const SAFE: &str = "REPLACED, safe to drive";

/// The large word with what stands beside it.
fn head(job: &Job) -> String {
    let first = report(job).page_one.into_iter().next();
    assert!(matches!(first, Some(Block::Standing { .. })), "{first:?}");
    context(&first.into_iter().collect::<Vec<_>>())
}

fn bars(job: &Job) -> usize {
    let wide = |block: &&Block| {
        matches!(
            block,
            Block::Drawing {
                size: Size::Wide,
                ..
            }
        )
    };
    report(job).page_one.iter().filter(wide).count()
}

#[test]
fn safe_to_drive_needs_the_end_the_pedal_the_proof_and_nothing_loose() {
    let job = sample::finished(None);
    says(&head(&job), &[SAFE, "Front left: wheel bearing replaced."]);

    let mut open = sample::finished(None);
    let end = open.entries.last().unwrap().id.clone();
    open.tap(vec![Event::Strike(vec![end])]);
    says(
        &head(&open),
        &["not released yet", "not been closed as finished", "Ask us"],
    );
    never_says(&head(&open), &[SAFE]);

    let not_done = |step: StepKey| {
        let mut job = sample::finished(None);
        job.answer(step, Reply::NotDone(NotDoneReason::NoTime));
        head(&job)
    };
    let pedal = not_done(StepKey::once(Step::ProvePedal));
    says(
        &pedal,
        &[
            "not released yet",
            "the brake pedal is not recorded as firm",
        ],
    );
    let spin = not_done(StepKey::at(Step::ProveSpin, AT));
    says(
        &spin,
        &[
            "not released yet",
            "the checks of the new part are not complete",
        ],
    );

    let mut soft = sample::finished(None);
    let no = Reply::Said(Answer::No);
    soft.answer(StepKey::once(Step::ProvePedal), no);
    says(
        &head(&soft),
        &["DO NOT DRIVE", "The brake pedal is not firm."],
    );

    let mut loose = sample::finished(None);
    loose.moved(Step::LoosenLugNuts, ItemKind::LugNuts, ItemState::Loosened);
    says(&head(&loose), &["DO NOT DRIVE", "not finished"]);
    for job in [soft, loose] {
        never_says(&context(&report(&job).page_one), &[SAFE]);
    }
}

/// A bearing that is noisy and rough by hand, with no play at all.
fn noisy() -> Job {
    let mut job = sample::packed(None, sample::play_spec("0.05"));
    sample::measured(&mut job, Felt::Nothing, Choice::RoughNoisy, ["0", "0", "0"]);
    job.decided(Decision::Replace);
    job
}

#[test]
fn three_dots_at_zero_never_stand_beside_replace() {
    let mut job = noisy();
    job.consent(false);
    sample::closed(&mut job);
    job.ended(Ending::Declined, None);
    let page = context(&report(&job).page_one);
    says(
        &page,
        &[
            "NOT REPAIRED: repair declined",
            "Front left: REPLACE. This wheel bearing failed our check",
            "The bearing is noisy when the wheel is turned by hand.",
            "The bearing feels rough when the wheel is turned by hand.",
            "Movement was not the reason: the hub moved 0.00\u{a0}mm (0.0000\u{a0}in).",
        ],
    );
    assert_eq!(bars(&job), 0);
    // Where play is the reason, the drawing stands there and says how it is read.
    let worn = sample::finished(None);
    assert_eq!(bars(&worn), 1);
    says(
        &context(&report(&worn).page_one),
        &["Each dot is one reading."],
    );
}

#[test]
fn what_was_declined_is_not_to_pay_and_a_stop_has_no_retorque() {
    let job = sample::declined_stop();
    let report = report(&job);
    let rows: Vec<&(String, String)> = report
        .page_one
        .iter()
        .filter_map(|block| match block {
            Block::Rows(rows) => Some(rows),
            _ => None,
        })
        .flatten()
        .collect();
    let amount = |label: &str| {
        let row = rows.iter().find(|(name, _)| name == label);
        row.map(|(_, amount)| amount.as_str())
    };
    assert_eq!(amount("Total to pay"), Some("90.00\u{a0}EUR"));
    let declined = "Repair you declined, not charged";
    assert_eq!(amount(declined), Some("480.50\u{a0}EUR"));
    let page = context(&report.page_one);
    never_says(&page, &["lug-nut torque", "Have the lug", "Full repair"]);
    assert!(report.tear_off.is_none_or(|slip| slip.sentence.is_none()));
}

#[test]
fn a_declined_inspection_says_so_and_costs_nothing() {
    let mut job = sample::packed(None, sample::play_spec("0.05"));
    job.tap(vec![Event::Consent(Consent {
        step: StepKey::once(Step::TeardownYes),
        scope: Scope::Teardown,
        yes: false,
        how: How::Spoken,
        amount: Some(sample::euro(9_000)),
    })]);
    job.ended(Ending::Declined, None);
    let page = context(&report(&job).page_one);
    says(
        &page,
        &[
            "NOT INSPECTED: inspection declined",
            "Nothing was opened",
            "Nothing to pay.",
        ],
    );
    never_says(
        &page,
        &["Total to pay", "Refused to sign", "may be driven", SAFE],
    );
}

#[test]
fn beside_refused_to_sign_there_is_no_signature() {
    let signatures = |job: &Job| {
        let page = report(job).page_one;
        let drawn = page.iter().filter(|b| matches!(b, Block::Signature { .. }));
        drawn.count()
    };
    assert_eq!(signatures(&sample::finished(None)), 1);
    let mut refused = sample::finished(None);
    let no = Reply::NotDone(NotDoneReason::CustomerSaysNo);
    refused.answer(StepKey::once(Step::Sign), no);
    assert_eq!(signatures(&refused), 0);
    says(&context(&report(&refused).page_one), &["Refused to sign"]);

    let mut spoken = sample::packed(None, sample::play_spec("0.05"));
    sample::measured(
        &mut spoken,
        Felt::JustFelt,
        Choice::Rough,
        ["12", "12", "12"],
    );
    spoken.decided(Decision::Replace);
    spoken.tap(vec![Event::Consent(Consent {
        step: StepKey::at(Step::Agree, AT),
        scope: Scope::Repair,
        yes: false,
        how: How::Spoken,
        amount: None,
    })]);
    sample::closed(&mut spoken);
    spoken.ended(Ending::Declined, None);
    says(&context(&report(&spoken).page_one), &["Refused to sign"]);
    assert_eq!(signatures(&spoken), 0);
}

#[test]
fn nothing_found_and_the_place_not_safe_have_words_of_their_own() {
    let saved = sample::kept_by_house_limit();
    says(&head(&saved), &["Nothing found", "no fault found"]);
    let mut refused = sample::packed(None, sample::play_spec("0.05"));
    refused.ended(Ending::NotSafeHere, None);
    says(&head(&refused), &["NOT INSPECTED: not safe to work here"]);
    let mut watched = sample::packed(None, sample::play_spec("0.05"));
    sample::measured(
        &mut watched,
        Felt::JustFelt,
        Choice::SmoothQuiet,
        ["1", "1", "1"],
    );
    watched.decided(Decision::Watch);
    sample::closed(&mut watched);
    watched.ended(Ending::NothingWrong, None);
    says(
        &head(&watched),
        &["WATCH: check again", "Front left: WATCH."],
    );
}

#[test]
fn only_a_finished_repair_says_that_the_car_is_safe_to_drive() {
    use crate::text::Lang::English;
    for word in Now::ALL.iter().copied() {
        let all = format!("{} {}", now(English, word), now_say(English, word));
        let safe = all.contains("safe to drive") && !all.contains("not safe to drive");
        let safe = safe && !all.contains("call the car safe to drive");
        let finished = matches!(word, Now::ReplacedSafe | Now::AdjustedSafe);
        assert_eq!(safe, finished, "{word:?}");
        assert_eq!(
            word.forbids_driving(),
            all.contains("DO NOT DRIVE"),
            "{word:?}"
        );
    }
}
