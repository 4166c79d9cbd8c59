//! What a job says of causes: the complaint, and each clue from the step that asks it, or from an
//! entry of its own where no step does. Nothing is ranked here; that is `trade::diagnosis`.

use crate::job::entry::{Event, Reply};
use crate::job::evidence::{evidence, heated, said, spun};
use crate::job::judge::pick;
use crate::job::key::Key;
use crate::job::sheet::JobState;
use crate::trade::answer::Answer;
use crate::trade::diagnosis::{Clue, Complaint, CornerFindings, Findings, Test};
use crate::trade::play::{Conformity, Felt, Heat};
use crate::trade::vehicle::{Corner, Side};
use crate::trade::wheel_end::{Choice, Step, StepKey};

impl JobState {
    /// What the customer complains of, once that was picked.
    pub fn complaint_kind(&self) -> Option<Complaint> {
        match self.fact(&Key::Complaint) {
            Some(Event::Complaint(complaint)) => Some(*complaint),
            _ => None,
        }
    }

    /// What was recorded of a clue that no step asks for.
    fn clue(&self, corner: Option<Corner>, clue: Clue) -> Option<Answer> {
        match self.fact(&Key::Clue(corner, clue)) {
            Some(Event::Clue(_, _, answer)) => Some(*answer),
            _ => None,
        }
    }
}

/// The step of the procedure that tries a test; `None` for one that has entries of its own.
pub const fn step_of(test: Test) -> Option<Step> {
    match test {
        Test::Speed => Some(Step::SignSpeed),
        Test::Surface => Some(Step::SignSurface),
        Test::Swerve => Some(Step::SignSwerve),
        Test::Neutral => Some(Step::SignCoast),
        Test::FullLock => Some(Step::SignFullLock),
        Test::LightBrake => Some(Step::SignBrake),
        Test::Braking => Some(Step::SignPulse),
        Test::Shake => Some(Step::SignShake),
        Test::Rock => Some(Step::RockTwelveSix),
        Test::HandSpin => Some(Step::SpinHand),
        Test::HubHeat => Some(Step::HeatHere),
        Test::Dial => Some(Step::RigTip),
        _ => None,
    }
}

/// The corner that a test's entries name: `corner` for what is tried at one, none for the vehicle.
pub fn corner_of(test: Test, corner: Option<Corner>) -> Option<Corner> {
    corner.filter(|_| test.is_local())
}

/// Everything found for a corner before the work; `None` until the complaint was picked.
pub fn findings(sheet: &JobState, corner: Option<Corner>) -> Option<Findings> {
    Some(found(sheet, sheet.complaint_kind()?, corner))
}

/// What speaks for each corner.
pub fn corner_findings(sheet: &JobState, complaint: Complaint) -> CornerFindings {
    let all = [
        Corner::FrontLeft,
        Corner::FrontRight,
        Corner::RearLeft,
        Corner::RearRight,
    ];
    CornerFindings {
        louder_steering: match pick(sheet, StepKey::once(Step::SignSwerve)) {
            Some(Choice::LouderRight) => Some(Side::Right),
            Some(Choice::LouderLeft) => Some(Side::Left),
            _ => None,
        },
        at: all.map(|corner| (corner, found(sheet, complaint, Some(corner)))),
    }
}

fn found(sheet: &JobState, complaint: Complaint, corner: Option<Corner>) -> Findings {
    let start = Findings::of(complaint);
    Clue::ALL.iter().fold(start, |found, clue| {
        found.with(*clue, answer(sheet, corner, *clue))
    })
}

fn answer(sheet: &JobState, corner: Option<Corner>, clue: Clue) -> Answer {
    match step_of(clue.test()) {
        Some(step) => from_steps(sheet, corner, clue, step),
        None => {
            // What was found before any corner was chosen holds for the one that was chosen.
            let here = sheet.clue(corner_of(clue.test(), corner), clue);
            let before = || sheet.clue(None, clue);
            here.or_else(before).unwrap_or(Answer::NotDone)
        }
    }
}

/// A clue that the procedure asks for.
fn from_steps(sheet: &JobState, corner: Option<Corner>, clue: Clue, step: Step) -> Answer {
    match clue {
        Clue::SwerveOneWay | Clue::SwerveNoChange => swerve(sheet, clue),
        Clue::PlayGone | Clue::PlayUprightStays | Clue::PlayAcrossStays | Clue::NoPlay => {
            shown(corner.and_then(|corner| rocked(sheet, corner)) == Some(clue))
        }
        Clue::DialOver | Clue::DialInside => {
            shown(corner.and_then(|corner| dialed(sheet, corner)) == Some(clue))
        }
        Clue::Grumble => corner.map_or(Answer::NotDone, |corner| grumbled(sheet, corner)),
        Clue::HotHub => match corner.map(|corner| heated(sheet, corner)) {
            Some(Heat::Hotter) => Answer::Yes,
            Some(Heat::Alike) => Answer::No,
            _ => Answer::NotDone,
        },
        _ => said(sheet, step),
    }
}

/// One of several outcomes of a test: it showed, or nothing is said of it.
const fn shown(it: bool) -> Answer {
    if it { Answer::Yes } else { Answer::NotDone }
}

fn swerve(sheet: &JobState, clue: Clue) -> Answer {
    let clue_of = |choice| match choice {
        Choice::LouderLeft | Choice::LouderRight => Some(Clue::SwerveOneWay),
        Choice::NoChange => Some(Clue::SwerveNoChange),
        _ => None,
    };
    shown(pick(sheet, StepKey::once(Step::SignSwerve)).and_then(clue_of) == Some(clue))
}

/// What rocking the wheel and holding the brake shows. Play that nobody tried with the brake held
/// shows nothing yet, and neither do some directions without play.
fn rocked(sheet: &JobState, corner: Corner) -> Option<Clue> {
    let moved = |step| match sheet.reply(StepKey::at(step, corner)) {
        Some(Reply::Felt(felt)) => Some(*felt != Felt::Nothing),
        _ => None,
    };
    let [upright, across, axial] =
        [Step::RockTwelveSix, Step::RockNineThree, Step::RockAxial].map(moved);
    let any = [upright, across, axial].contains(&Some(true));
    match pick(sheet, StepKey::at(Step::BrakeHeld, corner)) {
        Some(Choice::PlayGone) if any => Some(Clue::PlayGone),
        Some(Choice::PlayStays) if upright == Some(true) => Some(Clue::PlayUprightStays),
        Some(Choice::PlayStays) if across == Some(true) => Some(Clue::PlayAcrossStays),
        _ => [upright, across, axial]
            .iter()
            .all(|moved| *moved == Some(false))
            .then_some(Clue::NoPlay),
    }
}

fn grumbled(sheet: &JobState, corner: Corner) -> Answer {
    match spun(sheet, StepKey::at(Step::SpinHand, corner)) {
        (Answer::Yes, _) | (_, Answer::Yes) => Answer::Yes,
        (Answer::No, Answer::No) => Answer::No,
        _ => Answer::NotDone,
    }
}

/// What the dial proved before the work: of two sets what they prove together.
fn dialed(sheet: &JobState, corner: Corner) -> Option<Clue> {
    let evidence = evidence(sheet, corner);
    match evidence.joined.or_else(|| evidence.sets.last().copied())? {
        Conformity::ProvenOut(_) | Conformity::MovementSeen { proven: true, .. } => {
            Some(Clue::DialOver)
        }
        Conformity::ProvenIn(_) => Some(Clue::DialInside),
        _ => None,
    }
}

#[cfg(test)]
mod tests;
