//! Whole jobs of each ending.

use super::*;

/// A worn bearing replaced, proved and handed over; one tap was taken back.
pub fn finished(practice: Option<&str>) -> Job {
    let mut job = packed(practice, play_spec("0.05"));
    measured(
        &mut job,
        Felt::JustFelt,
        Choice::RoughNoisy,
        ["12", "12.5", "13"],
    );
    job.decided(Decision::Replace);
    let wrong = job.tap(vec![Event::Note(None, "the wrong corner".to_owned())]);
    job.tap(vec![Event::Strike(wrong)]);
    job.consent(true);
    job.tap_recorded(
        Some(25),
        vec![Event::Answered(
            StepKey::at(Step::StripNut, AT),
            Reply::Done,
        )],
    );
    job.moved(Step::StripNut, ItemKind::AxleNut, ItemState::Off);
    job.moved(Step::StripHub, ItemKind::Hub, ItemState::Off);
    job.tap(vec![Event::Part(Part {
        corner: AT,
        number: "HB 4471".to_owned(),
        lot: "25 W 07".to_owned(),
    })]);
    job.moved(Step::Offer, ItemKind::Hub, ItemState::Done);
    job.turned(Step::TurnAxleNut, ItemKind::AxleNut, "180.5");
    let [rig, spin] = [Step::RigPush, Step::ProveSpin].map(|step| StepKey::at(step, AT));
    job.answer(rig.nth(2), Reply::Picked(Choice::FlexNone));
    job.rounds(When::After, ["1", "1", "1.5"]);
    job.answer(spin, Reply::Picked(Choice::SmoothQuiet));
    job.tap(vec![Event::Photo(Photo {
        step: StepKey::at(Step::StandPhoto, AT),
        sha256: "ab12".repeat(16),
        mime: "image/jpeg".to_owned(),
        width: 1600,
        height: 1200,
    })]);
    let seat = StepKey::at(Step::Seat, AT);
    let note = "seat cleaned to bright metal".to_owned();
    job.tap(vec![Event::Note(Some(seat), note)]);
    closed(&mut job);
    job.answer(StepKey::once(Step::ProvePedal), Reply::Said(Answer::Yes));
    let gone = vec![(Check::SpeedGone, Answer::Yes)];
    let [warning_lights, road] = [Step::ProveWarningLights, Step::ProveRoad].map(StepKey::once);
    job.answer(warning_lights, Reply::Picked(Choice::NoWarningLights));
    job.answer(road, Reply::Checked(gone));
    job.ended(Ending::Finished, None);
    job
}

/// It knocks; the customer said no; all was put back.
pub fn declined_stop() -> Job {
    let mut job = packed(None, play_spec("0.05"));
    job.tap(vec![Event::Consent(Consent {
        step: StepKey::once(Step::TeardownYes),
        scope: Scope::Teardown,
        yes: true,
        how: How::Spoken,
        amount: Some(euro(9_000)),
    })]);
    measured(
        &mut job,
        Felt::Knocks,
        Choice::GrindsHot,
        ["20", "21", "20"],
    );
    job.decided(Decision::Stop);
    job.consent(false);
    closed(&mut job);
    job.ended(Ending::Declined, None);
    job
}

/// Nothing found, no manufacturer limit.
pub fn kept_by_house_limit() -> Job {
    let mut job = packed(None, no_play_spec());
    measured(
        &mut job,
        Felt::Nothing,
        Choice::SmoothQuiet,
        ["2", "2", "2"],
    );
    job.decided(Decision::Keep);
    closed(&mut job);
    job.ended(Ending::NothingWrong, None);
    job
}

/// Stripped, and then the weather.
pub fn left_unfinished() -> Job {
    let mut job = packed(None, play_spec("0.05"));
    measured(
        &mut job,
        Felt::JustFelt,
        Choice::RoughNoisy,
        ["12", "12", "13"],
    );
    job.decided(Decision::Replace);
    job.consent(true);
    job.moved(Step::StripNut, ItemKind::AxleNut, ItemState::Off);
    job.ended(Ending::LeftUnfinished, Some(Charge::Towed));
    job
}
