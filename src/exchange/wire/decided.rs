//! What a decision rested on, as it is stored: lengths in millimetres, to a nanometre.

use serde::{Deserialize, Serialize};

use crate::exchange::wire::card::{WayText, lower_way, raise_way, word};
use crate::job::entry::Inputs;
use crate::job::reason::{why_not, why_not_of};
use crate::trade::answer::Answer;
use crate::trade::play::{
    BrakeHeld, Budget, Comparison, Component, Conformity, Evidence, Felt, Figures, Ground, Heat,
    Limit, LimitSource, Road, Source, StopSign, Test, WhyNot,
};
use crate::units::{Length, LengthUnit};
use crate::word::Word;

/// Everything that a decision rested on.
#[derive(Serialize, Deserialize)]
pub(super) struct InputsText {
    sets: Vec<SetText>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    together: Option<FiguresText>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    card_apart: Option<String>,
    rough: String,
    noisy: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    felt: Option<String>,
    brake_held: String,
    road: String,
    heat: String,
    stop_signs: Vec<String>,
    not_done: Vec<String>,
    rests_on: Vec<String>,
}

/// A set by its number.
#[derive(Serialize, Deserialize)]
struct SetText {
    set: u8,
    #[serde(flatten)]
    figures: FiguresText,
}

/// What a mean said.
#[derive(Serialize, Deserialize)]
pub(super) struct FiguresText {
    mean_mm: f64,
    cycles: usize,
    parts: Vec<PartText>,
    u_mm: f64,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    dof: Option<f64>,
    expanded_mm: f64,
    g: f64,
    limit: LimitText,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    apart: Option<String>,
    result: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    proven: Option<bool>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    chance: Option<f64>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    beyond_rig: Option<bool>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    resolution_mm: Option<f64>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    why: Option<String>,
}

#[derive(Serialize, Deserialize)]
struct PartText {
    source: String,
    u_mm: f64,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    dof: Option<f64>,
}

#[derive(Serialize, Deserialize)]
struct LimitText {
    mm: f64,
    source: String,
    way: WayText,
}

pub(super) fn mm(length: Length) -> f64 {
    length.in_unit(LengthUnit::Millimetre)
}

pub(super) fn codes<W: Word>(words: &[W]) -> Vec<String> {
    words
        .iter()
        .map(|word| word.word_code().to_owned())
        .collect()
}

/// The stored form.
pub(super) fn lower(inputs: &Inputs) -> InputsText {
    let evidence = &inputs.evidence;
    InputsText {
        sets: inputs
            .sets
            .iter()
            .map(|(set, figures)| SetText {
                set: *set,
                figures: lower_figures(figures),
            })
            .collect(),
        together: inputs.joined.as_ref().map(lower_figures),
        card_apart: evidence.card_apart.map(|why| why_not(why).to_owned()),
        rough: evidence.roughness.code().to_owned(),
        noisy: evidence.noise.code().to_owned(),
        felt: evidence.felt.map(|felt| felt.code().to_owned()),
        brake_held: evidence.brake_held.code().to_owned(),
        road: evidence.road.code().to_owned(),
        heat: evidence.heat.code().to_owned(),
        stop_signs: codes(&evidence.stop_signs),
        not_done: codes(&evidence.not_done),
        rests_on: codes(&inputs.rests_on),
    }
}

pub(super) fn lower_figures(of: &Figures) -> FiguresText {
    let part = |part: &Component| PartText {
        source: part.source.code().to_owned(),
        u_mm: mm(part.u),
        dof: part.dof,
    };
    let proven = match of.conformity {
        Conformity::MovementSeen { proven, .. } => Some(proven),
        _ => None,
    };
    let resolution_mm = match of.conformity {
        Conformity::NoMovementSeen { resolution } => Some(mm(resolution)),
        _ => None,
    };
    let why = match of.conformity {
        Conformity::NoComparison(why) => Some(why_not(why).to_owned()),
        _ => None,
    };
    FiguresText {
        mean_mm: mm(of.play),
        cycles: of.cycles,
        parts: of.budget.components.iter().map(part).collect(),
        u_mm: mm(of.budget.u_c),
        dof: of.budget.dof_eff,
        expanded_mm: mm(of.budget.expanded95),
        g: of.budget.g,
        limit: LimitText {
            mm: mm(of.limit.value),
            source: of.limit.source.code().to_owned(),
            way: lower_way(&of.limit.way),
        },
        apart: of.apart.map(|apart| why_not(WhyNot::Way(apart)).to_owned()),
        result: of.conformity.code().to_owned(),
        proven,
        chance: of.conformity.comparison().map(|of| of.conformance),
        beyond_rig: of.conformity.comparison().map(|of| of.beyond_rig),
        resolution_mm,
        why,
    }
}

