//! Lug nuts that were found loose before driving: STOP until every nut of the vehicle was brought
//! to its spec, and then the decision is made again.

use crate::job::conflict::is_contested;
use crate::job::entry::Reply;
use crate::job::key::Key;
use crate::job::reason;
use crate::job::sheet::JobState;
use crate::trade::answer::Answer;
use crate::trade::play::{Decision, Reason, StopSign};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Check, LOOKS, Step, StepKey};

/// Whether a look before driving found something wrong.
pub(super) fn looked_wrong(sheet: &JobState, check: Check) -> bool {
    match sheet.reply(StepKey::once(Step::BeforeDriving)) {
        Some(Reply::Checked(checks)) => checks.contains(&(check, Answer::No)),
        _ => false,
    }
}

/// The looks before driving that were not answered with yes, once they were answered at all.
pub(super) fn wrong_looks(sheet: &JobState) -> Vec<Check> {
    match sheet.reply(StepKey::once(Step::BeforeDriving)) {
        Some(Reply::Checked(checks)) => {
            let wrong = checks.iter().filter(|(_, answer)| *answer != Answer::Yes);
            wrong.map(|(check, _)| *check).collect()
        }
        Some(Reply::NotDone(_)) => LOOKS.to_vec(),
        _ => Vec::new(),
    }
}

/// Whether lug nuts were found loose or missing at the looks before driving.
pub fn found_loose(sheet: &JobState) -> bool {
    looked_wrong(sheet, Check::NutsAsFound)
}

/// Whether lug nuts were found loose, and nobody said since that every one of the vehicle is at
/// its spec; a look that was made again asks again.
pub fn nuts_are_loose(sheet: &JobState) -> bool {
    let place = |step| sheet.place(&Key::Step(StepKey::once(step)));
    let said = sheet.reply(StepKey::once(Step::NutsToSpec));
    let at_spec = said == Some(&Reply::Said(Answer::Yes))
        && place(Step::BeforeDriving) < place(Step::NutsToSpec);
    found_loose(sheet) && !at_spec
}

/// Whether a decision that stands rested on loose lug nuts that are loose no more, or had not seen
/// what another phone read, so that it is to be made again. What the customer agreed to stays as it was agreed.
pub fn is_to_be_judged_again(sheet: &JobState, corner: Corner, nth: u8) -> bool {
    let sign = reason::code(&Reason::MustNotDrive(StopSign::LooseWheelFasteners));
    let rested = sheet.decided_nth(corner, nth).is_some_and(|decided| {
        decided.decision == Decision::Stop && decided.reasons.contains(&sign)
    });
    let agreed = sheet.consent(StepKey::at(Step::Agree, corner));
    let agreed = agreed.is_some_and(|consent| consent.yes);
    let nuts = rested && !nuts_are_loose(sheet);
    !agreed && (nuts || is_contested(sheet, corner, nth))
}
