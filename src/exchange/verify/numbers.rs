//! Every number of a job, computed from its entries, as a value that a script can read.
//!
//! Lengths in millimetres, unrounded; infinite degrees of freedom are `null`.

use serde_json::{Value, json};

use super::{Again, faces, rotors};
use crate::exchange::wire;
use crate::job::entry::{Decided, DueKind, EntryId, Named, Proved};
use crate::job::judge::{self, Measured};
use crate::job::{JobState, proof, reason};
use crate::trade::play::{After, Conformity, SeriesError, WhyNot};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{SetName, When};
use crate::units::{Length, LengthUnit};

/// Everything that was read with an instrument, and what it says.
pub(super) struct Read {
    /// Sets of play.
    pub(super) sets: Vec<Value>,
    /// Runs round a face.
    pub(super) faces: Vec<Value>,
    /// Rotors under a micrometer.
    pub(super) rotors: Vec<Value>,
}

impl Read {
    /// All of a sheet as it stands.
    pub(super) fn of(sheet: &JobState) -> Self {
        Self {
            sets: sets(sheet),
            faces: faces::runs_round(sheet),
            rotors: rotors::measured(sheet),
        }
    }
}

/// Every set of readings of the sheet as it stands.
pub(super) fn sets(sheet: &JobState) -> Vec<Value> {
    let names = Corner::ALL.iter().flat_map(|corner| {
        let names = When::ALL
            .iter()
            .flat_map(|when| [1, 2].map(|nth| SetName { when: *when, nth }));
        names.map(|name| (*corner, name))
    });
    names
        .filter_map(|(corner, name)| {
            let measured = judge::measured(sheet, corner, name)?;
            let (numbers, fault) = match &measured {
                Ok(measured) => (Some(set(measured)), None),
                Err(fault) => (None, Some(fault_code(fault))),
            };
            Some(json!({
                "corner": corner.code(),
                "when": name.when.code(),
                "nth": name.nth,
                "measured": numbers,
                "fault": fault,
            }))
        })
        .collect()
}

/// The numbers of a job.
pub(super) fn job(
    sheet: &JobState,
    read: Read,
    again: &[Again],
    proofs: &[(EntryId, Proved)],
    found: Vec<Value>,
) -> Value {
    json!({
        "sets": read.sets,
        "decisions": again.iter().map(decision).collect::<Vec<_>>(),
        "proved": sheet.corners().iter().map(|corner| proved(sheet, *corner)).collect::<Vec<_>>(),
        "proofs": proofs.iter().map(proof).collect::<Vec<_>>(),
        "found": found,
        "faces": read.faces,
        "rotors": read.rotors,
        "photos": photos(sheet),
        "loose": sheet.loose().len(),
        "ending": sheet.ended().map(|ended| ended.ending.code()),
        "retorque": sheet.due(DueKind::Retorque).map(|due| due.date.clone()),
    })
}

pub(super) fn mm(length: Length) -> f64 {
    length.in_unit(LengthUnit::Millimetre)
}

fn set(measured: &Measured) -> Value {
    let Measured {
        set,
        budget,
        limit,
        apart,
        conformity,
    } = measured;
    let settling = set.settling(Some(limit.value));
    let components: serde_json::Map<String, Value> = budget
        .components
        .iter()
        .map(|part| {
            let value = json!({ "u": mm(part.u), "dof": part.dof });
            (part.source.code().to_owned(), value)
        })
        .collect();
    json!({
        "plays": set.plays().iter().map(|play| mm(*play)).collect::<Vec<_>>(),
        "mean": mm(set.mean()),
        "median": mm(set.median()),
        "spread": mm(settling.spread),
        "drift": mm(settling.drift),
        "trend": settling.trend.code(),
        "asks_to_rig_again": settling.asks_to_rig_again(),
        "components": components,
        "u": mm(budget.u_c),
        "dof": budget.dof_eff,
        "expanded95": mm(budget.expanded95),
        "g": budget.g,
        "guard_band": mm(budget.guard_band()),
        "limit": mm(limit.value),
        "limit_source": limit.source.code(),
        "apart": apart.map(|apart| reason::why_not(WhyNot::Way(apart))),
        "conformity": conformity.code(),
        "conformance": conformity.comparison().map(|compared| compared.conformance),
        "no_comparison": why_not(conformity),
    })
}

fn why_not(conformity: &Conformity) -> Option<&'static str> {
    match conformity {
        Conformity::NoComparison(why) => Some(reason::why_not(*why)),
        _ => None,
    }
}

/// A recorded proof, as the rules give it again.
fn proof((entry, proved): &(EntryId, Proved)) -> Value {
    json!({ "entry": entry.0, "proved": wire::proved(proved) })
}

/// What the entries as they stand prove of a corner, whatever was recorded.
fn proved(sheet: &JobState, corner: Corner) -> Value {
    let after = proof::proved(sheet, corner).outcome;
    let against = match &after {
        After::Blocked { against } => against.as_slice(),
        After::Pass { .. } | After::NotJudged { .. } => &[],
    };
    json!({
        "corner": corner.code(),
        "result": after.code(),
        "proven": matches!(after, After::Pass { proven: true, .. }),
        "against": against.iter().map(|against| against.code()).collect::<Vec<_>>(),
    })
}

/// The pictures and voice notes that the job names, so that a script can look for them.
fn photos(sheet: &JobState) -> Vec<Value> {
    let named = sheet.counting().filter_map(|entry| entry.what.named());
    let value = |named: Named| json!({ "step": named.step.code(), "sha256": named.sha256 });
    named.map(value).collect()
}

const fn fault_code(fault: &SeriesError) -> &'static str {
    match fault {
        SeriesError::NoRound => "no_round",
        SeriesError::MixedDials => "mixed_dials",
        SeriesError::Round { .. } => "round",
    }
}

fn decision(again: &Again) -> Value {
    let Decided {
        corner,
        nth,
        decision,
        again: second,
        reasons,
        rules,
        inputs,
    } = &again.computed;
    json!({
        "entry": again.entry.0,
        "corner": corner.code(),
        "nth": nth,
        "decision": decision.code(),
        "again": second,
        "reasons": reasons,
        "rules": rules,
        "inputs": wire::inputs(inputs),
        "sets": again.sets,
    })
}
