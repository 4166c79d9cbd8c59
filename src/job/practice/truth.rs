//! What a practice car had, what was found of it and what was missed.

use super::car;
use super::meet::{gave, nuts_tight};
use crate::job::entry::{Decided, Reply};
use crate::job::judge::{self, Measured};
use crate::job::proof;
use crate::job::reason::Rule;
use crate::job::sheet::JobState;
use crate::trade::answer::Answer;
use crate::trade::fastening::SpecItem;
use crate::trade::play::{After, Decision};
use crate::trade::practice::car::Finish;
use crate::trade::practice::{Car, Hub, NoiseCause, SpecTrap};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Check, Choice, SetName, Step, StepKey, When};
use crate::units::{Length, TorqueUnit};
use crate::words;

words! {
    /// What became of one hidden thing.
    pub enum Outcome {
        /// It was found.
        Found = "found",
        /// It was looked at and not found.
        Missed = "missed",
        /// Nobody looked.
        NotLooked = "not_looked",
    }
}

/// One hidden thing of a practice car.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Hidden {
    /// The hub it came with is to be replaced, or may stay.
    Hub {
        /// Whether it is over its limit, rough or loud.
        bad: bool,
    },
    /// The true play, and what the last set read of it: its mean and the half width of its
    /// printed interval.
    Play {
        /// What is true.
        truth: Length,
        /// What was read.
        read: Option<(Length, Length)>,
    },
    /// The bearing is rough or loud.
    Rough,
    /// The noise comes from the tires.
    Tires,
    /// So many lug nuts were loose.
    LooseNuts(u8),
    /// The first place of the base gave.
    Base,
    /// A spec's figure was in the wrong unit.
    Spec(SpecTrap),
    /// The new hub was bad.
    NewHub,
}

/// A hidden thing and what became of it.
pub type Finding = (Hidden, Outcome);

/// Everything the practice car of a job had, the verdict first; empty for a real job.
pub fn truth(sheet: &JobState) -> Vec<Finding> {
    let (Some(car), Some(corner)) = (car(sheet), sheet.corners().first()) else {
        return Vec::new();
    };
    let corner = *corner;
    let truth = &car.truth;
    let limit = judge::limit(sheet).value;
    let rough = spins_badly(&car, Hub::Old);
    let bad = rough || limit < truth.play;
    let mut findings = vec![
        (Hidden::Hub { bad }, decision(sheet, corner, bad)),
        play(sheet, corner, truth.play),
    ];
    let spun = |step| picked(sheet, StepKey::at(step, corner));
    if rough {
        let outcome = outcome(spun(Step::SpinHand), |pick| *pick != Choice::SmoothQuiet);
        findings.push((Hidden::Rough, outcome));
    }
    if truth.noise == NoiseCause::Tires {
        findings.push((Hidden::Tires, tires(sheet)));
    }
    if truth.loose_nuts > 0 {
        let nuts = Hidden::LooseNuts(truth.loose_nuts);
        findings.push((nuts, loose_nuts(sheet, corner)));
    }
    if truth.flex.is_some() {
        let pushed = picked(sheet, StepKey::at(Step::RigPush, corner));
        // A base that gave is set again, so its last answer may be that it stands still.
        let seen = sheet.counting().any(|entry| gave(&entry.what));
        let found = outcome(pushed, |pick| seen || *pick == Choice::FlexOne);
        findings.push((Hidden::Base, found));
    }
    if let Some(slip) = truth.slip {
        findings.push((Hidden::Spec(slip), spec(sheet, slip)));
    }
    let fitted = proof::after(sheet, corner);
    if spins_badly(&car, Hub::New) || limit < truth.new_play {
        let outcome = match fitted {
            After::Blocked { .. } => Outcome::Found,
            After::Pass { .. } => Outcome::Missed,
            After::NotJudged { .. } => Outcome::NotLooked,
        };
        findings.push((Hidden::NewHub, outcome));
    }
    findings
}

fn spins_badly(car: &Car, hub: Hub) -> bool {
    match hub {
        Hub::Old => car.truth.finish == Finish::Rough || car.truth.noise == NoiseCause::Bearing,
        Hub::New => car.truth.new_finish == Finish::Rough,
    }
}

