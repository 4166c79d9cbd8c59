//! What keeps page one from calling a car with a new hub safe to drive.

use super::standing::{ending, is_replaced};
use super::warning_lights;
use crate::job::answers::{driven_after, not_tried, noticed_after, still_there};
use crate::job::entry::{Ending, Reply};
use crate::job::loose_lug_nuts::nuts_are_loose;
use crate::job::proof::after;
use crate::job::{JobState, plan};
use crate::text::{self, Customer, Lang};
use crate::trade::answer::Answer;
use crate::trade::play::After;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Choice, Plan, Sign, Step, StepKey};

/// One thing that the record does not show, or shows to be wrong.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Missing {
    /// The end of the job.
    End,
    /// The checks of the new part.
    Proof,
    /// A firm brake pedal.
    Pedal,
    /// Lug nuts at spec that were found loose.
    Nuts,
    /// A look at the warning lights after the work.
    WarningLights,
    /// This warning light is on after the work.
    Lit(Choice),
    /// A road test after the work.
    Road,
    /// A road test after the work on which nothing was noticed.
    RoadClean,
    /// These signs are still there after the work.
    Still(Vec<Sign>),
    /// These signs were not tried again after the work.
    Untried(Vec<Sign>),
}

impl Missing {
    /// The clause of a sentence that says it.
    pub(super) fn say(&self, lang: Lang) -> String {
        let names = |signs: &[Sign]| names(lang, signs);
        let say = match self {
            Self::End => Customer::MissingEnd,
            Self::Proof => Customer::MissingProof,
            Self::Pedal => Customer::MissingPedal,
            Self::Nuts => Customer::MissingNuts,
            Self::WarningLights => Customer::MissingWarningLights,
            Self::Lit(warning_light) => Customer::MissingLit(*warning_light),
            Self::Road => Customer::MissingRoad,
            Self::RoadClean => Customer::MissingRoadClean,
            Self::Still(signs) => return text::customer(lang, Customer::StillThere(&names(signs))),
            Self::Untried(signs) => return text::customer(lang, Customer::NotTried(&names(signs))),
        };
        text::customer(lang, say)
    }
}

/// Signs of the road by name.
pub(super) fn names(lang: Lang, signs: &[Sign]) -> String {
    let names = signs.iter().map(|sign| text::sign(lang, *sign));
    names.collect::<Vec<_>>().join(", ")
}

/// All that is missing, of a car with a new hub.
pub(super) fn missing(sheet: &JobState, plan: &Plan) -> Vec<Missing> {
    let mut replaced = sheet
        .corners()
        .iter()
        .filter(|corner| is_replaced(sheet, plan, **corner));
    let rows = [
        (Missing::End, ending(sheet) == Some(Ending::Finished)),
        (Missing::Proof, replaced.all(|at| is_proved(sheet, *at))),
        (Missing::Pedal, pedal_is_firm(sheet)),
        (Missing::Nuts, !nuts_are_loose(sheet)),
        (Missing::WarningLights, warning_lights::seen_after(sheet)),
        (Missing::Road, driven_after(sheet)),
        (Missing::RoadClean, !noticed_after(sheet)),
    ];
    let rows = rows.into_iter().filter(|(_, there)| !there);
    let mut missing: Vec<Missing> = rows.map(|(missing, _)| missing).collect();
    missing.extend(warning_lights::keeps_from_driving(sheet).map(Missing::Lit));
    let signs = [
        (
            Missing::Still as fn(Vec<Sign>) -> Missing,
            still_there(sheet),
        ),
        (Missing::Untried, not_tried(sheet)),
    ];
    let signs = signs.into_iter().filter(|(_, signs)| !signs.is_empty());
    missing.extend(signs.map(|(missing, signs)| missing(signs)));
    missing
}

/// What keeps page one from calling a car with a new hub safe to drive, but for the end itself.
pub fn not_proved(lang: Lang, sheet: &JobState) -> Vec<String> {
    let plan = plan(sheet);
    let mut corners = sheet.corners().iter();
    if !corners.any(|corner| is_replaced(sheet, &plan, *corner)) {
        return Vec::new();
    }
    let open = missing(sheet, &plan).into_iter();
    let open = open.filter(|missing| *missing != Missing::End);
    open.map(|missing| missing.say(lang)).collect()
}

fn is_proved(sheet: &JobState, corner: Corner) -> bool {
    matches!(after(sheet, corner), After::Pass { not_done, .. } if not_done.is_empty())
}

/// Whether the last question about the brake pedal was answered with yes.
fn pedal_is_firm(sheet: &JobState) -> bool {
    sheet.reply(StepKey::once(Step::ProvePedal)) == Some(&Reply::Said(Answer::Yes))
}

#[cfg(test)]
mod tests;
