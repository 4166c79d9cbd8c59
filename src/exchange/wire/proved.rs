//! The proof after the work as it is stored.

use serde::{Deserialize, Serialize};

use crate::exchange::wire::decided::{FiguresText, codes, lower_figures, raise_figures, words};
use crate::job::entry::Proved;
use crate::trade::answer::Answer;
use crate::trade::play::{After, Against, Test};
use crate::trade::vehicle::Corner;

/// A proof with what it rested on.
#[derive(Serialize, Deserialize)]
pub(super) struct ProvedText {
    corner: String,
    rules: u32,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    set: Option<FiguresText>,
    rough: String,
    noisy: String,
    outcome: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    proven: Option<bool>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    against: Option<Vec<String>>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    not_done: Option<Vec<String>>,
}

/// The stored form.
pub(super) fn lower(proved: &Proved) -> ProvedText {
    let (proven, against, not_done) = match &proved.outcome {
        After::Pass { proven, not_done } => (Some(*proven), None, Some(codes(not_done))),
        After::Blocked { against } => (None, Some(codes(against)), None),
        After::NotJudged { not_done } => (None, None, Some(codes(not_done))),
    };
    ProvedText {
        corner: proved.corner.code().to_owned(),
        rules: proved.rules,
        set: proved.set.as_deref().map(lower_figures),
        rough: proved.roughness.code().to_owned(),
        noisy: proved.noise.code().to_owned(),
        outcome: proved.outcome.code().to_owned(),
        proven,
        against,
        not_done,
    }
}

/// What the stored form says, if every word of it is known and its outcome has what belongs to it.
pub(super) fn raise(stored: ProvedText) -> Option<Proved> {
    let said = (stored.proven, stored.against, stored.not_done);
    let outcome = match (stored.outcome.as_str(), said) {
        ("pass", (Some(proven), None, Some(not_done))) => After::Pass {
            proven,
            not_done: words::<Test>(&not_done)?,
        },
        ("blocked", (None, Some(against), None)) => After::Blocked {
            against: words::<Against>(&against)?,
        },
        ("not_judged", (None, None, Some(not_done))) => After::NotJudged {
            not_done: words::<Test>(&not_done)?,
        },
        _ => return None,
    };
    let set = match stored.set {
        Some(set) => Some(Box::new(raise_figures(set)?)),
        None => None,
    };
    Some(Proved {
        corner: Corner::from_code(&stored.corner)?,
        rules: stored.rules,
        set,
        roughness: Answer::from_code(&stored.rough)?,
        noise: Answer::from_code(&stored.noisy)?,
        outcome,
    })
}
