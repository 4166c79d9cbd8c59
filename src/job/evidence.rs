//! From the answers of a job to the evidence on one corner, the verdict on it and its record.
//!
//! Nothing is judged here: the rules stand in `trade::play`. This only gathers.

use crate::job::entry::{Decided, Inputs, Quantity, Reply};
use crate::job::judge::{measured, pick};
use crate::job::loose_lug_nuts::{is_to_be_judged_again, looked_wrong, nuts_are_loose};
use crate::job::mishap::is_cracked;
use crate::job::reason::{RULES_VERSION, code};
use crate::job::sheet::JobState;
use crate::trade::answer::Answer;
use crate::trade::play::{
    BrakeHeld, Evidence, Felt, Figures, Heat, Measured, Road, RoadSigns, StopSign, Swerve, Test,
    Verdict, decide, heat, join, road, spec_apart,
};
use crate::trade::vehicle::{Corner, Side};
use crate::trade::wheel_end::{Check, Choice, SetName, Step, StepKey, When};
use crate::units::Temperature;

/// The steps at which the wheel is rocked, each in a direction of its own.
const ROCKS: [Step; 3] = [Step::RockTwelveSix, Step::RockNineThree, Step::RockAxial];

/// The most that was felt. Nothing was felt only where every direction was tried.
fn felt(sheet: &JobState, corner: Corner) -> Option<Felt> {
    let felt = |step| match sheet.reply(StepKey::at(step, corner)) {
        Some(Reply::Felt(felt)) => Some(*felt),
        _ => None,
    };
    let all: Option<Vec<Felt>> = ROCKS.into_iter().map(felt).collect();
    let most = ROCKS.into_iter().filter_map(felt).max();
    most.filter(|most| *most != Felt::Nothing || all.is_some())
}

/// Roughness and noise of a hub that was spun by hand.
pub(super) fn spun(sheet: &JobState, step: StepKey) -> (Answer, Answer) {
    match pick(sheet, step) {
        Some(Choice::SmoothQuiet) => (Answer::No, Answer::No),
        Some(Choice::Rough) => (Answer::Yes, Answer::No),
        Some(Choice::Noisy) => (Answer::No, Answer::Yes),
        Some(Choice::RoughNoisy | Choice::GrindsHot) => (Answer::Yes, Answer::Yes),
        _ => (Answer::NotDone, Answer::NotDone),
    }
}

/// Yes, no or not done at a step of the whole vehicle.
pub(super) fn said(sheet: &JobState, step: Step) -> Answer {
    match sheet.reply(StepKey::once(step)) {
        Some(Reply::Said(answer)) => *answer,
        _ => Answer::NotDone,
    }
}

/// What the road says of a corner. Steering right loads the left side.
fn on_the_road(sheet: &JobState, corner: Corner) -> Road {
    let loaded = match pick(sheet, StepKey::once(Step::SignSwerve)) {
        Some(Choice::LouderRight) => Ok(Side::Left),
        Some(Choice::LouderLeft) => Ok(Side::Right),
        Some(Choice::NoChange) => Err(Swerve::NoChange),
        _ => Err(Swerve::NotDone),
    };
    road(&RoadSigns {
        speed: said(sheet, Step::SignSpeed),
        swerve: match loaded {
            Ok(side) if side == corner.side() => Swerve::LoadsHere,
            Ok(_) => Swerve::LoadsOther,
            Err(swerve) => swerve,
        },
        coast: said(sheet, Step::SignCoast),
        surface: said(sheet, Step::SignSurface),
    })
}

/// The heat of a corner beside that of the other side of its axle. Both are told once: of the
/// first corner of the job and of the hub across from it.
pub(super) fn heated(sheet: &JobState, corner: Corner) -> Heat {
    let at = |step| match sheet.reply(StepKey::once(step)) {
        Some(Reply::Number(Quantity::Temperature(heat))) => Some(heat.temperature()),
        _ => None,
    };
    let recorded: (Option<Temperature>, Option<Temperature>) =
        (at(Step::HeatHere), at(Step::HeatOther));
    match sheet.corners().first() {
        Some(first) if *first == corner => heat(recorded.0, recorded.1),
        Some(first) if first.opposite_side() == corner => heat(recorded.1, recorded.0),
        _ => Heat::NotDone,
    }
}

/// The sets before the work, as they are judged now.
fn sets(sheet: &JobState, corner: Corner) -> Vec<(u8, Measured)> {
    let set = |nth| {
        let when = When::Before;
        let set = measured(sheet, corner, SetName { when, nth })?.ok()?;
        Some((nth, set))
    };
    (1..=2).filter_map(set).collect()
}

/// What a decision on this corner can rest on now.
pub fn evidence(sheet: &JobState, corner: Corner) -> Evidence {
    let sets: Vec<Measured> = sets(sheet, corner)
        .into_iter()
        .map(|(_, set)| set)
        .collect();
    of_sets(sheet, corner, &sets, join(&sets).as_ref())
}