/// Whether the decision was the one that the truth asks for. WATCH lets a bad hub drive on; a
/// sound one may be watched.
fn decision(sheet: &JobState, corner: Corner, bad: bool) -> Outcome {
    outcome(sheet.decided(corner), |decided| condemns(decided) == bad)
}

/// Whether a decision is against the hub itself: a STOP for loose lug nuts is not.
fn condemns(decided: &Decided) -> bool {
    let of_bearing = |code: &String| {
        let rule = code.split('.').next().and_then(Rule::from_code);
        matches!(
            rule,
            Some(
                Rule::LooseInBearing
                    | Rule::Rough
                    | Rule::Noisy
                    | Rule::OverProven
                    | Rule::OverNotProven
            )
        )
    };
    match decided.decision {
        Decision::Keep | Decision::Watch => false,
        Decision::Replace => true,
        Decision::Stop => decided.reasons.iter().any(of_bearing),
    }
}

fn play(sheet: &JobState, corner: Corner, truth: Length) -> Finding {
    let set = |nth| {
        let when = When::Before;
        judge::measured(sheet, corner, SetName { when, nth })?.ok()
    };
    let read = set(2).or_else(|| set(1));
    let read = read.map(|set: Measured| (set.set.mean(), set.budget.expanded95));
    let holds = |(mean, half): &(Length, Length)| mean.minus(truth).abs() <= *half;
    (Hidden::Play { truth, read }, outcome(read, holds))
}

/// The road says it: the note changes with the surface, or no swerve changes it.
fn tires(sheet: &JobState) -> Outcome {
    let surface = sheet.reply(StepKey::once(Step::SignSurface));
    let swerve = picked(sheet, StepKey::once(Step::SignSwerve));
    let heard = |reply: &Reply| *reply == Reply::Said(Answer::Yes);
    match (
        outcome(surface, |reply| heard(reply)),
        outcome(swerve, |pick| *pick == Choice::NoChange),
    ) {
        (Outcome::Found, _) | (_, Outcome::Found) => Outcome::Found,
        (Outcome::NotLooked, Outcome::NotLooked) => Outcome::NotLooked,
        _ => Outcome::Missed,
    }
}

fn loose_nuts(sheet: &JobState, corner: Corner) -> Outcome {
    let looked = match sheet.reply(StepKey::once(Step::BeforeDriving)) {
        Some(Reply::Checked(checks)) => checks
            .iter()
            .find(|(check, _)| *check == Check::NutsAsFound),
        _ => None,
    };
    let looked = looked.map(|(_, answer)| *answer);
    let tried = match sheet.reply(StepKey::at(Step::RockNuts, corner)) {
        Some(Reply::Said(answer)) => Some(*answer),
        _ => None,
    };
    let answers: Vec<Answer> = looked.into_iter().chain(tried).collect();
    let any = |wanted| answers.contains(&wanted);
    // Once they are tight the last answer is that they are.
    if any(Answer::No) || nuts_tight(sheet, StepKey::at(Step::RockNuts, corner)) {
        Outcome::Found
    } else if any(Answer::Yes) {
        Outcome::Missed
    } else {
        Outcome::NotLooked
    }
}

fn spec(sheet: &JobState, slip: SpecTrap) -> Outcome {
    let (item, right) = match slip {
        SpecTrap::LugNutsInPoundFeet => (SpecItem::LugNuts, TorqueUnit::NewtonMetre),
    };
    let figure = sheet.spec(item).and_then(|spec| spec.final_torque());
    outcome(figure, |typed| typed.unit == right)
}

fn picked(sheet: &JobState, step: StepKey) -> Option<Choice> {
    match sheet.reply(step) {
        Some(Reply::Picked(pick)) => Some(*pick),
        _ => None,
    }
}

/// Found if what was looked at `is` it; not looked at where there is nothing.
fn outcome<T>(looked: Option<T>, is: impl FnOnce(&T) -> bool) -> Outcome {
    match looked {
        None => Outcome::NotLooked,
        Some(seen) if is(&seen) => Outcome::Found,
        Some(_) => Outcome::Missed,
    }
}