pub(super) fn words<W: Word>(codes: &[String]) -> Option<Vec<W>> {
    codes.iter().map(|code| W::of_code(code)).collect()
}

/// What the stored form says, if every word of it is known and no uncertainty is zero.
pub(super) fn raise(stored: InputsText) -> Option<Box<Inputs>> {
    let set = |stored: SetText| Some((stored.set, raise_figures(stored.figures)?));
    let joined = match stored.together {
        Some(both) => Some(raise_figures(both)?),
        None => None,
    };
    let evidence = Evidence {
        card_apart: word(stored.card_apart, why_not_of)?,
        roughness: Answer::from_code(&stored.rough)?,
        noise: Answer::from_code(&stored.noisy)?,
        felt: word(stored.felt, Felt::from_code)?,
        brake_held: BrakeHeld::from_code(&stored.brake_held)?,
        road: Road::from_code(&stored.road)?,
        heat: Heat::from_code(&stored.heat)?,
        stop_signs: words::<StopSign>(&stored.stop_signs)?,
        not_done: words::<Test>(&stored.not_done)?,
        ..Evidence::nothing()
    };
    Some(Inputs::stored(
        stored.sets.into_iter().map(set).collect::<Option<_>>()?,
        joined,
        evidence,
        words::<Ground>(&stored.rests_on)?,
    ))
}

pub(super) fn length(mm: f64) -> Option<Length> {
    Length::new(mm, LengthUnit::Millimetre).ok()
}

/// Nothing is known without uncertainty.
pub(super) fn uncertain(mm: f64) -> Option<Length> {
    length(mm).filter(|u| *u > Length::ZERO)
}

pub(super) fn raise_figures(stored: FiguresText) -> Option<Figures> {
    let part = |part: &PartText| {
        Some(Component {
            source: Source::from_code(&part.source)?,
            u: length(part.u_mm)?,
            dof: part.dof,
        })
    };
    let budget = Budget {
        components: stored.parts.iter().map(part).collect::<Option<_>>()?,
        u_c: uncertain(stored.u_mm)?,
        dof_eff: stored.dof,
        expanded95: uncertain(stored.expanded_mm)?,
        g: Some(stored.g).filter(|g| *g > 0.0)?,
    };
    let limit = Limit {
        value: length(stored.limit.mm)?,
        way: raise_way(stored.limit.way)?,
        source: LimitSource::from_code(&stored.limit.source)?,
    };
    let apart = match word(stored.apart, why_not_of)? {
        None => None,
        Some(WhyNot::Way(apart)) => Some(apart),
        Some(WhyNot::Mark(_)) => return None,
    };
    let comparison = stored.chance.map(|conformance| Comparison {
        play: Length::millimetres(stored.mean_mm),
        limit,
        u: budget.u_c,
        dof: budget.dof_eff,
        g: budget.g,
        cycles: stored.cycles,
        beyond_rig: stored.beyond_rig == Some(true),
        conformance,
    });
    let conformity = match stored.result.as_str() {
        "proven_in" => Conformity::ProvenIn(comparison?),
        "in_not_proven" => Conformity::InNotProven(comparison?),
        "out_not_proven" => Conformity::OutNotProven(comparison?),
        "proven_out" => Conformity::ProvenOut(comparison?),
        "movement_seen" => Conformity::MovementSeen {
            comparison: comparison?,
            proven: stored.proven?,
        },
        "no_movement_seen" => Conformity::NoMovementSeen {
            resolution: length(stored.resolution_mm?)?,
        },
        "no_comparison" => Conformity::NoComparison(why_not_of(&stored.why?)?),
        _ => return None,
    };
    Some(Figures {
        play: length(stored.mean_mm)?,
        cycles: stored.cycles,
        budget,
        limit,
        apart,
        conformity,
    })
}