fn of_sets(
    sheet: &JobState,
    corner: Corner,
    sets: &[Measured],
    both: Option<&Figures>,
) -> Evidence {
    let (roughness, noise) = spun(sheet, StepKey::at(Step::SpinHand, corner));
    let brake_held = match pick(sheet, StepKey::at(Step::BrakeHeld, corner)) {
        Some(Choice::PlayGone) => BrakeHeld::Gone,
        Some(Choice::PlayStays) => BrakeHeld::Stays,
        _ => BrakeHeld::NotDone,
    };
    Evidence {
        sets: sets.iter().map(|set| set.conformity).collect(),
        joined: both.map(|both| both.conformity),
        spec_apart: spec_apart(sets),
        roughness,
        noise,
        felt: felt(sheet, corner),
        brake_held,
        road: on_the_road(sheet, corner),
        heat: heated(sheet, corner),
        stop_signs: stop_signs(sheet, corner),
        not_done: not_done(sheet, corner),
    }
}

fn stop_signs(sheet: &JobState, corner: Corner) -> Vec<StopSign> {
    let signs = [
        (
            StopSign::VisibleTilt,
            looked_wrong(sheet, Check::WheelUpright),
        ),
        (StopSign::LooseWheelFasteners, nuts_are_loose(sheet)),
        (
            StopSign::LooseAxleNut,
            pick(sheet, StepKey::at(Step::NutFound, corner)) == Some(Choice::NutSlack)
                || pick(sheet, StepKey::at(Step::LockFound, corner)) == Some(Choice::LockGone),
        ),
        (
            StopSign::GrindingWithHeat,
            pick(sheet, StepKey::at(Step::SpinHand, corner)) == Some(Choice::GrindsHot),
        ),
        (StopSign::CrackedPart, is_cracked(sheet, corner)),
    ];
    signs
        .into_iter()
        .filter_map(|(sign, seen)| seen.then_some(sign))
        .collect()
}

fn not_done(sheet: &JobState, corner: Corner) -> Vec<Test> {
    let done = |step| !matches!(sheet.reply(step), None | Some(Reply::NotDone(_)));
    let heat = heated(sheet, corner) != Heat::NotDone;
    // Driven and not listened for a noise is no road test of a bearing.
    let heard = said(sheet, Step::SignSpeed) != Answer::NotDone;
    let rocked = ROCKS
        .into_iter()
        .all(|step| done(StepKey::at(step, corner)));
    let tests = [
        (Test::Rock, rocked),
        (Test::OtherSide, done(StepKey::at(Step::OtherSide, corner))),
        (Test::Road, heard && done(StepKey::once(Step::Drive))),
        (Test::Temperatures, heat),
    ];
    tests
        .into_iter()
        .filter_map(|(test, done)| (!done).then_some(test))
        .collect()
}

/// The verdict on a corner as the entries stand.
pub fn verdict(sheet: &JobState, corner: Corner) -> Verdict {
    decide(&evidence(sheet, corner))
}

/// The verdict on a corner after its `nth` set, with everything that it rests on, as it is
/// recorded.
pub fn decided(sheet: &JobState, corner: Corner, nth: u8) -> Decided {
    let (names, sets): (Vec<u8>, Vec<Measured>) = sets(sheet, corner).into_iter().unzip();
    let both = join(&sets);
    let evidence = of_sets(sheet, corner, &sets, both.as_ref());
    let verdict = decide(&evidence);
    let figures = sets.iter().map(Measured::figures);
    Decided {
        corner,
        nth,
        decision: verdict.decision,
        again: verdict.second_set_asked,
        reasons: verdict.reasons.iter().map(code).collect(),
        rules: RULES_VERSION,
        inputs: Inputs::of(names.into_iter().zip(figures), both, evidence, &verdict),
    }
}

/// The decision that a screen tells: the one that stands, unless what it rests on has changed
/// since; then, and where there is none, the one that is made now.
///
/// A decision by another version of the rules stands: it is told as it was made.
pub fn standing_or_new(sheet: &JobState, corner: Corner, nth: u8) -> Decided {
    let now = decided(sheet, corner, nth);
    let standing = sheet.decided_nth(corner, nth);
    let stands = standing.filter(|decided| {
        let asked_again = is_to_be_judged_again(sheet, corner, nth);
        sheet.decides(corner, nth) && decided.rules != RULES_VERSION && !asked_again
    });
    stands.cloned().unwrap_or(now)
}

/// A decision as it was recorded, to be told: nothing is judged again.
pub fn as_recorded(decided: &Decided) -> Verdict {
    Verdict {
        decision: decided.decision,
        reasons: decided.recorded_reasons(),
        rests_on: decided.inputs.rests_on.clone(),
        not_done: decided.inputs.evidence.not_done.clone(),
        second_set_asked: decided.again,
    }
}
